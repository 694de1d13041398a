//! A roof turned, mirrored or made twice as large is the same roof turned,
//! mirrored or twice as large.

use super::roofs::{shape, sized};
use crate::common::turned_exactly;
use crate::reading::solve;
use job::{Job, Spread};
use roof::solution::{Member, MemberKind, Solution};

/// Lengths of the same timber in a turned roof agree within this, mm.
const SAME: f64 = 0.3;

fn alike(a: &Member, b: &Member, scale: f64, mirrored: bool) -> bool {
    let near = |x: f64, y: f64| (x * scale - y).abs() < SAME;
    let side = if mirrored { -1.0 } else { 1.0 };
    let lies_on = |p: &[f64; 3], q: &[f64; 3]| near(p[0], q[0]) && near(p[1], q[1]) && near(side * p[2], q[2]);
    a.kind == b.kind
        && near(a.true_length_mm, b.true_length_mm)
        && near(a.cut_length_mm, b.cut_length_mm)
        && near(a.stock_length_mm, b.stock_length_mm)
        && a.bench.points.iter().all(|p| b.bench.points.iter().any(|q| lies_on(p, q)))
        && b.bench.points.iter().all(|q| a.bench.points.iter().any(|p| lies_on(p, q)))
}

/// What of one roof has nothing like it in the other. Plates are not looked at
/// in a mirror: each runs through at the end of its wall.
fn unlike(name: &str, a: &Solution, b: &Solution, scale: f64, mirrored: bool) -> Vec<String> {
    let looked_at = |m: &&Member| !(mirrored && m.kind == MemberKind::WallPlate);
    let mut left: Vec<&Member> = b.members.iter().filter(looked_at).collect();
    let mut out = Vec::new();
    for m in a.members.iter().filter(looked_at) {
        match left.iter().position(|o| alike(m, o, scale, mirrored)) {
            Some(k) => drop(left.swap_remove(k)),
            None => out.push(format!("{name}: nothing like {}, {} at {:?}", m.mark, m.kind.name(), m.axis.from)),
        }
    }
    out.extend(
        left.into_iter().map(|m| format!("{name}: only there is {}, {} at {:?}", m.mark, m.kind.name(), m.axis.from)),
    );
    out
}

fn none(unlike: &[String]) {
    assert!(unlike.is_empty(), "{} timbers differ:\n{}", unlike.len(), unlike.join("\n"));
}

/// Shapes with sizes at which no rafter stands exactly abreast of a
/// re-entrant corner.
const SHAPES: [(&str, &[(&str, f64)]); 9] = [
    ("rectangle", &[]),
    ("L", &[]),
    ("T", &[]),
    ("U", &[("wing", 4230.0)]),
    ("H", &[("wing", 4430.0), ("bar", 4060.0)]),
    ("cross", &[]),
    ("octagon", &[]),
    ("courtyard", &[]),
    ("bay", &[("bay", 3030.0)]),
];

#[test]
fn turning_the_plan_changes_no_timber() {
    let mut out = Vec::new();
    for (name, sizes) in SHAPES {
        for gables in [false, name != "octagon" && name != "courtyard"] {
            let job = sized(name, sizes, gables);
            let still = solve(&job, name);
            for degrees in [90.0, 17.0] {
                let mut turned = job.clone();
                turned.loops.iter_mut().for_each(|ring| *ring = turned_exactly(ring, degrees));
                let s = solve(&turned, &format!("{name} turned by {degrees}°"));
                out.extend(unlike(&format!("{name} turned by {degrees}°"), &still, &s, 1.0, false));
            }
        }
    }
    none(&out);
}

#[test]
fn a_rafter_abreast_of_a_corner_is_the_same_however_the_plan_lies() {
    let mut out = Vec::new();
    // Default sizes at which rafters stand exactly abreast of re-entrant corners.
    for name in ["U", "H", "bay"] {
        let job = shape(name, false);
        let still = solve(&job, name);
        for degrees in [90.0, 17.0] {
            let mut turned = job.clone();
            turned.loops.iter_mut().for_each(|ring| *ring = turned_exactly(ring, degrees));
            let s = solve(&turned, &format!("{name} turned by {degrees}°"));
            out.extend(unlike(&format!("{name} turned by {degrees}°"), &still, &s, 1.0, false));
        }
    }
    none(&out);
}

/// The job seen in a mirror: x reversed, walls in reverse order.
fn mirror(job: &Job) -> Job {
    let mut out = job.clone();
    let mut first = 0;
    for ring in &mut out.loops {
        let n = ring.len();
        ring.reverse();
        ring.iter_mut().for_each(|p| p[0] = -p[0]);
        // Wall k of the mirrored ring runs between the images of corners n-1-k and n-2-k.
        let walls: Vec<_> = (0..n).map(|k| job.walls[first + (2 * n - 2 - k) % n].clone()).collect();
        for (k, wall) in walls.into_iter().enumerate() {
            let letter = job.walls[first + k].letter.clone();
            out.walls[first + k] = job::Wall { letter, ..wall };
        }
        first += n;
    }
    out
}

#[test]
fn a_mirrored_plan_has_mirrored_timbers() {
    // Left out: T, H and cross, where the order of walls decides which of two
    // equal valleys runs on, and octagon, where it decides which hips butt.
    for name in ["rectangle", "L", "U", "courtyard", "bay"] {
        for gables in [false, name != "courtyard"] {
            let mut job = shape(name, gables);
            // Bays that do not depend on the side they are counted from.
            job.timber.rafter.spread = Spread::Equal;
            let [a, b] = [solve(&job, name), solve(&mirror(&job), &format!("{name} mirrored"))];
            none(&unlike(&format!("{name} mirrored"), &a, &b, 1.0, true));
        }
    }
}

/// The same job at another size.
fn scaled(job: &Job, by: f64) -> Job {
    let mut out = job.clone();
    out.loops.iter_mut().flatten().flatten().for_each(|v| *v *= by);
    let t = &mut out.timber;
    for size in [&mut t.rafter.size, &mut t.hip.size, &mut t.valley.size, &mut t.ridge.size, &mut t.plate] {
        size.thickness *= by;
        size.depth *= by;
    }
    for v in [&mut t.rafter.centres, &mut t.rafter.birdsmouth] {
        *v *= by;
    }
    let lengths = [&mut out.eaves.overhang, &mut out.eaves.fascia_depth, &mut out.verge.overhang, &mut out.verge.inset];
    lengths.into_iter().for_each(|v| *v *= by);
    out
}

#[test]
fn doubling_all_sizes_doubles_the_timbers() {
    for (name, sizes) in [
        // Spans of so many centres that no jack is near the least run, which is not doubled.
        ("rectangle", [("length", 9000.0), ("width", 5600.0)].as_slice()),
        ("L", [("length", 10_000.0), ("width", 9000.0), ("main", 5600.0), ("wing", 4800.0)].as_slice()),
    ] {
        for gables in [false, true] {
            let job = sized(name, sizes, gables);
            let [a, b] = [solve(&job, name), solve(&scaled(&job, 2.0), &format!("{name} doubled"))];
            none(&unlike(&format!("{name} doubled"), &a, &b, 2.0, false));
        }
    }
}
