//! What lies under a finger.

use super::frame::Frame;
use super::plan::Plan;
use crate::views::{Sketch, SketchPart, Touched};
use geometry::DVec2;
use picture::Pt;

/// Corners are met from so far, px: half of a thing to press.
pub(super) const CORNER_REACH: f64 = 28.0;

/// Walls and diagonals of a closed plan are met from so far, px: their lengths stand beside them.
const CLOSED_REACH: f64 = 32.0;

/// Those of an unfinished plan, px: walls may be drawn beside them.
const OPEN_REACH: f64 = 16.0;

/// A part of a sketch by its number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Part {
    pub(super) kind: SketchPart,
    pub(super) number: usize,
}

impl Part {
    pub(super) const fn corner(number: usize) -> Self {
        Self { kind: SketchPart::Corner, number }
    }

    pub(super) const fn wall(number: usize) -> Self {
        Self { kind: SketchPart::Wall, number }
    }

    pub(super) const fn diagonal(number: usize) -> Self {
        Self { kind: SketchPart::Diagonal, number }
    }

    /// Its name in the picture.
    pub(super) fn name(self) -> String {
        match self.kind {
            SketchPart::Corner => format!("corner {}", self.number + 1),
            SketchPart::Wall => format!("wall {}", job::wall_letter(self.number)),
            SketchPart::Diagonal => format!("diagonal {}", self.number),
        }
    }

    pub(super) fn touched(self) -> Touched {
        Touched { part: self.kind, number: u32::try_from(self.number).unwrap_or(u32::MAX), name: self.name() }
    }
}

/// The part that lies nearest to a place of the picture, if one does; corners first.
pub(super) fn at(sketch: &Sketch, plan: &Plan, frame: &Frame, at: Pt) -> Option<Part> {
    let finger = DVec2::from_array(at);
    let place = |corner: usize| plan.corners.get(corner).map(|at| DVec2::from_array(frame.px(*at)));
    let corners = (0..plan.corners.len()).filter_map(|k| Some((Part::corner(k), place(k)?.distance(finger))));
    if let Some(corner) = nearest(corners, CORNER_REACH) {
        return Some(corner);
    }
    let walls = (0..plan.units.len()).filter_map(|k| {
        let next = (k + 1) % plan.corners.len().max(1);
        Some((Part::wall(k), off_line(finger, place(k)?, place(next)?)))
    });
    let diagonals = sketch.diagonals.iter().enumerate().filter_map(|(k, line)| {
        Some((Part::diagonal(k), off_line(finger, place(line.from as usize)?, place(line.to as usize)?)))
    });
    nearest(walls.chain(diagonals), if plan.closed { CLOSED_REACH } else { OPEN_REACH })
}

fn nearest(parts: impl Iterator<Item = (Part, f64)>, reach: f64) -> Option<Part> {
    parts.filter(|(_, off)| *off <= reach).min_by(|a, b| a.1.total_cmp(&b.1)).map(|(part, _)| part)
}

/// How far a place is from a line between two others.
fn off_line(at: DVec2, from: DVec2, to: DVec2) -> f64 {
    let along = to - from;
    let length = along.length_squared();
    let part = if length > 0.0 { ((at - from).dot(along) / length).clamp(0.0, 1.0) } else { 0.0 };
    at.distance(from + along * part)
}
