//! What the sheets for the site are put together from: headings, words, boxes, lines to write on.

use site::access::{Basis, Verdict};
use site::sequence::Standing;

use crate::flow::Flow;
use crate::page::{BOTTOM, LEFT, ROOM, TOP};
use crate::sheet::{Anchor, Pen, Role};
use crate::text::{SMALLEST_PT, Style};

/// Words to read at arm's length.
pub const WORDS: Style = Style::regular(10.0);
/// Words that stand out.
pub const STRONG: Style = Style::bold(10.5);
/// Figures to work by.
pub const FIGURE: Style = Style::bold(12.0);
/// Sources, and words beside a figure.
pub const SMALL: Style = Style::regular(SMALLEST_PT);
/// Most lines of a cell: what is longer is no row of a table.
pub const MOST_LINES: usize = 12;
/// Heading of a part of a sheet.
const PART: Style = Style::bold(14.0);
/// Its height, mm.
const PART_HEIGHT: f64 = 9.0;
/// Space above it, mm.
const PART_SPACE: f64 = 4.0;
/// A heading is not left alone at the foot of a sheet: height that must follow it, mm.
const AFTER_PART: f64 = 20.0;
/// Between a box and its words, mm.
pub const BOX_PAD: f64 = 3.0;
/// Between lines to write on by hand, mm.
const RULE_APART: f64 = 8.5;
/// A box to tick, as a letter.
pub const TICK: &str = "☐";
/// Style of that letter: large enough for a pencil.
pub const TICK_STYLE: Style = Style::regular(17.0);

/// A heading; it keeps `follows` mm of what comes after it on its sheet.
pub fn part_with(flow: &mut Flow, heading: &str, follows: f64) {
    let full = BOTTOM - TOP - 12.0;
    if flow.left() < full {
        flow.space(PART_SPACE);
    }
    if flow.left() < PART_HEIGHT + follows.max(AFTER_PART).min(full - PART_HEIGHT) {
        flow.break_page();
    }
    let (sheet, y) = flow.block(PART_HEIGHT);
    sheet.part(Role::Heading, |s| {
        s.text_within([LEFT, y + 6.0], Anchor::Start, PART, heading, ROOM);
    });
}

/// A heading.
pub fn part(flow: &mut Flow, heading: &str) {
    part_with(flow, heading, AFTER_PART);
}

/// Lines one below another; they may go on on the next sheet.
pub fn paragraph(flow: &mut Flow, style: Style, text: &str) {
    for line in style.wrap(text, ROOM) {
        let (sheet, y) = flow.block(style.line_mm());
        sheet.text([LEFT, y + style.cap_mm() + 0.6], Anchor::Start, style, &line);
    }
    flow.space(1.0);
}

/// Words in a heavy box; a box for every sheet that it goes over.
pub fn boxed(flow: &mut Flow, heading: &str, words: &[String]) {
    let width = ROOM - 2.0 * BOX_PAD;
    let lines: Vec<String> = words.iter().flat_map(|text| STRONG.wrap(text, width)).collect();
    let mut rest = lines.as_slice();
    let mut heading = heading.to_owned();
    while !rest.is_empty() {
        let head = BOX_PAD + PART.line_mm();
        if flow.left() < head + STRONG.line_mm() * 2.0 + BOX_PAD {
            flow.break_page();
        }
        let room = if flow.left() > 0.0 { flow.left() } else { BOTTOM - TOP - 12.0 };
        let fit = (((room - head - 2.0 * BOX_PAD) / STRONG.line_mm()).floor() as usize).clamp(1, rest.len());
        let height = head + STRONG.line_mm() * fit as f64 + BOX_PAD;
        let (sheet, y) = flow.block(height);
        sheet.rect([LEFT, y], [ROOM, height], None, Some(Pen::black(0.8)));
        sheet.text_within([LEFT + BOX_PAD, y + BOX_PAD + PART.cap_mm()], Anchor::Start, PART, &heading, width);
        let at = [LEFT + BOX_PAD, y + head + STRONG.cap_mm() + 0.6];
        let (now, later) = rest.split_at(fit);
        sheet.lines(at, STRONG, now);
        rest = later;
        if !heading.ends_with(", continued") {
            heading.push_str(", continued");
        }
        flow.space(2.0);
    }
}

/// A question with who answers it, and lines to write the answer on.
pub fn blank(flow: &mut Flow, question: &str, who: &str, rules: usize) {
    /// Most lines of a question that are kept with the lines to write on.
    const MOST: usize = 20;
    let mut lines = STRONG.wrap(&format!("{TICK} {question}"), ROOM - 2.0);
    let kept = lines.split_off(lines.len().saturating_sub(MOST));
    if !lines.is_empty() {
        paragraph(flow, STRONG, &lines.join(" "));
    }
    let lines = kept;
    let words = STRONG.line_mm() * lines.len() as f64;
    let (sheet, y) = flow.block(words + SMALL.line_mm() + RULE_APART * rules as f64 + 1.5);
    let end = sheet.lines([LEFT + 1.2, y + STRONG.cap_mm() + 1.5], STRONG, &lines);
    sheet.text_within([LEFT + 1.2, end], Anchor::Start, SMALL, &format!("to be answered by: {who}"), ROOM - 2.0);
    for k in 1..=rules {
        let at = y + words + SMALL.line_mm() + RULE_APART * k as f64;
        sheet.line([LEFT, at], [LEFT + ROOM, at], Pen::black(0.2));
    }
}

/// Lines to sign on, beside one another.
pub fn signatures(flow: &mut Flow, who: &[&str]) {
    const HEIGHT: f64 = 17.0;
    const APART: f64 = 6.0;
    flow.space(2.0);
    let each = (ROOM + APART) / who.len().max(1) as f64 - APART;
    let (sheet, y) = flow.block(HEIGHT);
    for (k, words) in who.iter().enumerate() {
        let x = LEFT + (each + APART) * k as f64;
        sheet.line([x, y + HEIGHT - 4.6], [x + each, y + HEIGHT - 4.6], Pen::black(0.3));
        sheet.text_within([x, y + HEIGHT - 1.2], Anchor::Start, SMALL, words, each);
    }
}

/// How a figure was come by, as the sheets say it.
pub const fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Published => "published",
        Standing::Memory => "from memory: look it up",
        Standing::Derived => "worked out",
        Standing::CommonPractice => "usual practice",
    }
}

/// How a figure of the access was come by.
pub const fn basis(basis: Basis) -> &'static str {
    basis.words()
}

/// The word for a verdict.
pub const fn verdict(verdict: Option<Verdict>) -> &'static str {
    match verdict {
        Some(Verdict::Over) => "OVER",
        Some(Verdict::Ask) => "ASK",
        Some(Verdict::Within) => "within",
        None => "",
    }
}

/// Words cut into pieces of at most so many lines at a width, so that no row of a table is higher than a sheet.
pub fn pieces(style: Style, text: &str, width: f64, most: usize) -> Vec<String> {
    let lines = style.wrap(text, width);
    if lines.is_empty() {
        return vec![String::new()];
    }
    lines.chunks(most.max(1)).map(|chunk| chunk.join(" ")).collect()
}
