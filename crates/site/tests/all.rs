//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod access_rows;
mod access_whole;
mod common;
mod lifts;
mod programme_rows;
mod programme_whole;
mod sequence;
