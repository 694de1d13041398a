//! `seatcut solve`: the figures of a job.

use clap::Args;

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::{all, figures, solving, writing};

/// Solve a job.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut solve boathouse.toml
  seatcut solve boathouse.toml --json > boathouse.json
  seatcut new hall --length 9600 --width 4800 | seatcut solve -")]
pub struct Solve {
    /// The job file, or - for standard input
    job: String,
    /// Print the whole solution as one JSON document
    #[arg(long)]
    json: bool,
}

impl Solve {
    /// Runs the command. A job with a stop notice is still printed, so that
    /// its notices can be read; the exit code says it.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let (job, solution) = solving::solve(&file)?;
        let (document, missing) = all::of(&job, solution);
        let text = if self.json {
            // The document has no place for it.
            eprint!("{}", all::missing(&missing).trim_start());
            document.json().map_err(|why| Failure::NotBuilt(format!("the solution can't be put into JSON: {why}")))?
        } else {
            figures::summary(&document.solution) + &all::lines(&document, missing)
        };
        writing::print(text.as_bytes())?;
        solving::refuse_stopped(&document.solution)
    }
}
