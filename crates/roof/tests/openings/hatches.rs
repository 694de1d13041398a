//! Hatches in the ceiling, and chimneys that pass through it.

use super::random::move_to;
use crate::common::{Seed, job_over, random_job};
use job::{Distance, Job, Opening, OpeningKind, Section};
use roof::solution::{MemberKind, NoticeLevel, Solution};
use roof::{Misfit, SolveError};

fn house() -> Job {
    let mut job = job_over(vec![vec![[0.0, 0.0], [12000.0, 0.0], [12000.0, 6000.0], [0.0, 6000.0]]], 40.0);
    job.timber.parts.ceiling_joist = Some(Section { thickness: 47.0, depth: 150.0 });
    job
}

fn hatch(along: f64, up: f64, width: f64, height: f64) -> Opening {
    Opening {
        name: "h".into(),
        kind: OpeningKind::Hatch,
        wall: 0,
        along,
        up: Distance::Plan(up),
        width,
        height,
        flue_wall: None,
    }
}

fn with(mut job: Job, opening: Opening) -> Result<Solution, SolveError> {
    job.openings.push(opening);
    roof::solve(&job)
}

/// No joist, trimmer or binder reaches into the hatch.
fn assert_clear(s: &Solution, opening: &Opening) {
    let out = s.openings.iter().find(|o| o.name == opening.name).expect("it is in the document");
    let [a, b, _, d] = out.outline;
    let level = a[2];
    let side = |p: [f64; 3], q: [f64; 3]| [q[0] - p[0], q[1] - p[1]];
    let (u, v) = (side(a, b), side(a, d));
    let inside = |p: [f64; 3]| {
        let w = side(a, p);
        let (x, y) = (w[0] * u[0] + w[1] * u[1], w[0] * v[0] + w[1] * v[1]);
        let (uu, vv) = (u[0] * u[0] + u[1] * u[1], v[0] * v[0] + v[1] * v[1]);
        x > 1.0 && x < uu - 1.0 && y > 1.0 && y < vv - 1.0 && p[2] > level - 0.01 && p[2] < level + 300.0
    };
    for m in &s.members {
        for ring in &m.solid.faces {
            for (k, i) in ring.iter().enumerate() {
                let (p, q) = (m.solid.points[*i as usize], m.solid.points[ring[(k + 1) % ring.len()] as usize]);
                for step in 0..=200 {
                    let t = f64::from(step) / 200.0;
                    let at = core::array::from_fn(|i| p[i] + (q[i] - p[i]) * t);
                    assert!(!inside(at), "{} reaches into the hatch at {at:?}", m.mark);
                }
            }
        }
    }
}

#[test]
fn a_hatch_cuts_joists_and_trims_them() {
    let opening = hatch(5000.0, 2200.0, 700.0, 900.0);
    let s = with(house(), opening.clone()).expect("it fits");
    let o = &s.openings[0];
    assert_eq!(o.kind, "hatch");
    let cut = o.cut.len() / 2;
    assert!((1..=2).contains(&cut), "{cut}");
    assert_eq!(o.trimmers.len(), 2);
    assert_eq!(o.hangers as usize, 4 + 2 * cut);
    assert_eq!(s.totals.hangers, o.hangers);
    for mark in &o.cut {
        let m = s.members.iter().find(|m| m.mark == *mark).expect("it is a member");
        assert_eq!(m.kind, MemberKind::CeilingJoist);
        assert!(m.cuts.iter().any(|c| c.against.as_ref().is_some_and(|a| o.trimmers.contains(a))), "{mark}");
    }
    assert_clear(&s, &opening);
}

#[test]
fn a_hatch_between_two_joists_cuts_none() {
    let mut job = house();
    job.timber.rafter.centres = 600.0;
    let wide = with(job.clone(), hatch(5000.0, 2200.0, 530.0, 700.0)).expect("it fits");
    // Slide it until it lies between two joists: 600 - 47 leaves 553 mm.
    let none = (0..60).find_map(|k| {
        let s = with(job.clone(), hatch(5000.0 + 10.0 * f64::from(k), 2200.0, 530.0, 700.0)).ok()?;
        s.openings[0].cut.is_empty().then_some(s)
    });
    let s = none.expect("some place lies between two joists");
    assert_eq!(s.openings[0].hangers, 4);
    assert!(wide.openings[0].cut.len() <= 2);
}

#[test]
fn hatches_are_refused_with_a_reason() {
    let why = |job: Job, opening: Opening| match with(job, opening) {
        Err(SolveError::Opening { misfit, nearest, .. }) => (*misfit, nearest),
        other => panic!("{other:?}"),
    };
    // reference/site_checks.json op.hatch_min_clear_mm: 520 mm both ways.
    let small = why(house(), hatch(5000.0, 2200.0, 500.0, 900.0));
    assert_eq!(small, (Misfit::HatchSmall { least: 520.0 }, None));
    let mut bare = house();
    bare.timber.parts.ceiling_joist = None;
    assert_eq!(why(bare, hatch(5000.0, 2200.0, 700.0, 900.0)).0, Misfit::NoJoists);
    let (ends, place) = why(house(), hatch(5000.0, 10.0, 700.0, 900.0));
    assert_eq!(ends, Misfit::JoistEnds);
    let mut opening = hatch(5000.0, 10.0, 700.0, 900.0);
    move_to(&mut opening, place.expect("there is room further in"));
    assert!(with(house(), opening).is_ok());
}

#[test]
fn joists_are_trimmed_round_a_chimney() {
    let chimney = Opening { kind: OpeningKind::Chimney, ..hatch(5000.0, 1500.0, 665.0, 440.0) };
    let s = with(house(), chimney).expect("it fits");
    let said = s.notices.iter().find(|n| n.code == "chimney-through-ceiling").expect("it is spoken of");
    assert_eq!(said.level, NoticeLevel::Note, "{}", said.text);
    assert!(s.totals.hangers > s.openings[0].hangers);
    assert!(s.notices.iter().all(|n| n.code != "timber-in-opening"));
}

#[test]
fn random_hatches_never_spoil_a_ceiling() {
    let (mut built, mut moved) = (0, 0);
    for seed in 3000..3080 {
        let mut random = Seed::new(seed);
        let mut job = random_job(&mut random);
        job.timber.parts.ceiling_joist = Some(Section { thickness: 47.0, depth: 125.0 });
        job.timber.parts.binder = Some(Section { thickness: 47.0, depth: 150.0 });
        if roof::solve(&job).is_err() {
            continue;
        }
        let size = [random.between(530.0, 900.0), random.between(530.0, 1200.0)];
        let mut opening = hatch(random.between(0.0, 6000.0), random.between(0.0, 4000.0), size[0], size[1]);
        opening.wall = random.below(job.walls.len() as u64) as usize;
        job.openings.push(opening);
        match roof::solve(&job) {
            Ok(s) => {
                assert_eq!(s.openings.len(), 1);
                built += 1;
            }
            Err(SolveError::Opening { nearest: Some(place), .. }) => {
                move_to(&mut job.openings[0], place);
                let s = roof::solve(&job).unwrap_or_else(|e| panic!("seed {seed}: refused where it was to fit: {e}"));
                assert_eq!(s.openings.len(), 1);
                moved += 1;
            }
            Err(SolveError::Opening { .. }) => {}
            Err(e) => panic!("seed {seed}: {e}"),
        }
    }
    assert!(built > 20 && moved > 8, "{built} built, {moved} moved");
}
