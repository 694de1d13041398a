//! Groups whose words are names: letters of walls, or names of the user's own.

use crate::letters::wall_index;
use crate::limits::LONGEST_TEXT;

/// Whose the names in a group are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Names {
    /// The plan's: letters of walls.
    Walls,
    /// The plan's: two letters of corners with a dash between them.
    Pairs,
    /// The user's own.
    Own,
}

/// The groups of named things, with a name for examples.
const NAMED: &[(&str, Names, &str)] = &[
    ("plan.diagonals", Names::Pairs, "B-D"),
    ("plan.turns", Names::Walls, "C"),
    ("plan.levels", Names::Walls, "C"),
    ("roof.walls", Names::Walls, "B"),
    ("openings", Names::Own, "landing"),
    ("dormers", Names::Own, "bedroom"),
    ("bearings", Names::Own, "spine"),
    ("stock", Names::Own, "rafters"),
    ("yard", Names::Own, "behind-the-shed"),
    ("price", Names::Own, "batten"),
    ("record", Names::Own, "access-ground"),
    ("done", Names::Own, "Jack-3"),
];

/// Whose names stand in a group, if names stand in it.
pub(crate) fn named(group: &str) -> Option<Names> {
    NAMED.iter().find(|(path, ..)| *path == group).map(|(_, names, _)| *names)
}

/// A path of the table with names in it for an example.
pub(crate) fn with_names(path: &str) -> String {
    let example = NAMED.iter().find_map(|(group, _, example)| {
        let rest = path.strip_prefix(group)?.strip_prefix(".*")?;
        Some(format!("{group}.{example}{rest}"))
    });
    example.unwrap_or_else(|| path.to_owned())
}

/// Whether a word may stand in a group of names. Which walls there are, only
/// the plan can tell.
pub(crate) fn is_name(names: Names, word: &str) -> bool {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_';
    match names {
        Names::Walls => wall_index(word).is_some(),
        Names::Pairs => pair(word).is_some(),
        Names::Own => !word.is_empty() && word.len() <= LONGEST_TEXT && word.bytes().all(plain),
    }
}

/// The two corners of a name such as `B-D`, counted from 0.
pub(crate) fn pair(word: &str) -> Option<(usize, usize)> {
    let (from, to) = word.split_once('-')?;
    let (from, to) = (wall_index(from.trim())?, wall_index(to.trim())?);
    (from != to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::keys::{children, keys};

    #[test]
    fn every_star_of_the_table_has_a_name() {
        for key in keys() {
            assert!(!with_names(key.path).contains('*'), "{}", key.path);
            if let Some((group, _)) = key.path.split_once(".*") {
                assert!(named(group).is_some(), "{group}");
            }
        }
        for (group, names, example) in NAMED {
            assert_eq!(children(group), ["*"]);
            assert!(is_name(*names, example));
        }
    }

    #[test]
    fn pairs_are_two_corners() {
        assert_eq!(pair("B-D"), Some((1, 3)));
        assert_eq!(pair("AA - C"), Some((26, 2)));
        for word in ["", "B", "B-", "-D", "B-B", "B-D-F", "b-d", "1-2"] {
            assert!(!is_name(Names::Pairs, word), "{word}");
        }
    }

    #[test]
    fn names_are_plain_words() {
        for name in ["landing", "2nd_floor-west", "A", "-", "7"] {
            assert!(is_name(Names::Own, name), "{name}");
        }
        for name in ["", "back stair", "a.b", "½", "a\n", &"x".repeat(LONGEST_TEXT + 1)] {
            assert!(!is_name(Names::Own, name), "{name}");
        }
    }
}
