//! The order of work: who is fixed when, on what, with which props and braces.

pub mod bracing;
pub mod rank;
pub mod schedule;
mod sorting;
pub mod standing;
pub mod systems;
