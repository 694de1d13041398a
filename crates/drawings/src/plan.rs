//! The plan of the roof to scale: plates with their letters and lengths, lines
//! of the surface told apart by weight and dash, centre lines of timbers.

use roof::solution::{LineKind, MemberKind, Solution, WallOut};

use crate::layout::{Room, Taken, scale};
use crate::sheet::{Anchor, Dash, Pen, Pt, Role, Sheet, Text};
use crate::text::{SMALLEST_PT, Style};
use crate::units::Lengths;

/// Room around the plates for letters and dimensions, mm.
const SURROUND: f64 = 15.5;
/// Distance of a wall's dimension line outside its plate line, mm.
const DIMENSION_OUT: f64 = 11.0;
const LETTER: Style = Style::bold(12.0);
const DIMENSION: Style = Style::bold(10.0);

/// Pens of the lines of the surface, and their names for the key.
pub const KEY: [(LineKind, &str, Pen); 6] = [
    (LineKind::Ridge, "ridge", Pen::black(0.9)),
    (LineKind::Hip, "hip", Pen::dashed(0.6, Dash::DashDot)),
    (LineKind::Valley, "valley", Pen::dashed(0.6, Dash::Dashed)),
    (LineKind::PitchBreak, "pitch break", Pen::dashed(0.5, Dash::Dotted)),
    (LineKind::Eaves, "plate line", Pen::black(0.45)),
    (LineKind::Verge, "verge", Pen::black(0.45)),
];

struct View {
    scale: f64,
    /// World point that lies at the middle of the room.
    middle: Pt,
    /// Middle of the room.
    at: Pt,
}

impl View {
    fn place(&self, [x, y]: Pt) -> Pt {
        [self.at[0] + (x - self.middle[0]) / self.scale, self.at[1] - (y - self.middle[1]) / self.scale]
    }
}

/// Draws the plan into a room; returns its scale (1 : n), or `None` when there
/// is no plan to draw.
pub fn draw(sheet: &mut Sheet, solution: &Solution, room: Room) -> Option<f64> {
    let view = view(solution, room)?;
    let walls = solution.plan.walls.len();
    let words = format!("Plan of the roof, {walls} walls, to a scale of 1 to {}.", view.scale);
    sheet.part(Role::Figure(words), |sheet| {
        timbers(sheet, solution, &view);
        for line in &solution.lines {
            let (from, to) = (view.place([line.from[0], line.from[1]]), view.place([line.to[0], line.to[1]]));
            sheet.line(from, to, pen_of(line.kind));
        }
        let mut taken = Taken::default();
        corner_marks(sheet, solution, &view, &mut taken);
        let lengths = Lengths::from_show(&solution.show);
        for wall in &solution.plan.walls {
            wall_marks(sheet, wall, &view, lengths, &mut taken);
        }
    });
    Some(view.scale)
}

/// Line kinds that the solution has, for a key beside the plan.
pub fn kinds(solution: &Solution) -> impl Iterator<Item = (&'static str, Pen)> + '_ {
    KEY.iter().filter(|(kind, ..)| solution.lines.iter().any(|l| l.kind == *kind)).map(|&(_, name, pen)| (name, pen))
}

fn pen_of(kind: LineKind) -> Pen {
    KEY.iter().find(|(k, ..)| *k == kind).map_or(Pen::black(0.3), |&(.., pen)| pen)
}

fn view(solution: &Solution, room: Room) -> Option<View> {
    let points = || solution.plan.corners.iter().chain(solution.plan.holes.iter().flatten());
    let span = |axis: usize| {
        points().map(|p| p[axis]).fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)))
    };
    let ((left, right), (low, high)) = (span(0), span(1));
    let (width, height) = (right - left, high - low);
    if !(width.is_finite() && height.is_finite()) || width.max(height) <= 0.0 {
        return None;
    }
    let (free_w, free_h) = (room.w - 2.0 * SURROUND, room.h - 2.0 * SURROUND);
    Some(View {
        scale: scale(|n| width / n <= free_w && height / n <= free_h),
        middle: [(left + right) / 2.0, (low + high) / 2.0],
        at: [room.x + room.w / 2.0, room.y + room.h / 2.0],
    })
}

fn timbers(sheet: &mut Sheet, solution: &Solution, view: &View) {
    let pen = Pen::grey(0.15, 110);
    for member in &solution.members {
        // These lie on lines drawn heavier.
        if matches!(member.kind, MemberKind::RidgeBoard | MemberKind::HipRafter | MemberKind::ValleyRafter) {
            continue;
        }
        let axis = member.axis;
        sheet.line(view.place([axis.from[0], axis.from[1]]), view.place([axis.to[0], axis.to[1]]), pen);
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

fn wall_marks(sheet: &mut Sheet, wall: &WallOut, view: &View, lengths: Lengths, taken: &mut Taken) {
    let (from, to) = (view.place(wall.from), view.place(wall.to));
    let along = direction(from, to);
    let out = [-along[1], along[0]];
    // On paper y is down: outside, right of the wall in the world, is here.
    let outside = |p: Pt, mm: f64| [p[0] + out[0] * mm, p[1] + out[1] * mm];
    let run = ((to[0] - from[0]).powi(2) + (to[1] - from[1]).powi(2)).sqrt();
    if !run.is_finite() {
        return;
    }
    let middle = [(from[0] + to[0]) / 2.0, (from[1] + to[1]) / 2.0];
    sheet.line(from, to, Pen::black(0.45));

    let letter_width = LETTER.width_mm(&wall.id);
    let radius = (LETTER.cap_mm().max(letter_width) / 2.0 + 1.0).max(3.0);
    let letter = [radius + 0.8, radius + 5.0, radius + 9.0].into_iter().map(|reach| {
        let c = outside(middle, reach);
        let at = [c[0] - letter_width / 2.0, c[1] + LETTER.cap_mm() / 2.0];
        Text { at, along: [1.0, 0.0], style: LETTER, text: wall.id.clone(), width: letter_width, grey: 0 }
    });
    if let Some(text) = taken.first_free(letter) {
        let c = [text.at[0] + letter_width / 2.0, text.at[1] - LETTER.cap_mm() / 2.0];
        sheet.disc(c, radius, Some(255), Some(Pen::black(0.35)));
        sheet.text(text.at, Anchor::Start, LETTER, &wall.id);
    }

    // Text reads from below or from the right.
    let reading = if along[0] < -1e-9 || (along[0].abs() <= 1e-9 && along[1] > 0.0) { along.map(|v| -v) } else { along };
    let label = lengths.write(wall.length_mm);
    let width = DIMENSION.width_mm(&label);
    let (line_at, ends) = (DIMENSION_OUT, [outside(from, DIMENSION_OUT), outside(to, DIMENSION_OUT)]);
    let whole = run >= width + 4.0;
    let tries = [(0.0, DIMENSION), (3.5, DIMENSION.sized(9.0)), (-4.0, DIMENSION.sized(SMALLEST_PT))];
    let text = taken.first_free(tries.map(|(more, style)| {
        let c = outside(middle, line_at + more);
        let width = style.width_mm(&label);
        // The base line, so that the middle of the figures lies on the line.
        let down = [-reading[1] * style.cap_mm() / 2.0, reading[0] * style.cap_mm() / 2.0];
        let at = [c[0] - reading[0] * width / 2.0 + down[0], c[1] - reading[1] * width / 2.0 + down[1]];
        Text { at, along: reading, style, text: label.clone(), width, grey: 0 }
    }));
    let Some(text) = text else { return };
    if whole {
        let pen = Pen::black(0.18);
        let gap = text.width / 2.0 + 1.2;
        let c = outside(middle, line_at);
        let near = |sign: f64| [c[0] + along[0] * gap * sign, c[1] + along[1] * gap * sign];
        sheet.line(ends[0], near(-1.0), pen);
        sheet.line(near(1.0), ends[1], pen);
        for (end, base) in [(ends[0], from), (ends[1], to)] {
            sheet.line(outside(base, 2.0), outside(end, 1.2), pen);
            let slash = [along[0] * 0.9 + out[0] * 0.9, along[1] * 0.9 + out[1] * 0.9];
            sheet.line(
                [end[0] - slash[0], end[1] - slash[1]],
                [end[0] + slash[0], end[1] + slash[1]],
                Pen::black(0.35),
            );
        }
    }
    sheet.text_along(text.at, text.along, Anchor::Start, text.style, &text.text);
}

/// Unit direction from `a` to `b`; rightwards where they are one point.
fn direction(a: Pt, b: Pt) -> Pt {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let length = (dx * dx + dy * dy).sqrt();
    if length > f64::MIN_POSITIVE && length.is_finite() { [dx / length, dy / length] } else { [1.0, 0.0] }
}
