//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod arrives;
mod common;
mod pictures;
mod published;
mod sums;
