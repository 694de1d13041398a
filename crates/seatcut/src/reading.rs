//! Reading job files: at most so much, and text only.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;

use crate::failure::Failure;

/// A job file as read: its name for messages, and its bytes.
#[derive(Debug)]
pub struct JobFile {
    /// The path as given, or `standard input`.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

impl JobFile {
    /// Reads a file, or standard input for `-`; never more than a job file may
    /// hold and one byte, so that a file of any size is refused at once.
    pub fn read(path: &str) -> Result<Self, Failure> {
        Self::read_or(path, "name a job file, or start one with `seatcut new`")
    }

    /// The same with what to do when it can't be read: for a file that is no job.
    pub fn read_or(path: &str, remedy: &str) -> Result<Self, Failure> {
        let name = if path == "-" { "standard input".to_owned() } else { path.to_owned() };
        let cannot = |why: io::Error| Failure::BadInput(format!("{name} can't be read: {why}; {remedy}"));
        let mut bytes = Vec::new();
        let most = job::LARGEST_FILE as u64 + 1;
        if path == "-" {
            io::stdin().lock().take(most).read_to_end(&mut bytes).map_err(cannot)?;
        } else {
            File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes)).map_err(cannot)?;
        }
        if bytes.len() > job::LARGEST_FILE {
            return Err(Failure::BadInput(format!(
                "{name} is longer than a job file can be ({} bytes): is it another kind of file? Name the job file",
                job::LARGEST_FILE
            )));
        }
        Ok(Self { name, bytes })
    }

    /// Refuses to write a result over this file: a slip of the name would take the job with it.
    pub fn is_none_of<'p>(&self, places: impl IntoIterator<Item = &'p Path>) -> Result<(), Failure> {
        // What can't be found yet is no file to lose.
        let Ok(own) = fs::canonicalize(&self.name) else { return Ok(()) };
        match places.into_iter().find(|place| fs::canonicalize(place).is_ok_and(|place| place == own)) {
            Some(place) => Err(Failure::BadInput(format!(
                "{} is the file that is read, and would be lost: name another file for the result",
                place.display()
            ))),
            None => Ok(()),
        }
    }
}
