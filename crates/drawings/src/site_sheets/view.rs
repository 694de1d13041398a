//! Pictures of the frame step by step, like a film: always from the same place and to the same size.

use std::collections::{BTreeMap, BTreeSet};

use roof::solution::{Member, Solution};
use site::sequence::{PuttingUp, Step};

use crate::layout::{Room, Taken};
use crate::sheet::{Anchor, Dash, Pen, Pt, Role, Sheet, Text};
use crate::text::{SMALLEST_PT, Style};
use crate::vec3::{V3, between};
use crate::view3d::{Fit, Look, Painted, outline};

/// Greys of timbers of this step, from turned away to full light.
const NEW: [u8; 4] = [40, 70, 100, 135];
/// Greys of timbers that stand already: nearly paper.
const OLD: [u8; 2] = [238, 252];
/// Outline of timbers that stand already.
const OLD_LINE: Pen = Pen::grey(0.09, 165);
/// Outline of timbers of this step where they are seen.
const NEW_LINE: Pen = Pen::black(0.16);
/// The same where others stand before them.
const THROUGH: Pen = Pen::black(0.1);
/// A step with more timbers than this is not labelled timber by timber.
const MOST_LABELS: usize = 14;
/// Names in the picture.
const NAME: Style = Style::bold(SMALLEST_PT);
/// Clear round the frame for names that stand beyond it, mm.
const CLEAR: f64 = 4.0;

/// A prop, a brace, or a diagonal that stays.
struct Line {
    from: V3,
    to: V3,
}

/// All that the pictures are taken from.
pub struct Film<'a> {
    look: Look,
    faces: Vec<Painted>,
    members: BTreeMap<&'a str, &'a Member>,
    lines: BTreeMap<&'a str, Line>,
    steps: &'a [Step],
}

/// How a prop or a brace is shown.
#[derive(Clone, Copy, PartialEq)]
enum Shown {
    Standing,
    Set,
    Out,
}

impl<'a> Film<'a> {
    /// Of a roof and its order of work.
    pub fn new(solution: &'a Solution, putting_up: &'a PuttingUp) -> Option<Self> {
        let look = Look::south_west()?;
        let mut lines = BTreeMap::new();
        for p in &putting_up.props {
            lines.insert(p.name.as_str(), Line { from: p.foot, to: p.head });
        }
        for b in &putting_up.braces {
            lines.insert(b.name.as_str(), Line { from: b.to, to: b.from });
        }
        for d in &putting_up.permanent {
            lines.insert(d.name.as_str(), Line { from: d.from, to: d.to });
        }
        lines.retain(|_, line| line.from.iter().chain(&line.to).all(|v| v.is_finite()));
        Some(Self {
            faces: look.paint(solution),
            look,
            members: solution.members.iter().map(|m| (m.mark.as_str(), m)).collect(),
            lines,
            steps: &putting_up.steps,
        })
    }

    /// Draws the frame as it stands with the step of this index done.
    pub fn draw(&self, sheet: &mut Sheet, index: usize, room: Room) {
        let Some(step) = self.steps.get(index) else { return };
        let inner = Room { x: room.x + CLEAR, y: room.y + CLEAR, w: room.w - 2.0 * CLEAR, h: room.h - 2.0 * CLEAR };
        let ends = self.lines.values().flat_map(|l| [self.look.flat(l.from), self.look.flat(l.to)]);
        let corners = self.faces.iter().flat_map(|f| f.points.iter().copied());
        let Some(fit) = Fit::of(corners.chain(ends), inner) else { return };
        let new: BTreeSet<&str> = step.members.iter().map(String::as_str).collect();
        let before = self.steps.get(..index).unwrap_or_default();
        let old: BTreeSet<&str> = before.iter().flat_map(|s| &s.members).map(String::as_str).collect();
        let words = format!("The frame at step {}: {} timbers stand, {} are fixed.", step.number, old.len(), new.len());
        sheet.part(Role::Figure(words), |sheet| {
            self.timbers(sheet, &fit, &old, &new);
            let mut taken = Taken::new(room);
            for (name, shown) in self.temporary(step, before) {
                self.temporary_line(sheet, &fit, name, shown);
            }
            for (name, shown) in self.temporary(step, before) {
                if shown != Shown::Standing {
                    self.name_line(sheet, &fit, name, shown, &mut taken);
                }
            }
            if new.len() <= MOST_LABELS {
                for mark in &step.members {
                    self.name_member(sheet, &fit, mark, &mut taken);
                }
            }
        });
    }

    fn timbers(&self, sheet: &mut Sheet, fit: &Fit, old: &BTreeSet<&str>, new: &BTreeSet<&str>) {
        let placed = |f: &Painted| f.points.iter().map(|&p| fit.place(p)).collect::<Vec<Pt>>();
        for face in &self.faces {
            if new.contains(face.mark.as_str()) {
                outline(sheet, placed(face), &face.drawn, shade(&NEW, face.light), NEW_LINE);
            } else if old.contains(face.mark.as_str()) {
                outline(sheet, placed(face), &face.drawn, shade(&OLD, face.light), OLD_LINE);
            }
        }
        // Their edges once more over everything, so that no timber of the step is lost behind others.
        for face in self.faces.iter().filter(|f| new.contains(f.mark.as_str())) {
            let points = placed(face);
            for ((&a, &b), drawn) in points.iter().zip(points.iter().cycle().skip(1)).zip(&face.drawn) {
                if *drawn {
                    sheet.line(a, b, THROUGH);
                }
            }
        }
    }

    /// Props, braces and diagonals in the picture of a step: what stands, what is set, what is taken out.
    fn temporary(&self, step: &'a Step, before: &'a [Step]) -> Vec<(&'a str, Shown)> {
        let set = |s: &'a Step| s.props_set.iter().chain(&s.braces_set).chain(&s.permanent_set).map(String::as_str);
        let out = |s: &'a Step| s.props_out.iter().chain(&s.braces_out).map(String::as_str);
        let gone: BTreeSet<&str> = before.iter().flat_map(out).collect();
        let leaving: BTreeSet<&str> = out(step).collect();
        let mut all: Vec<(&str, Shown)> = Vec::new();
        for name in before.iter().flat_map(set).filter(|n| !gone.contains(n) && !leaving.contains(n)) {
            all.push((name, Shown::Standing));
        }
        all.extend(leaving.iter().map(|n| (*n, Shown::Out)));
        all.extend(set(step).filter(|n| !leaving.contains(n)).map(|n| (n, Shown::Set)));
        all
    }

    fn temporary_line(&self, sheet: &mut Sheet, fit: &Fit, name: &str, shown: Shown) {
        let Some(line) = self.lines.get(name) else { return };
        let (a, b) = (fit.place(self.look.flat(line.from)), fit.place(self.look.flat(line.to)));
        match shown {
            Shown::Standing => sheet.line(a, b, Pen::grey(0.35, 90)),
            Shown::Out => sheet.line(a, b, Pen::dashed(0.6, Dash::Dashed)),
            Shown::Set => {
                // A white edge keeps it apart from timbers behind it.
                sheet.line(a, b, Pen::grey(1.5, 255));
                sheet.line(a, b, Pen::black(0.8));
            }
        }
    }

    fn name_line(&self, sheet: &mut Sheet, fit: &Fit, name: &str, shown: Shown, taken: &mut Taken) {
        let Some(line) = self.lines.get(name) else { return };
        let words = if shown == Shown::Out { format!("{name} out") } else { name.to_owned() };
        let at = |part: f64| fit.place(self.look.flat(between(line.from, line.to, part)));
        let places = [0.3, 0.5, 0.15, 0.7, 0.0, 0.85].map(at);
        label(sheet, taken, &words, &places);
    }

    fn name_member(&self, sheet: &mut Sheet, fit: &Fit, mark: &str, taken: &mut Taken) {
        let Some(member) = self.members.get(mark) else { return };
        let at = |part: f64| fit.place(self.look.flat(between(member.axis.from, member.axis.to, part)));
        let places = [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95].map(at);
        label(sheet, taken, mark, &places);
    }
}

/// A name on clear ground beside the first of these places where there is room.
fn label(sheet: &mut Sheet, taken: &mut Taken, words: &str, places: &[Pt]) {
    let words = NAME.shorten(&crate::text::one_line(words), 24.0);
    let width = NAME.width_mm(&words);
    let beside = |[x, y]: Pt| {
        let text = |at: Pt| Text { at, along: [1.0, 0.0], style: NAME, text: words.clone(), width, grey: 0 };
        [text([x + 1.0, y + NAME.cap_mm() / 2.0]), text([x - width - 1.0, y + NAME.cap_mm() / 2.0])]
    };
    let tries = places.iter().filter(|p| p.iter().all(|v| v.is_finite())).flat_map(|p| beside(*p));
    let Some(text) = taken.first_free(tries) else { return };
    sheet.path(text.corners().to_vec(), true, Some(255), None);
    sheet.text(text.at, Anchor::Start, NAME, &text.text);
}

/// The grey of a face by the cosine between it and the light.
fn shade(greys: &[u8], cosine: f64) -> u8 {
    let step = ((cosine + 1.0) / 2.0 * greys.len() as f64).max(0.0) as usize;
    greys.get(step).or(greys.last()).copied().unwrap_or(255)
}
