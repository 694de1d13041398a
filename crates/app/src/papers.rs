//! A job solved for whoever makes its papers.

use crate::refusal::Refusal;
use crate::views::{LengthStyle, Settings};
use job::LengthUnit;
use roof::solution::Solution;
use serde::{Deserialize, Serialize};
use strength::whole::Strength;
use strength::working::Line;

/// The solution and strength of a job as JSON ([`ForPapers`]), with lengths as the settings (also JSON) want them.
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
    // A job that says nothing of loads, or a roof that is for an engineer, has papers without strength.
    let strength = strength::whole::check(&job, &solution).ok().map(|checks| {
        let most = checks.strength.members.first();
        let working = most.and_then(|m| checks.working(&m.mark, None)).unwrap_or_default();
        StrengthForPapers { strength: checks.strength, working }
    });
    serde_json::to_string(&ForPapers { solution, strength }).map_err(not_understood)
}

/// What papers are made from.
#[derive(Debug, Serialize, Deserialize)]
pub struct ForPapers {
    /// The solved job.
    pub solution: Solution,
    /// Its strength, when it was asked for and could be worked out.
    pub strength: Option<StrengthForPapers>,
}

/// Strength for papers.
#[derive(Debug, Serialize, Deserialize)]
pub struct StrengthForPapers {
    /// The results.
    pub strength: Strength,
    /// The working of the timber that is used most.
    pub working: Vec<Line>,
}
