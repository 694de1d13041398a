//! What is said about a programme.

use super::out::{Activity, Estimate};
use super::phases::Phase;
use job::Job;
use roof::solution::{NoticeLevel, Solution};
use std::collections::BTreeMap;

/// The hire as it is planned.
pub(super) const AS_PLANNED: &str = "as planned";
/// The hire if the work is done by the ninetieth percentile.
pub(super) const NINE_IN_TEN: &str = "done by then nine times in ten";
/// The hire with two more weeks of rain.
pub(super) const TWO_WET_WEEKS: &str = "two more wet weeks";

/// Hours of one of every item that there is work in, the job's own among them.
pub(super) fn estimates(activities: &[Activity]) -> Vec<Estimate> {
    let mut list: BTreeMap<&str, Estimate> = BTreeMap::new();
    for activity in activities {
        for part in &activity.parts {
            let estimate = list.entry(&part.item).or_insert_with(|| Estimate {
                item: part.item.clone(),
                amount: 0.0,
                unit: part.unit.clone(),
                hours: [0.0; 3],
                source: part.source.clone(),
                basis: part.basis,
            });
            // What is cut at the bench is counted once more where it is fixed.
            if activity.phase != Phase::Cutting {
                estimate.amount += part.amount;
            }
            for (sum, hours) in estimate.hours.iter_mut().zip(part.hours) {
                *sum += hours;
            }
        }
    }
    let each = |mut one: Estimate| {
        one.hours = one.hours.map(|hours| hours / one.amount);
        one
    };
    list.into_values().filter(|one| one.amount > 0.0).map(each).collect()
}

/// What a programme does not say.
pub(super) fn cautions(job: &Job, solution: &Solution) -> Vec<String> {
    let mut list = vec![
        "Hours that the job does not give are estimates: put your own in [programme.hours].".to_owned(),
        "Carpenters are taken as one gang that does one thing at a time; deliveries, other trades and waiting for inspection are not in it."
            .to_owned(),
        "Nobody goes on the roof because a programme says so: who is in charge of the site stops for wind, ice and wet."
            .to_owned(),
    ];
    if solution.notices.iter().any(|notice| notice.level == NoticeLevel::Stop) {
        list.push(
            "The roof cannot be built as it is asked for; see its notices. The hours are those of what is drawn."
                .to_owned(),
        );
    }
    if job.programme.start.is_none() {
        list.push(
            "No start is written: days are numbered, weeks are whole, and the weather is that of a mean month."
                .to_owned(),
        );
    }
    list
}
