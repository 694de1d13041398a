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
use crate::opening::Open;
use crate::refusal::Refusal;
use crate::views::{SiteAccess, SiteAsk, SiteLifts, SitePictureAsk, SiteProgramme, SiteRecords, SiteSteps};
use crate::wording::capital;
use job::Job;
use roof::solution::Solution;
use site::records::RecordsFault;
use site::whole::Site;
use words::Writing;

/// Putting up a roof as it was worked out last, so that going back and forth between screens costs nothing.
#[derive(Debug)]
pub(crate) struct Sited {
    text: String,
    found: Result<Site, Refusal>,
}

impl Sited {
    /// Works it out.
    pub(crate) fn of(text: &str, job: &Job, solution: &Solution) -> Self {
        let found = site::whole::site(job, solution).map_err(|fault| {
            Refusal::new(
                "no-site",
                capital(&fault.to_string()),
                "Change what is named here; without it nothing can be said of putting the roof up",
            )
        });
        Self { text: text.to_owned(), found }
    }

    /// Whether it is that of a text.
    pub(crate) fn is_of(&self, text: &str) -> bool {
        self.text == text
    }

    /// It holds for a text that differs from that of its job in nothing that has to do with putting up.
    pub(crate) fn follow(&mut self, before: &Option<Open>, after: &str) {
        if before.as_ref().is_some_and(|open| self.is_of(&open.text)) {
            after.clone_into(&mut self.text);
        }
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
pub(crate) fn steps(desk: &mut Desk, _takes: ()) -> Result<SiteSteps, Refusal> {
    desk.work_out_site()?;
    Ok(steps::of(desk.job()?, desk.site()?, &writing(desk)?))
}

/// The picture of a step.
pub(crate) fn picture(desk: &mut Desk, ask: SitePictureAsk) -> Result<::picture::Picture, Refusal> {
    desk.work_out_site()?;
    picture::of(desk.solution()?, desk.site()?, &writing(desk)?, &ask)
}

/// The lifts.
pub(crate) fn lifts(desk: &mut Desk, _takes: ()) -> Result<SiteLifts, Refusal> {
    desk.work_out_site()?;
    Ok(lifts::of(desk.job()?, desk.site()?, &writing(desk)?))
}

/// The programme.
pub(crate) fn programme(desk: &mut Desk, ask: SiteAsk) -> Result<SiteProgramme, Refusal> {
    desk.work_out_site()?;
    Ok(programme::of(desk.open()?, &desk.site()?.programme, &writing(desk)?, ask.width))
}

/// The access.
pub(crate) fn access(desk: &mut Desk, _takes: ()) -> Result<SiteAccess, Refusal> {
    desk.work_out_site()?;
    Ok(access::of(desk.open()?, desk.site()?, &writing(desk)?))
}

/// The papers.
pub(crate) fn records(desk: &mut Desk, _takes: ()) -> Result<SiteRecords, Refusal> {
    desk.work_out_site()?;
    Ok(records::of(desk.job()?, desk.site()?, &writing(desk)?))
}

/// The calendar file.
pub(crate) fn calendar(desk: &mut Desk, _takes: ()) -> Result<String, Refusal> {
    desk.work_out_site()?;
    site::records::calendar(desk.job()?, &desk.site()?.programme).map_err(|fault: RecordsFault| {
        Refusal::new("no-calendar", capital(&fault.to_string()), "Write the first day on site, then save it again")
    })
}

fn writing(desk: &Desk) -> Result<Writing, Refusal> {
    let currency = order::buying::figures::Figures::of(&desk.job()?.region).currency.clone();
    Ok(Writing { lengths: desk.lengths(), words: desk.dialect(), currency })
}
