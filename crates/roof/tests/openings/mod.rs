//! Openings in slopes: figures of the trade, holes that are really clear, and
//! refusals that name a place.

mod anywhere;
mod clear;
mod figures;
mod hatches;
mod hostile;
pub mod random;
mod several;
mod together;
