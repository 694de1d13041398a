//! Setting-out strips: plates and ridges with the place of every timber.

use roof::solution::{SettingOut, Solution, Station};

use crate::flow::Flow;
use crate::layout::{scale, scale_words, spread};
use crate::page::{LEFT, Page, ROOM};
use crate::sheet::{Anchor, Dash, Pen, Role, Sheet};
use crate::table::{Column, Table};
use crate::text::{SMALLEST_PT, Style};
use job::written::Lengths;

const CAUTION: &str = "Pull every mark from the same end, do not step them off. Figures are to the near face; the timber \
                       stands beyond the line.";
/// Figures along the strip.
const FIGURE: Style = Style::bold(11.0);
/// Marks along the strip.
const MARK: Style = Style::regular(10.0);
const LABEL: Style = Style::regular(SMALLEST_PT);
/// Nearest that two labels stand to one another, mm.
const APART: f64 = 4.6;
/// Height of the drawn timber, mm.
const BAR: f64 = 7.0;
/// From the bar to the labels, mm: room for the lines that lead to them.
const LEADER: f64 = 3.8;
/// Between figure and mark, mm.
const GAP: f64 = 2.0;
/// A line that says how a plate is bedded, mm.
const BEDDING: f64 = 5.0;
/// Left and right of a strip, mm: half a label.
const END: f64 = 3.0;
/// Most rows a strip is broken into.
const MOST_ROWS: f64 = 24.0;
/// Longer than any building, mm: not drawn.
const LONGEST: f64 = 1e6;
/// A strip with more marks than this also gets a table.
const LONG: usize = 24;
/// Longest label, mm; longer marks are shortened.
const LONGEST_LABEL: f64 = 40.0;

/// A sheet of strips, as many as there are plates and ridges.
pub fn pages(solution: &Solution) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Setting out", true, CAUTION);
    for strip in &solution.setting_out {
        if strip.length_mm > 0.0 && strip.length_mm < LONGEST {
            draw_strip(&mut flow, strip, &bedding(solution, strip, lengths), lengths);
        }
    }
    flow.finish()
}

/// How a plate is bedded, and what figures behind marks are; empty for a strip
/// of which nothing is to be said.
fn bedding(solution: &Solution, strip: &SettingOut, lengths: Lengths) -> String {
    let wall = solution.members.iter().find(|m| m.mark == strip.mark).and_then(|m| m.wall.as_ref());
    let bed = wall.and_then(|letter| solution.plan.walls.iter().find(|w| w.id == *letter)?.bed);
    let told = |mm: f64| {
        let way = if mm > 0.0 { "out" } else { "in" };
        if mm.abs() < 0.5 { "on it".into() } else { format!("{} {way}", lengths.write_with_unit(mm.abs().round())) }
    };
    let bed = bed.filter(|_| strip.stations.iter().any(|s| s.side == "inside"));
    let bed = bed.map(|bed| {
        format!(
            "Bed it off the wall's face: {} where the wall starts, {} where it ends.",
            told(bed.start_mm),
            told(bed.end_mm)
        )
    });
    let firred = strip.stations.iter().any(|s| s.firring_mm.is_some());
    let firring = firred.then(|| "+ after a mark is the firring under it.".to_owned());
    bed.into_iter().chain(firring).collect::<Vec<_>>().join(" ")
}

/// How a strip is broken into rows.
struct Rows {
    scale: f64,
    count: usize,
}

/// The fewest rows in which the marks keep apart, drawn as large as they let.
fn rows(strip: &SettingOut) -> Rows {
    let room = ROOM - 2.0 * END;
    let mut gaps: Vec<f64> = strip
        .stations
        .windows(2)
        .map(|pair| pair[1].near_mm - pair[0].near_mm)
        // Two timbers of a ridge stand opposite one another.
        .filter(|gap| gap.is_finite() && *gap > 1.0)
        .collect();
    gaps.sort_by(f64::total_cmp);
    let usual = gaps.get(gaps.len() / 2).copied().unwrap_or(strip.length_mm);
    let least = (strip.length_mm * APART / (usual * room)).ceil().clamp(1.0, MOST_ROWS);
    let n = scale(|n| strip.length_mm / n <= room * least);
    Rows { scale: n, count: (strip.length_mm / (n * room)).ceil().max(1.0) as usize }
}

/// Words of a station as they are drawn: figure, mark.
struct Label {
    at: f64,
    figure: String,
    mark: String,
}

fn label(station: &Station, lengths: Lengths) -> Label {
    let figure = lengths.write(station.near_mm);
    let room = LONGEST_LABEL - FIGURE.width_mm(&figure) - GAP;
    let firring = station.firring_mm.map_or_else(String::new, |mm| format!(" +{}", lengths.write(mm.round())));
    let mark = MARK.shorten(&crate::text::one_line(&station.mark), room - MARK.width_mm(&firring));
    Label { at: station.near_mm, mark: mark + &firring, figure }
}

fn reach(labels: &[Label]) -> f64 {
    let longest = labels.iter().map(|l| FIGURE.width_mm(&l.figure) + GAP + MARK.width_mm(&l.mark)).fold(0.0, f64::max);
    if labels.is_empty() { 1.5 } else { longest + LEADER }
}

fn draw_strip(flow: &mut Flow, strip: &SettingOut, bedding: &str, lengths: Lengths) {
    let room = ROOM - 2.0 * END;
    let rows = rows(strip);
    let per_row = rows.scale * room;
    for row in 0..rows.count {
        let from = per_row * row as f64;
        let to = (from + per_row).min(strip.length_mm);
        let last = row + 1 == rows.count;
        let here: Vec<&Station> = strip
            .stations
            .iter()
            // What lies before the hook or beyond the end is written at that end.
            .filter(|s| (s.near_mm >= from || row == 0) && (s.near_mm < to || last) && s.near_mm.is_finite())
            .collect();
        let of = |below: bool| -> Vec<Label> {
            here.iter().filter(|s| (s.side == "right") == below).map(|s| label(s, lengths)).collect()
        };
        let (above, below) = (of(false), of(true));
        let heading = match row {
            0 if bedding.is_empty() => 7.5,
            0 => 7.5 + BEDDING,
            _ => 0.0,
        };
        let under = reach(&below).max(4.0);
        let height = heading + reach(&above) + BAR + under + 1.5;
        let (sheet, y) = flow.block(height);
        let bar = y + heading + reach(&above);
        let view = Row { scale: rows.scale, from, to, bar };
        if row == 0 {
            strip_heading(sheet, strip, rows.scale, lengths, y + 4.5);
            sheet.text_within([LEFT, y + 4.5 + BEDDING], Anchor::Start, Style::regular(11.0), bedding, ROOM);
        }
        sheet.part(Role::Figure(format!("{}, marks from {} on", strip.name, lengths.write_with_unit(from))), |sheet| {
            view.bar(sheet, &here, row > 0, !last);
            view.labels(sheet, &above, -1.0);
            view.labels(sheet, &below, 1.0);
            view.ends(sheet, lengths, last, &below);
        });
    }
    if strip.stations.len() > LONG {
        table(flow, strip, lengths);
    }
    flow.space(1.5);
}

fn strip_heading(sheet: &mut Sheet, strip: &SettingOut, scale: f64, lengths: Lengths, base: f64) {
    let name = Style::bold(14.0);
    let (style, words) = name.fit(&crate::text::one_line(&strip.name), 60.0);
    sheet.text([LEFT, base], Anchor::Start, style, &words);
    let length = format!("{} long", lengths.write_with_unit(strip.length_mm));
    sheet.text([LEFT + 64.0, base], Anchor::Start, Style::bold(11.0), &length);
    let hook = format!("hook the tape on: {}", strip.from);
    sheet.text_within([LEFT + 112.0, base], Anchor::Start, Style::regular(11.0), &hook, ROOM - 112.0 - 18.0);
    sheet.text([LEFT + ROOM, base], Anchor::End, LABEL, &scale_words(scale));
}

/// One row of a strip.
struct Row {
    scale: f64,
    from: f64,
    to: f64,
    /// Top of the bar, mm.
    bar: f64,
}

impl Row {
    fn x(&self, mm: f64) -> f64 {
        LEFT + END + (mm - self.from) / self.scale
    }

    /// The timber, and those that stand on it or against it.
    fn bar(&self, sheet: &mut Sheet, stations: &[&Station], broken_before: bool, broken_after: bool) {
        let (left, right) = (self.x(self.from), self.x(self.to));
        let (top, bottom) = (self.bar, self.bar + BAR);
        for s in stations {
            let (near, far) = (s.near_mm.clamp(self.from, self.to), s.far_mm.clamp(self.from, self.to));
            // Against a ridge each timber takes its own half.
            let (a, b) = match s.side.as_str() {
                "left" => (top, top + BAR / 2.0),
                "right" => (top + BAR / 2.0, bottom),
                _ => (top, bottom),
            };
            if far > near {
                sheet.rect([self.x(near), a], [(far - near) / self.scale, b - a], Some(200), None);
            }
            sheet.line([self.x(near), a], [self.x(near), b], Pen::black(0.45));
        }
        let pen = Pen::black(0.35);
        sheet.line([left, top], [right, top], pen);
        sheet.line([left, bottom], [right, bottom], pen);
        for (x, broken) in [(left, broken_before), (right, broken_after)] {
            let pen = if broken { Pen::dashed(0.35, Dash::Dashed) } else { Pen::black(0.6) };
            sheet.line([x, top - 1.0], [x, bottom + 1.0], pen);
        }
    }

    /// Labels above (`side` -1) or below (+1) the bar, and lines to them.
    fn labels(&self, sheet: &mut Sheet, labels: &[Label], side: f64) {
        let wanted: Vec<f64> = labels.iter().map(|l| self.x(l.at.clamp(self.from, self.to))).collect();
        let places = spread(&wanted, APART, LEFT + FIGURE.cap_mm(), LEFT + ROOM - 1.0);
        let edge = if side < 0.0 { self.bar } else { self.bar + BAR };
        for ((label, &x), &wanted) in labels.iter().zip(&places).zip(&wanted) {
            let pen = Pen::black(0.15);
            sheet.line([wanted, edge], [wanted, edge + side * 1.2], pen);
            sheet.line([wanted, edge + side * 1.2], [x, edge + side * (LEADER - 1.0)], pen);
            let base = x + FIGURE.cap_mm() / 2.0;
            // Reading upwards: figure nearest the bar above it, and below it at the far end.
            let (figure, mark) = (FIGURE.width_mm(&label.figure), MARK.width_mm(&label.mark));
            let start = edge + side * LEADER;
            let (figure_at, mark_at) =
                if side < 0.0 { (start, start - figure - GAP) } else { (start + figure, start + figure + GAP + mark) };
            sheet.text_along([base, figure_at], [0.0, -1.0], Anchor::Start, FIGURE, &label.figure);
            let base = x + MARK.cap_mm() / 2.0;
            sheet.text_along([base, mark_at], [0.0, -1.0], Anchor::Start, MARK, &label.mark);
        }
    }

    /// What the tape reads at the ends of the row, where labels leave room.
    fn ends(&self, sheet: &mut Sheet, lengths: Lengths, last: bool, below: &[Label]) {
        let base = self.bar + BAR + 3.4;
        let from = if self.from > 0.0 { format!("{} …", lengths.write(self.from)) } else { "0, hook".to_owned() };
        let to = if last { lengths.write(self.to) } else { format!("… {}", lengths.write(self.to)) };
        let (left, right) = (self.x(self.from), self.x(self.to));
        let left_end = left + LABEL.width_mm(&from);
        let right_start = right - LABEL.width_mm(&to);
        let is_free = |a: f64, b: f64| below.iter().all(|l| self.x(l.at) + APART < a || self.x(l.at) - APART > b);
        if is_free(left, left_end) {
            sheet.text([left, base], Anchor::Start, LABEL, &from);
        }
        if right_start > left_end + 2.0 && is_free(right_start, right) {
            sheet.text([right, base], Anchor::End, LABEL, &to);
        }
    }
}

fn table(flow: &mut Flow, strip: &SettingOut, lengths: Lengths) {
    let figure = Style::bold(11.0);
    let mark = Style::regular(10.0);
    let group = [
        Column::words("mark", 20.0, mark),
        Column::figures("near face", 22.0, figure),
        Column::figures("far face", 22.0, mark),
        Column::words("", 5.0, mark),
    ];
    let mut table = Table::new(&[group, group, group, group].concat());
    let rows = strip.stations.len().div_ceil(4);
    for row in 0..rows {
        let mut cells = Vec::with_capacity(16);
        for column in 0..4 {
            let station = strip.stations.get(column * rows + row);
            cells.push(station.map_or_else(String::new, |s| mark.shorten(&s.mark, 17.0)));
            cells.push(station.map_or_else(String::new, |s| lengths.write(s.near_mm)));
            cells.push(station.map_or_else(String::new, |s| lengths.write(s.far_mm)));
            cells.push(String::new());
        }
        table.row(&cells, 1);
    }
    flow.table(&table);
}
