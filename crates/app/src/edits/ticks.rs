//! Timbers ticked as cut, as fixed, or as neither.

use crate::bench;
use crate::opening::Open;
use crate::refusal::Refusal;
use crate::views::{Done, Tick};

/// The job with timbers ticked, and what it is called. The roof stays as it is.
pub(super) fn ticked(open: &Open, tick: &Tick) -> Result<(Open, String), Refusal> {
    let solution = open.solution().map_err(Clone::clone)?;
    let text = bench::tick(&open.text, solution, tick)?;
    let state = match tick.done {
        Done::No => "to be cut",
        Done::Cut => "cut",
        Done::Fixed => "fixed",
    };
    let said = match tick.marks.as_slice() {
        [only] => format!("{only} {state}"),
        many => format!("{} timbers {state}", many.len()),
    };
    Ok((open.with_text(text)?, said))
}
