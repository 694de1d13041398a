//! Everything that is worked out from a job, with lines for a terminal.

use document::{Document, Missing};
use job::Job;
use roof::solution::Solution;

use crate::strong::{self, Outcome};
use crate::{ordering, progress, setting_up};

/// Works out everything from a solved job.
pub fn of(job: &Job, solution: Solution) -> (Document, Missing) {
    progress::during("working out strength, order and site", || Document::of(job, solution))
}

/// Strength, order and site, a line each, for the end of a summary; and what could not be worked out.
pub fn lines(document: &Document, missing: Missing) -> String {
    let strength = match (&document.strength, missing.strength) {
        (Some(part), _) => strong::in_short(&part.strength),
        (None, Some(fault)) => Outcome::missing(fault).line(),
        (None, None) => String::new(),
    };
    let order = match (&document.order, missing.order) {
        (Some(order), _) => ordering::in_short(order),
        (None, why) => cannot("order", why.map(|w| w.to_string())),
    };
    let site = match (&document.site, missing.site) {
        (Some(site), _) => setting_up::in_short(site),
        (None, why) => cannot("putting up", why.map(|w| w.to_string())),
    };
    strength + &order + &site
}

/// What could not be worked out, for whoever reads only the document.
pub fn missing(missing: &Missing) -> String {
    let strength = match &missing.strength {
        Some(fault) if *fault != strength::whole::CheckFault::NoLoads => cannot("strength", Some(fault.to_string())),
        _ => String::new(),
    };
    let order = missing.order.as_ref().map_or_else(String::new, |why| cannot("order", Some(why.to_string())));
    let site = missing.site.as_ref().map_or_else(String::new, |why| cannot("putting up", Some(why.to_string())));
    strength + &order + &site
}

fn cannot(what: &str, why: Option<String>) -> String {
    why.map_or_else(String::new, |why| format!("\nLOOK  {what}: it could not be worked out: {why}\n"))
}
