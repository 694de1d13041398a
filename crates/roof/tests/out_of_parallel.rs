//! Plates out of parallel: ridges stay level, and the firring under each
//! rafter is what a calculation of its own says.

use crate::common::{Seed, job_over};
use roof::solution::{LineKind, MemberKind, Solution};

fn ridge_is_level(solution: &Solution) -> bool {
    let ridges: Vec<_> = solution.members.iter().filter(|m| m.kind == MemberKind::RidgeBoard).collect();
    ridges.iter().all(|m| (m.axis.from[2] - m.axis.to[2]).abs() < 0.01)
}

/// Firring of the rafters of one wall by their marks.
fn firring(solution: &Solution, mark: &str) -> Vec<(String, f64)> {
    let strip = solution.setting_out.iter().find(|s| s.mark == mark).expect("the wall has a plate");
    strip.stations.iter().filter_map(|s| Some((s.mark.clone(), s.firring_mm?))).collect()
}

#[test]
fn a_gabled_house_keeps_its_ridge_level() {
    // Wall C runs 45 mm nearer to wall A at its east end.
    let mut job = job_over(vec![vec![[0.0, 0.0], [9000.0, 0.0], [9000.0, 5955.0], [0.0, 6000.0]]], 40.0);
    job.walls[1].gable = true;
    job.walls[3].gable = true;
    job.verge.overhang = 0.0;
    let out = roof::solve(&job).expect("it is framed");
    assert!(ridge_is_level(&out));
    let packed = firring(&out, "Plate-C");
    assert!(!packed.is_empty());
    // By hand: the level line of the slope touches the plate at its west end; at a rafter x from there the plate
    // stands in by 45 x / 9000, and the slope has risen by that times the tangent of 40 degrees.
    let tan = 0.839_099_631_177_28;
    for (mark, mm) in packed {
        let rafter = out.members.iter().find(|m| m.mark == mark).expect("it is built");
        let x = rafter.axis.from[0];
        assert!((mm - 45.0 * x / 9000.0 * tan).abs() < 0.01, "{mark} at {x}: {mm}");
    }
    assert!(out.notices.iter().any(|n| n.code == "ridge-kept-level"), "{:?}", out.notices);
    // All slopes are flat: every rafter of C lies in one plane with the ridge.
    let lines: Vec<_> = out.lines.iter().filter(|l| l.kind == LineKind::Ridge).collect();
    assert_eq!(lines.len(), 1);
}

#[test]
fn a_hipped_house_keeps_its_ridge_level() {
    let job = job_over(vec![vec![[0.0, 0.0], [9000.0, 0.0], [9000.0, 5955.0], [0.0, 6000.0]]], 40.0);
    let out = roof::solve(&job).expect("it is framed");
    assert!(ridge_is_level(&out));
    let plain = roof::solve(&job_over(vec![vec![[0.0, 0.0], [9000.0, 0.0], [9000.0, 6000.0], [0.0, 6000.0]]], 40.0));
    let count = |s: &Solution, kind: MemberKind| s.members.iter().filter(|m| m.kind == kind).count();
    let plain = plain.expect("it is framed");
    for kind in [MemberKind::HipRafter, MemberKind::CommonRafter, MemberKind::JackRafter, MemberKind::RidgeBoard] {
        assert_eq!(count(&out, kind), count(&plain, kind), "{kind:?}");
    }
}

#[test]
fn past_the_limit_the_ways_are_told_with_their_figures() {
    let mut job = job_over(vec![vec![[0.0, 0.0], [9000.0, 0.0], [9000.0, 5880.0], [0.0, 6000.0]]], 40.0);
    job.walls[1].gable = true;
    job.walls[3].gable = true;
    job.verge.overhang = 0.0;
    let out = roof::solve(&job).expect("it is framed");
    let told = out.notices.iter().find(|n| n.code == "ridge-falls").expect("it is told");
    // 120 tan 40 = 100.7; the ridge falls; atan(50 / 120) = 22.6.
    assert!(told.text.contains("101 mm") && told.text.contains("22.6°"), "{}", told.text);
    job.setting_out.packing = 120.0;
    assert!(ridge_is_level(&roof::solve(&job).expect("it is framed")));
}

#[test]
fn houses_out_of_parallel_are_framed() {
    let mut refused = Vec::new();
    for k in 0..150 {
        let seed = &mut Seed::new(k + 1);
        let (l, w) = (seed.between(6000.0, 13_000.0), seed.between(4000.0, 8000.0));
        let off = |seed: &mut Seed| (seed.between(-60.0, 60.0) * 10.0).round() / 10.0;
        let mut ring = vec![[0.0, 0.0], [l, off(seed)], [l, w + off(seed)], [0.0, w]];
        if seed.once_in(3) {
            let (a, b) = (seed.between(1200.0, 0.3 * l), seed.between(2500.0, 0.4 * l));
            let out = seed.between(1500.0, 4000.0);
            ring.splice(3..3, [[a + b + off(seed), w], [a + b, w + out], [a, w + out + off(seed)], [a, w]]);
        }
        let mut job = job_over(vec![ring.iter().map(|p| p.map(|v| (v * 10.0).round() / 10.0)).collect()], 38.0);
        if seed.once_in(2) {
            job.walls[1].gable = true;
        }
        let solved = roof::solve(&job);
        match solved {
            Ok(out) => {
                if out.notices.iter().any(|n| n.code == "ridge-kept-level") && ring.len() == 4 {
                    assert!(ridge_is_level(&out), "seed {k}: {ring:?}");
                }
            }
            Err(e) => refused.push(format!("seed {k}: {e} {ring:?}")),
        }
    }
    assert!(
        refused.is_empty(),
        "{} of 150: {}",
        refused.len(),
        refused.iter().take(5).cloned().collect::<Vec<_>>().join("\n")
    );
}

/// A thousand gabled houses with wall C 15 to 120 mm out of parallel: the ridge
/// is level, both slopes are flat, and the firring under every rafter is that
/// of a calculation of its own: the level line of the slope touches the plate at
/// its outermost end, and the slope rises by the tangent of the pitch from there.
#[test]
fn firring_is_that_of_an_independent_calculation() {
    let mut checked = 0;
    for k in 0..1000 {
        let seed = &mut Seed::new(70_000 + k);
        let (l, w) = (seed.between(6000.0, 12_000.0).round(), seed.between(4000.0, 8000.0).round());
        let by = seed.between(15.0, 120.0).round() * if seed.once_in(2) { 1.0 } else { -1.0 };
        let pitch = seed.between(25.0, 50.0).round();
        let mut job = job_over(vec![vec![[0.0, 0.0], [l, 0.0], [l, w + by], [0.0, w]]], pitch);
        job.walls[1].gable = true;
        job.walls[3].gable = true;
        job.verge.overhang = 0.0;
        job.setting_out.packing = 150.0;
        let out = roof::solve(&job).unwrap_or_else(|e| panic!("{l} {w} {by} {pitch}: {e}"));
        assert!(ridge_is_level(&out), "{l} {w} {by} {pitch}");
        let tan = geometry::Angle::deg(pitch).tan();
        let outermost = w.max(w + by);
        for (mark, mm) in firring(&out, "Plate-C") {
            let [x, y, z] = out.members.iter().find(|m| m.mark == mark).expect("it is built").axis.from;
            let plate = w + by * x / l;
            assert!((y - plate).abs() < 0.01, "{mark} stands {} mm off its plate", y - plate);
            assert!((mm - (outermost - plate) * tan).abs() < 0.01 && (z - mm).abs() < 0.01, "{mark}: {mm}");
            checked += 1;
        }
        for face in &out.faces {
            // Level lines of both slopes run east: every corner is as high as its distance from the eaves says.
            let eaves = if face.id == "A" { 0.0 } else { outermost };
            let flat = face.outline.iter().all(|[_, y, z]| ((y - eaves).abs() * tan - z).abs() < 0.01);
            assert!(flat, "{l} {w} {by} {pitch}: {:?}", face.outline);
        }
    }
    assert!(checked > 10_000, "{checked}");
}

#[test]
fn two_walls_beside_a_wing_carry_one_slope() {
    let ring = vec![
        [0.0, 0.0],
        [9000.0, 0.0],
        [9000.0, 6040.0],
        [6000.0, 6020.0],
        [6000.0, 8500.0],
        [3000.0, 8500.0],
        [3000.0, 6000.0],
        [0.0, 6000.0],
    ];
    let out = roof::solve(&job_over(vec![ring], 38.0)).expect("it is framed");
    assert!(
        out.notices.iter().any(|n| ["one-slope", "plates-in-line"].contains(&n.code.as_str())),
        "{:?}",
        out.notices
    );
    assert!(ridge_is_level(&out));
}
