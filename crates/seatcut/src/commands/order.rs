//! `seatcut order`: what to buy for a job, and how to cut it.

use std::path::{Path, PathBuf};

use clap::Args;

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::strong::Outcome;
use crate::{ordering, solving, writing};

/// What to buy, and how to cut it with the least waste.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut order house.toml
  seatcut order house.toml --cuts
  seatcut order house.toml --sheet house-order.xlsx --pdf house-order.pdf
  seatcut order house.toml --labels house-labels.pdf
Stock, yard and prices are [stock], [yard] and [price] of the job; `seatcut prices` reads and writes them as a list.")]
pub struct Order {
    /// The job file, or - for standard input
    job: String,
    /// Show how every length is cut, with the saw settings
    #[arg(long)]
    cuts: bool,
    /// Print the order as one JSON document
    #[arg(long)]
    json: bool,
    /// Write the order as a spreadsheet file with formulas
    #[arg(long, value_name = "FILE")]
    sheet: Option<PathBuf>,
    /// Write the order as a list
    #[arg(long, value_name = "FILE")]
    csv: Option<PathBuf>,
    /// Write what to buy and the cutting plan as sheets
    #[arg(long, value_name = "FILE")]
    pdf: Option<PathBuf>,
    /// Write labels for the timbers
    #[arg(long, value_name = "FILE")]
    labels: Option<PathBuf>,
}

impl Order {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let (job, solution) = solving::solve(&file)?;
        solving::refuse_stopped(&solution)?;
        let outcome = Outcome::of(&job, &solution);
        let order = ordering::of(&job, &solution, outcome.checks().map(|checks| &checks.strength))?;
        let unmade = |why: drawings::PackError| Failure::NotBuilt(format!("{}: {why}", file.name));
        let mut made: Vec<(&Path, Vec<u8>)> = Vec::new();
        if let Some(place) = &self.sheet {
            made.push((place, drawings::order_xlsx(&solution, &order).map_err(unmade)?));
        }
        if let Some(place) = &self.csv {
            made.push((place, drawings::order_csv(&order).map_err(unmade)?.into_bytes()));
        }
        if let Some(place) = &self.pdf {
            made.push((place, drawings::order_pdf(&solution, &order).map_err(unmade)?));
        }
        if let Some(place) = &self.labels {
            made.push((place, drawings::labels_pdf(&solution, &order).map_err(unmade)?));
        }
        let files: Vec<(&Path, &[u8])> = made.iter().map(|(place, bytes)| (*place, bytes.as_slice())).collect();
        file.is_none_of(files.iter().map(|(place, _)| *place))?;
        writing::write_files(&files)?;
        let text = if self.json {
            serde_json::to_string_pretty(&order)
                .map_err(|why| Failure::NotBuilt(format!("the order can't be put into JSON: {why}")))?
                + "\n"
        } else if self.cuts {
            ordering::cutting(&solution, &order)
        } else {
            ordering::report(&solution, &order)
        };
        let written: String = files.iter().map(|(place, _)| format!("{}\n", place.display())).collect();
        writing::print((written + &text).as_bytes())
    }
}
