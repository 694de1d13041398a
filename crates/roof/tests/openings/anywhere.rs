//! Openings of random sizes in random places: built, or refused with a place
//! that takes them.

use super::clear::assert_clear;
use super::random::{move_to, random_opening};
use crate::common::{Seed, random_job};
use roof::{Misfit, SolveError};

/// How many roofs are tried.
const ROOFS: u64 = 200;

#[test]
fn an_opening_is_built_or_a_place_is_named_that_takes_it() {
    let (mut built, mut moved, mut nowhere) = (0, 0, 0);
    for seed in 1..=ROOFS {
        let mut random = Seed::new(seed);
        let mut job = random_job(&mut random);
        if roof::solve(&job).is_err() {
            continue;
        }
        let opening = random_opening(&mut random, &job, "one");
        job.openings.push(opening);
        match roof::solve(&job) {
            Ok(s) => {
                assert_clear(&job, &s, &job.openings[0]);
                built += 1;
            }
            Err(SolveError::Opening { nearest: Some(place), .. }) => {
                move_to(&mut job.openings[0], place);
                let s = roof::solve(&job).unwrap_or_else(|e| panic!("seed {seed}: refused where it was to fit: {e}"));
                assert_clear(&job, &s, &job.openings[0]);
                moved += 1;
            }
            Err(SolveError::Opening { misfit, .. }) => {
                let gable = job.walls[job.openings[0].wall].gable;
                assert_eq!(*misfit == Misfit::NoSlope, gable, "seed {seed}");
                nowhere += 1;
            }
            Err(e) => panic!("seed {seed}: {e}"),
        }
    }
    // The generator must keep trying all three.
    assert!(built > 20 && moved > 80 && nowhere > 10, "{built} built, {moved} moved, {nowhere} nowhere");
}
