//! A length of stock with its timbers, drawn along its length to scale. Its depth is drawn larger, or it would be a
//! thread; both pictures say so in words beside them.

use crate::wording::Writing;
use order::whole::{CutOut, Layout};
use picture::{Anchor, Ink, Part, Picture, Pt, Shape};

/// The narrowest and the widest picture, px: a small phone, a tablet on the bench.
const WIDTHS: [f64; 2] = [280.0, 900.0];
/// Kept left and right, px.
const MARGIN: f64 = 3.0;
/// Height of the stock in a list and by itself, px.
const IN_LIST: f64 = 44.0;
const ALONE: f64 = 72.0;
/// Height of type, px.
const TYPE: f64 = 15.0;
/// Width of a letter against the height of its type, for a font that is not known.
const LETTER: f64 = 0.68;
/// Above and below the stock by itself, px: cuts stand out of it.
const OVER: f64 = 14.0;

/// In a list.
pub(super) fn row(writing: &Writing, layout: &Layout, depth: f64, width: f64) -> Picture {
    let sheet = Frame::of(layout, depth, width, IN_LIST, MARGIN);
    let mut parts = sheet.stock();
    for (k, _) in layout.pieces.iter().enumerate() {
        sheet.piece(layout, k, None, &mut parts);
    }
    Picture { width: sheet.width, height: IN_LIST + 2.0 * MARGIN, spoken: spoken(writing, layout), parts }
}

/// By itself, with its cuts: each is named after its step.
pub(super) fn alone(writing: &Writing, layout: &Layout, depth: f64, width: f64) -> Picture {
    let sheet = Frame::of(layout, depth, width, ALONE, OVER);
    let mut parts = sheet.stock();
    for (k, _) in layout.pieces.iter().enumerate() {
        sheet.piece(layout, k, Some(name_of_piece(k)), &mut parts);
    }
    for (k, cut) in layout.cuts.iter().enumerate() {
        parts.push(sheet.cut(cut, name_of_cut(k)));
    }
    Picture { width: sheet.width, height: ALONE + 2.0 * OVER, spoken: spoken(writing, layout), parts }
}

/// The name of the parts of a cut.
pub(super) fn name_of_cut(number: usize) -> String {
    format!("cut-{number}")
}

fn name_of_piece(number: usize) -> String {
    format!("piece-{number}")
}

/// What is read first on a timber: its mark, or how many marks it stands for.
fn label(layout: &Layout, number: usize) -> String {
    let Some(piece) = layout.pieces.get(number) else { return String::new() };
    match piece.marks.as_slice() {
        [only] => only.clone(),
        _ => piece.card.clone(),
    }
}

fn spoken(writing: &Writing, layout: &Layout) -> String {
    let marks: Vec<String> = (0..layout.pieces.len()).map(|k| label(layout, k)).collect();
    let left = writing.length(layout.left_mm.max(0.0).floor());
    format!("A length of {} with {}, and {left} left", writing.length(layout.length_mm), marks.join(", "))
}

/// Where a length of stock lies in its picture.
struct Frame {
    width: f64,
    /// px to a mm, along and across.
    along: f64,
    across: f64,
    top: f64,
    height: f64,
    length: f64,
}

impl Frame {
    fn of(layout: &Layout, depth: f64, width: f64, height: f64, top: f64) -> Self {
        let width = if width.is_finite() { width.clamp(WIDTHS[0], WIDTHS[1]) } else { WIDTHS[0] };
        let share = |px: f64, mm: f64| if mm > 0.0 && mm.is_finite() { px / mm } else { 0.0 };
        Self {
            width,
            along: share(width - 2.0 * MARGIN, layout.length_mm),
            across: share(height, depth),
            top,
            height,
            length: layout.length_mm,
        }
    }

    fn x(&self, mm: f64) -> f64 {
        MARGIN + mm.clamp(0.0, self.length.max(0.0)) * self.along
    }

    /// The lower edge of the stock is at the bottom.
    fn point(&self, [along, up]: [f64; 2]) -> Pt {
        [self.x(along), self.top + self.height - up * self.across]
    }

    fn stock(&self) -> Vec<Part> {
        let (left, right, bottom) = (self.x(0.0), self.x(self.length), self.top + self.height);
        let points = vec![[left, self.top], [right, self.top], [right, bottom], [left, bottom]];
        vec![Part { ink: Ink::Faint, name: None, shape: Shape::Area { points } }]
    }

    fn piece(&self, layout: &Layout, number: usize, name: Option<String>, parts: &mut Vec<Part>) {
        let Some(piece) = layout.pieces.get(number) else { return };
        for ring in piece.outline.iter().filter(|ring| ring.len() > 2) {
            let points = ring.iter().map(|at| self.point(*at)).collect();
            parts.push(Part { ink: Ink::Wood, name: name.clone(), shape: Shape::Area { points } });
        }
        let text = label(layout, number);
        let room = (piece.to_mm - piece.from_mm) * self.along;
        if text.chars().count() as f64 * TYPE * LETTER <= room {
            let at = [self.x((piece.from_mm + piece.to_mm) / 2.0), self.top + self.height / 2.0 + TYPE * 0.36];
            let shape = Shape::Text { at, size: TYPE, anchor: Anchor::Middle, turn_deg: 0.0, text };
            parts.push(Part { ink: Ink::Edge, name, shape });
        }
    }

    /// A cut stands out over both edges of the stock, in its own slope.
    fn cut(&self, cut: &CutOut, name: String) -> Part {
        let [low, high] = cut.at_mm.map(|mm| self.x(mm));
        let (top, bottom) = (self.top, self.top + self.height);
        let lean = if self.height > 0.0 { (high - low) / self.height * (OVER - 2.0) } else { 0.0 };
        let points = vec![[low - lean, bottom + OVER - 2.0], [high + lean, top - OVER + 2.0]];
        Part { ink: Ink::Hidden, name: Some(name), shape: Shape::Line { points } }
    }
}
