//! The programme of a whole roof: what must hold whatever a job says.

use crate::common::{HOUSE, solved};
use jiff::civil::{Date, Weekday};
use job::{Day, Job, ProgrammeAsked, WorkItem};
use proptest::prelude::*;
use site::programme::{Gang, Phase, Programme, ProgrammeFault, Work, ends_of, programme};
use std::sync::LazyLock;

static WORK: LazyLock<Work> = LazyLock::new(|| Work::of(&HOUSE.0, &HOUSE.1).unwrap());

fn with(asked: ProgrammeAsked) -> Job {
    Job { programme: asked, ..HOUSE.0.clone() }
}

fn planned(asked: &ProgrammeAsked) -> Programme {
    programme(&with(asked.clone()), &HOUSE.1, &WORK).unwrap()
}

prop_compose! {
    fn asked()(
        start in prop::option::of((2024_i16..2040, 1_i8..=12, 1_i8..=28)),
        crew in 1_u32..6,
        roofers in 1_u32..6,
        hours_a_day in 4.0..11.0_f64,
        saturdays: bool,
        offsets in prop::collection::vec(0_i64..60, 0..12),
        loss in prop::option::of(prop::array::uniform12(0.0..0.6_f64)),
        rafter in prop::option::of(0.0..2.0_f64),
    ) -> ProgrammeAsked {
        let start = start.map(|(year, month, day)| Day { year, month, day });
        let off = |offset: i64| {
            let first = site::programme::civil(start?)?;
            let date = first.checked_add(jiff::Span::new().days(offset)).ok()?;
            Some(Day { year: date.year(), month: date.month(), day: date.day() })
        };
        let mut holidays: Vec<Day> = offsets.into_iter().filter_map(off).collect();
        holidays.sort();
        holidays.dedup();
        let hours = rafter.map(|hours| (WorkItem::Rafter, hours)).into_iter().collect();
        ProgrammeAsked { start, crew, roofers, hours_a_day, saturdays, holidays, weather_loss: loss, scaffold_up: None, scaffold_down: None, hours }
    }
}

/// Sums of the same figures in another order differ by less than this, working days.
const ROUNDING: f64 = 1e-9;

fn never_earlier(a: &Programme, b: &Programme) -> Result<(), TestCaseError> {
    prop_assert!(b.working_days >= a.working_days, "{} {}", a.working_days, b.working_days);
    for (a, b) in a.spread.days.iter().zip(b.spread.days) {
        prop_assert!(b >= a - ROUNDING, "{a} {b}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn more_loss_is_never_earlier(asked in asked(), more in prop::array::uniform12(0.0..0.3_f64)) {
        let less = asked.weather_loss.unwrap_or([0.1; 12]);
        let worse: [f64; 12] = core::array::from_fn(|month| less[month] + more[month]);
        let (a, b) = (ProgrammeAsked { weather_loss: Some(less), ..asked.clone() }, ProgrammeAsked { weather_loss: Some(worse), ..asked });
        never_earlier(&planned(&a), &planned(&b))?;
    }

    #[test]
    fn more_people_are_never_later(asked in asked(), carpenters in 0_u32..4, roofers in 0_u32..4) {
        let more = ProgrammeAsked { crew: asked.crew + carpenters, roofers: asked.roofers + roofers, ..asked.clone() };
        never_earlier(&planned(&more), &planned(&asked))?;
    }

    #[test]
    fn days_off_are_never_worked_and_nothing_starts_too_soon(asked in asked()) {
        let answer = planned(&asked);
        let days = |when: &site::programme::When| when.date.as_deref().map(|date| date.parse::<Date>().unwrap());
        let mut dates: Vec<Date> = answer.activities.iter().flat_map(|one| [days(&one.first), days(&one.last)]).flatten().collect();
        dates.extend(answer.hire.inspections.iter().filter_map(|one| one.date.as_deref()).map(|date| date.parse::<Date>().unwrap()));
        prop_assert_eq!(dates.is_empty(), asked.start.is_none());
        for date in dates {
            prop_assert!(date.weekday() != Weekday::Sunday);
            prop_assert!(asked.saturdays || date.weekday() != Weekday::Saturday);
            let day = Day { year: date.year(), month: date.month(), day: date.day() };
            prop_assert!(!asked.holidays.contains(&day));
            prop_assert!(asked.start.is_none_or(|start| day >= start));
        }
        for one in &answer.activities {
            prop_assert!(one.end >= one.start + one.net_days - ROUNDING);
            prop_assert!(one.hours[0] <= one.hours[1] && one.hours[1] <= one.hours[2]);
            for before in &one.after {
                let before = answer.activities.iter().find(|other| other.phase == *before).unwrap();
                prop_assert!(before.end <= one.start + ROUNDING);
            }
        }
        let [tenth, middle, ninetieth] = answer.spread.days;
        prop_assert!(tenth <= middle && middle <= ninetieth);
        prop_assert!(answer.activities.iter().filter(|one| one.critical).map(|one| one.end).fold(0.0, f64::max) >= f64::from(answer.working_days) - 1.0);
    }

    #[test]
    fn inspections_are_never_further_apart_than_asked(asked in asked()) {
        let answer = planned(&asked);
        let list = &answer.hire.inspections;
        prop_assert_eq!(list.first().map(|one| one.day), Some(answer.hire.from.day));
        let dates: Vec<Date> = list.iter().filter_map(|one| one.date.as_deref()).map(|date| date.parse().unwrap()).collect();
        for pair in dates.windows(2) {
            let apart = (pair[1] - pair[0]).get_days();
            // A run of days off longer than a week can only be waited out: nobody is there to use it.
            let off = asked.holidays.len() > 3;
            prop_assert!((1..=7).contains(&apart) || off, "{apart}");
        }
    }
}

#[test]
fn the_same_job_has_the_same_bits() {
    let asked = ProgrammeAsked { start: Day::parse("2027-03-01"), ..HOUSE.0.programme.clone() };
    let bytes = |asked: &ProgrammeAsked| serde_json::to_string(&planned(asked)).unwrap();
    assert_eq!(bytes(&asked), bytes(&asked));
    let read: Programme = serde_json::from_str(&bytes(&asked)).unwrap();
    assert_eq!(read.activities.len(), planned(&asked).activities.len());
    assert_eq!(ends_of(&with(asked.clone()), &WORK).unwrap().len(), read.spread.runs as usize);
}

#[test]
fn what_there_is_to_do_is_what_the_roof_has() {
    let count = |kind: &str| HOUSE.1.members.iter().filter(|member| member.kind.name() == kind).count() as f64;
    let amount = |phase, item| WORK.lines[&(phase, item)].amount;
    let rafters = count("common rafter") + count("crown rafter") + count("trimming rafter");
    assert_eq!(amount(Phase::MainFrame, WorkItem::Rafter), rafters);
    assert_eq!(amount(Phase::HipsValleys, WorkItem::Hip), count("hip rafter"));
    assert_eq!(amount(Phase::HipsValleys, WorkItem::Jack), count("jack rafter"));
    let noggins = count("noggin") + count("ladder rung") + count("sprocket");
    assert_eq!(amount(Phase::EavesVerges, WorkItem::Noggin), noggins);
    // Two windows and a stack.
    assert_eq!(amount(Phase::Openings, WorkItem::Opening), 3.0);
    assert!(!WORK.lines.contains_key(&(Phase::Openings, WorkItem::Dormer)));
    // Straps at 2 m along 10.8, 7.2 and 10.8 m: 7, 5 and 7; up both verges of 4.7 m: 4 each.
    assert_eq!(amount(Phase::Plates, WorkItem::Strap), 27.0);
    // 10.8 by 7.2 m in plan with 350 mm of eaves on three sides and a verge of 300 mm, at 40°, without two corners.
    let plan = 10.8 * 7.2 + 0.35 * (10.8 + 7.2 + 10.8) + 0.3 * 7.2;
    let covered = amount(Phase::Covering, WorkItem::Covering);
    assert!((covered - plan / geometry::Angle::deg(40.0).cos()).abs() < 0.01, "{covered}");
}

#[test]
fn hours_of_the_job_stand_in_place_of_estimates() {
    let plain = planned(&HOUSE.0.programme);
    let mut asked = HOUSE.0.programme.clone();
    asked.hours.insert(WorkItem::Hip, 10.0);
    asked.scaffold_up = Some(5.0);
    let own = planned(&asked);
    let of = |answer: &Programme, phase| answer.activities.iter().find(|one| one.phase == phase).unwrap().clone();
    assert_eq!(of(&own, Phase::AccessUp).net_days, 5.0);
    assert_eq!(of(&own, Phase::AccessUp).gang, Gang::Scaffolders);
    let hip = own.estimates.iter().find(|one| one.item == "hip_each").unwrap();
    assert!((hip.hours[1] - 10.0).abs() < 1e-9 && hip.basis == site::access::Basis::Job);
    // 1.5, 2 and 2.5 in proportion.
    assert!((hip.hours[0] - 7.5).abs() < 1e-9 && (hip.hours[2] - 12.5).abs() < 1e-9);
    let estimated = plain.estimates.iter().find(|one| one.item == "hip_each").unwrap();
    assert!((estimated.hours[1] - 2.0).abs() < 1e-9 && estimated.basis == site::access::Basis::CommonPractice);
    assert!(own.working_days > plain.working_days);
}

#[test]
fn work_inside_has_time_to_spare() {
    let answer = planned(&HOUSE.0.programme);
    for one in &answer.activities {
        assert_eq!(one.critical, one.phase != Phase::Inside, "{}", one.name);
    }
}

#[test]
fn work_without_end_is_refused_in_words() {
    let mut asked =
        ProgrammeAsked { crew: 1, hours_a_day: 1.0, weather_loss: Some([0.9; 12]), ..HOUSE.0.programme.clone() };
    asked.hours.insert(WorkItem::Rafter, 400.0);
    let fault = programme(&with(asked), &HOUSE.1, &WORK).unwrap_err();
    assert!(matches!(fault, ProgrammeFault::TooLong { .. }) && fault.to_string().contains("[programme]"));
    let elsewhere = Job { region: "atlantis".into(), ..HOUSE.0.clone() };
    assert_eq!(programme(&elsewhere, &HOUSE.1, &WORK), Err(ProgrammeFault::NoRegion("atlantis".into())));
}

#[test]
fn the_united_states_have_a_programme_too() {
    let (mut job, solution) = solved(include_str!("../../../examples/whole-house.toml"));
    job.region = "us".into();
    let work = Work::of(&job, &solution).unwrap();
    let answer = programme(&job, &solution, &work).unwrap();
    let rafter = answer.estimates.iter().find(|one| one.item == "rafter_each").unwrap();
    assert_eq!(rafter.basis, site::access::Basis::Published);
    assert_eq!(answer.notice.notifiable, None);
}
