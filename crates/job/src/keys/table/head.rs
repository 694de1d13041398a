//! Keys of the head of the file and of the plan.

use crate::LengthUnit;
use crate::keys::Kind::{Corners, Folder, Loops, Text, Word};
use crate::keys::Preset::{Empty, Otherwise, Required};
use crate::keys::{Key, Kind, Preset, key};
use crate::words::words;

pub(super) static KEYS: &[Key] = &[
    key("format", Kind::Format, Required("1"), "Format of this file"),
    key("title", Text, Required("\"Boathouse workshop\""), "What the job is called on its sheets"),
    key("date", Text, Otherwise("no date", "2031-05-14"), "Date to print on sheets, as written"),
    key("revision", Text, Otherwise("no revision", "\"B\""), "Revision to print on sheets, as written"),
    key("region", Folder, Preset::Word("uk"), "Whose words and rules apply: the name of a folder of regions"),
    key("units", Word(words::<LengthUnit>), Preset::Word("mm"), "How sheets show lengths"),
    key(
        "plan.corners",
        Corners,
        Required("[[0, 0], [8400, 0], [8400, 5200], [0, 5200]]"),
        "Corners of the plate lines, anticlockwise: x east and y north. Or measure them: `sides`",
    ),
    key("plan.holes", Loops, Empty, "Courtyards, each a list of corners, clockwise"),
];
