//! Timbers longer than the stock are made of lengths that are together the
//! whole timber, joined where they should be. Checked from the document alone;
//! that no wood is shared and every declared contact closes is checked by every
//! solve.

use crate::common;
use crate::common::{Seed, random_job};
use crate::reading;
use crate::reading::{area_vector, vec3};
use geometry::DVec3;
use job::{Job, JointRules, NogginTimber, Parts, PurlinSet, PurlinTimber, Section, SpacedTimber, SpliceKind, Wood};
use roof::SolveError;
use roof::solution::{BoltWay, CutPlace, Member, MemberKind, Solution, SpliceForm};
use std::collections::BTreeMap;
use std::sync::OnceLock;

const KINDS: [SpliceKind; 3] = [SpliceKind::FishPlates, SpliceKind::Splayed, SpliceKind::Hooked];

/// Stock of most of these tests, mm: about half of what a house needs.
const LONGEST: f64 = 4200.0;

/// Volumes of one timber agree to this, mm³: rounding of a document in metres.
const SAME_VOLUME: f64 = 1.0;

fn joint(kind: SpliceKind) -> JointRules {
    JointRules { longest: LONGEST, kind, bolted: true, wood: Wood::Softwood }
}

fn boathouse() -> Job {
    job::read(include_str!("../../../examples/boathouse.toml")).expect("the example is read")
}

/// The boathouse in timber stout enough for every splice.
fn stout_boathouse(kind: SpliceKind) -> Job {
    let mut job = boathouse();
    job.timber.rafter.size = Section { thickness: 75.0, depth: 150.0 };
    job.timber.rafter.centres = 600.0;
    for size in [&mut job.timber.hip.size, &mut job.timber.valley.size, &mut job.timber.ridge.size] {
        *size = Section { thickness: 75.0, depth: 225.0 };
    }
    job.timber.joint = joint(kind);
    job
}

const fn section(thickness: f64, depth: f64) -> Section {
    Section { thickness, depth }
}

const fn spaced(thickness: f64, depth: f64, centres: f64) -> Option<SpacedTimber> {
    Some(SpacedTimber { size: section(thickness, depth), centres })
}

/// Everything that can be fitted to a frame, long or short.
fn furnish(job: &mut Job) {
    let purlin = PurlinTimber { size: section(75.0, 200.0), set: PurlinSet::Square, up: Vec::new() };
    let noggin = NogginTimber { size: section(47.0, 100.0), rows: 1 };
    job.timber.parts = Parts {
        purlin: Some(purlin),
        ceiling_joist: Some(section(47.0, 125.0)),
        binder: Some(section(47.0, 150.0)),
        hanger: spaced(47.0, 75.0, 1800.0),
        ladder: spaced(47.0, 100.0, 600.0),
        noggin: Some(noggin),
        fascia: Some(section(25.0, 175.0)),
        soffit: Some(section(9.0, 600.0)),
        fillet: Some(section(50.0, 150.0)),
        barge: Some(section(25.0, 200.0)),
        ..Parts::default()
    };
}

/// A roof as it is and made of lengths.
struct Pair {
    name: String,
    whole: Solution,
    spliced: Solution,
}

/// Every roof of these tests.
fn roofs() -> &'static [Pair] {
    static ROOFS: OnceLock<Vec<Pair>> = OnceLock::new();
    ROOFS.get_or_init(|| {
        let mut out = Vec::new();
        let mut both = |name: String, mut job: Job, kind: SpliceKind| {
            job.timber.joint = JointRules::NONE_NEEDED;
            // Roofs that are refused as they are have nothing to do with splices.
            let Ok(whole) = roof::solve(&job) else { return };
            job.timber.joint = joint(kind);
            let spliced = roof::solve(&job).unwrap_or_else(|e| panic!("{name}: {e}"));
            out.push(Pair { name, whole, spliced });
        };
        for kind in KINDS {
            both(format!("boathouse, {kind:?}"), boathouse(), kind);
            both(format!("stout boathouse, {kind:?}"), stout_boathouse(kind), kind);
        }
        for seed in 1..=100 {
            let mut job = random_job(&mut Seed::new(seed));
            if seed % 4 == 0 {
                job.timber.hip.size.thickness = 75.0;
                job.timber.valley.size.thickness = 75.0;
                job.timber.rafter.size.thickness = 75.0;
            }
            both(format!("seed {seed}"), job.clone(), KINDS[seed as usize % 3]);
            if seed <= 30 {
                furnish(&mut job);
                both(format!("seed {seed} with every part"), job, KINDS[seed as usize % 3]);
            }
        }
        out
    })
}

/// The mark of the whole timber: `Ridge-1` of `Ridge-1b`.
// Letters from `t` on are pieces up the slope, not lengths.
fn whole_mark(m: &Member) -> &str {
    m.mark.trim_end_matches(|c: char| ('a'..='s').contains(&c))
}

fn lengths(s: &Solution) -> impl Iterator<Item = &Member> {
    let fitting = |m: &&Member| matches!(m.kind, MemberKind::FishPlate | MemberKind::Wedge);
    s.members.iter().filter(move |m| !m.splices.is_empty() && !fitting(m))
}

fn is_rafter(m: &Member) -> bool {
    use MemberKind::{CommonRafter, CrippleRafter, CrownRafter, JackRafter, TrimmingRafter, ValleyJack};
    matches!(m.kind, CommonRafter | CrippleRafter | CrownRafter | JackRafter | TrimmingRafter | ValleyJack)
}

fn member<'a>(s: &'a Solution, mark: &str) -> &'a Member {
    reading::member(s, mark)
}

/// Faces of a solid: name, area along the normal, corners.
fn faces(m: &Member) -> Vec<(&str, DVec3, Vec<DVec3>)> {
    let point = |k: &u32| vec3(m.solid.points[*k as usize]);
    let ring = |f: &Vec<u32>| f.iter().map(point).collect::<Vec<_>>();
    m.solid
        .faces
        .iter()
        .zip(&m.solid.names)
        .map(|(f, name)| (name.as_str(), area_vector(&ring(f)) / 2.0, ring(f)))
        .collect()
}

#[test]
fn lengths_are_the_whole_timber_and_fit_the_stock() {
    let mut made = 0;
    for Pair { name, whole, spliced } in roofs() {
        let mut volumes: BTreeMap<&str, f64> = BTreeMap::new();
        for m in &spliced.members {
            if matches!(m.kind, MemberKind::FishPlate | MemberKind::Wedge) {
                continue;
            }
            assert!(m.stock_length_mm <= LONGEST + 1e-6, "{name}: {} is {} mm", m.mark, m.stock_length_mm);
            *volumes.entry(whole_mark(m)).or_default() += m.volume_m3 * 1e9;
        }
        for wedge in spliced.members.iter().filter(|m| m.kind == MemberKind::Wedge) {
            let of = member(spliced, &wedge.splices[0].mate);
            *volumes.entry(whole_mark(of)).or_default() += wedge.volume_m3 * 1e9;
        }
        assert_eq!(volumes.len(), whole.members.len(), "{name}: timbers");
        for m in &whole.members {
            let of_lengths = volumes.get(m.mark.as_str()).copied().unwrap_or_default();
            let missing = m.volume_m3 * 1e9 - of_lengths;
            assert!(missing.abs() < SAME_VOLUME, "{name}: {missing:.1} mm³ of {} are missing", m.mark);
        }
        made += lengths(spliced).count();
    }
    assert!(roofs().len() > 100 && made > 5000, "{made} lengths in {} roofs", roofs().len());
}

#[test]
fn halves_meet_face_to_face() {
    for Pair { name, spliced, .. } in roofs() {
        for m in lengths(spliced) {
            for splice in &m.splices {
                let mate = member(spliced, &splice.mate);
                let back = mate.splices.iter().find(|s| s.mate == m.mark);
                let back = back.unwrap_or_else(|| panic!("{name}: {} does not know {}", mate.mark, m.mark));
                assert_eq!((back.kind, back.length_mm), (splice.kind, splice.length_mm), "{name}: {}", m.mark);
                // Areas of their faces towards one another cancel.
                let toward = |m: &Member, at: CutPlace| {
                    let place = if at == CutPlace::Head { "head splice" } else { "foot splice" };
                    let named = faces(m).into_iter().filter(|(n, ..)| n.starts_with(place));
                    named.map(|(_, area, _)| area).fold(DVec3::ZERO, |a, b| a + b)
                };
                let (mine, theirs) = (toward(m, splice.at), toward(mate, back.at));
                // The floor of the key space lies under the wedges, alike on both.
                assert!(mine.length() > 100.0, "{name}: {} has no face at its splice", m.mark);
                assert!((mine + theirs).length() < 1e-3, "{name}: {} and {} do not match", m.mark, mate.mark);
            }
        }
    }
}

#[test]
fn cuts_name_the_length_that_they_touch() {
    for Pair { name, spliced, .. } in roofs() {
        for m in &spliced.members {
            for cut in &m.cuts {
                let Some(mark) = &cut.against else { continue };
                let other = member(spliced, mark);
                let touches = faces(m).iter().filter(|(n, ..)| *n == cut.name).any(|(_, area, ring)| {
                    let n = area.normalize();
                    faces(other).iter().any(|(_, theirs, corners)| {
                        let gap = n.dot(corners[0] - ring[0]).abs();
                        n.dot(theirs.normalize()) < -0.999_999 && gap < 0.05 && abreast(n, ring, corners)
                    })
                });
                assert!(touches, "{name}: {} of {} does not touch {mark}", cut.name, m.mark);
            }
        }
    }
}

/// Whether two rings in one plane overlap in every direction along it that is
/// a side of either, by more than rounding.
fn abreast(normal: DVec3, a: &[DVec3], b: &[DVec3]) -> bool {
    let reach = |ring: &[DVec3], out: DVec3| {
        ring.iter().map(|p| out.dot(*p)).fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], v| [lo.min(v), hi.max(v)])
    };
    let sides = |ring: &[DVec3]| -> Vec<DVec3> {
        (0..ring.len()).map(|k| (ring[(k + 1) % ring.len()] - ring[k]).cross(normal).normalize()).collect()
    };
    sides(a).into_iter().chain(sides(b)).all(|out| {
        let ([a0, a1], [b0, b1]) = (reach(a, out), reach(b, out));
        a1.min(b1) - a0.max(b0) > 1e-3
    })
}

#[test]
fn neighbours_are_not_spliced_side_by_side() {
    let (mut pairs, mut told) = (0, 0);
    for Pair { name, spliced, .. } in roofs() {
        let rafters: Vec<&Member> =
            lengths(spliced).filter(|m| m.splices[0].at == CutPlace::Head && is_rafter(m)).collect();
        // The middle of a splice along the slope, and the station of its rafter.
        let place = |m: &Member| {
            let along = vec3(m.bench.along);
            let s = m.splices.last().expect("it is spliced");
            let x = s.from_mm + s.length_mm / 2.0;
            ((vec3(m.bench.origin) + along * x).dot(along), vec3(m.bench.origin).dot(vec3(m.bench.across)), along)
        };
        for a in &rafters {
            for b in rafters.iter().filter(|b| b.wall == a.wall && b.mark != a.mark) {
                let ((xa, ya, along), (xb, yb, other)) = (place(a), place(b));
                let between = |m: &Member| {
                    let y = vec3(m.bench.origin).dot(vec3(m.bench.across));
                    let rafter = is_rafter(m) && m.wall == a.wall && vec3(m.bench.along).dot(along) > 0.999_999;
                    rafter && y > ya.min(yb) + 1.0 && y < ya.max(yb) - 1.0
                };
                if along.dot(other) < 0.999_999 || (ya - yb).abs() < 1.0 || spliced.members.iter().any(between) {
                    continue;
                }
                if spliced.notices.iter().any(|n| n.code == "splices-side-by-side") {
                    told += 1;
                    continue;
                }
                pairs += 1;
                let least = a.splices[0].length_mm.min(b.splices[0].length_mm);
                assert!((xa - xb).abs() >= least - 1e-3, "{name}: {} beside {}", a.mark, b.mark);
            }
        }
    }
    assert!(pairs > 500, "only {pairs} pairs of neighbours");
    assert!(told * 20 < pairs, "{told} pairs in roofs where some could not be staggered");
}

#[test]
fn plates_are_not_lapped_under_rafters() {
    let mut laps = 0;
    for kind in KINDS {
        let mut job = boathouse();
        job.timber.joint = joint(kind);
        let s = roof::solve(&job).expect("the boathouse is spliced");
        for plate in lengths(&s).filter(|m| m.kind == MemberKind::WallPlate) {
            for lap in plate.splices.iter().filter(|l| l.at == CutPlace::Head) {
                assert_eq!((lap.kind, lap.length_mm), (SpliceForm::HalfLap, 150.0));
                let (origin, along) = (vec3(plate.bench.origin), vec3(plate.bench.along));
                let [from, to] = [lap.from_mm, lap.from_mm + lap.length_mm];
                for m in s.members.iter().filter(|m| m.birdsmouth.is_some() && m.wall == plate.wall) {
                    let at = (vec3(m.axis.from) - origin).dot(along);
                    let half = m.size.thickness_mm / 2.0;
                    assert!(at + half < from || at - half > to, "{} on the lap of {}", m.mark, plate.mark);
                }
                laps += 1;
            }
            // At least 3 m long, or over three rafters (NHBC Standards 7.2.6).
            let strip = s.setting_out.iter().find(|x| x.mark == plate.mark).expect("every plate has a strip");
            let enough = plate.stock_length_mm >= 3000.0 || strip.stations.len() >= 3;
            assert!(enough, "{} is {} mm", plate.mark, plate.stock_length_mm);
        }
    }
    assert!(laps >= 15, "only {laps} laps");
}

#[test]
fn boards_are_joined_over_rafters() {
    let mut job = boathouse();
    job.timber.parts.fascia = Some(section(25.0, 175.0));
    job.timber.joint = joint(SpliceKind::Splayed);
    let s = roof::solve(&job).expect("the boathouse with fascias");
    let mut joints = 0;
    for board in lengths(&s).filter(|m| m.kind == MemberKind::Fascia) {
        let (origin, along) = (vec3(board.bench.origin), vec3(board.bench.along));
        for splice in board.splices.iter().filter(|x| x.at == CutPlace::Head) {
            // A 45° mitre is as long as the board is thick.
            assert_eq!((splice.kind, splice.length_mm), (SpliceForm::BoardSplay, 25.0));
            let middle = origin + along * (splice.from_mm + splice.length_mm / 2.0);
            let off = |m: &Member| (vec3(m.axis.from) - middle).dot(along).abs();
            let tails = s.members.iter().filter(|m| is_rafter(m) && m.wall == board.wall && m.birdsmouth.is_some());
            let nearest = tails.map(off).fold(f64::INFINITY, f64::min);
            assert!(nearest < 1e-6, "{}: {nearest:.1} mm from the middle of a tail", board.mark);
            joints += 1;
        }
    }
    assert!(joints >= 5, "only {joints} joints");
}

#[test]
fn rafters_are_joined_over_their_purlin_or_beside_one_that_is() {
    let plan = vec![[0.0, 0.0], [8000.0, 0.0], [8000.0, 8400.0], [0.0, 8400.0]];
    let mut job = common::job_over(vec![plan], 40.0);
    job.walls[1].gable = true;
    job.walls[3].gable = true;
    job.timber.parts.purlin = Some(PurlinTimber { size: section(75.0, 225.0), set: PurlinSet::Square, up: Vec::new() });
    job.timber.joint = joint(SpliceKind::Splayed);
    let s = roof::solve(&job).expect("a gabled roof with purlins");
    let purlin = s.members.iter().find(|m| m.kind == MemberKind::Purlin).expect("a purlin");
    let mut rafters: Vec<&Member> = lengths(&s)
        .filter(|m| m.kind == MemberKind::CommonRafter && m.wall == purlin.wall && m.splices[0].at == CutPlace::Head)
        .collect();
    rafters.sort_by(|a, b| a.axis.from[0].total_cmp(&b.axis.from[0]));
    assert!(rafters.len() > 15, "only {} rafters", rafters.len());
    let over = |m: &Member| {
        let x = m.splices[0].from_mm + m.splices[0].length_mm / 2.0;
        let (origin, along) = (vec3(m.bench.origin), vec3(m.bench.along));
        ((origin + along * x) - vec3(purlin.axis.from)).dot(along).abs() < 75.0
    };
    for pair in rafters.windows(2) {
        assert!(pair.iter().any(|m| over(m)), "neither {} nor {}", pair[0].mark, pair[1].mark);
    }
}

#[test]
fn a_strip_of_a_length_of_plate_lists_the_rafters_on_it() {
    let mut job = boathouse();
    job.timber.joint = joint(SpliceKind::Splayed);
    let s = roof::solve(&job).expect("the boathouse is spliced");
    let strips: Vec<_> = s.setting_out.iter().filter(|x| x.name == "wall plate E").collect();
    assert!(strips.len() >= 3, "{} strips", strips.len());
    let wall =
        s.plan.walls.iter().find(|w| w.id == "E").map(|w| DVec3::new(w.from[0], w.from[1], 0.0)).expect("wall E");
    for strip in &strips {
        let plate = member(&s, &strip.mark);
        assert!(strip.stations.len() >= 3, "{}", strip.mark);
        for x in &strip.stations {
            let rafter = member(&s, &x.mark);
            // The first length is measured from the corner of the walls.
            let hook = if plate.mark.ends_with('a') { wall } else { vec3(plate.bench.origin) };
            let at = (vec3(rafter.axis.from) - hook).dot(vec3(plate.bench.along));
            assert!((at - (x.near_mm + x.far_mm) / 2.0).abs() < 1e-6, "{} on {}", x.mark, strip.mark);
            assert!(at > -50.0 && at < plate.stock_length_mm + 50.0, "{} is not on {}", x.mark, strip.mark);
        }
    }
}

#[test]
fn hooked_scarfs_are_undercut_and_wedged() {
    let s = roof::solve(&stout_boathouse(SpliceKind::Hooked)).expect("a stout boathouse");
    let hooked: Vec<(&Member, &roof::solution::SpliceOut)> = lengths(&s)
        .flat_map(|m| m.splices.iter().map(move |x| (m, x)))
        .filter(|(_, x)| x.kind == SpliceForm::Hooked && x.at == CutPlace::Head)
        .collect();
    assert!(hooked.len() > 20, "only {} hooked scarfs", hooked.len());
    let wedges = s.members.iter().filter(|m| m.kind == MemberKind::Wedge).count();
    assert_eq!(wedges, 2 * hooked.len());
    for (m, splice) in &hooked {
        assert_eq!(splice.wedge_mm_in_100.map(|t| (t * 12.0).round()), Some(100.0), "{}: 1 in 12", m.mark);
        let up = vec3(m.bench.up);
        let along = vec3(m.bench.along);
        // Its tip and its shoulder are undercut: both lean by 1 in 6 from square,
        // so that neither half can be lifted off the other.
        let ends: Vec<DVec3> =
            faces(m).iter().filter(|(n, ..)| *n == "head splice end").map(|(_, a, _)| a.normalize()).collect();
        let leaning = ends.iter().filter(|n| ((n.dot(up) / n.dot(along)).abs() * 6.0 - 1.0).abs() < 1e-6);
        assert_eq!(leaning.count(), 2, "{}", m.mark);
        assert!(ends.iter().filter(|n| n.dot(along) > 0.5).all(|n| n.dot(up) < 0.0), "{} is not undercut", m.mark);
    }
}

#[test]
fn bolts_keep_their_distances() {
    let mut holes = 0;
    let mut ways = [false; 2];
    for Pair { name, spliced, .. } in roofs() {
        for m in &spliced.members {
            for splice in &m.splices {
                let butt = splice.kind == SpliceForm::FishPlates;
                if matches!(splice.kind, SpliceForm::HalfLap | SpliceForm::BoardSplay) {
                    assert!(splice.bolts.is_empty());
                    continue;
                }
                for (k, bolt) in splice.bolts.iter().enumerate() {
                    holes += 1;
                    ways[usize::from(bolt.through == BoltWay::Depth)] = true;
                    let what = || format!("{name}: bolt {k} of {} at {:.1}", m.mark, bolt.along_mm);
                    // 80 mm from any end, 36 from an edge, 60 along the grain
                    // (EN 1995-1-1 table 8.4 for 12 mm bolts, from memory).
                    let ends = [bolt.along_mm, m.stock_length_mm - bolt.along_mm];
                    assert!(ends.iter().all(|e| *e >= 80.0 - 1e-6), "{}", what());
                    let edges = [bolt.up_mm, m.size.depth_mm - bolt.up_mm];
                    assert!(bolt.through == BoltWay::Depth || edges.iter().all(|e| *e >= 36.0 - 1e-6), "{}", what());
                    if let Some(next) = splice.bolts.get(k + 1) {
                        assert!(next.along_mm - bolt.along_mm >= 60.0 - 1e-6, "{}", what());
                        let alike = (next.up_mm - bolt.up_mm).abs() < 1e-6;
                        let staggered = bolt.through == BoltWay::Depth || !alike || m.size.depth_mm < 108.0;
                        assert!(staggered, "{} is not staggered", what());
                    }
                }
                if m.kind != MemberKind::Wedge {
                    let least = if butt { 1 } else { 2 };
                    assert!(splice.bolts.len() >= least, "{name}: {} bolts in {}", splice.bolts.len(), m.mark);
                }
            }
        }
    }
    assert!(holes > 5000 && ways == [true; 2], "{holes} holes");
}

#[test]
fn stock_too_short_for_a_splice_is_refused_with_a_remedy() {
    let mut job = boathouse();
    job.timber.joint = JointRules { longest: 1200.0, ..joint(SpliceKind::Splayed) };
    let error = roof::solve(&job).expect_err("no ridge is made of such stock");
    assert!(matches!(error, SolveError::NoSplice { .. }), "{error}");
    let text = error.to_string();
    assert!(text.contains("timber.joint.longest") && text.contains("near ("), "{text}");
}

#[test]
fn notices_say_what_is_made_of_lengths() {
    let s = roof::solve(&stout_boathouse(SpliceKind::Hooked)).expect("a stout boathouse");
    let note = s.notices.iter().find(|n| n.code == "made-of-lengths").expect("a note");
    assert!(note.text.contains("wall plate") && note.text.contains("4200 mm"), "{}", note.text);
    let mut whole = boathouse();
    whole.timber.joint = JointRules::NONE_NEEDED;
    let plain = roof::solve(&whole).expect("the boathouse");
    assert!(plain.notices.iter().all(|n| n.code != "made-of-lengths"));
}
