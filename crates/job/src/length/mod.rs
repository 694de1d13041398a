//! Lengths as a carpenter writes them, read and written.
//!
//! Inside, a length is a number of millimetres (`f64`). Feet and inches exist
//! only here.

mod error;
mod format;
mod parse;
#[cfg(test)]
mod tests;
mod unit;

pub use error::LengthError;
pub use format::{format_length, format_length_bare};
pub use parse::parse_length;
pub(crate) use parse::plain;

/// Millimetres in a foot, exact by the definition of the international foot.
const MM_PER_FOOT: f64 = 304.8;
/// Millimetres in an inch, exact by the definition of the international inch.
const MM_PER_INCH: f64 = 25.4;
/// Sixteenths in an inch: the finest mark of a joiner's tape.
const SIXTEENTHS_PER_INCH: u64 = 16;
