//! A job solved for whoever makes its papers.

use crate::refusal::Refusal;
use crate::side_desk::SideDesk;
use document::Document;
use job::LengthUnit;
use job::written::Lengths;

/// Everything worked out from the open job as JSON ([`Document`]), with lengths as they are shown.
///
/// # Errors
/// When no job is open, or no roof can be made of it.
pub(crate) fn document(side: &SideDesk) -> Result<String, Refusal> {
    let mut job = side.desk.job()?.clone();
    job.show = match side.desk.lengths() {
        Lengths::Millimetres => LengthUnit::Millimetres,
        Lengths::FeetInches => LengthUnit::FeetInches,
    };
    // Solved anew: how lengths are shown is said in the solution.
    let solution = roof::solve(&job).map_err(|error| Refusal::of_roof(&error))?;
    // What the job does not ask for, or what is for an engineer, is not in its papers.
    let (document, _) = Document::of(&job, solution);
    serde_json::to_string(&document).map_err(|error| Refusal::not_understood("paper", &error))
}
