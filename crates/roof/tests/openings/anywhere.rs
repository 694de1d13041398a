//! Openings of random sizes in random places: built, or refused with a place
//! that takes them.

use crate::common::{Seed, random_job};
use job::{Distance, Job, Opening, OpeningKind};
use roof::{Misfit, SolveError};

const ROOFS: u64 = 200;

fn random_opening(seed: &mut Seed, job: &Job, name: &str) -> Opening {
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

#[test]
fn an_opening_is_built_or_a_place_is_named_that_takes_it() {
    let (mut built, mut moved, mut nowhere) = (0, 0, Vec::new());
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
                built += 1;
                assert_eq!(s.openings.len(), 1, "seed {seed}");
            }
            Err(SolveError::Opening { nearest: Some(place), .. }) => {
                let opening = &mut job.openings[0];
                opening.along = place.along;
                opening.up = match opening.up {
                    Distance::Slope(_) => Distance::Slope(place.up),
                    Distance::Plan(_) => Distance::Plan(place.up),
                };
                assert!(roof::solve(&job).is_ok(), "seed {seed}: refused where it was said to fit");
                moved += 1;
            }
            Err(e @ SolveError::Opening { .. }) => nowhere.push((seed, e.to_string())),
            Err(e) => panic!("seed {seed}: {e}"),
        }
    }
    println!("{built} {moved} {nowhere:#?}");
}
