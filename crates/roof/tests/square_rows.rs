//! The framing-square tables (`sq-*`) of the reference file against solved
//! roofs: a square-cornered roof in feet and inches for every rise in 12.

use crate::common;
use crate::published::{Entry, Tally, family};
use crate::reading::{cut_against, head_cut, head_cut_where, of_kind, run, solve, spine_from, steps, worst};
use geometry::Angle;
use roof::solution::{Cut, Member, MemberKind, Solution};

const INCH: f64 = 25.4;
const FOOT: f64 = 12.0 * INCH;

/// The exact figures are written to four places.
const EXACT: f64 = 1e-4;

/// One rise, framed at 16 and at 24 in centres.
struct Roofs {
    at_16: Solution,
    at_24: Solution,
}

fn roofs(rise: f64) -> Roofs {
    let plan = vec![[0.0, 0.0], [22.0 * FOOT, 0.0], [22.0 * FOOT, 16.0 * FOOT], [0.0, 16.0 * FOOT]];
    let mut job = common::job_over(vec![plan], Angle::from_rise_run(rise, 12.0).to_deg());
    let mut at = |inches: f64| {
        job.timber.rafter.centres = inches * INCH;
        solve(&job, &format!("rise {rise} in 12"))
    };
    Roofs { at_16: at(16.0), at_24: at(24.0) }
}

fn hip(s: &Solution) -> &Member {
    spine_from(s, MemberKind::HipRafter, [0.0, 0.0])
}

fn common(s: &Solution) -> &Member {
    of_kind(s, MemberKind::CommonRafter)[0]
}

fn jacks(s: &Solution) -> Vec<&Member> {
    cut_against(s, "A", &hip(s).mark).into_iter().filter(|m| m.kind == MemberKind::JackRafter).collect()
}

fn jack_step(s: &Solution, inches: f64) -> f64 {
    let steps = steps(&jacks(s), inches * INCH);
    worst(&steps, steps[0], "steps of jacks") / INCH
}

fn jack_cheek(s: &Solution) -> &Cut {
    head_cut(jacks(s)[0], &hip(s).mark).expect("a jack is cut against the hip")
}

fn hip_cheek(s: &Solution) -> &Cut {
    head_cut_where(s, hip(s), |m| m.wall.as_deref() == Some("A")).expect("a hip is cut against the last common")
}

/// What the square reads on the blade with 12 on the tongue, the cut being
/// marked along the tongue.
fn on_12(cut: &Cut) -> f64 {
    12.0 * cut.edge_square.run / cut.edge_square.rise
}

/// What a solved roof says for a column of the square.
fn column(name: &str, roofs: &Roofs) -> f64 {
    let s = &roofs.at_16;
    match name {
        "common" | "common_per_ft" => common(s).true_length_mm * 12.0 / run(common(s)),
        "hip" | "hip_per_ft" => hip(s).true_length_mm * 12.0 / (hip(s).axis.to[1] - hip(s).axis.from[1]),
        "jack16" | "jack_diff_16" => jack_step(s, 16.0),
        "jack24" | "jack_diff_24" => jack_step(&roofs.at_24, 24.0),
        "deg" | "pitch_deg" => common(s).pitch_deg,
        "hip_pitch_deg" => hip(s).pitch_deg,
        "jackcut" | "jack_side_cut_on_12" => on_12(jack_cheek(s)),
        "hipcut" | "hip_side_cut_on_12" => on_12(hip_cheek(s)),
        "jack_side_cut_deg_from_length" => 90.0 - jack_cheek(s).edge_angle_deg,
        "hip_side_cut_deg_from_length" => 90.0 - hip_cheek(s).edge_angle_deg,
        _ => panic!("no column {name}"),
    }
}

fn compare(tally: &mut Tally, entry: &Entry, roofs: &Roofs) {
    match entry.expected.as_object() {
        Some(figures) => {
            for key in figures.keys() {
                tally.figure(entry, key, "any", column(key, roofs));
            }
        }
        None => {
            let name = entry.id.split('-').nth(1).expect("ids are sq-COLUMN-RISE");
            tally.alone(entry, EXACT, column(name, roofs));
        }
    }
}

#[test]
fn the_square_reads_what_solved_roofs_say() {
    let all = family("sq-");
    assert_eq!(all.len(), 71);
    let mut tally = Tally::default();
    for rise in 2..=18 {
        let roofs = roofs(f64::from(rise));
        let of_rise = all.iter().filter(|e| e.input("rise_in_per_12") == f64::from(rise));
        of_rise.for_each(|entry| compare(&mut tally, entry, &roofs));
    }
    // Nine whole columns of ten figures; the others printed and exact.
    let whole = all.iter().filter(|e| e.expected.is_object()).count();
    tally.finish(&["sq-"], whole * 10 + (71 - whole) * 2);
}
