//! Corners at the edge of what can be framed, eaves at unequal pitches,
//! birdsmouths and the table per metre of run, against solved roofs.

use crate::common;
use crate::published::{Entry, Tally, family};
use crate::reading::{
    angle_to_wall, cut_against, dihedral, dir, face, faces_named, foot, head, head_cut, head_cut_where, of_kind,
    plumb_height, rise, run, solve, spine_from, steps, top_height_at_tail, vec3, worst,
};
use geometry::{Angle, DVec2};
use job::{Fascia, HipEdge, Job, Section};
use roof::solution::{LineKind, Member, MemberKind, NoticeLevel, Solution};

/// A parallelogram with walls A and D at the origin at a corner angle, and the
/// pitches of A and D (B has that of D, C that of A).
fn corner_job(corner_deg: f64, pitches: [f64; 2]) -> Job {
    let corner = Angle::deg(corner_deg);
    let side = 6000.0 / corner.sin();
    let (x, y) = (side * corner.cos(), side * corner.sin());
    let mut job = common::job_over(vec![vec![[0.0, 0.0], [16_000.0, 0.0], [16_000.0 + x, y], [x, y]]], pitches[0]);
    for k in [1, 3] {
        job.walls[k].pitch_deg = pitches[1];
    }
    job.timber.hip.size.depth = 300.0;
    job
}

fn rectangle_job(pitch: f64) -> Job {
    common::job_over(vec![vec![[0.0, 0.0], [8000.0, 0.0], [8000.0, 6000.0], [0.0, 6000.0]]], pitch)
}

fn hip(s: &Solution) -> &Member {
    spine_from(s, MemberKind::HipRafter, [0.0, 0.0])
}

fn along_d(corner_deg: f64) -> DVec2 {
    let corner = Angle::deg(corner_deg);
    DVec2::new(corner.cos(), corner.sin())
}

fn warned(s: &Solution, code: &str) -> bool {
    s.notices.iter().any(|n| n.code == code && n.level == NoticeLevel::Warn)
}

#[test]
fn hips_that_lean_past_square_are_warned_of() {
    let mut tally = Tally::default();
    for row in &family("edge-") {
        let (corner, a, b) = (row.input("corner_deg"), row.input("pitch_a_deg"), row.input("pitch_b_deg"));
        let mut job = corner_job(corner, [a, b]);
        // One upstand for pitches so far apart leaves a steep rafter little: start from a shallow seat.
        job.timber.rafter.birdsmouth = 5.0;
        let s = solve(&job, &row.id);
        let hip = hip(&s);
        tally.figure(row, "delta_a_deg", "deg", angle_to_wall(dir(hip), DVec2::X));
        tally.figure(row, "delta_b_deg", "deg", angle_to_wall(dir(hip), along_d(corner)));
        tally.figure(row, "hip_pitch_deg", "deg", hip.pitch_deg);
        tally.figure(row, "dihedral_deg", "deg", dihedral(face(&s, "A"), face(&s, "D")));
        let line = s
            .lines
            .iter()
            .find(|l| l.kind == LineKind::Hip && vec3(l.from).truncate().length() < 0.5)
            .expect("the surface has the hip");
        // A is on the right, looking up the hip.
        for [left, right] in [hip.backing_deg, line.backing_deg].map(|b| b.expect("hips have backing angles")) {
            tally.figure(row, "backing_a_deg_signed", "deg", right);
            tally.figure(row, "backing_b_deg", "deg", left);
        }
        tally.holds(row, "the hip is warned of", warned(&s, "hip-leans-past-square"));
        let upright = solve(&corner_job(corner, [a, a]), &row.id);
        tally.holds(row, "no warning at equal pitches", !warned(&upright, "hip-leans-past-square"));
    }
    tally.finish(&["edge-"], 2 * 10);
}

/// Where the eaves lines of A and D cross, read off the tails of their rafters.
fn eaves_corner(s: &Solution, corner_deg: f64) -> DVec2 {
    let out = [-DVec2::Y, along_d(corner_deg).perp()];
    let reach = |wall: &str, out: DVec2| {
        s.members
            .iter()
            .filter(|m| m.wall.as_deref() == Some(wall) && m.kind != MemberKind::WallPlate)
            .flat_map(|m| &m.solid.points)
            .map(|p| out.dot(vec3(*p).truncate()))
            .fold(f64::NEG_INFINITY, f64::max)
    };
    let [a, d] = [reach("A", out[0]), reach("D", out[1])];
    (out[1].perp() * -a + out[0].perp() * d) / out[0].perp_dot(out[1])
}

#[test]
fn eaves_at_unequal_pitches() {
    let mut tally = Tally::default();
    for row in &family("eaves-") {
        let corner = row.input("corner_deg");
        let mut job = corner_job(corner, [row.input("pitch_a_deg"), row.input("pitch_b_deg")]);
        job.eaves.overhang = row.input("overhang_a_mm");
        let s = solve(&job, &row.id);
        let level = "overhang_b_level_plates_mm";
        tally.figure(row, level, "mm", s.plan.walls[3].overhang_mm);
        // Off the solids: how far the tails of D stand out, and the fascia is level.
        let tails = eaves_corner(&s, corner);
        tally.figure(row, level, "mm", along_d(corner).perp().dot(tails));
        let common = |s: &Solution, wall: &str| {
            let own = |m: &&Member| {
                m.wall.as_deref() == Some(wall) && matches!(m.kind, MemberKind::CommonRafter | MemberKind::CrownRafter)
            };
            top_height_at_tail(s.members.iter().find(own).unwrap_or_else(|| panic!("no full rafter on {wall}")))
        };
        tally.check(row, "level fascia", common(&s, "A") - common(&s, "D"), 0.0, row.tolerance_of("mm"));
        // With the same overhang all round, the step in the fascia is what the plates would have to differ by,
        // and the hip misses the corner of the eaves by what it would miss the corner of the walls by.
        job.eaves.fascia = Fascia::Fixed;
        let s = solve(&job, &row.id);
        let step = common(&s, "A") - common(&s, "D");
        tally.figure(row, "plate_difference_equal_overhang_mm", "mm", step);
        let off = dir(hip(&s)).perp_dot(eaves_corner(&s, corner) - foot(hip(&s))).abs();
        tally.figure(row, "hip_offset_from_wall_corner_mm", "mm", off);
        tally.holds(row, "a step is warned of", warned(&s, "fascia-step") == (step > 1.0));
        // With the plates raised by it the fascia is level at the same overhang: the hip runs over the corner of the
        // eaves, and misses that of the walls.
        job.eaves.fascia = Fascia::Level;
        for k in [1, 3] {
            job.walls[k].plate = step;
        }
        let s = solve(&job, &row.id);
        tally.check(row, "equal overhang", s.plan.walls[3].overhang_mm, job.eaves.overhang, row.tolerance_of("mm"));
        let nearest = |a: &&Member, b: &&Member| foot(a).length().total_cmp(&foot(b).length());
        let hip = s.members.iter().filter(|m| m.kind == MemberKind::HipRafter).min_by(nearest).expect("a hip");
        let miss = |p: DVec2| dir(hip).perp_dot(p - foot(hip)).abs();
        tally.figure(row, "hip_offset_from_wall_corner_mm", "mm", miss(DVec2::ZERO));
        tally.check(row, "hip on the corner of the eaves", miss(eaves_corner(&s, corner)), 0.0, row.tolerance_of("mm"));
    }
    tally.finish(&["eaves-"], 5 * 9);
}

fn birdsmouth_job(row: &Entry, notch: f64) -> Job {
    let mut job = rectangle_job(row.input("pitch_deg"));
    job.timber.rafter.size.depth = row.input("depth_mm");
    job.timber.rafter.birdsmouth = notch;
    job.timber.hip.size.depth = 350.0;
    job.timber.ridge.size.depth = 350.0;
    job
}

fn common_of(s: &Solution) -> &Member {
    of_kind(s, MemberKind::CommonRafter)[0]
}

/// Square distance from the inner corner of the birdsmouth (on the plate line)
/// to the top of the rafter, mm: what is left above the notch.
fn left_above(m: &Member) -> f64 {
    let top = faces_named(m, "top")[0];
    top.offset - top.normal.dot(vec3(m.axis.from))
}

/// Level length of the seat and plumb height of the heel, off the solid, mm.
fn seat_and_heel(m: &Member) -> [f64; 2] {
    let extent = |name: &str, of: &dyn Fn([f64; 3]) -> f64| {
        let k = m.solid.names.iter().position(|n| n == name).unwrap_or_else(|| panic!("{} has no {name}", m.mark));
        let values = m.solid.faces[k].iter().map(|p| of(m.solid.points[*p as usize]));
        let [lo, hi] = values.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], v| [lo.min(v), hi.max(v)]);
        hi - lo
    };
    let along = dir(m);
    [extent("seat cut", &|p| along.dot(vec3(p).truncate())), extent("heel plumb cut", &|p| p[2])]
}

#[test]
fn birdsmouths() {
    let mut tally = Tally::default();
    for row in &family("birdsmouth-") {
        let (depth, pitch, seat) = (row.input("depth_mm"), Angle::deg(row.input("pitch_deg")), row.input("seat_mm"));
        let s = solve(&birdsmouth_job(row, seat * pitch.sin()), &row.id);
        let m = common_of(&s);
        let b = m.birdsmouth.expect("a common has a birdsmouth");
        let tolerance = row.tolerance_of("mm");
        let [cut_seat, cut_heel] = seat_and_heel(m);
        tally.check(row, "seat", b.seat_mm, seat, tolerance);
        tally.check(row, "seat of the solid", cut_seat, seat, tolerance);
        tally.figure(row, "heel", "mm", b.plumb_mm);
        tally.figure(row, "heel", "mm", cut_heel);
        tally.figure(row, "notch", "mm", b.depth_mm);
        tally.figure(row, "left", "mm", left_above(m));
        tally.figure(row, "hap", "mm", b.upstand_mm);
        tally.figure(row, "plumb", "mm", plumb_height(m, "head plumb cut"));
        let deep = row.want("notch") > depth / 3.0;
        tally.holds(row, "past a third is warned of", warned(&s, "birdsmouth-deep") == deep);
        for (share, key) in [(3.0, "seat_third"), (4.0, "seat_quarter")] {
            let s = solve(&birdsmouth_job(row, depth / share), &row.id);
            tally.figure(row, key, "mm", seat_and_heel(common_of(&s))[0]);
            tally.holds(row, "a third is not warned of", !warned(&s, "birdsmouth-deep"));
        }
    }
    tally.finish(&["birdsmouth-"], 6 * 13);
}

#[test]
fn the_deepest_birdsmouth_without_a_warning() {
    let mut tally = Tally::default();
    for rule in &family("rule-birdsmouth-third") {
        let mut job = rectangle_job(40.0);
        let depth = job.timber.rafter.size.depth;
        let third = rule.expected.as_f64().expect("a share") * depth;
        for (over, warns) in [(-0.01, false), (0.01, true)] {
            job.timber.rafter.birdsmouth = third + over;
            tally.holds(rule, "the warning starts there", warned(&solve(&job, &rule.id), "birdsmouth-deep") == warns);
        }
    }
    tally.finish(&["rule-birdsmouth-third"], 2);
}

#[test]
fn per_metre_of_run() {
    let mut tally = Tally::default();
    for row in &family("permetre-") {
        let mut job = rectangle_job(row.input("pitch_deg"));
        job.timber.rafter.size.depth = 100.0;
        job.timber.rafter.birdsmouth = 25.0;
        job.timber.rafter.centres = 600.0;
        let wide = solve(&job, &row.id);
        job.timber.rafter.centres = 400.0;
        let s = solve(&job, &row.id);
        let (hip, common) = (hip(&s), common_of(&s));
        let per_metre = |mm: f64| mm * 1000.0 / run(common);
        tally.figure(row, "rise_per_m", "mm", per_metre(rise(common)));
        let plumb = common.cuts.iter().find(|c| c.name == "head plumb cut").expect("a common has a plumb cut");
        tally.figure(row, "rise_on_250", "mm", plumb.square.rise * 250.0 / plumb.square.run);
        tally.figure(row, "common_per_m", "mm", per_metre(common.true_length_mm));
        tally.check(row, "run of hip", (head(hip) - foot(hip)).y, run(common), row.tolerance_of("mm"));
        tally.figure(row, "hip_per_m", "mm", per_metre(hip.true_length_mm));
        tally.figure(row, "hip_pitch", "deg", hip.pitch_deg);
        for (roof, centres, key) in [(&s, 400.0, "jd400"), (&wide, 600.0, "jd600")] {
            let jacks = cut_against(roof, "A", &self::hip(roof).mark);
            tally.figure(row, key, "mm", worst(&steps(&jacks, centres), row.want(key), key));
        }
        let jack = cut_against(&s, "A", &hip.mark)[0];
        let cheek = head_cut(jack, &hip.mark).expect("a jack is cut against the hip");
        tally.figure(row, "jack_edge", "deg", 90.0 - cheek.edge_angle_deg);
        let cheek = head_cut_where(&s, hip, |m| m.wall.as_deref() == Some("A")).expect("a hip has two cheeks");
        tally.figure(row, "hip_edge", "deg", 90.0 - cheek.edge_angle_deg);
        for side in hip.backing_deg.expect("a backed hip has its angles") {
            tally.figure(row, "backing", "deg", side);
        }
        tally.figure(row, "dihedral", "deg", dihedral(face(&s, "A"), face(&s, "D")));
        tally.figure(row, "plumb100", "mm", plumb_height(common, "head plumb cut"));
        // A square-edged hip of this depth just takes the whole cut of a 100 mm jack; one 1 mm less does not.
        job.timber.hip.edge = HipEdge::Dropped;
        for (less, warns) in [(0.0, false), (1.0, true)] {
            job.timber.hip.size = Section { thickness: 47.0, depth: row.want("hipdepth") - less };
            let s = solve(&job, &row.id);
            let told =
                |m: &Member| s.notices.iter().any(|n| n.code == "too-shallow-for-its-rafters" && n.place == m.mark);
            tally.holds(row, "depth of a hip", told(self::hip(&s)) == warns);
        }
    }
    // `purlin_face` waits for purlins.
    tally.finish(&["permetre-"], 12 * 16);
}
