//! `seatcut backup`: all kept jobs in one file.

use std::path::PathBuf;

use clap::Args;
use workshop::store::{StoreError, backup};

use crate::failure::Failure;
use crate::{data_folder, writing};

/// Copy all kept jobs with their history.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  seatcut backup jobs-2026-06-02.sqlite
The workshop may be open meanwhile. To bring a backup back, close the workshop and put the file
into its data folder under the name jobs.sqlite, in place of the one that is there and of the
files jobs.sqlite-wal and jobs.sqlite-shm.")]
pub struct BackupTo {
    /// The file to write; one that is there already is kept
    file: PathBuf,
    /// The folder of the jobs; when left out, one among the user's data
    #[arg(long, value_name = "FOLDER")]
    data: Option<PathBuf>,
}

impl BackupTo {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let held = backup(&data_folder::of(self.data)?, &self.file).map_err(|why| match why {
            StoreError::Backup { file, why } => {
                Failure::CannotWrite { to: file.display().to_string(), why: std::io::Error::other(why) }
            }
            other => Failure::BadInput(other.to_string()),
        })?;
        let said = format!("{}: {} jobs, {} texts\n", self.file.display(), held.jobs, held.texts);
        writing::print(said.as_bytes())
    }
}
