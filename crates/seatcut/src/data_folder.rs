//! Where the jobs of this user are kept.

use std::path::PathBuf;

use etcetera::{BaseStrategy, choose_base_strategy};

use crate::failure::Failure;

/// Our folder among the user's data.
const NAME: &str = "seatcut";

/// The folder that was named, or ours among the user's data.
pub fn of(named: Option<PathBuf>) -> Result<PathBuf, Failure> {
    if let Some(folder) = named {
        return Ok(folder);
    }
    let strategy = choose_base_strategy()
        .map_err(|why| Failure::BadInput(format!("there is no folder for the jobs: {why}; name one with --data")))?;
    Ok(strategy.data_dir().join(NAME))
}
