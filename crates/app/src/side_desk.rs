//! The side desk: the open job over again, for what takes long or is wanted
//! late. The roof on the [`Desk`] never waits for it, and in the browser it is
//! a module of its own.

use crate::calls::calls;
use crate::checks::{self, Checked};
use crate::desk::Desk;
use crate::ordering::{self, Ordered};
use crate::papers;
use crate::refusal::Refusal;
use crate::siting::{self, Sited};
use crate::views::{
    CuttingAsk, CuttingGroup, LayoutAsk, LayoutView, OrderView, SiteAccess, SiteAsk, SiteLifts, SitePictureAsk,
    SiteProgramme, SiteRecords, SiteSteps, StrengthLine, StrengthOf, StrengthView, StrengthWhy, StrengthWorking,
    YardAsk, YardRow,
};
use job::Job;
use picture::Picture;
use std::collections::BTreeMap;

/// A desk that also says how far timbers are used, what to buy, how to cut it and how the roof is put up.
#[derive(Debug, Default)]
pub struct SideDesk {
    pub(crate) desk: Desk,
    checked: Option<Checked>,
    ordered: Option<Ordered>,
    sited: Option<Sited>,
}

impl SideDesk {
    /// Answers a call of its own or one of [`Desk::call`]: its name, and what it takes as JSON. Gives JSON.
    ///
    /// # Errors
    /// A [`Refusal`] with what is wrong and what to do; the job is as it was.
    pub fn call(&mut self, name: &str, takes: &str) -> Result<String, Refusal> {
        answer(self, name, takes).unwrap_or_else(|| self.desk.call(name, takes))
    }

    /// Everything worked out from the open job as JSON (a `Document`), for whoever makes its papers: with lengths as they
    /// are shown.
    ///
    /// # Errors
    /// When no job is open, or no roof can be made of it.
    pub fn for_papers(&mut self) -> Result<String, Refusal> {
        papers::document(self)
    }

    /// The strength of the open job: as kept, or worked out now. Nothing when the job does not ask for it.
    pub(crate) fn checked(&mut self) -> Result<Option<&strength::whole::Checks>, Refusal> {
        let (job, solution) = (self.desk.job()?, self.desk.solution()?);
        if self.checked.as_ref().is_none_or(|kept| !kept.is_of(job)) {
            self.checked = Some(Checked::of(job, solution));
        }
        self.checked.as_ref().map_or(Ok(None), Checked::found)
    }

    /// Works out the order of the open job, unless it is kept.
    pub(crate) fn work_out_order(&mut self) -> Result<(), Refusal> {
        self.desk.solution()?;
        if self.order().is_ok() {
            return Ok(());
        }
        // A roof whose strength can't be worked out is ordered by habit.
        let _ = self.checked();
        let before = self.ordered.take();
        let (job, solution) = (self.desk.job()?, self.desk.solution()?);
        let checks = self.checked.as_ref().and_then(|kept| kept.found().ok().flatten());
        let strength = checks.map(|checks| &checks.strength);
        self.ordered = Some(Ordered::of(job, solution, strength, before));
        Ok(())
    }

    /// The order that was worked out last, if it is that of the open job.
    pub(crate) fn order(&self) -> Result<&order::whole::Order, Refusal> {
        let job = self.desk.job()?;
        let kept = self.ordered.as_ref().filter(|kept| kept.is_of(job));
        kept.ok_or_else(|| Refusal::new("no-order", "The order was not worked out yet", "Open it again"))?.found()
    }

    /// Works out how the open job is put up, unless it is kept.
    pub(crate) fn work_out_site(&mut self) -> Result<(), Refusal> {
        let (job, solution) = (self.desk.job()?, self.desk.solution()?);
        if self.sited.as_ref().is_none_or(|kept| !kept.is_of(job)) {
            self.sited = Some(Sited::of(job, solution));
        }
        Ok(())
    }

    /// How the open job is put up, as it was worked out last, if it is that of the open job.
    pub(crate) fn site(&self) -> Result<&site::whole::Site, Refusal> {
        let job = self.desk.job()?;
        let kept = self.sited.as_ref().filter(|kept| kept.is_of(job));
        kept.ok_or_else(|| Refusal::new("no-site", "Putting up was not worked out yet", "Open it again"))?.found()
    }
}

calls! {
    /// Every call that the side desk answers: those of the core, and what is asked beside the roof.
    SideCalls extends Calls of SideDesk;
    /// How far the timbers of the open job are used. Worked out when it is asked for, and kept while the job is the same.
    strength: () => StrengthView = strength;
    /// The working of a check of a timber.
    strength_working: StrengthWhy => StrengthWorking = strength_working;
    /// The strength of a piece in one line; nothing when the job says no loads, or the piece carries none.
    strength_of: StrengthOf => Option<StrengthLine> = strength_of;
    /// What to buy for the open job. Worked out when it is asked for, and kept while the job is the same.
    order: () => OrderView = order;
    /// How to cut what is bought.
    cutting: CuttingAsk => Vec<CuttingGroup> = cutting;
    /// How some lengths are cut, cut by cut.
    layout: LayoutAsk => LayoutView = layout;
    /// Offcuts that a device keeps from job to job, as shown.
    offcuts: YardAsk => Vec<YardRow> = offcuts;
    /// The prices of the open job as a price list.
    price_list: () => String = price_list;
    /// The steps of putting the open job up. Worked out when it is asked for, and kept while the job is the same.
    site_steps: () => SiteSteps = siting::steps;
    /// The roof at a step.
    site_picture: SitePictureAsk => Picture = siting::picture;
    /// What is lifted.
    site_lifts: () => SiteLifts = siting::lifts;
    /// When the roof goes up.
    site_programme: SiteAsk => SiteProgramme = siting::programme;
    /// What it is put up from.
    site_access: () => SiteAccess = siting::access;
    /// The papers of the access.
    site_records: () => SiteRecords = siting::records;
    /// The programme as a calendar file.
    site_calendar: () => String = siting::calendar;
}

fn strength(side: &mut SideDesk, _takes: ()) -> Result<StrengthView, Refusal> {
    checks::view(side)
}

fn strength_working(side: &mut SideDesk, takes: StrengthWhy) -> Result<StrengthWorking, Refusal> {
    checks::working(side, &takes)
}

fn strength_of(side: &mut SideDesk, takes: StrengthOf) -> Result<Option<StrengthLine>, Refusal> {
    checks::line(side, &takes.mark)
}

fn order(side: &mut SideDesk, _takes: ()) -> Result<OrderView, Refusal> {
    ordering::view(side)
}

fn cutting(side: &mut SideDesk, takes: CuttingAsk) -> Result<Vec<CuttingGroup>, Refusal> {
    ordering::cutting(side, &takes)
}

fn layout(side: &mut SideDesk, takes: LayoutAsk) -> Result<LayoutView, Refusal> {
    ordering::layout(side, &takes)
}

fn offcuts(side: &mut SideDesk, takes: YardAsk) -> Result<Vec<YardRow>, Refusal> {
    Ok(ordering::offcuts(side, &takes))
}

fn price_list(side: &mut SideDesk, _takes: ()) -> Result<String, Refusal> {
    ordering::price_list(&side.desk)
}

/// A job as all of this sees it: ticks change nothing in it.
pub(crate) fn without_ticks(job: &Job) -> Job {
    Job { done: BTreeMap::new(), ..job.clone() }
}
