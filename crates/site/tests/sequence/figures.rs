//! Figures on the sheet against the solids and plain geometry.

use super::help::{examples, sheet};
use geometry::{Angle, DVec3};
use roof::solution::MemberKind;
use site::sequence::{BraceWay, PropFoot, StrapKind};

/// A gable of 7 m at 40°, 8 m long, ridge in one length.
const GABLE: &str = r#"
format = 1
title = "Plain gable"
region = "uk"
[plan]
corners = [[0, 0], [8000, 0], [8000, 7000], [0, 7000]]
[roof]
pitch = 40
eaves = { overhang = 300 }
[roof.walls]
B = { gable = true }
D = { gable = true }
[timber]
rafter = { size = [47, 150], centres = 400 }
ridge = { size = [38, 225] }
plate = { size = [47, 100] }
joint = { longest = 9000 }
"#;

fn gable() -> (job::Job, roof::solution::Solution, site::sequence::PuttingUp) {
    let job = job::read(GABLE).unwrap_or_else(|f| panic!("{f}"));
    let solution = roof::solve(&job).unwrap();
    let sheet = site::sequence::putting_up(&job, &solution).unwrap();
    (job, solution, sheet)
}

#[test]
fn props_reach_the_underside_of_a_level_ridge() {
    let mut seen = 0;
    for name in examples() {
        let (_, solution, sheet) = sheet(&name);
        for prop in &sheet.props {
            let member = solution.members.iter().find(|m| m.mark == prop.under).unwrap();
            // Over a plan that is out of square a ridge may fall a little: those have no one height.
            if member.kind != MemberKind::RidgeBoard || member.bench.along[2].abs() > 1e-9 {
                continue;
            }
            let lowest = member.solid.points.iter().map(|p| p[2]).fold(f64::INFINITY, f64::min);
            assert!((prop.head[2] - lowest).abs() < 0.05, "{name} {}: {} {lowest}", prop.name, prop.head[2]);
            seen += 1;
        }
    }
    assert!(seen >= 15, "{seen}");
}

/// Worked by hand: half the span is 3500, so the pitch planes meet 3500·tan 40° over the plates; the tops of the rafters
/// are one upstand higher, less where half the ridge's thickness takes the arris down; a ridge of 225 hangs from there.
#[test]
fn the_ridge_of_a_plain_gable_stands_where_the_pitch_puts_it() {
    let (_, solution, sheet) = gable();
    let tan = Angle::deg(40.0).tan();
    let top = 3500.0 * tan + solution.totals.upstand_mm - 19.0 * tan;
    let heights: Vec<f64> =
        sheet.props.iter().filter(|p| p.from == PropFoot::PlateLevel).map(|p| p.height_mm).collect();
    assert_eq!(heights.len(), 2);
    for h in heights {
        assert!((h - (top - 225.0)).abs() < 0.05, "{h} {}", top - 225.0);
    }
    let over = sheet.holds.iter().find(|h| h.what.starts_with("underside")).unwrap();
    assert!((over.figure_mm.unwrap() - (top - 225.0)).abs() < 0.05);
    // The diagonals of 8 by 7 m: the root of 113 m².
    let diagonals: Vec<f64> =
        sheet.holds.iter().filter(|h| h.what.starts_with("diagonal")).filter_map(|h| h.figure_mm).collect();
    assert_eq!(diagonals.len(), 2);
    assert!(diagonals.iter().all(|d| (d - 113e6_f64.sqrt()).abs() < 1e-6), "{diagonals:?}");
}

/// reference/site.md, section 3: a gable of 7 m at 40° wants 4 straps on each slope, 7 when the apex is shared.
#[test]
fn a_gable_has_its_straps() {
    let (_, _, sheet) = gable();
    let on = |wall: &str| -> usize {
        sheet.straps.iter().filter(|s| s.kind == StrapKind::LateralSlope && s.wall == wall).map(|s| s.at_mm.len()).sum()
    };
    assert_eq!((on("B"), on("D")), (7, 7));
    let down: Vec<usize> =
        sheet.straps.iter().filter(|s| s.kind == StrapKind::HoldingDown).map(|s| s.at_mm.len()).collect();
    assert_eq!(down, [5, 5], "8 m at 2 m, both ends counted, on each plate");
    for strap in &sheet.straps {
        assert!(strap.at_mm.windows(2).all(|w| w[1] - w[0] <= 2000.0 + 1e-6), "{strap:?}");
    }
}

#[test]
fn braces_are_as_long_and_as_steep_as_their_ends_say() {
    let mut seen = [0, 0];
    for name in examples() {
        let (_, solution, sheet) = sheet(&name);
        for b in &sheet.braces {
            let d = DVec3::from_array(b.from) - DVec3::from_array(b.to);
            let level = (d.x * d.x + d.y * d.y).sqrt();
            assert!((b.length_mm * b.length_mm - level * level - d.z * d.z).abs() < 1e-3 * b.length_mm, "{name} {b:?}");
            assert!((Angle::deg(b.slope_deg).tan() - d.z / level).abs() < 1e-9, "{name} {b:?}");
            // On the level at the foot, from square: what is left of a right angle.
            assert!((b.foot_cut.face_angle_deg - (90.0 - b.slope_deg)).abs() < 1e-6, "{name} {b:?}");
            assert!(
                (b.head_cut.face_angle_deg - b.slope_deg).abs() < 1e-6,
                "{name}: a plumb cut is marked by the slope"
            );
            let held = solution.members.iter().find(|m| m.mark == b.from_mark).unwrap();
            let along = DVec3::from_array(held.bench.along);
            let heading = along.truncate().normalize_or_zero();
            let share = (heading.dot(d.truncate()) / level).abs();
            // Within about 50° of the way that it holds, in plan.
            let holding = if b.way == BraceWay::Along { share } else { (1.0 - share * share).max(0.0).sqrt() };
            assert!(holding > 0.639, "{name} {b:?} {share}");
            seen[usize::from(b.way == BraceWay::Along)] += 1;
        }
    }
    assert!(seen[1] >= 10, "{seen:?}");
}

#[test]
fn diagonals_are_nailed_to_every_rafter_that_they_cross() {
    let (_, solution, sheet) = gable();
    assert!(sheet.permanent.len() >= 2, "one on each slope at least");
    for d in &sheet.permanent {
        assert!(d.nailed.len() >= 6, "{d:?}");
        assert!((d.angle_deg - 45.0).abs() < 1e-6);
        let steps: Vec<f64> = d.nailed.windows(2).map(|w| w[1].along_mm - w[0].along_mm).collect();
        // At 400 centres and 45°, on the slope: 400·√2 from rafter to rafter, one bay may be short.
        let full = steps.iter().filter(|s| (**s - 400.0 * 2.0_f64.sqrt()).abs() < 1.0).count();
        assert!(full + 2 >= steps.len(), "{steps:?}");
        for n in &d.nailed {
            let rafter = solution.members.iter().find(|m| m.mark == n.mark).unwrap();
            let off = DVec3::from_array(n.at) - DVec3::from_array(rafter.bench.origin);
            let up = off.dot(DVec3::from_array(rafter.bench.up));
            assert!(up.abs() < 0.01, "on the underside: {up}");
        }
    }
}
