//! Writing: results to standard output, files whole or not at all.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::process;

use crate::failure::Failure;

/// Prints a result. A reader that has gone away (`| head`) is no fault.
pub fn print(text: &[u8]) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    match out.write_all(text).and_then(|()| out.flush()) {
        Err(why) if why.kind() != io::ErrorKind::BrokenPipe => {
            Err(Failure::CannotWrite { to: "standard output".into(), why })
        }
        _ => Ok(()),
    }
}

/// A file that is complete beside its place, waiting to be moved there. If it
/// is dropped before, nothing is left behind.
struct Waiting {
    part: PathBuf,
    place: PathBuf,
}

impl Waiting {
    fn write(place: &Path, bytes: &[u8]) -> io::Result<Self> {
        // Through a link to the file itself, so that the link stays a link.
        let place = fs::canonicalize(place).unwrap_or_else(|_| place.to_path_buf());
        if place.is_dir() {
            return Err(io::Error::new(io::ErrorKind::IsADirectory, "this is a folder"));
        }
        let name =
            place.file_name().ok_or_else(|| io::Error::new(io::ErrorKind::InvalidInput, "this is not a file name"))?;
        let mut part_name = std::ffi::OsString::from(".");
        part_name.push(name);
        part_name.push(format!(".{}.part", process::id()));
        let part = place.with_file_name(part_name);
        let mut file = OpenOptions::new().write(true).create_new(true).open(&part)?;
        let waiting = Self { part, place };
        waiting.fill(&mut file, bytes)?;
        Ok(waiting)
    }

    fn fill(&self, file: &mut File, bytes: &[u8]) -> io::Result<()> {
        if let Ok(old) = fs::metadata(&self.place) {
            fs::set_permissions(&self.part, old.permissions())?;
        }
        file.write_all(bytes)?;
        file.sync_all()
    }

    fn move_into_place(self) -> io::Result<()> {
        fs::rename(&self.part, &self.place)
    }
}

impl Drop for Waiting {
    fn drop(&mut self) {
        // After a move there is nothing left to remove, and before one there is nobody left to tell.
        let _ = fs::remove_file(&self.part);
    }
}

/// Writes files whole: each is completed beside its place first, and only when
/// all are complete are they moved. A fault leaves what was there before.
pub fn write_files(files: &[(&Path, &[u8])]) -> Result<(), Failure> {
    let cannot = |place: &Path| {
        let to = place.display().to_string();
        move |why| Failure::CannotWrite { to, why }
    };
    let waiting = files
        .iter()
        .map(|(place, bytes)| Waiting::write(place, bytes).map_err(cannot(place)))
        .collect::<Result<Vec<_>, _>>()?;
    for (file, (place, _)) in waiting.into_iter().zip(files) {
        file.move_into_place().map_err(cannot(place))?;
    }
    Ok(())
}

/// Writes one result to a file, or prints it when no file is named or it is `-`.
pub fn write_or_print(place: Option<&Path>, bytes: &[u8]) -> Result<(), Failure> {
    match place {
        Some(place) if place != Path::new("-") => write_files(&[(place, bytes)]),
        _ => print(bytes),
    }
}
