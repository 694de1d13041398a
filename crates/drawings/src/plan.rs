//! The plan of the roof to scale: plates with their letters and lengths, lines
//! of the surface told apart by weight and dash, centre lines of timbers.

use roof::solution::{LineKind, MemberKind, Solution, WallOut};

use crate::layout::{Room, Taken, scale};
use crate::sheet::{Anchor, Dash, Pen, Pt, Role, Sheet, Text};
use crate::text::{SMALLEST_PT, Style};
use job::written::Lengths;

/// Room around the plates for letters and dimensions, mm.
const SURROUND: f64 = 15.5;
/// Distance of a wall's dimension line outside its plate line, mm.
const DIMENSION_OUT: f64 = 11.0;
const LETTER: Style = Style::bold(12.0);
/// Widest letter of a wall, mm; wider ones are shortened.
const LONGEST_LETTER: f64 = 9.0;
const DIMENSION: Style = Style::bold(10.0);

/// Pens of the lines of the surface, and their names for the key.
pub const KEY: [(LineKind, &str, Pen); 6] = [
    (LineKind::Ridge, "ridge", Pen::black(0.9)),
    (LineKind::Hip, "hip", Pen::dashed(0.6, Dash::Chain)),
    (LineKind::Valley, "valley", Pen::dashed(0.6, Dash::Dashed)),
    (LineKind::PitchBreak, "pitch break", Pen::dashed(0.5, Dash::Dotted)),
    (LineKind::Eaves, "plate line", Pen::black(0.45)),
    (LineKind::Verge, "verge", Pen::black(0.45)),
];

/// How a plan lies on paper.
pub struct View {
    /// 1 : n.
    pub scale: f64,
    /// World point that lies at the middle of the room.
    middle: Pt,
    /// Middle of the room.
    at: Pt,
}

impl View {
    /// These points, mm, to a scale in the middle of the room with this much free round them; `None` when there is
    /// nothing to see.
    pub fn of(points: impl Iterator<Item = Pt> + Clone, room: Room, free: f64) -> Option<Self> {
        let span = |axis: usize| {
            let each = points.clone().map(|p| p[axis]);
            each.fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)))
        };
        let ((left, right), (low, high)) = (span(0), span(1));
        let (width, height) = (right - left, high - low);
        if !(width.is_finite() && height.is_finite()) || width.max(height) <= 0.0 {
            return None;
        }
        let (free_w, free_h) = (room.w - 2.0 * free, room.h - 2.0 * free);
        Some(Self {
            scale: scale(|n| width / n <= free_w && height / n <= free_h),
            middle: [(left + right) / 2.0, (low + high) / 2.0],
            at: [room.x + room.w / 2.0, room.y + room.h / 2.0],
        })
    }

    /// Where a point comes on the sheet.
    pub fn place(&self, [x, y]: Pt) -> Pt {
        [self.at[0] + (x - self.middle[0]) / self.scale, self.at[1] - (y - self.middle[1]) / self.scale]
    }
}

/// Which timbers a plan shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// The rafters and what trims them, seen from above.
    Rafters,
    /// What stands inside under the rafters.
    Inside,
}

/// Pens of the timbers inside, and their names for the key.
const INSIDE: [(MemberKind, &str, Pen); 8] = [
    (MemberKind::Purlin, "purlin", Pen::black(0.8)),
    (MemberKind::Strut, "strut", Pen::black(1.4)),
    (MemberKind::Collar, "collar", Pen::dashed(0.5, Dash::Chain)),
    (MemberKind::CeilingJoist, "ceiling joist", Pen::grey(0.25, 90)),
    (MemberKind::Binder, "binder", Pen::dashed(0.6, Dash::Dashed)),
    (MemberKind::SolePlate, "sole plate", Pen::dashed(0.5, Dash::Dotted)),
    (MemberKind::AngleTie, "angle tie", Pen::black(0.5)),
    (MemberKind::DragonTie, "dragon tie", Pen::dashed(0.5, Dash::Chain)),
];

/// Timbers that the plan of the rafters shows by their centre lines.
const RAFTERS: [MemberKind; 8] = [
    MemberKind::CommonRafter,
    MemberKind::CrownRafter,
    MemberKind::JackRafter,
    MemberKind::ValleyJack,
    MemberKind::CrippleRafter,
    MemberKind::TrimmingRafter,
    MemberKind::Trimmer,
    MemberKind::Purlin,
];

/// Whether the job has anything for the plan of the inside.
pub fn has_inside(solution: &Solution) -> bool {
    solution.members.iter().any(|m| INSIDE.iter().any(|(kind, ..)| *kind == m.kind && m.kind != MemberKind::Purlin))
}

/// Timbers inside that the solution has, for a key beside their plan.
pub fn inside_kinds(solution: &Solution) -> impl Iterator<Item = (&'static str, Pen)> + '_ {
    let has = |kind: MemberKind| solution.members.iter().any(|m| m.kind == kind);
    INSIDE.iter().filter(move |(kind, ..)| has(*kind)).map(|&(_, name, pen)| (name, pen))
}

/// A plan that was drawn.
pub struct Drawn {
    /// Its scale, 1 : n.
    pub scale: f64,
    /// Letter and length of walls too crowded to have it beside them.
    pub unplaced: Vec<String>,
}

/// Draws the plan into a room, or nothing when there is no plan to draw.
pub fn draw(sheet: &mut Sheet, solution: &Solution, layer: Layer, room: Room) -> Option<Drawn> {
    let view = view(solution, room)?;
    let walls = solution.plan.walls.len();
    let mut unplaced = Vec::new();
    let words = format!("Plan of the roof, {walls} walls, to a scale of 1 to {}.", view.scale);
    sheet.part(Role::Figure(words), |sheet| {
        timbers(sheet, solution, layer, &view);
        for line in &solution.lines {
            let (from, to) = (view.place([line.from[0], line.from[1]]), view.place([line.to[0], line.to[1]]));
            let pen = if layer == Layer::Rafters { pen_of(line.kind) } else { Pen::grey(0.2, 140) };
            sheet.line(from, to, pen);
        }
        holes(sheet, solution, &view);
        let mut taken = Taken::new(room);
        corner_marks(sheet, solution, &view, &mut taken);
        let lengths = Lengths::from_show(&solution.show);
        let mut walls: Vec<Side<'_>> = solution.plan.walls.iter().filter_map(|w| Side::new(w, &view)).collect();
        walls.iter().for_each(|wall| wall.letter(sheet, &mut taken));
        // Long walls first: short ones can do with less room.
        walls.sort_by(|a, b| b.run.total_cmp(&a.run));
        for wall in walls {
            let label = lengths.write(wall.wall.length_mm);
            if !wall.dimension(sheet, &label, &mut taken) {
                unplaced.push(format!("{} {label}", wall.wall.id));
            }
        }
    });
    Some(Drawn { scale: view.scale, unplaced })
}

/// Line kinds that the solution has, for a key beside the plan.
pub fn kinds(solution: &Solution) -> impl Iterator<Item = (&'static str, Pen)> + '_ {
    KEY.iter().filter(|(kind, ..)| solution.lines.iter().any(|l| l.kind == *kind)).map(|&(_, name, pen)| (name, pen))
}

fn pen_of(kind: LineKind) -> Pen {
    KEY.iter().find(|(k, ..)| *k == kind).map_or(Pen::black(0.3), |&(.., pen)| pen)
}

fn view(solution: &Solution, room: Room) -> Option<View> {
    let points = solution.plan.corners.iter().chain(solution.plan.holes.iter().flatten());
    View::of(points.copied(), room, SURROUND)
}

fn timbers(sheet: &mut Sheet, solution: &Solution, layer: Layer, view: &View) {
    for member in &solution.members {
        let pen = match layer {
            Layer::Rafters if RAFTERS.contains(&member.kind) => Some(Pen::grey(0.15, 110)),
            Layer::Rafters => None,
            Layer::Inside => INSIDE.iter().find(|(kind, ..)| *kind == member.kind).map(|&(.., pen)| pen),
        };
        let Some(pen) = pen else { continue };
        let axis = member.axis;
        sheet.line(view.place([axis.from[0], axis.from[1]]), view.place([axis.to[0], axis.to[1]]), pen);
    }
}

/// Openings: their clear outline with both diagonals, as holes are drawn.
fn holes(sheet: &mut Sheet, solution: &Solution, view: &View) {
    let pen = Pen::black(0.4);
    for opening in &solution.openings {
        let corners = opening.outline.map(|p| view.place([p[0], p[1]]));
        for k in 0..4 {
            sheet.line(corners[k], corners[(k + 1) % 4], pen);
        }
        sheet.line(corners[0], corners[2], Pen::black(0.2));
        sheet.line(corners[1], corners[3], Pen::black(0.2));
    }
}

/// Corners are numbered as in the job: wall A runs from corner 0 to corner 1.
fn corner_marks(sheet: &mut Sheet, solution: &Solution, view: &View, taken: &mut Taken) {
    let style = Style::regular(SMALLEST_PT);
    let mut number = 0;
    for ring in std::iter::once(&solution.plan.corners).chain(&solution.plan.holes) {
        for (i, &corner) in ring.iter().enumerate() {
            let at = view.place(corner);
            let before = ring[(i + ring.len() - 1) % ring.len()];
            let after = ring[(i + 1) % ring.len()];
            let (a, b) = (direction(before, corner), direction(corner, after));
            // Outside lies to the right of both walls; on paper y is down.
            let out = direction([0.0, 0.0], [a[1] + b[1], -(a[0] + b[0])]);
            sheet.disc(at, 0.7, Some(0), None);
            let label = number.to_string();
            let width = style.width_mm(&label);
            let tries = [4.2, 6.2, 3.2].map(|reach| {
                let at = [at[0] + out[0] * reach - width / 2.0, at[1] - out[1] * reach + style.cap_mm() / 2.0];
                Text { at, along: [1.0, 0.0], style, text: label.clone(), width, grey: 0 }
            });
            if let Some(text) = taken.first_free(tries) {
                sheet.text(text.at, Anchor::Start, style, &text.text);
            }
            number += 1;
        }
    }
}

/// A wall as it lies on paper.
pub struct Side<'a> {
    wall: &'a WallOut,
    from: Pt,
    to: Pt,
    along: Pt,
    run: f64,
}

impl<'a> Side<'a> {
    /// `None` for a wall that is nowhere.
    pub fn new(wall: &'a WallOut, view: &View) -> Option<Self> {
        let (from, to) = (view.place(wall.from), view.place(wall.to));
        let run = ((to[0] - from[0]).powi(2) + (to[1] - from[1]).powi(2)).sqrt();
        run.is_finite().then(|| Self { wall, from, to, along: direction(from, to), run })
    }

    /// A point moved outwards. On paper y is down: outside, right of the wall
    /// in the world, is here.
    pub fn outside(&self, p: Pt, mm: f64) -> Pt {
        [p[0] - self.along[1] * mm, p[1] + self.along[0] * mm]
    }

    fn middle(&self) -> Pt {
        [(self.from[0] + self.to[0]) / 2.0, (self.from[1] + self.to[1]) / 2.0]
    }

    /// The plate line, and the wall's letter in a ring outside it or, where
    /// that is taken, further out or inside.
    pub fn letter(&self, sheet: &mut Sheet, taken: &mut Taken) {
        sheet.line(self.from, self.to, Pen::black(0.45));
        let (style, letter) = LETTER.fit(&crate::text::one_line(&self.wall.id), LONGEST_LETTER);
        let width = style.width_mm(&letter);
        let radius = (LETTER.cap_mm().max(width) / 2.0 + 1.0).max(3.0);
        for reach in [radius + 0.8, -radius - 0.8, radius + 5.0, radius + 9.0, -radius - 6.0] {
            let c = self.outside(self.middle(), reach);
            let ring = [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]]
                .map(|k| [c[0] + k[0] * radius, c[1] + k[1] * radius]);
            if taken.is_free(&ring) {
                taken.take(ring);
                sheet.disc(c, radius, Some(255), Some(Pen::black(0.35)));
                sheet.text([c[0], c[1] + style.cap_mm() / 2.0], Anchor::Middle, style, &letter);
                return;
            }
        }
    }

    /// The wall's length on a dimension line, or beside the wall without one;
    /// false if there is no room for it.
    fn dimension(&self, sheet: &mut Sheet, label: &str, taken: &mut Taken) -> bool {
        // Text reads from below or from the right.
        const UPRIGHT: f64 = 1e-9;
        let [ax, ay] = self.along;
        let reading = if ax < -UPRIGHT || (ax.abs() <= UPRIGHT && ay > 0.0) { [-ax, -ay] } else { self.along };
        let text = |out: f64, style: Style| {
            let c = self.outside(self.middle(), out);
            let width = style.width_mm(label);
            // The base line, so that the middle of the figures lies on the line.
            let half = style.cap_mm() / 2.0;
            let at = [
                c[0] - reading[0] * width / 2.0 - reading[1] * half,
                c[1] - reading[1] * width / 2.0 + reading[0] * half,
            ];
            Text { at, along: reading, style, text: label.to_owned(), width, grey: 0 }
        };
        for out in [DIMENSION_OUT, DIMENSION_OUT - 3.0, DIMENSION_OUT + 3.0] {
            let words = text(out, DIMENSION);
            let strip = |side: f64| [self.outside(self.from, out + side), self.outside(self.to, out + side)];
            let ([a, b], [d, c]) = (strip(-0.8), strip(0.8));
            let line = [a, b, c, d];
            if self.run >= words.width + 4.0 && taken.is_free(&words.corners()) && taken.is_free(&line) {
                self.dimension_line(sheet, out, words.width / 2.0 + 1.2);
                sheet.text_along(words.at, words.along, Anchor::Start, words.style, label);
                taken.take(words.corners());
                taken.take(line);
                return true;
            }
        }
        let small = DIMENSION.sized(SMALLEST_PT);
        let tries = [(DIMENSION_OUT, DIMENSION), (3.0, small), (DIMENSION_OUT - 2.0, small), (-3.0, small)];
        let Some(words) = taken.first_free(tries.map(|(out, style)| text(out, style))) else { return false };
        // Over timbers the figures need a clear ground.
        sheet.path(words.corners().to_vec(), true, Some(255), None);
        sheet.text_along(words.at, words.along, Anchor::Start, words.style, label);
        true
    }

    /// A line beside the wall with a gap in its middle, ends marked.
    fn dimension_line(&self, sheet: &mut Sheet, out: f64, gap: f64) {
        let pen = Pen::black(0.18);
        let along = self.along;
        let c = self.outside(self.middle(), out);
        let ends = [self.outside(self.from, out), self.outside(self.to, out)];
        let near = |sign: f64| [c[0] + along[0] * gap * sign, c[1] + along[1] * gap * sign];
        sheet.line(ends[0], near(-1.0), pen);
        sheet.line(near(1.0), ends[1], pen);
        for (end, base) in [(ends[0], self.from), (ends[1], self.to)] {
            sheet.line(self.outside(base, 2.0), self.outside(end, 1.2), pen);
            let slash = [(along[0] - along[1]) * 0.9, (along[1] + along[0]) * 0.9];
            sheet.line(
                [end[0] - slash[0], end[1] - slash[1]],
                [end[0] + slash[0], end[1] + slash[1]],
                Pen::black(0.35),
            );
        }
    }
}

/// Unit direction from `a` to `b`; rightwards where they are one point.
fn direction(a: Pt, b: Pt) -> Pt {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let length = (dx * dx + dy * dy).sqrt();
    if length > f64::MIN_POSITIVE && length.is_finite() { [dx / length, dy / length] } else { [1.0, 0.0] }
}
