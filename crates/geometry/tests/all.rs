//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod carved_bricks;
mod check_catches;
mod common;
mod fixed_plans;
mod named_plans;
mod random_plans;
mod roof_lines;
mod survey;
