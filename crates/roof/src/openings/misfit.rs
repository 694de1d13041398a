//! Why a hole cannot be trimmed where the job puts it.

use super::hole::LEAST_SIZE;
use core::fmt;

/// Why a hole cannot be trimmed where the job puts it.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
pub enum Misfit {
    /// Its wall is a gable, or no slope rises from it.
    NoSlope,
    /// Its sizes are next to none, or not numbers.
    NoSize,
    /// It does not lie in the slope at all.
    Outside,
    /// It, its trimmers or its trimming rafters run into a line of the roof.
    Line {
        /// `hip`, `valley`, `ridge` …
        kind: &'static str,
        /// Rafter that must be left between its trimmers and that line, mm.
        needed: f64,
    },
    /// It or its lower trimmer would come down on the plate, on the ceiling
    /// joists, or on sprockets and fillets.
    Eaves {
        /// How much higher it must lie, up the slope, mm.
        higher: f64,
    },
    /// A purlin passes through it or its trimmers.
    Purlin {
        /// Where the purlin lies up the slope, mm.
        up: f64,
    },
    /// It is in the place of another opening or dormer.
    Taken {
        /// Name of the other.
        by: String,
    },
    /// It would cut the trimming rafters of another opening, or the other its.
    TrimmingRafters {
        /// Name of the other.
        of: String,
    },
    /// Rafters that the roof fixes leave no room for trimming rafters beside it.
    Beside,
    /// A dormer whose valleys are asked for as rafters.
    ValleyRafters,
    /// A lean-to dormer that is not flatter than its slope.
    NotFlatter {
        /// The steepest it may be, degrees.
        most: f64,
    },
    /// A gable dormer whose ridge would come down between its plates.
    Flat,
    /// A dormer too narrow for its cheeks.
    Narrow {
        /// The least width, mm.
        least: f64,
    },
    /// A dormer whose plates come down on the main rafters in front.
    PlateLow {
        /// How much higher they must lie, mm.
        higher: f64,
    },
    /// A dormer whose roof meets the slope above its top.
    RidgeHigh {
        /// By how much, up the slope, mm.
        over: f64,
    },
    /// A hatch smaller than a person needs.
    HatchSmall {
        /// Least clear size both ways, mm.
        least: f64,
    },
    /// A hatch with no ceiling joists on both sides of it.
    NoJoists,
    /// Joists that run neither along nor across the wall a hatch is measured from.
    JoistsSlant,
    /// Joists in or beside a hatch end too near to it.
    JoistEnds,
    /// Other timber stands where a hatch's trimmers would, or hangs on a joist
    /// that it cuts.
    JoistCarries,
    /// It cuts more rafters or joists than may be cut without an engineer.
    TooManyCut {
        /// How many it cuts.
        cut: usize,
        /// How many it may.
        most: usize,
        /// The widest hole that cuts so many, mm.
        widest: f64,
    },
}

impl fmt::Display for Misfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSlope => write!(f, "has no slope to lie in: no rafters rise from that wall"),
            Self::NoSize => write!(f, "needs a place, and a width and a height of at least {LEAST_SIZE:.0} mm"),
            Self::Outside => write!(f, "lies outside the slope"),
            Self::Line { kind, needed } => {
                write!(f, "with its trimmers comes nearer than {needed:.0} mm to the {kind}, or crosses it")
            }
            Self::Eaves { higher } => write!(
                f,
                "lies too low: it would meet the plate, the ceiling joists, or what lies on the rafters at the eaves; \
                 {higher:.0} mm higher up the slope it clears them"
            ),
            Self::Purlin { up } => write!(f, "with its trimmers crosses the purlin {up:.0} mm up the slope"),
            Self::Taken { by } => write!(f, "overlaps {by:?} or the timber that trims it"),
            Self::TrimmingRafters { of } => {
                write!(f, "and {of:?} would cut one another's trimming rafters: set them in line or further apart")
            }
            Self::Beside => write!(f, "leaves no room for trimming rafters between the fixed rafters beside it"),
            Self::ValleyRafters => {
                write!(f, "asks for valley rafters, which are not framed: use `valley = \"lay-board\"`")
            }
            Self::NotFlatter { most } => {
                write!(f, "is a lean-to and must be flatter than its slope: give it a pitch of {most:.1}° or less")
            }
            Self::Flat => {
                write!(f, "is too flat or too narrow for a ridge over its plates: make it steeper, wider or a lean-to")
            }
            Self::Narrow { least } => write!(f, "is too narrow for its cheeks: make it at least {least:.0} mm wide"),
            Self::PlateLow { higher } => write!(
                f,
                "has plates too near the main rafters in front: raise `plate` by {higher:.0} mm, or move the front down \
                 the slope"
            ),
            Self::RidgeHigh { over } => write!(
                f,
                "meets its slope {over:.0} mm above the top of it: make it narrower or flatter, lower its `plate`, or \
                 move it down the slope"
            ),
            Self::HatchSmall { least } => {
                write!(f, "is too small to climb through: make it at least {least:.0} mm clear both ways")
            }
            Self::NoJoists => write!(
                f,
                "has no ceiling joists on both sides to trim it between: give `timber.ceiling_joist` a size, or move it \
                 between two joists"
            ),
            Self::JoistsSlant => {
                write!(f, "is not square to the ceiling joists there: measure it from a wall that they run to or along")
            }
            Self::JoistEnds => {
                write!(f, "comes too near to where joists end: move it further from the walls and stubs")
            }
            Self::JoistCarries => {
                write!(
                    f,
                    "would cut a joist that carries other timber, or its trimmers meet other timber: move it along"
                )
            }
            Self::TooManyCut { cut, most, widest } => write!(
                f,
                "cuts {cut} timbers; more than {most} needs an engineer. At these centres an opening may be {widest:.0} \
                 mm wide between its trimming rafters"
            ),
        }
    }
}

/// A place where an opening fits, as the job would give it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// For its `along`, mm.
    pub along: f64,
    /// For its `up` (or a dormer's `back`), measured as the job does, mm.
    pub up: f64,
}

/// The end of a refusal's text: where the opening fits instead.
pub fn advice(misfit: &Misfit, nearest: Option<&Place>) -> String {
    match (nearest, misfit) {
        (Some(p), _) => {
            format!(". The nearest place that takes it is {:.0} mm along the wall and {:.0} mm up", p.along, p.up)
        }
        (
            None,
            Misfit::NoSlope
            | Misfit::NoSize
            | Misfit::TooManyCut { .. }
            | Misfit::ValleyRafters
            | Misfit::NotFlatter { .. }
            | Misfit::Narrow { .. }
            | Misfit::Flat
            | Misfit::HatchSmall { .. },
        ) => String::new(),
        (None, _) => ". No place there takes it: make it smaller, or choose another wall".into(),
    }
}
