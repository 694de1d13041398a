//! One job in, one solution out.

use crate::SolveError;
use crate::carcass::Carcass;
use crate::document::{self, Marks, Numbering, firring};
use crate::fitted;
use crate::frame::{self, Frame};
use crate::gable_wall;
use crate::level_ridge::{self, Levelled};
use crate::mending::{self, Fault, Mends};
use crate::openings;
use crate::shape::Shape;
use crate::solution::{Notice, Solution};
use crate::verify::{self, Bearings};
use geometry::surface::Surface;
use job::Job;

/// Why a job has no frame yet.
pub enum Failure {
    /// It cannot be framed as asked.
    Refused(SolveError),
    /// It was framed, and the check found these wrong.
    Faulty(Vec<Fault>),
}

impl Failure {
    /// Whether framing it another way may help.
    pub const fn can_be_mended(&self) -> bool {
        match self {
            Self::Refused(e) => {
                matches!(
                    e,
                    SolveError::Swallowed { .. }
                        | SolveError::Surface { .. }
                        | SolveError::Opening { .. }
                        | SolveError::OverhangCloses { .. }
                )
            }
            Self::Faulty(_) => true,
        }
    }

    /// The first thing that is wrong.
    pub fn into_error(self) -> SolveError {
        match self {
            Self::Refused(e) => e,
            Self::Faulty(faults) => faults.into_iter().next().map_or(SolveError::NoFrame, |fault| fault.error),
        }
    }
}

impl From<SolveError> for Failure {
    fn from(e: SolveError) -> Self {
        Self::Refused(e)
    }
}

/// Solve a job: surface, frame, solids, figures, and the check of all of them.
///
/// # Errors
/// When the job can't be built as asked, or when a check of the result fails;
/// a wrong roof is never returned.
pub fn solve(job: &Job) -> Result<Solution, SolveError> {
    attempt(job, &Mends::default()).or_else(|failure| mending::mended(job, failure)).map_err(|e| {
        match level_ridge::surface_of(job) {
            Ok(levelled) => {
                openings::advised(job, &levelled.surface, e, &|trial| over(trial, &levelled, &Mends::default()).is_ok())
            }
            Err(_) => e,
        }
    })
}

/// Solve a job with some timbers framed otherwise than usual.
pub fn attempt(job: &Job, mends: &Mends) -> Result<Solution, Failure> {
    let levelled = level_ridge::surface_of(job)?;
    over(job, &levelled, mends)
}

/// Solve a job over its surface.
fn over(job: &Job, levelled: &Levelled, mends: &Mends) -> Result<Solution, Failure> {
    let surface = &levelled.surface;
    let mut frame = frame::build(job, levelled, mends)?;
    let numbering = numbering(job, surface, frame.standing.take())?;
    let mut carcass = Carcass::of(job, surface, frame)?;
    fitted::place(&mut carcass)?;
    let (trimmed, hatches) = (core::mem::take(&mut carcass.trimmed), core::mem::take(&mut carcass.hatches));
    let in_ceiling: u32 = carcass.ceiling_hangers + hatches.iter().map(|h| fitted::hangers(&h.joists)).sum::<u32>();
    let (mut frame, mut shapes, mut remarks) = carcass.finished();
    let (marks, bearings) = checked(job, surface, &numbering, (&mut frame, &mut shapes), &mut remarks)?;
    remarks.extend(mending::remarks(&frame, mends, &marks.names));
    let mut solution = document::of(job, surface, &frame, &shapes, &marks, &bearings, remarks);
    solution.totals.hangers = in_ceiling + trimmed.iter().map(openings::Trimmed::hangers).sum::<u32>();
    firring::tell(job, levelled, &frame.timbers, &marks.names, &mut solution);
    solution.gables = gable_wall::of(job, surface, &frame.heights);
    solution.openings = openings::out(job, &trimmed, &hatches, &marks.names);
    Ok(solution)
}

/// Check a frame; what was fitted to it and is at fault is left out, and the
/// rest checked again.
fn checked(
    job: &Job,
    surface: &Surface,
    numbering: &Numbering,
    (frame, shapes): (&mut Frame, &mut [Option<Shape>]),
    remarks: &mut Vec<Notice>,
) -> Result<(Marks, Bearings), Failure> {
    loop {
        let marks = document::marks_of(job, surface, &frame.timbers, numbering);
        let faults = match verify::frame(&frame.timbers, shapes, &marks.names) {
            Ok(bearings) => return Ok((marks, bearings)),
            Err(faults) => faults,
        };
        // Every round but the last leaves out a member or frees a cut, and there are only so many.
        let rest = mending::settle_fitted(&mut frame.timbers, shapes, &marks.names, faults, remarks);
        if !rest.is_empty() {
            return Err(Failure::Faulty(rest));
        }
    }
}

/// What rafters are numbered by. Over a plan that cannot have one pitch all
/// round, the pitches of the job serve.
fn numbering(job: &Job, surface: &Surface, known: Option<Vec<frame::Standing>>) -> Result<Numbering, SolveError> {
    let plain = known.map_or_else(|| frame::standing(job, surface), Ok)?;
    let even = document::evened(job)
        .and_then(|even| frame::standing(&even, &level_ridge::surface_of(&even).ok()?.surface).ok());
    Ok(Numbering { even: even.unwrap_or_else(|| plain.clone()), plain })
}
