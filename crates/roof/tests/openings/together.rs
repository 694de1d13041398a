//! Openings and dormers in roofs with everything fitted: what stands without
//! them stands with them.

use super::clear::{assert_clear, assert_hole_clear};
use super::random::{move_dormer, move_to, random_dormer, random_opening};
use crate::common::{Seed, random_job};
use job::{CollarTimber, Job, NogginTimber, Opening, PurlinSet, PurlinTimber, Section, SpacedTimber, Sprocket};
use roof::SolveError;

/// How many roofs are tried.
const ROOFS: u64 = 120;

const fn section(thickness: f64, depth: f64) -> Section {
    Section { thickness, depth }
}

fn spaced(thickness: f64, depth: f64, centres: f64) -> SpacedTimber {
    SpacedTimber { size: section(thickness, depth), centres }
}

/// Everything that can be fitted, some of it left out at random.
fn fit_all(seed: &mut Seed, job: &mut Job) {
    let set = if seed.once_in(2) { PurlinSet::Square } else { PurlinSet::Plumb };
    let purlin = PurlinTimber { size: section(75.0, 175.0), set, up: Vec::new() };
    let mut some = || !seed.once_in(3);
    let parts = &mut job.timber.parts;
    parts.purlin = some().then_some(purlin);
    parts.strut = some().then(|| spaced(100.0, 75.0, 1800.0));
    parts.collar = some().then(|| CollarTimber { size: section(47.0, 150.0), height: 1100.0, every: 2 });
    parts.ceiling_joist = some().then_some(section(47.0, 125.0));
    parts.binder = some().then_some(section(47.0, 150.0));
    parts.hanger = some().then(|| spaced(47.0, 75.0, 1800.0));
    parts.angle_tie = some().then_some(section(100.0, 75.0));
    parts.dragon_tie = some().then_some(section(100.0, 75.0));
    parts.ladder = some().then(|| spaced(47.0, 100.0, 600.0));
    parts.noggin = some().then(|| NogginTimber { size: section(47.0, 100.0), rows: 2 });
    parts.fascia = some().then_some(section(25.0, 200.0));
    parts.soffit = some().then_some(section(12.0, 225.0));
    parts.fillet = some().then_some(section(50.0, 75.0));
    parts.barge = some().then_some(section(25.0, 200.0));
    if seed.once_in(4) {
        job.eaves.sprocket = Some(Sprocket { pitch_deg: job.pitch_deg - 10.0, reach: 600.0 });
    }
}

/// Solve, moving the last opening to where it is said to fit if need be; it is
/// taken out again where it fits nowhere.
fn settle(job: &mut Job, seed: u64, dormer: bool) {
    match roof::solve(job) {
        Ok(_) => {}
        Err(SolveError::Opening { nearest: Some(place), .. }) => {
            match (dormer, job.dormers.last_mut(), job.openings.last_mut()) {
                (true, Some(last), _) => move_dormer(last, place),
                (false, _, Some(last)) => move_to(last, place),
                _ => panic!("seed {seed}: refused without an opening"),
            }
            if let Err(e) = roof::solve(job) {
                panic!("seed {seed}: refused where it was to fit: {e}");
            }
        }
        Err(SolveError::Opening { .. }) if dormer => drop(job.dormers.pop()),
        Err(SolveError::Opening { .. }) => drop(job.openings.pop()),
        Err(e) => panic!("seed {seed}: {e}"),
    }
}

#[test]
fn openings_do_not_spoil_a_roof_with_everything_in_it() {
    let (mut dormers, mut openings, mut told) = (0, 0, 0);
    for seed in 2000..2000 + ROOFS {
        let mut random = Seed::new(seed);
        let mut job = random_job(&mut random);
        fit_all(&mut random, &mut job);
        if roof::solve(&job).is_err() {
            continue;
        }
        let dormer = random_dormer(&mut random, &job);
        job.dormers.push(dormer);
        settle(&mut job, seed, true);
        for name in ["one", "two"] {
            let opening: Opening = random_opening(&mut random, &job, name);
            job.openings.push(opening);
            settle(&mut job, seed, false);
        }
        if let Ok(s) = roof::solve(&job) {
            let crossed =
                |o: &Opening| s.notices.iter().any(|n| n.code == "timber-in-opening" && n.place.ends_with(&o.name));
            for opening in &job.openings {
                if crossed(opening) {
                    told += 1;
                    assert_hole_clear(&job, &s, opening);
                } else {
                    assert_clear(&job, &s, opening);
                }
            }
        }
        dormers += job.dormers.len();
        openings += job.openings.len();
    }
    assert!(dormers > 10 && openings > 60, "{dormers} dormers, {openings} openings");
    // Timber is left in an opening as a last resort only.
    assert!(told * 10 < openings, "{told} of {openings} openings have timber in them");
}
