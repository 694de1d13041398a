//! The full setting-out rows (`row-*`) of the reference file against corners of
//! solved roofs.
//!
//! Every row is one corner: walls A and D meet at the origin of a
//! parallelogram at the row's angle and pitches, so wide that the run of A is
//! the row's 3000 mm. The hip there is looked at from its foot: A is on its
//! right, D (the row's side B) on its left.

use crate::common;
use crate::published;
use crate::published::{Entry, Tally, family};
use crate::reading::{
    angle_to_wall, cut_against, dihedral, dir, face, faces_named, foot, head, head_cut, head_cut_where, head_deduction,
    level_from_head, of_kind, reach_left, rise, run, solve, spine_from, steps, worst,
};
use geometry::Angle;
use job::{HipEdge, HipHead, HipLine, Job};
use roof::solution::{Member, MemberKind, Solution};

/// Figures of purlins and boards, which a frame of rafters does not have.
const OF_OTHER_MEMBERS: [&str; 12] = [
    "purlin_edge_a_deg",
    "purlin_edge_b_deg",
    "purlin_face_a_deg",
    "purlin_face_b_deg",
    "board_tilt_a_deg",
    "board_tilt_b_deg",
    "face_tilt_a_deg",
    "face_tilt_b_deg",
    "purlin_lip_a_deg",
    "purlin_lip_b_deg",
    "board_mitre_a_deg",
    "board_mitre_b_deg",
];

/// The figures that are compared in every row.
const FIGURES: usize = 39;

/// Length of the walls along the ridge in runs of A: enough for both hipped ends.
const LENGTH: f64 = 8.0;

/// A hip steeper than this to the eaves of A, in degrees, leaves no two jacks
/// at 600 mm centres there at the row's run; their steps are read off a roof
/// of [`LARGER`] times the size.
const STEEP: f64 = 65.0;

/// How much larger.
const LARGER: f64 = 3.0;

/// Which of the two walls at the corner the ridge runs along.
#[derive(Clone, Copy, PartialEq)]
enum Ridge {
    AlongA,
    AlongD,
}

fn corner_job(row: &Entry, scale: f64, ridge: Ridge) -> Job {
    let corner = Angle::deg(row.input("corner_deg"));
    let run = row.input("run_a_mm") * scale;
    let short = 2.0 * run / corner.sin();
    let long = LENGTH * if scale > 1.0 { run / 2.0 } else { run };
    let [a, d] = if ridge == Ridge::AlongA { [long, short] } else { [short, long] };
    let (x, y) = (d * corner.cos(), d * corner.sin());
    let plan = vec![[0.0, 0.0], [a, 0.0], [a + x, y], [x, y]];
    let mut job = common::job_over(vec![plan], row.input("pitch_a_deg"));
    for k in [1, 3] {
        job.walls[k].pitch_deg = row.input("pitch_b_deg");
    }
    let timber = &mut job.timber;
    timber.rafter.size.thickness = row.input("common_thickness_mm");
    timber.rafter.centres = row.input("spacing_mm");
    timber.hip.size = job::Section { thickness: row.input("hip_thickness_mm"), depth: 300.0 };
    timber.ridge.size.thickness = row.input("ridge_thickness_mm");
    timber.ridge.size.depth = 300.0;
    job
}

fn hip(s: &Solution) -> &Member {
    spine_from(s, MemberKind::HipRafter, [0.0, 0.0])
}

/// Jacks of a wall on the hip, leaving out those that another timber cuts too.
fn jacks<'a>(s: &'a Solution, wall: &str) -> Vec<&'a Member> {
    let mark = &hip(s).mark;
    cut_against(s, wall, mark)
        .into_iter()
        .filter(|m| m.kind == MemberKind::JackRafter && m.cuts.iter().filter(|c| c.against.is_some()).count() == 1)
        .collect()
}

fn lines(tally: &mut Tally, row: &Entry, s: &Solution) {
    let hip = hip(s);
    let corner = Angle::deg(row.input("corner_deg"));
    let along_d = geometry::DVec2::new(corner.cos(), corner.sin());
    tally.figure(row, "delta_a_deg", "deg", angle_to_wall(dir(hip), geometry::DVec2::X));
    tally.figure(row, "delta_b_deg", "deg", angle_to_wall(dir(hip), along_d));
    tally.figure(row, "hip_pitch_deg", "deg", hip.pitch_deg);
    tally.figure(row, "rise_mm", "mm", rise(hip));
    tally.figure(row, "run_b_mm", "mm", along_d.perp_dot(head(hip)).abs());
    tally.figure(row, "hip_true_mm", "mm", hip.true_length_mm);
    tally.figure(row, "hip_plan_mm", "mm", run(hip));
    tally.figure(row, "dihedral_deg", "deg", dihedral(face(s, "A"), face(s, "D")));
    let whole = |wall: &str, kind: MemberKind, want: f64| {
        let lengths: Vec<f64> = of_kind(s, kind)
            .into_iter()
            .filter(|m| m.wall.as_deref() == Some(wall))
            .map(|m| m.true_length_mm)
            .collect();
        worst(&lengths, want, wall)
    };
    tally.figure(row, "common_a_mm", "mm", whole("A", MemberKind::CommonRafter, row.want("common_a_mm")));
    tally.figure(row, "common_b_mm", "mm", whole("D", MemberKind::CrownRafter, row.want("common_b_mm")));
}

fn backed(tally: &mut Tally, row: &Entry, s: &Solution) {
    let hip = hip(s);
    let [left, right] = hip.backing_deg.expect("a backed hip has its angles");
    tally.figure(row, "backing_a_deg", "deg", right);
    tally.figure(row, "backing_b_deg", "deg", left);
    // The gauge line lies on the flanks, below the level of the arris on the centre line.
    for (side, key) in [(-1.0, "backing_gauge_a_mm"), (1.0, "backing_gauge_b_mm")] {
        let flank = side * hip.size.thickness_mm / 2.0;
        let top = hip
            .bench
            .points
            .iter()
            .filter(|p| (p[2] - flank).abs() < 1e-6)
            .map(|p| p[1])
            .fold(f64::NEG_INFINITY, f64::max);
        tally.figure(row, key, "mm", hip.size.depth_mm - top);
    }
}

fn jack_figures(tally: &mut Tally, row: &Entry, s: &Solution) {
    for (wall, side) in [("A", "a"), ("D", "b")] {
        let jacks = jacks(s, wall);
        let mut figure = |name: &str, unit: &str, read: &dyn Fn(&Member) -> f64| {
            let key = name.replace('#', side);
            let values: Vec<f64> = jacks.iter().map(|j| read(j)).collect();
            tally.figure(row, &key, unit, worst(&values, row.want(&key), &key));
        };
        let mark = &hip(s).mark;
        let cheek = |j: &Member| head_cut(j, mark).expect("jacks are cut against the hip").clone();
        figure("jack_edge_#_deg", "deg", &|j| 90.0 - cheek(j).edge_angle_deg);
        figure("jack_tilt_#_deg", "deg", &|j| cheek(j).saw.tilt_deg);
        figure("jack_short_#_mm", "mm", &|j| head_deduction(j)[0]);
        figure("jack_short_slope_#_mm", "mm", &|j| head_deduction(j)[1]);
    }
}

fn jack_steps(tally: &mut Tally, row: &Entry, centres: f64, keys: [&str; 2]) {
    let mut job = corner_job(row, if row.want("delta_a_deg") > STEEP { LARGER } else { 1.0 }, Ridge::AlongA);
    job.timber.rafter.centres = centres;
    let s = &solve(&job, &row.id);
    for (wall, key) in [("A", keys[0]), ("D", keys[1])] {
        let steps = steps(&jacks(s, wall), centres);
        tally.figure(row, key, "mm", worst(&steps, row.want(key), key));
    }
}

/// The flank of the last common of A, on the hip's right, or of D, on its
/// left, that the hip's double cheek lies against. Each is looked at where the
/// ridge runs along its own wall: at skew ends the cheek on the other side may
/// lie against the ridge, which runs on to carry the crown rafter.
fn crown_head(tally: &mut Tally, row: &Entry, s: &Solution, side: &str, [cheek, short]: [&str; 2]) {
    let hip = hip(s);
    let name = format!("head cheek, facing {side}");
    let edges: Vec<f64> = hip.cuts.iter().filter(|c| c.name == name).map(|c| 90.0 - c.edge_angle_deg).collect();
    tally.figure(row, cheek, "deg", worst(&edges, row.want(cheek), cheek));
    let taken: Vec<f64> = faces_named(hip, &name).into_iter().map(|f| level_from_head(hip, f)).collect();
    tally.figure(row, short, "mm", worst(&taken, row.want(short), short));
}

/// A single cheek against the side of the ridge.
fn ridge_head(tally: &mut Tally, row: &Entry, s: &Solution) {
    let hip = hip(s);
    let cut = head_cut_where(s, hip, |m| m.kind == MemberKind::RidgeBoard)
        .unwrap_or_else(|| panic!("{}: the hip is not cut against the ridge: {:?}", row.id, hip.cuts));
    tally.figure(row, "cheek_ridge_deg", "deg", 90.0 - cut.edge_angle_deg);
    tally.figure(row, "cheek_tilt_ridge_deg", "deg", cut.saw.tilt_deg);
    let [level, slope] = head_deduction(hip);
    tally.figure(row, "short_ridge_level_mm", "mm", level);
    tally.figure(row, "short_ridge_slope_mm", "mm", slope);
}

#[test]
fn every_row_is_met_by_a_solved_corner() {
    let rows = family("row-");
    assert_eq!(rows.len(), 14);
    let mut tally = Tally::default();
    for row in &rows {
        jack_steps(&mut tally, row, 400.0, ["jack_diff_a_mm", "jack_diff_b_mm"]);
        jack_steps(&mut tally, row, 600.0, ["jack_diff_600_a_mm", "jack_diff_600_b_mm"]);
        let mut job = corner_job(row, 1.0, Ridge::AlongA);
        job.timber.hip.edge = HipEdge::Backed;
        let s = solve(&job, &row.id);
        lines(&mut tally, row, &s);
        backed(&mut tally, row, &s);
        jack_figures(&mut tally, row, &s);
        crown_head(&mut tally, row, &s, "right", ["cheek_common_a_deg", "short_common_a_mm"]);
        let along_d = solve(&corner_job(row, 1.0, Ridge::AlongD), &row.id);
        crown_head(&mut tally, row, &along_d, "left", ["cheek_common_b_deg", "short_common_b_mm"]);

        job.timber.hip.edge = HipEdge::Dropped;
        let s = solve(&job, &row.id);
        // One timber has one drop: the larger of the two that its sides ask for.
        let drop = hip(&s).drop_mm.expect("a dropped hip has its drop");
        let (a, b) = (row.want("drop_a_mm"), row.want("drop_b_mm"));
        tally.figure(row, if a > b { "drop_a_mm" } else { "drop_b_mm" }, "mm", drop);
        // Half the thickness lies on each side of a centred hip's line.
        let [right, left] = reach_left(hip(&s));
        tally.check(row, "half thickness", (left + right).abs(), 0.0, row.tolerance_of("mm"));

        job.timber.hip.line = HipLine::SetOver;
        job.timber.hip.head = HipHead::Ridge;
        let s = solve(&job, &row.id);
        let [right, left] = reach_left(hip(&s));
        tally.figure(row, "offset_a_mm", "mm", -right);
        tally.figure(row, "offset_b_mm", "mm", left);
        tally.figure(row, "drop_shifted_mm", "mm", hip(&s).drop_mm.expect("a dropped hip has its drop"));
        ridge_head(&mut tally, row, &s);
    }
    tally.finish(&["row-"], 14 * FIGURES);
}

#[test]
fn every_entry_has_its_place() {
    let all = published::entries();
    let read = |file: &str| all.iter().filter(|e| published::home(&e.id) == Some(file)).count();
    assert_eq!(all.len(), 336);
    assert_eq!(["corner_rows", "edge_rows", "square_rows", "worked_examples"].map(read), [14, 26, 71, 44]);
    // What is left is of joints and wood that no roof shows a figure of.
    assert_eq!(all.iter().filter(|e| published::home(&e.id).is_none()).count(), 14);
}

#[test]
fn no_figure_of_a_row_is_passed_over() {
    for row in family("row-") {
        let all = row.expected.as_object().expect("a row has many figures").len();
        // Of the two drops only the larger one shows, and the check of a centred hip's halves is our own.
        assert_eq!(all - OF_OTHER_MEMBERS.len() - 1 + 1, FIGURES, "{}", row.id);
        for key in OF_OTHER_MEMBERS {
            assert!(row.expected.get(key).is_some(), "{} has no {key}", row.id);
        }
        assert!(
            (foot(hip(&solve(&corner_job(&row, 1.0, Ridge::AlongA), &row.id))) - geometry::DVec2::ZERO).length() < 1e-6
        );
    }
}
