//! Lengths along lines.

use super::draw::FIGURE;
use geometry::Angle;
use picture::{Anchor, Pt, Shape};

/// Width of a letter, as a part of its height: figures of a plain face.
const LETTER: f64 = 0.6;

/// Room at the ends of a line, px: lengths of two walls meet where a corner points inwards.
const END_ROOM: f64 = 8.0;

/// Room between a line and its length, px.
const OFF: f64 = 8.0;

/// Height of figures above their base line, as a part of the type.
const ABOVE_BASE: f64 = 0.73;

/// The first of several texts that fits along a line, standing beside it:
/// on the right going along it where `side` is 1, on the left where it is -1.
pub(super) fn along([from, to]: [Pt; 2], part: f64, side: f64, words: &[String]) -> Option<Shape> {
    let way = [to[0] - from[0], to[1] - from[1]];
    let long = (way[0] * way[0] + way[1] * way[1]).sqrt();
    let width = |text: &String| text.chars().count() as f64 * FIGURE * LETTER;
    let text =
        words.iter().find(|text| width(text) + 2.0 * END_ROOM <= long).or(words.last().filter(|_| words.len() > 1))?;
    let way = if long > 0.0 { way.map(|px| px / long) } else { [1.0, 0.0] };
    // Down the picture, the right hand is at (-y, x).
    let beside = [-way[1] * side, way[0] * side];
    let turned = Angle::from_rise_run(way[1], way[0]).to_deg();
    // Read from below or from the right, never head down.
    let turn_deg = match turned {
        deg if deg >= UPRIGHT - HEAD_DOWN => deg - 180.0,
        deg if deg < -UPRIGHT - HEAD_DOWN => deg + 180.0,
        deg => deg,
    };
    let up = [Angle::deg(turn_deg).sin(), -Angle::deg(turn_deg).cos()];
    let is_up = up[0] * beside[0] + up[1] * beside[1] > 0.0;
    let off = if is_up { OFF } else { OFF + FIGURE * ABOVE_BASE };
    let at = [from[0] + way[0] * long * part + beside[0] * off, from[1] + way[1] * long * part + beside[1] * off];
    Some(Shape::Text { at, size: FIGURE, anchor: Anchor::Middle, turn_deg, text: text.clone() })
}

/// Upright, degrees.
const UPRIGHT: f64 = 90.0;

/// Upright lines read from the right although rounding leans them over, degrees.
const HEAD_DOWN: f64 = 0.01;
