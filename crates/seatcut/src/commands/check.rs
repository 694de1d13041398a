//! `seatcut check`: is the job good, and can its roof be built?

use clap::Args;

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::strong::Outcome;
use crate::{figures, solving, writing};

/// Check a job.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut check boathouse.toml
  seatcut check - < boathouse.toml")]
pub struct Check {
    /// The job file, or - for standard input
    job: String,
}

impl Check {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let (job, solution) = solving::solve(&file)?;
        let stopped = solving::refuse_stopped(&solution);
        if stopped.is_ok() {
            let totals = &solution.totals;
            let line =
                format!("{}: good. {} timbers in {} pattern pieces.\n", file.name, totals.members, totals.pieces);
            let strength = Outcome::of(&job, &solution).line();
            writing::print((line + &figures::notices(&solution) + &strength).as_bytes())?;
        }
        stopped
    }
}
