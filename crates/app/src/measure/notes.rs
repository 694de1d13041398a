//! What is said of a sketch: how it closes, what is wrong, what to do next.

use super::next::{self, Next};
use super::plan::{Known, NOTHING, Plan, Why};
use super::text::Made;
use super::words;
use crate::views::{Figure, NoticeRow, Sketch};
use geometry::DVec2;
use geometry::survey::Adjusted;
use job::wall_letter;
use job::written::Lengths;

/// A gap lies along walls whose direction has this cosine to it or more:
/// within some twenty degrees.
const ALONG: f64 = 0.94;

/// What is said of a sketch.
pub(super) struct Notes {
    pub(super) figures: Vec<Figure>,
    pub(super) closing: String,
    pub(super) notices: Vec<NoticeRow>,
    pub(super) next: Next,
}

pub(super) fn of(sketch: &Sketch, plan: &Plan, made: &Made, lengths: Lengths) -> Notes {
    Notes {
        figures: figures(plan, sketch, lengths),
        closing: closing(plan, lengths),
        notices: notices(sketch, plan, made, lengths),
        next: next::of(sketch, plan, made, lengths),
    }
}

fn figure(label: impl Into<String>, value: String) -> Figure {
    Figure { label: label.into(), value, why: None }
}

fn figures(plan: &Plan, sketch: &Sketch, lengths: Lengths) -> Vec<Figure> {
    let mut figures = Vec::new();
    match (&plan.known, told_gap(plan)) {
        (Known::Measured(adjusted), _) if adjusted.freedom > 0 => {
            figures.push(figure("Closing error", lengths.write_with_unit(adjusted.closing_error)));
        }
        (Known::Measured(_), _) | (_, None) => {}
        (_, Some(gap)) => figures.push(figure("Closing error", lengths.write_with_unit(gap.length()))),
    }
    figures.extend(out_of_square(plan, sketch, lengths));
    if plan.closed {
        figures.push(figure("Round the plates", lengths.write_with_unit(plan.lengths.iter().sum())));
    }
    figures
}

/// Both diagonals of four walls, and how much they differ.
fn out_of_square(plan: &Plan, sketch: &Sketch, lengths: Lengths) -> Vec<Figure> {
    if plan.walls.len() != 4 || !plan.closed {
        return Vec::new();
    }
    let read = |from: u32| {
        let all = sketch.diagonals.iter().zip(&plan.diagonals);
        all.filter(|(line, _)| line.from.min(line.to) == from && line.from.abs_diff(line.to) == 2)
            .find_map(|(_, read)| read.good())
    };
    let diagonals = [read(0), read(1)];
    let mut figures: Vec<Figure> = diagonals
        .iter()
        .enumerate()
        .filter_map(|(k, mm)| Some(figure(format!("Corner {} to {}", k + 1, k + 3), lengths.write_with_unit((*mm)?))))
        .collect();
    if let [Some(one), Some(other)] = diagonals {
        figures.push(figure("Diagonals differ by", lengths.write_with_unit((one - other).abs())));
    }
    figures
}

/// By how much the walls miss each other, if that can be told.
fn told_gap(plan: &Plan) -> Option<DVec2> {
    let whole = plan.walls.iter().all(|read| read.good().is_some());
    plan.gap.filter(|gap| whole || gap.length() > NOTHING)
}

/// How well the plan closes, a sentence; empty while that can't be told.
fn closing(plan: &Plan, lengths: Lengths) -> String {
    if let Known::Measured(adjusted) = &plan.known {
        return agreement(adjusted, lengths);
    }
    match told_gap(plan) {
        None => String::new(),
        Some(gap) if gap.length() <= NOTHING => "The plates close.".to_owned(),
        Some(gap) => format!(
            "The plates miss each other by {}, mostly along {}.",
            lengths.write_with_unit(gap.length()),
            words::walls(&along(plan, gap))
        ),
    }
}

/// The walls that a gap lies along; the nearest if none does.
fn along(plan: &Plan, gap: DVec2) -> Vec<usize> {
    let way = gap / gap.length().max(f64::MIN_POSITIVE);
    let cosines: Vec<f64> = plan.units.iter().map(|unit| unit.dot(way).abs()).collect();
    let most = cosines.iter().copied().fold(0.0, f64::max).min(ALONG);
    (0..cosines.len()).filter(|k| cosines.get(*k).is_some_and(|cosine| *cosine >= most)).collect()
}

/// How well readings agree, a sentence.
fn agreement(adjusted: &Adjusted, lengths: Lengths) -> String {
    let worst = adjusted.worst.as_ref().and_then(|worst| Some((worst, adjusted.readings.get(worst.reading)?)));
    match worst {
        None => "The plates close: the readings just fix the plan, and nothing checks them.".to_owned(),
        Some(_) if adjusted.closing_error <= NOTHING => "The plates close, and all readings agree.".to_owned(),
        Some((worst, reading)) => {
            let name = super::reading::sentence(&words::measure(reading.what));
            let amount = words::amount(reading.what, worst.off, lengths);
            let way = if worst.off > 0.0 { "more" } else { "less" };
            format!("{name} disagrees most: it reads {amount} {way} than all the others say.")
        }
    }
}

fn notices(sketch: &Sketch, plan: &Plan, made: &Made, lengths: Lengths) -> Vec<NoticeRow> {
    let row = |level: &str, code: &str, text: String, place: String| NoticeRow {
        level: level.to_owned(),
        code: code.to_owned(),
        text,
        place,
        mark: None,
    };
    let mut rows = Vec::new();
    if let (Some((first, second)), Known::Drawn) = (plan.crossing, &plan.known) {
        let (one, other) = (wall_letter(first), wall_letter(second));
        let text = format!(
            "Walls {one} and {other} cross. Walls may meet only at the corner they share: mend a length, or take walls back"
        );
        rows.push(row("stop", "walls-cross", text, words::walls(&[first, second])));
    }
    match &plan.known {
        Known::Drawn => {}
        Known::Squared { .. } => {
            let shared = plan.gap.map_or(0.0, DVec2::length);
            let text = if shared > NOTHING {
                format!(
                    "Corners are taken as drawn, for the diagonals do not fix them yet. The {} that the plates miss each \
                     other by is shared out among the walls",
                    lengths.write_with_unit(shared)
                )
            } else {
                "Corners are taken as drawn, for the diagonals do not fix them yet".to_owned()
            };
            rows.push(row("note", "corners-as-drawn", text, "all corners".to_owned()));
        }
        Known::Measured(adjusted) => {
            rows.extend(slip(adjusted, lengths).map(|(text, place)| row("warn", "slip", text, place)))
        }
        Known::Not(why) => {
            let (code, text, place) = stop(why, sketch, plan, lengths);
            rows.push(row("stop", code, text, place));
        }
    }
    for fault in made.faults.iter().flatten() {
        rows.push(row("stop", fault.code, format!("{}. {}", fault.what, fault.remedy), String::new()));
    }
    rows
}

/// The reading that is likely to be wrong, and its place.
fn slip(adjusted: &Adjusted, lengths: Lengths) -> Option<(String, String)> {
    let worst = adjusted.worst.as_ref().filter(|worst| worst.slip)?;
    let reading = adjusted.readings.get(worst.reading)?;
    let name = words::measure(reading.what);
    let rivals: Vec<String> =
        worst.rivals.iter().filter_map(|k| Some(words::measure(adjusted.readings.get(*k)?.what))).collect();
    let or = if rivals.is_empty() { String::new() } else { format!(". It may as well be {}", words::listed(&rivals)) };
    let text = format!(
        "{} is likely to be a slip: the others make it {}{or}. Measure it again",
        super::reading::sentence(&name),
        match reading.what {
            geometry::survey::Measure::Turn(_) => job::written::degrees(reading.measured - worst.off),
            _ => lengths.write_with_unit(reading.measured - worst.off),
        }
    );
    Some((text, name))
}

fn stop(why: &Why, sketch: &Sketch, plan: &Plan, lengths: Lengths) -> (&'static str, String, String) {
    match why {
        Why::Readings(fault) => {
            let fault = words::fault(fault, lengths);
            (fault.code, format!("{}. {}", fault.words, fault.next.trim_end_matches('.')), fault.place)
        }
        Why::Gap { .. } => {
            let gap = plan.gap.unwrap_or(DVec2::ZERO);
            let walls = words::walls(&along(plan, gap));
            let text = format!(
                "The plates miss each other by {}, more than the tape may be out by. Either {walls} hold a slip, or the \
                 corners are not as drawn: measure again, or measure diagonals",
                lengths.write_with_unit(gap.length())
            );
            ("does-not-close", text, walls)
        }
        Why::Diagonal { number, more, .. } => {
            let line = sketch.diagonals.get(*number);
            let name = line.map_or_else(String::new, |line| words::diagonal(line.from as usize, line.to as usize));
            let text = format!(
                "{} reads {} {} than if the corners were as drawn. Measure the other diagonals that are asked for: they \
                 tell how the corners lie",
                super::reading::sentence(&name),
                lengths.write_with_unit(more.abs()),
                if *more > 0.0 { "more" } else { "less" }
            );
            ("not-as-drawn", text, name)
        }
        Why::ByEye { wall, .. } => {
            let text = format!(
                "Wall {} is neither square to wall A nor at 45° to it, and its direction is drawn by eye: measure diagonals, \
                 which fix it",
                wall_letter(*wall)
            );
            ("drawn-by-eye", text, words::wall(*wall))
        }
    }
}
