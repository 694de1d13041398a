//! Putting a cut roof up: the order of work, lifts, the programme, access and its records.
//!
//! Units: mm, kg, degrees, hours.

pub mod access;
pub mod lifts;
pub mod programme;
pub mod records;
pub mod sequence;
pub mod whole;
