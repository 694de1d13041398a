//! What to draw or measure next.

use super::plan::{Known, Plan, Why};
use super::text::Made;
use super::tidy::FEWEST_WALLS;
use super::touch::Part;
use super::words;
use crate::views::Sketch;
use geometry::survey::{Adjusted, MOST_CORNERS, Measure};
use job::wall_letter;
use job::written::Lengths;

/// What to do next.
pub(super) struct Next {
    /// A sentence.
    pub(super) words: String,
    /// The wall or diagonal it is about, if it is in the sketch.
    pub(super) part: Option<Part>,
    /// The corners of a diagonal that is not in the sketch yet.
    pub(super) diagonal: Option<[u32; 2]>,
}

impl Next {
    fn say(words: impl Into<String>) -> Self {
        Self { words: words.into(), part: None, diagonal: None }
    }

    fn about(part: Part, words: String) -> Self {
        Self { words, part: Some(part), diagonal: None }
    }

    /// About a diagonal, which may be in the sketch or not.
    fn across(sketch: &Sketch, (from, to): (usize, usize), words: String) -> Self {
        let (from, to) = (from.min(to), from.max(to));
        let is = |a: u32, b: u32| (a.min(b) as usize, a.max(b) as usize) == (from, to);
        let known = sketch.diagonals.iter().position(|line| is(line.from, line.to));
        let walls = sketch.walls.len().max(1);
        let part = match known {
            Some(number) => Some(Part::diagonal(number)),
            None if (from + 1) % walls == to => Some(Part::wall(from)),
            None if (to + 1) % walls == from => Some(Part::wall(to)),
            None => None,
        };
        let new = u32::try_from(from).ok().zip(u32::try_from(to).ok()).map(|(from, to)| [from, to]);
        Self { words, part, diagonal: if part.is_none() { new } else { None } }
    }
}

pub(super) fn of(sketch: &Sketch, plan: &Plan, made: &Made, lengths: Lengths) -> Next {
    if sketch.start.is_none() {
        return Next::say("Touch the ground where corner 1 is, where wall A starts.");
    }
    if !plan.closed {
        return drawing(sketch);
    }
    if let Some(next) = readings(sketch, plan) {
        return next;
    }
    match &plan.known {
        Known::Drawn => Next::say(plan.crossing.map_or_else(
            || "Look through the readings.".to_owned(),
            |(one, other)| {
                format!(
                    "Walls {} and {} cross: mend a length, or take walls back.",
                    wall_letter(one),
                    wall_letter(other)
                )
            },
        )),
        Known::Squared { lacks } => lacking(sketch, plan, lacks, lengths),
        Known::Not(Why::Readings(fault)) => {
            let fault = words::fault(fault, lengths);
            match fault.diagonal {
                Some(pair) => Next::across(sketch, pair, fault.next),
                None => Next { words: fault.next, part: fault.part, diagonal: None },
            }
        }
        Known::Not(Why::Gap { lacks } | Why::Diagonal { lacks, .. } | Why::ByEye { lacks, .. }) => {
            lacking(sketch, plan, lacks, lengths)
        }
        Known::Measured(adjusted) => checking(sketch, plan, adjusted, made),
    }
}

fn drawing(sketch: &Sketch) -> Next {
    let letter = wall_letter(sketch.walls.len());
    let words = match sketch.walls.len() {
        MOST_CORNERS => "The plan has as many walls as can be measured: take one back and close it.".to_owned(),
        walls if walls + 1 < FEWEST_WALLS => format!("Touch where wall {letter} ends."),
        _ => format!("Touch where wall {letter} ends, or corner 1 to close the plan."),
    };
    Next::say(words)
}

/// Readings that are wrong, or were not taken yet.
fn readings(sketch: &Sketch, plan: &Plan) -> Option<Next> {
    let wall = |k: usize, words: String| Next::about(Part::wall(k), words);
    if let Some(k) = plan.walls.iter().position(|read| read.fault().is_some()) {
        return Some(wall(k, format!("Mend the length of wall {}.", wall_letter(k))));
    }
    if let Some(k) = plan.diagonals.iter().position(|read| read.fault().is_some()) {
        return Some(Next::about(Part::diagonal(k), "Mend the length of the diagonal.".to_owned()));
    }
    if let Some(k) = plan.turns.iter().position(|read| read.fault().is_some()) {
        return Some(Next::say(format!("Mend the angle at corner {}.", k + 1)));
    }
    if let Some(k) = plan.walls.iter().position(|read| read.good().is_none()) {
        return Some(wall(k, format!("Measure wall {}: touch it, and type what the tape reads.", wall_letter(k))));
    }
    let k = plan.diagonals.iter().position(|read| read.good().is_none())?;
    let line = sketch.diagonals.get(k)?;
    let name = words::diagonal(line.from as usize, line.to as usize);
    Some(Next::about(Part::diagonal(k), format!("Measure {name}, and type what the tape reads.")))
}

/// The diagonal that tells most of those that are lacking.
fn lacking(sketch: &Sketch, plan: &Plan, lacks: &[(usize, usize)], lengths: Lengths) -> Next {
    let Some((from, to)) = lacks.first().copied() else { return Next::say("Measure a diagonal.") };
    let name = words::diagonal(from, to);
    let fixes = match lacks.len() {
        1 => "it fixes whether the plates are square".to_owned(),
        more => format!("it is the first of {more} that fix whether the plates are square"),
    };
    let drawn = match &plan.known {
        Known::Squared { .. } => plan.distance(from, to),
        _ => None,
    };
    let square = drawn.map_or_else(String::new, |mm| format!(" As drawn, it reads {}.", lengths.write_with_unit(mm)));
    Next::across(sketch, (from, to), format!("Measure {name}: {fixes}.{square}"))
}

/// What would make a measured plan surer.
fn checking(sketch: &Sketch, plan: &Plan, adjusted: &Adjusted, made: &Made) -> Next {
    if let Some(reading) =
        adjusted.worst.as_ref().filter(|worst| worst.slip).and_then(|w| adjusted.readings.get(w.reading))
    {
        let words = format!("Measure {} again: it disagrees most.", words::measure(reading.what));
        return match reading.what {
            Measure::Side(side) => Next::about(Part::wall(side), words),
            Measure::Diagonal(from, to) => Next::across(sketch, (from, to), words),
            Measure::Turn(_) => Next::say(words),
        };
    }
    if adjusted.freedom == 0
        && let Some(pair) = unmeasured(sketch, plan, adjusted)
    {
        let name = words::diagonal(pair.0, pair.1);
        return Next::across(sketch, pair, format!("The plan is fixed. Measure {name} too: it checks all the others."));
    }
    Next::say(if made.text.is_some() { "The plan is measured: make the roof." } else { "Look at what is said below." })
}

/// The distance that is known least of those that were not measured.
fn unmeasured(sketch: &Sketch, plan: &Plan, adjusted: &Adjusted) -> Option<(usize, usize)> {
    let count = plan.corners.len();
    let measured = |from: usize, to: usize| {
        let line = |a: u32, b: u32| (a.min(b) as usize, a.max(b) as usize) == (from, to);
        to - from == 1 || (from == 0 && to + 1 == count) || sketch.diagonals.iter().any(|d| line(d.from, d.to))
    };
    let weakest = (adjusted.weakest.from.min(adjusted.weakest.to), adjusted.weakest.from.max(adjusted.weakest.to));
    if weakest.0 != weakest.1 && !measured(weakest.0, weakest.1) {
        return Some(weakest);
    }
    let pairs = (0..count).flat_map(|from| (from + 1..count).map(move |to| (from, to)));
    let open = pairs.filter(|(from, to)| !measured(*from, *to));
    open.max_by(|a, b| {
        plan.distance(a.0, a.1).partial_cmp(&plan.distance(b.0, b.1)).unwrap_or(core::cmp::Ordering::Equal)
    })
}
