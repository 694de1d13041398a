//! What there is to do, counted from the solved roof.

use super::labour::{Labour, board_feet};
use super::phases::{Phase, of_member};
use super::{ProgrammeFault, quantities};
use crate::access::layout::layout;
use job::{Covering, Job, WorkItem};
use roof::solution::{LineKind, Member, Solution};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// So much of one sort of work in one phase.
#[derive(Clone, Copy, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Quantity {
    /// Pieces, metres or square metres, by the item.
    pub amount: f64,
    /// Nominal board feet of the timbers, for hours that are given by them.
    pub board_feet: f64,
}

/// What there is to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// By phase and item.
    pub lines: BTreeMap<(Phase, WorkItem), Quantity>,
    /// Bays of all lifts of the access.
    pub bay_lifts: f64,
    /// The roof has hips or valleys.
    pub hipped: bool,
    /// What covers it; plain tiles where the job does not say.
    pub covering: Covering,
}

impl Work {
    /// Count the work of a job.
    ///
    /// # Errors
    /// A region without hours or figures for access.
    pub fn of(job: &Job, solution: &Solution) -> Result<Self, ProgrammeFault> {
        let labour = Labour::of(&job.region)?;
        let access = layout(job, solution).map_err(|_| ProgrammeFault::NoRegion(job.region.clone()))?;
        let mut work = Self {
            lines: BTreeMap::new(),
            bay_lifts: f64::from(access.bay_lifts),
            hipped: solution.lines.iter().any(|line| matches!(line.kind, LineKind::Hip | LineKind::Valley)),
            covering: job.carried.as_ref().map_or(Covering::PlainTile, |carried| carried.covering),
        };
        for member in &solution.members {
            work.member(member);
        }
        let openings = |dormer: bool| solution.openings.iter().filter(|one| (one.kind == "dormer") == dormer).count();
        work.add(Phase::Openings, WorkItem::Opening, openings(false) as f64, 0.0);
        work.add(Phase::Openings, WorkItem::Dormer, openings(true) as f64, 0.0);
        work.add(Phase::Plates, WorkItem::Strap, quantities::straps(solution, labour.straps.value), 0.0);
        let area = quantities::covered_m2(solution);
        work.add(Phase::UnderlayBattens, WorkItem::UnderlayBattens, area, 0.0);
        work.add(Phase::Covering, WorkItem::Covering, area, 0.0);
        work.add(Phase::Edges, WorkItem::Edge, quantities::edges_m(solution), 0.0);
        Ok(work)
    }

    fn member(&mut self, member: &Member) {
        let Some((phase, item)) = of_member(member.kind) else { return };
        let length = member.cut_length_mm / 1000.0;
        let amount = if item.unit() == "m" { length } else { 1.0 };
        let feet = board_feet(member.size.thickness_mm, member.size.depth_mm, length);
        self.add(phase, item, amount, feet);
    }

    fn add(&mut self, phase: Phase, item: WorkItem, amount: f64, board_feet: f64) {
        if amount > 0.0 {
            let quantity = self.lines.entry((phase, item)).or_default();
            quantity.amount += amount;
            quantity.board_feet += board_feet;
        }
    }
}
