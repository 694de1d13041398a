//! Run, rise and length from the side.

use super::Asked;
use super::canvas::{Canvas, FIGURES, Fit, MARGIN, ROW, text_width};
use job::written::Lengths;
use picture::{Anchor, Ink, Picture};

/// The highest drawing, as a part of the picture's width.
const HIGHEST: f64 = 0.7;

/// The lowest drawing that a figure stands beside, px.
const LOWEST: f64 = 34.0;

/// Which side of the triangle is asked about.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Side {
    Run,
    Long,
    Pitch,
}

/// The triangle of this run and rise, mm.
pub(crate) fn elevation([run, rise]: [f64; 2], side: Side, asked: &Asked<'_>, lengths: Lengths, width: f64) -> Picture {
    let (run, rise) = (run.abs().max(1.0), rise.abs());
    let high = lengths.write(rise);
    let column = text_width(&high, FIGURES) + 10.0;
    let field = width - 2.0 * MARGIN - column;
    let (fit, drawn) = Fit::new([[0.0, 0.0], [run, rise]], [MARGIN, ROW + 4.0], field, width * HIGHEST);
    let shift = (LOWEST - drawn).max(0.0);
    let place = |p| {
        let [x, y] = fit.at(p);
        [x, y + shift]
    };
    let (foot, corner, head) = (place([0.0, 0.0]), place([run, 0.0]), place([run, rise]));
    let bottom = ROW + 4.0 + drawn + shift;
    let mut canvas = Canvas::new(width, bottom + ROW + 8.0);
    canvas.area(Ink::Wood, vec![foot, corner, head]);
    let ink = |s: Side| if s == side { Ink::Chosen } else { Ink::Dimension };
    canvas.line(ink(Side::Run), vec![foot, corner]);
    canvas.line(Ink::Dimension, vec![corner, head]);
    canvas.line(if side == Side::Long { Ink::Chosen } else { Ink::Edge }, vec![foot, head]);
    canvas.row(Ink::Chosen, 0.0, asked.value, asked.words);
    let middle = (corner[1] + head[1]) / 2.0 + 7.0;
    canvas.text(Ink::Dimension, [corner[0] + 8.0, middle], FIGURES, Anchor::Start, high);
    canvas.row(ink(Side::Run), bottom + 2.0, &lengths.write(run), "run, level");
    canvas.done(format!(
        "A triangle seen from the side: run {}, rise {}. {}: {}.",
        lengths.write_with_unit(run),
        lengths.write_with_unit(rise),
        asked.words,
        asked.value
    ))
}
