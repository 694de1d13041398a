//! Jobs that several tests solve.
#![allow(dead_code, reason = "each test file uses its own part")]

use job::Job;
use roof::solution::Solution;
use std::sync::LazyLock;

/// A whole house with everything fitted, and its roof.
pub static HOUSE: LazyLock<(Job, Solution)> =
    LazyLock::new(|| solved(include_str!("../../../../examples/whole-house.toml")));

/// A job and its roof.
pub fn solved(text: &str) -> (Job, Solution) {
    let job = job::read(text).unwrap_or_else(|faults| panic!("{faults}"));
    let solution = roof::solve(&job).unwrap();
    (job, solution)
}
