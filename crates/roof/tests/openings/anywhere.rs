//! Openings of random sizes in random places: built, or refused with a place
//! that takes them.

use crate::clear::assert_clear;
use crate::common::{Seed, random_job};
use job::{Distance, Job, Opening, OpeningKind};
use roof::{Misfit, Place, SolveError};

/// How many roofs are tried.
const ROOFS: u64 = 200;

pub fn random_opening(seed: &mut Seed, job: &Job, name: &str) -> Opening {
    let wall = seed.below(job.walls.len() as u64) as usize;
    let kind = if seed.once_in(2) { OpeningKind::RoofWindow } else { OpeningKind::Chimney };
    let plan = kind == OpeningKind::Chimney || seed.once_in(3);
    let up = seed.between(0.0, 4500.0);
    Opening {
        name: name.into(),
        kind,
        wall,
        along: seed.between(-500.0, 9000.0),
        up: if plan { Distance::Plan(up) } else { Distance::Slope(up) },
        width: seed.between(300.0, 1500.0),
        height: seed.between(300.0, 1400.0),
        flue_wall: if seed.once_in(2) { Some(seed.between(90.0, 230.0)) } else { None },
    }
}

pub fn move_to(opening: &mut Opening, place: Place) {
    opening.along = place.along;
    opening.up = match opening.up {
        Distance::Slope(_) => Distance::Slope(place.up),
        Distance::Plan(_) => Distance::Plan(place.up),
    };
}

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
