//! The picture of a sketch, for a phone.

use super::course::double_area;
use super::frame::Frame;
use super::label::along;
use super::plan::{Known, NOTHING, Plan};
use super::reading::Reading;
use super::touch::Part;
use super::words;
use crate::views::{Corner, ReadingLine, Sketch};
use geometry::DVec2;
use geometry::survey::Measure;
use job::wall_letter;
use job::written::Lengths;
use picture::{Anchor, Ink, Part as Drawn, Picture, Pt, Shape};

/// Height of figures, px.
pub(super) const FIGURE: f64 = 20.0;

/// Width of a plate in the picture, px.
const PLATE: f64 = 9.0;

/// Radius of a corner, px.
const CORNER: f64 = 6.0;

/// How far the number of a corner stands from it, px.
const NUMBER_OFF: f64 = 26.0;

/// How long a gap is drawn, px: at least, so that it is seen, and at most.
const GAP: [f64; 2] = [26.0, 60.0];

/// How far the figure of a gap stands from its corner, px: past its number.
const GAP_LABEL: f64 = 58.0;

/// How many times a gap is exaggerated between these.
const GAP_TIMES: f64 = 40.0;

/// Where the length of a diagonal stands, as a part of it: not in the middle,
/// where diagonals cross.
const DIAGONAL_LABEL: f64 = 0.33;

/// Lines of the ground are so far apart, mm, or five times that where they
/// would stand closer than [`CLOSEST_LINES`].
const GROUND_STEP: f64 = 1000.0;

/// Closest lines of the ground, px.
const CLOSEST_LINES: f64 = 12.0;

/// Most lines of the ground each way; past it the ground is left plain.
const MOST_LINES: f64 = 80.0;

/// Draws the sketch.
pub(super) fn picture(sketch: &Sketch, plan: &Plan, frame: &Frame, closing: &str, lengths: Lengths) -> Picture {
    let mut parts = Vec::new();
    if !plan.closed {
        ground(&mut parts, frame);
    }
    for (k, line) in sketch.diagonals.iter().enumerate() {
        diagonal(&mut parts, plan, frame, k, (line.from as usize, line.to as usize), lengths);
    }
    for wall in 0..plan.units.len() {
        plate(&mut parts, plan, frame, wall, lengths);
    }
    gap(&mut parts, plan, frame, lengths);
    for corner in 0..plan.corners.len() {
        number(&mut parts, plan, frame, corner);
    }
    Picture { width: frame.size[0], height: frame.size[1], spoken: spoken(plan, closing, lengths), parts }
}

fn spoken(plan: &Plan, closing: &str, lengths: Lengths) -> String {
    let walls: Vec<String> =
        (0..plan.units.len()).map(|k| format!("wall {} {}", wall_letter(k), shown(plan, k, lengths))).collect();
    match (walls.is_empty(), plan.closed) {
        (true, _) => "Empty ground".to_owned(),
        (_, true) => format!("Closed plan: {}. {closing}", walls.join(", ")),
        (_, false) => format!("Open plan: {}", walls.join(", ")),
    }
}

fn ground(parts: &mut Vec<Drawn>, frame: &Frame) {
    let wide = GROUND_STEP * frame.scale < CLOSEST_LINES;
    let step = if wide { 5.0 * GROUND_STEP } else { GROUND_STEP };
    let [width, height] = frame.size;
    let (low, high) = (frame.mm([0.0, height]) / step, frame.mm([width, 0.0]) / step);
    if (high - low).max_element() > MOST_LINES {
        return;
    }
    let mut line = |from: Pt, to: Pt| parts.push(drawn(Ink::Faint, None, Shape::Line { points: vec![from, to] }));
    // Both are within a few hundred, so the casts keep them whole.
    for k in low.x.ceil() as i64..=high.x.floor() as i64 {
        let x = frame.px(DVec2::new(k as f64 * step, 0.0))[0];
        line([x, 0.0], [x, height]);
    }
    for k in low.y.ceil() as i64..=high.y.floor() as i64 {
        let y = frame.px(DVec2::new(0.0, k as f64 * step))[1];
        line([0.0, y], [width, y]);
    }
}

fn ends(plan: &Plan, wall: usize) -> Option<(DVec2, DVec2)> {
    let next = if plan.closed { (wall + 1) % plan.corners.len().max(1) } else { wall + 1 };
    plan.corners.get(wall).copied().zip(plan.corners.get(next).copied())
}

/// 1 where walls run anticlockwise and the building lies to their left, else -1.
fn inside(plan: &Plan) -> f64 {
    if double_area(&plan.corners) < 0.0 { -1.0 } else { 1.0 }
}

fn plate(parts: &mut Vec<Drawn>, plan: &Plan, frame: &Frame, wall: usize, lengths: Lengths) {
    let Some((from, to)) = ends(plan, wall) else { return };
    let name = Some(Part::wall(wall).name());
    let crosses = plan.crossing.is_some_and(|(one, other)| wall == one || wall == other);
    let wrong = crosses || matches!(plan.walls.get(wall), Some(Reading::Bad(_)));
    let ink = match plan.walls.get(wall) {
        _ if wrong => Ink::Wrong,
        Some(Reading::Good(_)) => Ink::Wood,
        _ => Ink::Faint,
    };
    let along_wall = (to - from).normalize_or_zero();
    let inner = along_wall.perp() * inside(plan) * (PLATE / frame.scale);
    let points = [from, to, to + inner, from + inner].map(|at| frame.px(at)).to_vec();
    parts.push(drawn(ink, name.clone(), Shape::Area { points }));
    let line = [frame.px(from), frame.px(to)];
    if !wrong {
        parts.push(drawn(Ink::Edge, name.clone(), Shape::Line { points: line.to_vec() }));
    }
    let letter = wall_letter(wall);
    let words = [format!("{letter} {}", shown_bare(plan, wall, lengths)), letter];
    let ink = if wrong { Ink::Wrong } else { Ink::Dimension };
    // Outside is to the right of a wall with the building on its left; down the picture, that is turned over.
    parts.extend(along(line, 0.5, inside(plan), &words).map(|shape| drawn(ink, name, shape)));
}

fn diagonal(
    parts: &mut Vec<Drawn>,
    plan: &Plan,
    frame: &Frame,
    number: usize,
    (from, to): (usize, usize),
    lengths: Lengths,
) {
    let (Some(a), Some(b)) = (plan.corners.get(from), plan.corners.get(to)) else { return };
    let name = Some(Part::diagonal(number).name());
    let line = [frame.px(*a), frame.px(*b)];
    let (ink, words) = match plan.diagonals.get(number) {
        Some(Reading::Good(mm)) => (Ink::Hidden, lengths.write(*mm)),
        Some(Reading::Bad(_)) => (Ink::Wrong, "?".to_owned()),
        _ => (Ink::Hidden, "?".to_owned()),
    };
    parts.push(drawn(ink, name.clone(), Shape::Line { points: line.to_vec() }));
    let ink = if ink == Ink::Wrong { ink } else { Ink::Dimension };
    parts.extend(along(line, DIAGONAL_LABEL, 1.0, &[words]).map(|shape| drawn(ink, name, shape)));
}

/// What the walls miss each other by, exaggerated, at corner 1.
fn gap(parts: &mut Vec<Drawn>, plan: &Plan, frame: &Frame, lengths: Lengths) {
    let (Some(gap), Some(first)) = (plan.gap, plan.corners.first()) else { return };
    if matches!(plan.known, Known::Measured(_)) || gap.length() <= NOTHING {
        return;
    }
    let [least, most] = GAP;
    let long = (gap.length() * frame.scale * GAP_TIMES).clamp(least, most);
    let [x, y] = frame.px(*first);
    let way = gap.normalize_or_zero() * long;
    let end = [x + way.x, y - way.y];
    let inward = into_plan(plan, 0);
    let text = Shape::Text {
        at: [x + inward.x * GAP_LABEL, y - inward.y * GAP_LABEL],
        size: FIGURE,
        anchor: if inward.x < 0.0 { Anchor::End } else { Anchor::Start },
        turn_deg: 0.0,
        text: lengths.write_with_unit(gap.length()),
    };
    parts.push(drawn(Ink::Wrong, None, Shape::Line { points: vec![[x, y], end] }));
    parts.push(drawn(Ink::Wrong, None, text));
}

/// A corner with its number, which stands inside the plan.
fn number(parts: &mut Vec<Drawn>, plan: &Plan, frame: &Frame, corner: usize) {
    let Some(at) = plan.corners.get(corner) else { return };
    let way = into_plan(plan, corner);
    let name = Some(Part::corner(corner).name());
    let [x, y] = frame.px(*at);
    let last = !plan.closed && corner + 1 == plan.corners.len();
    let ink = if last { Ink::Chosen } else { Ink::Edge };
    let radius = if last { 1.5 * CORNER } else { CORNER };
    parts.push(drawn(ink, name.clone(), Shape::Dot { at: [x, y], radius }));
    let text = Shape::Text {
        at: [x + way.x * NUMBER_OFF, y - way.y * NUMBER_OFF + FIGURE * 0.35],
        size: FIGURE,
        anchor: Anchor::Middle,
        turn_deg: 0.0,
        text: (corner + 1).to_string(),
    };
    parts.push(drawn(if last { Ink::Chosen } else { Ink::Faint }, name, text));
}

/// The direction from a corner into the plan, or away from an open end.
fn into_plan(plan: &Plan, corner: usize) -> DVec2 {
    let count = plan.units.len();
    let before = if corner == 0 && plan.closed { count.checked_sub(1) } else { corner.checked_sub(1) };
    let unit = |wall: Option<usize>| wall.and_then(|wall| ends(plan, wall)).map(|(a, b)| (b - a).normalize_or_zero());
    let (before, after) = (unit(before), unit((corner < count).then_some(corner)));
    match (before, after) {
        (Some(before), Some(after)) => {
            let middle = (after - before).normalize_or(before.perp());
            middle * if before.perp_dot(after) * inside(plan) < 0.0 { -1.0 } else { 1.0 }
        }
        (Some(one), None) => one,
        (None, Some(one)) => -one,
        (None, None) => DVec2::Y,
    }
}

fn drawn(ink: Ink, name: Option<String>, shape: Shape) -> Drawn {
    Drawn { ink, name, shape }
}

/// The corners in the picture.
pub(super) fn corners(plan: &Plan, frame: &Frame) -> Vec<Corner> {
    let corners = plan.corners.iter().enumerate();
    corners.map(|(k, at)| Corner { name: Part::corner(k).name(), at: frame.px(*at) }).collect()
}

/// The length of a wall: what was read, or about what was drawn.
fn shown(plan: &Plan, wall: usize, lengths: Lengths) -> String {
    match plan.walls.get(wall) {
        Some(Reading::Good(mm)) => lengths.write_with_unit(*mm),
        _ => format!("≈ {}", lengths.write_with_unit(plan.lengths.get(wall).copied().unwrap_or(0.0))),
    }
}

fn shown_bare(plan: &Plan, wall: usize, lengths: Lengths) -> String {
    match plan.walls.get(wall) {
        Some(Reading::Good(mm)) => lengths.write(*mm),
        _ => format!("≈ {}", lengths.write(plan.lengths.get(wall).copied().unwrap_or(0.0))),
    }
}

/// The walls for a list.
pub(super) fn walls(sketch: &Sketch, plan: &Plan, frame: &Frame, lengths: Lengths) -> Vec<ReadingLine> {
    let line = |k: usize| {
        let (from, to) = ends(plan, k)?;
        let next = if plan.closed && k + 1 == sketch.walls.len() { 1 } else { k + 2 };
        let read = plan.walls.get(k)?;
        Some(ReadingLine {
            name: Part::wall(k).name(),
            label: format!("Wall {}, corner {} to {next}", wall_letter(k), k + 1),
            line: [frame.px(from), frame.px(to)],
            length: shown(plan, k, lengths),
            measured: read.good().is_some(),
            fault: read.fault().map(str::to_owned),
            moved: moved(plan, Measure::Side(k), lengths),
        })
    };
    (0..sketch.walls.len()).filter_map(line).collect()
}

/// The diagonals for a list.
pub(super) fn diagonals(sketch: &Sketch, plan: &Plan, frame: &Frame, lengths: Lengths) -> Vec<ReadingLine> {
    let line = |(k, (line, read)): (usize, (&crate::views::Diagonal, &Reading))| {
        let (from, to) = (line.from as usize, line.to as usize);
        let about = || plan.distance(from, to).map_or_else(String::new, |mm| lengths.write_with_unit(mm));
        Some(ReadingLine {
            name: Part::diagonal(k).name(),
            label: super::reading::sentence(&words::diagonal(from, to)),
            line: [frame.px(*plan.corners.get(from)?), frame.px(*plan.corners.get(to)?)],
            length: read.good().map_or_else(|| format!("≈ {}", about()), |mm| lengths.write_with_unit(mm)),
            measured: read.good().is_some(),
            fault: read.fault().map(str::to_owned),
            moved: moved(plan, Measure::Diagonal(from, to), lengths),
        })
    };
    sketch.diagonals.iter().zip(&plan.diagonals).enumerate().filter_map(line).collect()
}

/// By how much the plan moved a reading, with its sign; nothing when it did not.
fn moved(plan: &Plan, what: Measure, lengths: Lengths) -> Option<String> {
    let by = plan.moved(what).filter(|by| by.abs() >= NOTHING)?;
    Some(format!("{}{}", if by > 0.0 { "+" } else { "−" }, lengths.write_with_unit(by.abs())))
}
