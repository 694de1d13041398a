//! The plan as measured: what was read, what the plan has, and what disagrees.

use roof::solution::{LevelsOut, MeasurementKind, Solution, SurveyOut};

use crate::flow::Flow;
use crate::page::{LEFT, Page, ROOM};
use crate::table::{Column, Table};
use crate::text::{Style, one_line};
use job::written::{Lengths, fixed, tenth};

const CAUTION: &str =
    "Measure again what disagrees before anything is cut: the roof is solved on the plan as adjusted.";
const WORDS: Style = Style::regular(10.0);
const FIGURE: Style = Style::bold(12.0);
/// Lines a cell may take.
const MOST_LINES: usize = 2;

/// The sheet of a measured plan; none for a plan given by corners.
pub fn pages(solution: &Solution) -> Vec<Page> {
    let Some(survey) = &solution.plan.survey else { return Vec::new() };
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Plan as measured", false, CAUTION);
    for words in summary(survey, solution.plan.closing_error_mm, lengths) {
        let lines = WORDS.wrap_at_most(&one_line(&words), ROOM, 4);
        let (sheet, y) = flow.block(lines.len() as f64 * WORDS.line_mm() + 1.0);
        sheet.lines([LEFT, y + WORDS.cap_mm()], WORDS, &lines);
    }
    flow.space(2.0);
    flow.table(&measurements(survey, lengths));
    if let Some(levels) = &survey.levels {
        flow.space(6.0);
        let table = packing(levels, lengths);
        // Kept together where a page can hold it.
        if table.height() > flow.left() && flow.left() > 0.0 {
            flow.space(flow.left());
        }
        flow.table(&table);
    }
    flow.finish()
}

fn summary(survey: &SurveyOut, closing: f64, lengths: Lengths) -> Vec<String> {
    let more = survey.freedom;
    let mut out = vec![format!(
        "{} measurements, {more} more than just fix the plan; the tape may be out by {}. Closing error {}.",
        survey.measurements.len(),
        lengths.write_with_unit(survey.tolerance_mm),
        lengths.write_with_unit(closing)
    )];
    let worst = survey.worst.as_ref().and_then(|w| Some((w, survey.measurements.get(w.measurement as usize)?)));
    if let Some((worst, measured)) = worst {
        let way = if worst.off > 0.0 { "long" } else { "short" };
        let off = match measured.kind {
            MeasurementKind::Turn => {
                format!("{}° {}", tenth(worst.off.abs()), if worst.off > 0.0 { "wide" } else { "narrow" })
            }
            MeasurementKind::Wall | MeasurementKind::Diagonal => {
                format!("{} {way}", lengths.write_with_unit(worst.off.abs()))
            }
        };
        let past = if worst.slip { "more than chance: measure it again" } else { "no more than chance" };
        out.push(format!("{} reads {off} against the others: {past}.", measured.name));
    }
    let [a, b] = &survey.weakest;
    out.push(format!("Known least: from {a} to {b}, within {}.", lengths.write_with_unit(survey.weakest_within_mm)));
    if !survey.taken_outward.is_empty() {
        out.push(format!(
            "Taken to point outwards, with nothing measured to tell: {}.",
            survey.taken_outward.join(", ")
        ));
    }
    out
}

fn measurements(survey: &SurveyOut, lengths: Lengths) -> Table {
    let mut table = Table::new(&[
        Column::words("measured", 40.0, Style::bold(12.0)),
        Column::figures("read", 36.0, FIGURE),
        Column::figures("plan has", 36.0, FIGURE),
        Column::figures("moved by", 30.0, FIGURE),
        Column::figures("checked by\nthe others", 30.0, WORDS),
        Column::words("", 60.0, WORDS),
    ]);
    for (k, m) in survey.measurements.iter().enumerate() {
        let figure = |v: f64| match m.kind {
            MeasurementKind::Turn => format!("{}°", fixed(v, 2)),
            MeasurementKind::Wall | MeasurementKind::Diagonal => lengths.write(v),
        };
        let name = match m.kind {
            MeasurementKind::Wall => format!("wall {}", m.name),
            MeasurementKind::Diagonal => m.name.clone(),
            MeasurementKind::Turn => format!("turn at {}", m.name),
        };
        let word = match &survey.worst {
            Some(w) if w.measurement as usize == k => "disagrees most",
            Some(w) if w.rivals.contains(&(k as u32)) => "could be the wrong one as well",
            _ => "",
        };
        let moved = match m.kind {
            MeasurementKind::Turn => format!("{}°", fixed(m.residual, 2)),
            MeasurementKind::Wall | MeasurementKind::Diagonal => tenth(m.residual),
        };
        let share = format!("{} %", fixed(100.0 * m.redundancy, 0));
        table.row(&[name, figure(m.measured), figure(m.adjusted), moved, share, word.to_owned()], MOST_LINES);
    }
    table
}

fn packing(levels: &LevelsOut, lengths: Lengths) -> Table {
    let mut table = Table::new(&[
        Column::words("corner", 40.0, Style::bold(12.0)),
        Column::figures("over the level line", 44.0, FIGURE),
        Column::figures("pack up by", 36.0, FIGURE),
        Column::figures("wind", 30.0, WORDS),
    ]);
    for level in &levels.corners {
        let wind = level.off_plane_mm.map_or_else(String::new, tenth);
        table.row(&[level.corner.clone(), tenth(level.level_mm), lengths.write(level.packing_mm), wind], MOST_LINES);
    }
    table
}
