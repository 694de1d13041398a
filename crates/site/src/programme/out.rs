//! The programme as plain data: days, dates, ranges, hire.

use super::hire::{HireCase, Inspection};
use super::phases::{Gang, Phase};
use crate::access::Basis;
use serde::{Deserialize, Serialize};

/// A point in the work.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct When {
    /// Working day from 1.
    pub day: u32,
    /// The date, if the job has a start.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub date: Option<String>,
}

/// One phase.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Activity {
    /// Which.
    pub phase: Phase,
    /// Its name on the sheets.
    pub name: String,
    /// Who does it.
    pub gang: Gang,
    /// How many of them.
    pub people: u32,
    /// Hours of work of one person, `[low, likely, high]`.
    pub hours: [f64; 3],
    /// Working days by the likely hours, without weather.
    pub net_days: f64,
    /// When it starts, working days from the first morning.
    pub start: f64,
    /// When it is done.
    pub end: f64,
    /// How much later it could start and nothing else be later, working days.
    pub float: f64,
    /// The end of the whole hangs on it.
    pub critical: bool,
    /// The day on which it starts.
    pub first: When,
    /// The day on which it is done.
    pub last: When,
    /// Phases that must be done before.
    pub after: Vec<Phase>,
    /// What its hours are made up of.
    pub parts: Vec<Part>,
}

/// Hours of one item within a phase.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Part {
    /// The key of the item in a job file.
    pub item: String,
    /// How much.
    pub amount: f64,
    /// `each`, `m` or `m²`.
    pub unit: String,
    /// Hours of one person, `[low, likely, high]`, in this phase.
    pub hours: [f64; 3],
    /// Where the hours of one are from.
    pub source: String,
    /// How they were come by.
    pub basis: Basis,
}

/// Hours of one of an item.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Estimate {
    /// The key in `[programme.hours]`; of the access, `bay_lift_up` and `bay_lift_down`.
    pub item: String,
    /// How much of it there is.
    pub amount: f64,
    /// `each`, `m` or `m²`.
    pub unit: String,
    /// Hours of one person for one, `[low, likely, high]`.
    pub hours: [f64; 3],
    /// Where they are from.
    pub source: String,
    /// How they were come by; an estimate unless they are the job's.
    pub basis: Basis,
}

/// When the work is done, as chance has it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Spread {
    /// Runs with other hours and other weather.
    pub runs: u32,
    /// One run in ten is done by then.
    pub tenth: When,
    /// Every other run is.
    pub middle: When,
    /// Nine runs in ten are.
    pub ninetieth: When,
    /// The same in working days with fractions.
    pub days: [f64; 3],
}

/// A row of the picture of the programme.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bar {
    /// The phase in words.
    pub name: String,
    /// Working days from the first morning.
    pub start: f64,
    /// Working days from the first morning.
    pub end: f64,
    /// The end of the whole hangs on it.
    pub critical: bool,
    /// When it starts.
    pub first: When,
    /// When it is done.
    pub last: When,
}

/// The hire of the access.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Hire {
    /// The first day of use.
    pub from: When,
    /// The last, after which it comes down.
    pub to: When,
    /// Weeks within the price.
    pub included_weeks: u32,
    /// As planned; if the work runs to its ninetieth percentile; with two more wet weeks.
    pub cases: Vec<HireCase>,
    /// Inspections, the first before it is used.
    pub inspections: Vec<Inspection>,
}

/// Whether the work would have to be notified by itself.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Notice {
    /// Working days.
    pub days: u32,
    /// Most people at work at once.
    pub people: u32,
    /// Person-days.
    pub person_days: f64,
    /// It would, by the figures of the region; absent where there are none.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub notifiable: Option<bool>,
}

/// When the roof goes up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Programme {
    /// Phases that there is work in, in the order of the work.
    pub activities: Vec<Activity>,
    /// Rows of the picture.
    pub bars: Vec<Bar>,
    /// Hours of all people together, `[low, likely, high]`.
    pub hours: [f64; 3],
    /// Working days along the critical phases without weather.
    pub net_days: f64,
    /// Working days with it.
    pub working_days: u32,
    /// The last day.
    pub last: When,
    /// What chance makes of it.
    pub spread: Spread,
    /// Share of the working time lost in each month from January.
    pub weather_loss: [f64; 12],
    /// Where that is from.
    pub weather_source: String,
    /// How it was come by.
    pub weather_basis: Basis,
    /// Working days of a whole week.
    pub days_a_week: u32,
    /// Dates of the job on which nobody works besides, as `2027-03-26`.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub holidays: Vec<String>,
    /// Hours of work in a day.
    pub hours_a_day: f64,
    /// The hire.
    pub hire: Hire,
    /// Whether the work would have to be notified.
    pub notice: Notice,
    /// Hours of one of each item, to be put right by who knows the crew.
    pub estimates: Vec<Estimate>,
    /// What it does not say.
    pub cautions: Vec<String>,
}
