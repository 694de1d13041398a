//! Weeks and cost of hire, inspections, and whether the work must be notified.

use super::calendar::{Calendar, WEEK};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// Weeks of hire for so many days of the calendar: a week begun is paid for.
#[must_use]
pub const fn weeks(calendar_days: u32) -> u32 {
    calendar_days.div_ceil(WEEK)
}

/// Working days for so much net work when a share of every day is lost.
#[must_use]
pub fn with_loss(net_days: f64, loss: f64) -> f64 {
    net_days / (1.0 - loss)
}

/// What a hire costs: a price with some weeks in it, and each week more.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Terms {
    /// Putting up, the weeks within it, taking down.
    pub lump: f64,
    /// Weeks within that.
    pub included_weeks: u32,
    /// Each week more.
    pub extra_week: f64,
}

impl Terms {
    /// Weeks beyond those included, and the whole cost.
    #[must_use]
    pub fn cost(&self, weeks: u32) -> (u32, f64) {
        let extra = weeks.saturating_sub(self.included_weeks);
        (extra, self.lump + f64::from(extra) * self.extra_week)
    }
}

/// The hire as one course of the work makes it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HireCase {
    /// Which course, e.g. `as planned`.
    pub name: String,
    /// Days of the calendar from handover to the end of hire.
    pub calendar_days: u32,
    /// Weeks that are paid for.
    pub weeks: u32,
    /// Weeks beyond those in the price.
    pub extra_weeks: u32,
    /// The whole cost, in the money of the job; absent without a price.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cost: Option<f64>,
}

/// A case of hire. Without a price for more weeks, the cost is known only where there are none.
#[must_use]
pub fn case(
    name: &str,
    calendar_days: u32,
    lump: Option<f64>,
    included_weeks: u32,
    extra_week: Option<f64>,
) -> HireCase {
    let weeks = weeks(calendar_days);
    let extra_weeks = weeks.saturating_sub(included_weeks);
    let week = if extra_weeks == 0 { Some(0.0) } else { extra_week };
    let terms = lump.zip(week).map(|(lump, extra_week)| Terms { lump, included_weeks, extra_week });
    let cost = terms.map(|terms| terms.cost(weeks).1);
    HireCase { name: name.to_owned(), calendar_days, weeks, extra_weeks, cost }
}

/// A day on which the access is inspected.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Inspection {
    /// Its number from 1.
    pub number: u32,
    /// Working day from 1.
    pub day: u32,
    /// The date, if the job has a start.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub date: Option<String>,
}

/// Working days on which to inspect: the first day of use, then never more than `interval` days of the calendar after
/// the one before, up to the day before the last. A day off is gone round by inspecting earlier.
#[must_use]
pub fn inspections(calendar: &Calendar, from: u32, to: u32, interval: u32) -> Vec<Inspection> {
    let mut list = Vec::new();
    let (mut day, interval) = (from.max(1), interval.max(1));
    while day <= to {
        let date = calendar.date(day);
        let number = list.len() as u32 + 1;
        list.push(Inspection { number, day, date: date.map(|date| date.to_string()) });
        day = next(calendar, day, date, interval);
    }
    list
}

/// The last working day within the interval after one; the next working day where there is none.
fn next(calendar: &Calendar, day: u32, date: Option<Date>, interval: u32) -> u32 {
    let Some(date) = date else {
        return day + (interval * calendar.days_a_week() / WEEK).max(1);
    };
    let mut last = day + 1;
    let within = |other: u32| {
        calendar.date(other).is_some_and(|other| (other - date).get_days() <= i32::try_from(interval).unwrap_or(0))
    };
    while within(last + 1) {
        last += 1;
    }
    last
}

/// What makes a project one that must be notified.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NotifyAt {
    /// More working days than this, together with more workers than `workers`.
    pub days: f64,
    /// More workers at once than this.
    pub workers: f64,
    /// More person-days than this.
    pub person_days: f64,
}

impl NotifyAt {
    /// Whether it must be.
    #[must_use]
    pub fn notifiable(&self, days: f64, workers: f64, person_days: f64) -> bool {
        (days > self.days && workers > self.workers) || person_days > self.person_days
    }
}
