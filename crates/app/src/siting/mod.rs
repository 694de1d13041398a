//! Putting the roof up on the screen: worked out when it is asked for, worded here.

mod access;
mod bars;
mod fields;
mod lifts;
mod picture;
mod programme;
mod records;
mod steps;
mod words;

use crate::desk::Desk;
use crate::refusal::Refusal;
use crate::side_desk::{SideDesk, without_ticks};
use crate::views::{SiteAccess, SiteAsk, SiteLifts, SitePictureAsk, SiteProgramme, SiteRecords, SiteSteps};
use crate::wording::Writing;
use crate::wording::capital;
use job::Job;
use roof::solution::Solution;
use site::records::RecordsFault;
use site::whole::Site;

/// Putting up a roof as it was worked out last, so that going back and forth between screens costs nothing.
#[derive(Debug)]
pub(crate) struct Sited {
    /// The job, without its ticks: they change nothing in how it is put up.
    job: Job,
    found: Result<Site, Refusal>,
}

impl Sited {
    /// Works it out.
    pub(crate) fn of(job: &Job, solution: &Solution) -> Self {
        let found = site::whole::site(job, solution).map_err(|fault| {
            Refusal::new(
                "no-site",
                capital(&fault.to_string()),
                "Change what is named here; without it nothing can be said of putting the roof up",
            )
        });
        Self { job: without_ticks(job), found }
    }

    /// Whether it is that of a job.
    pub(crate) fn is_of(&self, job: &Job) -> bool {
        self.job == without_ticks(job)
    }

    /// What was found.
    pub(crate) fn found(&self) -> Result<&Site, Refusal> {
        self.found.as_ref().map_err(Clone::clone)
    }
}

/// Whether a key has to do with putting up only: the roof stays as it is.
pub(crate) fn is_about_site(path: &str) -> bool {
    ["programme.", "access.", "record."].iter().any(|group| path.starts_with(group))
}

/// The steps.
pub(crate) fn steps(side: &mut SideDesk, _takes: ()) -> Result<SiteSteps, Refusal> {
    side.work_out_site()?;
    Ok(steps::of(side.desk.job()?, side.site()?, &writing(&side.desk)?))
}

/// The picture of a step.
pub(crate) fn picture(side: &mut SideDesk, ask: SitePictureAsk) -> Result<::picture::Picture, Refusal> {
    side.work_out_site()?;
    picture::of(side.desk.solution()?, side.site()?, &writing(&side.desk)?, &ask)
}

/// The lifts.
pub(crate) fn lifts(side: &mut SideDesk, _takes: ()) -> Result<SiteLifts, Refusal> {
    side.work_out_site()?;
    Ok(lifts::of(side.desk.job()?, side.site()?, &writing(&side.desk)?))
}

/// The programme.
pub(crate) fn programme(side: &mut SideDesk, ask: SiteAsk) -> Result<SiteProgramme, Refusal> {
    side.work_out_site()?;
    Ok(programme::of(side.desk.open()?, &side.site()?.programme, &writing(&side.desk)?, ask.width))
}

/// The access.
pub(crate) fn access(side: &mut SideDesk, _takes: ()) -> Result<SiteAccess, Refusal> {
    side.work_out_site()?;
    Ok(access::of(side.desk.open()?, side.site()?, &writing(&side.desk)?))
}

/// The papers.
pub(crate) fn records(side: &mut SideDesk, _takes: ()) -> Result<SiteRecords, Refusal> {
    side.work_out_site()?;
    Ok(records::of(side.desk.job()?, side.site()?, &writing(&side.desk)?))
}

/// The calendar file.
pub(crate) fn calendar(side: &mut SideDesk, _takes: ()) -> Result<String, Refusal> {
    side.work_out_site()?;
    site::records::calendar(side.desk.job()?, &side.site()?.programme).map_err(|fault: RecordsFault| {
        Refusal::new("no-calendar", capital(&fault.to_string()), "Write the first day on site, then save it again")
    })
}

fn writing(desk: &Desk) -> Result<Writing, Refusal> {
    let currency = order::buying::figures::Figures::of(&desk.job()?.region).currency.clone();
    Ok(Writing { lengths: desk.lengths(), words: desk.dialect(), currency })
}
