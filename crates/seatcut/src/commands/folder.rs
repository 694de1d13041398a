//! `seatcut folder`: the app for any web host.

use std::fs;
use std::io;
use std::path::{Component, Path, PathBuf};

use clap::Args;

use crate::failure::Failure;
use crate::{embedded, writing};

/// What says that a folder is ours, and what we put there.
const LIST: &str = "seatcut-files.txt";
/// What the host's keeper should know.
const READ_ME: &str = "READ-ME.txt";
const READ_ME_TEXT: &str = include_str!("folder_read_me.txt");

/// Write the app as a folder for any web host.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  seatcut folder public/roofs
A folder that the command wrote before is brought up to date; any other must be empty.
READ-ME.txt in the folder says what the host has to send with the files.")]
pub struct Folder {
    /// The folder
    folder: PathBuf,
}

impl Folder {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let before = ours(&self.folder)?;
        let files = embedded::files()?;
        let cannot = |place: &Path| {
            let to = place.display().to_string();
            move |why: io::Error| Failure::CannotWrite { to, why }
        };
        for (path, _) in &files {
            if let Some(parent) = self.folder.join(path).parent() {
                fs::create_dir_all(parent).map_err(cannot(parent))?;
            }
        }
        let list: String = files.iter().map(|(path, _)| format!("{path}\n")).collect();
        let (list_place, read_me) = (self.folder.join(LIST), self.folder.join(READ_ME));
        let places: Vec<PathBuf> = files.iter().map(|(path, _)| self.folder.join(path)).collect();
        let mut all: Vec<(&Path, &[u8])> =
            places.iter().zip(&files).map(|(place, (_, bytes))| (place.as_path(), bytes.as_ref())).collect();
        all.push((&read_me, READ_ME_TEXT.as_bytes()));
        all.push((&list_place, list.as_bytes()));
        writing::write_files(&all)?;
        // What an older app had and this one has not.
        for old in before.iter().filter(|old| !files.iter().any(|(path, _)| path == *old)) {
            let place = self.folder.join(old);
            if place.is_file() {
                fs::remove_file(&place).map_err(cannot(&place))?;
            }
        }
        let bytes: usize = files.iter().map(|(_, bytes)| bytes.len()).sum();
        let said = format!("{}: {} files, {} kB; see {READ_ME}\n", self.folder.display(), files.len(), bytes / 1000);
        writing::print(said.as_bytes())
    }
}

/// What we put into a folder before. Refuses a folder that holds anything else.
fn ours(folder: &Path) -> Result<Vec<String>, Failure> {
    let refuse = |why: &str| Failure::BadInput(format!("{}: {why}; name a new or an empty one", folder.display()));
    if !folder.exists() {
        return Ok(Vec::new());
    }
    let mut inside = fs::read_dir(folder).map_err(|why| refuse(&format!("this folder can't be read ({why})")))?;
    match fs::read_to_string(folder.join(LIST)) {
        Ok(list) => Ok(list.lines().filter(|line| is_below(line)).map(str::to_owned).collect()),
        Err(_) if inside.next().is_none() => Ok(Vec::new()),
        Err(_) => Err(refuse("this folder holds files that are not the app's")),
    }
}

/// Whether a path of the list stays in the folder.
fn is_below(path: &str) -> bool {
    !path.is_empty() && Path::new(path).components().all(|part| matches!(part, Component::Normal(_)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_of_a_list_stay_in_the_folder() {
        assert!(is_below("assets/core.wasm"));
        for path in ["", "/etc/hosts", "../jobs.sqlite", "assets/../../x"] {
            assert!(!is_below(path), "{path}");
        }
    }
}
