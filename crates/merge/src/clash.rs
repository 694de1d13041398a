//! Figures that two versions disagree on, for the user to look at.

use crate::figures::{Path, Step};
use serde::{Deserialize, Serialize};
use std::fmt;

/// One of the two versions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Side {
    /// The one that is being saved.
    Ours,
    /// The one that is there.
    Theirs,
}

impl fmt::Display for Side {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Ours => "the version being saved",
            Self::Theirs => "the version that is kept",
        })
    }
}

/// Two versions that can't be made one without a choice.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Apart {
    /// What they disagree on. Never empty.
    pub clashes: Vec<Clash>,
    /// Everything else merged, with the figures that clash as in theirs. None
    /// where the two are laid out too differently.
    pub text: Option<String>,
}

/// One figure, or what goes with it, in three versions.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Clash {
    /// Where it stands in the job file, `roof.walls.B.pitch` or
    /// `plan.corners[2]`. Empty for the file as a whole.
    pub path: String,
    /// What it is, in words.
    pub words: String,
    /// As it was, written as in the file; none where it was not there.
    pub base: Option<String>,
    /// As it is in ours.
    pub ours: Option<String>,
    /// As it is in theirs.
    pub theirs: Option<String>,
}

impl Clash {
    /// A figure that both changed.
    pub(crate) fn of(path: &Path, [base, ours, theirs]: [Option<String>; 3]) -> Self {
        Self { path: path.to_string(), words: words(path), base, ours, theirs }
    }

    /// Something wrong that neither version had by itself.
    pub(crate) fn together(what: String, path: &Path, [base, ours, theirs]: [Option<String>; 3]) -> Self {
        Self { path: path.to_string(), words: format!("Wrong when both are taken: {what}"), base, ours, theirs }
    }

    /// Two files whose keys stand in each other's way.
    pub(crate) fn of_layout() -> Self {
        let words = "The file as a whole: the two are laid out too differently to be made one".to_owned();
        Self { path: String::new(), words, base: None, ours: None, theirs: None }
    }
}

/// What a figure is, in the words of its path: `Wall B, pitch`, `Corner C`.
fn words(path: &Path) -> String {
    let keys: Vec<&str> = path.keys().collect();
    let places: Vec<usize> = path
        .0
        .iter()
        .filter_map(|step| match step {
            Step::At(place) => Some(*place),
            Step::Key(_) => None,
        })
        .collect();
    let letter = |place: usize| job::wall_letter(place);
    let plain = |keys: &[&str]| keys.join(", ").replace('_', " ");
    match (keys.as_slice(), places.as_slice()) {
        (["plan", "corners"], [corner]) => format!("Corner {}", letter(*corner)),
        (["plan", "sides"], [side]) => format!("Measured length of wall {}", letter(*side)),
        (["plan", "holes"], [courtyard, corner]) => format!("Courtyard {}, corner {}", courtyard + 1, corner + 1),
        (["roof", "walls", wall, rest @ ..], _) => format!("Wall {wall}, {}", plain(rest)),
        (["plan", "diagonals", pair], _) => format!("Diagonal {pair}"),
        (["plan", "turns", corner], _) => format!("Angle at corner {corner}"),
        (["plan", "levels", corner], _) => format!("Level of corner {corner}"),
        (["openings", name, rest @ ..], _) => format!("Opening {name}, {}", plain(rest)),
        (["dormers", name, rest @ ..], _) => format!("Dormer {name}, {}", plain(rest)),
        (["bearings", name, rest @ ..], _) => format!("Bearing {name}, {}", plain(rest)),
        (["timber" | "plan", rest @ ..], _) | (rest, _) => capital(&plain(rest)),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
