//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod actions;
mod joints;
mod members;
mod nds;
mod span_table;
mod statics;
mod whole;
