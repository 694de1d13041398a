//! Everything about putting a roof up as one document: what `solve --json` writes under `site`, and what sheets and
//! screens show.

use crate::access::{Access, AccessFault, access};
use crate::lifts::{Density, Lift, Lifting, Pack, lifts, packs};
use crate::programme::{Programme, ProgrammeFault, Work, programme};
use crate::records::{Records, records};
use crate::sequence::{PuttingUp, putting_up};
use job::Job;
use roof::solution::Solution;
use serde::{Deserialize, Serialize};

/// Putting a roof up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// The order of work; none when it could not be found, and then the next field says why.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub putting_up: Option<PuttingUp>,
    /// Why there is no order of work.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub putting_up_refused: Option<String>,
    /// Every timber as it is lifted; empty when the region keeps no figures, and then the next field says so.
    pub lifts: Vec<Lift>,
    /// Why there are no lifts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lifts_refused: Option<String>,
    /// Timbers of one kind as they come up with the hoist.
    pub packs: Vec<Pack>,
    /// When it goes up, and for how long the access stands.
    pub programme: Programme,
    /// What it is put up from.
    pub access: Access,
    /// The papers.
    pub records: Records,
}

/// Why nothing can be said of the site.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SiteFault {
    /// The programme.
    #[error(transparent)]
    Programme(#[from] ProgrammeFault),
    /// The access.
    #[error(transparent)]
    Access(#[from] AccessFault),
}

/// Everything about putting a roof up. An order of work or lifts that cannot be found are said in their
/// place; the rest stands.
///
/// # Errors
/// A region without figures, and a programme without an end.
pub fn site(job: &Job, solution: &Solution) -> Result<Site, SiteFault> {
    let (putting_up, putting_up_refused) = match putting_up(job, solution) {
        Ok(found) => (Some(found), None),
        Err(why) => (None, Some(why.to_string())),
    };
    let found =
        Lifting::of(&solution.region).and_then(|rules| lifts(solution, &Density::of(rules, job.strong.class.name())));
    let (lifts, lifts_refused) = match found {
        Ok(lifts) => (lifts, None),
        Err(why) => (Vec::new(), Some(why.to_string())),
    };
    let packs = packs(&lifts, job.ordering.lift);
    let work = Work::of(job, solution)?;
    let programme = programme(job, solution, &work)?;
    let access = access(job, solution, &programme)?;
    let records = records(job, &access, &programme);
    Ok(Site { putting_up, putting_up_refused, lifts, lifts_refused, packs, programme, access, records })
}
