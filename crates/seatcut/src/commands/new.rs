//! `seatcut new`: start a job file from a shape of plan.

use std::fmt::Write as _;
use std::io;
use std::path::PathBuf;

use clap::builder::StyledStr;
use clap::error::Error as ClapError;
use clap::{Arg, ArgMatches, Args, Command, FromArgMatches};
use job::shapes::{new_job, shapes};

use crate::failure::Failure;
use crate::{lengths, writing};

/// Start a job file.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut new --list
  seatcut new rectangle --length 8400 --width 5200 -o boathouse.toml
  seatcut new L --title 'Garden room' --length '9.6 m' --gables | seatcut solve -
Each shape takes sizes of its own; --list shows which.")]
pub struct New {
    /// The shape
    #[arg(required_unless_present = "list")]
    shape: Option<String>,
    /// List the shapes with their sizes
    #[arg(long, exclusive = true)]
    list: bool,
    /// What the job is called on its sheets
    #[arg(long, default_value = "New roof")]
    title: String,
    /// Gables at the ends instead of hips
    #[arg(long)]
    gables: bool,
    #[command(flatten)]
    sizes: Sizes,
    /// The file to write; when left out, the job is printed. A file that is there already is kept
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
}

impl New {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let Some(shape) = self.shape else {
            return writing::print(list().as_bytes());
        };
        let sizes: Vec<(&str, f64)> = self.sizes.0.iter().map(|(name, mm)| (name.as_str(), *mm)).collect();
        let text = new_job(&shape, &self.title, &sizes, self.gables)
            .map_err(|error| Failure::BadInput(format!("{error}\n`seatcut new --list` shows shapes and sizes")))?;
        if let Some(place) = self.output.as_deref().filter(|place| place.exists()) {
            let why = io::Error::new(io::ErrorKind::AlreadyExists, "there is a file of this name already");
            return Err(Failure::CannotWrite { to: place.display().to_string(), why });
        }
        writing::write_or_print(self.output.as_deref(), text.as_bytes())
    }
}

/// The shapes, each with its sizes indented below it.
fn list() -> String {
    let mut text = String::new();
    for shape in shapes() {
        let gables = if shape.gables { "" } else { ", no gables" };
        let _ = writeln!(text, "{:<12} {}{gables}", shape.name, shape.description);
        for size in shape.parameters {
            let option = format!("--{}", size.name);
            let _ = writeln!(text, "  {option:<14} {:>6} mm  {}", size.default_mm, size.meaning);
        }
    }
    text
}

/// The sizes given: one option for every size that any shape takes. Which of
/// them a shape takes, `new_job` knows.
#[derive(Debug)]
struct Sizes(Vec<(String, f64)>);

/// Names of all sizes of all shapes, each once.
fn size_names() -> Vec<&'static str> {
    let mut names: Vec<&str> = shapes().iter().flat_map(|shape| shape.parameters).map(|size| size.name).collect();
    names.sort_unstable();
    names.dedup();
    names
}

impl Args for Sizes {
    fn augment_args(command: Command) -> Command {
        size_names().into_iter().fold(command, |command, name| {
            let takers: Vec<&str> = shapes()
                .iter()
                .filter(|shape| shape.parameters.iter().any(|size| size.name == name))
                .map(|shape| shape.name)
                .collect();
            let help = StyledStr::from(format!("For {}", takers.join(", ")));
            let size = Arg::new(name).long(name).value_name("LENGTH").value_parser(lengths::length).help(help);
            command.arg(size.allow_negative_numbers(true).help_heading("Sizes, in mm or with a unit"))
        })
    }

    fn augment_args_for_update(command: Command) -> Command {
        Self::augment_args(command)
    }
}

impl FromArgMatches for Sizes {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, ClapError> {
        let given = |name: &str| matches.get_one::<f64>(name).map(|mm| (name.to_owned(), *mm));
        Ok(Self(size_names().into_iter().filter_map(given).collect()))
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), ClapError> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}
