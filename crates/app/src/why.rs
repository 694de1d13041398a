//! The working of a figure, in the words of the dialect that the user wants.

use crate::refusal::Refusal;
use crate::views::{Dialect, WhyAsk};
use crate::wording::say;
use job::Job;
use job::written::Lengths;
use picture::Shape;
use roof::solution::Solution;
use working::{Question, Working};

/// The working of a figure.
///
/// # Errors
/// When no figure has this key.
pub(crate) fn working(
    job: &Job,
    solution: &Solution,
    lengths: Lengths,
    dialect: Dialect,
    ask: &WhyAsk,
) -> Result<Working, Refusal> {
    let unknown = |error: working::WhyError| {
        Refusal::new("no-such-figure", error.to_string(), "Ask again from the card: the roof may have changed since")
    };
    let question: Question = ask.figure.parse().map_err(unknown)?;
    let mut working = working::why(job, solution, &question, lengths, ask.width).map_err(unknown)?;
    let texts = [&mut working.title, &mut working.idea, &mut working.rule, &mut working.picture.spoken];
    let lines = working.lines.iter_mut().map(|line| &mut line.words);
    let drawn = working.picture.parts.iter_mut().filter_map(|part| match &mut part.shape {
        Shape::Text { text, .. } => Some(text),
        _ => None,
    });
    for text in texts.into_iter().chain(lines).chain(&mut working.by_hand).chain(drawn) {
        *text = say(dialect, text).into_owned();
    }
    Ok(working)
}
