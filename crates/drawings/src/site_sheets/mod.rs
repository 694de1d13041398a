//! Sheets for putting the roof up and for its access, from the plain data of `site`.

mod access;
#[cfg(test)]
mod checks;
mod gantt;
mod holds;
mod layout;
mod lifts;
mod parts;
mod plan;
mod programme;
mod records;
mod statements;
mod steps;
mod temporary;
mod view;

use roof::solution::Solution;
use site::access::Access;
use site::lifts::Lift;
use site::programme::Programme;
use site::records::Records;
use site::sequence::PuttingUp;
use site::whole::Site;

use crate::page::Page;

/// What the sheets for the site are made from; what is not there has no sheets.
#[derive(Clone, Copy, Default)]
pub struct SitePapers<'a> {
    /// The order of work with its props, braces, holds and straps.
    pub putting_up: Option<&'a PuttingUp>,
    /// What every timber weighs, and who lifts it.
    pub lifts: &'a [Lift],
    /// When the work is done.
    pub programme: Option<&'a Programme>,
    /// What stands round the roof.
    pub access: Option<&'a Access>,
    /// The papers of access, risks and method.
    pub records: Option<&'a Records>,
}

impl<'a> SitePapers<'a> {
    /// All that there is of a site.
    #[must_use]
    pub fn of(site: &'a Site) -> Self {
        Self {
            putting_up: site.putting_up.as_ref(),
            lifts: &site.lifts,
            programme: Some(&site.programme),
            access: Some(&site.access),
            records: Some(&site.records),
        }
    }
}

/// All sheets for the site, in the order in which they are wanted.
pub fn site_pages(solution: &Solution, papers: &SitePapers<'_>) -> Vec<Page> {
    let mut pages = Vec::new();
    if let Some(putting_up) = papers.putting_up {
        pages.extend(steps::pages(solution, putting_up));
        pages.extend(temporary::pages(solution, putting_up));
        pages.extend(holds::pages(solution, putting_up));
    }
    pages.extend(lifts::pages(solution, papers.lifts));
    if let Some(programme) = papers.programme {
        pages.extend(programme::pages(programme));
    }
    if let Some(access) = papers.access {
        pages.extend(access::pages(solution, access));
    }
    if let Some(records) = papers.records {
        pages.extend(records::pages(records));
    }
    pages
}
