//! The one table of the keys of a job file. Reading, suggestions, the
//! commented example, the schema's words and editing all go by it.

mod kind;
mod names;
mod table;

pub(crate) use kind::{Kind, Preset, either};
pub(crate) use names::{Names, is_name, named, pair, with_names};
pub(crate) use table::GROUPS;

use crate::nearest::nearest;

/// The format of the file that this crate reads.
pub const FORMAT: i64 = 1;

/// A key of the file.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Key {
    /// Where it stands, with dots. `*` stands for a wall's letter, or for a
    /// name of the user's own.
    pub(crate) path: &'static str,
    /// What may be written.
    pub(crate) kind: Kind,
    /// What holds when it is left out.
    pub(crate) preset: Preset,
    /// What it means, a phrase.
    pub(crate) meaning: &'static str,
}

const fn key(path: &'static str, kind: Kind, preset: Preset, meaning: &'static str) -> Key {
    Key { path, kind, preset, meaning }
}

/// Every key, in the order of a well-kept file.
pub(crate) fn keys() -> impl Iterator<Item = &'static Key> {
    table::TABLES.iter().copied().flatten()
}

/// Whether two paths agree as far as both go before the first `*`: most do not, and this tells them apart without
/// taking them to pieces.
fn starts_alike(pattern: &str, path: &str) -> bool {
    let plain = pattern.as_bytes().iter().take_while(|byte| **byte != b'*');
    plain.zip(path.as_bytes()).all(|(a, b)| a == b)
}

/// Goes through two paths together; the first may hold `*`.
fn matches(pattern: &str, path: &str) -> bool {
    if !starts_alike(pattern, path) {
        return false;
    }
    let mut path = path.split('.');
    pattern.split('.').all(|part| path.next().is_some_and(|given| part == "*" || part == given))
        && path.next().is_none()
}

/// The key at a path, in which walls go by their letters and what the user
/// named by its name.
pub(crate) fn find(path: &str) -> Option<&'static Key> {
    keys().find(|key| matches(key.path, path))
}

/// What of a key's path lies below a group.
fn below<'k>(key: &'k str, group: &str) -> Option<&'k str> {
    if group.is_empty() {
        return Some(key);
    }
    if !starts_alike(key, group) {
        return None;
    }
    let depth = group.split('.').count();
    let (at, _) = key.match_indices('.').nth(depth - 1)?;
    if matches(&key[..at], group) { Some(&key[at + 1..]) } else { None }
}

/// The words that may stand directly in a group, in order. `*` for names.
pub(crate) fn children(group: &str) -> Vec<&'static str> {
    let mut children = Vec::new();
    for key in keys() {
        if let Some(child) = below(key.path, group).and_then(|rest| rest.split('.').next())
            && !children.contains(&child)
        {
            children.push(child);
        }
    }
    children
}

/// The keys directly in a group without which it says nothing, in order.
pub(crate) fn parts(group: &str) -> impl Iterator<Item = (&'static str, &'static str)> {
    keys().filter_map(move |key| match key.preset {
        Preset::Part(example) => {
            let word = below(key.path, group).filter(|rest| !rest.contains('.'))?;
            Some((word, example))
        }
        _ => None,
    })
}

/// The path of a word in a group.
pub(crate) fn join(group: &str, word: &str) -> String {
    if group.is_empty() { word.to_owned() } else { format!("{group}.{word}") }
}

/// The key that was probably meant by an unknown word in a group: a slip of a
/// neighbour's name, or a key that lives in another group (then its path).
pub(crate) fn suggest(group: &str, word: &str) -> Option<String> {
    let children = children(group);
    if let Some(near) = nearest(word, children.iter().copied().filter(|child| *child != "*")) {
        return Some(near.to_owned());
    }
    let word = word.to_lowercase();
    let group_elsewhere = || GROUPS.iter().map(|(path, _)| *path);
    let elsewhere = keys().map(|key| key.path).chain(group_elsewhere());
    elsewhere.filter(|path| path.rsplit('.').next() == Some(word.as_str())).map(with_names).next()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_find_their_keys() {
        assert_eq!(find("roof.pitch").map(|key| key.path), Some("roof.pitch"));
        assert_eq!(find("roof.walls.AB.pitch").map(|key| key.path), Some("roof.walls.*.pitch"));
        assert_eq!(find("roof.walls.AB.upper.pitch").map(|key| key.path), Some("roof.walls.*.upper.pitch"));
        assert_eq!(find("openings.back-stair.up").map(|key| key.path), Some("openings.*.up"));
        for path in ["roof", "roof.pitch.x", "", "roof.walls.A", "pitch", "openings", "openings.a", "openings.a.b.c"] {
            assert!(find(path).is_none(), "{path}");
        }
    }

    #[test]
    fn groups_know_their_keys() {
        assert_eq!(children("roof"), ["pitch", "ridge", "packing", "eaves", "verge", "upper", "walls"]);
        assert_eq!(children("roof.walls"), ["*"]);
        let own = ["gable", "pitch", "overhang", "plate", "half_hip", "gablet", "upper"];
        assert_eq!(children("roof.walls.C"), own);
        assert_eq!(children("roof.walls.C.upper"), ["from", "pitch"]);
        assert_eq!(children("").last(), Some(&"done"));
        assert!(children("title").is_empty() && children("timber.hips").is_empty());
    }

    #[test]
    fn groups_know_what_they_cannot_do_without() {
        let words = |group| parts(group).map(|(word, _)| word).collect::<Vec<_>>();
        assert_eq!(words("timber.purlin"), ["size"]);
        assert_eq!(words("timber.collar"), ["size", "height"]);
        assert_eq!(words("roof.walls.C.upper"), ["from", "pitch"]);
        assert!(words("roof.walls.C").is_empty() && words("timber").is_empty() && words("").is_empty());
    }

    #[test]
    fn every_group_is_described_and_every_description_is_of_a_group() {
        for (path, _) in GROUPS {
            assert!(!children(path).is_empty(), "{path}");
        }
        for key in keys() {
            let parts: Vec<&str> = key.path.split('.').collect();
            for end in 1..parts.len() {
                let group = parts[..end].join(".");
                assert!(group.ends_with('*') || GROUPS.iter().any(|(path, _)| *path == group), "{group}");
            }
        }
    }

    #[test]
    fn no_key_stands_twice() {
        let mut paths: Vec<&str> = keys().map(|key| key.path).collect();
        paths.sort_unstable();
        let all = paths.len();
        paths.dedup();
        assert_eq!(paths.len(), all);
    }

    #[test]
    fn suggestions_reach_other_groups() {
        assert_eq!(suggest("roof", "pich").as_deref(), Some("pitch"));
        assert_eq!(suggest("roof", "centres").as_deref(), Some("timber.rafter.centres"));
        assert_eq!(suggest("", "eaves").as_deref(), Some("roof.eaves"));
        assert_eq!(suggest("", "gable").as_deref(), Some("roof.walls.B.gable"));
        assert_eq!(suggest("timber", "back").as_deref(), Some("dormers.bedroom.back"));
        assert_eq!(suggest("", "purlin").as_deref(), Some("timber.purlin"));
        assert_eq!(suggest("", "chimney"), None);
    }
}
