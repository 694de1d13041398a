//! Keeping a text of a job: as it is, merged, or beside the one that holds.
//!
//! Nothing that was sent is ever dropped: a text that can't become the job is
//! kept in its history under a number of its own.

use super::StoreError;
use super::title::title_of;
use crate::clock::now_ms;
use merge::{Apart, Clash, MergeError, Merged};
use rusqlite::{Connection, OptionalExtension, params};
use sha2::{Digest, Sha256};

/// A text that a device wants kept.
#[derive(Clone, Debug)]
pub struct Save {
    /// The job.
    pub job: String,
    /// The text that it grew from; 0 for a new job.
    pub base: i64,
    /// The whole job.
    pub text: String,
    /// What the device calls itself.
    pub device: String,
    /// The name of this save. A save that comes again, because its answer was
    /// lost, gets the same answer.
    pub save: String,
}

/// What became of a save.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// This is the job now.
    Kept {
        /// Its number.
        revision: i64,
        /// Its text: what was sent, or that merged with what was there.
        text: String,
    },
    /// The job stays as it was, and what was sent is in the history.
    Apart {
        /// The number of the text that holds.
        revision: i64,
        /// That text.
        theirs: String,
        /// What the two disagree on.
        apart: Apart,
    },
    /// The job is off the shelf, and what was sent says nothing new.
    Off {
        /// The number under which it was taken off.
        revision: i64,
    },
}

/// A job as it stands.
struct Head {
    head: i64,
    last: i64,
    off: bool,
    text: String,
}

/// Keeps a text. Runs inside a transaction.
pub(super) fn save(connection: &Connection, save: &Save) -> Result<Answer, StoreError> {
    let digest = digest(save);
    if let Some(answer) = answered(connection, save, &digest)? {
        return Ok(answer);
    }
    let answer = match head(connection, &save.job)? {
        None => {
            connection
                .prepare_cached("INSERT INTO jobs (id, head, last, title, off) VALUES (?1, 0, 0, '', 0)")?
                .execute([&save.job])?;
            Job { connection, save, last: 0 }.becomes("saved", &save.text)?
        }
        Some(head) => onto(connection, save, head)?,
    };
    let (revision, apart) = match &answer {
        Answer::Kept { revision, .. } => (revision, None),
        Answer::Apart { revision, apart, .. } => (revision, Some(json(apart)?)),
        Answer::Off { revision } => (revision, None),
    };
    connection
        .prepare_cached("INSERT INTO saves (save, job, digest, revision, apart) VALUES (?1, ?2, ?3, ?4, ?5)")?
        .execute(params![save.save, save.job, digest, revision, apart])?;
    Ok(answer)
}

/// Keeps a text of a job that is there.
fn onto(connection: &Connection, save: &Save, head: Head) -> Result<Answer, StoreError> {
    let mut job = Job { connection, save, last: head.last };
    let base = text(connection, &save.job, save.base)?;
    if head.off {
        // Whoever changed it wants it; whoever only has it still does not.
        return match base {
            Some(base) if base == save.text => Ok(Answer::Off { revision: head.head }),
            _ => job.becomes("saved", &save.text),
        };
    }
    if save.text == head.text {
        return Ok(Answer::Kept { revision: head.head, text: head.text });
    }
    if save.base == head.head {
        return job.becomes("saved", &save.text);
    }
    // A base that is not known here, as after a backup was brought back, is none: what differs is shown side by side.
    let merged = merge::merge(base.as_deref().unwrap_or_default(), &save.text, &head.text);
    let apart = match merged {
        Ok(Merged::Whole(text)) if text == head.text => {
            return Ok(Answer::Kept { revision: head.head, text });
        }
        Ok(Merged::Whole(text)) if text == save.text => return job.becomes("saved", &text),
        Ok(Merged::Whole(text)) if text.len() <= job::LARGEST_FILE => {
            job.keep("sent", &save.text)?;
            return job.becomes("merged", &text);
        }
        Ok(Merged::Whole(_)) => whole("Both together are longer than a job file can be".to_owned()),
        Ok(Merged::Apart(apart)) => apart,
        Err(error @ MergeError::Unreadable { .. }) => whole(error.to_string()),
        Err(error) => whole(error.to_string()),
    };
    job.keep("sent", &save.text)?;
    Ok(Answer::Apart { revision: head.head, theirs: head.text, apart })
}

/// Two texts that can only be looked at as a whole.
fn whole(words: String) -> Apart {
    let clash = Clash { path: String::new(), words, base: None, ours: None, theirs: None };
    Apart { clashes: vec![clash], text: None }
}

/// Takes a job off the shelf if it still is what the device knows. `None` when there is no such job.
pub(super) fn take_off(
    connection: &Connection,
    job: &str,
    revision: i64,
    device: &str,
) -> Result<Option<Answer>, StoreError> {
    let Some(head) = head(connection, job)? else { return Ok(None) };
    if head.off {
        return Ok(Some(Answer::Off { revision: head.head }));
    }
    if head.head != revision {
        let apart = whole("The job was changed elsewhere since".to_owned());
        return Ok(Some(Answer::Apart { revision: head.head, theirs: head.text, apart }));
    }
    let save =
        Save { job: job.to_owned(), base: revision, text: head.text, device: device.to_owned(), save: String::new() };
    let mut taken = Job { connection, save: &save, last: head.last };
    taken.becomes("taken off", "")?;
    connection.execute("UPDATE jobs SET off = 1, title = ?2 WHERE id = ?1", params![job, title_of(&save.text)])?;
    Ok(Some(Answer::Off { revision: taken.last }))
}

/// A job whose history grows.
struct Job<'s> {
    connection: &'s Connection,
    save: &'s Save,
    last: i64,
}

impl Job<'_> {
    /// Adds a text to the history.
    fn keep(&mut self, kind: &str, text: &str) -> Result<(), StoreError> {
        self.last += 1;
        self.connection
            .prepare_cached(
                "INSERT INTO texts (job, number, base, kind, text, device, at_ms) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
            )?
            .execute(params![self.save.job, self.last, self.save.base, kind, text, self.save.device, now_ms()])?;
        self.connection
            .prepare_cached("UPDATE jobs SET last = ?2 WHERE id = ?1")?
            .execute(params![self.save.job, self.last])?;
        Ok(())
    }

    /// Adds a text to the history, and makes it the one that holds.
    fn becomes(&mut self, kind: &str, text: &str) -> Result<Answer, StoreError> {
        self.keep(kind, text)?;
        self.connection
            .prepare_cached("UPDATE jobs SET head = ?2, title = ?3, off = 0 WHERE id = ?1")?
            .execute(params![self.save.job, self.last, title_of(text)])?;
        Ok(Answer::Kept { revision: self.last, text: text.to_owned() })
    }
}

fn head(connection: &Connection, job: &str) -> Result<Option<Head>, StoreError> {
    let found = connection
        .prepare_cached(
            "SELECT head, last, off, text FROM jobs JOIN texts ON texts.job = id AND number = head WHERE id = ?1",
        )?
        .query_row([job], |row| Ok(Head { head: row.get(0)?, last: row.get(1)?, off: row.get(2)?, text: row.get(3)? }))
        .optional()?;
    Ok(found)
}

fn text(connection: &Connection, job: &str, number: i64) -> Result<Option<String>, StoreError> {
    let found = connection
        .prepare_cached("SELECT text FROM texts WHERE job = ?1 AND number = ?2")?
        .query_row(params![job, number], |row| row.get(0))
        .optional()?;
    Ok(found)
}

/// The answer that a save of this name got, if it came before.
fn answered(connection: &Connection, save: &Save, digest: &[u8; 32]) -> Result<Option<Answer>, StoreError> {
    let found: Option<(String, [u8; 32], i64, Option<String>)> = connection
        .prepare_cached("SELECT job, digest, revision, apart FROM saves WHERE save = ?1")?
        .query_row([&save.save], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))
        .optional()?;
    let Some((job, known, revision, apart)) = found else { return Ok(None) };
    if job != save.job || known != *digest {
        return Err(StoreError::SaveReused);
    }
    let then = text(connection, &job, revision)?.unwrap_or_default();
    Ok(Some(match apart {
        Some(apart) => {
            let apart = serde_json::from_str(&apart).map_err(|error| StoreError::Damaged(error.to_string()))?;
            Answer::Apart { revision, theirs: then, apart }
        }
        None if then.is_empty() => Answer::Off { revision },
        None => Answer::Kept { revision, text: then },
    }))
}

fn digest(save: &Save) -> [u8; 32] {
    let mut digest = Sha256::new();
    digest.update(save.job.as_bytes());
    digest.update(save.base.to_le_bytes());
    digest.update(save.text.as_bytes());
    digest.finalize().into()
}

fn json(apart: &Apart) -> Result<String, StoreError> {
    serde_json::to_string(apart).map_err(|error| StoreError::Other(error.to_string()))
}
