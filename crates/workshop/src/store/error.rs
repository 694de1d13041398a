//! Why the store can't be used, and what to do.

use std::io;
use std::path::PathBuf;
use std::sync::Arc;
use thiserror::Error;

/// Why the store can't be used. Each text says what to do.
#[derive(Clone, Debug, Error)]
#[non_exhaustive]
pub enum StoreError {
    /// The folder can't be made or written to.
    #[error("the folder {folder} can't be used for the jobs: {why}. Name one that you may write to with --data")]
    Folder {
        /// Which.
        folder: PathBuf,
        /// What the system says.
        why: Arc<io::Error>,
    },
    /// The file is there but is no store of ours.
    #[error(
        "{file} is not a store of jobs of this program; it was left as it is. Name another folder with --data, or move the file away"
    )]
    Foreign {
        /// Which.
        file: PathBuf,
    },
    /// A later version of the program wrote it.
    #[error(
        "{file} was written by a newer version of this program (its format is {found}, this version knows up to {known}); it was left as it is. Install the newer version"
    )]
    Newer {
        /// Which.
        file: PathBuf,
        /// Its format.
        found: i64,
        /// The newest that is known.
        known: i64,
    },
    /// The file is damaged.
    #[error(
        "the store of jobs is damaged: {0}. Stop the program, put the file aside and bring back the last backup; what is on the phones is sent again"
    )]
    Damaged(String),
    /// The disk is full.
    #[error(
        "the disk of the workshop's machine is full, so nothing was kept. Make room and save again; the work is still on this device"
    )]
    Full,
    /// Another program holds it.
    #[error("another program holds the store of jobs. Close it and try again")]
    Busy,
    /// There is nothing to back up.
    #[error("there is no store of jobs in {folder}. Name the folder that `seatcut serve` uses with --data")]
    NotThere {
        /// Where.
        folder: PathBuf,
    },
    /// The backup can't be written.
    #[error("the backup {file} can't be written: {why}. Name a new file in a folder that you may write to")]
    Backup {
        /// Which.
        file: PathBuf,
        /// Why.
        why: String,
    },
    /// The same name was given to two saves.
    #[error("two different saves came under one name. Load the app again")]
    SaveReused,
    /// The writer has stopped.
    #[error("the workshop is closing. Save again when it is back")]
    Stopped,
    /// Anything else that SQLite says.
    #[error("the store of jobs can't be used: {0}. Try again; if it stays so, start the workshop again")]
    Other(String),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        use rusqlite::ErrorCode::{DatabaseBusy, DatabaseCorrupt, DatabaseLocked, DiskFull, NotADatabase};
        match error.sqlite_error_code() {
            Some(DiskFull) => Self::Full,
            Some(DatabaseBusy | DatabaseLocked) => Self::Busy,
            Some(DatabaseCorrupt | NotADatabase) => Self::Damaged(error.to_string()),
            _ => Self::Other(error.to_string()),
        }
    }
}
