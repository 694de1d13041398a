//! Roofs to put up.

#[path = "../../../roof/tests/common/mod.rs"]
mod roofs_at_random;

use job::{CollarTimber, Job, PurlinSet, PurlinTimber, Section, SpacedTimber, SpliceKind};
use roof::solution::Solution;
use roofs_at_random::{Seed, random_job};
use site::sequence::{PuttingUp, putting_up};
use std::path::Path;

pub fn read(name: &str) -> (Job, Solution) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples").join(name);
    let job = job::read(std::fs::read_to_string(path).unwrap()).unwrap_or_else(|faults| panic!("{faults}"));
    let solution = roof::solve(&job).unwrap_or_else(|e| panic!("{name}: {e}"));
    (job, solution)
}

pub fn examples() -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let files = std::fs::read_dir(folder).unwrap().map(|f| f.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<String> = files.filter(|n| n.ends_with(".toml")).collect();
    names.sort();
    names
}

pub fn sheet(name: &str) -> (Job, Solution, PuttingUp) {
    let (job, solution) = read(name);
    let sheet = putting_up(&job, &solution).unwrap_or_else(|fault| panic!("{name}: {fault}"));
    (job, solution, sheet)
}

/// A random roof of any plan, with gables, splices and parts at random; `None` when it is refused.
pub fn random(seed: u64) -> Option<(Job, Solution)> {
    let mut seeds = Seed::new(seed);
    let mut job = random_job(&mut seeds);
    if seeds.once_in(2) {
        job.timber.joint.longest = 5400.0;
        job.timber.joint.kind = if seeds.once_in(2) { SpliceKind::FishPlates } else { SpliceKind::Splayed };
    }
    if seeds.once_in(3) {
        let n = job.walls.len() as u64;
        let k = seeds.below(n) as usize;
        job.walls[k].gable = true;
    }
    let plain = job.clone();
    let section = |thickness: f64, depth: f64| Section { thickness, depth };
    let parts = &mut job.timber.parts;
    if seeds.once_in(2) {
        parts.ceiling_joist = Some(section(47.0, 125.0));
    }
    if seeds.once_in(3) {
        parts.purlin = Some(PurlinTimber { size: section(75.0, 200.0), set: PurlinSet::Plumb, up: Vec::new() });
    }
    if seeds.once_in(3) {
        parts.collar = Some(CollarTimber { size: section(47.0, 150.0), height: 1200.0, every: 2 });
    }
    if seeds.once_in(2) {
        parts.ladder = Some(SpacedTimber { size: section(47.0, 100.0), centres: 600.0 });
        parts.fascia = Some(section(25.0, 200.0));
    }
    let solved = |job: Job| roof::solve(&job).ok().map(|solution| (job, solution));
    solved(job).or_else(|| solved(plain))
}
