//! Checks of the sheets for the site as they are laid out, from the jobs of `examples/` and from odd data.

use std::collections::BTreeMap;

use job::Job;
use roof::solution::Solution;
use serde_json::Value;
use site::access::{Access, Row, access};
use site::lifts::{Density, Lift, Lifting, lifts};
use site::programme::{Programme, Work, programme};
use site::records::{Records, records};
use site::sequence::{PuttingUp, putting_up};

use crate::layout_checks::faults_of;
use crate::page::frame;
use crate::sheet::{Item, Sheet, Text};
use crate::site_sheets::steps;
use crate::site_sheets::{SitePapers, site_pages};
use crate::text;

/// All that sheets are made from.
struct Made {
    solution: Solution,
    putting_up: PuttingUp,
    lifts: Vec<Lift>,
    programme: Programme,
    access: Access,
    records: Records,
}

/// What is added to a job to give its programme dates.
const DATED: &str = "\n[programme]\nstart = \"2026-03-05\"\n";

/// The examples that sheets are made of here.
const EXAMPLES: [(&str, &str); 3] = [
    ("boathouse", include_str!("../../../../examples/boathouse.toml")),
    ("whole-house", include_str!("../../../../examples/whole-house.toml")),
    ("wings", include_str!("../../../../examples/wings.toml")),
];

fn made(name: &str, more: &str) -> Made {
    let text = EXAMPLES.iter().find(|(known, _)| *known == name).unwrap().1.to_owned() + more;
    let job: Job = job::read(&text).unwrap();
    let solution = roof::solve(&job).unwrap();
    let programme = programme(&job, &solution, &Work::of(&job, &solution).unwrap()).unwrap();
    let access = access(&job, &solution, &programme).unwrap();
    let density = Density::of(Lifting::of(&solution.region).unwrap(), "C24");
    Made {
        putting_up: putting_up(&job, &solution).unwrap(),
        lifts: lifts(&solution, &density).unwrap(),
        records: records(&job, &access, &programme),
        programme,
        access,
        solution,
    }
}

impl Made {
    fn papers(&self) -> SitePapers<'_> {
        SitePapers {
            putting_up: Some(&self.putting_up),
            lifts: &self.lifts,
            programme: Some(&self.programme),
            access: Some(&self.access),
            records: Some(&self.records),
        }
    }

    fn sheets(&self) -> Vec<Sheet> {
        frame(site_pages(&self.solution, &self.papers()), &self.solution)
    }
}

fn texts(sheet: &Sheet) -> impl Iterator<Item = &Text> {
    sheet.items.iter().filter_map(|item| if let Item::Text(t) = item { Some(t) } else { None })
}

/// All words of some sheets without their spaces, so that it does not matter where lines are broken.
fn run_together<'a>(sheets: impl IntoIterator<Item = &'a Sheet>) -> String {
    let all = sheets.into_iter().flat_map(texts).map(|t| t.text.as_str());
    all.flat_map(|t| t.split_whitespace()).collect()
}

fn bare(text: &str) -> String {
    text.split_whitespace().collect()
}

fn assert_clean(name: &str, sheets: &[Sheet]) {
    let faults = faults_of(sheets);
    assert!(
        faults.is_empty(),
        "{name}: {} faults\n{}",
        faults.len(),
        faults.iter().step_by(faults.len().div_ceil(12)).cloned().collect::<Vec<_>>().join("\n")
    );
}

/// Every string under one of these keys made long.
fn longer(value: &mut Value, keys: &[&str], more: &str) {
    match value {
        Value::Object(map) => {
            for (key, inner) in map.iter_mut() {
                match inner {
                    Value::String(words) if keys.contains(&key.as_str()) => words.push_str(more),
                    _ => longer(inner, keys, more),
                }
            }
        }
        Value::Array(list) => list.iter_mut().for_each(|inner| longer(inner, keys, more)),
        _ => {}
    }
}

fn reread<T: serde::Serialize + serde::de::DeserializeOwned>(of: &T, keys: &[&str], more: &str) -> T {
    let mut value = serde_json::to_value(of).unwrap();
    longer(&mut value, keys, more);
    serde_json::from_value(value).unwrap()
}

#[test]
fn the_jobs_of_the_examples_are_laid_out_cleanly_and_say_who_decides() {
    for (name, more) in [("whole-house", DATED), ("wings", ""), ("boathouse", "")] {
        let made = made(name, more);
        let sheets = made.sheets();
        assert!(sheets.len() > 30, "{name}: {}", sheets.len());
        assert_clean(name, &sheets);
        for sheet in &sheets {
            let words: Vec<&str> = texts(sheet).map(|t| t.text.as_str()).collect();
            let words = words.join(" ");
            for who in ["ocal rules", "scaffold designer", "principal contractor"] {
                assert!(words.contains(who), "{name}: no `{who}` on {words}");
            }
            let plain = words.to_lowercase();
            let mut each = plain.split(|c: char| !c.is_alphabetic());
            assert!(!each.any(|word| word == "safe"), "{name}: {words}");
        }
        every_mark_is_in_one_step(name, &made);
        every_statement_is_there(name, &made, &sheets);
    }
}

/// Marks as written in ranges, each by itself.
fn expanded(written: &str) -> Vec<String> {
    let split = |mark: &str| {
        let head = mark.trim_end_matches(|c: char| c.is_ascii_digit()).to_owned();
        let number: Option<u32> = mark[head.len()..].parse().ok();
        number.map(|n| (head, n))
    };
    let mut out = Vec::new();
    for part in written.split(", ").map(str::trim).filter(|p| !p.is_empty()) {
        match part.split_once('–').and_then(|(a, b)| split(a).zip(split(b))) {
            Some(((head, from), (_, to))) => out.extend((from..=to).map(|n| format!("{head}{n}"))),
            None => out.push(part.to_owned()),
        }
    }
    out
}

/// What stands before the lines of a step.
const LABELS: [&str; 9] =
    ["mark out first", "set props", "fix, in order", "brace", "nail for good", "take out", "hands", "lift", "why now"];

fn every_mark_is_in_one_step(name: &str, made: &Made) {
    let pages = steps::pages(&made.solution, &made.putting_up);
    let mut count: BTreeMap<String, u32> = BTreeMap::new();
    // Marks of the step's timbers stand beside the label, and go on below it, or under the head of the next column or
    // page, until another label comes.
    let (mut written, mut within) = (String::new(), false);
    for t in pages.iter().flat_map(|page| texts(&page.sheet)) {
        if t.style == steps::MARKS {
            if within {
                written.push_str(&t.text);
                written.push(' ');
            }
        } else if LABELS.contains(&t.text.as_str()) {
            expanded(&written).into_iter().for_each(|mark| *count.entry(mark).or_default() += 1);
            written.clear();
            within = t.text == "fix, in order";
        }
    }
    for member in &made.solution.members {
        assert_eq!(count.get(&member.mark), Some(&1), "{name}: {} in steps", member.mark);
    }
    assert_eq!(count.len(), made.solution.members.len(), "{name}: marks of no timber");
}

fn every_statement_is_there(name: &str, made: &Made, sheets: &[Sheet]) {
    let all = run_together(sheets);
    let mut looked_for = 0;
    let mut find = |words: &str| {
        looked_for += 1;
        assert!(all.contains(&bare(&text::one_line(words))), "{name}: no `{words}`");
    };
    let papers = [&made.records.brief, &made.records.access_record, &made.records.risk_and_method];
    let sections = made.access.sections.iter().chain(papers.iter().flat_map(|p| &p.sections));
    for row in sections.flat_map(|s| &s.rows) {
        match row {
            Row::Said(said) => find(&said.text),
            Row::Blank(blank) => find(&blank.question),
        }
    }
    made.access.cautions.iter().chain(&made.programme.cautions).for_each(|c| find(c));
    papers.iter().flat_map(|p| &p.cautions).for_each(|c| find(c));
    for step in &made.putting_up.steps {
        [&step.title, &step.why, &step.hazard].into_iter().for_each(|words| find(words));
    }
    for hold in &made.putting_up.holds {
        find(&hold.what);
        find(&hold.at);
    }
    made.putting_up.no_stack.iter().for_each(|p| find(&p.why));
    made.putting_up.cautions.iter().for_each(|c| find(c.text.trim_end_matches('.')));
    made.putting_up.straps.iter().for_each(|s| find(&s.from));
    made.programme.activities.iter().for_each(|a| find(&a.name));
    made.programme.hire.cases.iter().for_each(|c| find(&c.name));
    for one in &made.programme.hire.inspections {
        find(&one.date.clone().unwrap_or_else(|| format!("working day {}", one.day)));
    }
    for p in &made.putting_up.props {
        find(&p.name);
    }
    assert!(looked_for > 150, "{looked_for}");
}

#[test]
fn long_words_are_laid_out_cleanly() {
    let long = " which somebody wrote at great length, withaverylongwordwithoutanyspaceinitatall";
    let mut made = made("boathouse", "");
    let words =
        ["title", "why", "hazard", "what", "at", "text", "decides", "wall", "under", "from_mark", "to_mark", "mark"];
    for times in [1, 6] {
        let more = long.repeat(times);
        made.putting_up = reread(&made.putting_up, &words, &more);
        made.programme = reread(&made.programme, &["name", "source", "weather_source", "item", "unit", "date"], &more);
        made.access =
            reread(&made.access, &["text", "source", "question", "who", "heading", "class", "what", "wall"], &more);
        made.records = reread(&made.records, &["text", "source", "question", "who", "heading", "title"], &more);
        made.lifts = reread(&made.lifts, &["mark"], &more);
        made.records.unused = vec![more.clone(), more];
        for step in &mut made.putting_up.steps {
            step.members.iter_mut().for_each(|m| m.push_str("-which-is-long-and-has-no-spaces"));
            step.strips.push(long.repeat(3));
        }
        assert_clean("long words", &made.sheets());
    }
}

#[test]
fn odd_figures_are_laid_out_cleanly() {
    let base = made("boathouse", "");
    for value in [f64::NAN, f64::INFINITY, 1e300, -1e300, 0.0] {
        let mut putting_up = base.putting_up.clone();
        for p in &mut putting_up.props {
            (p.height_mm, p.cut_mm, p.from_end_mm, p.head_cut_deg) = (value, value, value, value);
            (p.foot, p.head) = ([value; 3], [value; 3]);
        }
        for b in &mut putting_up.braces {
            (b.length_mm, b.slope_deg, b.head_cut.face_angle_deg, b.from) = (value, value, value, [value; 3]);
        }
        putting_up.straps.iter_mut().for_each(|s| s.points.iter_mut().for_each(|p| *p = [value; 3]));
        putting_up.holds.iter_mut().for_each(|h| (h.figure_mm, h.tolerance) = (Some(value), Some(value)));
        let mut programme = base.programme.clone();
        programme.bars.iter_mut().for_each(|b| (b.start, b.end) = (value, value));
        programme.activities.iter_mut().for_each(|a| (a.hours, a.net_days, a.float) = ([value; 3], value, value));
        programme.weather_loss = [value; 12];
        programme.days_a_week = u32::MAX;
        let mut access = base.access.clone();
        access.layout.width_mm = value;
        for run in &mut access.layout.runs {
            (run.length_mm, run.off_wall_mm, run.platform_mm, run.bays) = (value, value, value, u32::MAX);
        }
        let papers = SitePapers {
            putting_up: Some(&putting_up),
            programme: Some(&programme),
            access: Some(&access),
            ..base.papers()
        };
        assert_clean(&format!("{value}"), &frame(site_pages(&base.solution, &papers), &base.solution));
    }
    let empty = SitePapers::default();
    assert!(site_pages(&base.solution, &empty).is_empty());
}

#[test]
fn the_font_has_the_signs_of_these_sheets() {
    for sign in ["☐", "⚠", "±"] {
        for c in sign.chars() {
            assert_ne!(text::Style::regular(10.0).glyph(c).0, 0, "{c}");
            assert_ne!(text::Style::bold(10.0).glyph(c).0, 0, "{c}");
        }
    }
}

#[test]
fn timbers_of_a_step_are_dark_in_its_picture_and_only_there() {
    let made = made("boathouse", "");
    let pages = steps::pages(&made.solution, &made.putting_up);
    let dark = |sheet: &Sheet| {
        sheet
            .items
            .iter()
            .filter(
                |i| matches!(i, Item::Path { fill: Some(f), points, .. } if (1..=140).contains(f) && points.len() > 2),
            )
            .count()
    };
    let timbers: usize = made.putting_up.steps.iter().map(|s| s.members.len()).sum();
    let faces: usize = pages.iter().map(|p| dark(&p.sheet)).sum();
    // No timber shows fewer than two faces from a corner above.
    assert!(faces >= 2 * timbers, "{faces} faces of {timbers} timbers");
}
