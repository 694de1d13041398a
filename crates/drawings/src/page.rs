//! The frame every sheet has: A4 on its side, a heading, a caution, a check
//! bar and a title block.

use roof::solution::Solution;

use crate::sheet::{Anchor, Pen, Role, Sheet};
use crate::text::{SMALLEST_PT, Style};
use job::written::Lengths;

/// A4 on its side, mm.
pub const WIDTH: f64 = 297.0;
/// A4 on its side, mm.
pub const HEIGHT: f64 = 210.0;
/// Left of everything, mm; no printer needs more.
pub const LEFT: f64 = 10.0;
/// Right of everything, mm.
pub const RIGHT: f64 = WIDTH - LEFT;
/// Top of everything, mm.
pub const TOP: f64 = 10.0;
/// The content of a sheet ends here, mm.
pub const BOTTOM: f64 = 180.0;
/// Room between the margins, mm.
pub const ROOM: f64 = RIGHT - LEFT;

/// Length of the bar that shows whether a printer kept the scale, mm.
const CHECK_BAR: f64 = 100.0;
/// Top of the title block, mm.
const BLOCK_TOP: f64 = 190.0;
/// Bottom of the title block, mm.
const BLOCK_BOTTOM: f64 = HEIGHT - 10.0;

const LABEL: Style = Style::regular(SMALLEST_PT);

/// A sheet and what its title block says.
pub struct Page {
    /// The sheet.
    pub sheet: Sheet,
    /// What it is, e.g. `Cutting list`.
    pub name: String,
    /// It carries drawings to scale.
    pub to_scale: bool,
    /// What to mind before cutting from it.
    pub caution: &'static str,
}

impl Page {
    /// A page with nothing on it.
    pub fn new(name: &str, to_scale: bool, caution: &'static str) -> Self {
        Self { sheet: Sheet::new(WIDTH, HEIGHT), name: name.to_owned(), to_scale, caution }
    }
}

/// What the title block of every sheet says.
pub struct Block<'a> {
    /// What the sheets are of.
    pub title: &'a str,
    /// Date.
    pub date: Option<&'a str>,
    /// Revision.
    pub revision: Option<&'a str>,
    /// What the sheets say about their lengths.
    pub rounding: &'static str,
}

/// Writes the frame on every page of a roof's sheets and hands them over.
pub fn frame(pages: Vec<Page>, solution: &Solution) -> Vec<Sheet> {
    let block = Block {
        title: &solution.title,
        date: solution.date.as_deref(),
        revision: solution.revision.as_deref(),
        rounding: Lengths::from_show(&solution.show).rounding(),
    };
    framed(pages, &block)
}

/// Writes the frame on every page and hands over the sheets.
pub fn framed(pages: Vec<Page>, block: &Block<'_>) -> Vec<Sheet> {
    let count = pages.len();
    pages
        .into_iter()
        .enumerate()
        .map(|(index, mut page)| {
            let mut sheet = page.sheet;
            page.sheet = Sheet::new(0.0, 0.0);
            sheet.part(Role::Margin, |s| {
                foot(s, &page);
                title_block(s, &page, block, index + 1, count);
            });
            sheet
        })
        .collect()
}

fn foot(sheet: &mut Sheet, page: &Page) {
    let room = if page.to_scale { ROOM - CHECK_BAR - 6.0 } else { ROOM };
    let style = Style::bold(SMALLEST_PT);
    let lines = style.wrap_at_most(page.caution, room, 2);
    sheet.lines([LEFT, BLOCK_TOP - 2.0 - style.line_mm() * (lines.len().max(1) - 1) as f64], style, &lines);
    if page.to_scale {
        let x = RIGHT - CHECK_BAR;
        let y = BLOCK_TOP - 2.0;
        let pen = Pen::black(0.35);
        sheet.line([x, y], [RIGHT, y], pen);
        for tenth in 0..=10 {
            let tick = if tenth % 5 == 0 { 2.2 } else { 1.2 };
            let x = x + f64::from(tenth) * CHECK_BAR / 10.0;
            sheet.line([x, y], [x, y - tick], pen);
        }
        sheet.text([x + CHECK_BAR / 2.0, y - 3.0], Anchor::Middle, LABEL, "print at 100 %: this bar is 100 mm");
    }
}

fn title_block(sheet: &mut Sheet, page: &Page, block: &Block<'_>, number: usize, count: usize) {
    let (top, bottom) = (BLOCK_TOP, BLOCK_BOTTOM);
    sheet.rect([LEFT, top], [ROOM, bottom - top], None, Some(Pen::black(0.5)));
    let date = block.date.unwrap_or("–");
    let revision = block.revision.unwrap_or("–");
    let page_of = format!("page {number} of {count}");
    let columns: [(&str, &str, f64); 5] = [
        ("job", block.title, 84.0),
        ("sheet", &page.name, 70.0),
        ("date", date, 32.0),
        ("revision", revision, 24.0),
        (block.rounding, &page_of, 67.0),
    ];
    let mut x = LEFT;
    for (label, words, width) in columns {
        if x > LEFT {
            sheet.line([x, top], [x, bottom], Pen::black(0.25));
        }
        sheet.text_within([x + 1.5, top + 3.2], Anchor::Start, LABEL, label, width - 3.0);
        sheet.text_within([x + 1.5, top + 8.3], Anchor::Start, Style::bold(12.0), words, width - 3.0);
        x += width;
    }
}
