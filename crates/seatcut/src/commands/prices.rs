//! `seatcut prices`: stock and prices of a job as a list, and a list into a job.

use std::path::PathBuf;

use clap::Args;

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::writing;

/// Stock and prices of a job as a list for a spreadsheet, or from one.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut prices house.toml > prices.csv
  seatcut prices house.toml --from prices.csv -o house.toml
A list has a head row with what, thickness_mm, depth_mm, length_mm, class, price, per, dated; timber is `timber`, \
anything else goes by its word in the order.")]
pub struct Prices {
    /// The job file, or - for standard input
    job: String,
    /// Put this list into the job, and print the job
    #[arg(long, value_name = "FILE")]
    from: Option<PathBuf>,
    /// Write here instead of printing
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
}

impl Prices {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let job = crate::solving::read(&file)?;
        let Some(list) = &self.from else {
            file.is_none_of(self.output.as_deref())?;
            return writing::write_or_print(self.output.as_deref(), order::prices::write_csv(&job).as_bytes());
        };
        let list = JobFile::read_or(&list.display().to_string(), "name the price list, a text of rows and commas")?;
        list.is_none_of(self.output.as_deref())?;
        let rows = order::prices::read_csv(&list.bytes)
            .map_err(|faults| Failure::BadInput(format!("{}:\n{faults}", list.name)))?;
        let text = std::str::from_utf8(&file.bytes)
            .map_err(|why| Failure::BadInput(format!("{} is not text: {why}; name the job file", file.name)))?;
        let changed =
            order::prices::put_into(text, &rows).map_err(|why| Failure::BadInput(format!("{}: {why}", file.name)))?;
        writing::write_or_print(self.output.as_deref(), changed.as_bytes())
    }
}
