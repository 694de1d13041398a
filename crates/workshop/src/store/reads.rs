//! What is read from the store.

use super::{Reader, StoreError};
use rusqlite::{Connection, OptionalExtension, params};
use serde::Serialize;

/// Every job there is and was.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Shelf {
    /// The jobs on the shelf, the last changed first.
    pub jobs: Vec<JobRow>,
    /// Jobs that were taken off.
    pub gone: Vec<Gone>,
}

/// A job on the shelf.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct JobRow {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// The number of its text.
    pub revision: i64,
    /// Bytes of its text.
    pub size: i64,
    /// When it was changed, ms since 1970 by the workshop's clock.
    pub changed: i64,
}

/// A job that was taken off the shelf.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Gone {
    /// Its id.
    pub id: String,
    /// What it was called.
    pub title: String,
    /// The number under which it was taken off.
    pub revision: i64,
}

/// A text of a job.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct JobText {
    /// Its number.
    pub revision: i64,
    /// The whole text; empty when the job is off the shelf.
    pub text: String,
    /// Whether the job is off the shelf, or was taken off here.
    pub gone: bool,
}

/// A line of a job's history.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HistoryRow {
    /// The number of the text.
    pub revision: i64,
    /// The text that it grew from.
    pub base: i64,
    /// `saved`, `merged` from two, `sent` and kept beside the job, or `taken off`.
    pub kind: String,
    /// The device that sent it.
    pub device: String,
    /// When it came, ms since 1970.
    pub at: i64,
    /// Bytes of the text.
    pub size: i64,
}

pub(super) fn is_empty(connection: &Connection) -> Result<bool, StoreError> {
    Ok(connection.query_row("SELECT NOT EXISTS (SELECT 1 FROM jobs)", [], |row| row.get(0))?)
}

impl Reader<'_> {
    /// Every job.
    ///
    /// # Errors
    /// When the store can't be read.
    pub fn shelf(&self) -> Result<Shelf, StoreError> {
        let mut statement = self.0.prepare(
            "SELECT id, title, head, octet_length(text), at_ms, off FROM jobs JOIN texts ON job = id AND number = head
             ORDER BY at_ms DESC, id",
        )?;
        let mut rows = statement.query([])?;
        let mut shelf = Shelf { jobs: Vec::new(), gone: Vec::new() };
        while let Some(row) = rows.next()? {
            let (id, title, revision) = (row.get(0)?, row.get(1)?, row.get(2)?);
            if row.get(5)? {
                shelf.gone.push(Gone { id, title, revision });
            } else {
                shelf.jobs.push(JobRow { id, title, revision, size: row.get(3)?, changed: row.get(4)? });
            }
        }
        Ok(shelf)
    }

    /// The text of a job that holds.
    ///
    /// # Errors
    /// When the store can't be read.
    pub fn job(&self, id: &str) -> Result<Option<JobText>, StoreError> {
        let sql = "SELECT head, text, off FROM jobs JOIN texts ON job = id AND number = head WHERE id = ?1";
        let row = |row: &rusqlite::Row<'_>| Ok(JobText { revision: row.get(0)?, text: row.get(1)?, gone: row.get(2)? });
        Ok(self.0.query_row(sql, [id], row).optional()?)
    }

    /// Any text of a job.
    ///
    /// # Errors
    /// When the store can't be read.
    pub fn text(&self, id: &str, revision: i64) -> Result<Option<JobText>, StoreError> {
        let sql = "SELECT number, text, kind = 'taken off' FROM texts WHERE job = ?1 AND number = ?2";
        let row = |row: &rusqlite::Row<'_>| Ok(JobText { revision: row.get(0)?, text: row.get(1)?, gone: row.get(2)? });
        Ok(self.0.query_row(sql, params![id, revision], row).optional()?)
    }

    /// The history of a job, the newest first. Empty when there is no such job.
    ///
    /// # Errors
    /// When the store can't be read.
    pub fn history(&self, id: &str) -> Result<Vec<HistoryRow>, StoreError> {
        let mut statement = self.0.prepare(
            "SELECT number, base, kind, device, at_ms, octet_length(text) FROM texts WHERE job = ?1
             ORDER BY number DESC",
        )?;
        let rows = statement.query_map([id], |row| {
            Ok(HistoryRow {
                revision: row.get(0)?,
                base: row.get(1)?,
                kind: row.get(2)?,
                device: row.get(3)?,
                at: row.get(4)?,
                size: row.get(5)?,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}
