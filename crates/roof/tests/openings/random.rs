//! Openings and dormers of random sizes in random places.

#![allow(dead_code, reason = "each test file uses its own part")]

use crate::common::Seed;
use geometry::Angle;
use job::{Distance, Dormer, DormerKind, Job, Opening, OpeningKind, ValleyAs};
use roof::Place;

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

pub fn move_dormer(dormer: &mut Dormer, place: Place) {
    dormer.along = place.along;
    dormer.back = place.up;
}

/// The longest wall that a slope rises from.
fn longest(job: &Job) -> usize {
    let ring = &job.loops[0];
    let length = |k: usize| {
        let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
        (a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2)
    };
    (0..ring.len()).filter(|k| !job.walls[*k].gable).max_by(|a, b| length(*a).total_cmp(&length(*b))).expect("a slope")
}

pub fn random_dormer(seed: &mut Seed, job: &Job) -> Dormer {
    let any = seed.below(job.walls.len() as u64) as usize;
    let wall = if seed.once_in(4) { any } else { longest(job) };
    let kind = if seed.once_in(3) { DormerKind::LeanTo } else { DormerKind::Gable };
    let main = job.walls[wall].pitch_deg;
    let back = seed.between(200.0, 1500.0);
    let pitch_deg = match kind {
        DormerKind::Gable => seed.between(15.0, 55.0),
        DormerKind::LeanTo => seed.between(5.0, main - 6.0),
    };
    let upstand = 150.0 / Angle::deg(main).cos();
    let front = (back + 100.0) * Angle::deg(main).tan() + upstand;
    Dormer {
        name: "d".into(),
        kind,
        wall,
        along: seed.between(1500.0, 7000.0),
        back,
        width: seed.between(600.0, 2000.0),
        plate: front + seed.between(350.0, 1100.0),
        pitch_deg,
        valley: ValleyAs::LayBoard,
    }
}
