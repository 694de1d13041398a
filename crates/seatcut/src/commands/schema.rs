//! `seatcut schema`: the JSON schema of job files.

use crate::failure::Failure;
use crate::writing;

/// Runs the command.
pub fn run() -> Result<(), Failure> {
    let text = serde_json::to_string_pretty(&job::schema())
        .map_err(|why| Failure::NotBuilt(format!("the schema can't be put into JSON: {why}")))?;
    writing::print((text + "\n").as_bytes())
}
