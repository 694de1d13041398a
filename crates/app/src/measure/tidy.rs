//! Sets a sketch right: numbers within bounds, closed plans anticlockwise.

use super::course::{double_area, lay, unit};
use super::too_many_walls;
use crate::refusal::Refusal;
use crate::views::{Diagonal, Sketch, SketchWall};
use geometry::DVec2;
use geometry::plan::SHORTEST_WALL;
use geometry::survey::{MOST_CORNERS, MOST_READINGS};

/// Longest wall that is drawn, mm: longer is typed.
pub(super) const LONGEST_DRAWN: f64 = 100_000.0;

/// How far from the origin of the ground the first corner may lie, mm: where
/// corners of a job file may.
const FARTHEST_START: f64 = geometry::plan::FARTHEST;

/// Fewest walls that enclose something.
pub(super) const FEWEST_WALLS: usize = 3;

/// The sketch, set right.
///
/// # Errors
/// When it has more walls than a survey takes.
pub(super) fn tidy(mut sketch: Sketch) -> Result<Sketch, Refusal> {
    if sketch.walls.len() > MOST_CORNERS {
        return Err(too_many_walls());
    }
    if !sketch.walls.is_empty() && sketch.start.is_none() {
        sketch.start = Some([0.0; 2]);
    }
    if let Some(start) = &mut sketch.start {
        *start = start.map(|at| if at.is_finite() { at.clamp(-FARTHEST_START, FARTHEST_START) } else { 0.0 });
    }
    for wall in &mut sketch.walls {
        wall.heading_deg = heading(wall.heading_deg);
        let drawn = if wall.drawn_mm.is_finite() { wall.drawn_mm } else { 0.0 };
        wall.drawn_mm = drawn.clamp(SHORTEST_WALL, LONGEST_DRAWN);
    }
    sketch.closed &= sketch.walls.len() >= FEWEST_WALLS;
    sketch.tolerance_mm = sketch.tolerance_mm.filter(|mm| *mm > 0.0 && mm.is_finite());
    keep_diagonals(&mut sketch);
    if sketch.closed && runs_clockwise(&sketch) {
        turn_round(&mut sketch);
    }
    Ok(sketch)
}

/// A direction from above -180° to 180°.
pub(super) fn heading(deg: f64) -> f64 {
    if !deg.is_finite() {
        return 0.0;
    }
    let turned = deg.rem_euclid(360.0);
    if turned > 180.0 { turned - 360.0 } else { turned }
}

/// How many corners a sketch has.
fn corners(sketch: &Sketch) -> usize {
    match (sketch.start, sketch.closed) {
        (None, _) => 0,
        (Some(_), true) => sketch.walls.len(),
        (Some(_), false) => sketch.walls.len() + 1,
    }
}

/// Drops diagonals that are between no two corners, or are there already.
fn keep_diagonals(sketch: &mut Sketch) {
    let corners = corners(sketch);
    let mut seen: Vec<(u32, u32)> = Vec::new();
    sketch.diagonals.retain(|Diagonal { from, to, .. }| {
        let pair = (*from.min(to), *from.max(to));
        let kept = pair.0 != pair.1
            && usize::try_from(pair.1).is_ok_and(|last| last < corners)
            && seen.len() + 2 * MOST_CORNERS < MOST_READINGS
            && !seen.contains(&pair);
        seen.extend(kept.then_some(pair));
        kept
    });
}

fn runs_clockwise(sketch: &Sketch) -> bool {
    let units: Vec<DVec2> = sketch.walls.iter().map(|wall| unit(wall.heading_deg)).collect();
    let lengths: Vec<f64> =
        sketch.walls.iter().map(|wall| super::reading::wall(&wall.tape).good().unwrap_or(wall.drawn_mm)).collect();
    double_area(&lay(DVec2::ZERO, &units, &lengths)) < 0.0
}

/// Lets the walls run the other way round; wall A stays wall A.
fn turn_round(sketch: &mut Sketch) {
    let count = sketch.walls.len();
    // Corner `k` of old is corner `1 - k` of new, counted round.
    let renumber = |corner: usize| (count + 1 - corner) % count.max(1);
    if let (Some(start), Some(first)) = (&mut sketch.start, sketch.walls.first()) {
        let length = super::reading::wall(&first.tape).good().unwrap_or(first.drawn_mm);
        *start = (DVec2::from_array(*start) + unit(first.heading_deg) * length).to_array();
    }
    let old = core::mem::take(&mut sketch.walls);
    let turned = |wall: &SketchWall| SketchWall { heading_deg: heading(wall.heading_deg + 180.0), ..wall.clone() };
    let backward = old.iter().take(1).chain(old.iter().skip(1).rev());
    sketch.walls = backward.map(turned).collect();
    // Angles stay with their corners, which the walls start from at the other end now.
    for (corner, wall) in sketch.walls.iter_mut().enumerate() {
        wall.turn = old.get(renumber(corner)).map(|wall| wall.turn.clone()).unwrap_or_default();
    }
    for diagonal in &mut sketch.diagonals {
        for corner in [&mut diagonal.from, &mut diagonal.to] {
            // Both are below the few walls of a sketch, so the casts keep them whole.
            *corner = renumber(*corner as usize) as u32;
        }
    }
}
