//! Changes one key of a job file and leaves the rest as it was written,
//! comments and layout included.
//!
//! An edit never makes a file worse: it is refused, with the reasons, if the
//! file would have a fault that it did not have before.

mod error;
mod tree;
mod value;

use crate::fault::{Fault, Faults};
use crate::keys::{self, Key};
use crate::letters::wall_index;
use crate::read::read;
pub use error::EditError;
use toml_edit::DocumentMut;
use tree::Place;

/// Sets a key, adding it if it is not there, and returns the new text.
///
/// The path has dots, with walls by letter: `roof.pitch`,
/// `roof.walls.B.gable`. The value is written as in the file; texts need no
/// quotes.
///
/// ```
/// let text = job::defaults_toml();
/// let text = job::edit::set(&text, "roof.walls.B.gable", "true")?;
/// let text = job::edit::set(&text, "timber.rafter.centres", "16 in")?;
/// let job = job::read(&text)?;
/// assert!(job.walls[1].gable);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the text is no job file, the path no key, or the file would have
/// faults that it did not have before.
pub fn set(text: &str, path: &str, value: &str) -> Result<String, EditError> {
    let key = find(path)?;
    let mut document = document(text)?;
    let value = value::of_text(&key.kind, value);
    tree::put(Place::root(document.as_table_mut()), "", path, value)?;
    accept(text, document.to_string())
}

/// Takes a key out, so that its default holds, and returns the new text. The
/// comments right above it and behind it go with it. Groups in braces that
/// are left empty go too.
///
/// # Errors
/// As [`set`]; also when the key is not in the file.
pub fn remove(text: &str, path: &str) -> Result<String, EditError> {
    find(path)?;
    let mut document = document(text)?;
    if !tree::take(Place::root(document.as_table_mut()), path) {
        return Err(EditError::NotThere { path: path.to_owned() });
    }
    accept(text, document.to_string())
}

/// The key at a path, or why there is none.
fn find(path: &str) -> Result<&'static Key, EditError> {
    let mut group = String::new();
    let mut words = path.split('.').peekable();
    while let Some(word) = words.next() {
        let children = keys::children(&group);
        let known = if children.contains(&"*") { wall_index(word).is_some() } else { children.contains(&word) };
        if !known {
            if children.contains(&"*") {
                return Err(EditError::NotAWall { letter: word.to_owned() });
            }
            let near = keys::suggest(&group, word);
            // A neighbour's name comes alone, a key elsewhere with its path.
            let whole = |near: String| if children.contains(&near.as_str()) { keys::join(&group, &near) } else { near };
            let rest: String = words.map(|word| format!(".{word}")).collect();
            let nearest = near.map(whole).map(|near| {
                let longer = format!("{near}{rest}");
                if keys::find(&longer).is_some() { longer } else { near }
            });
            return Err(EditError::UnknownKey { path: path.to_owned(), nearest });
        }
        group = keys::join(&group, word);
        if keys::find(&group).is_some() && words.peek().is_some() {
            return Err(EditError::UnknownKey { path: path.to_owned(), nearest: Some(group) });
        }
    }
    let inside = || keys::children(&group).iter().map(|word| keys::join(&group, word)).collect::<Vec<_>>().join(", ");
    keys::find(path).ok_or_else(|| EditError::Group { path: path.to_owned(), keys: inside().replace('*', "A") })
}

/// The text as a document that can be changed.
fn document(text: &str) -> Result<DocumentMut, EditError> {
    text.parse().map_err(|error: toml_edit::TomlError| match read(text) {
        Err(faults) => EditError::NotAJob(faults),
        Ok(_) => EditError::NotEditable { reason: error.message().to_owned() },
    })
}

/// The new text, unless it has a fault that the old one had not.
fn accept(old: &str, new: String) -> Result<String, EditError> {
    let Err(faults) = read(&new) else { return Ok(new) };
    let before = read(old).err();
    let is_new = |fault: &Fault| {
        let same = |known: &Fault| (known.code, &known.what) == (fault.code, &fault.what);
        !before.as_ref().is_some_and(|before| before.iter().any(same))
    };
    match Faults::from_list(faults.into_iter().filter(is_new).collect()) {
        None => Ok(new),
        Some(faults) => Err(EditError::Faults(faults)),
    }
}

#[cfg(test)]
mod tests;
