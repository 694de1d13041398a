//! The piece as it lies on two trestles, drawn for a phone at arm's length:
//! from its right side, with its top edge above it and the readings of the tape
//! above that.

mod along;
mod labels;
mod outline;
mod sheet;
mod type_width;
mod view;

use super::steps::{self, Set, ends, is_across, name, sets};
use super::writing::Writing;
use along::Along;
use labels::{Label, spots};
use outline::Face;
use picture::{Anchor, Ink, Picture};
use roof::solution::{BoltWay, Member};
use sheet::Sheet;
use type_width::width as text_width;
use view::{Side, View, lines_on_side, step_of};

/// The narrowest and the widest picture, px: a small phone, a tablet on the bench.
const WIDTHS: [f64; 2] = [320.0, 900.0];
/// Height of type of figures, px: read at arm's length.
const FIGURE: f64 = 24.0;
/// Height of type of words, px.
const WORDS: f64 = 16.0;
/// From one row of readings to the next, px.
const ROW: f64 = 31.0;
/// Between the lowest row of readings and the timber, px.
const LEADER: f64 = 18.0;
/// The wide side of the timber is drawn this much of the width high, and no less or more, px.
const DEPTH_SHARE: f64 = 0.24;
const DEPTHS: [f64; 2] = [76.0, 150.0];
/// Kept left and right of the timber, px.
const MARGIN: f64 = 8.0;
/// Between the two views, with the words of the ends, px.
const BETWEEN: f64 = 34.0;
/// Height of a trestle and half its width at the head and at the feet, px.
const TRESTLE: [f64; 3] = [46.0, 20.0, 26.0];
/// Where the trestles stand, of the width of the timber.
const STANDS: [f64; 2] = [0.2, 0.8];
/// Below the trestles, for the cut length, px.
const BELOW: f64 = 58.0;
/// A bolt hole is drawn at least this large, px.
const LEAST_HOLE: f64 = 3.5;
/// A mark is scribed down the side where its cut ends further from the top edge, mm.
const SCRIBED: f64 = 1.0;
/// The least slope of a timber whose pitch line is drawn, degrees.
const SLOPING: f64 = 0.5;

/// The picture of a timber in a width.
pub fn picture(writing: &Writing, member: &Member, width: f64) -> Picture {
    let width = if width.is_finite() { width.clamp(WIDTHS[0], WIDTHS[1]) } else { WIDTHS[0] };
    let faces = outline::faces(member);
    let sets = sets(member);
    let spoken = spoken(writing, member, &sets);
    let reach = |axis: usize| {
        let values = member.bench.points.iter().filter_map(|p| p.get(axis).copied()).filter(|v| v.is_finite());
        values.fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)))
    };
    let ((low, high), (right, left)) = (reach(1), reach(2));
    let (depth, thickness) = (high - low, left - right);
    let wanted = (width * DEPTH_SHARE).clamp(DEPTHS[0], DEPTHS[1]);
    let along = Along::fit(&places(member), MARGIN, width - 2.0 * MARGIN, depth / wanted);
    let Some(along) = along.filter(|_| depth.is_finite() && thickness.is_finite()) else {
        return Picture { width, height: ROW, spoken, parts: Vec::new() };
    };

    let labels = tape(writing, member, &along, &sets);
    let spots = spots(&labels, width, FIGURE);
    let rows = spots.iter().map(|spot| spot.row + 1).max().unwrap_or(0);
    let top_y = rows as f64 * ROW + LEADER;
    let side_y = top_y + thickness / along.scale + BETWEEN;
    let bottom = side_y + depth / along.scale;
    let top = View { along: &along, side: Side::Top, high: left, y: top_y };
    let side = View { along: &along, side: Side::Right, high, y: side_y };

    let mut sheet = Sheet::default();
    trestles(&mut sheet, &along, bottom);
    let of = |face: &Face| step_of(face, &sets).map(name);
    top.draw(&mut sheet, &faces, of);
    side.draw(&mut sheet, &faces, of);
    pitch_line(&mut sheet, member, &side);
    marks(&mut sheet, member, &sets, &faces, &top, &side, high);
    for (label, spot) in labels.iter().zip(&spots) {
        let base = top_y - LEADER - spot.row as f64 * ROW;
        let half = text_width(&label.text, FIGURE) / 2.0;
        let from = label.x.max(spot.middle - half).min(spot.middle + half);
        sheet.line(Ink::Dimension, Some(&label.step), vec![[from, base + 4.0], [label.x, top_y - 2.0]]);
        let at = [spot.middle, base - 2.0];
        sheet.text(Ink::Dimension, Some(&label.step), at, FIGURE, Anchor::Middle, label.text.clone());
    }
    words(&mut sheet, writing, member, [MARGIN, width - MARGIN], side_y - 11.0);
    cut_length(&mut sheet, writing, member, &along, &faces, [bottom, bottom + TRESTLE[0]], width);
    Picture { width, height: bottom + TRESTLE[0] + BELOW, spoken, parts: sheet.parts }
}

/// Where something happens along the timber, sorted, mm.
fn places(member: &Member) -> Vec<f64> {
    let mut places: Vec<f64> = member.bench.points.iter().map(|p| p[0]).collect();
    places.extend(member.marks.iter().flat_map(|m| [m.left_mm, m.right_mm]));
    places.extend(member.splices.iter().flat_map(|s| &s.bolts).map(|b| b.along_mm));
    places.retain(|mm| mm.is_finite());
    places.sort_by(f64::total_cmp);
    places
}

/// What is read on the tape, from the foot: both ends of a line that is not
/// square across.
fn tape(writing: &Writing, member: &Member, along: &Along, sets: &[Set<'_>]) -> Vec<Label> {
    let mut labels = Vec::new();
    for (k, set) in sets.iter().enumerate() {
        let Set::Mark(_, mark) = set else { continue };
        let mut put = |mm: f64, text: String| labels.push(Label { x: along.x(mm), text, step: name(k) });
        if is_across(mark) {
            put(mark.right_mm, writing.bare(mark.right_mm));
        } else {
            let [left, right] = ends(writing, member, mark);
            put(mark.left_mm, left);
            put(mark.right_mm, right);
        }
    }
    labels.sort_by(|a, b| a.x.total_cmp(&b.x));
    labels
}

/// The lines of the marks on both views, and the bolt holes.
fn marks(
    sheet: &mut Sheet,
    member: &Member,
    sets: &[Set<'_>],
    faces: &[Face],
    top: &View<'_>,
    side: &View<'_>,
    high: f64,
) {
    for (k, set) in sets.iter().enumerate() {
        let step = Some(name(k));
        let step = step.as_deref();
        let cut = faces.iter().filter(|face| step_of(face, sets) == Some(k));
        let on_side: Vec<_> = cut.flat_map(|face| lines_on_side(face, member)).collect();
        for [low, up] in &on_side {
            sheet.line(Ink::Edge, step, vec![side.at(*low), side.at(*up)]);
        }
        match set {
            Set::Mark(_, mark) => {
                let from = top.at([mark.left_mm, high, mark.left_across_mm]);
                let to = top.at([mark.right_mm, high, mark.right_across_mm]);
                sheet.line(Ink::Edge, step, vec![from, to]);
                let ends = on_side.iter().map(|line| line[1]).max_by(|a, b| a[1].total_cmp(&b[1]));
                if let Some(end) = ends.filter(|end| high - end[1] > SCRIBED) {
                    sheet.line(Ink::Hidden, step, vec![side.at([mark.right_mm, high, 0.0]), side.at(end)]);
                }
            }
            Set::Bolt(bolt) => {
                let radius = (bolt.diameter_mm / 2.0 / side.along.scale).max(LEAST_HOLE);
                let at = match bolt.through {
                    BoltWay::Thickness => side.at([bolt.along_mm, bolt.up_mm, 0.0]),
                    BoltWay::Depth => top.at([bolt.along_mm, high, 0.0]),
                };
                sheet.dot(Ink::Edge, step, at, radius);
            }
            Set::Seat(_) => {}
        }
    }
}

/// The pitch line of a timber that rises, where it runs through the wood.
fn pitch_line(sheet: &mut Sheet, member: &Member, side: &View<'_>) {
    if member.pitch_deg.abs() <= SLOPING {
        return;
    }
    let less = |a: [f64; 3], b: [f64; 3]| [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
    let dot = |a: [f64; 3], b: [f64; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let [from, to] = [member.axis.from, member.axis.to].map(|p| {
        let p = less(p, member.bench.origin);
        [dot(p, member.bench.along), dot(p, member.bench.up), 0.0]
    });
    for stretch in &side.along.stretches {
        let (a, b) = (from[0].max(stretch.from), to[0].min(stretch.to));
        if b > a {
            sheet.line(Ink::Centre, None, vec![side.at([a, from[1], 0.0]), side.at([b, from[1], 0.0])]);
        }
    }
}

fn trestles(sheet: &mut Sheet, along: &Along, under: f64) {
    let [height, head, feet] = TRESTLE;
    let [start, end] = along.span();
    for share in STANDS {
        let x = start + (end - start) * share;
        let foot = under + height;
        for sign in [-1.0, 1.0] {
            let leg = vec![[x + sign * head * 0.6, under + 8.0], [x + sign * feet, foot]];
            sheet.line(Ink::Faint, None, leg);
        }
        let bar = vec![[x - head, under], [x + head, under], [x + head, under + 8.0], [x - head, under + 8.0]];
        sheet.area(Ink::Ground, None, bar);
    }
}

/// What the ends and the view above are called, between the two views.
fn words(sheet: &mut Sheet, writing: &Writing, member: &Member, [from, to]: [f64; 2], base: f64) {
    let end = steps::end(member);
    for (x, anchor, text) in [
        (from, Anchor::Start, end.to_owned()),
        ((from + to) / 2.0, Anchor::Middle, writing.say("top edge above")),
        (to, Anchor::End, "head".to_owned()),
    ] {
        sheet.text(Ink::Faint, None, [x, base], WORDS, anchor, text);
    }
}

/// The cut length under the trestles, from end to end of the top edge.
fn cut_length(
    sheet: &mut Sheet,
    writing: &Writing,
    member: &Member,
    along: &Along,
    faces: &[Face],
    [timber, floor]: [f64; 2],
    width: f64,
) {
    /// The drawing and the figure are the same length if no further apart, mm.
    const SAME: f64 = 1.0;
    let is_top = |face: &&Face| face.name.starts_with("top") || face.name.starts_with("backing");
    let tops = faces.iter().filter(is_top).flat_map(|face| face.loops.iter().flatten()).map(|p| p[0]);
    let (low, high) = tops.fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)));
    if ((high - low) - member.cut_length_mm).abs() > SAME {
        return;
    }
    let (a, b, y) = (along.x(low), along.x(high), floor + 10.0);
    sheet.line(Ink::Dimension, None, vec![[a, y], [b, y]]);
    for x in [a, b] {
        sheet.line(Ink::Dimension, None, vec![[x, timber + 4.0], [x, y + 6.0]]);
    }
    let text = writing.length(member.cut_length_mm);
    let caption = writing.say("cut length");
    let (wide, small) = (text_width(&text, FIGURE), text_width(&caption, WORDS));
    let half = (wide + small) / 2.0 + 4.0;
    let middle = ((a + b) / 2.0).max(half).min((width - half).max(half));
    let base = y + 34.0;
    sheet.text(Ink::Faint, None, [middle - half, base], WORDS, Anchor::Start, caption);
    sheet.text(Ink::Dimension, None, [middle + half, base], FIGURE, Anchor::End, text);
}

/// The picture in words.
fn spoken(writing: &Writing, member: &Member, sets: &[Set<'_>]) -> String {
    let kind = writing.say_first(member.kind.name());
    let end = steps::end(member);
    let marks = sets.iter().filter(|set| matches!(set, Set::Mark(..))).count();
    format!(
        "{kind} {} on two trestles, from its right side with its top edge above, the {end} to the left: {} long, {marks} marks on the tape.",
        member.mark,
        writing.length(member.cut_length_mm)
    )
}

#[cfg(test)]
mod tests;
