//! What can be wrong with a written length.

use thiserror::Error;

/// What can be wrong with a written length. Each text says what was found and
/// what to write.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum LengthError {
    /// Nothing but blanks.
    #[error("nothing is written; write a length such as \"8400 mm\" or \"27' 6 1/2\\\"\"")]
    Empty,
    /// A number with no unit.
    #[error("`{number}` has no unit; write one after it: mm, cm, m, ft (') or in (\"), such as {number} mm")]
    NoUnit {
        /// The number as written.
        number: String,
    },
    /// A unit that is not known.
    #[error("`{unit}` is not a unit of length; write mm, cm, m, ft (') or in (\")")]
    UnknownUnit {
        /// The unit as written.
        unit: String,
    },
    /// A comma, which may mean a decimal point or thousands.
    #[error("a comma may mean tenths or thousands; write a point for tenths and nothing for thousands")]
    Comma,
    /// Something where a number should be.
    #[error("a number is missing before `{found}`; write each unit after its number")]
    NumberMissing {
        /// What stands there instead.
        found: String,
    },
    /// A fraction that is not one whole number over another.
    #[error("`{fraction}` is not a fraction of an inch; write whole numbers such as 1/2 or 7/16, less than one")]
    BadFraction {
        /// The fraction as written.
        fraction: String,
    },
    /// Units in the wrong order, repeated, or of two systems.
    #[error("`{unit}` cannot follow the unit before it; write metric or feet and inches, the greater unit first")]
    UnitOrder {
        /// The unit out of place.
        unit: String,
    },
    /// Twelve inches or more after feet.
    #[error("{inches} inches after feet make another foot; write inches below 12, or all in inches")]
    TooManyInches {
        /// The inches as written.
        inches: String,
    },
    /// Beyond what a number can hold.
    #[error("the number is too large to be a length; check the unit and the number of digits")]
    TooLarge,
}
