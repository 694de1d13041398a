//! Pictures of workings, to scale where it helps.

mod canvas;
mod triangle;

use crate::ground::Ground;
use crate::question::Question;
use job::written::Lengths;
use picture::Picture;
use roof::solution::Member;

/// Pictures are made for windows from this to this wide, px.
const WIDTHS: [f64; 2] = [300.0, 900.0];

/// The picture of a figure.
pub(crate) fn of(
    ground: &Ground<'_>,
    member: Option<&Member>,
    q: &Question,
    value: &str,
    lengths: Lengths,
    width: f64,
) -> Picture {
    let width = if width.is_finite() { width.clamp(WIDTHS[0], WIDTHS[1]) } else { WIDTHS[0] };
    let _ = (ground, q);
    member.map_or_else(Picture::default, |m| triangle::elevation(m, value, lengths, width))
}
