//! `seatcut set`: change one key of a job file, keeping its comments.

use std::path::Path;

use clap::Args;

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::writing;

/// Change one key.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut set boathouse.toml roof.pitch 42.5
  seatcut set boathouse.toml roof.walls.B.gable true
  seatcut set boathouse.toml timber.rafter.size '[47, 175]'
  seatcut set boathouse.toml roof.walls.B.gable --default
`seatcut defaults` shows every key. The file stays as it is if the change would put a fault into it.")]
pub struct Set {
    /// The job file; for - the changed text is printed
    job: String,
    /// The key, with dots between its parts
    key: String,
    /// The value as the file would hold it; plain words need no quotes
    #[arg(allow_hyphen_values = true, required_unless_present = "default")]
    value: Option<String>,
    /// Take the key out of the file, so that its default holds
    #[arg(long, conflicts_with = "value")]
    default: bool,
}

impl Set {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let refused = |why: &dyn std::fmt::Display| Failure::BadInput(format!("{}: {why}", file.name));
        let text = std::str::from_utf8(&file.bytes)
            .map_err(|_| refused(&"this is no text, so it is no job file; name the job file"))?;
        let changed = match &self.value {
            Some(value) => job::edit::set(text, &self.key, value),
            None => job::edit::remove(text, &self.key),
        };
        let changed = changed.map_err(|error| refused(&error))?;
        writing::write_or_print(Some(Path::new(&self.job)), changed.as_bytes())
    }
}
