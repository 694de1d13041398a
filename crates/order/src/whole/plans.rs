//! Cutting plans that were found before: a plan takes longer than all the rest, and most changes of a job leave most
//! plans as they are.

use super::{TimberOut, timber};
use crate::stock::{Group, Offers, Region, offers};
use job::{Job, Ordering};
use roof::solution::Solution;

/// Plans with what they were asked for.
#[derive(Clone, Debug, Default)]
pub struct Plans(Vec<(Asked, TimberOut)>);

/// All that the plan of one section and class depends on.
#[derive(Clone, Debug, PartialEq)]
struct Asked {
    group: Group,
    offers: Offers,
    ordering: Ordering,
    density: f64,
}

impl Plans {
    /// The plan of each group, found now unless it is here. Those that are not asked for are let go.
    pub(super) fn of(
        &mut self,
        job: &Job,
        solution: &Solution,
        region: &Region,
        groups: &[(Group, f64)],
    ) -> Vec<TimberOut> {
        let mut before = std::mem::take(&mut self.0);
        for (group, density) in groups {
            let asked = Asked {
                group: group.clone(),
                offers: offers(job, region, group),
                ordering: job.ordering,
                density: *density,
            };
            let kept = before.iter().position(|(known, _)| *known == asked).map(|k| before.swap_remove(k).1);
            let found = kept.unwrap_or_else(|| timber::timber(job, solution, region, group, *density));
            self.0.push((asked, found));
        }
        self.0.iter().map(|(_, found)| found.clone()).collect()
    }
}
