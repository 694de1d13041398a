//! A length of stock as it is cut: to scale, with its timbers, its cuts and the side that the blade takes, what is
//! waste and what is kept.

use order::whole::out::{CutOut, LaidOut};

use crate::layout::spread;
use crate::marks::ranges;
use crate::order_sheets::words::Placed;
use crate::page::{LEFT, RIGHT};
use crate::sheet::{Anchor, Dash, Pen, Pt, Role, Sheet};
use crate::text::{SMALLEST_PT, Style, one_line};

/// Left of the strip: which layout, how many, of what length, mm.
pub const GUTTER: f64 = 27.0;
/// Where strips begin, mm.
pub const STRIP_LEFT: f64 = LEFT + GUTTER;
/// Longest that a strip may be, mm.
pub const STRIP_ROOM: f64 = RIGHT - STRIP_LEFT;
/// Above the strip: numbers of cuts and the lines that lead to them, mm.
pub const NUMBERS: f64 = 5.0;
/// Below the strip: marks that have no room in it, mm.
pub const OUTSIDE: f64 = 5.2;
/// Marks in the strip, at best.
const MARK: Style = Style::bold(13.0);
/// A mark with all its timbers is not set smaller than this to stand in the strip, pt.
const WHOLE_LEAST: f64 = 9.0;
const NUMBER: Style = Style::bold(SMALLEST_PT);
/// Nearest that two numbers stand, mm.
const NUMBERS_APART: f64 = 4.0;
/// Clear of a mark at both ends in its timber, mm.
const CLEAR: f64 = 1.6;
/// What the blade takes is drawn at least this wide, mm: a saw cut at 1:25 is a hair.
const LEAST_KERF: f64 = 0.45;
/// Between lines of hatching, mm.
const HATCH: f64 = 1.8;
/// Between marks below the strip, mm.
const MARKS_APART: f64 = 2.0;

/// A strip and where it stands.
pub struct Strip<'a> {
    /// The layout.
    pub placed: &'a Placed<'a>,
    /// 1 : n.
    pub scale: f64,
    /// What the blade takes, mm.
    pub kerf: f64,
}

/// What stands in or by a timber.
struct Marked {
    text: String,
    style: Style,
    /// Middle of the timber on the sheet, mm.
    at: f64,
    place: Place,
}

/// Where a mark stands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    /// In its timber.
    Inside,
    /// Below the strip.
    Below,
    /// Only in the list under the strip: there is no room for it.
    Listed,
}

/// Marks that stand below one strip.
const MOST_BELOW: usize = 16;

/// The words of a timber: those cut alike, and their card where it goes by another mark.
pub fn whole_mark(laid: &LaidOut) -> String {
    let marks = one_line(&ranges(&laid.marks));
    let alone = laid.marks.first().is_some_and(|m| *m == laid.card) && laid.marks.len() == 1;
    if alone { marks } else { format!("{marks} (card {})", one_line(&laid.card)) }
}

impl Strip<'_> {
    /// Depth of the stock on the sheet, mm.
    pub fn depth(&self) -> f64 {
        self.depth_mm() / self.scale
    }

    fn depth_mm(&self) -> f64 {
        let size = self.placed.timber.size;
        size.thickness_mm.max(size.depth_mm)
    }

    /// Length of the stock on the sheet, mm.
    fn length(&self) -> f64 {
        self.placed.layout.length_mm / self.scale
    }

    /// Whether a mark stands below the strip.
    pub fn has_outside(&self) -> bool {
        self.marked().iter().any(|m| m.place == Place::Below)
    }

    /// Timbers of which more is to be said than stands in the strip: `A1: A16–A19, B2`, `B7 by card A1`.
    pub fn listed(&self) -> Vec<String> {
        let pieces = self.placed.layout.pieces.iter().zip(self.marked());
        let short = pieces.filter(|(laid, marked)| marked.place == Place::Listed || marked.text != whole_mark(laid));
        let mut out: Vec<String> = Vec::new();
        for (laid, _) in short {
            let (card, marks) = (one_line(&laid.card), one_line(&ranges(&laid.marks)));
            let line =
                if laid.marks.len() == 1 { format!("{marks} by card {card}") } else { format!("{card}: {marks}") };
            if !out.contains(&line) {
                out.push(line);
            }
        }
        out
    }

    /// Marks of all timbers, each where it fits.
    fn marked(&self) -> Vec<Marked> {
        let mut all: Vec<Marked> = self.placed.layout.pieces.iter().map(|laid| self.mark(laid)).collect();
        // Timbers of a plan lie side by side; should a file hold others, their marks must not run into one another.
        let mut taken: Vec<[f64; 2]> = Vec::new();
        let mut below = 0;
        for mark in &mut all {
            let half = mark.style.width_mm(&mark.text) / 2.0;
            let span = [mark.at - half, mark.at + half];
            let clear = span.iter().all(|x| (STRIP_LEFT..=RIGHT).contains(x))
                && !taken.iter().any(|t| span[0] < t[1] && t[0] < span[1]);
            if mark.place == Place::Inside && clear {
                taken.push(span);
            } else if below < MOST_BELOW && mark.at.is_finite() {
                mark.place = Place::Below;
                mark.style = Style::bold(9.0);
                below += 1;
            } else {
                mark.place = Place::Listed;
            }
        }
        all
    }

    fn mark(&self, laid: &LaidOut) -> Marked {
        let [low, high] = self.reach(laid);
        let at = STRIP_LEFT + (low + high) / 2.0 / self.scale;
        let room = (high - low) / self.scale - 2.0 * CLEAR;
        let tall = (self.depth() - 2.0 * 0.5) / (crate::text::CAP_HEIGHT * crate::text::MM_PER_POINT);
        let best = MARK.sized(MARK.size_pt.min((tall * 2.0).floor() / 2.0));
        let fits = |text: &str, least: f64| {
            let width = best.width_mm(text);
            let size = if width > room { (best.size_pt * room / width * 4.0).floor() / 4.0 } else { best.size_pt };
            (size >= least).then(|| best.sized(size))
        };
        // One timber goes by its mark; timbers that are cut alike by that of their card.
        let short = if let [only] = laid.marks.as_slice() { one_line(only) } else { one_line(&laid.card) };
        let whole = whole_mark(laid);
        let inside = |text: String, style: Style| Marked { text, style, at, place: Place::Inside };
        if let Some(style) = fits(&whole, WHOLE_LEAST) {
            return inside(whole, style);
        }
        if let Some(style) = fits(&short, SMALLEST_PT) {
            return inside(short, style);
        }
        Marked { text: short, style: Style::bold(9.0), at, place: Place::Below }
    }

    /// From where to where the longest side of a timber reaches at the middle of its depth, mm from the left end of
    /// the stock: bevels and joints at its ends are sides of their own.
    fn reach(&self, laid: &LaidOut) -> [f64; 2] {
        let middle = self.depth_mm() / 2.0;
        let mut longest = [0.0, 0.0];
        for ring in &laid.outline {
            let mut found = [f64::INFINITY, f64::NEG_INFINITY];
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                if (a[1] - middle) * (b[1] - middle) < 0.0 {
                    let x = a[0] + (b[0] - a[0]) * (middle - a[1]) / (b[1] - a[1]);
                    found = [found[0].min(x), found[1].max(x)];
                }
            }
            if found[1] - found[0] > longest[1] - longest[0] {
                longest = found;
            }
        }
        let found = longest[0] < longest[1] && longest.iter().all(|x| x.is_finite());
        if found { longest } else { [laid.from_mm, laid.to_mm] }
    }

    /// Draws it with the top of the stock at `top`.
    pub fn draw(&self, sheet: &mut Sheet, top: f64) {
        let layout = self.placed.layout;
        let names: Vec<String> = layout.pieces.iter().map(whole_mark).collect();
        let words = format!("Layout {}: {} from one length, from the left", self.placed.number, names.join(", "));
        sheet.part(Role::Figure(words), |sheet| {
            let bottom = top + self.depth();
            self.hatch(sheet, top, bottom);
            for laid in &layout.pieces {
                for ring in &laid.outline {
                    let points = ring.iter().map(|p| self.point(*p, bottom)).collect();
                    sheet.path(points, true, Some(255), Some(Pen::black(0.25)));
                }
            }
            let kept = layout.kept.then(|| self.kept(sheet, top));
            sheet.rect([STRIP_LEFT, top], [self.length(), self.depth()], None, Some(Pen::black(0.35)));
            for cut in &layout.cuts {
                self.cut(sheet, cut, top, bottom);
            }
            self.numbers(sheet, top);
            self.marks(sheet, bottom);
            if kept.is_some() {
                self.kept_name(sheet, top);
            }
        });
    }

    fn point(&self, [along, up]: [f64; 2], bottom: f64) -> Pt {
        let along = along.clamp(0.0, self.placed.layout.length_mm.max(0.0));
        let up = up.clamp(0.0, self.depth_mm().max(0.0));
        [STRIP_LEFT + along / self.scale, bottom - up / self.scale]
    }

    /// Light lines at 45° over the whole of the stock; timbers are then drawn over them.
    fn hatch(&self, sheet: &mut Sheet, top: f64, bottom: f64) {
        let (left, right, deep) = (STRIP_LEFT, STRIP_LEFT + self.length(), bottom - top);
        let lines = ((self.length() + deep) / HATCH).floor().min(1000.0) as usize;
        for k in 1..=lines {
            let foot = left + HATCH * k as f64;
            // From the lower edge up to the right: x + y = foot + bottom, inside the box.
            let (from, to) = (foot.min(right), (foot - deep).max(left));
            if from > to {
                sheet.line([from, bottom - (foot - from)], [to, bottom - (foot - to)], Pen::grey(0.12, 150));
            }
        }
    }

    /// The offcut that is kept: clear of hatching, with a dashed outline.
    fn kept(&self, sheet: &mut Sheet, top: f64) {
        let (from, width) = self.kept_at();
        sheet.rect([from, top], [width, self.depth()], Some(255), Some(Pen::dashed(0.2, Dash::Dashed)));
    }

    fn kept_at(&self) -> (f64, f64) {
        let width = (self.placed.layout.left_mm / self.scale).clamp(0.0, self.length().max(0.0));
        (STRIP_LEFT + self.length() - width, width)
    }

    fn kept_name(&self, sheet: &mut Sheet, top: f64) {
        let (from, width) = self.kept_at();
        let names = self.placed.offcuts();
        let name = match names.as_slice() {
            [first, .., last] => format!("{first}–{last}"),
            [only] => only.clone(),
            [] => return,
        };
        let style = Style::bold(SMALLEST_PT);
        let text =
            [format!("keep as {name}"), format!("keep {name}"), name].into_iter().find(|t| style.width_mm(t) < width);
        if let Some(text) = text.filter(|_| style.cap_mm() + 0.6 < self.depth()) {
            let base = top + (self.depth() + style.cap_mm()) / 2.0;
            sheet.text([from + width / 2.0, base], Anchor::Middle, style, &text);
        }
    }

    /// A cut as it slants, and what the blade takes beside it.
    fn cut(&self, sheet: &mut Sheet, cut: &CutOut, top: f64, bottom: f64) {
        let x = |mm: f64| STRIP_LEFT + mm / self.scale;
        let [near, far] = cut.at_mm.map(x);
        let side = if cut.kerf_right { 1.0 } else { -1.0 };
        let wide = (self.kerf / self.scale).max(LEAST_KERF) * side;
        let within = |x: f64| x.clamp(STRIP_LEFT - LEAST_KERF, STRIP_LEFT + self.length() + LEAST_KERF);
        if ![near, far].iter().all(|x| x.is_finite()) {
            return;
        }
        let points =
            vec![[within(near), bottom], [within(far), top], [within(far + wide), top], [within(near + wide), bottom]];
        sheet.path(points, true, Some(0), None);
    }

    /// Numbers of the cuts above the strip.
    fn numbers(&self, sheet: &mut Sheet, top: f64) {
        let length = self.length();
        let mut wanted: Vec<(usize, f64)> = Vec::new();
        for (k, cut) in self.placed.layout.cuts.iter().enumerate() {
            let at = cut.at_mm[1] / self.scale;
            wanted.push((k + 1, STRIP_LEFT + if at.is_finite() { at.clamp(0.0, length) } else { 0.0 }));
        }
        wanted.sort_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
        let at: Vec<f64> = wanted.iter().map(|w| w.1).collect();
        let places = spread(&at, NUMBERS_APART, STRIP_LEFT, RIGHT - NUMBERS_APART / 2.0);
        for ((number, at), place) in wanted.into_iter().zip(places) {
            let base = top - 2.4;
            sheet.line([place, base + 0.4], [at, top], Pen::grey(0.15, 90));
            sheet.text([place, base], Anchor::Middle, NUMBER, &number.to_string());
        }
    }

    /// Marks in the timbers, and below the strip where they have no room.
    fn marks(&self, sheet: &mut Sheet, bottom: f64) {
        let marked = self.marked();
        for mark in marked.iter().filter(|m| m.place == Place::Inside) {
            let base = bottom - (self.depth() - mark.style.cap_mm()) / 2.0;
            sheet.text([mark.at, base], Anchor::Middle, mark.style, &mark.text);
        }
        let mut below: Vec<&Marked> = marked.iter().filter(|m| m.place == Place::Below).collect();
        below.sort_by(|a, b| a.at.total_cmp(&b.at));
        let widest = below.iter().map(|m| m.style.width_mm(&m.text)).fold(0.0, f64::max);
        let share = if below.is_empty() { 0.0 } else { STRIP_ROOM / below.len() as f64 - MARKS_APART };
        let room = widest.min(share);
        let at: Vec<f64> = below.iter().map(|m| m.at).collect();
        let places = spread(&at, room + MARKS_APART, STRIP_LEFT + room / 2.0, RIGHT - room / 2.0);
        for (mark, place) in below.into_iter().zip(places) {
            let base = bottom + OUTSIDE - 0.8;
            sheet.line([place, base - mark.style.cap_mm() - 0.3], [mark.at, bottom], Pen::grey(0.15, 90));
            sheet.text_within([place, base], Anchor::Middle, mark.style, &mark.text, room);
        }
    }
}
