//! The frame of a roof: from a checked job to timbers with every cut.

mod carcass;
mod document;
mod dormers;
mod error;
mod figures;
mod fitted;
mod frame;
mod gable_wall;
mod lengthening;
mod marking;
mod mending;
mod openings;
mod pieces;
mod profiles;
mod rings;
pub mod rules;
mod setting_out;
mod shape;
pub mod solution;
mod solve;
mod surface_words;
mod verify;

pub use error::SolveError;
pub use lengthening::{BoltRules, Proportions, proportions};
pub use marking::{Marking, mark};
pub use openings::{Misfit, Place};
pub use solve::solve;
