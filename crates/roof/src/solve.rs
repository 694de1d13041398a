//! One job in, one solution out.

use crate::SolveError;
use crate::carcass::Carcass;
use crate::document::{self, firring};
use crate::fitted;
use crate::frame;
use crate::gable_wall;
use crate::level_ridge::{self, Levelled};
use crate::openings;
use crate::solution::Solution;
use crate::verify;
use job::Job;

/// Solve a job: surface, frame, solids, figures, and the check of all of them.
///
/// # Errors
/// When the job can't be built as asked, or when a check of the result fails;
/// a wrong roof is never returned.
pub fn solve(job: &Job) -> Result<Solution, SolveError> {
    let levelled = level_ridge::surface_of(job)?;
    over(job, &levelled)
        .map_err(|e| openings::advised(job, &levelled.surface, e, &|trial| over(trial, &levelled).is_ok()))
}

/// Solve a job over its surface.
fn over(job: &Job, levelled: &Levelled) -> Result<Solution, SolveError> {
    let surface = &levelled.surface;
    let frame = frame::build(job, surface, &levelled.plates)?;
    let mut carcass = Carcass::of(job, surface, frame)?;
    fitted::place(&mut carcass)?;
    let (trimmed, hatches) = (core::mem::take(&mut carcass.trimmed), core::mem::take(&mut carcass.hatches));
    let in_ceiling: u32 = carcass.ceiling_hangers + hatches.iter().map(|h| fitted::hangers(&h.joists)).sum::<u32>();
    let (frame, shapes, remarks) = carcass.finished();
    let marks = document::marks_of(job, surface, &frame.timbers);
    let bearings = verify::frame(&frame.timbers, &shapes, &marks.names)?;
    let mut solution = document::of(job, surface, &frame, &shapes, &marks, &bearings, remarks);
    solution.totals.hangers = in_ceiling + trimmed.iter().map(openings::Trimmed::hangers).sum::<u32>();
    firring::tell(job, levelled, &frame.timbers, &marks.names, &mut solution);
    solution.gables = gable_wall::of(job, surface, &frame.heights);
    solution.openings = openings::out(job, &trimmed, &hatches, &marks.names);
    Ok(solution)
}
