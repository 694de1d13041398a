//! Keys of what goes by names of the user's own.

use crate::keys::Kind::{Length, Pitch, Point, Wall, Word};
use crate::keys::Preset::{Number, Otherwise, Required};
use crate::keys::{Key, Preset, key};
use crate::limits;
use crate::words::words;
use crate::{DormerKind, OpeningKind, ValleyAs};

pub(super) static KEYS: &[Key] = &[
    key("openings.*.kind", Word(words::<OpeningKind>), Required("\"roof-window\""), "What the opening is for"),
    key("openings.*.wall", Wall, Required("\"A\""), "The wall whose slope it lies in"),
    key(
        "openings.*.along",
        Length(limits::ALONG),
        Required("2000"),
        "Along the plate line, from the start of the wall to the near edge of the opening",
    ),
    key(
        "openings.*.up",
        Length(limits::ALONG),
        Otherwise("none, where up_plan says it", "1500"),
        "From the plate line to the lower edge, along the slope",
    ),
    key(
        "openings.*.up_plan",
        Length(limits::ALONG),
        Otherwise("none, where up says it", "1200"),
        "From the plate line to the lower edge, level: always so for a chimney or a hatch",
    ),
    key("openings.*.width", Length(limits::OPENING), Required("780"), "Clear width along the wall"),
    key("openings.*.height", Length(limits::OPENING), Required("980"), "Clear height, measured as up or up_plan is"),
    key(
        "openings.*.flue_wall",
        Length(limits::FLUE_WALL),
        Otherwise("none", "102.5"),
        "Thickness of the masonry round the flue of a chimney",
    ),
    key("dormers.*.kind", Word(words::<DormerKind>), Required("\"gable\""), "The roof of the dormer"),
    key("dormers.*.wall", Wall, Required("\"A\""), "The wall whose slope it stands on"),
    key(
        "dormers.*.along",
        Length(limits::ALONG),
        Required("5000"),
        "Along the plate line, from the start of the wall to the outside of its near cheek",
    ),
    key(
        "dormers.*.back",
        Length(limits::ALONG),
        Required("600"),
        "From the plate line to the outside of its front, level",
    ),
    key("dormers.*.width", Length(limits::OPENING), Required("1600"), "From outside of cheek to outside of cheek"),
    key("dormers.*.plate", Length(limits::HEIGHT), Required("1300"), "Height of its plates above those of the wall"),
    key("dormers.*.pitch", Pitch(limits::PITCH), Required("40"), "Pitch of its roof"),
    key(
        "dormers.*.valley",
        Word(words::<ValleyAs>),
        Preset::Word("lay-board"),
        "Its valleys as boards laid on the main rafters, or as rafters framed into the slope",
    ),
    key("bearings.*.from", Point, Required("[0, 2600]"), "One end of its centre line in plan"),
    key("bearings.*.to", Point, Required("[8400, 2600]"), "The other end"),
    key("bearings.*.top", Length(limits::PLATE_LEVEL), Number(0.0), "Height of its top above the datum of the job"),
];
