//! Gables that are not square to their eaves: nothing of the verge is lost.

use crate::common::{self, Seed};
use crate::reading::of_kind;
use job::{CollarTimber, Job, NogginTimber, Section, SpacedTimber};
use roof::solution::{Member, MemberKind, Solution};
use std::collections::BTreeMap;

/// A house with gables B and D and everything that belongs to verges.
fn gabled(corners: [[f64; 2]; 4]) -> Job {
    let mut job = common::job_over(vec![corners.to_vec()], 40.0);
    for k in [1, 3] {
        job.walls[k].gable = true;
    }
    let size = |thickness, depth| Section { thickness, depth };
    let parts = &mut job.timber.parts;
    parts.barge = Some(size(25.0, 175.0));
    parts.ladder = Some(SpacedTimber { size: size(47.0, 97.0), centres: 600.0 });
    parts.fascia = Some(size(25.0, 175.0));
    parts.noggin = Some(NogginTimber { size: size(47.0, 97.0), rows: 1 });
    parts.collar = Some(CollarTimber { size: size(47.0, 150.0), height: 1200.0, every: 3 });
    job
}

fn rectangle(length: f64, width: f64) -> [[f64; 2]; 4] {
    [[0.0, 0.0], [length, 0.0], [length, width], [0.0, width]]
}

fn counts(s: &Solution) -> BTreeMap<String, usize> {
    let mut out = BTreeMap::new();
    for m in &s.members {
        *out.entry(format!("{:?}", m.kind)).or_insert(0) += 1;
    }
    out
}

fn told<'a>(s: &'a Solution, code: &str) -> Vec<&'a str> {
    s.notices.iter().filter(|n| n.code == code).map(|n| n.text.as_str()).collect()
}

/// The length of the longest square house inside walls out of square: between
/// the innermost corners of its gables.
fn clear_length(c: [[f64; 2]; 4]) -> f64 {
    c[1][0].min(c[2][0]) - c[0][0].max(c[3][0])
}

#[test]
fn three_hundred_gables_out_of_square_lose_nothing() {
    let mut seed = Seed::new(11);
    for by in [3.0, 10.0, 30.0] {
        for _ in 0..100 {
            let (length, width) = (seed.between(5000.0, 12_000.0).round(), seed.between(4000.0, 8000.0).round());
            let real = rectangle(length, width).map(|[x, y]| [x + seed.between(-by, by), y]);
            let square = rectangle(clear_length(real), width);
            let [real_s, square_s] = [real, square].map(|c| roof::solve(&gabled(c)).expect("a plain house"));
            assert_eq!(counts(&real_s), counts(&square_s), "{real:?}");
            assert!(told(&real_s, "rungs-left-out").is_empty() && told(&real_s, "no-barge-board").is_empty());
        }
    }
}

#[test]
fn end_rafters_stand_square_inside_and_verge_rafters_along_the_gable() {
    // The far corner stands 60 mm out: the pair inside keeps to the near one.
    let s = roof::solve(&gabled([[0.0, 0.0], [8400.0, 0.0], [8460.0, 5200.0], [0.0, 5200.0]])).expect("it solves");
    let along = |m: &Member| m.axis.to[0] - m.axis.from[0];
    let mut commons = of_kind(&s, MemberKind::CommonRafter);
    commons.sort_by(|a, b| b.axis.from[0].total_cmp(&a.axis.from[0]));
    let (verge, end) = (&commons[..2], &commons[2..4]);
    // A verge rafter rises half the width of the house: 30 mm along it.
    for m in verge {
        assert!((along(m).abs() - 30.0).abs() < 1e-6, "{}", m.mark);
    }
    for m in end {
        assert!(along(m).abs() < 1e-9 && (m.axis.from[0] - (8400.0 - 23.5)).abs() < 1e-6, "{}", m.mark);
    }
    // The barge boards lie on the verge rafters, over their whole length.
    let boards = of_kind(&s, MemberKind::BargeBoard);
    let (sine, cosine) = {
        let g = geometry::Angle::from_rise_run(60.0, 5200.0);
        (g.sin(), g.cos())
    };
    let off = |p: &[f64; 3]| (p[0] - 8400.0) * cosine - p[1] * sine - 200.0;
    let outside: Vec<&&Member> = boards.iter().filter(|m| m.axis.from[0] > 8000.0).collect();
    assert_eq!(outside.len(), 2);
    for m in outside {
        let [low, high] = m.solid.points.iter().map(off).fold([f64::MAX, f64::MIN], |[a, b], v| [a.min(v), b.max(v)]);
        assert!(low.abs() < 1e-6 && (high - 25.0).abs() < 1e-6, "{}: {low}..{high}", m.mark);
    }
}

#[test]
fn rungs_grow_with_the_wedge() {
    let s = roof::solve(&gabled([[0.0, 0.0], [8400.0, 0.0], [8460.0, 5200.0], [0.0, 5200.0]])).expect("it solves");
    let mut rungs: Vec<&Member> =
        of_kind(&s, MemberKind::GableLadder).into_iter().filter(|m| m.axis.from[0] > 8000.0).collect();
    rungs.sort_by(|a, b| a.axis.from[1].total_cmp(&b.axis.from[1]));
    for m in rungs {
        // 153 between the rafters over the near corner, and the wedge of the wall.
        let reach = m.axis.to[0] - m.axis.from[0];
        let cosine = geometry::Angle::from_rise_run(60.0, 5200.0).cos();
        let wanted = 153.0 / cosine + m.axis.to[1] * 60.0 / 5200.0;
        assert!((reach - wanted).abs() < 0.01, "{}: {reach} for {wanted}", m.mark);
    }
}

#[test]
fn strong_skews_keep_their_verge() {
    for by in [200.0, 700.0, 2000.0, 5000.0, -200.0, -2000.0, -4000.0] {
        let s =
            roof::solve(&gabled([[0.0, 0.0], [8400.0, 0.0], [8400.0 + by, 5200.0], [0.0, 5200.0]])).expect("it solves");
        assert_eq!(of_kind(&s, MemberKind::BargeBoard).len(), 4, "{by}");
        let rungs = of_kind(&s, MemberKind::GableLadder).len();
        let missing = told(&s, "rungs-left-out").len();
        assert!(rungs + missing >= 32, "{by}: {rungs} rungs, {missing} told");
    }
}

#[test]
fn three_hundred_rectangles_out_at_every_corner_keep_their_kinds() {
    let mut seed = Seed::new(7);
    for by in [3.0, 10.0, 30.0] {
        for _ in 0..100 {
            let (length, width) = (seed.between(5000.0, 12_000.0).round(), seed.between(4000.0, 8000.0).round());
            let ideal = rectangle(length, width);
            let real = ideal.map(|p| p.map(|v| v + seed.between(-by, by)));
            let [real_s, ideal_s] = [real, ideal].map(|c| roof::solve(&gabled(c)).expect("a plain house"));
            let [real_counts, ideal_counts] = [counts(&real_s), counts(&ideal_s)];
            let kinds = |c: &BTreeMap<String, usize>| c.keys().cloned().collect::<Vec<_>>();
            assert_eq!(kinds(&real_counts), kinds(&ideal_counts), "{real:?}");
            for (kind, count) in &real_counts {
                // A house that is a little shorter or wider may have a bay or a rung less or more.
                let most = match kind.as_str() {
                    "Noggin" => 6,
                    "CommonRafter" | "GableLadder" => 4,
                    "Collar" => 1,
                    _ => 0,
                };
                assert!(count.abs_diff(ideal_counts[kind]) <= most, "{kind}: {count} in {real:?} {:?}", real_s.notices);
            }
            let lost = ["rungs-left-out", "no-barge-board", "no-gable-ladder", "collar-left-out", "collar-has-no-pair"];
            for code in lost {
                assert!(told(&real_s, code).is_empty(), "{code} in {real:?}");
            }
        }
    }
}

#[test]
fn collars_over_a_falling_ridge_lie_on_both_rafters() {
    // The plates are 30 mm out of parallel: each collar is eased to both sides.
    let mut job = gabled([[0.0, 0.0], [8400.0, 0.0], [8400.0, 5170.0], [0.0, 5200.0]]);
    job.setting_out.ridge = job::RidgeRun::AsItFalls;
    let s = roof::solve(&job).expect("it solves");
    let collars = of_kind(&s, MemberKind::Collar);
    assert_eq!(collars.len(), 8);
    for m in collars {
        let against: Vec<&str> = m.cuts.iter().filter_map(|c| c.against.as_deref()).collect();
        assert_eq!(against.len(), 2, "{}: {against:?}", m.mark);
    }
}

#[test]
fn collars_with_no_pair_are_told_with_their_count() {
    // A lean-to: nothing stands opposite its rafters.
    let mut job = gabled(rectangle(6000.0, 3000.0));
    job.walls[2].gable = true;
    let s = roof::solve(&job).expect("it solves");
    let inside =
        of_kind(&s, MemberKind::CommonRafter).iter().filter(|m| (0.0..6000.0).contains(&m.axis.from[0])).count();
    let told = told(&s, "collar-has-no-pair");
    assert!(of_kind(&s, MemberKind::Collar).is_empty());
    assert!(told.len() == 1 && told[0].starts_with(&format!("{inside} common rafters")), "{told:?} for {inside}");
}
