//! Random roofs with everything inside them: whatever can be framed without
//! purlins, joists and ties can be framed with them, and passes the same check.

#![allow(missing_docs, reason = "a test")]

mod common;

use common::{Seed, random_job};
use job::{Job, PurlinSet, PurlinTimber, Section};

/// How many roofs.
const ROOFS: u64 = 150;

fn section(thickness: f64, depth: f64) -> Section {
    Section { thickness, depth }
}

fn with_parts(seed: &mut Seed, job: &mut Job) {
    let parts = &mut job.timber.parts;
    let set = if seed.once_in(2) { PurlinSet::Square } else { PurlinSet::Plumb };
    parts.purlin = Some(PurlinTimber { size: section(75.0, 200.0), set, up: Vec::new() });
}

#[test]
fn what_stands_without_its_inside_stands_with_it() {
    let mut failed = Vec::new();
    let mut solved = 0;
    for k in 1..=ROOFS {
        let mut seed = Seed::new(k);
        let mut job = random_job(&mut seed);
        if roof::solve(&job).is_err() {
            continue;
        }
        solved += 1;
        with_parts(&mut seed, &mut job);
        if let Err(e) = roof::solve(&job) {
            failed.push((k, e.to_string()));
        }
    }
    assert!(solved > 140, "only {solved} roofs");
    assert!(failed.is_empty(), "{} of {solved}: {failed:#?}", failed.len());
}
