//! What carries and ties one plain house, looked at piece by piece.

use crate::common;
use crate::reading::{of_kind, solve};
use geometry::Angle;
use job::{BearingLine, CollarTimber, Job, PurlinSet, PurlinTimber, Section, SpacedTimber};
use roof::solution::{Member, MemberKind, Solution};

/// Slack for sums of figures in a house of ten metres, mm.
const ROUNDING: f64 = 1e-6;

const LENGTH: f64 = 9600.0;
const SPAN: f64 = 6400.0;
const PITCH: f64 = 40.0;

fn section(thickness: f64, depth: f64) -> Section {
    Section { thickness, depth }
}

/// Gabled at both ends, or hipped; a bearing wall along the middle.
fn house(gabled: bool, set: PurlinSet) -> Job {
    let mut job = common::job_over(vec![vec![[0.0, 0.0], [LENGTH, 0.0], [LENGTH, SPAN], [0.0, SPAN]]], PITCH);
    job.walls[1].gable = gabled;
    job.walls[3].gable = gabled;
    job.bearings =
        vec![BearingLine { name: "spine".into(), from: [0.0, SPAN / 2.0], to: [LENGTH, SPAN / 2.0], top: 0.0 }];
    let parts = &mut job.timber.parts;
    parts.purlin = Some(PurlinTimber { size: section(75.0, 200.0), set, up: Vec::new() });
    parts.strut = Some(SpacedTimber { size: section(75.0, 100.0), centres: 1800.0 });
    parts.ceiling_joist = Some(section(47.0, 122.0));
    job
}

fn reach(m: &Member, k: usize) -> [f64; 2] {
    m.solid.points.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], p| [a.min(p[k]), b.max(p[k])])
}

fn notice<'a>(s: &'a Solution, code: &str) -> Option<&'a str> {
    s.notices.iter().find(|n| n.code == code).map(|n| n.text.as_str())
}

#[test]
fn purlins_run_from_gable_to_gable_halfway_up() {
    let s = solve(&house(true, PurlinSet::Square), "gabled house");
    let purlins = of_kind(&s, MemberKind::Purlin);
    assert_eq!(purlins.len(), 2);
    for purlin in purlins {
        let [from, to] = reach(purlin, 0);
        assert!(from.abs() < ROUNDING && (to - LENGTH).abs() < ROUNDING, "{from} {to}");
        assert!((purlin.true_length_mm - LENGTH).abs() < ROUNDING);
        assert!(
            purlin.cuts.iter().all(|c| c.face_angle_deg < ROUNDING && c.edge_angle_deg < ROUNDING),
            "{:?}",
            purlin.cuts
        );
    }
}

#[test]
fn a_plumb_purlin_takes_the_birdsmouth_that_the_job_asks_for() {
    let job = house(true, PurlinSet::Plumb);
    let s = solve(&job, "plumb purlins");
    // Seat = depth of the birdsmouth / sin(pitch), or the purlin's thickness if
    // that is less (reference/geometry.md section 4: depth = seat · sin).
    let wanted = (job.timber.rafter.birdsmouth / Angle::deg(PITCH).sin()).min(75.0);
    let mut seen = 0;
    for rafter in of_kind(&s, MemberKind::CommonRafter) {
        for (face, name) in rafter.solid.faces.iter().zip(&rafter.solid.names) {
            if name == "seat cut on the purlin" {
                let ys = face.iter().map(|k| rafter.solid.points[*k as usize][1]);
                let [a, b] = ys.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], y| [a.min(y), b.max(y)]);
                assert!((b - a - wanted).abs() < ROUNDING, "{}: {}", rafter.mark, b - a);
                seen += 1;
            }
        }
    }
    assert!(seen >= 40, "only {seen} seats");
}

#[test]
fn a_purlin_beyond_its_slope_is_refused_with_the_range_that_works() {
    let mut job = house(true, PurlinSet::Square);
    job.timber.parts.purlin =
        Some(PurlinTimber { size: section(75.0, 200.0), set: PurlinSet::Square, up: vec![5000.0] });
    let refusal = roof::solve(&job).expect_err("the slope is shorter").to_string();
    let slope = SPAN / 2.0 / Angle::deg(PITCH).cos();
    assert!(
        refusal.contains("wall A") && refusal.contains("5000") && refusal.contains(&format!("{slope:.0}")),
        "{refusal}"
    );
}

#[test]
fn purlins_lie_where_they_are_asked_for() {
    let mut job = house(false, PurlinSet::Square);
    let up = vec![1300.0, 2600.0];
    job.timber.parts.purlin = Some(PurlinTimber { size: section(75.0, 150.0), set: PurlinSet::Square, up: up.clone() });
    let s = solve(&job, "two rows");
    for wall in ["A", "B", "C", "D"] {
        let purlins: Vec<_> =
            of_kind(&s, MemberKind::Purlin).into_iter().filter(|m| m.wall.as_deref() == Some(wall)).collect();
        assert_eq!(purlins.len(), 2, "wall {wall}");
    }
    // Square below the line on the pitch plane: the middle of the top of the
    // purlin lies the birdsmouth's depth under it.
    let (sin, cos) = (Angle::deg(PITCH).sin(), Angle::deg(PITCH).cos());
    let lines: Vec<f64> = of_kind(&s, MemberKind::Purlin)
        .iter()
        .filter(|m| m.wall.as_deref() == Some("A"))
        .map(|m| (m.axis.from[1] * cos + m.axis.from[2] * sin, m.axis.from[2] * cos - m.axis.from[1] * sin))
        .map(|(along, off)| {
            assert!((off + job.timber.rafter.birdsmouth + 75.0).abs() < ROUNDING, "{off}");
            along
        })
        .collect();
    for (line, want) in lines.iter().zip(up) {
        assert!((line - want).abs() < ROUNDING, "{line}");
    }
}

#[test]
fn struts_stand_on_the_sole_plate_no_further_apart_than_asked() {
    for set in [PurlinSet::Square, PurlinSet::Plumb] {
        let mut job = house(true, set);
        // High enough for struts no flatter than 30° from level.
        job.timber.parts.purlin = Some(PurlinTimber { size: section(75.0, 200.0), set, up: vec![2500.0] });
        let s = solve(&job, "struts");
        let [sole] = of_kind(&s, MemberKind::SolePlate)[..] else { panic!("one sole plate") };
        // Joists lie on the bearing line, the sole plate on the joists.
        assert_eq!(reach(sole, 2), [122.0, 197.0]);
        for wall in ["A", "C"] {
            let mut at: Vec<f64> = of_kind(&s, MemberKind::Strut)
                .into_iter()
                .filter(|m| m.wall.as_deref() == Some(wall))
                .map(|m| {
                    assert!((reach(m, 2)[0] - 197.0).abs() < ROUNDING);
                    (m.axis.from[0] + m.axis.to[0]) / 2.0
                })
                .collect();
            at.sort_by(f64::total_cmp);
            // One strut may be moved along by its own thickness to clear another.
            assert!(at.len() >= 6 && at.windows(2).all(|w| w[1] - w[0] <= 1800.0 + 80.0 + ROUNDING), "{at:?}");
        }
        assert!(notice(&s, "purlin-has-no-strut").is_none());
    }
}

#[test]
fn a_purlin_with_no_line_to_prop_it_is_spoken_of() {
    let mut job = house(true, PurlinSet::Square);
    job.bearings.clear();
    let s = solve(&job, "no bearing line");
    assert!(of_kind(&s, MemberKind::Strut).is_empty());
    assert!(notice(&s, "purlin-has-no-strut").is_some_and(|t| t.contains("engineer")));
}

#[test]
fn every_pair_of_commons_has_its_joist_and_every_third_its_collar() {
    let mut job = house(true, PurlinSet::Square);
    job.verge.overhang = 0.0;
    job.timber.parts.collar = Some(CollarTimber { size: section(47.0, 125.0), height: 1750.0, every: 3 });
    let s = solve(&job, "collars");
    let rafters = of_kind(&s, MemberKind::CommonRafter);
    let pairs = rafters.len() / 2;
    let joists = of_kind(&s, MemberKind::CeilingJoist);
    assert_eq!(joists.len(), pairs);
    for joist in joists {
        assert_eq!(reach(joist, 1), [0.0, SPAN]);
        assert_eq!(reach(joist, 2)[0], 0.0);
    }
    let collars = of_kind(&s, MemberKind::Collar);
    assert_eq!(collars.len(), pairs.div_ceil(3), "{:?}", s.notices);
    for collar in collars {
        assert!((reach(collar, 2)[0] - 1750.0).abs() < ROUNDING);
        let half = job.timber.rafter.size.thickness / 2.0;
        let beside = rafters.iter().filter(|r| {
            let [a, b] = reach(collar, 0);
            ((r.axis.from[0] + half - a).abs() < ROUNDING) || ((r.axis.from[0] - half - b).abs() < ROUNDING)
        });
        assert_eq!(beside.count(), 2, "{} lies on the sides of a pair", collar.mark);
    }
}

#[test]
fn collars_in_the_ridge_are_left_out_with_a_word() {
    let mut job = house(true, PurlinSet::Square);
    job.timber.parts.collar = Some(CollarTimber { size: section(47.0, 125.0), height: 2600.0, every: 1 });
    let s = solve(&job, "collars too high");
    assert!(of_kind(&s, MemberKind::Collar).is_empty());
    assert!(notice(&s, "collar-left-out").is_some());
}

#[test]
fn long_joists_lap_over_the_bearing_line() {
    let mut job = house(true, PurlinSet::Square);
    job.timber.joint.longest = 4800.0;
    let s = solve(&job, "two lengths");
    let joists = of_kind(&s, MemberKind::CeilingJoist);
    // The outermost rafters have room for a joist on one side only: a splice does it there.
    let inner: Vec<_> =
        joists.into_iter().filter(|m| reach(m, 0)[0] > 150.0 && reach(m, 0)[1] < LENGTH - 150.0).collect();
    assert!(inner.len() >= 40, "{}", inner.len());
    for joist in inner {
        let [from, to] = reach(joist, 1);
        assert!(joist.stock_length_mm <= 4800.0);
        // From a plate to 300 mm past the wall in the middle.
        let past = [SPAN / 2.0 - 300.0, SPAN / 2.0 + 300.0];
        assert!((from - past[0]).abs() < ROUNDING || (to - past[1]).abs() < ROUNDING, "{from} {to}");
    }
}

#[test]
fn every_hipped_corner_is_tied() {
    let mut job = house(false, PurlinSet::Square);
    job.timber.parts.angle_tie = Some(section(75.0, 100.0));
    job.timber.parts.dragon_tie = Some(section(75.0, 100.0));
    let s = solve(&job, "ties");
    let (angle, dragon) = (of_kind(&s, MemberKind::AngleTie), of_kind(&s, MemberKind::DragonTie));
    assert_eq!((angle.len(), dragon.len()), (4, 4), "{:?}", s.notices);
    for (tie, under) in angle.iter().zip(&dragon) {
        let along = |m: &Member| [m.bench.along[0], m.bench.along[1]];
        let (a, d) = (along(tie), along(under));
        assert!((a[0] * d[0] + a[1] * d[1]).abs() < 1e-9, "square across the hip");
        assert!((a[0].abs() - a[1].abs()).abs() < 1e-9, "at 45° to both walls");
        // Cogged 20 mm over the plates; the dragon tie level with their tops.
        assert!((reach(tie, 2)[0] + 20.0).abs() < ROUNDING && reach(under, 2)[1].abs() < ROUNDING);
        assert!(tie.cuts.iter().any(|c| c.against.as_deref().is_some_and(|m| m.starts_with("Plate"))));
        assert!(under.cuts.iter().any(|c| c.against.as_deref() == Some(&tie.mark)));
    }
}

#[test]
fn binders_lie_across_the_joists_and_hang_from_the_rafters() {
    let mut job = house(true, PurlinSet::Square);
    job.timber.parts.binder = Some(section(50.0, 125.0));
    job.timber.parts.hanger = Some(SpacedTimber { size: section(38.0, 97.0), centres: 1800.0 });
    let s = solve(&job, "binders");
    let binders = of_kind(&s, MemberKind::Binder);
    // One in the middle between each plate and the wall.
    assert_eq!(binders.len(), 2);
    for binder in &binders {
        let [from, to] = reach(binder, 1);
        let off = ((from + to) / 2.0 - SPAN / 2.0).abs() - SPAN / 4.0;
        assert!(off.abs() <= 300.0 + ROUNDING && (reach(binder, 2)[0] - 122.0).abs() < ROUNDING, "{off}");
    }
    let hangers = of_kind(&s, MemberKind::Hanger);
    assert!(hangers.len() >= 10, "{:?}", s.notices);
    for hanger in hangers {
        assert!((reach(hanger, 2)[0] - 122.0).abs() < ROUNDING);
        assert!(hanger.pitch_deg > 89.9);
    }
}
