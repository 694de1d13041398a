//! From the work to the programme.

use super::calendar::{Calendar, MOST_DAYS};
use super::chance::{Chance, quantile, triangular};
use super::durations::{PhaseHours, hours, people};
use super::hire::{NotifyAt, case, inspections};
use super::labour::Labour;
use super::network::{NO_FLOAT, NoEnd, Pace, Step, forward, pass};
use super::out::{Activity, Bar, Hire, Notice, Programme, Spread, When};
use super::phases::Phase;
use super::work::Work;
use super::{ProgrammeFault, words};
use crate::access::Basis;
use crate::access::rules::{Needed, Rules};
use job::Job;
use roof::solution::Solution;
use std::collections::BTreeMap;

/// Runs of chance: the tenth and ninetieth percentile of so many stand still to about a third of a day.
const RUNS: u32 = 2000;
/// Seed of the runs, the same for every job, so that a change of the figures is one of the job.
const SEED: u64 = 0x5EA7_C075;
/// Between the seeds of runs, so that no two share their numbers.
const SEED_STEP: u64 = 0xD1B5_4A32_D192_ED03;
/// Percentiles that are given.
const SHARES: [f64; 3] = [0.1, 0.5, 0.9];
/// A step that ends this much into a day has ended on the day before, working days: far below a minute.
const DAY_PLAY: f64 = 1e-6;
/// Least hours of a day, so that nothing is divided by nought.
const LEAST_HOURS: f64 = 0.1;
/// Days for which weather is drawn at first, in days as planned; a run that takes longer is done again with all.
const LIKELY_MOST: f64 = 2.0;
/// And so many more.
const LIKELY_MORE: usize = 30;
/// Two more wet weeks, days of the calendar.
const TWO_WEEKS: u32 = 14;

/// When the roof of a job goes up.
///
/// # Errors
/// A region without hours, a start beyond the calendar, work without an end.
pub fn programme(job: &Job, solution: &Solution, work: &Work) -> Result<Programme, ProgrammeFault> {
    let labour = Labour::of(&job.region)?;
    let rules = Rules::of(&job.region).map_err(|_| ProgrammeFault::NoRegion(job.region.clone()))?;
    let asked = &job.programme;
    let loss = asked.weather_loss.unwrap_or(labour.weather.loss);
    let calendar = Calendar::new(asked, &loss)?;
    let plan = Plan::of(job, labour, work);
    let times = pass(&plan.steps(None), &calendar.pace()).map_err(too_long)?;
    let net = pass(&plan.steps(None), &Pace::new(vec![1.0; MOST_DAYS as usize])).map_err(too_long)?;
    let mut activities = Vec::new();
    for (number, phase) in plan.phases.iter().enumerate() {
        let at = |list: &[f64]| list.get(number).copied().unwrap_or(0.0);
        let (start, end, float) = (at(&times.start), at(&times.finish), at(&times.float));
        activities.push(Activity {
            phase: phase.phase,
            name: phase.phase.name().to_owned(),
            gang: phase.phase.gang(),
            people: phase.people,
            hours: phase.hours.total(),
            net_days: phase.net(phase.hours.total()[1]),
            start,
            end,
            float,
            critical: float < NO_FLOAT,
            first: when(&calendar, first_day(start)),
            last: when(&calendar, last_day(end).max(first_day(start))),
            after: phase.after.clone(),
            parts: phase.hours.parts.clone(),
        });
    }
    let spread = spread(&plan, &calendar)?;
    let working_days = last_day(times.end);
    let hire = hire(job, rules, &calendar, &activities, (times.end, spread.days[2]))?;
    let sum = |k: usize| activities.iter().filter_map(|one| one.hours.get(k)).sum::<f64>();
    Ok(Programme {
        bars: activities.iter().map(bar).collect(),
        hours: [sum(0), sum(1), sum(2)],
        net_days: net.end,
        working_days,
        last: when(&calendar, working_days),
        spread,
        weather_loss: loss,
        weather_source: match asked.weather_loss {
            Some(_) => "[programme] of the job".to_owned(),
            None => labour.weather.source.clone(),
        },
        weather_basis: asked.weather_loss.map_or(labour.weather.standing.into(), |_| Basis::Job),
        days_a_week: calendar.days_a_week(),
        holidays: asked.holidays.iter().map(ToString::to_string).collect(),
        hours_a_day: asked.hours_a_day,
        hire,
        notice: notice(rules, &activities, working_days, asked.hours_a_day),
        estimates: words::estimates(&activities),
        cautions: words::cautions(job, solution),
        activities,
    })
}

fn too_long(_: NoEnd) -> ProgrammeFault {
    ProgrammeFault::TooLong { most: MOST_DAYS }
}

/// The phases with work in them.
struct Plan {
    phases: Vec<Planned>,
}

struct Planned {
    phase: Phase,
    hours: PhaseHours,
    people: u32,
    hours_a_day: f64,
    after: Vec<Phase>,
}

impl Planned {
    /// Working days for so many hours of one person.
    fn net(&self, hours: f64) -> f64 {
        self.hours.days.unwrap_or(hours / (f64::from(self.people) * self.hours_a_day.max(LEAST_HOURS)))
    }
}

impl Plan {
    fn of(job: &Job, labour: &Labour, work: &Work) -> Self {
        let mut hours = hours(&job.programme, labour, work);
        let mut phases: Vec<Planned> = Vec::new();
        for phase in Phase::ALL {
            let Some(hours) = hours.remove(&phase) else { continue };
            let after = before(phase, &phases.iter().map(|one| one.phase).collect::<Vec<_>>());
            let people = people(phase.gang(), &job.programme, labour);
            phases.push(Planned { phase, hours, people, hours_a_day: job.programme.hours_a_day, after });
        }
        Self { phases }
    }

    /// The steps of the network, by likely hours or by those of a run.
    fn steps(&self, mut run: Option<&mut Chance>) -> Vec<Step> {
        let place: BTreeMap<Phase, usize> = self.phases.iter().enumerate().map(|(k, one)| (one.phase, k)).collect();
        let step = |one: &Planned| {
            let hours = match &mut run {
                None => one.hours.total()[1],
                Some(chance) => one.hours.parts.iter().map(|part| triangular(part.hours, chance.share())).sum(),
            };
            let after = one.after.iter().filter_map(|phase| place.get(phase).copied()).collect();
            Step { net: one.net(hours), exposed: one.phase.exposed(), after }
        };
        self.phases.iter().map(step).collect()
    }
}

/// Phases that a phase waits for, of those there are: in place of one that is not there, those that it waits for.
fn before(phase: Phase, there: &[Phase]) -> Vec<Phase> {
    let mut list = Vec::new();
    let mut open: Vec<Phase> = phase.after().to_vec();
    while let Some(one) = open.pop() {
        if there.contains(&one) {
            list.push(one);
        } else {
            open.extend(one.after());
        }
    }
    list.sort_unstable();
    list.dedup();
    list
}

/// The ends of all runs in working days, as they come: for who wants to look at more than three percentiles.
///
/// # Errors
/// As [`programme`].
pub fn ends_of(job: &Job, work: &Work) -> Result<Vec<f64>, ProgrammeFault> {
    let labour = Labour::of(&job.region)?;
    let loss = job.programme.weather_loss.unwrap_or(labour.weather.loss);
    ends(&Plan::of(job, labour, work), &Calendar::new(&job.programme, &loss)?)
}

/// The end of the work in many runs: hours by a triangle for each item, and whole days lost to weather.
fn ends(plan: &Plan, calendar: &Calendar) -> Result<Vec<f64>, ProgrammeFault> {
    let planned = pass(&plan.steps(None), &calendar.pace()).map_err(too_long)?.end;
    // Within `MOST_DAYS`.
    let likely = (planned * LIKELY_MOST) as usize + LIKELY_MORE;
    let run = |seed: u64, most: usize| {
        let mut hours = Chance::new(seed);
        // A stream of its own: another number of items must not make other weather.
        let mut weather = Chance::new(hours.next());
        let steps = plan.steps(Some(&mut hours));
        let days = calendar.loss().iter().take(most).map(|loss| if weather.share() < *loss { 0.0 } else { 1.0 });
        forward(&steps, &Pace::new(days.collect())).map(|(_, _, end)| end)
    };
    let seeds = (0..u64::from(RUNS)).map(|run| SEED.wrapping_add(run.wrapping_mul(SEED_STEP)));
    seeds.map(|seed| run(seed, likely).or_else(|_| run(seed, MOST_DAYS as usize)).map_err(too_long)).collect()
}

fn spread(plan: &Plan, calendar: &Calendar) -> Result<Spread, ProgrammeFault> {
    let mut ends = ends(plan, calendar)?;
    ends.sort_by(f64::total_cmp);
    let days = SHARES.map(|share| quantile(&ends, share).unwrap_or(0.0));
    let [tenth, middle, ninetieth] = days.map(|end| when(calendar, last_day(end)));
    Ok(Spread { runs: RUNS, tenth, middle, ninetieth, days })
}

/// The working day in which a step starts.
fn first_day(start: f64) -> u32 {
    // Within `MOST_DAYS`.
    (start + DAY_PLAY).floor().max(0.0) as u32 + 1
}

/// The working day in which a step is done, 1 for one that takes no time.
fn last_day(end: f64) -> u32 {
    ((end - DAY_PLAY).ceil().max(1.0)) as u32
}

fn when(calendar: &Calendar, day: u32) -> When {
    When { day, date: calendar.date(day).map(|date| date.to_string()) }
}

fn bar(activity: &Activity) -> Bar {
    Bar {
        name: activity.name.clone(),
        start: activity.start,
        end: activity.end,
        critical: activity.critical,
        first: activity.first.clone(),
        last: activity.last.clone(),
    }
}

/// The hire from the day on which the access is handed over to that before it comes down.
fn hire(
    job: &Job,
    rules: &Rules,
    calendar: &Calendar,
    activities: &[Activity],
    (planned, late): (f64, f64),
) -> Result<Hire, ProgrammeFault> {
    let of = |phase: Phase| activities.iter().find(|one| one.phase == phase);
    let from = of(Phase::AccessUp).map_or(1, |up| first_day(up.end));
    let down = of(Phase::AccessDown);
    let until = down.map_or(planned, |down| down.start);
    let to = last_day(until).max(from);
    let interval = rules.need(Needed::InspectInterval).map_or(7.0, |figure| figure.own());
    let access = &job.access;
    let case = |name: &str, days: u32| case(name, days, access.hire, access.hire_weeks, access.extra_week);
    let days = calendar.calendar_days(from, to);
    // What comes after the last day of use takes as long when the work is late.
    let late_to = last_day((until + late - planned).max(until)).max(to);
    Ok(Hire {
        from: when(calendar, from),
        to: when(calendar, to),
        included_weeks: access.hire_weeks,
        cases: vec![
            case(words::AS_PLANNED, days),
            case(words::NINE_IN_TEN, calendar.calendar_days(from, late_to)),
            case(words::TWO_WET_WEEKS, days.saturating_add(TWO_WEEKS)),
        ],
        // A whole number of days, small.
        inspections: inspections(calendar, from, to, interval as u32),
    })
}

fn notice(rules: &Rules, activities: &[Activity], days: u32, hours_a_day: f64) -> Notice {
    let hours: f64 = activities.iter().map(|one| one.net_days * f64::from(one.people) * hours_a_day).sum();
    let person_days = hours / hours_a_day.max(LEAST_HOURS);
    let at_once = |one: &Activity| {
        let overlaps = activities.iter().filter(|other| {
            other.start <= one.start && one.start < other.end && !(other.gang == one.gang && other.phase != one.phase)
        });
        overlaps.map(|other| other.people).sum::<u32>()
    };
    let people = activities.iter().map(at_once).max().unwrap_or(0);
    let figure = |name: &str| rules.get(name).map(crate::access::rules::Figure::own);
    let at = figure("notify-days").zip(figure("notify-workers")).zip(figure("notify-person-days"));
    let at = at.map(|((days, workers), person_days)| NotifyAt { days, workers, person_days });
    let notifiable = at.map(|at| at.notifiable(f64::from(days), f64::from(people), person_days));
    Notice { days, people, person_days, notifiable }
}
