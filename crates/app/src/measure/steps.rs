//! Steps of drawing: touches become walls.

use super::course::{in_steps, unit};
use super::frame::Frame;
use super::plan::{HALF_SQUARE, Plan};
use super::tidy::{FEWEST_WALLS, LONGEST_DRAWN, heading};
use super::touch::{self, Part};
use super::{reading, too_many_walls};
use crate::refusal::Refusal;
use crate::views::{Diagonal, Sketch, SketchStep, SketchWall, Snap};
use geometry::survey::MOST_CORNERS;
use geometry::{Angle, DVec2};
use picture::Pt;

/// Walls are drawn in steps of this, mm: a finger draws no finer.
const DRAWN_STEP: f64 = 50.0;

/// Shortest wall that a finger draws, mm: nearer than that to the last corner
/// it means the corner.
const LEAST_DRAWN: f64 = 200.0;

/// A wall ends level with another corner when it comes so near to that, px.
const LEVEL_WITH: f64 = 16.0;

/// The wall that closes a plan is square when it is so by this, degrees: the
/// walls before it were drawn by finger.
const CLOSES_SQUARE: f64 = 12.0;

/// Length of a wall that is drawn without pointing and without a length, mm.
const DRAWN_OTHERWISE: f64 = 3_000.0;

/// Where corner 1 lies when walls are drawn without pointing, mm.
const START_OTHERWISE: [f64; 2] = [2_000.0, 2_000.0];

/// Corners that lie nearer are one, mm: a finger does not part them.
const SAME_PLACE: f64 = 1.0;

/// Takes a step. Gives what the touch met, or what the step put in.
///
/// # Errors
/// When the step can't be taken.
pub(super) fn take(
    sketch: &mut Sketch,
    step: &SketchStep,
    plan: &Plan,
    frame: &Frame,
) -> Result<Option<Part>, Refusal> {
    match step {
        SketchStep::Touch { at, snap } => touch(sketch, *at, *snap, plan, frame),
        SketchStep::Drag { at, snap } => Ok(drag(sketch, *at, *snap, frame)),
        SketchStep::Ahead { turn_deg, tape } => ahead(sketch, *turn_deg, tape).map(Some),
        SketchStep::Close => close(sketch, plan).map(Some),
        SketchStep::Back => {
            back(sketch);
            Ok(None)
        }
        SketchStep::Diagonal { from, to } => diagonal(sketch, *from, *to, plan).map(Some),
        SketchStep::DropDiagonal { number } => {
            let number = *number as usize;
            if number < sketch.diagonals.len() {
                sketch.diagonals.remove(number);
            }
            Ok(None)
        }
    }
}

fn touch(sketch: &mut Sketch, at: Pt, snap: Snap, plan: &Plan, frame: &Frame) -> Result<Option<Part>, Refusal> {
    let met = touch::at(sketch, plan, frame, at);
    let closes = met == Some(Part::corner(0)) && !plan.closed && sketch.walls.len() + 1 >= FEWEST_WALLS;
    if closes {
        return close(sketch, plan).map(Some);
    }
    if met.is_some() || sketch.closed {
        return Ok(met);
    }
    if sketch.start.is_none() {
        sketch.start = Some(frame.mm(at).map(|mm| (mm / DRAWN_STEP).round() * DRAWN_STEP).to_array());
        return Ok(Some(Part::corner(0)));
    }
    room_for_a_wall(sketch)?;
    let Some(wall) = toward(&plan.corners, base(sketch), frame.mm(at), snap, frame.scale) else { return Ok(None) };
    sketch.walls.push(wall);
    Ok(Some(Part::wall(sketch.walls.len() - 1)))
}

/// The direction that others are square to.
fn base(sketch: &Sketch) -> f64 {
    sketch.walls.first().map_or(0.0, |wall| wall.heading_deg)
}

/// The wall from the last of the corners toward a place, if that is far enough away.
fn toward(corners: &[DVec2], base: f64, place: DVec2, snap: Snap, scale: f64) -> Option<SketchWall> {
    let (last, others) = corners.split_last()?;
    let way = place - *last;
    let raw = Angle::from_rise_run(way.y, way.x).to_deg();
    let near = |step: f64| base + ((raw - base) / step).round() * step;
    let heading_deg = heading(match snap {
        Snap::Square => near(2.0 * HALF_SQUARE),
        Snap::Half => near(HALF_SQUARE),
        Snap::Free => raw.round(),
    });
    let along = unit(heading_deg);
    let reach = way.dot(along);
    let level = others
        .iter()
        .map(|corner| (*corner - *last).dot(along))
        .filter(|length| (length - reach).abs() * scale <= LEVEL_WITH && *length >= LEAST_DRAWN)
        .min_by(|a, b| (a - reach).abs().total_cmp(&(b - reach).abs()));
    let drawn_mm = level.unwrap_or_else(|| (reach / DRAWN_STEP).round() * DRAWN_STEP).min(LONGEST_DRAWN);
    (drawn_mm >= LEAST_DRAWN).then(|| SketchWall { heading_deg, drawn_mm, ..SketchWall::default() })
}

/// Draws the last wall anew, to another place.
fn drag(sketch: &mut Sketch, at: Pt, snap: Snap, frame: &Frame) -> Option<Part> {
    if sketch.closed {
        return None;
    }
    let last = sketch.walls.pop()?;
    let before = Plan::of(sketch);
    let drawn = toward(&before.corners, base(sketch), frame.mm(at), snap, frame.scale);
    // Too near to the corner before: the wall stays as it was.
    sketch.walls.push(match drawn {
        Some(drawn) => SketchWall { tape: last.tape, turn: last.turn, ..drawn },
        None => last,
    });
    Some(Part::wall(sketch.walls.len() - 1))
}

fn ahead(sketch: &mut Sketch, turn_deg: f64, tape: &str) -> Result<Part, Refusal> {
    if sketch.closed {
        return Err(Refusal::new(
            "plan-closed",
            "The plan is closed, so no wall can go on from its last corner",
            "Take the last wall back first",
        ));
    }
    room_for_a_wall(sketch)?;
    sketch.start.get_or_insert(START_OTHERWISE);
    let before = sketch.walls.last().map_or(0.0, |wall| wall.heading_deg);
    sketch.walls.push(SketchWall {
        heading_deg: heading(before + heading(turn_deg)),
        known: true,
        drawn_mm: reading::wall(tape).good().unwrap_or(DRAWN_OTHERWISE),
        tape: tape.to_owned(),
        turn: String::new(),
    });
    Ok(Part::wall(sketch.walls.len() - 1))
}

fn close(sketch: &mut Sketch, plan: &Plan) -> Result<Part, Refusal> {
    let too_few = || {
        Refusal::new(
            "too-few-walls",
            "Two walls and the way back are the fewest that close a plan",
            "Draw another wall first",
        )
    };
    if sketch.closed {
        return Ok(Part::corner(0));
    }
    let (Some(first), Some(last)) = (plan.corners.first(), plan.corners.last()) else { return Err(too_few()) };
    let way = *first - *last;
    if way.length() < SAME_PLACE {
        if sketch.walls.len() < FEWEST_WALLS {
            return Err(too_few());
        }
        sketch.closed = true;
        return Ok(Part::wall(sketch.walls.len() - 1));
    }
    if sketch.walls.len() + 1 < FEWEST_WALLS {
        return Err(too_few());
    }
    room_for_a_wall(sketch)?;
    let base = base(sketch);
    let raw = Angle::from_rise_run(way.y, way.x).to_deg();
    let square = base + ((raw - base) / HALF_SQUARE).round() * HALF_SQUARE;
    // A straight wall on would be none of its own, and back again no plan.
    let turns = sketch.walls.last().is_some_and(|before| !in_steps(square, before.heading_deg, 180.0));
    let squared = (raw - square).abs() <= CLOSES_SQUARE && turns;
    sketch.walls.push(SketchWall {
        heading_deg: heading(if squared { square } else { raw }),
        drawn_mm: way.length(),
        ..SketchWall::default()
    });
    sketch.closed = true;
    // The walls may be turned round after this; the last one drawn becomes the second.
    let clockwise = super::course::double_area(&plan.corners) < 0.0;
    Ok(Part::wall(if clockwise { 1 } else { sketch.walls.len() - 1 }))
}

fn back(sketch: &mut Sketch) {
    if sketch.walls.pop().is_none() {
        sketch.start = None;
    }
    sketch.closed = false;
}

fn diagonal(sketch: &mut Sketch, from: u32, to: u32, plan: &Plan) -> Result<Part, Refusal> {
    let (from, to) = (from.min(to), from.max(to));
    let known = sketch.diagonals.iter().position(|line| (line.from.min(line.to), line.from.max(line.to)) == (from, to));
    if let Some(known) = known {
        return Ok(Part::diagonal(known));
    }
    if from == to || to as usize >= plan.corners.len() {
        return Err(Refusal::new(
            "no-diagonal",
            "A diagonal runs between two corners of the plan",
            "Touch one corner, then another",
        ));
    }
    if to - from == 1 || (plan.closed && from == 0 && to as usize + 1 == plan.corners.len()) {
        return Err(Refusal::new(
            "diagonal-is-a-wall",
            format!("From corner {} to corner {} runs a wall", from + 1, to + 1),
            "Touch the wall to type its length",
        ));
    }
    sketch.diagonals.push(Diagonal { from, to, tape: String::new() });
    Ok(Part::diagonal(sketch.diagonals.len() - 1))
}

fn room_for_a_wall(sketch: &Sketch) -> Result<(), Refusal> {
    if sketch.walls.len() < MOST_CORNERS { Ok(()) } else { Err(too_many_walls()) }
}
