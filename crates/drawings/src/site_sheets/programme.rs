//! The programme: bars, activities, the range by chance, weather, hire, inspections.

use job::written::{fixed, tenth};
use site::programme::{Activity, Gang, Programme, When};

use crate::cover::key_figures;
use crate::flow::Flow;
use crate::layout::Room;
use crate::page::{BOTTOM, LEFT, Page, ROOM};
use crate::site_sheets::gantt;
use crate::site_sheets::parts::{
    FIGURE, MOST_LINES, SMALL, STRONG, TICK, TICK_STYLE, WORDS, basis, boxed, paragraph, part,
};
use crate::table::{Column, Table};
use crate::text::Style;

/// On every sheet of the programme.
pub const CAUTION: &str = "Hours are estimates, to be put right by who knows the gang. No programme sends anyone on to a roof: \
                           local rules, the scaffold designer and the principal contractor decide.";
/// Height of the key figures, mm.
const FIGURES: f64 = 15.0;
/// Months as the table of weather heads them.
const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// The sheets.
pub fn pages(programme: &Programme) -> Vec<Page> {
    let mut flow = Flow::new("Programme", false, CAUTION);
    picture(&mut flow, programme);
    boxed(&mut flow, "What this programme does not say", &programme.cautions);
    activities(&mut flow, programme);
    weather(&mut flow, programme);
    estimates(&mut flow, programme);
    hire(&mut flow, programme);
    inspections(&mut flow, programme);
    flow.finish()
}

/// A day in words: its date, or its number.
fn when(when: &When) -> String {
    when.date.clone().unwrap_or_else(|| format!("day {}", when.day))
}

fn picture(flow: &mut Flow, programme: &Programme) {
    let spread = &programme.spread;
    let range = |at: usize, w: &When| {
        let days = spread.days.get(at).copied().unwrap_or(f64::NAN);
        if w.date.is_some() { format!("{} ({} d)", when(w), tenth(days)) } else { format!("{} days", tenth(days)) }
    };
    let boxes = [
        ("by the likely hours, with weather", format!("{} working days", programme.working_days)),
        ("the last day so", when(&programme.last)),
        ("done sooner 1 time in 10", range(0, &spread.tenth)),
        ("every other time by", range(1, &spread.middle)),
        ("9 times in 10 by", range(2, &spread.ninetieth)),
    ];
    let (sheet, y) = flow.block(FIGURES + 3.0);
    key_figures(sheet, &boxes, [LEFT, y], [ROOM, FIGURES], Style::bold(13.0));
    let room = Room { x: LEFT, y: y + FIGURES + 2.0, w: ROOM, h: BOTTOM - y - FIGURES - 10.0 };
    let end = gantt::draw(sheet, programme, room);
    let y = end.max(room.y) + 5.0;
    let words = format!(
        "Hatched: critical, the end hangs on it. {}The range is that of {} runs with other hours and other weather.",
        if programme.last.date.is_some() {
            "Grey: days that are not worked. "
        } else {
            "No start is written: days are working days. "
        },
        spread.runs
    );
    sheet.text_within([LEFT, y], crate::sheet::Anchor::Start, WORDS, &words, ROOM);
    flow.break_page();
}

const fn gang(gang: Gang) -> &'static str {
    match gang {
        Gang::Scaffolders => "scaffolders",
        Gang::Carpenters => "carpenters",
        Gang::Roofers => "roofers",
    }
}

fn activities(flow: &mut Flow, programme: &Programme) {
    part(flow, "Activities: hours of one person are ESTIMATES unless they are the job's own");
    let mut table = Table::new(&[
        Column::words("activity", 56.0, STRONG),
        Column::words("who", 30.0, WORDS),
        Column::words("after", 58.0, SMALL),
        Column::figures("hours\nlow", 18.0, WORDS),
        Column::figures("hours\nlikely", 18.0, FIGURE),
        Column::figures("hours\nhigh", 18.0, WORDS),
        Column::figures("days, no\nweather", 17.0, WORDS),
        Column::words("from", 21.0, SMALL),
        Column::words("to", 21.0, SMALL),
        Column::words("", 20.0, STRONG),
    ]);
    for a in &programme.activities {
        table.row(&activity(a), MOST_LINES);
    }
    let [low, likely, high] = programme.hours.map(|h| fixed(h, 0));
    let mut sum = vec![String::new(); 10];
    for (cell, words) in
        [(0, "all together".to_owned()), (3, low), (4, likely), (5, high), (6, tenth(programme.net_days))]
    {
        if let Some(place) = sum.get_mut(cell) {
            *place = words;
        }
    }
    table.row(&sum, MOST_LINES);
    flow.table(&table);
    flow.space(1.0);
    let words = format!(
        "A week of {} days of {} hours. Days together are those along the critical activities.",
        programme.days_a_week,
        tenth(programme.hours_a_day)
    );
    paragraph(flow, WORDS, &words);
    let notice = &programme.notice;
    let words = format!(
        "{} working days, at most {} people at once, {} person-days.",
        notice.days,
        notice.people,
        tenth(notice.person_days)
    );
    let said = match notice.notifiable {
        Some(true) => {
            "By these figures the work by itself would have to be NOTIFIED: the client looks at the whole project."
        }
        Some(false) => {
            "By these figures the work by itself would not have to be notified; the whole project may have to be."
        }
        None => "Whether it has to be notified is not worked out for this region.",
    };
    paragraph(flow, STRONG, &format!("{words} {said}"));
}

fn activity(a: &Activity) -> Vec<String> {
    let after: Vec<&str> = a.after.iter().map(|phase| phase.name()).collect();
    let [low, likely, high] = a.hours.map(|h| fixed(h, 1));
    vec![
        a.name.clone(),
        format!("{} {}", a.people, gang(a.gang)),
        if after.is_empty() { "–".to_owned() } else { after.join("; ") },
        low,
        likely,
        high,
        tenth(a.net_days),
        when(&a.first),
        when(&a.last),
        if a.critical { "critical".to_owned() } else { format!("+ {} d", tenth(a.float)) },
    ]
}

fn weather(flow: &mut Flow, programme: &Programme) {
    part(flow, "Working time that weather takes, of a day");
    let mut columns = Vec::with_capacity(12);
    columns.extend(MONTHS.map(|month| Column::figures(month, ROOM / 12.0, FIGURE)));
    let mut table = Table::new(&columns);
    let cells: Vec<String> =
        programme.weather_loss.iter().map(|share| format!("{} %", fixed(share * 100.0, 0))).collect();
    table.row(&cells, 1);
    flow.table(&table);
    flow.space(1.0);
    paragraph(flow, SMALL, &format!("{}; {}.", programme.weather_source, basis(programme.weather_basis)));
}

fn estimates(flow: &mut Flow, programme: &Programme) {
    if programme.estimates.is_empty() {
        return;
    }
    part(flow, "Hours of one person for one: put your own in the job");
    let mut table = Table::new(&[
        Column::words("item", 62.0, STRONG),
        Column::figures("how many", 28.0, WORDS),
        Column::words("", 20.0, WORDS),
        Column::figures("low", 28.0, WORDS),
        Column::figures("likely", 28.0, FIGURE),
        Column::figures("high", 28.0, WORDS),
        Column::words("from, see below", 83.0, WORDS),
    ]);
    // Most are from few places: each is said once under the table.
    let mut sources: Vec<String> = Vec::new();
    for one in &programme.estimates {
        let source = format!("{}; {}", one.source, basis(one.basis));
        let at = sources.iter().position(|s| *s == source).unwrap_or(sources.len());
        if at == sources.len() {
            sources.push(source);
        }
        let [low, likely, high] = one.hours.map(|h| fixed(h, 2));
        let mark = format!("note {}", at + 1);
        table.row(&[item(&one.item), tenth(one.amount), one.unit.clone(), low, likely, high, mark], MOST_LINES);
    }
    flow.table(&table);
    flow.space(1.0);
    for (at, source) in sources.iter().enumerate() {
        paragraph(flow, SMALL, &format!("note {}: {source}", at + 1));
    }
}

/// The key of an item in words, without the unit at its end.
fn item(key: &str) -> String {
    let words = key.replace(['_', '-'], " ");
    let bare = [" each", " m2", " m"].iter().find_map(|unit| words.strip_suffix(unit));
    bare.map_or(words.clone(), str::to_owned)
}

fn hire(flow: &mut Flow, programme: &Programme) {
    let hire = &programme.hire;
    part(flow, "Hire of the access");
    let words = format!(
        "In use from {} to {}; the price has {} weeks in it. A week begun is paid for.",
        when(&hire.from),
        when(&hire.to),
        hire.included_weeks
    );
    paragraph(flow, STRONG, &words);
    let mut table = Table::new(&[
        Column::words("as the work goes", 90.0, STRONG),
        Column::figures("days of the calendar", 45.0, WORDS),
        Column::figures("weeks", 32.0, FIGURE),
        Column::figures("weeks more than in the price", 50.0, FIGURE),
        Column::figures("cost, money of the job", 60.0, FIGURE),
    ]);
    for case in &hire.cases {
        let cells = [
            case.name.clone(),
            case.calendar_days.to_string(),
            case.weeks.to_string(),
            case.extra_weeks.to_string(),
            case.cost.map_or_else(|| "no price written".to_owned(), |cost| fixed(cost, 2)),
        ];
        table.row(&cells, MOST_LINES);
    }
    flow.table(&table);
}

fn inspections(flow: &mut Flow, programme: &Programme) {
    if programme.hire.inspections.is_empty() {
        return;
    }
    part(flow, "Inspections of the access; another after any change, damage or hard weather");
    let mut table = Table::new(&[
        Column::words("", 11.0, TICK_STYLE),
        Column::figures("number", 16.0, WORDS),
        Column::words("not later than", 45.0, FIGURE),
        Column::words("done on, time", 50.0, WORDS),
        Column::words("what was found and done", 95.0, WORDS),
        Column::words("inspector: name, signature", 60.0, WORDS),
    ]);
    for one in &programme.hire.inspections {
        let day = one.date.clone().unwrap_or_else(|| format!("working day {}", one.day));
        let blank = String::new;
        table.row(&[TICK.to_owned(), one.number.to_string(), day, blank(), blank(), blank()], 1);
    }
    flow.table(&table);
}
