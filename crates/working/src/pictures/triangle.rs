//! Run, rise and true length from the side.

use super::canvas::{Canvas, FIGURES};
use crate::ground::plan_run;
use job::written::Lengths;
use picture::{Anchor, Ink, Picture};
use roof::solution::Member;

/// Left free for texts, px.
const MARGIN: f64 = 60.0;

/// The triangle of run, rise and length.
pub(crate) fn elevation(m: &Member, value: &str, lengths: Lengths, width: f64) -> Picture {
    let run = plan_run(&m.axis).max(1.0);
    let rise = (m.axis.to[2] - m.axis.from[2]).abs();
    let scale = (width - 2.0 * MARGIN) / run.max(rise);
    let (w, h) = (run * scale, rise * scale);
    let height = h + 2.0 * MARGIN;
    let (foot, under, head) = ([MARGIN, MARGIN + h], [MARGIN + w, MARGIN + h], [MARGIN + w, MARGIN]);
    let mut canvas = Canvas::new(width, height);
    canvas.area(Ink::Wood, vec![foot, under, head]);
    canvas.line(Ink::Dimension, vec![foot, under, head]);
    canvas.line(Ink::Chosen, vec![foot, head]);
    canvas.text(
        Ink::Dimension,
        [MARGIN + w / 2.0, MARGIN + h + FIGURES + 6.0],
        FIGURES,
        Anchor::Middle,
        lengths.write(run),
    );
    canvas.text(Ink::Chosen, [MARGIN, FIGURES + 10.0], FIGURES, Anchor::Start, value);
    canvas.done(format!("From the side: run {}, rise {}.", lengths.write_with_unit(run), lengths.write_with_unit(rise)))
}
