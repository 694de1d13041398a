//! Opening the file, and bringing older ones up to date.

use super::StoreError;
use rusqlite::{Connection, OpenFlags, TransactionBehavior};
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;
use std::time::Duration;

/// What SQLite's header says of our files: `Seat` in letters.
const APPLICATION: i32 = i32::from_be_bytes(*b"Seat");

/// How long one connection waits for another, such as a backup's.
const PATIENCE: Duration = Duration::from_secs(10);

/// The steps from each format to the next: the first makes format 1. Steps are
/// only ever added.
pub(super) const STEPS: &[&str] = &[
    // Jobs and every text they ever had. `head` is the text that holds, `last` the last number given.
    "CREATE TABLE jobs (
        id TEXT NOT NULL PRIMARY KEY,
        head INTEGER NOT NULL,
        last INTEGER NOT NULL,
        title TEXT NOT NULL,
        off INTEGER NOT NULL
     ) STRICT;
     CREATE TABLE texts (
        job TEXT NOT NULL REFERENCES jobs (id),
        number INTEGER NOT NULL,
        base INTEGER NOT NULL,
        kind TEXT NOT NULL CHECK (kind IN ('saved', 'sent', 'merged', 'taken off')),
        text TEXT NOT NULL,
        device TEXT NOT NULL,
        at_ms INTEGER NOT NULL,
        PRIMARY KEY (job, number)
     ) STRICT;
     CREATE TABLE saves (
        save TEXT NOT NULL PRIMARY KEY,
        job TEXT NOT NULL REFERENCES jobs (id),
        digest BLOB NOT NULL,
        revision INTEGER NOT NULL,
        apart TEXT
     ) STRICT;",
    // Devices that were paired.
    "CREATE TABLE devices (
        id INTEGER NOT NULL PRIMARY KEY,
        hash BLOB NOT NULL UNIQUE,
        name TEXT NOT NULL,
        at_ms INTEGER NOT NULL
     ) STRICT;",
];

/// The format that this program writes.
pub(super) fn known() -> i64 {
    i64::try_from(STEPS.len()).unwrap_or(i64::MAX)
}

pub(super) fn make_folder(folder: &Path) -> Result<(), StoreError> {
    let cannot = |why: io::Error| StoreError::Folder { folder: folder.to_owned(), why: why.into() };
    let new = !folder.exists();
    fs::create_dir_all(folder).map_err(cannot)?;
    if new {
        // Jobs are nobody else's business on a shared machine.
        #[cfg(unix)]
        fs::set_permissions(folder, std::os::unix::fs::PermissionsExt::from_mode(0o700)).map_err(cannot)?;
    }
    Ok(())
}

/// The one connection that writes.
pub(super) fn for_writing(file: &Path) -> Result<Connection, StoreError> {
    refuse_foreign(file)?;
    let cannot = |error: rusqlite::Error| match StoreError::from(error) {
        StoreError::Other(why) => {
            StoreError::Folder { folder: file.parent().unwrap_or(file).to_owned(), why: io::Error::other(why).into() }
        }
        other => other,
    };
    let mut connection = Connection::open(file).map_err(cannot)?;
    connection.busy_timeout(PATIENCE)?;
    let found: i64 = connection.query_row("PRAGMA user_version", [], |row| row.get(0)).map_err(cannot)?;
    if found > known() {
        return Err(StoreError::Newer { file: file.to_owned(), found, known: known() });
    }
    if found == 0 {
        // Before the log is switched on, so that the file itself says whose it is from the start.
        connection.execute_batch(&format!("PRAGMA application_id = {APPLICATION}")).map_err(cannot)?;
    }
    connection.execute_batch("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;")?;
    bring_up_to_date(&mut connection)?;
    Ok(connection)
}

/// Takes every step that is missing, all of them or none.
fn bring_up_to_date(connection: &mut Connection) -> Result<(), StoreError> {
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let found: i64 = transaction.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    for step in STEPS.iter().skip(usize::try_from(found).unwrap_or(0)) {
        transaction.execute_batch(step)?;
    }
    transaction.execute_batch(&format!("PRAGMA user_version = {}", known()))?;
    Ok(transaction.commit()?)
}

/// A connection that only reads.
pub(super) fn for_reading(file: &Path) -> Result<Connection, StoreError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(file, flags)?;
    connection.busy_timeout(PATIENCE)?;
    Ok(connection)
}

/// Looks at the head of the file before SQLite does, so that a file that is not ours is not touched.
pub(super) fn refuse_foreign(file: &Path) -> Result<(), StoreError> {
    /// The head of an SQLite file, and where in it the application stands. Bytes.
    const HEAD: usize = 100;
    const APPLICATION_AT: std::ops::Range<usize> = 68..72;
    let Ok(opened) = File::open(file) else { return Ok(()) };
    let mut head = Vec::new();
    let read = opened.take(HEAD as u64).read_to_end(&mut head);
    // SQLite makes an empty file before it writes its head.
    let empty = read.is_ok() && head.is_empty();
    let ours = head.starts_with(b"SQLite format 3\0") && head.get(APPLICATION_AT) == Some(&APPLICATION.to_be_bytes());
    if empty || ours { Ok(()) } else { Err(StoreError::Foreign { file: file.to_owned() }) }
}
