//! `seatcut site`: how a job is put up, and what it is put up from.

use std::path::{Path, PathBuf};

use clap::Args;

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::{progress, setting_up, solving, writing};

/// The order of work, lifts, programme and access.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut site house.toml
  seatcut site house.toml --pdf house-site.pdf
  seatcut site house.toml --calendar house.ics
The scaffold designer, the principal contractor and whoever inspects decide; figures from memory are never a pass.")]
pub struct Site {
    /// The job file, or - for standard input
    job: String,
    /// Print everything as one JSON document
    #[arg(long)]
    json: bool,
    /// Write the sheets
    #[arg(long, value_name = "FILE")]
    pdf: Option<PathBuf>,
    /// Write inspections and work as a calendar file; the job needs the first day, `start` of its programme
    #[arg(long, value_name = "FILE")]
    calendar: Option<PathBuf>,
}

impl Site {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let (job, solution) = solving::solve(&file)?;
        solving::refuse_stopped(&solution)?;
        let named = |why: String| Failure::BadInput(format!("{}: {why}", file.name));
        let site = progress::during("working out the order of work", || site::whole::site(&job, &solution))
            .map_err(|why| named(why.to_string()))?;
        let mut made: Vec<(&Path, Vec<u8>)> = Vec::new();
        if let Some(place) = &self.pdf {
            let pdf = drawings::site_pdf(&solution, &drawings::SitePapers::of(&site));
            made.push((place, pdf.map_err(|why| Failure::NotBuilt(format!("{}: {why}", file.name)))?));
        }
        if let Some(place) = &self.calendar {
            let calendar = site::records::calendar(&job, &site.programme).map_err(|why| named(why.to_string()))?;
            made.push((place, calendar.into_bytes()));
        }
        let files: Vec<(&Path, &[u8])> = made.iter().map(|(place, bytes)| (*place, bytes.as_slice())).collect();
        file.is_none_of(files.iter().map(|(place, _)| *place))?;
        writing::write_files(&files)?;
        let text = if self.json {
            serde_json::to_string_pretty(&site)
                .map_err(|why| Failure::NotBuilt(format!("it can't be put into JSON: {why}")))?
                + "\n"
        } else {
            setting_up::report(&solution, &site)
        };
        let written: String = files.iter().map(|(place, _)| format!("{}\n", place.display())).collect();
        writing::print((written + &text).as_bytes())
    }
}
