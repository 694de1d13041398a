//! The purlin figures of the full setting-out rows (`row-*` of
//! `reference/geometry_checks.json`; formulas in reference/geometry.md section
//! 4, table in 5.3) against the purlins of solved corners.
//!
//! Every row is one corner: walls A and D meet at the origin at the row's angle
//! and pitches; wall D is the row's side B. The purlins run square to the slope
//! halfway up; they meet the hip with a cheek on its side, and a lip under it.

use crate::common;
use crate::published::{Entry, Tally, family};
use crate::reading::{dir, of_kind, solve, spine_from, vec3, worst};
use geometry::{Angle, DVec2};
use job::{Job, PurlinSet, PurlinTimber, Section};
use roof::solution::{Cut, Member, MemberKind, Solution};

/// The row's figures of purlins, on either side.
const FIGURES: [&str; 4] = ["purlin_edge_#_deg", "purlin_face_#_deg", "face_tilt_#_deg", "purlin_lip_#_deg"];

fn corner_job(row: &Entry, set: PurlinSet) -> Job {
    let corner = Angle::deg(row.input("corner_deg"));
    let run = row.input("run_a_mm");
    let (long, short) = (8.0 * run, 2.0 * run / corner.sin());
    let (x, y) = (short * corner.cos(), short * corner.sin());
    let mut job =
        common::job_over(vec![vec![[0.0, 0.0], [long, 0.0], [long + x, y], [x, y]]], row.input("pitch_a_deg"));
    for k in [1, 3] {
        job.walls[k].pitch_deg = row.input("pitch_b_deg");
    }
    job.timber.rafter.size.thickness = row.input("common_thickness_mm");
    job.timber.rafter.centres = row.input("spacing_mm");
    job.timber.hip.size = Section { thickness: row.input("hip_thickness_mm"), depth: 300.0 };
    job.timber.ridge.size = Section { thickness: row.input("ridge_thickness_mm"), depth: 300.0 };
    job.timber.parts.purlin =
        Some(PurlinTimber { size: Section { thickness: 75.0, depth: 225.0 }, set, up: Vec::new() });
    job
}

/// The purlin of a wall that ends at the hip from the origin.
fn purlin<'a>(s: &'a Solution, wall: &str, hip: &Member) -> &'a Member {
    of_kind(s, MemberKind::Purlin)
        .into_iter()
        .find(|m| m.wall.as_deref() == Some(wall) && m.cuts.iter().any(|c| c.against.as_deref() == Some(&hip.mark)))
        .unwrap_or_else(|| panic!("no purlin of wall {wall} meets {}", hip.mark))
}

fn cuts<'a>(purlin: &'a Member, hip: &Member, what: &str) -> Vec<&'a Cut> {
    let all = purlin.cuts.iter().filter(|c| c.against.as_deref() == Some(&hip.mark));
    all.filter(|c| c.name.contains(what)).collect()
}

#[test]
fn every_row_is_met_by_the_purlins_of_a_corner() {
    let rows = family("row-");
    assert_eq!(rows.len(), 14);
    let mut tally = Tally::default();
    for row in &rows {
        let s = solve(&corner_job(row, PurlinSet::Square), &row.id);
        let hip = spine_from(&s, MemberKind::HipRafter, [0.0, 0.0]);
        for (wall, side) in [("A", "a"), ("D", "b")] {
            let purlin = purlin(&s, wall, hip);
            let key = |k: usize| FIGURES[k].replace('#', side);
            let mut figure = |k: usize, what: &str, read: &dyn Fn(&Cut) -> f64| {
                let found: Vec<f64> = cuts(purlin, hip, what).into_iter().map(read).collect();
                tally.figure(row, &key(k), "deg", worst(&found, row.want(&key(k)), &key(k)));
            };
            // Edge and lip are from the length in the table, face from square.
            figure(0, "cheek", &|c| 90.0 - c.edge_angle_deg);
            figure(1, "cheek", &|c| c.face_angle_deg);
            figure(2, "cheek", &|c| c.saw.tilt_deg);
            figure(3, "lip cut", &|c| 90.0 - c.face_angle_deg);
        }
    }
    tally.finish(&["row-"], 14 * 2 * FIGURES.len());
}

#[test]
fn plumb_purlins_are_cut_square_on_the_face_and_at_the_plan_angle_on_the_edge() {
    // reference/geometry.md section 4, "plumb-faced purlin": top edge at the
    // plan angle of the hip from the length, face square.
    for row in &family("row-") {
        let s = solve(&corner_job(row, PurlinSet::Plumb), &row.id);
        let hip = spine_from(&s, MemberKind::HipRafter, [0.0, 0.0]);
        for (wall, key) in [("A", "delta_a_deg"), ("D", "delta_b_deg")] {
            let cheeks = cuts(purlin(&s, wall, hip), hip, "cheek");
            assert!(!cheeks.is_empty(), "{} wall {wall}", row.id);
            for cheek in cheeks {
                assert!(cheek.face_angle_deg < row.tolerance_of("deg"), "{}: {cheek:?}", row.id);
                let edge = 90.0 - cheek.edge_angle_deg;
                assert!((edge - row.want(key)).abs() < row.tolerance_of("deg"), "{}: {edge}", row.id);
            }
        }
    }
}

#[test]
fn lips_of_equal_slopes_meet_on_the_mitre_under_the_hip() {
    for row in family("row-").iter().filter(|r| r.input("pitch_a_deg") == r.input("pitch_b_deg")) {
        let s = solve(&corner_job(row, PurlinSet::Square), &row.id);
        let hip = spine_from(&s, MemberKind::HipRafter, [0.0, 0.0]);
        let pair = ["A", "D"].map(|w| purlin(&s, w, hip));
        for (one, other) in [(pair[0], pair[1]), (pair[1], pair[0])] {
            assert!(
                one.cuts.iter().any(|c| c.name.contains("mitre") && c.against.as_deref() == Some(&other.mark)),
                "{}: {:?}",
                row.id,
                one.cuts
            );
        }
        // The ends of both reach the hip's line in plan and stop there.
        let line: DVec2 = dir(hip).perp();
        for m in pair {
            let off: Vec<f64> = m.solid.points.iter().map(|p| line.dot(vec3(*p).truncate())).collect();
            let (least, most) = (
                off.iter().copied().fold(f64::INFINITY, f64::min),
                off.iter().copied().fold(f64::NEG_INFINITY, f64::max),
            );
            assert!(least.abs().min(most.abs()) < 1e-6, "{}: {least} {most}", row.id);
        }
    }
}
