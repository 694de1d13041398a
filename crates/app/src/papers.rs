//! A job solved for whoever makes its papers.

use crate::refusal::Refusal;
use crate::views::{LengthStyle, Settings};
use document::Document;
use job::LengthUnit;

/// Everything worked out from a job as JSON ([`Document`]), with lengths as the settings (also JSON) want them.
///
/// # Errors
/// When the text is no job, or no roof can be made of it.
pub fn for_papers(text: &str, settings: &str) -> Result<String, Refusal> {
    let not_understood = |error: serde_json::Error| Refusal::not_understood("paper", &error);
    let settings: Settings = serde_json::from_str(settings).map_err(not_understood)?;
    let mut job = job::read(text).map_err(|faults| Refusal::of_faults(&faults))?;
    match settings.lengths {
        LengthStyle::AsJob => {}
        LengthStyle::Mm => job.show = LengthUnit::Millimetres,
        LengthStyle::FeetInches => job.show = LengthUnit::FeetInches,
    }
    let solution = roof::solve(&job).map_err(|error| Refusal::of_roof(&error))?;
    // What the job does not ask for, or what is for an engineer, is not in its papers.
    let (document, _) = Document::of(&job, solution);
    serde_json::to_string(&document).map_err(not_understood)
}
