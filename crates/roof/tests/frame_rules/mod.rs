//! What is true of every frame, checked on roofs of every shape and option,
//! from the document alone: nothing of the solver is used to check it.

mod joints;
mod members;
mod moves;
mod pieces;
mod places;
mod roofs;
