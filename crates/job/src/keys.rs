//! The one table of the keys of a job file. Reading, suggestions, the
//! commented example, the schema's words and editing all go by it.

use crate::limits::{self, Limits};
use crate::nearest::nearest;
use crate::words::words;
use crate::{Fascia, HipEdge, HipHead, HipLine, LengthUnit, RidgeTop, Spread, TailCut};

/// The format of the file that this crate reads.
pub const FORMAT: i64 = 1;

/// What may be written for a key.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Kind {
    /// The number of the format.
    Format,
    /// A line of text.
    Text,
    /// The name of a folder.
    Folder,
    /// A length.
    Length(Limits),
    /// A pitch.
    Pitch(Limits),
    /// A word of a choice.
    Word(fn() -> Vec<&'static str>),
    /// Yes or no.
    Flag,
    /// Thickness and depth.
    Size,
    /// A loop of corners.
    Corners,
    /// Loops of corners.
    Loops,
}

/// What holds when a key is left out.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Preset {
    /// It may not be left out. An example, as TOML.
    Required(&'static str),
    /// Nothing, or what the text says. An example, as TOML.
    Otherwise(&'static str, &'static str),
    /// A number, mm or degrees.
    Number(f64),
    /// Two numbers, mm.
    Pair([f64; 2]),
    /// A word or text.
    Word(&'static str),
    /// An empty list.
    Empty,
}

/// A key of the file.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Key {
    /// Where it stands, with dots. `*` stands for a wall's letter.
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

use Kind::{Corners, Flag, Folder, Format, Length, Loops, Pitch, Size, Text, Word};
use Preset::{Empty, Number, Otherwise, Pair, Required};

/// Every key, in the order of a well-kept file.
pub(crate) static KEYS: &[Key] = &[
    key("format", Format, Required("1"), "Format of this file"),
    key("title", Text, Required("\"Boathouse workshop\""), "What the job is called on its sheets"),
    key("date", Text, Otherwise("no date", "2031-05-14"), "Date to print on sheets, as written"),
    key("revision", Text, Otherwise("no revision", "\"B\""), "Revision to print on sheets, as written"),
    key("region", Folder, Preset::Word("uk"), "Whose words and rules apply: the name of a folder of regions"),
    key("units", Word(words::<LengthUnit>), Preset::Word("mm"), "How sheets show lengths"),
    key(
        "plan.corners",
        Corners,
        Required("[[0, 0], [8400, 0], [8400, 5200], [0, 5200]]"),
        "Corners of the plate lines, anticlockwise: x east and y north",
    ),
    key("plan.holes", Loops, Empty, "Courtyards, each a list of corners, clockwise"),
    key("roof.pitch", Pitch(limits::PITCH), Required("40"), "Pitch of every wall that does not say otherwise"),
    key(
        "roof.eaves.overhang",
        Length(limits::OVERHANG),
        Number(300.0),
        "Overhang in plan from the plate line to the plumb face of the tails",
    ),
    key(
        "roof.eaves.fascia",
        Word(words::<Fascia>),
        Preset::Word("level"),
        "One level fascia line all round, or the same overhang on every wall",
    ),
    key("roof.eaves.tail", Word(words::<TailCut>), Preset::Word("plumb"), "How the tails of rafters are cut"),
    key(
        "roof.eaves.depth",
        Length(limits::FASCIA_DEPTH),
        Number(150.0),
        "Depth of the plumb face left above a level tail cut",
    ),
    key("roof.verge.overhang", Length(limits::OVERHANG), Number(0.0), "How far the roof runs past a gable"),
    key(
        "roof.verge.inset",
        Length(limits::INSET),
        Number(0.0),
        "From the plan line of a gable to the near face of its first rafter",
    ),
    key(
        "roof.walls.*.gable",
        Flag,
        Otherwise("false", "true"),
        "Carry this wall up as a gable: no slope rises from it",
    ),
    key(
        "roof.walls.*.pitch",
        Pitch(limits::PITCH),
        Otherwise("the pitch of the roof", "50"),
        "Pitch of this wall's slope",
    ),
    key(
        "roof.walls.*.overhang",
        Length(limits::OVERHANG),
        Otherwise("the overhang of the eaves", "250"),
        "Overhang of this wall's eaves, where the fascia is \"fixed\"",
    ),
    key("timber.rafter.size", Size, Pair([47.0, 150.0]), "Thickness and depth of rafters"),
    key("timber.rafter.centres", Length(limits::CENTRES), Number(400.0), "Greatest distance between centre lines"),
    key(
        "timber.rafter.spread",
        Word(words::<Spread>),
        Preset::Word("from-start"),
        "At full centres from the start or the end of each wall, or in equal bays",
    ),
    key(
        "timber.rafter.birdsmouth",
        Length(limits::BIRDSMOUTH),
        Otherwise("a quarter of the rafter's depth", "40"),
        "Depth of the birdsmouth, square to the rafter from its underside",
    ),
    key("timber.hip.size", Size, Pair([47.0, 200.0]), "Thickness and depth of hips"),
    key(
        "timber.hip.edge",
        Word(words::<HipEdge>),
        Preset::Word("backed"),
        "Planed to both roof planes, or left square and dropped",
    ),
    key(
        "timber.hip.line",
        Word(words::<HipLine>),
        Preset::Word("centred"),
        "Centred on the plan line, or set over where pitches differ",
    ),
    key(
        "timber.hip.head",
        Word(words::<HipHead>),
        Preset::Word("crown"),
        "Heads meet a crown rafter, or the side of the ridge run on",
    ),
    key("timber.valley.size", Size, Otherwise("as hips", "[47, 225]"), "Thickness and depth of valleys"),
    key(
        "timber.valley.edge",
        Word(words::<HipEdge>),
        Preset::Word("dropped"),
        "Planed to both roof planes, or left square and dropped",
    ),
    key(
        "timber.valley.line",
        Word(words::<HipLine>),
        Preset::Word("centred"),
        "Centred on the plan line, or set over where pitches differ",
    ),
    key("timber.ridge.size", Size, Pair([32.0, 225.0]), "Thickness and depth of ridge boards"),
    key(
        "timber.ridge.top",
        Word(words::<RidgeTop>),
        Preset::Word("arrises"),
        "What lies in the roof planes: the top side arrises, or the centre of the top edge",
    ),
    key("timber.plate.size", Size, Pair([75.0, 100.0]), "Height of wall plates, and their width on the wall"),
];

/// What a group of keys is about.
pub(crate) static GROUPS: &[(&str, &str)] = &[
    ("plan", "The wall plates as built"),
    ("roof", "The roof"),
    ("roof.eaves", "The eaves"),
    ("roof.verge", "The verges of gables"),
    ("roof.walls", "Walls that differ, by letter: A runs from the first corner to the second, then B, C … Z, AA"),
    ("timber", "The timber, each size as [thickness, depth]"),
    ("timber.rafter", "Rafters of every kind"),
    ("timber.hip", "Hips"),
    ("timber.valley", "Valleys"),
    ("timber.ridge", "Ridge boards"),
    ("timber.plate", "Wall plates, [height, width on the wall]"),
];

/// Goes through two paths together; the first may hold `*`.
fn matches(pattern: &str, path: &str) -> bool {
    let mut path = path.split('.');
    pattern.split('.').all(|part| path.next().is_some_and(|given| part == "*" || part == given))
        && path.next().is_none()
}

/// The key at a path, in which walls go by their letters.
pub(crate) fn find(path: &str) -> Option<&'static Key> {
    KEYS.iter().find(|key| matches(key.path, path))
}

/// What of a key's path lies below a group.
fn below<'k>(key: &'k str, group: &str) -> Option<&'k str> {
    if group.is_empty() {
        return Some(key);
    }
    let depth = group.split('.').count();
    let (at, _) = key.match_indices('.').nth(depth - 1)?;
    if matches(&key[..at], group) { Some(&key[at + 1..]) } else { None }
}

/// The words that may stand directly in a group, in order. `*` for letters.
pub(crate) fn children(group: &str) -> Vec<&'static str> {
    let mut children = Vec::new();
    for key in KEYS {
        if let Some(child) = below(key.path, group).and_then(|rest| rest.split('.').next())
            && !children.contains(&child)
        {
            children.push(child);
        }
    }
    children
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
    let elsewhere = KEYS.iter().map(|key| key.path).chain(group_elsewhere());
    elsewhere.filter(|path| path.rsplit('.').next() == Some(word.as_str())).map(|path| path.replace('*', "A")).next()
}

impl Kind {
    /// What is wanted, after "wants".
    pub(crate) fn wanted(&self) -> &'static str {
        match self {
            Self::Format => "the number of a format",
            Self::Text => "a text",
            Self::Folder => "the name of a region",
            Self::Length(_) => "a length",
            Self::Pitch(_) => "a pitch",
            Self::Word(_) => "a word",
            Self::Flag => "true or false",
            Self::Size => "a size of two lengths",
            Self::Corners => "a list of corners",
            Self::Loops => "a list of courtyards",
        }
    }

    /// What to write, a sentence without its stop.
    pub(crate) fn remedy(&self) -> String {
        match self {
            Self::Format => format!("Write {FORMAT}"),
            Self::Text => "Write a text in quotes, on one line".to_owned(),
            Self::Folder => "Write small letters, digits and dashes in quotes, such as \"uk\"".to_owned(),
            Self::Length(_) => "Write millimetres as a number, or a text with a unit such as \"8.4 m\"".to_owned(),
            Self::Pitch(_) => "Write degrees as a number, or a text such as \"40°\" or \"6:12\"".to_owned(),
            Self::Word(words) => format!("Write {}", either(&words())),
            Self::Flag => "Write true or false, without quotes".to_owned(),
            Self::Size => "Write two lengths in brackets, such as [47, 150]".to_owned(),
            Self::Corners => "Write corners in brackets, such as [[0, 0], [8400, 0], [8400, 5200]]".to_owned(),
            Self::Loops => {
                "Write lists of corners in brackets, such as [[[2000, 2000], [2000, 3000], [3000, 3000]]]".to_owned()
            }
        }
    }
}

/// Words in quotes with "or" before the last.
pub(crate) fn either(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [only] => format!("\"{only}\""),
        [first @ .., last] => {
            let first: Vec<String> = first.iter().map(|word| format!("\"{word}\"")).collect();
            format!("{} or \"{last}\"", first.join(", "))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_find_their_keys() {
        assert_eq!(find("roof.pitch").map(|key| key.path), Some("roof.pitch"));
        assert_eq!(find("roof.walls.AB.pitch").map(|key| key.path), Some("roof.walls.*.pitch"));
        for path in ["roof", "roof.pitch.x", "", "roof.walls.A", "pitch"] {
            assert!(find(path).is_none(), "{path}");
        }
    }

    #[test]
    fn groups_know_their_keys() {
        assert_eq!(children("roof"), ["pitch", "eaves", "verge", "walls"]);
        assert_eq!(children("roof.walls"), ["*"]);
        assert_eq!(children("roof.walls.C"), ["gable", "pitch", "overhang"]);
        assert_eq!(children("").last(), Some(&"timber"));
        assert!(children("title").is_empty() && children("timber.hips").is_empty());
    }

    #[test]
    fn every_group_is_described_and_every_description_is_of_a_group() {
        for (path, _) in GROUPS {
            assert!(!children(path).is_empty(), "{path}");
        }
        for key in KEYS {
            let parts: Vec<&str> = key.path.split('.').collect();
            for end in 1..parts.len() {
                let group = parts[..end].join(".");
                assert!(group.ends_with('*') || GROUPS.iter().any(|(path, _)| *path == group), "{group}");
            }
        }
    }

    #[test]
    fn suggestions_reach_other_groups() {
        assert_eq!(suggest("roof", "pich").as_deref(), Some("pitch"));
        assert_eq!(suggest("roof", "centres").as_deref(), Some("timber.rafter.centres"));
        assert_eq!(suggest("", "eaves").as_deref(), Some("roof.eaves"));
        assert_eq!(suggest("", "gable").as_deref(), Some("roof.walls.A.gable"));
        assert_eq!(suggest("", "chimney"), None);
    }
}
