//! Putting up, step by step: two steps beside one another on a sheet, each with the frame as it stands then.

use std::collections::BTreeMap;

use job::written::{Lengths, tenth};
use roof::solution::Solution;
use site::sequence::{Hold, PuttingUp, Step};

use crate::layout::Room;
use crate::marks::ranges;
use crate::page::{BOTTOM, LEFT, Page, ROOM, TOP};
use crate::sheet::{Anchor, Pen, Role, Sheet};
use crate::site_sheets::parts::{SMALL, STRONG, TICK, TICK_STYLE, WORDS};
use crate::site_sheets::view::Film;
use crate::text::Style;

/// On every sheet of steps.
pub const CAUTION: &str = "An order of work from the drawn roof, not a lifting plan. Who is in charge of the site looks before \
                           every step and stops for wind, wet and whatever is not as drawn. Local rules, the scaffold \
                           designer and the principal contractor decide.";
/// Title of the sheets.
pub const NAME: &str = "Putting up, step by step";
const NUMBER: Style = Style::bold(24.0);
const TITLE: Style = Style::bold(12.5);
/// Words of a hold.
const HOLD: Style = Style::bold(9.5);
/// Least height of a hold, mm: room to sign.
const LEAST_HOLD: f64 = 8.6;
/// Marks of what is fixed.
pub const MARKS: Style = Style::bold(11.0);
/// Base line of the heading, mm.
const HEADING_AT: f64 = TOP + 7.0;
/// Top of the columns, mm.
const COLUMN_TOP: f64 = TOP + 11.0;
/// Between the columns, mm.
const GUTTER: f64 = 7.0;
/// Width of a column, mm.
const COLUMN: f64 = (ROOM - GUTTER) / 2.0;
/// Height of number and title, mm.
const HEAD: f64 = 16.5;
/// Room of the number, mm.
const NUMBER_ROOM: f64 = 17.0;
/// Height of a picture, mm.
const PICTURE: f64 = 66.0;
/// Room of the words that say what a line is, mm.
const LABEL_ROOM: f64 = 23.0;
/// Between a hazard's box and its words, mm.
const PAD: f64 = 1.6;
/// Most lines of a hazard or a hold that are kept together.
const MOST: usize = 12;
/// Room of the box to tick, mm.
const TICK_ROOM: f64 = 8.0;
/// Room to sign beside a hold, mm.
const SIGN_ROOM: f64 = 24.0;

/// What stands under a picture; none is broken over two columns.
enum Block {
    /// A label, and a line beside it.
    Line(&'static str, Style, String),
    /// What may hurt.
    Hazard(Vec<String>),
    /// What is checked, with a box to tick and a line for initials.
    Hold(Vec<String>),
    /// The rest of a hold of many words.
    HoldRest(Vec<String>),
    /// What the lines beside holds are for.
    Signing,
    /// Clear, mm.
    Space(f64),
}

impl Block {
    fn height(&self) -> f64 {
        match self {
            Self::Line(_, style, _) => style.line_mm() + 0.2,
            Self::Hazard(lines) => STRONG.line_mm() * lines.len() as f64 + 2.0 * PAD + 1.5,
            Self::Hold(lines) => (HOLD.line_mm() * lines.len() as f64 + 1.8).max(LEAST_HOLD),
            Self::HoldRest(lines) => HOLD.line_mm() * lines.len() as f64 + 1.8,
            Self::Signing => SMALL.line_mm() + 0.6,
            Self::Space(mm) => *mm,
        }
    }

    fn draw(&self, sheet: &mut Sheet, [x, y]: [f64; 2]) {
        match self {
            Self::Line(label, style, text) => {
                let base = y + style.cap_mm() + 0.7;
                sheet.text([x, base], Anchor::Start, SMALL, label);
                sheet.text([x + LABEL_ROOM, base], Anchor::Start, *style, text);
            }
            Self::Hazard(lines) => {
                let height = self.height() - 1.5;
                sheet.rect([x, y], [COLUMN, height], None, Some(Pen::black(0.9)));
                sheet.text([x + PAD + 1.0, y + PAD + 4.6], Anchor::Start, Style::bold(15.0), "⚠");
                sheet.lines([x + 10.0, y + PAD + STRONG.cap_mm() + 0.9], STRONG, lines);
            }
            Self::Hold(lines) => {
                sheet.line([x, y], [x + COLUMN, y], Pen::grey(0.15, 120));
                let base = y + HOLD.cap_mm() + 1.3;
                sheet.text([x, y + TICK_STYLE.cap_mm() + 1.2], Anchor::Start, TICK_STYLE, TICK);
                sheet.lines([x + TICK_ROOM, base], HOLD, lines);
                let right = x + COLUMN;
                let rule = y + LEAST_HOLD - 1.8;
                sheet.line([right - SIGN_ROOM + 3.0, rule], [right, rule], Pen::black(0.25));
            }
            Self::HoldRest(lines) => {
                sheet.lines([x + TICK_ROOM, y + HOLD.cap_mm() + 0.8], HOLD, lines);
            }
            Self::Signing => {
                let base = y + SMALL.cap_mm() + 0.4;
                sheet.text([x, base], Anchor::Start, SMALL, "stop here until all of these are ticked");
                sheet.text([x + COLUMN, base], Anchor::End, SMALL, "initials, date");
            }
            Self::Space(_) => {}
        }
    }
}

/// All sheets of steps.
pub fn pages(solution: &Solution, putting_up: &PuttingUp) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let film = Film::new(solution, putting_up);
    let holds: BTreeMap<u32, &Hold> = putting_up.holds.iter().map(|h| (h.number, h)).collect();
    let mut columns = Columns { pages: Vec::new(), next: 0 };
    for (index, step) in putting_up.steps.iter().enumerate() {
        let blocks = blocks(step, &holds, lengths);
        let (sheet, x) = columns.next();
        head(sheet, x, step, false);
        let mut y = COLUMN_TOP + HEAD;
        let room = Room { x, y, w: COLUMN, h: PICTURE };
        if let Some(film) = &film {
            film.draw(sheet, index, room);
        }
        y += PICTURE + 2.5;
        let mut blocks = blocks.iter().peekable();
        loop {
            let (sheet, x) = columns.last();
            while let Some(block) = blocks.next_if(|b| y + b.height() <= BOTTOM || y <= COLUMN_TOP + HEAD) {
                block.draw(sheet, [x, y]);
                y += block.height();
            }
            if blocks.peek().is_none() {
                break;
            }
            let (sheet, x) = columns.next();
            head(sheet, x, step, true);
            y = COLUMN_TOP + HEAD;
        }
    }
    columns.pages
}

/// Pages of two columns.
struct Columns {
    pages: Vec<Page>,
    next: usize,
}

impl Columns {
    /// A column that is empty, and its left edge.
    fn next(&mut self) -> (&mut Sheet, f64) {
        if self.next.is_multiple_of(2) {
            let mut page = Page::new(NAME, false, CAUTION);
            let heading = if self.pages.is_empty() { NAME.to_owned() } else { format!("{NAME}, continued") };
            page.sheet.part(Role::Heading, |s| {
                s.text_within([LEFT, HEADING_AT], Anchor::Start, Style::bold(20.0), &heading, ROOM * 0.55);
                let key = "dark: fixed in this step    light: stands already    dashed: taken out";
                s.text([LEFT + ROOM, HEADING_AT], Anchor::End, SMALL, key);
            });
            let middle = LEFT + COLUMN + GUTTER / 2.0;
            page.sheet.line([middle, COLUMN_TOP], [middle, BOTTOM], Pen::grey(0.2, 120));
            self.pages.push(page);
        }
        self.next += 1;
        self.last()
    }

    /// The column begun last.
    fn last(&mut self) -> (&mut Sheet, f64) {
        let right = self.next.is_multiple_of(2);
        if self.pages.is_empty() {
            self.pages.push(Page::new(NAME, false, CAUTION));
        }
        let last = self.pages.len() - 1;
        (&mut self.pages[last].sheet, if right { LEFT + COLUMN + GUTTER } else { LEFT })
    }
}

fn head(sheet: &mut Sheet, x: f64, step: &Step, continued: bool) {
    sheet.part(Role::Heading, |s| {
        s.rect([x, COLUMN_TOP + 1.0], [NUMBER_ROOM - 3.0, 13.0], Some(0), None);
        let (style, number) = NUMBER.fit(&step.number.to_string(), NUMBER_ROOM - 5.0);
        let at = [x + (NUMBER_ROOM - 3.0) / 2.0, COLUMN_TOP + 7.5 + style.cap_mm() / 2.0];
        s.text(at, Anchor::Middle, style, &number);
        if let Some(crate::sheet::Item::Text(text)) = s.items.last_mut() {
            text.grey = 255;
        }
        let title = if continued { format!("{}, continued", step.title) } else { step.title.clone() };
        let lines = TITLE.wrap_at_most(&title, COLUMN - NUMBER_ROOM, 3);
        let block = TITLE.line_mm() * (lines.len().max(1) - 1) as f64 + TITLE.cap_mm();
        let base = COLUMN_TOP + 7.5 - block / 2.0 + TITLE.cap_mm();
        s.lines([x + NUMBER_ROOM, base], TITLE, &lines);
    });
}

fn blocks(step: &Step, holds: &BTreeMap<u32, &Hold>, lengths: Lengths) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut say = |label: &'static str, style: Style, text: &str| {
        for (k, line) in style.wrap(text, COLUMN - LABEL_ROOM).into_iter().enumerate() {
            blocks.push(Block::Line(if k == 0 { label } else { "" }, style, line));
        }
    };
    let hazard: Vec<String> =
        if step.hazard.is_empty() { Vec::new() } else { STRONG.wrap(&step.hazard, COLUMN - 13.0) };
    if !step.strips.is_empty() {
        // Lengths of one strip have its name.
        let mut strips = step.strips.clone();
        strips.dedup();
        say("mark out first", WORDS, &strips.join(", "));
    }
    if !step.props_set.is_empty() {
        say("set props", MARKS, &ranges(&step.props_set));
    }
    if !step.members.is_empty() {
        say("fix, in order", MARKS, &ranges(&step.members));
    }
    if !step.braces_set.is_empty() {
        say("brace", MARKS, &ranges(&step.braces_set));
    }
    if !step.permanent_set.is_empty() {
        say("nail for good", MARKS, &ranges(&step.permanent_set));
    }
    let out: Vec<String> = step.props_out.iter().chain(&step.braces_out).cloned().collect();
    if !out.is_empty() {
        say("take out", MARKS, &ranges(&out));
    }
    let hands =
        if step.hands == 1 { "1 person at least".to_owned() } else { format!("{} people at least", step.hands) };
    say("hands", WORDS, &hands);
    for words in step.lifting() {
        say("lift", WORDS, &words);
    }
    if !step.why.is_empty() {
        say("why now", WORDS, &step.why);
    }
    blocks.push(Block::Space(1.5));
    if !hazard.is_empty() {
        blocks.extend(hazard.chunks(MOST).map(|lines| Block::Hazard(lines.to_vec())));
    }
    let width = COLUMN - TICK_ROOM - SIGN_ROOM;
    if !step.holds.is_empty() {
        blocks.push(Block::Signing);
    }
    for group in alike(step.holds.iter().filter_map(|n| holds.get(n).copied())) {
        for (k, lines) in HOLD.wrap(&hold_words(&group, lengths), width).chunks(MOST).enumerate() {
            let lines = lines.to_vec();
            blocks.push(if k == 0 { Block::Hold(lines) } else { Block::HoldRest(lines) });
        }
    }
    blocks
}

/// Holds that check the same at several places, together; each is signed for by itself in the list of holds.
fn alike<'a>(holds: impl Iterator<Item = &'a Hold>) -> Vec<Vec<&'a Hold>> {
    let mut groups: Vec<Vec<&Hold>> = Vec::new();
    for hold in holds {
        let same = |other: &Hold| other.what == hold.what && tolerance(other) == tolerance(hold);
        match groups.iter_mut().find(|g| g.first().is_some_and(|first| same(first))) {
            Some(group) => group.push(hold),
            None => groups.push(vec![hold]),
        }
    }
    groups
}

/// `HOLD 9, 10: underside of the ridge, ±5 mm: foot end 2929; head end 2929`.
fn hold_words(group: &[&Hold], lengths: Lengths) -> String {
    let Some(first) = group.first() else { return String::new() };
    let numbers: Vec<String> = group.iter().map(|h| h.number.to_string()).collect();
    let places: Vec<String> = group
        .iter()
        .map(|h| h.figure_mm.map_or_else(|| h.at.clone(), |mm| format!("{} {}", h.at, lengths.write(mm))))
        .collect();
    let what = first.what.trim_end_matches(['.', ' ']);
    let tolerance = if first.tolerance.is_some() { format!(", {}", tolerance(first)) } else { String::new() };
    format!("HOLD {}: {what}{tolerance}: {}", numbers.join(", "), places.join("; "))
}

/// The tolerance in words.
pub fn tolerance(hold: &Hold) -> String {
    let each = if hold.per_metre { " in a metre" } else { "" };
    hold.tolerance.map_or_else(|| "by eye".to_owned(), |mm| format!("±{} mm{each}", tenth(mm)))
}
