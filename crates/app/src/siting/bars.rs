//! The programme as bars: one below the other, named above, with the days at which they start and end.

use crate::wording::Writing;
use picture::{Anchor, Ink, Part, Picture, Pt, Shape};
use site::programme::{Bar, Programme};

/// The narrowest and the widest picture, px: a small phone, a tablet on the bench.
const WIDTHS: [f64; 2] = [280.0, 900.0];
/// Kept left and right, px.
const MARGIN: f64 = 4.0;
/// Height of type, px.
const TYPE: f64 = 14.0;
/// Of a name with its bar, px.
const ROW: f64 = 44.0;
/// Of a bar, px.
const BAR: f64 = 16.0;
/// From the top of a row to the line that its name stands on, px.
const NAME: f64 = 16.0;
/// From the top of a row to its bar, px.
const BELOW: f64 = 22.0;
/// A bar is never drawn shorter, px: it would not be seen.
const LEAST: f64 = 3.0;

/// The picture of a programme.
pub(super) fn of(programme: &Programme, writing: &Writing, width: f64) -> Picture {
    let width = if width.is_finite() { width.clamp(WIDTHS[0], WIDTHS[1]) } else { WIDTHS[0] };
    let end = programme.bars.iter().map(|bar| bar.end).fold(1.0, f64::max);
    let per_day = (width - 2.0 * MARGIN) / end;
    let mut parts = Vec::with_capacity(programme.bars.len() * 3);
    for (k, bar) in programme.bars.iter().enumerate() {
        let top = ROW * k as f64;
        let ink = if bar.critical { Ink::Sawn } else { Ink::Ground };
        let left = MARGIN + bar.start * per_day;
        let right = (MARGIN + bar.end * per_day).max(left + LEAST);
        parts.push(text(writing.say_first(&bar.name), [MARGIN, top + NAME], Anchor::Start));
        parts.push(text(days(bar, writing), [width - MARGIN, top + NAME], Anchor::End));
        let (upper, lower) = (top + BELOW, top + BELOW + BAR);
        let points = vec![[left, upper], [right, upper], [right, lower], [left, lower]];
        parts.push(Part { ink, name: Some(bar.name.clone()), shape: Shape::Area { points } });
    }
    let spoken = format!("The programme as {} bars; the same in words is below it", programme.bars.len());
    Picture { width, height: ROW * programme.bars.len() as f64, spoken: writing.say(&spoken), parts }
}

/// From when to when.
fn days(bar: &Bar, writing: &Writing) -> String {
    let (first, last) = (writing.short(&bar.first), writing.short(&bar.last));
    if first == last { first } else { format!("{first} – {last}") }
}

fn text(text: String, at: Pt, anchor: Anchor) -> Part {
    Part { ink: Ink::Dimension, name: None, shape: Shape::Text { at, size: TYPE, anchor, turn_deg: 0.0, text } }
}
