//! Every form of roof, on random sizes: framed with the frame's own check at
//! zero failures.

#![allow(missing_docs, reason = "a test")]

mod common;

use common::{Seed, job_over};
use job::{Job, UpperSlope};

fn grid(v: f64) -> f64 {
    (v * 10.0).round() / 10.0
}

fn box_job(seed: &mut Seed, pitch: f64) -> Job {
    let (l, w) = (grid(seed.between(5000.0, 12000.0)), grid(seed.between(4000.0, 8000.0)));
    let mut job = job_over(vec![vec![[0.0, 0.0], [l, 0.0], [l, w], [0.0, w]]], pitch);
    job.eaves.overhang = [0.0, 150.0, 300.0][seed.below(3) as usize];
    job
}

fn all_solve(name: &str, make: impl Fn(&mut Seed) -> Job) {
    let mut bad = Vec::new();
    let mut loose = 0;
    for k in 1..=60 {
        let job = make(&mut Seed::new(k));
        match roof::solve(&job) {
            Ok(s) => {
                let stuck: Vec<_> = s.notices.iter().filter(|n| n.code == "no-bearing").collect();
                loose += usize::from(!stuck.is_empty());
                if stuck.len() > 1 {
                    bad.push(format!("{k}: {} {}", stuck.len(), stuck[0].text));
                }
            }
            Err(e) => bad.push(format!("{k}: {e}")),
        }
    }
    // Where a ridge all but vanishes, many timbers crowd one point.
    assert!(loose <= 1, "{name}: {loose} of 60 have an end that bears on nothing");
    assert!(bad.is_empty(), "{name}: {} of 60: {:#?}", bad.len(), &bad[..bad.len().min(5)]);
}

#[test]
fn half_hips() {
    all_solve("half hip", |seed| {
        let pitch = grid(seed.between(30.0, 50.0));
        let mut job = box_job(seed, pitch);
        for k in [1, 3] {
            let w = job.loops[0][2][1] / 2.0;
            let rise = w * geometry::Angle::deg(pitch).tan();
            job.walls[k].half_hip = Some(grid(rise * seed.between(0.2, 0.7)));
            job.walls[k].pitch_deg = grid(pitch + seed.between(-6.0, 8.0));
        }
        job
    });
}

#[test]
fn gablets() {
    all_solve("gablet", |seed| {
        let pitch = grid(seed.between(30.0, 50.0));
        let mut job = box_job(seed, pitch);
        let rise = job.loops[0][2][1] / 2.0 * geometry::Angle::deg(pitch).tan();
        for k in [1, 3] {
            job.walls[k].gablet = Some(grid(rise * seed.between(0.4, 0.8)));
        }
        job
    });
}

#[test]
fn lean_tos() {
    all_solve("lean-to", |seed| {
        let pitch = grid(seed.between(10.0, 45.0));
        let mut job = box_job(seed, pitch);
        for k in [1, 2, 3] {
            job.walls[k].gable = true;
        }
        job
    });
}

#[test]
fn saltboxes() {
    all_solve("saltbox", |seed| {
        let pitch = grid(seed.between(25.0, 50.0));
        let mut job = box_job(seed, pitch);
        job.walls[1].gable = true;
        job.walls[3].gable = true;
        job.walls[2].plate = grid(seed.between(200.0, 1200.0));
        if seed.once_in(2) {
            job.walls[2].pitch_deg = grid(pitch + seed.between(-5.0, 5.0));
        }
        job
    });
}

#[test]
fn hipped_roofs_with_plates_at_different_heights() {
    all_solve("raised plates", |seed| {
        let pitch = grid(seed.between(30.0, 50.0));
        let mut job = box_job(seed, pitch);
        job.walls[0].plate = grid(seed.between(-400.0, 400.0));
        job.walls[1].plate = grid(seed.between(-300.0, 300.0));
        job
    });
}

#[test]
fn mansards() {
    all_solve("mansard", |seed| {
        let pitch = grid(seed.between(60.0, 72.0));
        let mut job = box_job(seed, pitch);
        let gables = seed.once_in(2);
        let upper = UpperSlope { from: grid(seed.between(1600.0, 2400.0)), pitch_deg: grid(seed.between(20.0, 35.0)) };
        for (k, wall) in job.walls.iter_mut().enumerate() {
            if gables && k % 2 == 1 {
                wall.gable = true;
            } else {
                wall.upper = Some(upper);
            }
        }
        job
    });
}
