//! What is fitted to the frame, and openings and dormers where they sensibly lie.

use super::outlines::Outline;
use super::timbers::Frame;
use super::walls::Walls;
use crate::Seed;
use core::fmt::Write as _;
use geometry::Angle;

pub(super) struct Extras {
    /// Lines under `[timber]`.
    pub(super) timber: String,
    /// Groups of their own.
    pub(super) placed: String,
}

/// How each member is fitted, in sizes that are usual; one line each, each once in so many houses.
fn members(seed: &mut Seed, outline: &Outline, walls: &Walls, frame: &Frame, placed: &mut String) -> String {
    let mut timber = String::new();
    // A purlin passes under every slope, and a window may not cut it.
    let open_slopes = placed.is_empty();
    let mut line = |seed: &mut Seed, once_in: u64, text: String| {
        let fitted = seed.once_in(once_in);
        if fitted {
            timber.push_str(&text);
            timber.push('\n');
        }
        fitted
    };
    let joist = seed.of([100.0, 125.0, 150.0, 200.0]);
    if line(seed, 3, format!("ceiling_joist = {{ size = [{}, {joist}] }}", frame.rafter[0]))
        && line(seed, 2, format!("binder = {{ size = [50, {}] }}", seed_depth(joist)))
    {
        line(seed, 2, "hanger = { size = [38, 100], centres = 1800 }".into());
    }
    let width = outline.ends.iter().map(|(_, width)| *width).fold(f64::INFINITY, f64::min);
    let rise = width / 2.0 * Angle::deg(walls.pitch).tan();
    let height = (rise * 0.55 / 50.0).floor() * 50.0;
    if height > 400.0 {
        let every = seed.of([1, 2, 3]);
        line(seed, 4, format!("collar = {{ size = [47, 150], height = {height}, every = {every} }}"));
    }
    let set = seed.of(["plumb", "square"]);
    if open_slopes
        && line(seed, 5, format!("purlin = {{ size = [75, 175], set = \"{set}\" }}"))
        && outline.shape == "rectangle"
    {
        let middle = |axis: usize| outline.corners.iter().map(|c| c[axis]).fold(0.0, f64::max) / 2.0;
        let (long, across) = (2.0 * middle(0), middle(1));
        if line(seed, 2, "strut = { size = [75, 100], centres = 1800 }".into()) {
            let _ = writeln!(placed, "[bearings]\nspine = {{ from = [0, {across}], to = [{long}, {across}] }}\n");
        }
    }
    line(seed, 3, "fascia = { size = [25, 200] }".into());
    line(seed, 4, "soffit = { size = [9, 350] }".into());
    line(seed, 4, "barge = { size = [25, 200] }".into());
    line(seed, 4, format!("ladder = {{ size = [47, 100], centres = {} }}", frame.centres));
    let rows = seed.of([1, 2]);
    line(seed, 5, format!("noggin = {{ size = [47, 100], rows = {rows} }}"));
    if line(seed, 8, "angle_tie = { size = [75, 100] }".into()) {
        line(seed, 2, "dragon_tie = { size = [75, 100] }".into());
    }
    let longest = seed.of([4800, 5400, 6000]);
    let kind = seed.of(["fish-plates", "splayed", "hooked"]);
    line(seed, 3, format!("joint = {{ longest = {longest}, kind = \"{kind}\" }}"));
    timber.push('\n');
    timber
}

/// A binder is no shallower than the joists that hang on it.
fn seed_depth(joist: f64) -> f64 {
    joist.max(125.0)
}

/// Least slope left above and below an opening, in plan, mm.
const CLEAR: f64 = 500.0;

pub(super) fn extras(seed: &mut Seed, outline: &Outline, walls: &Walls, frame: &Frame) -> Extras {
    let mut placed = String::new();
    // With one pitch and one plate all round the ridge is in the middle, and what lies clear of it is known.
    let even = walls.own.iter().all(|own| own.pitch.is_none() && own.plate.is_none());
    for (k, deep) in &outline.open {
        let Some(own) = walls.own.get(*k).filter(|own| even && !own.gable) else { continue };
        let pitch = Angle::deg(own.pitch.unwrap_or(walls.pitch));
        let next = (k + 1) % outline.corners.len();
        let long = match (outline.corners.get(*k), outline.corners.get(next)) {
            (Some(a), Some(b)) => (a[0] - b[0]).abs() + (a[1] - b[1]).abs(),
            _ => continue,
        };
        let letter = job::wall_letter(*k);
        // Clear of hips at the ends, whatever their pitch.
        let (first, last) = (deep * 1.5 + CLEAR, long - deep * 1.5 - CLEAR);
        if seed.once_in(4) && last - first > 1000.0 {
            let width: f64 = seed.of([550.0, 660.0, 780.0, 940.0]);
            let height = seed.of([780.0, 980.0, 1180.0]);
            // A window lies square to the slope, its trimmers are as deep as the rafters, and several rafters cut want
            // several trimmers.
            let room = deep - 2.5 * CLEAR - 2.0 * frame.rafter[1] - height * pitch.cos();
            if room > 0.0 && width < last - first {
                let along = seed.stepped(first.ceil(), last - width, 50.0);
                let up = CLEAR + frame.rafter[1] + seed.between(0.0, room);
                let _ = writeln!(
                    placed,
                    "[openings.window-{letter}]\nkind = \"roof-window\"\nwall = \"{letter}\"\nalong = {along}\n\
                     up_plan = {up:.0}\nwidth = {width}\nheight = {height}\n"
                );
            }
        } else if seed.once_in(6) && last - first > 1500.0 {
            let width: f64 = seed.of([1200.0, 1400.0, 1500.0]);
            let back = seed.of([400.0, 500.0, 600.0]);
            let lean_to = seed.once_in(3);
            let own_pitch = if lean_to { 12.0 } else { walls.pitch };
            // Its plates lie over the backs of the rafters in front of it.
            let over = (frame.rafter[1] + frame.valley[1]) / pitch.cos() + frame.plate[0];
            let plate = (back * pitch.tan() + over + seed.of([500.0, 700.0, 900.0])).round();
            let reach = if lean_to {
                (plate - back * Angle::deg(own_pitch).tan()) / (pitch.tan() - Angle::deg(own_pitch).tan())
            } else {
                (plate + width / 2.0 * Angle::deg(own_pitch).tan()) / pitch.tan()
            };
            if reach < deep - 300.0 && width < last - first {
                let along = seed.stepped(first.ceil(), last - width, 50.0);
                let kind = if lean_to { "lean-to" } else { "gable" };
                let _ = writeln!(
                    placed,
                    "[dormers.dormer-{letter}]\nkind = \"{kind}\"\nwall = \"{letter}\"\nalong = {along}\n\
                     back = {back}\nwidth = {width}\nplate = {plate}\npitch = {own_pitch}\n"
                );
            }
        }
    }
    Extras { timber: members(seed, outline, walls, frame, &mut placed), placed }
}
