//! One job in, one solution out.

use crate::SolveError;
use crate::carcass::Carcass;
use crate::document::{self, Numbering};
use crate::fitted;
use crate::frame;
use crate::gable_wall;
use crate::openings;
use crate::profiles;
use crate::solution::Solution;
use crate::surface_words;
use crate::verify;
use geometry::DVec2;
use geometry::surface::{self, Surface, WallProfile};
use job::Job;

/// Solve a job: surface, frame, solids, figures, and the check of all of them.
///
/// # Errors
/// When the job can't be built as asked, or when a check of the result fails;
/// a wrong roof is never returned.
pub fn solve(job: &Job) -> Result<Solution, SolveError> {
    let surface = surface_of(job)?;
    over(job, &surface).map_err(|e| openings::advised(job, &surface, e, &|trial| over(trial, &surface).is_ok()))
}

/// The roof surface of a job.
fn surface_of(job: &Job) -> Result<Surface, SolveError> {
    let loops: Vec<Vec<DVec2>> =
        job.loops.iter().map(|ring| ring.iter().map(|p| DVec2::from_array(*p)).collect()).collect();
    let profiles: Vec<WallProfile> = job.walls.iter().map(profiles::of_wall).collect();
    surface::solve(&loops, &profiles)
        .map_err(|source| SolveError::Surface { words: surface_words::of(job, &source), source })
}

/// Solve a job over its surface.
fn over(job: &Job, surface: &Surface) -> Result<Solution, SolveError> {
    let frame = frame::build(job, surface)?;
    let mut carcass = Carcass::of(job, surface, frame)?;
    fitted::place(&mut carcass)?;
    let (trimmed, hatches) = (core::mem::take(&mut carcass.trimmed), core::mem::take(&mut carcass.hatches));
    let in_ceiling: u32 = carcass.ceiling_hangers + hatches.iter().map(|h| fitted::hangers(&h.joists)).sum::<u32>();
    let (frame, shapes, remarks) = carcass.finished();
    let marks = document::marks_of(job, surface, &frame.timbers, &numbering(job, surface)?);
    let bearings = verify::frame(&frame.timbers, &shapes, &marks.names)?;
    let mut solution = document::of(job, surface, &frame, &shapes, &marks, &bearings, remarks);
    solution.totals.hangers = in_ceiling + trimmed.iter().map(openings::Trimmed::hangers).sum::<u32>();
    solution.gables = gable_wall::of(job, surface, &frame.heights);
    solution.openings = openings::out(job, &trimmed, &hatches, &marks.names);
    Ok(solution)
}

/// What rafters are numbered by. Over a plan that cannot have one pitch all
/// round, the pitches of the job serve.
fn numbering(job: &Job, surface: &Surface) -> Result<Numbering, SolveError> {
    let plain = frame::standing(job, surface)?;
    let even = document::evened(job).and_then(|even| frame::standing(&even, &surface_of(&even).ok()?).ok());
    Ok(Numbering { even: even.unwrap_or_else(|| plain.clone()), plain })
}
