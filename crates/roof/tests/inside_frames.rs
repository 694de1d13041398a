//! Random roofs with everything inside them: whatever can be framed without
//! purlins, joists and ties can be framed with them, and passes the same check.

use crate::common;
use crate::common::{Seed, random_job};
use job::{BearingLine, CollarTimber, Job, PurlinSet, PurlinTimber, Section, SpacedTimber};
use roof::solution::MemberKind;
use std::collections::BTreeMap;

/// How many roofs.
const ROOFS: u64 = 150;

/// At least so many of each kind stand in these roofs, about nine tenths of
/// what did when this was written: a generator or a rule gone quiet is noticed.
const LEAST: [(MemberKind, u32); 9] = [
    (MemberKind::Purlin, 1_000),
    (MemberKind::SolePlate, 320),
    (MemberKind::Strut, 1_100),
    (MemberKind::Collar, 300),
    (MemberKind::CeilingJoist, 9_000),
    (MemberKind::Binder, 800),
    (MemberKind::Hanger, 1_150),
    (MemberKind::AngleTie, 520),
    (MemberKind::DragonTie, 520),
];

fn section(thickness: f64, depth: f64) -> Section {
    Section { thickness, depth }
}

/// Switch on everything inside the roof, in sizes and places that vary, with
/// one bearing line along the plan and one across it.
fn with_parts(seed: &mut Seed, job: &mut Job) {
    let (low, high) = job.loops[0].iter().fold(([f64::MAX; 2], [f64::MIN; 2]), |(l, h), p| {
        ([l[0].min(p[0]), l[1].min(p[1])], [h[0].max(p[0]), h[1].max(p[1])])
    });
    let share = |seed: &mut Seed, k: usize| low[k] + (high[k] - low[k]) * seed.between(0.35, 0.65);
    let (x, y) = (share(seed, 0), share(seed, 1));
    let line = |name: &str, from: [f64; 2], to: [f64; 2]| BearingLine { name: name.into(), from, to, top: 0.0 };
    job.bearings = vec![
        line("along", [low[0] + 200.0, y], [high[0] - 200.0, y]),
        line("across", [x, low[1] + 300.0], [x, high[1] - 300.0]),
    ];
    let parts = &mut job.timber.parts;
    let set = if seed.once_in(2) { PurlinSet::Square } else { PurlinSet::Plumb };
    parts.purlin = Some(PurlinTimber { size: section(75.0, seed.between(150.0, 250.0)), set, up: Vec::new() });
    parts.strut = Some(SpacedTimber { size: section(75.0, 100.0), centres: 1800.0 });
    let (height, every) = (seed.between(500.0, 1600.0), 1 + seed.below(3) as u32);
    parts.collar = Some(CollarTimber { size: section(47.0, 125.0), height, every });
    parts.ceiling_joist = Some(section(47.0, [97.0, 122.0, 147.0][seed.below(3) as usize]));
    parts.binder = Some(section(47.0, 97.0));
    parts.hanger = Some(SpacedTimber { size: section(38.0, 97.0), centres: 1800.0 });
    parts.angle_tie = Some(section(75.0, 100.0));
    parts.dragon_tie = Some(section(75.0, 100.0));
}

#[test]
fn what_stands_without_its_inside_stands_with_it() {
    let mut failed = Vec::new();
    let mut solved = 0;
    let mut kinds: BTreeMap<MemberKind, u32> = BTreeMap::new();
    for k in 1..=ROOFS {
        let mut seed = Seed::new(k);
        let mut job = random_job(&mut seed);
        if seed.once_in(2) {
            job.timber.joint.longest = 4800.0;
        }
        if roof::solve(&job).is_err() {
            continue;
        }
        solved += 1;
        with_parts(&mut seed, &mut job);
        match roof::solve(&job) {
            Ok(solution) => {
                for member in &solution.members {
                    *kinds.entry(member.kind).or_insert(0_u32) += 1;
                }
            }
            Err(e) => failed.push((k, e.to_string())),
        }
    }
    assert!(solved > 140, "only {solved} roofs");
    assert!(failed.is_empty(), "{} of {solved}: {failed:#?}", failed.len());
    for (kind, least) in LEAST {
        let found = kinds.get(&kind).copied().unwrap_or(0);
        assert!(found >= least, "only {found} of {kind:?}, at least {least} expected");
    }
}

/// A plain gabled house with everything inside, a stack and a hatch.
fn house_with_holes() -> Job {
    let mut job = common::job_over(vec![vec![[0.0, 0.0], [9000.0, 0.0], [9000.0, 6400.0], [0.0, 6400.0]]], 40.0);
    job.walls[1].gable = true;
    job.walls[3].gable = true;
    with_parts(&mut Seed::new(7), &mut job);
    let hole = |name: &str, kind, along, up, width, height| job::Opening {
        name: name.into(),
        kind,
        wall: 0,
        along,
        up: job::Distance::Plan(up),
        width,
        height,
        flue_wall: None,
    };
    job.openings = vec![
        hole("stack", job::OpeningKind::Chimney, 2500.0, 2300.0, 900.0, 500.0),
        hole("loft", job::OpeningKind::Hatch, 6000.0, 900.0, 700.0, 700.0),
    ];
    job
}

#[test]
fn ceiling_timbers_keep_clear_of_stack_and_hatch_and_are_trimmed_there() {
    let solution = roof::solve(&house_with_holes()).expect("the house can be framed");
    let inside =
        [MemberKind::CeilingJoist, MemberKind::Binder, MemberKind::Hanger, MemberKind::Strut, MemberKind::Collar];
    // A hatch needs a metre of headroom over the joists, a stack goes up through the roof.
    let holes = [([2500.0, 2300.0], [3400.0, 2800.0], f64::INFINITY), ([6000.0, 900.0], [6700.0, 1600.0], 1_097.0)];
    for (low, high, headroom) in holes {
        for member in solution.members.iter().filter(|m| inside.contains(&m.kind)) {
            // Level and upright timbers square to the walls fill their boxes in plan.
            let reach = |k: usize| {
                let all = member.solid.points.iter().map(|p| p[k]);
                all.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], v| [a.min(v), b.max(v)])
            };
            let apart = reach(2)[0] >= headroom
                || (0..2).any(|k| reach(k)[1] <= low[k] + 1e-6 || reach(k)[0] >= high[k] - 1e-6);
            assert!(apart, "{} runs through {low:?}", member.mark);
        }
        // Two trimmers lie level beside it, each as long as the gap between whole joists;
        // doubled where more than two joists are cut.
        let trimmers: Vec<_> = solution
            .members
            .iter()
            .filter(|m| m.kind == MemberKind::Trimmer && m.pitch_deg == 0.0 && m.axis.from[2] < 200.0)
            .filter(|m| (m.axis.from[0].min(m.axis.to[0])) < high[0] && (m.axis.from[0].max(m.axis.to[0])) > low[0])
            .filter(|m| m.axis.from[1] < high[1] + 200.0 && m.axis.from[1] > low[1] - 200.0)
            .collect();
        assert!(trimmers.len() == 2 || trimmers.len() == 4, "{:?}", solution.notices);
        assert!(trimmers.iter().all(|m| m.cut_length_mm >= high[0] - low[0]), "{trimmers:?}");
    }
}
