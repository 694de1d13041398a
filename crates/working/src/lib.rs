//! Why a figure is what it is: its working in words and sums that an apprentice
//! follows, with the picture that goes with it.
//!
//! A figure is asked for by its key, a text: see [`Question`]. Every line of a
//! working uses the figures of the lines before it as they are shown, so each
//! sum can be done again with a pencil; the last comes to the figure that the
//! card shows. Where the sizes of the plan do not lead there, the working says
//! what was read off the finished solid.

mod answer;
mod birdsmouth;
mod chain;
mod cuts;
mod ends;
mod ground;
mod hips;
mod lengths;
mod measured;
mod pictures;
mod question;
mod roofs;
mod runs;
mod sawn;
mod slopes;
mod sum;
mod told;
mod ways;
mod words;

pub use answer::{ANGLE_AGREES, Answer, LENGTH_AGREES, VOLUME_AGREES, answer};
pub use chain::Basis;
pub use question::{Figure, Question};
pub use words::{Line, Working};

use job::Job;
use job::written::Lengths;
use roof::solution::Solution;

/// Why no working can be given.
#[derive(Debug, thiserror::Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum WhyError {
    /// Nothing has this key.
    #[error("no figure is known as `{0}`: ask for one that the card or the plan shows")]
    NoFigure(String),
}

/// The working of a figure, with a picture of this width, px.
///
/// # Errors
/// When the job has no such figure.
pub fn why(
    job: &Job,
    solution: &Solution,
    question: &Question,
    lengths: Lengths,
    width: f64,
) -> Result<Working, WhyError> {
    Ok(answer(job, solution, question, lengths, width)?.working)
}
