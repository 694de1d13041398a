//! Boards and other pieces at the edges of random roofs: whatever solves
//! without them must solve with them, and `solve` returns only what its own
//! check has passed.

use crate::common;
use crate::common::{Seed, random_job};
use crate::reading;
use crate::reading::of_kind;
use geometry::DVec3;
use job::{Job, NogginTimber, Section, SpacedTimber, Sprocket, TailCut, UpperSlope};
use roof::solution::{CutPlace, Member, MemberKind, Solution};

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

/// The same over roofs with half hips, gablets, broken pitches and plates at
/// different heights, of those that the frame can carry.
fn each_broken_roof(parts: impl Fn(&mut Job), look: impl FnMut(u64, &Job, &Solution)) {
    let broken = |seed: &mut Seed| {
        let mut job = random_job(seed);
        let n = job.walls.len() as u64;
        let k = seed.below(n) as usize;
        let height = seed.between(500.0, 1800.0);
        let wall = &mut job.walls[k];
        match seed.below(4) {
            0 => wall.gablet = Some(height),
            1 => wall.plate = height,
            2 => wall.upper = Some(UpperSlope { from: height, pitch_deg: wall.pitch_deg - 12.0 }),
            _ => wall.half_hip = Some(height),
        }
        job
    };
    each(1..=ROOFS, broken, parts, look);
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
    rungs.expect(1000, 0);
    // Left out: boards that start on top of a lower ridge, or beside a hip
    // that runs out through a gable which is carried up. Half of these gables
    // are far out of square to their eaves.
    barges.expect(220, 40);
    // One board of these roofs meets a cripple rafter, and is told of.
    others.expect(2500, 1);
}

/// A house with two gables: walls A and C carry eaves, B and D are gables.
fn gabled(pitch: f64) -> Job {
    let mut job = common::job_over(vec![vec![[0.0, 0.0], [8000.0, 0.0], [8000.0, 5000.0], [0.0, 5000.0]]], pitch);
    job.walls[1].gable = true;
    job.walls[3].gable = true;
    job
}

#[test]
fn barge_boards_meet_plumb_and_end_with_the_fascia() {
    for tail in [TailCut::Plumb, TailCut::Square, TailCut::Level] {
        let mut job = gabled(40.0);
        job.eaves.tail = tail;
        job.timber.parts.fascia = section(22.0, 175.0);
        job.timber.parts.barge = section(25.0, 200.0);
        let s = reading::solve(&job, "a gabled house");
        let barges = of_kind(&s, MemberKind::BargeBoard);
        assert_eq!(barges.len(), 4);
        for b in &barges {
            let head = b.cuts.iter().find(|c| c.at == CutPlace::Head).expect("a head");
            let foot = b.cuts.iter().find(|c| c.at == CutPlace::Foot).expect("a foot");
            assert!((head.face_angle_deg - 40.0).abs() < 1e-9 && head.edge_angle_deg < 1e-9, "plumb at the apex");
            assert!(head.against.as_deref().is_some_and(|m| m.starts_with("Barge")), "against its mate");
            let want = if tail == TailCut::Square { 0.0 } else { 40.0 };
            assert!((foot.face_angle_deg - want).abs() < 1e-9, "the foot is cut like the fascia");
            // In line with the front of the fascia: 300 mm of overhang and its thickness.
            let front = b.solid.points.iter().map(|p| (p[1] - 2500.0).abs()).fold(0.0, f64::max);
            if tail != TailCut::Square {
                assert!((front - (2500.0 + 300.0 + 22.0)).abs() < 1e-6, "{front}");
            }
            // Its back is 200 mm outside the gable, its front 225 mm.
            let far = b
                .solid
                .points
                .iter()
                .map(|p| (p[0] - 4000.0).abs())
                .fold([f64::MAX, 0.0], |[lo, hi], x| [lo.min(x), hi.max(x)]);
            assert!((far[0] - 4200.0).abs() < 1e-6 && (far[1] - 4225.0).abs() < 1e-6, "{far:?}");
        }
        for f in of_kind(&s, MemberKind::Fascia) {
            assert!((f.stock_length_mm - 8400.0).abs() < 1e-6, "the fascia runs to the barge boards");
        }
    }
}

#[test]
fn rungs_are_spaced_no_wider_than_asked() {
    let mut job = gabled(40.0);
    job.timber.parts.ladder = Some(SpacedTimber { size: Section { thickness: 47.0, depth: 97.0 }, centres: 600.0 });
    let s = reading::solve(&job, "a gabled house");
    let rungs = of_kind(&s, MemberKind::GableLadder);
    // Four ladders, each between a rafter at the wall and one 200 mm outside it.
    assert_eq!(rungs.len() % 4, 0);
    assert!(rungs.iter().all(|r| (r.stock_length_mm - (200.0 - 47.0)).abs() < 1e-6));
    let slope = geometry::Angle::deg(40.0);
    let mut up: Vec<f64> = rungs
        .iter()
        .filter(|r| r.axis.from[0] < 4000.0 && r.axis.from[1] < 2500.0)
        .map(|r| r.axis.from[1] / slope.cos())
        .collect();
    up.sort_by(f64::total_cmp);
    assert!(up.windows(2).all(|w| w[1] - w[0] > 400.0 && w[1] - w[0] < 600.0 + 1e-6), "{up:?}");
    assert!(s.notices.iter().all(|n| n.code != "rungs-moved"));
}

#[test]
fn the_masonry_of_a_gable_ends_below_the_ladder() {
    let mut job = gabled(40.0);
    let s = reading::solve(&job, "a gabled house");
    assert_eq!(s.gables.iter().map(|g| g.wall.as_str()).collect::<Vec<_>>(), ["B", "D"]);
    // Below rafters 150 mm deep: their undersides meet the plates' level
    // inside the wall by the seat of the birdsmouth, 37.5 / sin 40°, and the
    // bed of 10 mm takes 10 / tan 40° more.
    let slope = geometry::Angle::deg(40.0);
    let rise = |deep: f64| 2500.0 * slope.tan() + (150.0 - 37.5 - deep) / slope.cos() - 10.0;
    let triangle = |deep: f64| rise(deep) * rise(deep) / slope.tan() / 1e6;
    for gable in &s.gables {
        assert!((gable.area_m2 - triangle(150.0)).abs() < 1e-9, "{} {}", gable.area_m2, triangle(150.0));
        let top = gable.outline.iter().map(|p| p[2]).fold(0.0, f64::max);
        assert!((top - rise(150.0)).abs() < 1e-6);
    }
    job.timber.parts.ladder = Some(SpacedTimber { size: Section { thickness: 47.0, depth: 97.0 }, centres: 600.0 });
    let s = reading::solve(&job, "a gabled house");
    // Rungs are shallower, so that the wall rises past the plates at its ends.
    let ends = (150.0 - 37.5 - 97.0) / slope.cos() - 10.0;
    let area = (5000.0 * ends + 2500.0 * 2500.0 * slope.tan()) / 1e6;
    assert!((s.gables[0].area_m2 - area).abs() < 1e-9, "{} {area}", s.gables[0].area_m2);
}

#[test]
fn the_wall_below_a_half_hip_ends_level() {
    let mut job = gabled(40.0);
    job.walls[1].gable = false;
    job.walls[1].half_hip = Some(1200.0);
    let s = reading::solve(&job, "a half-hipped house");
    let wall = s.gables.iter().find(|g| g.wall == "B").expect("the part below the half hip");
    let top = wall.outline.iter().map(|p| p[2]).fold(0.0, f64::max);
    // The plate of 75 mm lies on it.
    assert!((top - (1200.0 - 75.0)).abs() < 1e-6, "{top}");
    assert_eq!(wall.outline.len(), 4, "{:?}", wall.outline);
    let gable = s.gables.iter().find(|g| g.wall == "D").expect("the gable");
    assert!(wall.area_m2 < gable.area_m2);
}

fn all_edge_parts(job: &mut Job) {
    let p = &mut job.timber.parts;
    p.fascia = section(22.0, 200.0);
    p.soffit = section(9.0, 225.0);
    p.fillet = section(50.0, 125.0);
    p.barge = section(25.0, 200.0);
    p.ladder = Some(SpacedTimber { size: Section { thickness: 47.0, depth: 97.0 }, centres: 600.0 });
    p.noggin = Some(NogginTimber { size: Section { thickness: 47.0, depth: 97.0 }, rows: 1 });
}

#[test]
fn fascia_and_barge_boards_of_a_half_hip_meet_in_one_plane() {
    let mut job = gabled(40.0);
    job.walls[1].gable = false;
    job.walls[1].half_hip = Some(1200.0);
    all_edge_parts(&mut job);
    let s = reading::solve(&job, "a half-hipped house");
    let fascia = of_kind(&s, MemberKind::Fascia).into_iter().find(|m| m.wall.as_deref() == Some("B")).expect("one");
    let barges: Vec<_> = of_kind(&s, MemberKind::BargeBoard).into_iter().filter(|b| b.axis.from[0] > 8000.0).collect();
    assert_eq!(barges.len(), 2);
    for b in barges {
        let head = b.cuts.iter().find(|c| c.at == CutPlace::Head).expect("a head");
        assert_eq!(head.against.as_deref(), Some(fascia.mark.as_str()));
        // Boards of one depth share the angle between them: half the pitch each.
        assert!((head.face_angle_deg - 20.0).abs() < 1e-9 && head.edge_angle_deg < 1e-9, "{head:?}");
    }
    assert!(fascia.cuts.iter().all(|c| (c.face_angle_deg - 20.0).abs() < 1e-9), "{:?}", fascia.cuts);
}

#[test]
fn edges_of_broken_roofs_are_finished() {
    let mut count = Count::default();
    let mut roofs = 0;
    each_broken_roof(all_edge_parts, |seed, _, s| {
        roofs += 1;
        for kind in [MemberKind::Fascia, MemberKind::Soffit, MemberKind::TiltingFillet, MemberKind::BargeBoard] {
            count.add(seed, s, kind);
        }
    });
    assert!(roofs > 100, "only {roofs} roofs");
    count.expect(3000, 20);
}

#[test]
fn everything_at_once() {
    let mut placed = 0;
    each_gabled_roof(
        |job| {
            job.eaves.sprocket = Some(Sprocket { pitch_deg: job.pitch_deg - 10.0, reach: 450.0 });
            all_edge_parts(job);
        },
        |seed, _, s| {
            placed += s.members.len();
            let area: f64 = s.gables.iter().map(|g| g.area_m2).sum();
            assert!(area.is_finite() && s.gables.iter().all(|g| g.area_m2 > 0.0), "seed {seed}");
        },
    );
    assert!(placed > 35_000, "only {placed} timbers");
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
    count.expect(10_000, 0);
    assert!(without < count.placed / 10, "{without} of {} left out", count.placed);
}
