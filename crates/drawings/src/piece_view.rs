//! A timber lying on the bench, from above and from its right side, at a
//! legible scale: what is too long is broken where nothing happens.

use roof::solution::{BoltWay, CutPlace, Member, TapeMark};

use crate::facets::{Facet, facets, half};
use crate::layout::{Room, scale, scale_words, spread};
use crate::painting::far_to_near;
use crate::sheet::{Anchor, Dash, Pen, Pt, Role, Sheet};
use crate::text::{SMALLEST_PT, Style};
use crate::vec3::{V3, dot, sub};
use crate::view3d::outline;
use job::written::Lengths;

const LABEL: Style = Style::regular(SMALLEST_PT);
const FIGURE: Style = Style::bold(11.0);
const DIMENSION: Style = Style::bold(11.0);
/// Words left and right of the timber, mm.
const ENDS: f64 = 17.0;
/// Height of the labels of the tape marks and their leaders, mm.
const TAPE: f64 = 11.5;
/// Between the two views, mm.
const BETWEEN: f64 = 3.0;
/// Dimensions under the side view, mm.
const UNDER: f64 = 13.5;
/// Kept beside everything that is cut, when a timber is broken, mm on paper.
const BESIDE: f64 = 9.0;
/// Between the two parts of a broken timber, mm.
const BREAK_GAP: f64 = 5.0;
/// Faces that the saw makes are shaded with this.
const CUT_GREY: u8 = 214;
/// The least slope of a timber whose pitch line is drawn, degrees.
const SLOPING: f64 = 0.5;

/// The length of a timber as it is laid on paper.
#[derive(Debug)]
struct Along {
    scale: f64,
    /// Parts shown: from, to along the timber (mm), and the paper's x at `from`.
    parts: Vec<[f64; 3]>,
}

impl Along {
    /// Fits a timber that reaches over `low..high` and has cuts at `places`
    /// (sorted) into a width; `high_enough` says whether a scale suits the height.
    fn fit(places: &[f64], x: f64, width: f64, high_enough: impl Fn(f64) -> bool) -> Option<Self> {
        let (&low, &high) = (places.first()?, places.last()?);
        let gap = places.windows(2).max_by(|a, b| (a[1] - a[0]).total_cmp(&(b[1] - b[0])));
        let (left, right) = gap.map_or((low, high), |g| (g[0], g[1]));
        let whole = |n: f64| (high - low) / n <= width;
        let broken = |n: f64| ((left - low) + (high - right)) / n + 2.0 * BESIDE + BREAK_GAP <= width;
        let n = scale(|n| high_enough(n) && (whole(n) || broken(n)));
        let parts = if whole(n) {
            vec![[low, high, x + (width - (high - low) / n) / 2.0]]
        } else {
            // Both ends get what they need, and share what is left.
            let spare = (width - BREAK_GAP - ((left - low) + (high - right)) / n) / 2.0 * n;
            let (a, b) = (left + spare, right - spare);
            vec![[low, a, x], [b, high, x + width - (high - b) / n]]
        };
        Some(Self { scale: n, parts })
    }

    /// Where a place along the timber is on paper; places in the break, at it.
    fn x(&self, mm: f64) -> f64 {
        let last = self.parts.len() - 1;
        let part = self.parts.iter().position(|p| mm <= p[1]).unwrap_or(last);
        let [from, _, x] = self.parts[part];
        x + if part == 0 { mm - from } else { (mm - from).max(0.0) } / self.scale
    }

    fn is_broken(&self) -> bool {
        self.parts.len() > 1
    }
}

/// A view: how a point of the timber lands on paper.
struct View<'a> {
    along: &'a Along,
    /// Bench axis that runs up the paper, and its sign.
    axis: usize,
    sign: f64,
    /// Highest value of it, and the paper's y there.
    high: f64,
    y: f64,
}

impl View<'_> {
    fn y(&self, value: f64) -> f64 {
        self.y + (self.high - value * self.sign) / self.along.scale
    }

    fn faces(&self, sheet: &mut Sheet, faces: &[Facet], eye: V3, height: f64) {
        const EDGE_ON: f64 = 1e-6;
        let seen: Vec<Facet> = faces.iter().filter(|f| dot(f.normal, eye) > EDGE_ON).cloned().collect();
        let painted = far_to_near(seen, eye);
        for (index, &[from, to, x]) in self.along.parts.iter().enumerate() {
            for face in &painted {
                let mut shown = face.clone();
                if self.along.is_broken() {
                    let beyond = |limit: f64, sign: f64| move |p: &V3| (p[0] - limit) * sign;
                    let sides: Vec<f64> = shown.points.iter().map(beyond(from, 1.0)).collect();
                    shown = half(&shown, &sides, 1.0);
                    let sides: Vec<f64> = shown.points.iter().map(beyond(to, -1.0)).collect();
                    shown = half(&shown, &sides, 1.0);
                }
                let points: Vec<Pt> =
                    shown.points.iter().map(|p| [x + (p[0] - from) / self.along.scale, self.y(p[self.axis])]).collect();
                let sawn = !matches!(face.name.as_str(), "top" | "underside" | "left" | "right");
                outline(sheet, points, &shown.drawn, if sawn { CUT_GREY } else { 255 }, Pen::black(0.35));
            }
            if self.along.is_broken() {
                let edge = if index == 0 { x + (to - from) / self.along.scale } else { x };
                zigzag(sheet, edge, self.y - 1.5, self.y + height / self.along.scale + 1.5);
            }
        }
    }
}

fn zigzag(sheet: &mut Sheet, x: f64, top: f64, bottom: f64) {
    let m = (top + bottom) / 2.0;
    let points = vec![[x, top], [x, m - 1.5], [x - 1.2, m - 0.5], [x + 1.2, m + 0.5], [x, m + 1.5], [x, bottom]];
    sheet.path(points, false, None, Some(Pen::black(0.2)));
}

/// Draws the timber into a room.
pub fn draw(sheet: &mut Sheet, member: &Member, lengths: Lengths, room: Room) {
    // Along, up and across to the left are left-handed; facets need right-handed axes.
    let turned: Vec<V3> = member.bench.points.iter().map(|p| [p[0], p[1], -p[2]]).collect();
    let faces = facets(&member.solid, &turned);
    let points = || faces.iter().flat_map(|f| f.points.iter());
    let span = |axis: usize| {
        points().map(|p| p[axis]).fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)))
    };
    let ((up_low, up_high), (left, right)) = (span(1), span(2));
    let (depth, thickness) = (up_high - up_low, right - left);
    if !(depth.is_finite() && thickness.is_finite()) {
        sheet.text([room.x, room.y + room.h / 2.0], Anchor::Start, LABEL, "No solid to draw.");
        return;
    }
    let pitch_line = [member.axis.from, member.axis.to]
        .map(|p| sub(p, member.bench.origin))
        .map(|p| [dot(p, member.bench.along), dot(p, member.bench.up)]);
    let mut places: Vec<f64> = points().map(|p| p[0]).collect();
    places.extend(pitch_line.iter().map(|p| p[0]));
    places.extend(member.marks.iter().flat_map(|m| [m.left_mm, m.right_mm]));
    places.extend(member.splices.iter().flat_map(|s| &s.bolts).map(|b| b.along_mm));
    places.retain(|v| v.is_finite());
    places.sort_by(f64::total_cmp);
    let free = room.h - TAPE - BETWEEN - UNDER;
    let width = room.w - 2.0 * ENDS;
    let Some(along) = Along::fit(&places, room.x + ENDS, width, |n| (depth + thickness) / n <= free) else { return };

    // Centred in the height it leaves.
    let slack = (free - (depth + thickness) / along.scale).max(0.0) / 2.0;
    let top_y = room.y + TAPE + slack;
    let side_y = top_y + thickness / along.scale + BETWEEN;
    let top = View { along: &along, axis: 2, sign: -1.0, high: -left, y: top_y };
    let side = View { along: &along, axis: 1, sign: 1.0, high: up_high, y: side_y };
    let words = format!("{} {} on the bench, from above and from its right side.", member.kind.name(), member.mark);
    sheet.part(Role::Figure(words), |sheet| {
        tape_marks(sheet, member, lengths, &top, [top_y, side_y, right, left, room.y + slack.min(4.0)], room);
        top.faces(sheet, &faces, [0.0, 1.0, 0.0], thickness);
        side.faces(sheet, &faces, [0.0, 0.0, 1.0], depth);
        tape_lines(sheet, member, &top);
        face_lines(sheet, member, &side, [up_low, up_high]);
        bolt_holes(sheet, member, &top, &side);
        if is_sloping(member) {
            for &[from, to, _] in &along.parts {
                let (a, b) = (from.max(pitch_line[0][0]), to.min(pitch_line[1][0]));
                let y = side.y(pitch_line[0][1]);
                if b > a {
                    sheet.line([along.x(a), y], [along.x(b), y], Pen::dashed(0.18, Dash::Chain));
                }
            }
        }
        let y = side_y + depth / along.scale + 6.0;
        let line = side.y(pitch_line[0][1]);
        let [a, b] = pitch_line.map(|p| along.x(p[0]));
        if let Some([low, high]) = top_edge(&faces, member.cut_length_mm) {
            let words = format!("cut length {}", lengths.write(member.cut_length_mm));
            dimension(sheet, [along.x(low), along.x(high)], y + 5.6, [side_y, side_y], &words);
        }
        // Last, so that its figures stand clear of the other's lines.
        let words = format!("true length {}", lengths.write(member.true_length_mm));
        dimension(sheet, [a, b], y, [line, line], &words);
        captions(sheet, &along, room, [top_y, side_y], [thickness, depth]);
    });
}

/// Whether a timber rises: only then has it a pitch line to draw.
pub fn is_sloping(member: &Member) -> bool {
    member.pitch_deg.abs() > SLOPING
}

/// Where the top edge begins and ends, if that is its cut length.
fn top_edge(faces: &[Facet], cut_length: f64) -> Option<[f64; 2]> {
    /// The drawing and the figure are the same length if no further apart, mm.
    const SAME: f64 = 1.0;
    let is_top = |f: &&Facet| f.name.starts_with("top") || f.name.starts_with("backing");
    let tops = || faces.iter().filter(is_top).flat_map(|f| f.points.iter().map(|p| p[0]));
    let (low, high) = tops().fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)));
    (((high - low) - cut_length).abs() <= SAME).then_some([low, high])
}

fn captions(sheet: &mut Sheet, along: &Along, room: Room, [top_y, side_y]: [f64; 2], [thickness, depth]: [f64; 2]) {
    let middle = |y: f64, size: f64| y + size / along.scale / 2.0 + LABEL.cap_mm() / 2.0;
    // Beside the timber, which a short one has all to itself in the middle.
    let left = along.parts.first().map_or(room.x, |p| p[2]) - 2.5;
    let right = along.parts.last().map_or(room.x, |p| p[2] + (p[1] - p[0]) / along.scale) + 2.5;
    sheet.text([left, middle(top_y, thickness)], Anchor::End, LABEL, "top edge");
    sheet.text([right, middle(top_y, thickness)], Anchor::Start, LABEL, &scale_words(along.scale));
    let base = middle(side_y, depth);
    sheet.text([left, base], Anchor::End, Style::bold(10.0), "FOOT");
    sheet.text([right, base], Anchor::Start, Style::bold(10.0), "HEAD");
    sheet.text([left, base + 4.0], Anchor::End, LABEL, "right side");
}

/// Thin lines over the top edge where the tape marks are.
fn tape_lines(sheet: &mut Sheet, member: &Member, top: &View<'_>) {
    for mark in &member.marks {
        let (a, b) = (top.along.x(mark.left_mm), top.along.x(mark.right_mm));
        sheet.line([a, top.y(mark.left_across_mm)], [b, top.y(mark.right_across_mm)], Pen::black(0.5));
    }
}

/// Where the line of a mark at the foot runs down the side, dashed. Ends are
/// left out: there the drawing shows the cut itself.
fn face_lines(sheet: &mut Sheet, member: &Member, side: &View<'_>, [low, high]: [f64; 2]) {
    for mark in member.marks.iter().filter(|m| m.at == CutPlace::Foot) {
        let end = mark.right_mm - (high - low) * geometry::Angle::deg(mark.face_angle_deg).tan();
        let shown = side.along.parts.iter().any(|p| [mark.right_mm, end].iter().all(|v| (p[0]..=p[1]).contains(v)));
        if shown {
            let (a, b) = (side.along.x(mark.right_mm), side.along.x(end));
            sheet.line([a, side.y(high)], [b, side.y(low)], Pen::dashed(0.18, Dash::Dashed));
        }
    }
}

/// Bolt holes, on the view that looks along them.
fn bolt_holes(sheet: &mut Sheet, member: &Member, top: &View<'_>, side: &View<'_>) {
    /// A hole is drawn at least this large, mm on paper, to be seen.
    const LEAST_RADIUS: f64 = 0.5;
    for bolt in member.splices.iter().flat_map(|s| &s.bolts) {
        let (view, y) = match bolt.through {
            BoltWay::Thickness => (side, side.y(bolt.up_mm)),
            BoltWay::Depth => (top, top.y(0.0)),
        };
        let radius = (bolt.diameter_mm / 2.0 / view.along.scale).max(LEAST_RADIUS);
        sheet.disc([view.along.x(bolt.along_mm), y], radius, Some(255), Some(Pen::black(0.3)));
    }
}

/// Numbers, figures and leaders of the tape marks, above the top edge.
fn tape_marks(
    sheet: &mut Sheet,
    member: &Member,
    lengths: Lengths,
    top: &View<'_>,
    [top_y, _, _, left, label_top]: [f64; 5],
    room: Room,
) {
    let mut labels: Vec<(f64, usize, String)> = member
        .marks
        .iter()
        .enumerate()
        .filter(|(_, m)| m.left_mm.is_finite())
        .map(|(i, m)| (top.along.x(m.left_mm), i + 1, tape_figure(m, member.size.thickness_mm, lengths)))
        .collect();
    labels.sort_by(|a, b| a.0.total_cmp(&b.0));
    let disc = 2.1;
    let widths: Vec<f64> = labels.iter().map(|l| 2.0 * disc + 1.0 + FIGURE.width_mm(&l.2)).collect();
    let widest = widths.iter().copied().fold(0.0, f64::max);
    let roomy = (widest + 3.0) * labels.len() as f64 <= room.w;
    let apart = if roomy { widest + 3.0 } else { 2.0 * disc + 0.8 };
    if apart * labels.len() as f64 > room.w {
        return;
    }
    let wanted: Vec<f64> = labels.iter().map(|l| l.0).collect();
    let half_wide = if roomy { widest / 2.0 } else { disc };
    let places = spread(&wanted, apart, room.x + half_wide, room.x + room.w - half_wide);
    let middle = label_top + disc;
    for (((at, number, figure), &x), width) in labels.iter().zip(&places).zip(widths) {
        let pen = Pen::black(0.15);
        let edge = top.y(left);
        debug_assert!(edge >= top_y - 1e-6);
        sheet.path(vec![[x, middle + disc], [*at, edge - 2.2], [*at, edge]], false, None, Some(pen));
        let start = if roomy { x - width / 2.0 } else { x - disc };
        sheet.disc([start + disc, middle], disc, Some(255), Some(Pen::black(0.3)));
        let number_style = Style::bold(SMALLEST_PT);
        let base = middle + number_style.cap_mm() / 2.0;
        sheet.text([start + disc, base], Anchor::Middle, number_style, &number.to_string());
        if roomy {
            let base = middle + FIGURE.cap_mm() / 2.0;
            sheet.text([start + 2.0 * disc + 1.0, base], Anchor::Start, FIGURE, figure);
        }
    }
}

/// The two ends of a mark's line in words: on the arrises, or in the middle of
/// the edge (`c`, on its centre line) where two cheeks of a pointed end meet.
pub fn tape_ends(mark: &TapeMark, thickness: f64, lengths: Lengths) -> [String; 2] {
    let end = |mm: f64, across: f64| {
        let figure = lengths.write(mm);
        // An end this far inside its arris (mm) is no longer on it.
        if across.abs() < thickness / 2.0 - 0.5 { format!("c {figure}") } else { figure }
    };
    [end(mark.left_mm, mark.left_across_mm), end(mark.right_mm, mark.right_across_mm)]
}

/// One figure where the mark is square across, both ends where it is not.
pub fn tape_figure(mark: &TapeMark, thickness: f64, lengths: Lengths) -> String {
    let [left, right] = tape_ends(mark, thickness, lengths);
    if left == right { left } else { format!("L {left}  R {right}") }
}

/// A dimension line at `y` between two places, its figure in its middle.
fn dimension(sheet: &mut Sheet, [a, b]: [f64; 2], y: f64, from: [f64; 2], words: &str) {
    if !(b - a).is_finite() || b <= a {
        return;
    }
    let pen = Pen::black(0.18);
    let width = DIMENSION.width_mm(words);
    for (x, start) in [(a, from[0]), (b, from[1])] {
        sheet.line([x, start], [x, y + 1.2], Pen::grey(0.13, 110));
        sheet.line([x - 0.9, y + 0.9], [x + 0.9, y - 0.9], Pen::black(0.4));
    }
    let middle = (a + b) / 2.0;
    let (cap, base) = (DIMENSION.cap_mm(), y + DIMENSION.cap_mm() / 2.0);
    if width + 6.0 < b - a {
        sheet.line([a, y], [middle - width / 2.0 - 1.5, y], pen);
        sheet.line([middle + width / 2.0 + 1.5, y], [b, y], pen);
        sheet.rect([middle - width / 2.0 - 0.5, y - cap / 2.0 - 0.4], [width + 1.0, cap + 0.8], Some(255), None);
        sheet.text([middle, base], Anchor::Middle, DIMENSION, words);
    } else {
        sheet.line([a, y], [b, y], pen);
        sheet.text([b + 2.5, base], Anchor::Start, DIMENSION, words);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_timber_is_broken_between_its_cuts() {
        let places = [0.0, 90.0, 400.0, 3600.0, 3700.0];
        let along = Along::fit(&places, 10.0, 240.0, |n| 200.0 / n <= 40.0).unwrap();
        assert_eq!(along.scale, 5.0);
        assert!(along.is_broken());
        assert_eq!(along.x(0.0), 10.0);
        assert!((along.x(400.0) - 90.0).abs() < 1e-9, "to scale at the foot");
        assert!((along.x(3700.0) - 250.0).abs() < 1e-9);
        assert!((along.x(3700.0) - along.x(3600.0) - 20.0).abs() < 1e-9, "to scale at the head");
        let gap = along.parts[1][2] - along.x(along.parts[0][1]);
        assert!((gap - BREAK_GAP).abs() < 1e-9, "{gap}");
    }

    #[test]
    fn a_short_timber_is_whole_and_centred() {
        let along = Along::fit(&[0.0, 500.0], 10.0, 240.0, |n| n >= 5.0).unwrap();
        assert!(!along.is_broken());
        assert_eq!((along.x(0.0), along.x(500.0)), (80.0, 180.0));
    }
}
