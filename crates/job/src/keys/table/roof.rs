//! Keys of the roof and of its walls.

use crate::keys::Kind::{Flag, Length, Pitch, Word};
use crate::keys::Preset::{Number, Otherwise, Part, Required};
use crate::keys::{Key, Preset, key};
use crate::limits;
use crate::words::words;
use crate::{Fascia, RidgeRun, TailCut};

pub(super) static KEYS: &[Key] = &[
    key("roof.pitch", Pitch(limits::PITCH), Required("40"), "Pitch of every wall that does not say otherwise"),
    key(
        "roof.ridge",
        Word(words::<RidgeRun>),
        Preset::Word("level"),
        "Over plates that are out of parallel: a level ridge, with the rafters of one wall packed, or one that falls",
    ),
    key(
        "roof.packing",
        Length(limits::PACKING),
        Number(crate::types::PACKING),
        "Most packing under the rafters of a wall that is out of parallel",
    ),
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
    key(
        "roof.eaves.sprocket.pitch",
        Pitch(limits::PITCH),
        Part("25"),
        "Pitch of the sprocketed part, flatter than the slopes above it",
    ),
    key(
        "roof.eaves.sprocket.reach",
        Length(limits::REACH),
        Part("600"),
        "How far up from the plate line the sprockets reach, in plan",
    ),
    key("roof.verge.overhang", Length(limits::OVERHANG), Number(0.0), "How far the roof runs past a gable"),
    key(
        "roof.verge.inset",
        Length(limits::INSET),
        Number(0.0),
        "From the plan line of a gable to the near face of its first rafter",
    ),
    key(
        "roof.upper.from",
        Length(limits::HEIGHT),
        Part("2200"),
        "Height above the plate at which the second pitch starts",
    ),
    key("roof.upper.pitch", Pitch(limits::PITCH), Part("30"), "The second pitch"),
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
    key(
        "roof.walls.*.plate",
        Length(limits::PLATE_LEVEL),
        Otherwise("0", "600"),
        "Height of this wall's plate above the datum of the job",
    ),
    key(
        "roof.walls.*.half_hip",
        Length(limits::HEIGHT),
        Otherwise("none", "1500"),
        "A half hip: the wall is carried up as a gable to this height above its plate, and slopes from there",
    ),
    key(
        "roof.walls.*.gablet",
        Length(limits::HEIGHT),
        Otherwise("none", "1500"),
        "A gablet: the slope stops at this height above the plate, and a small upright gable rises from there",
    ),
    key(
        "roof.walls.*.upper.from",
        Length(limits::HEIGHT),
        Part("2200"),
        "Height above its plate at which the second pitch of this wall starts",
    ),
    key("roof.walls.*.upper.pitch", Pitch(limits::PITCH), Part("30"), "The second pitch of this wall"),
];
