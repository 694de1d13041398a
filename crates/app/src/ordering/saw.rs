//! A length of stock at the saw, cut by cut.

use super::{drawing, layouts};
use crate::bench;
use crate::refusal::Refusal;
use crate::views::{Figure, LaidRow, LayoutAsk, LayoutView, SawStep};
use crate::wording::Writing;
use job::Job;
use order::whole::{CutOut, LaidOut, Layout, Order};

/// Places that differ less are one on the tape, mm: half a pencil line.
const SAME_PLACE: f64 = 0.25;
/// An angle nearer to square is not worth setting, degrees.
const SQUARE: f64 = 0.05;

const CAUTIONS: [&str; 2] = [
    "Check the length and the section of the stock, and look it over for splits and bad knots, before the first cut.",
    "Seats, notches, scarfs and backing are on the card of a timber: here only its ends are cut, none of them short.",
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
        steps: layout
            .cuts
            .iter()
            .enumerate()
            .map(|(k, cut)| step(writing, layout, k, cut, timber.size.depth_mm))
            .collect(),
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

fn step(writing: &Writing, layout: &Layout, number: usize, cut: &CutOut, depth: f64) -> SawStep {
    let square = cut.face_angle_deg.abs() < SQUARE && cut.edge_angle_deg.abs() < SQUARE;
    let bench_writing = bench::Writing { lengths: writing.lengths, dialect: writing.words };
    let angles = [cut.face_angle_deg, cut.edge_angle_deg];
    let mut marks = marks(writing, cut, layout.length_mm, depth);
    let tape =
        if marks.is_empty() { figure("From the left end", writing.length(cut.at_mm[0])) } else { marks.remove(0) };
    SawStep {
        name: drawing::name_of_cut(number),
        tape,
        marks,
        words: words(writing, cut, square),
        makes: makes(writing, layout, cut),
        ways: (!square).then(|| bench::through_stock(&bench_writing, angles, cut.saw, cut.square)),
    }
}

fn figure(label: &str, value: String) -> Figure {
    Figure { label: label.to_owned(), value, why: None }
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < SAME_PLACE
}

/// How far the line moves to the right from the side that lies up to the one that lies down: the blade leans by it.
fn lean(cut: &CutOut) -> f64 {
    (cut.under_mm[0] + cut.under_mm[1] - cut.at_mm[0] - cut.at_mm[1]) / 2.0
}

/// Where the line of a cut crosses the edges of the stock, from its left end: first the edge towards the carpenter on
/// the side that lies up. What is off the stock is told by where the line leaves its end.
fn marks(writing: &Writing, cut: &CutOut, length: f64, depth: f64) -> Vec<Figure> {
    let on = |mm: f64| mm > -SAME_PLACE && mm < length + SAME_PLACE;
    let read = |mm: f64| writing.length(mm.max(0.0));
    let mut out = Vec::new();
    let mut side = |[near, far]: [f64; 2], names: [&str; 4]| {
        if same(near, far) {
            if on(near) {
                out.push(figure(names[0], read(near)));
            }
            return;
        }
        if on(near) {
            out.push(figure(names[1], read(near)));
        }
        if on(far) {
            out.push(figure(names[2], read(far)));
        }
        if on(near) != on(far) {
            let off = if on(near) { far } else { near };
            let end = if off < 0.0 { 0.0 } else { length };
            let up = depth * (end - near) / (far - near);
            out.push(figure(names[3], writing.length(up)));
        }
    };
    side(
        cut.at_mm,
        [
            "From the left end",
            "From the left end, on the edge towards you",
            "On the far edge",
            "On the end, in from the edge towards you",
        ],
    );
    if lean(cut).abs() > SAME_PLACE {
        side(
            cut.under_mm,
            [
                "Underneath",
                "Underneath, on the edge towards you",
                "Underneath, on the far edge",
                "Underneath, on the end, in from the edge towards you",
            ],
        );
    }
    out
}

/// How the line runs, how the blade leans and on which side of the line it goes.
fn words(writing: &Writing, cut: &CutOut, square: bool) -> String {
    let lean = lean(cut);
    let blade = if square {
        "Square across. "
    } else if lean > SAME_PLACE {
        "The blade leans to the left as it comes up. "
    } else if lean < -SAME_PLACE {
        "The blade leans to the right as it comes up. "
    } else {
        "The blade stands upright. "
    };
    let side = if cut.kerf_right { "right" } else { "left" };
    writing.say(&format!("{blade}Saw on the {side} of the line."))
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
        let writing = Writing::new(Lengths::Millimetres, Dialect::Uk);
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
        let read = |cut: &CutOut| -> Vec<(String, String)> {
            marks(&writing, cut, 4800.0, 150.0).into_iter().map(|mark| (mark.label, mark.value)).collect()
        };
        assert_eq!(words(&writing, &cut, true), "Square across. Saw on the right of the line.");
        assert_eq!(read(&cut), [("From the left end".to_owned(), "1000 mm".to_owned())]);
        // The plane runs to the right as it goes down: the blade comes up to the left.
        cut.at_mm = [1000.0, 1120.0];
        cut.under_mm = [1047.0, 1167.0];
        cut.kerf_right = false;
        assert_eq!(
            words(&writing, &cut, false),
            "The blade leans to the left as it comes up. Saw on the left of the line."
        );
        let values: Vec<String> = read(&cut).into_iter().map(|(_, value)| value).collect();
        assert_eq!(values, ["1000 mm", "1120 mm", "1047 mm", "1167 mm"]);
        // A line that runs off the left end: a third of its way in, 150/3 from the near edge.
        cut.at_mm = [-40.0, 80.0];
        cut.under_mm = [-40.0, 80.0];
        let wanted = [("On the far edge", "80 mm"), ("On the end, in from the edge towards you", "50 mm")];
        assert_eq!(read(&cut), wanted.map(|(label, value)| (label.to_owned(), value.to_owned())));
    }
}
