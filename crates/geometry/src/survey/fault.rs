//! Why no plan can be made of a survey.

use super::Measure;
use thiserror::Error;

/// A survey that gives no plan. Corners go by number, counted from 0; callers
/// that know their letters word it again.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Error)]
pub enum SurveyFault {
    /// Fewer than three sides, or more than can be handled.
    #[error("a survey has three sides or more, {most} at most; this one has {sides}")]
    Sides {
        /// How many there are.
        sides: usize,
        /// The limit.
        most: usize,
    },
    /// More readings than can be handled.
    #[error("a survey has {most} readings at most; this one has {readings}")]
    Readings {
        /// How many there are.
        readings: usize,
        /// The limit.
        most: usize,
    },
    /// A reading that is no length or angle, or between corners that are not
    /// two of the plan.
    #[error("this reading is no length of a wall, no angle within a turn, or not between two corners: {0:?}")]
    NotAReading(Measure),
    /// A tolerance that is no positive number.
    #[error("a tolerance is more than 0")]
    Tolerance,
    /// A side that is as long as all others together.
    #[error(
        "side {side} is {length:.0} mm, and all others together only {rest:.0} mm: they cannot close. Measure it again"
    )]
    SideTooLong {
        /// Its number.
        side: usize,
        /// Its length, mm.
        length: f64,
        /// All others together, mm.
        rest: f64,
    },
    /// A diagonal that is longer than the sides between its corners.
    #[error(
        "corners {from} and {to} are {length:.0} mm apart, but the sides from one to the other only {round:.0} mm \
         long: measure again"
    )]
    DiagonalTooLong {
        /// One corner.
        from: usize,
        /// The other.
        to: usize,
        /// The measured distance, mm.
        length: f64,
        /// Length of the sides between them, the shorter way round, mm.
        round: f64,
    },
    /// Three distances that make no triangle.
    #[error(
        "corners {corners:?} make no triangle: their distances are {lengths:.0?} mm, and one is longer than the other \
         two together. Measure them again"
    )]
    NoTriangle {
        /// The corners.
        corners: [usize; 3],
        /// From the first to the second, from the second to the third, from
        /// the third to the first, mm.
        lengths: [f64; 3],
    },
    /// The readings do not fix the plan.
    #[error("the readings leave the plan loose: {} more needed, next the distance of corners {}", .next.len(), pair_words(.next))]
    UnderMeasured {
        /// Distances that fix it, the one that tells most first.
        next: Vec<(usize, usize)>,
    },
    /// The readings fix the plan too weakly.
    #[error("the distance of corners {from} and {to} is open by {within:.0} mm: measure it")]
    TooWeak {
        /// One corner.
        from: usize,
        /// The other.
        to: usize,
        /// Within how much it is known, mm (95 times of 100).
        within: f64,
    },
    /// Two plans fit the readings.
    #[error(
        "two plans fit: corners {inward:?} point inwards; the distance of corners {next:?} tells which, {lengths:.0?} mm"
    )]
    Ambiguous {
        /// Corners that point into the building, in each of the two.
        inward: Vec<Vec<usize>>,
        /// The distance that differs most between them.
        next: (usize, usize),
        /// That distance in each, mm.
        lengths: [f64; 2],
    },
    /// More plans fit the readings than can be gone through.
    #[error("very many plans fit the readings: say which corners point inwards, or measure more diagonals")]
    TooManyPlacings,
    /// No plan that fits has these corners inwards.
    #[error("no plan that fits the readings has just the corners inwards that were named")]
    InwardDisagrees,
    /// The walls of the plan cross.
    #[error("sides {first} and {second} cross: check them and the diagonals at their ends")]
    Crossing {
        /// One side.
        first: usize,
        /// The other.
        second: usize,
    },
    /// The turns close only the other way round.
    #[error("the plan closes only clockwise: go round anticlockwise, and measure angles inside the building")]
    WrongWayRound,
}

fn pair_words(next: &[(usize, usize)]) -> String {
    next.first().map_or_else(String::new, |(a, b)| format!("{a} and {b}"))
}
