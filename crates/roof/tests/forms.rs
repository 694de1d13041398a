//! Every form of roof, on random sizes: framed with the frame's own check at
//! zero failures.

use crate::common::{Seed, job_over, orthogonal};
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

/// Solves sixty roofs of a form. Of these `most_loose` may have an end that
/// bears on nothing and is said to: where a ridge all but vanishes, or a splayed
/// bay runs into the main ridge, many timbers crowd one point.
fn all_solve(name: &str, most_loose: usize, make: impl Fn(&mut Seed) -> Job) {
    let mut bad = Vec::new();
    let mut loose = 0;
    for k in 1..=60 {
        let job = make(&mut Seed::new(k));
        match roof::solve(&job) {
            Ok(s) => {
                let stuck: Vec<_> = s.notices.iter().filter(|n| n.code == "no-bearing").collect();
                loose += usize::from(!stuck.is_empty());
            }
            Err(e) => bad.push(format!("{k}: {e}")),
        }
    }
    // Where a ridge all but vanishes, many timbers crowd one point.
    assert!(loose <= most_loose, "{name}: {loose} of 60 have an end that bears on nothing");
    assert!(bad.is_empty(), "{name}: {} of 60: {:#?}", bad.len(), &bad[..bad.len().min(5)]);
}

#[test]
fn half_hips() {
    all_solve("half hip", 0, |seed| {
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
    all_solve("gablet", 0, |seed| {
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
    all_solve("lean-to", 0, |seed| {
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
    all_solve("saltbox", 0, |seed| {
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
    all_solve("raised plates", 1, |seed| {
        let pitch = grid(seed.between(30.0, 50.0));
        let mut job = box_job(seed, pitch);
        job.walls[0].plate = grid(seed.between(-400.0, 400.0));
        job.walls[1].plate = grid(seed.between(-300.0, 300.0));
        job
    });
}

#[test]
fn mansards() {
    all_solve("mansard", 0, |seed| {
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

/// Whether a wall stands between two outer corners, as the end of a wing does.
fn is_end(corners: &[[f64; 2]], k: usize) -> bool {
    let n = corners.len();
    let at = |i: usize| geometry::DVec2::from_array(corners[(k + n + i - 1) % n]);
    let turn = |i: usize| (at(i + 1) - at(i)).perp_dot(at(i + 2) - at(i + 1));
    turn(0) > 0.0 && turn(1) > 0.0
}

#[test]
fn gabled_and_hipped_wings_of_any_mix() {
    all_solve("wings", 1, |seed| {
        let pitch = grid(seed.between(28.0, 48.0));
        let mut job = job_over(vec![orthogonal(seed)], pitch);
        let ends: Vec<usize> = (0..job.walls.len()).filter(|k| is_end(&job.loops[0], *k)).collect();
        let rise = |job: &Job, k: usize| {
            let n = job.loops[0].len();
            let [a, b] = [job.loops[0][k], job.loops[0][(k + 1) % n]].map(geometry::DVec2::from_array);
            (b - a).length() / 2.0 * geometry::Angle::deg(pitch).tan()
        };
        for k in ends {
            // No corner between two walls that are both carried up.
            let n = job.walls.len();
            let plain = |w: &job::Wall| !w.gable && w.half_hip.is_none() && w.gablet.is_none();
            if !plain(&job.walls[(k + n - 1) % n]) || !plain(&job.walls[(k + 1) % n]) {
                continue;
            }
            match seed.below(4) {
                0 => job.walls[k].gable = true,
                1 => job.walls[k].half_hip = Some(grid(rise(&job, k) * seed.between(0.4, 0.7))),
                2 => job.walls[k].gablet = Some(grid(rise(&job, k) * seed.between(0.4, 0.7))),
                _ => {}
            }
        }
        job
    });
}

#[test]
fn bays() {
    all_solve("bay", 4, |seed| {
        let pitch = grid(seed.between(28.0, 48.0));
        let (l, w) = (grid(seed.between(7000.0, 12000.0)), grid(seed.between(5000.0, 8000.0)));
        let (at, out, wide) =
            (grid(seed.between(1500.0, 3000.0)), grid(seed.between(600.0, 1000.0)), grid(seed.between(1200.0, 2000.0)));
        let splay = grid(out * seed.between(0.5, 1.0));
        let plan = vec![
            [0.0, 0.0],
            [at, 0.0],
            [grid(at + splay), -out],
            [grid(at + splay + wide), -out],
            [grid(at + 2.0 * splay + wide), 0.0],
            [l, 0.0],
            [l, w],
            [0.0, w],
        ];
        job_over(vec![plan], pitch)
    });
}
