//! What is said about a programme.

use super::out::Activity;
use crate::access::Basis;
use job::Job;
use std::collections::BTreeMap;

/// The hire as it is planned.
pub(super) const AS_PLANNED: &str = "as planned";
/// The hire if the work is done by the ninetieth percentile.
pub(super) const NINE_IN_TEN: &str = "done by then nine times in ten";
/// The hire with two more weeks of rain.
pub(super) const TWO_WET_WEEKS: &str = "two more wet weeks";

/// Every figure of hours that is not the job's own, once.
pub(super) fn estimates(job: &Job, activities: &[Activity]) -> Vec<String> {
    let mut by_item: BTreeMap<&str, (f64, f64, &str, &str)> = BTreeMap::new();
    for part in activities.iter().flat_map(|one| &one.parts).filter(|part| part.basis != Basis::Job) {
        let entry = by_item.entry(&part.item).or_insert((part.amount, 0.0, &part.unit, &part.source));
        entry.1 += part.hours[1];
    }
    let mut list: Vec<String> = by_item
        .into_iter()
        .filter(|(_, (amount, ..))| *amount > 0.0)
        .map(|(item, (amount, hours, unit, source))| {
            let each = job::written::fixed(hours / amount, 2);
            let word = item.trim_end_matches("_each").trim_end_matches("_m2").trim_end_matches("_m").replace('_', " ");
            format!(
                "{word}: {each} h {} ({source})",
                if unit == "each" { "each".to_owned() } else { format!("a {unit}") }
            )
        })
        .collect();
    if job.programme.weather_loss.is_none() {
        list.push("weather: share of each month by habit, not by the forecast".to_owned());
    }
    list
}

/// What a programme does not say.
pub(super) fn cautions(job: &Job) -> Vec<String> {
    let mut list = vec![
        "Hours that the job does not give are estimates: put your own in [programme.hours].".to_owned(),
        "Carpenters are taken as one gang that does one thing at a time; deliveries, other trades and waiting for inspection are not in it."
            .to_owned(),
        "Nobody goes on the roof because a programme says so: who is in charge of the site stops for wind, ice and wet."
            .to_owned(),
    ];
    if job.programme.start.is_none() {
        list.push(
            "No start is written: days are numbered, weeks are whole, and the weather is that of a mean month."
                .to_owned(),
        );
    }
    list
}
