//! Keys of the timber of the frame.

use crate::keys::Kind::{Length, Size, Word};
use crate::keys::Preset::{Number, Otherwise, Pair};
use crate::keys::{Key, Preset, key};
use crate::limits;
use crate::words::words;
use crate::{HipEdge, HipHead, HipLine, RidgeTop, Spread};

pub(super) static KEYS: &[Key] = &[
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
