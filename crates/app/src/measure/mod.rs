//! The place where a roof is measured: walls are drawn and their lengths typed,
//! and the plan is brought together as far as it is known.
//!
//! A sketch may be half finished, and always gives a picture. Walls drawn
//! square are a drawing aid: as soon as diagonals are measured, they and the
//! walls alone make the plan (`geometry::survey`). While none is, the drawn
//! directions are taken as given, the closing error is shared out among the
//! walls, and that is said.

mod course;
mod draw;
mod frame;
mod label;
mod next;
mod notes;
mod plan;
mod reading;
mod rejoin;
mod steps;
mod text;
mod tidy;
mod touch;
mod words;

pub use rejoin::{into_job, of_job};

use crate::refusal::Refusal;
use crate::views::{SketchAsk, SketchView};
use frame::Frame;
use geometry::survey::MOST_CORNERS;
use job::written::Lengths;
use plan::Plan;

/// Least width and height of a picture, px: below it nothing can be told apart.
const LEAST_PICTURE: f64 = 100.0;

/// Greatest width and height of a picture, px: past any screen.
const GREATEST_PICTURE: f64 = 10_000.0;

/// Takes a sketch one step further, if a step is asked for, and shows how it stands.
///
/// # Errors
/// When a sketch has more walls than can be measured, or the step can't be taken.
pub fn look(ask: SketchAsk, lengths: Lengths) -> Result<SketchView, Refusal> {
    let size = [ask.width, ask.height].map(|px| px.clamp(LEAST_PICTURE, GREATEST_PICTURE));
    let mut sketch = tidy::tidy(ask.sketch)?;
    let touched = match ask.step {
        None => None,
        Some(step) => {
            let plan = Plan::of(&sketch);
            let frame = Frame::of(&plan, size);
            let touched = steps::take(&mut sketch, &step, &plan, &frame)?;
            sketch = tidy::tidy(sketch)?;
            touched
        }
    };
    let plan = Plan::of(&sketch);
    let frame = Frame::of(&plan, size);
    let made = text::of_new(&sketch, &plan, lengths);
    let notes = notes::of(&sketch, &plan, &made, lengths);
    let picture = draw::picture(&sketch, &plan, &frame, &notes.closing, lengths);
    Ok(SketchView {
        picture,
        touched: touched.map(|part| part.touched()),
        corners: draw::corners(&plan, &frame),
        walls: draw::walls(&sketch, &plan, &frame, lengths),
        diagonals: draw::diagonals(&sketch, &plan, &frame, lengths),
        figures: notes.figures,
        closing: notes.closing,
        notices: notes.notices,
        next: notes.next.words,
        next_part: notes.next.part.map(|part| part.touched()),
        next_diagonal: notes.next.diagonal,
        pitch_fault: made.pitch_fault,
        feet: lengths == Lengths::FeetInches,
        text: made.text,
        sketch,
    })
}

/// Refuses sketches of more walls than a survey takes.
fn too_many_walls() -> Refusal {
    Refusal::new(
        "too-many-walls",
        format!("A plan that is measured has {MOST_CORNERS} walls at most"),
        "Close the plan, or measure it as two jobs",
    )
}
