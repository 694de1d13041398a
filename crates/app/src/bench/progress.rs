//! What is cut and fixed: reading it from the job, and ticking.

use super::piece::piece_mark;
use crate::refusal::Refusal;
use crate::views::{Done, Tick};
use job::{Job, TickState};
use roof::solution::{Member, Solution};
use std::collections::BTreeMap;

/// How far a timber is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// As ticked.
    pub done: Done,
    /// It was ticked, and is another piece now: it may have to be cut again.
    pub changed: bool,
}

/// How far a timber is.
#[must_use]
pub fn progress(job: &Job, member: &Member) -> Progress {
    let Some(ticked) = job.done.get(&member.mark) else { return Progress { done: Done::No, changed: false } };
    let done = match ticked.state {
        TickState::Cut => Done::Cut,
        TickState::Fixed => Done::Fixed,
    };
    let changed = ticked.piece.as_ref().is_some_and(|piece| *piece != piece_mark(member));
    Progress { done, changed }
}

/// Marks that are ticked and that the roof has no timber of any more.
#[must_use]
pub fn ticked_and_gone<'j>(job: &'j Job, solution: &Solution) -> Vec<&'j str> {
    let is_there = |mark: &str| solution.members.iter().any(|member| member.mark == mark);
    job.done.keys().map(String::as_str).filter(|mark| !is_there(mark)).collect()
}

/// The job's text with timbers ticked, or their ticks taken out.
///
/// # Errors
/// When the roof has no timber of a mark, or the text can't be edited.
pub fn tick(text: &str, solution: &Solution, tick: &Tick) -> Result<String, Refusal> {
    let members: BTreeMap<&str, &Member> = solution.members.iter().map(|m| (m.mark.as_str(), m)).collect();
    let mut changes = Vec::with_capacity(tick.marks.len());
    for mark in &tick.marks {
        let path = format!("done.{mark}");
        let state = match tick.done {
            Done::No => {
                changes.push((path, None));
                continue;
            }
            Done::Cut => "cut",
            Done::Fixed => "fixed",
        };
        let Some(member) = members.get(mark.as_str()) else { return Err(no_timber(mark)) };
        changes.push((path, Some(format!("{{ state = \"{state}\", piece = \"{}\" }}", piece_mark(member)))));
    }
    let changes = changes.iter().map(|(path, value)| (path.as_str(), value.as_deref()));
    job::edit::set_all(text, changes).map_err(|error| {
        Refusal::new(
            "not-ticked",
            format!("Nothing was ticked: {error}"),
            "Correct the job file where it says so, then tick again",
        )
    })
}

/// The roof has no timber of this mark.
pub(crate) fn no_timber(mark: &str) -> Refusal {
    Refusal::new(
        "no-such-timber",
        format!("The roof has no timber {mark}"),
        "Choose one from the list: the roof may have changed since",
    )
}
