//! The marks of a piece, in the order in which the tape is pulled from one end.

use super::ways::{is_square, ways};
use super::writing::Writing;
use crate::views::{Figure, Step};
use roof::solution::{BoltOut, BoltWay, Cut, CutPlace, Member, TapeMark};

/// A line whose ends differ less on the tape is square across, mm: half a
/// pencil line.
const SQUARE_ACROSS: f64 = 0.25;
/// An end that is this far inside its arris is no longer on it, mm.
const OFF_THE_ARRIS: f64 = 0.5;
/// A mark that leaves the stock by less is on it, mm: a pencil line.
const ON_THE_STOCK: f64 = 0.5;
/// What the level face of a birdsmouth is called.
pub const SEAT: &str = "seat cut";

/// What is set out at a step.
#[derive(Clone, Copy, Debug)]
pub enum Set<'m> {
    /// A mark by its number.
    Mark(usize, &'m TapeMark),
    /// The seat of the birdsmouth, from its heel.
    Seat(&'m TapeMark),
    /// A bolt hole.
    Bolt(&'m BoltOut),
}

impl Set<'_> {
    /// Where it is first met, mm from the end of the timber.
    pub fn at(&self) -> f64 {
        match self {
            Self::Mark(_, mark) | Self::Seat(mark) => mark.left_mm.min(mark.right_mm),
            Self::Bolt(bolt) => bolt.along_mm,
        }
    }
}

/// What is set out on a timber, in the order of the tape.
pub fn sets(member: &Member) -> Vec<Set<'_>> {
    let seated = member.birdsmouth.is_some() && member.cuts.iter().any(|cut| cut.name == SEAT);
    let heel = member.marks.iter().position(|mark| mark.at == CutPlace::Foot && mark.name.starts_with("heel"));
    let mut sets = Vec::new();
    for (number, mark) in member.marks.iter().enumerate() {
        sets.push(Set::Mark(number, mark));
        if seated && heel == Some(number) {
            sets.push(Set::Seat(mark));
        }
    }
    sets.extend(member.splices.iter().flat_map(|splice| &splice.bolts).map(Set::Bolt));
    // Stable: the seat stays behind its heel.
    sets.sort_by(|a, b| a.at().total_cmp(&b.at()));
    sets
}

/// The name by which the picture and the steps know each other, from 1.
pub fn name(step: usize) -> String {
    format!("step {}", step + 1)
}

/// The steps of a timber.
pub fn steps(writing: &Writing, member: &Member) -> Vec<Step> {
    let sets = sets(member);
    let mut steps: Vec<Step> = sets.iter().enumerate().map(|(k, set)| step(writing, member, k, *set)).collect();
    if let Some(first) = steps.first_mut() {
        let hook = format!("Hook the tape on the {} end of the stock. ", end(member));
        first.words = writing.say(&hook) + &first.words;
    }
    steps
}

/// What the end is called that the tape hooks on.
pub fn end(member: &Member) -> &'static str {
    if member.cuts.iter().any(|cut| cut.at == CutPlace::Tail) { "tail" } else { "foot" }
}

fn step(writing: &Writing, member: &Member, k: usize, set: Set<'_>) -> Step {
    let (tape, words, ways) = match set {
        Set::Mark(number, mark) => {
            let cut = cut_of(member, number, mark);
            let label = writing.say_first(&mark.name);
            let tape = Figure { label, value: reading(writing, member, mark), why: Some(why("tape", member, number)) };
            let ways = cut.filter(|(_, cut)| !is_square(cut)).map(|(number, cut)| ways(writing, member, number, cut));
            let mut words = mark_words(mark, ways.is_some());
            if let Some((end, mm)) = past_the_stock(member, mark) {
                let over = writing.length(mm);
                words.push_str(&format!(
                    " It begins {over} past the {end} end: leave the timber that much longer there."
                ));
            }
            (tape, words, ways)
        }
        Set::Seat(_) => {
            let mouth = member.birdsmouth;
            let upstand = writing.length(mouth.map_or(f64::NAN, |mouth| mouth.upstand_mm));
            let seat = writing.length(mouth.map_or(f64::NAN, |mouth| mouth.seat_mm));
            let label = writing.say("Down the heel line, from the top edge");
            let tape = Figure { label, value: upstand, why: Some(format!("upstand {}", member.mark)) };
            let words = format!("Measure down the heel line. Mark the seat level from there, {seat} long.");
            let cut = member.cuts.iter().enumerate().find(|(_, cut)| cut.name == SEAT);
            (tape, words, cut.map(|(number, cut)| ways(writing, member, number, cut)))
        }
        Set::Bolt(bolt) => {
            let label = writing.say("Bolt hole");
            let hole = writing.length(bolt.diameter_mm);
            let words = match bolt.through {
                BoltWay::Thickness => {
                    format!("Bore {hole} through the side, {} up from the underside.", writing.length(bolt.up_mm))
                }
                BoltWay::Depth => format!("Bore {hole} down through the middle of the top edge."),
            };
            (Figure { label, value: writing.length(bolt.along_mm), why: None }, words, None)
        }
    };
    Step { name: name(k), tape, words: writing.say(&words), ways }
}

fn mark_words(mark: &TapeMark, set: bool) -> String {
    let across =
        if is_across(mark) { "square across the top edge" } else { "at both readings and join them over the top edge" };
    let sides = if set { ", then down the sides with the setting" } else { ", then square down the sides" };
    format!("Mark the {} {across}{sides}.", mark.name)
}

/// By how much a mark lies past an end of the least stock, and which: where
/// backing or another cut takes off the corner that it starts from.
pub fn past_the_stock(member: &Member, mark: &TapeMark) -> Option<(&'static str, f64)> {
    let before = -mark.left_mm.min(mark.right_mm);
    let after = mark.left_mm.max(mark.right_mm) - member.stock_length_mm;
    if before > ON_THE_STOCK {
        Some((end(member), before))
    } else if after > ON_THE_STOCK {
        Some(("head", after))
    } else {
        None
    }
}

/// Whether the mark's line is square across the top edge.
pub fn is_across(mark: &TapeMark) -> bool {
    (mark.left_mm - mark.right_mm).abs() < SQUARE_ACROSS
}

/// The reading of a mark: both ends where its line is not square across.
fn reading(writing: &Writing, member: &Member, mark: &TapeMark) -> String {
    if is_across(mark) {
        return writing.length(mark.right_mm);
    }
    let [left, right] = ends(writing, member, mark);
    let unit = if writing.is_metric() { " mm" } else { "" };
    format!("{left} · {right}{unit}")
}

/// The readings at the two ends of a mark's line, each with its side.
pub fn ends(writing: &Writing, member: &Member, mark: &TapeMark) -> [String; 2] {
    let inside = member.size.thickness_mm / 2.0 - OFF_THE_ARRIS;
    let end = |side: &str, mm: f64, across: f64| {
        let side = if across.abs() < inside { "middle" } else { side };
        format!("{side} {}", writing.bare(mm))
    };
    [end("L", mark.left_mm, mark.left_across_mm), end("R", mark.right_mm, mark.right_across_mm)]
}

/// The cut of a mark, with its number: of several of one name, the one as far
/// down the list as the mark is.
fn cut_of<'m>(member: &'m Member, number: usize, mark: &TapeMark) -> Option<(usize, &'m Cut)> {
    let before = member.marks.iter().take(number).filter(|m| m.name == mark.name && m.at == mark.at).count();
    let mut same = member.cuts.iter().enumerate().filter(|(_, cut)| cut.name == mark.name && cut.at == mark.at);
    let first = same.clone().next();
    same.nth(before).or(first)
}

/// The key of one of several figures of a timber.
pub fn why(figure: &str, member: &Member, number: usize) -> String {
    format!("{figure} {} {number}", member.mark)
}
