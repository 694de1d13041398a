//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod cases;
mod defaults;
mod examples;
mod hostile;
mod plan;
mod schema;
mod survey;
