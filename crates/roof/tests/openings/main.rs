//! Openings in slopes: figures of the trade, holes that are really clear, and
//! refusals that name a place.

#![allow(missing_docs, reason = "a test")]

#[path = "../common/mod.rs"]
mod common;

mod anywhere;
mod clear;
mod figures;
mod hatches;
mod hostile;
mod random;
mod several;
mod together;
