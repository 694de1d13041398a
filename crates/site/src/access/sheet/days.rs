//! Inspections, weather, hire and rescue.

use super::super::AccessFault;
use super::super::rules::Needed;
use super::super::statement::{Basis, Blank, Row, Statement};
use super::{Facts, of_figure, of_habit};
use crate::programme::{HireCase, When};
use job::written::fixed;

/// Where what is counted by the programme is from.
const PROGRAMME: &str = "programme, by estimated hours and weather";

pub(super) fn rows(facts: &Facts<'_>) -> Result<Vec<Row>, AccessFault> {
    let mut rows = inspections(facts)?;
    hire(facts, &mut rows);
    weather(facts, &mut rows)?;
    rows.push(Row::Said(Statement::new(
        "access-rescue",
        "Whoever hangs or lies hurt up there is got down by people and means on the site: a plan does not rest on the fire brigade.",
        if facts.job.region == "uk" { "HSE answers on work at height" } else { "habit of the trade" },
        if facts.job.region == "uk" { Basis::Published } else { Basis::CommonPractice },
    )));
    rows.push(Row::Blank(Blank::new(
        "access-rescue-plan",
        "How is a hurt person got down from the platform and from the roof? Who does it, with what?",
        "who is in charge of the site",
    )));
    notice(facts, &mut rows);
    Ok(rows)
}

fn inspections(facts: &Facts<'_>) -> Result<Vec<Row>, AccessFault> {
    let interval = facts.need(Needed::InspectInterval)?;
    let list = &facts.programme.hire.inspections;
    let dates: Vec<String> =
        list.iter().map(|one| one.date.clone().unwrap_or_else(|| format!("day {}", one.day))).collect();
    let text = format!(
        "Inspected by a competent person before it is used, then at most every {}, and after wind, damage or any change: {} times as planned, {}.",
        interval.written(),
        list.len(),
        shortened(&dates)
    );
    let mut rows = vec![of_figure("access-inspections", interval, text)];
    if let Some(fall) = facts.rules.get("inspect-fall") {
        let text = format!("The interval holds where somebody could fall {} or more.", fall.written());
        rows.push(of_figure("access-inspect-fall", fall, text));
    }
    if let (Some(copy), Some(keep)) = (facts.rules.get("report-copy-within"), facts.rules.get("report-keep")) {
        let text = format!(
            "The report is written before the shift ends, handed over within {}, kept on site, and for {} after.",
            copy.written(),
            keep.written()
        );
        rows.push(of_figure("access-report", copy, text));
    }
    rows.push(Row::Blank(Blank::new(
        "access-inspector",
        "Who inspects it, and where are the reports kept?",
        "who is in charge of the site",
    )));
    Ok(rows)
}

/// The first few of a list.
fn shortened(list: &[String]) -> String {
    const FEW: usize = 8;
    match list.len() {
        0..=FEW => list.join(", "),
        _ => format!("{} … {}", list.get(..FEW).unwrap_or_default().join(", "), list.last().map_or("", String::as_str)),
    }
}

fn hire(facts: &Facts<'_>, rows: &mut Vec<Row>) {
    let hire = &facts.programme.hire;
    for (number, case) in hire.cases.iter().enumerate() {
        let id = match number {
            0 => "access-hire",
            1 => "access-hire-late",
            _ => "access-hire-wet",
        };
        let text = if number == 0 {
            format!("In use from {} to {}: {}", on(&hire.from), on(&hire.to), weeks(case, hire.included_weeks))
        } else {
            let name = case.name.chars().take(1).flat_map(char::to_uppercase).chain(case.name.chars().skip(1));
            format!("{}: {}", name.collect::<String>(), weeks(case, hire.included_weeks))
        };
        let mut statement = Statement::new(id, text, PROGRAMME, Basis::CommonPractice)
            .with("weeks", f64::from(case.weeks), "")
            .with("extra weeks", f64::from(case.extra_weeks), "");
        if let Some(cost) = case.cost {
            statement = statement.with("cost", cost, "");
        }
        rows.push(Row::Said(statement));
    }
    rows.push(of_habit(
        "access-off-hire",
        "Hire runs from handover to the notice that ends it: the roofer, lead and gutters are within it. The agreement says which weeks the price holds.",
    ));
}

fn weeks(case: &HireCase, included: u32) -> String {
    let extra = match case.extra_weeks {
        0 => "none more than the price holds".to_owned(),
        1 => "one week more than the price holds".to_owned(),
        more => format!("{more} weeks more than the price holds"),
    };
    let cost = match case.cost {
        Some(cost) => format!(", {} in all", fixed(cost, 2)),
        None => String::new(),
    };
    format!("{} days, {} weeks, {extra} ({included} weeks){cost}.", case.calendar_days, case.weeks)
}

fn on(when: &When) -> String {
    when.date.clone().unwrap_or_else(|| format!("working day {}", when.day))
}

fn weather(facts: &Facts<'_>, rows: &mut Vec<Row>) -> Result<(), AccessFault> {
    let (care, stop) = (facts.need(Needed::WindCare)?, facts.need(Needed::WindStop)?);
    let gust =
        |name: &str| facts.rules.get(name).map_or_else(String::new, |gust| format!(", or gusts of {}", gust.written()));
    let ms = |figure: &super::super::rules::Figure| fixed(figure.own(), 1);
    let text = format!(
        "Long boards, sheets and rolls of underlay stay down from a mean wind of {} ({} m/s){}; no figure is published for long rafters, which are taken as the same.",
        care.written(),
        ms(care),
        gust("wind-care-gust")
    );
    rows.push(of_figure("access-wind-care", care, text));
    let text = format!("Everybody comes down at {} ({} m/s){}.", stop.written(), ms(stop), gust("wind-stop-gust"));
    rows.push(of_figure("access-wind-stop", stop, text));
    rows.push(of_habit(
        "access-wet",
        "Ice, frost, snow and wet plates are cleared, or nobody works on them; boards are swept and sanded.",
    ));
    if facts.job.access.sheeted {
        rows.push(super::of_job(
            "access-sheeted",
            "access.sheeted",
            "It is sheeted or roofed over: wind on the sheets is for the scaffold designer, who is told before they go on.",
        ));
    }
    Ok(())
}

fn notice(facts: &Facts<'_>, rows: &mut Vec<Row>) {
    let notice = &facts.programme.notice;
    let at = (facts.rules.get("notify-days"), facts.rules.get("notify-workers"), facts.rules.get("notify-person-days"));
    let (Some(days), Some(workers), Some(person_days)) = at else { return };
    let words = match notice.notifiable {
        Some(true) => "the roof by itself is over that: the client must notify it",
        _ => "the roof by itself is under that, but the whole project counts: ask the principal contractor",
    };
    let text = format!(
        "A project of more than {} working days with more than {} people at once, or of more than {} person-days, is notified. The roof takes {} days, at most {}, some {} person-days: {words}.",
        fixed(days.value, 0),
        fixed(workers.value, 0),
        fixed(person_days.value, 0),
        notice.days,
        super::people(notice.people),
        fixed(notice.person_days, 0)
    );
    rows.push(Row::Said(
        Statement::new("access-notice", text, days.source.clone(), days.basis())
            .with("days", f64::from(notice.days), "")
            .with("person-days", notice.person_days, ""),
    ));
    rows.push(Row::Blank(Blank::new(
        "access-phase-plan",
        "Who is the principal contractor, and where is the construction phase plan that this belongs to?",
        "client",
    )));
}
