//! Hours and days of each phase.

use super::labour::{Labour, Rate};
use super::out::Part;
use super::phases::{Gang, Phase};
use super::work::{Quantity, Work};
use crate::access::Basis;
use job::{ProgrammeAsked, WorkItem};
use std::collections::BTreeMap;

/// Hours of one phase.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PhaseHours {
    /// What they are made up of.
    pub parts: Vec<Part>,
    /// Working days that are given outright, in place of hours.
    pub days: Option<f64>,
}

impl PhaseHours {
    /// Hours of one person, `[low, likely, high]`.
    pub fn total(&self) -> [f64; 3] {
        self.parts.iter().fold([0.0; 3], |sum, part| core::array::from_fn(|k| sum[k] + part.hours[k]))
    }
}

/// Where hours that a job gives are from.
const OF_THE_JOB: &str = "[programme.hours] of the job";

/// Hours of every phase with work in it, likely ones from the job where it gives them.
pub(super) fn hours(asked: &ProgrammeAsked, labour: &Labour, work: &Work) -> BTreeMap<Phase, PhaseHours> {
    let mut phases: BTreeMap<Phase, PhaseHours> = BTreeMap::new();
    let mut add = |phase: Phase, part: Part| {
        let hours = phases.entry(phase).or_insert_with(|| PhaseHours { parts: Vec::new(), days: None });
        hours.parts.push(part);
    };
    for ((phase, item), quantity) in &work.lines {
        let Some(rate) = labour.rate(*item, work.covering, work.hipped) else { continue };
        let (rate, basis) = match asked.hours.get(item) {
            Some(own) => (Rate { source: OF_THE_JOB.to_owned(), ..rate.at(*own) }, Basis::Job),
            None => (rate.clone(), rate.standing.into()),
        };
        let fixing = part(*item, &rate, *quantity, 1.0 - rate.bench, basis);
        if rate.bench > 0.0 {
            add(Phase::Cutting, part(*item, &rate, *quantity, rate.bench, basis));
        }
        add(*phase, fixing);
    }
    let scaffold = [
        (Phase::AccessUp, "bay_lift_up", &labour.scaffold.up, asked.scaffold_up),
        (Phase::AccessDown, "bay_lift_down", &labour.scaffold.down, asked.scaffold_down),
    ];
    for (phase, item, rate, days) in scaffold {
        let hours = rate.hours(work.bay_lifts, 0.0);
        let part = Part {
            item: item.to_owned(),
            amount: work.bay_lifts,
            unit: "each".to_owned(),
            hours,
            source: rate.source.clone(),
            basis: rate.standing.into(),
        };
        phases.insert(phase, PhaseHours { parts: vec![part], days });
    }
    phases
}

fn part(item: WorkItem, rate: &Rate, quantity: Quantity, share: f64, basis: Basis) -> Part {
    Part {
        item: item.word().to_owned(),
        amount: quantity.amount,
        unit: item.unit().to_owned(),
        hours: rate.hours(quantity.amount, quantity.board_feet).map(|hours| hours * share),
        source: rate.source.clone(),
        basis,
    }
}

/// People of a gang at work together.
pub(super) fn people(gang: Gang, asked: &ProgrammeAsked, labour: &Labour) -> u32 {
    match gang {
        // Checked to be 1 or more when the file was read, and small.
        Gang::Scaffolders => labour.scaffold.gang.value as u32,
        Gang::Carpenters => asked.crew.max(1),
        Gang::Roofers => asked.roofers.max(1),
    }
}
