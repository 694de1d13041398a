//! The cutting plan: every layout as a strip to scale, with the places of its cuts and the settings of the saw.

use job::written::{Lengths, degrees, fixed};
use order::whole::Order;
use order::whole::out::{CutOut, Layout, TimberOut};
use roof::solution::Solution;

use crate::flow::Flow;
use crate::layout::{scale, scale_words};
use crate::marks::ranges;
use crate::order_sheets::strip::{NUMBERS, OUTSIDE, STRIP_LEFT, STRIP_ROOM, Strip};
use crate::order_sheets::words::{Placed, best_words, cut_word, group_name, keep_word, placed, shared_words};
use crate::page::{LEFT, Page, RIGHT, ROOM};
use crate::sheet::{Anchor, Pen, Role, Sheet};
use crate::text::{SMALLEST_PT, Style, one_line};

const CAUTION: &str = "Measure every length before it is cut: stock comes longer and shorter than it is called. Cut one \
                       of each layout, try each timber against its card, then cut the rest.";
const LABEL: Style = Style::regular(SMALLEST_PT);
const STRONG: Style = Style::bold(SMALLEST_PT);
const WORDS: Style = Style::regular(10.0);
const PLACE: Style = Style::bold(9.0);
const COUNT: Style = Style::bold(15.0);
const GROUP: Style = Style::bold(14.0);
/// Height of the heading of a section, mm, and of its second line.
const GROUP_HEIGHT: f64 = 8.0;
/// Height of a line of cuts, mm.
const LINE: f64 = 4.1;
/// Between strip and cuts, mm.
const GAP: f64 = 1.2;
/// Between layouts, mm.
const APART: f64 = 2.6;
/// The gutter's lines need so much, mm; and one line more.
const GUTTER_HEIGHT: f64 = 12.6;
/// See above, mm.
const GUTTER_LINE: f64 = 3.4;
/// How strips and the lines under them are read.
const READ: &str = "Strips show the stock on its wide side, the near edge below. Places are pulled from the left end, along \
                    the near / far edge, to the side of the blade that is kept; off: the cut leaves over the end. Mitre and \
                    tilt are those of the saw. Square: clean the end. Part: cut a timber off. Share: one cut makes two ends. \
                    Trim: take the rest off an end. No. 2: the second timber from the left, where its mark has no room.";
/// Lines of marks under a strip.
const MOST_LIST: usize = 3;
/// Longer than any lorry, mm: not drawn.
const LONGEST: f64 = 1e6;
/// Two figures that are written alike are written once, mm.
const ALIKE: f64 = 0.25;

/// The sheets.
pub fn pages(solution: &Solution, order: &Order) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Cutting plan", false, CAUTION);
    let all = placed(&order.timber);
    for timber in &order.timber {
        let these: Vec<&Placed<'_>> = all.iter().filter(|p| std::ptr::eq(p.timber, timber)).collect();
        if these.is_empty() {
            continue;
        }
        let longest = these.iter().map(|p| p.layout.length_mm).filter(|l| drawable(*l)).fold(0.0, f64::max);
        let n = scale(|n| longest / n <= STRIP_ROOM);
        if flow.left() <= 0.0 && timber_is_first(&all, timber) {
            read(&mut flow);
        }
        group(&mut flow, order, timber, n, lengths);
        for placed in these {
            layout(&mut flow, &Strip { placed, scale: n, kerf: order.kerf_mm }, lengths);
        }
        flow.space(APART);
    }
    flow.finish()
}

fn timber_is_first(all: &[Placed<'_>], timber: &TimberOut) -> bool {
    all.first().is_some_and(|first| std::ptr::eq(first.timber, timber))
}

/// How to read the plan.
fn read(flow: &mut Flow) {
    let lines = LABEL.wrap(READ, ROOM);
    let (sheet, y) = flow.block(LABEL.line_mm() * lines.len() as f64 + GAP);
    sheet.lines([LEFT, y + LABEL.cap_mm()], LABEL, &lines);
}

fn drawable(length: f64) -> bool {
    length > 0.0 && length < LONGEST
}

/// Heading of a section: how good its plan is, and what the lines under the strips say.
fn group(flow: &mut Flow, order: &Order, timber: &TimberOut, n: f64, lengths: Lengths) {
    let lengths_cut: u32 = timber.layouts.iter().map(|l| l.count).fold(0, u32::saturating_add);
    let told = format!(
        "{} Waste {} %. {}",
        best_words(&timber.best),
        fixed(timber.waste_percent, 1),
        shared_words(&order.currency, timber)
    );
    let told = WORDS.wrap_at_most(&one_line(&told), ROOM, 2);
    let first = NUMBERS + GUTTER_HEIGHT + 2.0 * LINE;
    let height = GROUP_HEIGHT + WORDS.line_mm() * told.len() as f64 + 1.0;
    if flow.left() < height + LINE + first {
        flow.break_page();
    }
    let (sheet, y) = flow.block(height);
    let heading = format!(
        "{}: {} from {}",
        group_name(lengths, timber),
        several(timber.timbers, "timber"),
        several(lengths_cut, "length")
    );
    let drawn = scale_words(n);
    sheet.part(Role::Heading, |s| {
        s.text_within([LEFT, y + 5.6], Anchor::Start, GROUP, &heading, ROOM - LABEL.width_mm(&drawn) - 4.0);
    });
    sheet.text([RIGHT, y + 5.6], Anchor::End, LABEL, &drawn);
    sheet.lines([LEFT, y + GROUP_HEIGHT + WORDS.cap_mm()], WORDS, &told);
    heads(flow, lengths);
}

fn several(count: u32, of: &str) -> String {
    if count == 1 { format!("1 {of}") } else { format!("{count} {of}s") }
}

/// Columns of the lines of cuts, from the left of a cut's room, mm.
struct Columns {
    /// How many cuts stand side by side.
    across: usize,
    /// Room of one, mm.
    width: f64,
    what: f64,
    ends: f64,
    /// Right end of the place.
    place: f64,
    mitre: f64,
    tilt: f64,
    keep: f64,
}

impl Columns {
    const fn of(lengths: Lengths) -> Self {
        match lengths {
            Lengths::Millimetres => Self {
                across: 3,
                width: ROOM / 3.0,
                what: 5.5,
                ends: 17.0,
                place: 57.0,
                mitre: 67.5,
                tilt: 77.5,
                keep: 79.5,
            },
            Lengths::FeetInches => Self {
                across: 2,
                width: ROOM / 2.0,
                what: 5.5,
                ends: 17.0,
                place: 92.0,
                mitre: 105.0,
                tilt: 117.0,
                keep: 120.0,
            },
        }
    }
}

/// What the lines of cuts say, over each column.
fn heads(flow: &mut Flow, lengths: Lengths) {
    let columns = Columns::of(lengths);
    let (sheet, y) = flow.block(LINE);
    let base = y + LINE - 1.2;
    for k in 0..columns.across {
        let x = LEFT + columns.width * k as f64;
        sheet.text([x, base], Anchor::Start, LABEL, "cut");
        sheet.text([x + columns.ends, base], Anchor::Start, LABEL, "ends");
        sheet.text([x + columns.place, base], Anchor::End, LABEL, "near / far edge");
        sheet.text([x + columns.mitre, base], Anchor::End, LABEL, "mitre");
        sheet.text([x + columns.tilt, base], Anchor::End, LABEL, "tilt");
        sheet.text([x + columns.keep, base], Anchor::Start, LABEL, "keep");
    }
    sheet.line([LEFT, base + 1.0], [RIGHT, base + 1.0], Pen::black(0.25));
}

fn layout(flow: &mut Flow, strip: &Strip<'_>, lengths: Lengths) {
    let layout = strip.placed.layout;
    let columns = Columns::of(lengths);
    let drawn = drawable(layout.length_mm) && strip.depth() > 0.0 && strip.depth() < STRIP_ROOM / 4.0;
    let outside = if drawn && strip.has_outside() { OUTSIDE } else { 0.0 };
    let mut listed = if drawn { strip.listed() } else { all_marks(layout) };
    if let Some(name) = &layout.yard {
        listed.insert(0, format!("From the yard: {}", one_line(name)));
    }
    let listed = LABEL.wrap_at_most(&listed.join("; "), STRIP_ROOM, MOST_LIST);
    let gutter_height = GUTTER_HEIGHT + if layout.kept { GUTTER_LINE } else { 0.0 };
    let strip_height = if drawn { NUMBERS + strip.depth() + outside } else { 0.0 };
    let above = (strip_height + LABEL.line_mm() * listed.len() as f64 + GAP).max(gutter_height);
    let lines = layout.cuts.len().div_ceil(columns.across);
    let height = above + LINE * lines as f64;
    if flow.left() < height {
        flow.break_page();
        heads(flow, lengths);
    }
    // More cuts than a page holds go on over further pages, a line at a time.
    let (sheet, y) = flow.block(above);
    gutter(sheet, strip.placed, y, lengths);
    if drawn {
        strip.draw(sheet, y + NUMBERS);
    }
    sheet.lines([STRIP_LEFT, y + strip_height + LABEL.cap_mm() + 0.9], LABEL, &listed);
    for row in 0..lines {
        let (sheet, y) = flow.block(LINE);
        for k in 0..columns.across {
            let number = row + lines * k;
            if let Some(cut) = layout.cuts.get(number) {
                cut_line(sheet, layout, (number, cut), [LEFT + columns.width * k as f64, y], lengths);
            }
        }
    }
    flow.space(APART / 2.0);
    if flow.left() > APART {
        let (sheet, y) = flow.block(APART / 2.0);
        sheet.line([LEFT, y], [RIGHT, y], Pen::grey(0.15, 150));
    }
}

/// Marks of a layout that is not drawn.
fn all_marks(layout: &Layout) -> Vec<String> {
    layout.pieces.iter().map(crate::order_sheets::strip::whole_mark).collect()
}

/// Which layout, how many, of what.
fn gutter(sheet: &mut Sheet, placed: &Placed<'_>, y: f64, lengths: Lengths) {
    let layout = placed.layout;
    let room = STRIP_LEFT - LEFT - 2.0;
    let mut words = vec![format!("of {}", lengths.write(layout.length_mm))];
    if layout.kept {
        words.push(format!("keeps {}", lengths.write(layout.left_mm)));
    }
    sheet.text_within([LEFT, y + 2.6], Anchor::Start, LABEL, &format!("layout {}", placed.number), room);
    let mut base = y + 2.6 + COUNT.cap_mm() + 1.4;
    sheet.text_within([LEFT, base], Anchor::Start, COUNT, &format!("{} off", layout.count), room);
    let style = Style::bold(9.0);
    base += style.cap_mm() + 1.0;
    for line in &words {
        sheet.text_within([LEFT, base], Anchor::Start, style, line, room);
        base += style.line_mm() * 0.9;
    }
}

/// A cut on one line.
fn cut_line(sheet: &mut Sheet, layout: &Layout, (number, cut): (usize, &CutOut), [x, y]: [f64; 2], lengths: Lengths) {
    let columns = Columns::of(lengths);
    let base = y + LINE - 1.0;
    sheet.part(Role::Row, |sheet| {
        let mut cell = |at: f64, anchor: Anchor, style: Style, text: &str, room: f64| {
            sheet.part(Role::Cell, |s| s.text_within([x + at, base], anchor, style, text, room));
        };
        cell(0.0, Anchor::Start, STRONG, &(number + 1).to_string(), columns.what - 0.5);
        cell(columns.what, Anchor::Start, LABEL, cut_word(&cut.what), columns.ends - columns.what - 0.8);
        let place = place_words(cut, layout.length_mm, lengths);
        let taken = PLACE.width_mm(&place).min(columns.place - columns.ends - 8.0);
        let ends = columns.place - columns.ends - taken - 1.0;
        let names = ends_words(layout, cut);
        let names = if LABEL.width_mm(&names) <= ends { names } else { ends_numbers(cut) };
        cell(columns.ends, Anchor::Start, LABEL, &names, ends);
        cell(columns.place, Anchor::End, PLACE, &place, taken + 0.01);
        let angle = columns.tilt - columns.mitre - 0.8;
        cell(columns.mitre, Anchor::End, LABEL, &degrees(cut.saw.mitre_deg), angle);
        cell(columns.tilt, Anchor::End, LABEL, &degrees(cut.saw.tilt_deg), angle);
        cell(columns.keep, Anchor::Start, LABEL, keep_word(cut.kerf_right), columns.width - columns.keep - 0.8);
    });
}

/// Where a cut crosses the near edge and the far one; once when it is square across; `off` where it leaves over an end of the stock.
fn place_words(cut: &CutOut, length: f64, lengths: Lengths) -> String {
    let [near, far] = cut.at_mm;
    let place = |mm: f64| if mm < 0.0 || mm > length { "off".to_owned() } else { lengths.write(mm) };
    if (near - far).abs() < ALIKE { lengths.write(near) } else { format!("{} / {}", place(near), place(far)) }
}

/// Cards of the timbers whose ends a cut makes.
pub fn ends_words(layout: &Layout, cut: &CutOut) -> String {
    let laid = cut.ends.iter().filter_map(|k| layout.pieces.get(*k as usize));
    let names: Vec<String> = laid.map(|p| if p.marks.len() == 1 { ranges(&p.marks) } else { p.card.clone() }).collect();
    names.join(", ")
}

/// The same by their numbers from the left, where there is no room for names.
fn ends_numbers(cut: &CutOut) -> String {
    let numbers: Vec<String> = cut.ends.iter().map(|k| (k + 1).to_string()).collect();
    format!("no. {}", numbers.join(", "))
}
