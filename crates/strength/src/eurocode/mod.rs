//! Checks to EN 1995-1-1 and what it leans on.

pub mod joints;
pub mod members;
pub mod wood;
