//! The plan of the roof in thin lines, for what is put on it: props, braces, straps, runs of scaffold.

use roof::solution::{LineKind, MemberKind, Solution};

use crate::layout::{Room, Taken};
use crate::plan::{Side, View};
use crate::sheet::{Anchor, Pen, Pt, Sheet, Text};
use crate::text::{SMALLEST_PT, Style};

/// Names on a plan.
pub const NAME: Style = Style::bold(9.0);
/// Names where there is little room.
const LITTLE: Style = Style::bold(SMALLEST_PT);
/// Longest name, mm.
const LONGEST: f64 = 30.0;

/// A plan that things are put on.
pub struct Ground {
    /// How it lies on paper.
    pub view: View,
    /// Where names are.
    pub taken: Taken,
    /// Names for which there was no room.
    pub unplaced: Vec<String>,
}

impl Ground {
    /// The plates in thin lines with the letters of the walls, and what the plan shows around them; `more` are further
    /// points that must come on it.
    pub fn draw(sheet: &mut Sheet, solution: &Solution, more: &[Pt], room: Room, free: f64) -> Option<Self> {
        let rings = || std::iter::once(&solution.plan.corners).chain(&solution.plan.holes);
        let finite = |p: &&Pt| p.iter().all(|v| v.is_finite());
        let view = View::of(rings().flatten().chain(more).filter(finite).copied(), room, free)?;
        for line in &solution.lines {
            if matches!(line.kind, LineKind::Ridge | LineKind::Hip | LineKind::Valley | LineKind::PitchBreak) {
                let ends = [line.from, line.to].map(|p| view.place([p[0], p[1]]));
                sheet.line(ends[0], ends[1], Pen::grey(0.3, 150));
            }
        }
        for member in &solution.members {
            if matches!(member.kind, MemberKind::CommonRafter | MemberKind::CrownRafter | MemberKind::JackRafter) {
                let ends = [member.axis.from, member.axis.to].map(|p| view.place([p[0], p[1]]));
                sheet.line(ends[0], ends[1], Pen::grey(0.1, 190));
            }
        }
        for opening in &solution.openings {
            let corners = opening.outline.map(|p| view.place([p[0], p[1]]));
            sheet.path(corners.to_vec(), true, None, Some(Pen::grey(0.25, 120)));
        }
        Some(Self { view, taken: Taken::new(room), unplaced: Vec::new() })
    }

    /// The plate lines and the letters of the walls, over what was put on so far.
    pub fn walls(&mut self, sheet: &mut Sheet, solution: &Solution) {
        for side in solution.plan.walls.iter().filter_map(|wall| Side::new(wall, &self.view)) {
            side.letter(sheet, &mut self.taken);
        }
    }

    /// Where a point of the roof comes.
    pub fn place(&self, p: [f64; 3]) -> Pt {
        self.view.place([p[0], p[1]])
    }

    /// A name on clear ground by the first of these places where there is room; else it is kept for a list.
    pub fn name(&mut self, sheet: &mut Sheet, words: &str, places: &[Pt]) {
        let tries = [NAME, LITTLE].into_iter().flat_map(|style| {
            let words = style.shorten(&crate::text::one_line(words), LONGEST);
            let width = style.width_mm(&words);
            places.iter().flat_map(move |&[x, y]| {
                let half = style.cap_mm() / 2.0;
                let text = |at: Pt| Text { at, along: [1.0, 0.0], style, text: words.clone(), width, grey: 0 };
                [
                    text([x + 1.6, y + half]),
                    text([x - 1.6 - width, y + half]),
                    text([x - width / 2.0, y - 1.8]),
                    text([x - width / 2.0, y + 1.8 + 2.0 * half]),
                ]
            })
        });
        let tries: Vec<Text> = tries.filter(|t| t.at.iter().all(|v| v.is_finite())).collect();
        match self.taken.first_free(tries) {
            Some(text) => {
                sheet.path(text.corners().to_vec(), true, Some(255), None);
                sheet.text(text.at, Anchor::Start, text.style, &text.text);
            }
            None => self.unplaced.push(words.to_owned()),
        }
    }
}

/// A row of a key: what a sign means.
pub struct Sign<'a> {
    /// Its words.
    pub words: &'a str,
    /// Draws it in 11 mm from this point, at half height.
    pub draw: &'a dyn Fn(&mut Sheet, Pt),
}

/// A key of signs on one line.
pub fn key(sheet: &mut Sheet, [mut x, y]: Pt, right: f64, signs: &[Sign<'_>]) {
    let style = Style::regular(SMALLEST_PT);
    for sign in signs {
        let width = style.width_mm(sign.words);
        if x + 13.0 + width > right {
            break;
        }
        (sign.draw)(sheet, [x, y - 1.0]);
        sheet.text([x + 12.5, y], Anchor::Start, style, sign.words);
        x += width + 17.0;
    }
}

/// Parts of the way between two points on the sheet, the middle first.
pub fn along(a: Pt, b: Pt) -> [Pt; 5] {
    [0.5, 0.3, 0.7, 0.12, 0.88].map(|k| [a[0] + (b[0] - a[0]) * k, a[1] + (b[1] - a[1]) * k])
}
