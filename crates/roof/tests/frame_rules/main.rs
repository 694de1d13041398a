//! What is true of every frame, checked on roofs of every shape and option,
//! from the document alone: nothing of the solver is used to check it.

#[path = "../common/mod.rs"]
mod common;
mod joints;
mod members;
mod moves;
mod pieces;
mod places;
#[path = "../reading/mod.rs"]
mod reading;
mod roofs;
