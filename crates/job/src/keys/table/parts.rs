//! Keys of what is fitted to the frame, and of joints in long timbers.

use crate::keys::Kind::{Count, Flag, Length, Lengths, Size, Word};
use crate::keys::Preset::{Empty, Number, Part};
use crate::keys::{Key, Preset, key};
use crate::limits;
use crate::words::words;
use crate::{PurlinSet, SpliceKind, Wood};

pub(super) static KEYS: &[Key] = &[
    // 7.2 m is the longest of the lengths that merchants usually keep, which
    // run from 1.8 m in steps of 0.3 m.
    key("timber.joint.longest", Length(limits::STOCK), Number(7200.0), "Longest timber to be had"),
    key(
        "timber.joint.kind",
        Word(words::<SpliceKind>),
        Preset::Word("fish-plates"),
        "Butted between fish plates, a plain splayed scarf, or a hooked scarf with wedges",
    ),
    key("timber.joint.bolted", Flag, Preset::Flag(true), "Whether bolts help a scarf"),
    key(
        "timber.joint.wood",
        Word(words::<Wood>),
        Preset::Word("softwood"),
        "What wood, for the proportions of a scarf",
    ),
    key("timber.purlin.size", Size, Part("[75, 225]"), "Thickness and depth of purlins"),
    key(
        "timber.purlin.set",
        Word(words::<PurlinSet>),
        Preset::Word("square"),
        "Square to the slope, or plumb with the rafters birdsmouthed over them",
    ),
    key(
        "timber.purlin.up",
        Lengths(limits::PURLIN_UP),
        Empty,
        "Distances up the slope from the plate line; with none, halfway up the rafters",
    ),
    key("timber.strut.size", Size, Part("[75, 100]"), "Thickness and depth of struts"),
    key(
        "timber.strut.centres",
        Length(limits::SUPPORT_CENTRES),
        Number(1800.0),
        "Greatest distance between centre lines",
    ),
    key("timber.collar.size", Size, Part("[47, 150]"), "Thickness and depth of collars"),
    key("timber.collar.height", Length(limits::HEIGHT), Part("1200"), "From the plates up to their underside"),
    key("timber.collar.every", Count(limits::EVERY), Number(1.0), "One collar to every so many pairs of rafters"),
    key("timber.ceiling_joist.size", Size, Part("[47, 125]"), "Thickness and depth of ceiling joists"),
    key("timber.binder.size", Size, Part("[50, 150]"), "Thickness and depth of binders"),
    key("timber.hanger.size", Size, Part("[38, 100]"), "Thickness and depth of hangers"),
    key(
        "timber.hanger.centres",
        Length(limits::SUPPORT_CENTRES),
        Number(1800.0),
        "Greatest distance between centre lines",
    ),
    key("timber.angle_tie.size", Size, Part("[75, 100]"), "Thickness and depth of angle ties"),
    key("timber.dragon_tie.size", Size, Part("[100, 100]"), "Thickness and depth of dragon ties"),
    key("timber.ladder.size", Size, Part("[47, 100]"), "Thickness and depth of rungs"),
    key("timber.ladder.centres", Length(limits::RUNG_CENTRES), Number(600.0), "Greatest distance between centre lines"),
    key("timber.noggin.size", Size, Part("[47, 100]"), "Thickness and depth of noggins"),
    key("timber.noggin.rows", Count(limits::ROWS), Number(1.0), "How many rows share the slope equally"),
    key("timber.fascia.size", Size, Part("[25, 225]"), "Thickness and depth of fascia boards"),
    key(
        "timber.soffit.size",
        Size,
        Part("[12, 300]"),
        "Thickness of soffit boards, and the widest board to be had; their width follows from the overhang",
    ),
    key("timber.fillet.size", Size, Part("[50, 100]"), "Height at the fascia, and width up the slope"),
    key("timber.barge.size", Size, Part("[25, 200]"), "Thickness and depth of barge boards"),
    key("timber.lay_board.size", Size, Part("[25, 225]"), "Thickness and width of lay boards"),
];
