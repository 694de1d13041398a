//! Worked examples of books and manuals against solved roofs: each is framed
//! as the book has it, and its figure is read off the frame.

use crate::common;
use crate::published::{Entry, Tally, entries, home};
use crate::reading;
use crate::reading::{
    along_wall, cut_against, dir, faces_named, foot, head, head_cut, level_from_foot, of_kind, rise, run, solve,
    spine_from, steps, worst,
};
use geometry::{Angle, DVec2};
use job::{HipEdge, HipHead, Job, Section};
use roof::solution::{CutPlace, LineKind, Member, MemberKind, Solution};

const INCH: f64 = 25.4;
const FOOT: f64 = 12.0 * INCH;

/// Exact figures are written to five places; this allows for angles given as
/// `atan` in degrees and turned back.
const EXACT: f64 = 1e-5;

fn rectangle(length: f64, width: f64, pitch: f64) -> Job {
    common::job_over(vec![vec![[0.0, 0.0], [length, 0.0], [length, width], [0.0, width]]], pitch)
}

/// Pitch in degrees of a rise on a run.
fn slope(rise: f64, run: f64) -> f64 {
    Angle::from_rise_run(rise, run).to_deg()
}

/// Pitch of an entry that says how far it rises in 12, or else the one given.
fn pitch_of(entry: &Entry, or_else: f64) -> f64 {
    slope(entry.inputs["rise_in_per_12"].as_f64().unwrap_or(or_else), 12.0)
}

/// A square-cornered roof of a span in mm, three spans long at most.
fn of_span(entry: &Entry, span: f64, pitch: f64) -> Solution {
    solve(&rectangle(span + 3000.0, span, pitch), &entry.id)
}

fn hip(s: &Solution) -> &Member {
    spine_from(s, MemberKind::HipRafter, [0.0, 0.0])
}

fn common(s: &Solution) -> &Member {
    of_kind(s, MemberKind::CommonRafter)[0]
}

/// Run of the commons that a hip goes with: how far its head is from wall A.
fn run_of_a(s: &Solution) -> f64 {
    (head(hip(s)) - foot(hip(s))).y
}

fn jacks(s: &Solution) -> Vec<&Member> {
    cut_against(s, "A", &hip(s).mark).into_iter().filter(|m| m.kind == MemberKind::JackRafter).collect()
}

fn jack_edge(s: &Solution) -> f64 {
    let cut = head_cut(jacks(s)[0], &hip(s).mark).expect("a jack is cut against the hip");
    90.0 - cut.edge_angle_deg
}

/// A main range along x with a wing of the same pitch to the north, from the
/// middle of its side.
fn tee(entry: &Entry, [length, main, wing, projection]: [f64; 4], pitch: f64, gable: bool) -> Job {
    let sizes = [("length", length), ("main", main), ("wing", wing), ("projection", projection)];
    let text = job::shapes::new_job("T", "Tee", &sizes, false).expect("the sizes make a T");
    let mut job = job::read(&text).unwrap_or_else(|e| panic!("{}: {e}", entry.id));
    // The books' timbers come in one length.
    job.timber.joint = job::JointRules::NONE_NEEDED;
    job.pitch_deg = pitch;
    job.walls.iter_mut().for_each(|w| w.pitch_deg = pitch);
    job.walls[4].gable = gable;
    // Room for every pitch of the examples.
    job.timber.hip.size.depth = 300.0;
    job.timber.valley.size.depth = 300.0;
    job.timber.ridge.size.depth = 300.0;
    job
}

/// The shorter valley of an addition: the one that ends on the other.
fn short_valley(s: &Solution) -> &Member {
    let valleys = of_kind(s, MemberKind::ValleyRafter);
    assert_eq!(valleys.len(), 2);
    if run(valleys[0]) < run(valleys[1]) { valleys[0] } else { valleys[1] }
}

fn addition(entry: &Entry, rise: f64) -> Solution {
    let span = entry.input("span_ft") * FOOT;
    let job = tee(entry, [span + 20.0 * FOOT, span + 10.0 * FOOT, span, 4.0 * FOOT], pitch_of(entry, rise), true);
    solve(&job, &entry.id)
}

fn octagon(entry: &Entry, pitch: f64) -> Solution {
    let text = job::shapes::new_job("octagon", "Octagon", &[("width", 4800.0)], false).expect("an octagon");
    let mut job = job::read(&text).unwrap_or_else(|e| panic!("{}: {e}", entry.id));
    // The books' timbers come in one length.
    job.timber.joint = job::JointRules::NONE_NEEDED;
    job.pitch_deg = pitch;
    job.walls.iter_mut().for_each(|w| w.pitch_deg = pitch);
    job.timber.hip.edge = HipEdge::Backed;
    job.timber.hip.size =
        Section { thickness: entry.inputs["thickness_in"].as_f64().unwrap_or(2.0) * INCH, depth: 250.0 };
    solve(&job, &entry.id)
}

/// The hip of an octagon at the start of wall A, and the run of its commons.
fn octagon_hip(s: &Solution) -> (&Member, f64) {
    let hip = spine_from(s, MemberKind::HipRafter, s.plan.walls[0].from);
    (hip, (head(hip) - foot(hip)).y)
}

/// A square-cornered roof with this rise per 12, or 6.
fn plain(entry: &Entry) -> Solution {
    of_span(entry, 16.0 * FOOT, pitch_of(entry, 6.0))
}

fn metric(entry: &Entry) -> Solution {
    let span = entry.inputs["span_mm"].as_f64().unwrap_or(6400.0);
    let mut job = rectangle(span + 2000.0, span, slope(entry.input("rise_mm"), entry.input("run_mm")));
    job.timber.rafter.centres = 400.0;
    solve(&job, &entry.id)
}

/// Slope length of a hip's tail on its pitch line, from the plate corner to
/// where its two tail cuts meet.
fn hip_tail(hip: &Member) -> f64 {
    let cuts: Vec<f64> = hip
        .cuts
        .iter()
        .filter(|c| c.at == CutPlace::Tail)
        .flat_map(|c| faces_named(hip, &c.name))
        .map(|f| -level_from_foot(hip, f))
        .collect();
    assert_eq!(cuts.len(), 2, "a hip's tail is cut to two fascias");
    worst(&cuts, cuts[0], "tail cuts") / Angle::deg(hip.pitch_deg).cos()
}

fn nav(entry: &Entry) -> f64 {
    let span = |rise: f64| of_span(entry, entry.input("span_ft") * FOOT, pitch_of(entry, rise));
    match entry.id.as_str() {
        "nav-common-7-16" => common(&span(7.0)).true_length_mm / INCH,
        "nav-common-6-25" => common(&span(6.0)).true_length_mm / FOOT,
        "nav-common-8" => unit(entry, 12.0, |s| common(s).true_length_mm),
        "nav-hip-run" => run(hip(&span(8.0))) / FOOT,
        "nav-hip-unitrun" => unit(entry, entry.input("unit_run_in"), |s| run(hip(s))),
        "nav-hip-8" => unit(entry, 12.0, |s| hip(s).true_length_mm),
        "nav-hip-len" => hip(&span(8.0)).true_length_mm / FOOT,
        "nav-hip-tail" => {
            let mut job = rectangle(20.0 * FOOT, 14.0 * FOOT, pitch_of(entry, 8.0));
            job.eaves.overhang = entry.input("projection_in") * INCH;
            hip_tail(hip(&solve(&job, &entry.id))) / INCH
        }
        "nav-valley-run" => run(short_valley(&addition(entry, 9.0))) / FOOT,
        "nav-valley-9" => short_valley(&addition(entry, 9.0)).true_length_mm / FOOT,
        "nav-valley-9-in" => short_valley(&addition(entry, 9.0)).true_length_mm / INCH,
        _ => valley_jack(entry),
    }
}

/// What of a roof goes with so much run of its commons.
fn unit(entry: &Entry, of_run: f64, length: impl Fn(&Solution) -> f64) -> f64 {
    let s = plain(entry);
    length(&s) * of_run / run_of_a(&s)
}

/// A valley jack's length as a multiple of the common difference, the valley
/// jacks of the wing standing at whole centres from the point where its ridge
/// meets the valleys. The figure numbers them on both slopes of the wing; the
/// printed multiple says at which centre from that point a jack stands.
fn valley_jack(entry: &Entry) -> f64 {
    let centres = 16.0 * INCH;
    let job_for = |projection: f64| {
        let mut job = tee(entry, [40.0 * FOOT, 30.0 * FOOT, 16.0 * FOOT, projection], slope(8.0, 12.0), true);
        job.timber.rafter.centres = centres;
        job.verge.inset = 0.0;
        job
    };
    // The first rafter inside the gable is half a thickness in.
    let half = job_for(centres).timber.rafter.size.thickness / 2.0;
    let s = solve(&job_for(4.0 * centres + half), &entry.id);
    let valley = short_valley(&s);
    let top = s
        .lines
        .iter()
        .find(|l| l.kind == LineKind::Valley && (DVec2::new(l.from[0], l.from[1]) - foot(valley)).length() < 0.5)
        .map(|l| DVec2::new(l.to[0], l.to[1]))
        .expect("the surface has the valley");
    // The jacks of one slope of the wing, by their place along it.
    let all = of_kind(&s, MemberKind::ValleyJack);
    let east = |m: &&Member| dir(m).dot(DVec2::X) > 0.9;
    let mut slope: Vec<&Member> = all.into_iter().filter(east).collect();
    slope.sort_by(|a, b| along_wall(a).total_cmp(&along_wall(b)));
    let nth = entry.expected.as_f64().expect("a multiple");
    let found = slope.iter().find(|m| ((foot(m) - top).y.abs() - nth * centres).abs() < 1e-6);
    let differences = steps(&slope, centres);
    let difference = worst(&differences, differences[0], "common difference");
    found.unwrap_or_else(|| panic!("{}: no jack at that centre", entry.id)).true_length_mm / difference
}

fn metric_course(entry: &Entry) -> f64 {
    let s = metric(entry);
    let per_unit = |mm: f64| mm * entry.input("run_mm") / run_of_a(&s);
    match entry.id.as_str() {
        "met-common-unit" => per_unit(common(&s).true_length_mm),
        "met-common-len" => common(&s).true_length_mm,
        "met-hip-unit" => per_unit(hip(&s).true_length_mm),
        "met-hip-len" => hip(&s).true_length_mm,
        // The run of 3200 is eight centres, so jacks stand at whole centres from the corner.
        "met-jack1" => jacks(&s)[0].true_length_mm,
        "met-jack2" => jacks(&s)[1].true_length_mm,
        id => panic!("no reading for {id}"),
    }
}

fn books(entry: &Entry) -> f64 {
    match entry.id.as_str() {
        "grif-common" => {
            common(&of_span(entry, entry.input("span_ft") * FOOT, pitch_of(entry, 6.0))).true_length_mm / INCH
        }
        "grif-hip-frac" => unit(entry, entry.input("odd_in"), |s| run(hip(s))),
        "grif-oct-backing" => octagon_backing(entry),
        "cyc-hip-half" => unit(entry, entry.input("run_in"), |s| run(hip(s))),
        "rad-common" => {
            common(&of_span(entry, 2.0 * entry.input("run_ft") * FOOT, pitch_of(entry, 6.0))).true_length_mm / INCH
        }
        "rad-cripple-6" | "rad-cripple-10" => hip_valley_cripple(entry),
        "hod-jack-10" => {
            let s = plain(entry);
            let square = head_cut(jacks(&s)[0], &hip(&s).mark).expect("a jack is cut against the hip").edge_square;
            12.0 * square.rise / square.run
        }
        "hod-common-9" => unit(entry, 12.0, |s| common(s).true_length_mm),
        "hod-hip-9" => unit(entry, 12.0, |s| hip(s).true_length_mm),
        "hod-irr-hiplen" => hip(&to_a_point(entry)).true_length_mm / FOOT,
        // Wall A is the long one, whose rafters are steep and short.
        "hod-irr-jackA" => jack_edge(&to_a_point(entry)),
        id => panic!("no reading for {id}"),
    }
}

/// A hipped roof of unequal pitches whose four hips meet in one point.
fn to_a_point(entry: &Entry) -> Solution {
    let [a, b, rise] = ["run_a_ft", "run_b_ft", "rise_ft"].map(|key| entry.input(key));
    let mut job = rectangle(2.0 * b * FOOT, 2.0 * a * FOOT, slope(rise, a));
    for k in [1, 3] {
        job.walls[k].pitch_deg = slope(rise, b);
    }
    job.timber.hip.size.depth = 300.0;
    let s = solve(&job, &entry.id);
    assert!(s.lines.iter().all(|l| l.kind != LineKind::Ridge), "the hips meet in a point");
    s
}

/// Backing gauge of an octagon's hip, along the seat line.
fn octagon_backing(entry: &Entry) -> f64 {
    let s = octagon(entry, slope(8.0, 12.0));
    let (hip, _) = octagon_hip(&s);
    let flank = hip.size.thickness_mm / 2.0;
    let tops = hip.bench.points.iter().filter(|p| (p[2] - flank).abs() < 1e-6).map(|p| p[1]);
    // The gauge is square to the edge; level it is longer by 1 / sin(pitch of the hip).
    (hip.size.depth_mm - tops.fold(0.0, f64::max)) / Angle::deg(hip.pitch_deg).sin() / INCH
}

/// Cripples between the hip at the end of a wing and the valley at its root.
fn hip_valley_cripple(entry: &Entry) -> f64 {
    let plate = entry.input("plate_ft") * FOOT;
    let job = tee(entry, [60.0 * FOOT, 40.0 * FOOT, 30.0 * FOOT, plate], pitch_of(entry, 6.0), false);
    let s = solve(&job, &entry.id);
    let lengths: Vec<f64> = of_kind(&s, MemberKind::CrippleRafter)
        .into_iter()
        // The two sides of the wing; the main range has longer ones.
        .filter(|m| matches!(m.wall.as_deref(), Some("D" | "F")))
        .filter(|m| cut_by(&s, m, MemberKind::HipRafter) && cut_by(&s, m, MemberKind::ValleyRafter))
        .map(|m| m.true_length_mm / INCH)
        .collect();
    worst(&lengths, entry.expected.as_f64().expect("one figure"), &entry.id)
}

fn cut_by(s: &Solution, m: &Member, kind: MemberKind) -> bool {
    m.cuts.iter().filter_map(|c| c.against.as_deref()).any(|mark| reading::member(s, mark).kind == kind)
}

fn octagons(entry: &Entry) -> f64 {
    let s = octagon(entry, pitch_of(entry, 8.0));
    let (hip, apothem) = octagon_hip(&s);
    match entry.id.as_str() {
        "oct-run" => run(hip) * 12.0 / apothem,
        "oct-tan" => s.plan.walls[0].length_mm / 2.0 * 12.0 / apothem,
        "oct-jack-8" | "oct-jack-10" => {
            let jack = cut_against(&s, "A", &hip.mark).into_iter().find(|m| m.kind == MemberKind::JackRafter);
            90.0 - head_cut(jack.expect("a jack on wall A"), &hip.mark).expect("cut against the hip").edge_angle_deg
        }
        id => panic!("no reading for {id}"),
    }
}

fn ridges_and_hips(entry: &Entry) -> f64 {
    match entry.id.as_str() {
        "backing-6" => {
            let s = plain(entry);
            let sides = hip(&s).backing_deg.expect("a backed hip has its angles");
            worst(&sides, entry.expected.as_f64().expect("one figure"), "both sides")
        }
        "drop-8" => {
            let mut job = rectangle(20.0 * FOOT, 14.0 * FOOT, pitch_of(entry, 8.0));
            job.timber.hip.edge = HipEdge::Dropped;
            job.timber.hip.size.thickness = entry.input("thickness_in") * INCH;
            hip(&solve(&job, &entry.id)).drop_mm.expect("a dropped hip has its drop") / INCH
        }
        "ridge-line" => {
            let job = rectangle(entry.input("length_ft") * FOOT, entry.input("width_ft") * FOOT, 30.0);
            let s = solve(&job, &entry.id);
            let ridges: Vec<f64> =
                s.lines.iter().filter(|l| l.kind == LineKind::Ridge).map(|l| l.length_mm / FOOT).collect();
            assert_eq!(ridges.len(), 1);
            ridges[0]
        }
        "ridge-rise" => {
            let run_in = entry.input("run_ft") * 12.0;
            let s = of_span(entry, 2.0 * run_in * INCH, slope(entry.input("rise_in"), run_in));
            rise(common(&s)) * 12.0 / run(common(&s))
        }
        "ridge-single-cheek" => {
            ridge_addition(entry, HipHead::Ridge, [entry.input("hip_t"), entry.input("ridge_t"), 38.0])
        }
        "ridge-double-cheek" => ridge_addition(entry, HipHead::Crown, [38.0, 38.0, entry.input("common_t")]),
        "au-hip-plan-per-m" => unit(entry, 1.0, |s| run(hip(s))),
        id => panic!("no reading for {id}"),
    }
}

/// How much longer a ridge board is at each end than its line, mm.
fn ridge_addition(entry: &Entry, head: HipHead, [hip, ridge, common]: [f64; 3]) -> f64 {
    let mut job = rectangle(9000.0, 5000.0, 35.0);
    job.timber.hip.head = head;
    job.timber.hip.size.thickness = hip;
    job.timber.ridge.size.thickness = ridge;
    job.timber.rafter.size.thickness = common;
    let s = solve(&job, &entry.id);
    let ridges = of_kind(&s, MemberKind::RidgeBoard);
    assert_eq!(ridges.len(), 1);
    (ridges[0].cut_length_mm - ridges[0].true_length_mm) / 2.0
}

/// The figure of an example, off a solved roof.
fn figure(entry: &Entry) -> f64 {
    match entry.id.split('-').next().expect("ids have a family") {
        "nav" => nav(entry),
        "met" => metric_course(entry),
        "grif" | "cyc" | "rad" | "hod" => books(entry),
        "oct" => octagons(entry),
        _ => ridges_and_hips(entry),
    }
}

#[test]
fn solved_roofs_say_what_the_books_say() {
    let mut tally = Tally::default();
    let examples: Vec<Entry> = entries().into_iter().filter(|e| home(&e.id) == Some("worked_examples")).collect();
    for entry in &examples {
        tally.alone(entry, EXACT, figure(entry));
    }
    let with_exact = examples.iter().filter(|e| e.recomputed.is_some()).count();
    let starts = ["nav-", "met-", "grif-", "cyc-", "rad-", "hod-", "oct-", "backing-", "drop-", "ridge-", "au-"];
    tally.finish(&starts, 44 + with_exact);
    assert_eq!(examples.len(), 44);
}
