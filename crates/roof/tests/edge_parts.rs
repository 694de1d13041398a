//! Boards and other pieces at the edges of random roofs: whatever solves
//! without them must solve with them, and `solve` returns only what its own
//! check has passed.

#![allow(missing_docs, reason = "a test")]

mod common;
mod reading;

use common::{Seed, random_job};
use geometry::DVec3;
use job::{Job, NogginTimber, Section, SpacedTimber, Sprocket, TailCut};
use reading::of_kind;
use roof::solution::{Member, MemberKind, Solution};

/// How many roofs.
const ROOFS: u64 = 150;

/// Solve random roofs with `parts` switched on, and hand over each that
/// solves without them.
fn each_roof(parts: impl Fn(&mut Job), look: impl FnMut(u64, &Job, &Solution)) {
    each(1..=ROOFS, random_job, parts, look);
}

/// The same over roofs with gables: the walls at the ends of wings, and some
/// others, and verges of several widths.
fn each_gabled_roof(parts: impl Fn(&mut Job), look: impl FnMut(u64, &Job, &Solution)) {
    let gabled = |seed: &mut Seed| {
        let mut job = random_job(seed);
        let n = job.walls.len() as u64;
        let first = seed.below(n) as usize;
        job.walls[first].gable = true;
        if seed.once_in(2) {
            let next = (first + 2 + seed.below(n) as usize) % n as usize;
            job.walls[next].gable = true;
        }
        job.verge.overhang = [0.0, 50.0, 150.0, 200.0, 350.0][seed.below(5) as usize];
        job.verge.inset = [0.0, 0.0, 50.0][seed.below(3) as usize];
        job
    };
    each(1..=ROOFS, gabled, parts, look);
}

fn each(
    seeds: core::ops::RangeInclusive<u64>,
    shape: impl Fn(&mut Seed) -> Job,
    parts: impl Fn(&mut Job),
    mut look: impl FnMut(u64, &Job, &Solution),
) {
    let mut failed = Vec::new();
    for seed in seeds {
        let mut job = shape(&mut Seed::new(seed));
        if roof::solve(&job).is_err() {
            continue;
        }
        parts(&mut job);
        match roof::solve(&job) {
            Ok(solution) => look(seed, &job, &solution),
            Err(e) => failed.push((seed, e.to_string())),
        }
    }
    assert!(failed.is_empty(), "{} roofs fail with these parts: {failed:#?}", failed.len());
}

fn section(thickness: f64, depth: f64) -> Option<Section> {
    Some(Section { thickness, depth })
}

/// Pieces that were left out for want of room, and boards that were placed.
#[derive(Default)]
struct Count {
    placed: usize,
    left_out: Vec<String>,
}

impl Count {
    fn add(&mut self, seed: u64, s: &Solution, kind: MemberKind) {
        self.placed += of_kind(s, kind).len();
        let begins = format!("A {} of", kind.name());
        let told = s.notices.iter().filter(|n| n.code == "piece-left-out" && n.text.starts_with(&begins));
        self.left_out.extend(told.map(|n| format!("seed {seed}: {}", n.text)));
    }

    /// At least so many were placed, and at most so many left out.
    fn expect(&self, placed: usize, left_out: usize) {
        assert!(self.placed >= placed, "only {} placed", self.placed);
        assert!(self.left_out.len() <= left_out, "{:#?}", self.left_out);
    }
}

/// Planes of the faces of a member with this name: a point and the outward
/// normal of each.
fn planes(m: &Member, name: &str) -> Vec<(DVec3, DVec3)> {
    reading::faces_named(m, name).into_iter().map(|f| (f.normal * f.offset, f.normal)).collect()
}

/// Whether a face of `a` lies in the plane of a face of `b` that faces it.
fn lies_on(a: &[(DVec3, DVec3)], b: &[(DVec3, DVec3)]) -> bool {
    a.iter().any(|(p, n)| b.iter().any(|(q, m)| n.dot(*m) < -0.999_999 && m.dot(*p - *q).abs() < 0.05))
}

#[test]
fn fascia_boards_go_round_every_roof_on_the_tails() {
    let mut count = Count::default();
    let mut tails = 0;
    each_roof(
        |job| job.timber.parts.fascia = section(22.0, 175.0),
        |seed, _, s| {
            count.add(seed, s, MemberKind::Fascia);
            let boards = of_kind(s, MemberKind::Fascia);
            let backs: Vec<_> = boards.iter().map(|b| (b.wall.as_deref(), planes(b, "left"))).collect();
            for rafter in of_kind(s, MemberKind::CommonRafter) {
                let mut ends = planes(rafter, "tail plumb cut");
                ends.extend(planes(rafter, "tail square cut"));
                let mut of_wall = backs.iter().filter(|(wall, _)| *wall == rafter.wall.as_deref()).peekable();
                if ends.is_empty() || of_wall.peek().is_none() {
                    continue;
                }
                tails += 1;
                assert!(of_wall.any(|(_, b)| lies_on(&ends, b)), "seed {seed}: {} is off its fascia", rafter.mark);
            }
        },
    );
    count.expect(1000, 1);
    assert!(tails > 2500, "only {tails} tails");
}

#[test]
fn soffits_lie_level_under_the_tails() {
    let mut count = Count::default();
    let mut rests = 0;
    each_roof(
        |job| {
            job.timber.parts.fascia = section(22.0, 175.0);
            job.timber.parts.soffit = section(9.0, 225.0);
        },
        |seed, job, s| {
            count.add(seed, s, MemberKind::Soffit);
            for board in of_kind(s, MemberKind::Soffit) {
                assert!(board.pitch_deg.abs() < 1e-9 && board.size.depth_mm < 225.0 + 1e-6, "seed {seed}");
            }
            if job.eaves.tail != TailCut::Level || s.notices.iter().any(|n| n.code == "soffit-packed") {
                return;
            }
            for rafter in of_kind(s, MemberKind::CommonRafter) {
                let cuts = planes(rafter, "soffit level cut");
                let of_wall = |m: &&Member| m.kind == MemberKind::Soffit && m.wall == rafter.wall;
                let tops: Vec<_> = s.members.iter().filter(of_wall).flat_map(|m| planes(m, "left")).collect();
                if !cuts.is_empty() && !tops.is_empty() {
                    rests += 1;
                    assert!(lies_on(&tops, &cuts), "seed {seed}: {} is off its soffit", rafter.mark);
                }
            }
        },
    );
    count.expect(1000, 0);
    assert!(rests > 700, "only {rests} tails rest");
}

#[test]
fn tilting_fillets_lie_behind_the_fascia() {
    let mut count = Count::default();
    each_roof(
        |job| {
            job.timber.parts.fascia = section(22.0, 175.0);
            job.timber.parts.fillet = section(50.0, 125.0);
        },
        |seed, _, s| {
            count.add(seed, s, MemberKind::TiltingFillet);
        },
    );
    count.expect(1000, 0);
}

#[test]
fn sprockets_carry_fascia_and_fillet() {
    let mut count = Count::default();
    each_roof(
        |job| {
            job.eaves.sprocket = Some(Sprocket { pitch_deg: job.pitch_deg - 12.0, reach: 500.0 });
            job.timber.parts.fascia = section(22.0, 200.0);
            job.timber.parts.soffit = section(9.0, 225.0);
            job.timber.parts.fillet = section(50.0, 125.0);
        },
        |seed, _, s| {
            count.add(seed, s, MemberKind::Sprocket);
            for kind in [MemberKind::TiltingFillet, MemberKind::Fascia, MemberKind::Soffit] {
                count.add(seed, s, kind);
            }
        },
    );
    // Left out: fillets on fixed overhangs at unlike pitches, whose sprockets
    // do not meet on the hip.
    count.expect(15_000, 4);
}

#[test]
fn ladders_and_barge_boards_finish_gables() {
    let (mut rungs, mut barges, mut others) = (Count::default(), Count::default(), Count::default());
    each_gabled_roof(
        |job| {
            job.timber.parts.fascia = section(22.0, 175.0);
            job.timber.parts.soffit = section(9.0, 225.0);
            job.timber.parts.fillet = section(50.0, 125.0);
            job.timber.parts.barge = section(25.0, 200.0);
            job.timber.parts.ladder =
                Some(SpacedTimber { size: Section { thickness: 47.0, depth: 100.0 }, centres: 600.0 });
        },
        |seed, _, s| {
            rungs.add(seed, s, MemberKind::GableLadder);
            barges.add(seed, s, MemberKind::BargeBoard);
            for kind in [MemberKind::TiltingFillet, MemberKind::Fascia, MemberKind::Soffit] {
                others.add(seed, s, kind);
            }
        },
    );
    println!("{} rungs {} barges {} others", rungs.placed, barges.placed, others.placed);
    rungs.expect(100, 0);
    barges.expect(100, 0);
    others.expect(2000, 0);
}

#[test]
fn noggins_stand_between_rafters() {
    let mut count = Count::default();
    let mut without = 0;
    each_roof(
        |job| {
            job.timber.parts.noggin = Some(NogginTimber { size: Section { thickness: 47.0, depth: 97.0 }, rows: 2 });
        },
        |seed, _, s| {
            count.add(seed, s, MemberKind::Noggin);
            without += s
                .notices
                .iter()
                .filter(|n| n.code == "noggins-left-out")
                .map(|n| n.text.split(' ').next().and_then(|t| t.parse::<usize>().ok()).unwrap_or(0))
                .sum::<usize>();
        },
    );
    println!("{} noggins, {without} without", count.placed);
    count.expect(10_000, 0);
}
