//! Why a covering cannot be counted.

use thiserror::Error;

/// Why a covering cannot be counted.
#[derive(Clone, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum CoverFault {
    /// No file for the region.
    #[error("there are no figures for coverings in the region '{0}': use 'uk' or 'us', or add a file for it")]
    NoRegion(String),
    /// The file is not as it should be.
    #[error("the figures for coverings of a region cannot be read: {0}")]
    Unreadable(String),
    /// No covering of that name.
    #[error("no covering is called '{name}': the nearest are {}", .near.join(", "))]
    Unknown {
        /// What was asked for.
        name: String,
        /// Names that are nearest to it.
        near: Vec<String>,
    },
    /// A slope is flatter than the covering allows.
    #[error(
        "{place}: the pitch of {pitch_deg:.1} degrees is below {least_deg:.1}, the least for {called} with a head lap of {lap_mm:.0} mm; {remedy}"
    )]
    PitchBelowLeast {
        /// What the covering is called.
        called: String,
        /// Which slope.
        place: String,
        /// Its pitch, degrees.
        pitch_deg: f64,
        /// The least, degrees.
        least_deg: f64,
        /// With this head lap, mm.
        lap_mm: f64,
        /// What can be done.
        remedy: String,
    },
    /// The lap leaves nothing of a piece to show.
    #[error(
        "a head lap of {lap_mm:.0} mm leaves nothing to show of a piece {length_mm:.0} mm long: give a smaller lap or a longer piece"
    )]
    LapImpossible {
        /// mm.
        lap_mm: f64,
        /// mm.
        length_mm: f64,
    },
    /// A head lap less than any that the covering is used with.
    #[error(
        "a head lap of {lap_mm:.0} mm is less than {least_mm:.0} mm, the least for {called} at any pitch: give more, or its maker's least pitch with the lap"
    )]
    LapShort {
        /// What the covering is called.
        called: String,
        /// mm.
        lap_mm: f64,
        /// mm.
        least_mm: f64,
    },
    /// A figure must be more than nothing, and a number.
    #[error("{what} must be a number above 0, and it is {value}: give the maker's figure")]
    NotPositive {
        /// Which figure.
        what: &'static str,
        /// What it is.
        value: f64,
    },
    /// A figure must not be less than nothing, and be a number.
    #[error("{what} must be a number of at least 0, and it is {value}: give another")]
    Negative {
        /// Which figure.
        what: &'static str,
        /// What it is.
        value: f64,
    },
    /// Rafters stand further apart than the table of battens goes.
    #[error(
        "rafters at {centres_mm:.0} mm are beyond the {most_mm:.0} mm of the table of battens for {called}: put the rafters closer, or give a batten size that whoever answers for the roof has checked"
    )]
    BattenSpan {
        /// What the covering is called.
        called: String,
        /// mm.
        centres_mm: f64,
        /// mm.
        most_mm: f64,
    },
    /// More courses, or pieces in one, than a roof has.
    #[error("{place}: {count:.0} {what} are more than can be counted: check the size and the gauge of the pieces")]
    TooMany {
        /// Which slope.
        place: String,
        /// Of what.
        what: &'static str,
        /// How many.
        count: f64,
    },
    /// The roof has no slopes.
    #[error("the roof has no slopes to cover")]
    NoSlopes,
}
