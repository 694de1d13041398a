//! The jobs and all their texts, in SQLite.
//!
//! One thread writes. Saves that wait at the same time go into one
//! transaction, and none is answered before it is on the disk. Reads have
//! connections of their own and never wait for the writer.

mod backup;
mod devices;
mod error;
mod open;
mod reads;
mod saves;
mod title;
mod writer;

pub use backup::{BackedUp, backup};
pub use devices::Device;
pub use error::StoreError;
pub use reads::{Gone, HistoryRow, JobRow, JobText, Shelf};
pub use saves::{Answer, Save};

use rusqlite::Connection;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use writer::Writer;

/// The name of the file in the data folder.
pub const FILE: &str = "jobs.sqlite";

/// Most connections for reading that are kept open between reads.
const IDLE_READERS: usize = 8;

/// The store of a workshop, open.
#[derive(Debug)]
pub struct Store {
    file: PathBuf,
    // Closed before the writer, which as the last one puts its log into the file.
    readers: Mutex<Vec<Connection>>,
    writer: Writer,
}

impl Store {
    /// Opens the store in a folder, and makes both if they are not there.
    ///
    /// # Errors
    /// When the folder or the file can't be used; the file is left as it was.
    pub fn open(folder: &Path) -> Result<Self, StoreError> {
        let file = folder.join(FILE);
        open::make_folder(folder)?;
        let connection = open::for_writing(&file)?;
        Ok(Self { file, readers: Mutex::default(), writer: Writer::start(connection)? })
    }

    /// Keeps a text of a job. Answered when it is on the disk.
    ///
    /// # Errors
    /// When it could not be kept; then nothing of it was.
    pub async fn save(&self, save: Save) -> Result<Answer, StoreError> {
        self.writer.run(move |connection| saves::save(connection, &save)).await
    }

    /// Takes a job off the shelf; its texts stay in the history.
    ///
    /// # Errors
    /// As [`Store::save`].
    pub async fn take_off(&self, job: String, revision: i64, device: String) -> Result<Option<Answer>, StoreError> {
        self.writer.run(move |connection| saves::take_off(connection, &job, revision, &device)).await
    }

    /// Puts a first job on the shelf of a store that never had one.
    ///
    /// # Errors
    /// As [`Store::save`].
    pub async fn start_with(&self, save: Save) -> Result<bool, StoreError> {
        self.writer
            .run(move |connection| {
                let empty = reads::is_empty(connection)?;
                if empty {
                    saves::save(connection, &save)?;
                }
                Ok(empty)
            })
            .await
    }

    /// Remembers a paired device by the hash of its token.
    ///
    /// # Errors
    /// As [`Store::save`].
    pub async fn pair(&self, hash: [u8; 32], name: String) -> Result<(), StoreError> {
        self.writer.run(move |connection| devices::add(connection, &hash, &name)).await
    }

    /// Forgets a paired device. False when there is none of this number.
    ///
    /// # Errors
    /// As [`Store::save`].
    pub async fn forget(&self, device: i64) -> Result<bool, StoreError> {
        self.writer.run(move |connection| devices::forget(connection, device)).await
    }

    /// Reads with a connection of its own. Blocks: call it where that is allowed.
    ///
    /// # Errors
    /// When the store can't be read.
    pub fn read<T>(&self, read: impl FnOnce(&Reader<'_>) -> Result<T, StoreError>) -> Result<T, StoreError> {
        let kept = self.readers.lock().unwrap_or_else(PoisonError::into_inner).pop();
        let connection = match kept {
            Some(connection) => connection,
            None => open::for_reading(&self.file)?,
        };
        let result = read(&Reader(&connection));
        let mut readers = self.readers.lock().unwrap_or_else(PoisonError::into_inner);
        if readers.len() < IDLE_READERS {
            readers.push(connection);
        }
        result
    }
}

/// What can be read.
#[derive(Debug)]
pub struct Reader<'c>(&'c Connection);
