//! `seatcut defaults`: every key of a job file.

use crate::failure::Failure;
use crate::writing;

/// Runs the command.
pub fn run() -> Result<(), Failure> {
    writing::print(job::defaults_toml().as_bytes())
}
