//! A length of stock at the saw, cut by cut.

use super::figures::Writing;
use super::{drawing, layouts};
use crate::bench;
use crate::refusal::Refusal;
use crate::views::{Figure, LaidRow, LayoutAsk, LayoutView, SawStep};
use job::Job;
use order::whole::{CutOut, LaidOut, Layout, Order};
use std::fmt::Write;

/// Places that differ less are one on the tape, mm: half a pencil line.
const SAME_PLACE: f64 = 0.25;
/// An angle nearer to square is not worth setting, degrees.
const SQUARE: f64 = 0.05;

const CAUTIONS: [&str; 2] = [
    "Check the length and the section of the stock, and look it over for splits and bad knots, before the first cut.",
    "The seats and notches of a timber are on its card: here only its ends are cut.",
];

/// A layout.
pub(super) fn layout(job: &Job, order: &Order, writing: &Writing, ask: &LayoutAsk) -> Result<LayoutView, Refusal> {
    let (timber, layout) = layouts::named(order, &ask.id).ok_or_else(|| {
        Refusal::new(
            "no-such-layout",
            "The cutting plan has no such length any more",
            "Choose one from the list: the plan may have changed since",
        )
    })?;
    let picture = drawing::alone(writing, layout, timber.size.depth_mm, ask.width);
    let laid = |piece: &LaidOut| LaidRow {
        marks: piece.marks.clone(),
        card: piece.card.clone(),
        lies: lies(&piece.turn, writing),
        done: piece.marks.iter().map(|mark| layouts::done(job, mark)).min().unwrap_or(crate::views::Done::No),
    };
    Ok(LayoutView {
        row: layouts::row(job, writing, ask.id.clone(), layout, picture),
        title: writing.title(timber),
        steps: layout.cuts.iter().enumerate().map(|(k, cut)| step(writing, layout, k, cut)).collect(),
        pieces: layout.pieces.iter().map(laid).collect(),
        cautions: CAUTIONS.iter().map(|text| writing.sentence(text)).collect(),
    })
}

/// How a timber lies, from the way it lies on its card.
fn lies(turn: &str, writing: &Writing) -> String {
    let words = match turn {
        "as it lies" => "foot to the left, top edge away from you",
        "end for end" => "foot to the right, top edge away from you",
        "end for end, top edge down" => "foot to the right, top edge towards you",
        "top edge down" => "foot to the left, top edge towards you",
        other => other,
    };
    writing.say_first(words)
}

fn step(writing: &Writing, layout: &Layout, number: usize, cut: &CutOut) -> SawStep {
    let [near, far] = cut.at_mm;
    let tape = Figure {
        label: if same(near, far) { "From the left end" } else { "From the left end, on the edge towards you" }
            .to_owned(),
        value: writing.length(near),
        why: None,
    };
    let square = cut.face_angle_deg.abs() < SQUARE && cut.edge_angle_deg.abs() < SQUARE;
    let bench_writing = bench::Writing { lengths: writing.lengths, dialect: writing.words };
    let angles = [cut.face_angle_deg, cut.edge_angle_deg];
    SawStep {
        name: drawing::name_of_cut(number),
        tape,
        words: words(writing, cut, square),
        makes: makes(writing, layout, cut),
        ways: (!square).then(|| bench::through_stock(&bench_writing, angles, cut.saw, cut.square)),
    }
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < SAME_PLACE
}

/// Where the line runs, how the blade leans and on which side of the line it goes.
fn words(writing: &Writing, cut: &CutOut, square: bool) -> String {
    let ([near, far], [near_under, far_under]) = (cut.at_mm, cut.under_mm);
    let mut text = String::new();
    if !same(near, far) {
        let _ = write!(text, "On the far edge at {}. ", writing.length(far));
    } else if square {
        text.push_str("Square across. ");
    }
    // The middle of the line on the two wide sides: it moves as the blade leans.
    let lean = (near_under + far_under - near - far) / 2.0;
    if lean.abs() > SAME_PLACE {
        let way = if lean > 0.0 { "to the left" } else { "to the right" };
        let _ =
            write!(text, "The blade leans {way}: on the underside the cut comes out at {}", writing.length(near_under));
        if !same(near_under, far_under) {
            let _ = write!(text, " towards you and {} on the far edge", writing.length(far_under));
        }
        text.push_str(". ");
    }
    text.push_str(if cut.kerf_right { "Saw on the right of the line." } else { "Saw on the left of the line." });
    writing.say(&text)
}

/// What a cut is for, and whose ends it makes.
fn makes(writing: &Writing, layout: &Layout, cut: &CutOut) -> String {
    let ends: Vec<String> = cut.ends.iter().filter_map(|k| end(layout, *k, cut)).collect();
    let text = match (cut.what.as_str(), ends.as_slice()) {
        ("squaring", _) => "Squares the end of the stock".to_owned(),
        ("shared", [one, other]) => format!("One cut for two: {one}, and {other}"),
        ("trimming", [one, ..]) => format!("The rest of {one}"),
        (_, []) => "Parts the stock".to_owned(),
        (_, all) => all.join(", and "),
    };
    writing.sentence(&text)
}

/// Which end of which timber: `the head of Jack-3`.
fn end(layout: &Layout, number: u32, cut: &CutOut) -> Option<String> {
    let piece = layout.pieces.get(usize::try_from(number).ok()?)?;
    let middle = (cut.at_mm[0] + cut.at_mm[1]) / 2.0;
    let at_left = (middle - piece.from_mm).abs() < (middle - piece.to_mm).abs();
    let foot_left = !piece.turn.starts_with("end for end");
    let end = if at_left == foot_left { "foot" } else { "head" };
    let mark = match piece.marks.as_slice() {
        [only] => only.clone(),
        _ => format!("{} and those like it", piece.card),
    };
    Some(format!("the {end} of {mark}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::views::Dialect;
    use job::written::Lengths;
    use roof::solution::{SawSetting, SquareSetting};

    #[test]
    fn a_cut_says_where_it_runs_and_which_way_it_leans() {
        let writing = Writing { lengths: Lengths::Millimetres, words: Dialect::Uk, currency: String::new() };
        let mut cut = CutOut {
            what: "parting".to_owned(),
            ends: vec![0],
            at_mm: [1000.0, 1000.0],
            under_mm: [1000.0, 1000.0],
            kerf_right: true,
            face_angle_deg: 0.0,
            edge_angle_deg: 0.0,
            saw: SawSetting { mitre_deg: 0.0, tilt_deg: 0.0 },
            square: SquareSetting { run: 250.0, rise: 0.0 },
        };
        assert_eq!(words(&writing, &cut, true), "Square across. Saw on the right of the line.");
        // The plane runs to the right as it goes down: its upper end, where the blade's top is, lies to the left.
        cut.at_mm = [1000.0, 1120.0];
        cut.under_mm = [1047.0, 1167.0];
        cut.kerf_right = false;
        assert_eq!(
            words(&writing, &cut, false),
            "On the far edge at 1120 mm. The blade leans to the left: on the underside the cut comes out at 1047 mm \
             towards you and 1167 mm on the far edge. Saw on the left of the line."
        );
    }
}
