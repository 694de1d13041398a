//! The foot of a rafter on its plate, from the side.

use super::Asked;
use super::canvas::{Canvas, Fit, MARGIN, ROW};
use crate::question::Figure;
use geometry::Angle;
use picture::{Ink, Picture, Pt};
use roof::solution::{Birdsmouth, Member};

/// The highest drawing, as a part of the picture's width.
const HIGHEST: f64 = 0.9;

/// Width and height of the piece of plate that is drawn, as parts of the timber's depth.
const PLATE: [f64; 2] = [0.7, 0.4];

/// How much of the timber is drawn past seat and heel, as a part of its depth.
const PAST: f64 = 0.7;

/// The birdsmouth, to scale.
pub(crate) fn side(m: &Member, mouth: &Birdsmouth, figure: Figure, asked: &Asked<'_>, width: f64) -> Picture {
    let pitch = Angle::deg(m.pitch_deg);
    let (tan, depth) = (pitch.tan(), m.size.depth_mm);
    let (seat, heel) = (mouth.seat_mm, mouth.plumb_mm);
    let plumb = depth / pitch.cos();
    // The corner of the plate is at the origin.
    let under = |x: f64| (x - seat) * tan;
    let (out, inn) = (-PAST * depth, seat + PAST * depth);
    let wood: Vec<Pt> = vec![
        [out, under(out) + plumb],
        [inn, under(inn) + plumb],
        [inn, under(inn)],
        [seat, 0.0],
        [0.0, 0.0],
        [0.0, -heel],
        [out, under(out)],
    ];
    let plate: Vec<Pt> =
        vec![[0.0, 0.0], [PLATE[0] * depth, 0.0], [PLATE[0] * depth, -PLATE[1] * depth], [0.0, -PLATE[1] * depth]];
    let chosen: [Pt; 2] = match figure {
        Figure::Seat => [[0.0, 0.0], [seat, 0.0]],
        Figure::Heel => [[0.0, 0.0], [0.0, -heel]],
        Figure::Notch => {
            let d = heel * pitch.cos();
            [[0.0, 0.0], [d * pitch.sin(), -d * pitch.cos()]]
        }
        _ => [[0.0, 0.0], [0.0, plumb - heel]],
    };
    let mut bounds = [[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]];
    for p in wood.iter().chain(&plate) {
        for k in 0..2 {
            bounds[0][k] = bounds[0][k].min(p[k]);
            bounds[1][k] = bounds[1][k].max(p[k]);
        }
    }
    let (fit, drawn) = Fit::new(bounds, [MARGIN, ROW + 4.0], width - 2.0 * MARGIN, width * HIGHEST);
    let mut canvas = Canvas::new(width, ROW + drawn + MARGIN + 4.0);
    canvas.area(Ink::Ground, fit.all(&plate));
    canvas.area(Ink::Wood, fit.all(&wood));
    canvas.line(Ink::Sawn, fit.all(&[[seat, 0.0], [0.0, 0.0], [0.0, -heel]]));
    canvas.line(Ink::Chosen, fit.all(&chosen));
    canvas.row(Ink::Chosen, 0.0, asked.value, asked.words);
    canvas.done(format!(
        "The foot of {} {} on its plate, from the side, with the notch that sits over the plate. {}: {}.",
        m.kind.name(),
        m.mark,
        asked.words,
        asked.value
    ))
}
