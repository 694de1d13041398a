//! Changes one key, or one group in braces, of a job file and leaves the rest as it was written,
//! comments and layout included.
//!
//! An edit never makes a file worse: it is refused, with the reasons, if the
//! file would have a fault that it did not have before.

mod error;
mod tree;
mod value;

use crate::Job;
use crate::fault::{Fault, Faults};
use crate::keys::{self, Key, Names, is_name, named, with_names};
use crate::read::read;
pub use error::EditError;
use toml_edit::DocumentMut;
use tree::Place;

/// Sets a key, adding it if it is not there, and returns the new text.
///
/// The path has dots, with walls by letter: `roof.pitch`,
/// `roof.walls.B.gable`. The value is written as in the file; texts need no
/// quotes. A group is set as a whole, in braces, which is the way to put in
/// what needs several keys at once, such as a collar or an opening.
///
/// ```
/// let text = job::defaults_toml();
/// let text = job::edit::set(&text, "roof.walls.B.gable", "true")?;
/// let text = job::edit::set(&text, "timber.rafter.centres", "16 in")?;
/// let text = job::edit::set(&text, "timber.collar", "{ size = [47, 150], height = 1200 }")?;
/// let job = job::read(&text)?;
/// assert!(job.walls[1].gable && job.timber.parts.collar.is_some());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the text is no job file, the path no key, or the file would have
/// faults that it did not have before.
pub fn set(text: &str, path: &str, value: &str) -> Result<String, EditError> {
    let target = find(path)?;
    let mut document = document(text)?;
    put(&mut document, path, target, value)?;
    accept(text, document.to_string())
}

/// Sets and takes out many keys or groups at once: each a path, and its value
/// or nothing. The file is read and checked once, whatever their number. What
/// is to be taken out and is not there makes no fault.
///
/// ```
/// let ticks = [("done.Jack-1", Some("{ state = \"cut\" }")), ("done.Jack-2", None)];
/// let text = job::edit::set_all(&job::defaults_toml(), ticks)?;
/// assert_eq!(job::read(&text)?.done["Jack-1"].state, job::TickState::Cut);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// As [`set`]; then nothing is changed.
pub fn set_all<'c>(
    text: &str,
    changes: impl IntoIterator<Item = (&'c str, Option<&'c str>)>,
) -> Result<String, EditError> {
    accept(text, changed(text, changes)?)
}

/// As [`set_all`], and gives the job that the new text makes, for who only
/// wants to see it. The text is read once.
///
/// # Errors
/// As [`set_all`]; also when the text had faults before.
pub fn tried<'c>(
    text: &str,
    changes: impl IntoIterator<Item = (&'c str, Option<&'c str>)>,
) -> Result<(String, Job), EditError> {
    let new = changed(text, changes)?;
    let job = read(&new).map_err(EditError::Faults)?;
    Ok((new, job))
}

/// The text with changes made, whatever it says then.
fn changed<'c>(text: &str, changes: impl IntoIterator<Item = (&'c str, Option<&'c str>)>) -> Result<String, EditError> {
    let mut document = document(text)?;
    for (path, value) in changes {
        let target = find(path)?;
        match value {
            Some(value) => put(&mut document, path, target, value)?,
            None => {
                tree::take(Place::root(document.as_table_mut()), path);
            }
        }
    }
    Ok(document.to_string())
}

/// Puts a value as it is typed at a path.
fn put(document: &mut DocumentMut, path: &str, target: Target, value: &str) -> Result<(), EditError> {
    let value = match target {
        Target::Key(key) => value::of_text(&key.kind, value),
        Target::Group { keys } => {
            value::group_of_text(value).ok_or(EditError::Group { path: path.to_owned(), keys })?
        }
    };
    tree::put(Place::root(document.as_table_mut()), "", path, value)
}

/// Takes a key or a group out, so that its default holds, and returns the new
/// text. The comments right above it and behind it go with it. Groups in
/// braces that are left empty go too.
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

/// What a path names.
enum Target {
    Key(&'static Key),
    Group {
        /// The paths of what is in it.
        keys: String,
    },
}

/// What is at a path, or why there is nothing.
fn find(path: &str) -> Result<Target, EditError> {
    let mut group = String::new();
    let mut words = path.split('.').peekable();
    while let Some(word) = words.next() {
        let children = keys::children(&group);
        match named(&group) {
            Some(Names::Walls) if !is_name(Names::Walls, word) => {
                return Err(EditError::NotAWall { letter: word.to_owned() });
            }
            Some(Names::Own) if !is_name(Names::Own, word) => {
                return Err(EditError::NotAName { name: word.to_owned(), group });
            }
            None if !children.contains(&word) => {
                let near = keys::suggest(&group, word);
                // A neighbour's name comes alone, a key elsewhere with its path.
                let whole =
                    |near: String| if children.contains(&near.as_str()) { keys::join(&group, &near) } else { near };
                let rest: String = words.map(|word| format!(".{word}")).collect();
                let nearest = near.map(whole).map(|near| {
                    let longer = format!("{near}{rest}");
                    if keys::find(&longer).is_some() { longer } else { near }
                });
                return Err(EditError::UnknownKey { path: path.to_owned(), nearest });
            }
            _ => {}
        }
        group = keys::join(&group, word);
        if keys::find(&group).is_some() && words.peek().is_some() {
            return Err(EditError::UnknownKey { path: path.to_owned(), nearest: Some(group) });
        }
    }
    if let Some(key) = keys::find(path) {
        return Ok(Target::Key(key));
    }
    let inside = keys::children(path);
    let paths: Vec<String> = inside.iter().map(|word| with_names(&keys::join(path, word))).collect();
    Ok(Target::Group { keys: paths.join(", ") })
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
