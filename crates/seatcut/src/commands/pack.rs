//! `seatcut pack`: the sheets of a job as one PDF, and the list of timbers.

use std::path::{Path, PathBuf};

use clap::Args;

use crate::failure::Failure;
use crate::progress;
use crate::reading::JobFile;
use crate::{all, embedded, figures, solving, writing};

/// Where the sheets go when no file is named.
const DEFAULT_OUTPUT: &str = "pack.pdf";

/// Write the sheets of a job.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut pack boathouse.toml
  seatcut pack boathouse.toml -o boathouse.pdf --csv boathouse.csv
  seatcut pack boathouse.toml --html boathouse.html
Print the sheets at 100 %, and measure the check bar on the first one.")]
pub struct Pack {
    /// The job file, or - for standard input
    job: String,
    /// The PDF to write; when left out, the job's name with .pdf
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Also write the list of timbers, for a spreadsheet
    #[arg(long, value_name = "FILE")]
    csv: Option<PathBuf>,
    /// Also write one page that holds the job and the whole app, and opens with no server
    #[arg(long, value_name = "FILE")]
    html: Option<PathBuf>,
}

impl Pack {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let (job, solution) = solving::solve(&file)?;
        solving::refuse_stopped(&solution)?;
        let pdf_place = self.output.unwrap_or_else(|| beside(&self.job));
        let unmade = |why: drawings::PackError| Failure::NotBuilt(format!("{}: {why}", file.name));
        let (document, missing) = all::of(&job, solution);
        let solution = &document.solution;
        let pdf = progress::during("drawing the sheets", || drawings::pack_with(solution, &document.papers()))
            .map_err(unmade)?;
        let csv = match &self.csv {
            Some(_) => Some(drawings::members_csv(solution).map_err(unmade)?),
            None => None,
        };
        let page = match &self.html {
            Some(_) => Some(one_file(&file)?),
            None => None,
        };
        let mut files: Vec<(&Path, &[u8])> = vec![(&pdf_place, &pdf)];
        if let (Some(place), Some(text)) = (&self.csv, &csv) {
            files.push((place, text.as_bytes()));
        }
        if let (Some(place), Some(page)) = (&self.html, &page) {
            files.push((place, page.as_bytes()));
        }
        file.is_none_of(files.iter().map(|(place, _)| *place))?;
        writing::write_files(&files)?;
        let written: String = files.iter().map(|(place, _)| format!("{}\n", place.display())).collect();
        writing::print((written + &figures::notices(solution) + &all::lines(&document, missing)).as_bytes())
    }
}

/// The page that holds the app and the job.
fn one_file(file: &JobFile) -> Result<String, Failure> {
    let template = embedded::page_template()?;
    let text = std::str::from_utf8(&file.bytes)
        .map_err(|why| Failure::BadInput(format!("{} is not text: {why}; name the job file", file.name)))?;
    travel::one_file(&template, text).map_err(|why| Failure::NotBuilt(why.to_string()))
}

/// The PDF beside its job file, with the same name.
fn beside(job: &str) -> PathBuf {
    if job == "-" { PathBuf::from(DEFAULT_OUTPUT) } else { Path::new(job).with_extension("pdf") }
}
