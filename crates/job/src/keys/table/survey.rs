//! Keys of a plan that was measured on site.

use crate::keys::Kind::{Angle, Flag, Length, Letters, Sides};
use crate::keys::Preset::{Number, Otherwise};
use crate::keys::{Key, Preset, key};
use crate::limits;

pub(super) static KEYS: &[Key] = &[
    key(
        "plan.sides",
        Sides(limits::SIDE),
        Otherwise("the plan is given by its corners", "[8400, 5200, 8400, 5200]"),
        "Instead of `corners`: measured lengths of the plate lines, wall A first, anticlockwise. Corner A, where wall A starts, comes to lie at [0, 0], and wall A runs east",
    ),
    key(
        "plan.inward",
        Letters,
        Otherwise("what the measurements say", "[]"),
        "All corners that point into the building, by the letter of the wall that starts there; [] if none does. Only asked for when two plans fit",
    ),
    key(
        "plan.tolerance",
        Length(limits::TAPE),
        Otherwise("5 mm", "3"),
        "What the tape may be out by, up or down, 95 times of 100",
    ),
    key(
        "plan.turn_tolerance",
        Angle(limits::BEVEL),
        Otherwise("0.5°", "0.2"),
        "What measured angles may be out by, up or down, 95 times of 100",
    ),
    key("plan.accept", Flag, Preset::Flag(false), "Take measurements that disagree by more than chance as they are"),
    key(
        "plan.true_within",
        Length(limits::TRUE_WITHIN),
        Otherwise("12 mm, or twice the tolerance of the tape if that is more", "8"),
        "Walls that come square, parallel, in line or equal when no corner is moved by more than this are set out so; 0 leaves them as measured",
    ),
    key(
        "plan.wall",
        Length(limits::WALL),
        Number(crate::types::WALL),
        "Thickness of the wall, or the leaf of it, that the plates are bedded on",
    ),
    key(
        "plan.diagonals.*",
        Length(limits::SIDE),
        Otherwise("not measured", "9880"),
        "Distance of two corners; a wall may be measured again here",
    ),
    key(
        "plan.turns.*",
        Angle(limits::TURN),
        Otherwise("not measured", "90"),
        "Inside angle at a corner: 90 where it is square, 270 where it points into the building",
    ),
    key(
        "plan.levels.*",
        Length(limits::LEVEL),
        Otherwise("not measured", "-4"),
        "Height of the top of the plate at a corner over one level line: + above it, - below it. A staff that stands on the plate reads more where the plate is lower, so write its readings with a minus",
    ),
];
