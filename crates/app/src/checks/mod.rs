//! Strength on the screen: worked out when it is asked for, worded here.

mod figures;
mod form;
mod found;
mod lines;

use crate::refusal::Refusal;
use crate::side_desk::{SideDesk, without_ticks};
use crate::views::{StrengthLine, StrengthView, StrengthWhy, StrengthWorking};
use crate::wording::Writing;
use crate::wording::capital;
use job::Job;
use roof::solution::Solution;
use strength::whole::{CheckFault, Checks, check};

/// The strength of a job as it was worked out last, so that going back and forth between screens costs nothing.
#[derive(Debug)]
pub(crate) struct Checked {
    /// The job, without its ticks: they change nothing that carries.
    job: Job,
    found: Result<Checks, CheckFault>,
}

impl Checked {
    /// Works it out.
    pub(crate) fn of(job: &Job, solution: &Solution) -> Self {
        Self { job: without_ticks(job), found: check(job, solution) }
    }

    /// Whether it is that of a job.
    pub(crate) fn is_of(&self, job: &Job) -> bool {
        self.job == without_ticks(job)
    }

    /// What was found; nothing when the job does not ask for it.
    pub(crate) fn found(&self) -> Result<Option<&Checks>, Refusal> {
        match &self.found {
            Ok(checks) => Ok(Some(checks)),
            Err(CheckFault::NoLoads) => Ok(None),
            Err(fault) => Err(Refusal::new(
                "no-strength",
                capital(&fault.to_string()),
                "Change what is named here; without it the strength can't be worked out",
            )),
        }
    }
}

/// How far the timbers are used, or what to write first.
pub(crate) fn view(side: &mut SideDesk) -> Result<StrengthView, Refusal> {
    let writing = Writing::new(side.desk.lengths(), side.desk.dialect());
    if let Some(checks) = side.checked()? {
        return Ok(StrengthView::Checked(found::of(&checks.strength, &writing)));
    }
    Ok(StrengthView::NotAsked(form::of(&side.desk.open()?.said, &writing)))
}

/// The working of a check.
pub(crate) fn working(side: &mut SideDesk, ask: &StrengthWhy) -> Result<StrengthWorking, Refusal> {
    let writing = Writing::new(side.desk.lengths(), side.desk.dialect());
    let checks = side.checked()?.ok_or_else(|| {
        Refusal::new("no-loads", "The job does not say what the roof carries", "Write its loads under Strength")
    })?;
    lines::of(checks, &writing, ask)
}

/// A piece in one line.
pub(crate) fn line(side: &mut SideDesk, mark: &str) -> Result<Option<StrengthLine>, Refusal> {
    let writing = Writing::new(side.desk.lengths(), side.desk.dialect());
    let solution = side.desk.solution()?;
    let piece = solution.members.iter().find(|m| m.mark == mark).map_or(mark, |m| m.count_as.as_str());
    let marks: Vec<String> = solution.members.iter().filter(|m| m.count_as == piece).map(|m| m.mark.clone()).collect();
    Ok(side.checked()?.and_then(|checks| lines::one_line(&checks.strength, &writing, &marks)))
}
