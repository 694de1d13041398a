//! Why an edit was refused.

use crate::fault::Faults;
use thiserror::Error;

/// Why an edit was refused. Each text says what to do instead.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum EditError {
    /// The path names no key.
    #[error("`{path}` is not a key of a job file{}", suggestion(.nearest.as_deref()))]
    UnknownKey {
        /// The path as given.
        path: String,
        /// The path that was probably meant.
        nearest: Option<String>,
    },
    /// The path names a group of keys.
    #[error("`{path}` is a group of keys; set one of them ({keys}), or all of it in braces")]
    Group {
        /// The path as given.
        path: String,
        /// What is in the group.
        keys: String,
    },
    /// A wall that is not named by a letter.
    #[error("`{letter}` is not the letter of a wall; write a capital from A on, as in roof.walls.B.gable")]
    NotAWall {
        /// The word as given.
        letter: String,
    },
    /// A name that is no plain word.
    #[error("`{name}` cannot be a name in `{group}`; write letters, digits, dashes and underscores")]
    NotAName {
        /// The word as given.
        name: String,
        /// The group that it was to stand in.
        group: String,
    },
    /// The file has something else where the group of the key belongs.
    #[error("`{path}` in this file is not a group of keys, so nothing can be set in it; correct it by hand first")]
    NotAGroup {
        /// The path of the group.
        path: String,
    },
    /// The key to take out is not in the file.
    #[error("`{path}` is not in this file, so its default holds already")]
    NotThere {
        /// The path as given.
        path: String,
    },
    /// The text is no job file.
    #[error("the file cannot be edited until it can be read: {0}")]
    NotAJob(Faults),
    /// The text can be read but not changed.
    #[error("the file cannot be edited by key: {reason}; change it by hand")]
    NotEditable {
        /// Why.
        reason: String,
    },
    /// The file would have faults that it did not have before.
    #[error("nothing was changed, for this would be wrong. {0}")]
    Faults(Faults),
}

fn suggestion(nearest: Option<&str>) -> String {
    nearest
        .map_or_else(|| "; the commented example shows them all".to_owned(), |near| format!("; did you mean `{near}`?"))
}
