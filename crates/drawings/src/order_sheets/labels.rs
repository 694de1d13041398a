//! Labels, one for every timber, in the order of the cutting plan: on A4 upright, three by eight, to stick on or to
//! write off.

use job::written::Lengths;
use order::whole::Order;
use roof::solution::Solution;

use crate::order_sheets::words::{group_name, placed};
use crate::sheet::{Anchor, Pen, Role, Sheet};
use crate::text::{SMALLEST_PT, Style, one_line};

/// A4 upright, mm.
const PAPER: [f64; 2] = [210.0, 297.0];
/// Labels across and down.
const GRID: [usize; 2] = [3, 8];
/// A label, mm: sheets of labels of this size need no margin at the sides.
const LABEL: [f64; 2] = [70.0, 37.0];
/// Above the first row, mm.
const TOP: f64 = (PAPER[1] - LABEL[1] * GRID[1] as f64) / 2.0;
/// Clear at the edges of a label, mm: what printers leave white at the edge of paper.
const CLEAR: f64 = 6.0;
const MARK: Style = Style::bold(30.0);
const KIND: Style = Style::bold(11.0);
const WORDS: Style = Style::regular(10.0);
const SMALL: Style = Style::regular(SMALLEST_PT);

/// A shorter piece of the job's title says nothing, mm.
const LEAST_TITLE: f64 = 12.0;

/// What stands on one label.
struct Label {
    mark: String,
    kind: String,
    section: String,
    foot: String,
}

fn labels(solution: &Solution, order: &Order) -> Vec<Label> {
    let lengths = Lengths::from_show(&solution.show);
    let mut out = Vec::new();
    for placed in placed(&order.timber) {
        for k in 0..placed.layout.count as usize {
            for laid in &placed.layout.pieces {
                // A layout with fewer marks than lengths says nothing about the rest.
                let Some(mark) = laid.marks.get(k) else { continue };
                let member = solution.members.iter().find(|m| m.mark == *mark);
                let length = member.map_or(laid.to_mm - laid.from_mm, |m| m.cut_length_mm);
                let wall = member.and_then(|m| m.wall.as_ref()).map(|w| format!("wall {}, ", one_line(w)));
                out.push(Label {
                    mark: one_line(mark),
                    kind: member.map_or_else(String::new, |m| m.kind.name().to_owned()),
                    section: format!("{}, {}", group_name(lengths, placed.timber), lengths.write_with_unit(length)),
                    foot: format!(
                        "{}card {}, layout {}",
                        wall.unwrap_or_default(),
                        one_line(&laid.card),
                        placed.number
                    ),
                });
            }
        }
    }
    out
}

/// The sheets; none when nothing is cut.
pub fn sheets(solution: &Solution, order: &Order) -> Vec<Sheet> {
    let per_sheet = GRID[0] * GRID[1];
    labels(solution, order).chunks(per_sheet).map(|labels| one_sheet(&solution.title, labels)).collect()
}

fn one_sheet(title: &str, labels: &[Label]) -> Sheet {
    let mut sheet = Sheet::new(PAPER[0], PAPER[1]);
    for (k, label) in labels.iter().enumerate() {
        let at = [LABEL[0] * (k % GRID[0]) as f64, TOP + LABEL[1] * (k / GRID[0]) as f64];
        one_label(&mut sheet, title, label, at);
    }
    sheet
}

fn one_label(sheet: &mut Sheet, title: &str, label: &Label, [x, y]: [f64; 2]) {
    let pen = Pen::grey(0.1, 190);
    sheet.line([x, y + LABEL[1]], [x + LABEL[0], y + LABEL[1]], pen);
    if x > 0.0 {
        sheet.line([x, y], [x, y + LABEL[1]], pen);
    }
    let room = LABEL[0] - 2.0 * CLEAR;
    let (left, right) = (x + CLEAR, x + LABEL[0] - CLEAR);
    sheet.part(Role::Heading, |s| {
        let (style, mark) = MARK.fit(&label.mark, room);
        s.text([left, y + 13.6], Anchor::Start, style, &mark);
    });
    // Which job, beside the kind where there is room for some of it.
    let beside = room - KIND.width_mm(&label.kind) - 3.0;
    if beside > LEAST_TITLE {
        sheet.text_within([right, y + 19.6], Anchor::End, SMALL, title, beside);
    }
    sheet.text_within([left, y + 19.6], Anchor::Start, KIND, &label.kind, room);
    sheet.text_within([left, y + 25.4], Anchor::Start, WORDS, &label.section, room);
    sheet.text_within([left, y + 30.8], Anchor::Start, SMALL, &label.foot, room);
}
