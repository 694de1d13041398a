//! A copy of the store while it is in use.

use super::{FILE, StoreError, open};
use rusqlite::Connection;
use rusqlite::backup::Backup;
use std::ffi::OsString;
use std::fs;
use std::path::Path;
use std::time::Duration;

/// Pages to a step, and the pause after it, in which saves get their turn.
const PAGES: i32 = 512;
const PAUSE: Duration = Duration::from_millis(2);

/// What a backup holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BackedUp {
    /// Jobs, those off the shelf among them.
    pub jobs: i64,
    /// Texts in their histories.
    pub texts: i64,
}

/// Copies the store of a folder to a new file, checked before it gets its name.
/// The workshop may be running.
///
/// # Errors
/// When there is no store, or the file is there already or can't be written.
pub fn backup(folder: &Path, to: &Path) -> Result<BackedUp, StoreError> {
    let from = folder.join(FILE);
    if !from.exists() {
        return Err(StoreError::NotThere { folder: folder.to_owned() });
    }
    open::refuse_foreign(&from)?;
    let cannot = |why: String| StoreError::Backup { file: to.to_owned(), why };
    if to.exists() {
        return Err(cannot("there is a file of this name already".to_owned()));
    }
    let mut part = OsString::from(to);
    part.push(".part");
    let part = Path::new(&part);
    // What an interrupted backup left.
    let _ = fs::remove_file(part);
    let copied = copy(&from, part);
    let renamed =
        copied.and_then(|held| fs::rename(part, to).map(|()| held).map_err(|error| cannot(error.to_string())));
    if renamed.is_err() {
        let _ = fs::remove_file(part);
    }
    renamed.map_err(|error| match error {
        StoreError::Other(why) => cannot(why),
        other => other,
    })
}

fn copy(from: &Path, part: &Path) -> Result<BackedUp, StoreError> {
    let source = open::for_reading(from)?;
    let mut copy = Connection::open(part)?;
    Backup::new(&source, &mut copy)?.run_to_completion(PAGES, PAUSE, None)?;
    // One file by itself, without a log beside it.
    copy.execute_batch("PRAGMA journal_mode = DELETE")?;
    let sound: String = copy.query_row("PRAGMA integrity_check", [], |row| row.get(0))?;
    if sound != "ok" {
        return Err(StoreError::Damaged(sound));
    }
    let count = |table: &str| copy.query_row(&format!("SELECT count(*) FROM {table}"), [], |row| row.get(0));
    let held = BackedUp { jobs: count("jobs")?, texts: count("texts")? };
    copy.close().map_err(|(_, error)| error)?;
    // On the disk before it gets its name.
    fs::File::open(part).and_then(|file| file.sync_all()).map_err(|error| StoreError::Other(error.to_string()))?;
    Ok(held)
}
