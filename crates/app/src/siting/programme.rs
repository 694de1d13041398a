//! The programme, worded.

use super::words::{counted, people};
use super::{bars, fields};
use crate::opening::Open;
use crate::views::{SiteField, SiteForm, SiteHire, SitePhase, SiteProgramme};
use crate::wording::Writing;
use job::listing::listed;
use job::written::tenth;
use site::access::Basis;
use site::programme::{Activity, Estimate, Gang, HireCase, NO_FLOAT, Programme};

const WORK: [fields::Asked; 9] = [
    ("programme.crew", "Carpenters at work together", SiteForm::Number),
    ("programme.start", "First day on site", SiteForm::Date),
    ("programme.hours_a_day", "Hours of work in a day", SiteForm::Number),
    ("programme.roofers", "Roofers at work together", SiteForm::Number),
    ("programme.saturdays", "Saturdays are worked", SiteForm::Choice),
    ("programme.holidays", "Days off, as [\"2027-03-26\"]", SiteForm::Text),
    ("programme.weather_loss", "Time lost to weather, %: one figure, or twelve from January", SiteForm::Text),
    ("programme.scaffold_up", "Days in which the access goes up", SiteForm::Number),
    ("programme.scaffold_down", "Days in which it comes down", SiteForm::Number),
];

const HIRE: [fields::Asked; 3] = [
    ("access.hire", "Price of the hire: up, weeks, down", SiteForm::Number),
    ("access.hire_weeks", "Weeks within that price", SiteForm::Number),
    ("access.extra_week", "Price of each week more", SiteForm::Number),
];

/// The programme.
pub(super) fn of(open: &Open, programme: &Programme, writing: &Writing, width: f64) -> SiteProgramme {
    let spread = &programme.spread;
    let chances = [
        ("one time in ten, done by", &spread.tenth),
        ("every other time, done by", &spread.middle),
        ("nine times in ten, done by", &spread.ninetieth),
    ];
    let hire = &programme.hire;
    let inspection = |one: &site::programme::Inspection| writing.day(one.day, one.date.as_deref());
    SiteProgramme {
        last: writing.when(&programme.last),
        days: counted(programme.working_days, "working day", "working days"),
        dated: programme.last.date.is_some(),
        bars: bars::of(programme, writing, width),
        phases: programme.activities.iter().map(|one| phase(one, writing)).collect(),
        spread: chances.iter().map(|(label, when)| writing.figure(label, writing.when(when))).collect(),
        fields: work(open, programme, writing),
        hours: programme.estimates.iter().filter_map(|one| hours(open, one, writing)).collect(),
        hired: writing.say(&format!("In use from {} to {}.", writing.when(&hire.from), writing.when(&hire.to))),
        hire: hire.cases.iter().map(|one| case(one, writing)).collect(),
        hire_fields: fields::of(open, &HIRE, writing),
        inspections: hire.inspections.iter().map(inspection).collect(),
        notice: notice(programme, writing),
        cautions: programme.cautions.iter().map(|text| writing.sentence(text)).collect(),
    }
}

/// Crew and days, with the weather that is in force.
fn work(open: &Open, programme: &Programme, writing: &Writing) -> Vec<SiteField> {
    let mut list = fields::of(open, &WORK, writing);
    if let Some(weather) = list.iter_mut().find(|one| one.path == "programme.weather_loss" && !one.said) {
        let months: Vec<String> = programme.weather_loss.iter().map(|share| tenth(share * 100.0)).collect();
        weather.value = format!("[{}]", months.join(", "));
        weather.hint = estimate(&programme.weather_source, programme.weather_basis, writing);
    }
    list
}

fn phase(activity: &Activity, writing: &Writing) -> SitePhase {
    let (first, last) = (writing.when(&activity.first), writing.when(&activity.last));
    let gang = match (activity.gang, activity.people) {
        (Gang::Scaffolders, 1) => "1 scaffolder".to_owned(),
        (Gang::Carpenters, 1) => "1 carpenter".to_owned(),
        (Gang::Roofers, 1) => "1 roofer".to_owned(),
        (Gang::Scaffolders, count) => format!("{count} scaffolders"),
        (Gang::Carpenters, count) => format!("{count} carpenters"),
        (Gang::Roofers, count) => format!("{count} roofers"),
    };
    let [low, likely, high] = activity.hours.map(tenth);
    let float = if activity.critical || activity.float <= NO_FLOAT {
        "If it runs late, the end runs late.".to_owned()
    } else {
        format!("It can run {} days late before the end does.", tenth(activity.float))
    };
    SitePhase {
        name: writing.say_first(&activity.name),
        when: if first == last { first } else { format!("{first} to {last}") },
        who: writing.say(&format!("{gang}; {likely} hours of one person, {low} to {high}")),
        float: writing.say(&float),
    }
}

/// Hours of one of an item; nothing for what a job file has no key for.
fn hours(open: &Open, one: &Estimate, writing: &Writing) -> Option<SiteField> {
    let path = format!("programme.hours.{}", one.item);
    let meaning = listed().find(|key| key.path == path)?.meaning;
    let [low, likely, high] = one.hours.map(|hours| job::written::fixed(hours, 2));
    let said = open.said.value(&path);
    let amount = format!("{} {}", tenth(one.amount), if one.unit == "each" { "of them" } else { &one.unit });
    let hint = match &said {
        Some(_) => format!("{amount}; hours as the job says"),
        None => format!("{amount}; {low} to {high} h; {}", estimate(&one.source, one.basis, writing)),
    };
    Some(SiteField {
        label: writing.say_first(&format!("{meaning}, h")),
        hint: writing.say_first(&hint),
        said: said.is_some(),
        value: said.unwrap_or(likely),
        form: SiteForm::Number,
        choices: Vec::new(),
        path,
    })
}

fn estimate(source: &str, basis: Basis, writing: &Writing) -> String {
    let mark = if basis == Basis::Job { "" } else { "an estimate: " };
    writing.say_first(&format!("{mark}{source} ({})", basis.words()))
}

fn case(case: &HireCase, writing: &Writing) -> SiteHire {
    let extra = match case.extra_weeks {
        0 => "none beyond the price".to_owned(),
        extra => format!("{extra} beyond the price"),
    };
    SiteHire {
        name: writing.say_first(&case.name),
        weeks: writing.say(&format!("{}, {extra}", counted(case.weeks, "week", "weeks"))),
        cost: case.cost.map_or_else(|| writing.say("No price is written"), |cost| writing.whole_money(cost)),
    }
}

fn notice(programme: &Programme, writing: &Writing) -> String {
    let notice = &programme.notice;
    let size = format!(
        "{}, at most {} at once, {} days of one person",
        counted(notice.days, "working day", "working days"),
        people(notice.people),
        tenth(notice.person_days)
    );
    let outcome = match notice.notifiable {
        Some(true) => {
            "By itself the work is of a size that has to be notified: the client does it before the work begins."
        }
        Some(false) => {
            "By itself the work is below the size that has to be notified. The whole project may be above it: the client decides."
        }
        None => "Whether it has to be notified is asked of the authority of the place.",
    };
    writing.say(&format!("{size}. {outcome}"))
}
