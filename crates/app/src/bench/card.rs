//! The card of a pattern piece.

use super::drawing;
use super::progress::{no_timber, progress};
use super::steps::{steps, why};
use super::ways::ways;
use super::writing::Writing;
use crate::refusal::Refusal;
use crate::views::{Card, CardAsk, CutRow, Dialect, Done, Figure};
use crate::wording;
use job::Job;
use job::written::{Lengths, degrees, tenth};
use roof::solution::{CutPlace, Member, PatternPiece, Solution, SpliceForm, SpliceOut};

/// The least slope of a timber that is said to rise, degrees.
const SLOPING: f64 = 0.5;
const CAUTION: &str = "Cut one, try it, then cut the rest.";
const FROM_SQUARE: &str = "All angles are from square across, not from the length.";
const BACK_LAST: &str = "Set it out on the square timber, and plane the backing after the cuts.";

/// The card of the piece that a timber is cut from.
///
/// # Errors
/// When the roof has no timber of this mark.
pub fn card(
    job: &Job,
    solution: &Solution,
    lengths: Lengths,
    dialect: Dialect,
    ask: &CardAsk,
) -> Result<Card, Refusal> {
    let writing = Writing { lengths, dialect };
    let of = |mark: &str| solution.members.iter().find(|member| member.mark == mark);
    let asked = of(&ask.mark).ok_or_else(|| no_timber(&ask.mark))?;
    let piece = solution.pieces.iter().find(|piece| piece.mark == asked.count_as);
    let piece = piece.ok_or_else(|| no_timber(&asked.count_as))?;
    // What the card shows is measured on the first timber of the piece.
    let member = of(&piece.mark).ok_or_else(|| no_timber(&piece.mark))?;
    let far = |mark: &String| (mark.clone(), of(mark).map_or(Done::No, |member| progress(job, member).done));
    Ok(Card {
        piece: piece.mark.clone(),
        mark: ask.mark.clone(),
        kind: wording::kind(dialect, piece.kind),
        size: writing.section(member.size.thickness_mm, member.size.depth_mm),
        members: piece.members.iter().map(far).collect(),
        mirror_of: piece.mirror_of.clone(),
        figures: figures(&writing, member),
        picture: drawing::picture(&writing, member, ask.width),
        steps: steps(&writing, member),
        cuts: cuts(&writing, member),
        notices: notices(&writing, solution, piece, member),
    })
}

/// The figures that are read first.
fn figures(writing: &Writing, member: &Member) -> Vec<Figure> {
    let mark = &member.mark;
    let one = |key: &str| Some(format!("{key} {mark}"));
    let length = |label: &str, mm: f64, why: Option<String>| Figure {
        label: writing.say(label),
        value: writing.length(mm),
        why,
    };
    let mut figures = vec![
        length("Stock, at least", member.stock_length_mm, one("stock")),
        length("Cut length", member.cut_length_mm, one("cut-length")),
        length("True length", member.true_length_mm, one("true-length")),
    ];
    if member.pitch_deg.abs() > SLOPING {
        let value = degrees(member.pitch_deg);
        figures.push(Figure { label: writing.say("Rises at"), value, why: one("pitch") });
    }
    if let Some(mouth) = member.birdsmouth {
        figures.push(length("Seat", mouth.seat_mm, one("seat")));
        figures.push(length("Heel", mouth.plumb_mm, one("heel")));
        figures.push(length("Upstand", mouth.upstand_mm, one("upstand")));
    }
    for (side, (number, deg)) in ["left", "right"].iter().zip(member.backing_deg.into_iter().flatten().enumerate()) {
        let label = writing.say(&format!("Backing, {side}"));
        figures.push(Figure { label, value: degrees(deg), why: Some(why("backing", member, number)) });
    }
    // A timber that is not lowered says nothing about it.
    if let Some(drop) = member.drop_mm.filter(|drop| *drop != 0.0) {
        figures.push(length("Drop, plumb", drop, one("drop")));
    }
    figures
}

fn cuts(writing: &Writing, member: &Member) -> Vec<CutRow> {
    let row = |(number, cut): (usize, &roof::solution::Cut)| CutRow {
        name: writing.say_first(&cut.name),
        at: place(cut.at).to_owned(),
        against: cut.against.clone(),
        ways: ways(writing, member, number, cut),
    };
    member.cuts.iter().enumerate().map(row).collect()
}

const fn place(at: CutPlace) -> &'static str {
    match at {
        CutPlace::Tail => "tail",
        CutPlace::Foot => "foot",
        CutPlace::Head => "head",
    }
}

/// What is drawn on top of a plate.
const FIRRED: &str =
    "The blocks on top are firring, pieces of their own, fixed under what stands there. Cut the plate itself level.";

/// What to mind: the trade's caution, splices, and what the roof says of these timbers.
fn notices(writing: &Writing, solution: &Solution, piece: &PatternPiece, member: &Member) -> Vec<String> {
    let mut notices = vec![FROM_SQUARE.to_owned()];
    if piece.count > 1 {
        notices.push(CAUTION.to_owned());
    }
    if piece.differ_mm > 0.0 {
        let most = writing.length(piece.differ_mm);
        notices.push(format!("These timbers differ by up to {most}: cut them all as this one."));
    }
    if member.backing_deg.is_some_and(|both| both.iter().any(|deg| *deg != 0.0)) {
        notices.push(BACK_LAST.to_owned());
    }
    if member.firred {
        notices.push(FIRRED.to_owned());
    }
    notices.extend(member.splices.iter().map(|splice| splice_words(writing, splice)));
    let about = |notice: &&roof::solution::Notice| piece.members.contains(&notice.place);
    notices.extend(solution.notices.iter().filter(about).map(|notice| notice.text.clone()));
    notices.iter().map(|text| writing.say(text)).collect()
}

fn splice_words(writing: &Writing, splice: &SpliceOut) -> String {
    let kind = match splice.kind {
        SpliceForm::HalfLap => "half lap",
        SpliceForm::FishPlates => "butt with fish plates",
        SpliceForm::Splayed => "splayed scarf",
        SpliceForm::Hooked => "hooked scarf",
        SpliceForm::BoardSplay => "splayed butt",
    };
    let (long, from) = (writing.length(splice.length_mm), writing.length(splice.from_mm));
    let mut words = format!("At the {}: {kind} with {}, {long} long from {from}.", place(splice.at), splice.mate);
    if let Some(taper) = splice.wedge_mm_in_100 {
        words.push_str(&format!(" Folding wedges taper {} in 100.", tenth(taper)));
    }
    words
}
