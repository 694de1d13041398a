//! Puts faults of a plan into words, with walls by their letters.

use super::plan::{Plan, Ring};
use super::reader::Reader;
use geometry::{CornerRef, PlanFault};

/// Reports a fault of the plan at its place in the file.
pub(super) fn report(reader: &mut Reader<'_>, plan: &Plan, fault: &PlanFault) {
    match fault {
        PlanFault::TooFewCorners { ring, corners } => {
            reader.fault(
                &plan.ring_span(*ring),
                "plan-too-few-corners",
                format!("The loop of {} has {corners} corners; it takes at least three", Plan::ring_words(*ring)),
                "Fewer corners enclose nothing",
                "Write every corner once, going round; the last joins the first by itself",
            );
        }
        PlanFault::NotAPlace { at } => {
            reader.fault(
                &plan.span(*at),
                "plan-not-a-place",
                format!("{} is not a place within 1 km of the datum", corner_words(*at)),
                "A kilometre is a slip of the unit, and takes the accuracy from every cut",
                "Check the unit, and measure corners from one of the corners of the plates",
            );
        }
        PlanFault::RepeatedCorner { at } => repeated(reader, plan, *at),
        PlanFault::WallsCross { first, second } => {
            let (a, b) = (plan.letter(*first), plan.letter(*second));
            reader.fault(
                &plan.span(*first),
                "plan-walls-cross",
                format!("Wall {a}, which starts at this corner, crosses or touches wall {b}"),
                "Walls may meet only at the corner they share, or it cannot be told inside from outside",
                format!("Check the corners at the ends of walls {a} and {b}, and that corners stand in order"),
            );
        }
        PlanFault::WrongWayRound { ring } => wrong_way_round(reader, plan, *ring),
        PlanFault::WallTooShort { at, length, shortest } => {
            let letter = plan.letter(*at);
            reader.fault(
                &plan.span(*at),
                "plan-wall-too-short",
                format!("Wall {letter}, which starts at this corner, is {length:.1} mm long; the shortest is {shortest:.0} mm"),
                "Nothing can be framed on a shorter one, and it is mostly a slip of the tape",
                format!("Move the corners at the ends of wall {letter} apart, or make one corner of them"),
            );
        }
        PlanFault::CourtyardOutside { ring } => {
            reader.fault(
                &plan.ring_span(*ring),
                "plan-courtyard-outside",
                format!("{} does not lie inside the outer plates, or lies in another courtyard", capital_ring(*ring)),
                "A courtyard is a hole in the building",
                "Check its corners, or take it out of holes",
            );
        }
        other => {
            reader.fault(
                &plan.ring_span(0),
                "plan-rule",
                format!("The plan breaks a rule: {other}"),
                "The roof is made from the plan",
                "Check the corners",
            );
        }
    }
}

/// A corner by its number, counted from 1.
fn corner_words(at: CornerRef) -> String {
    format!("Corner {} of {}", at.corner + 1, Plan::ring_words(at.ring))
}

fn capital_ring(ring: usize) -> String {
    if ring == 0 { "The outer loop".to_owned() } else { format!("Courtyard {ring}") }
}

fn repeated(reader: &mut Reader<'_>, plan: &Plan, at: CornerRef) {
    let count = plan.rings.get(at.ring).map_or(0, |ring| ring.corners.len());
    // The corner before the first is the last: the loop was closed by hand.
    let (at, what, remedy) = if at.corner == 0 {
        let last = CornerRef { ring: at.ring, corner: count.saturating_sub(1) };
        (last, "is the same place as the first", "Leave it out: the last corner joins the first by itself")
    } else {
        (at, "is the same place as the one before it", "Leave it out, or correct it")
    };
    reader.fault(
        &plan.span(at),
        "plan-repeated-corner",
        format!("{} {what}", corner_words(at)),
        "A wall of no length would start there, and every letter after it would be another",
        remedy,
    );
}

fn wrong_way_round(reader: &mut Reader<'_>, plan: &Plan, at: usize) {
    let (which, way) =
        if at == 0 { ("the outer plates".to_owned(), "anticlockwise") } else { (Plan::ring_words(at), "clockwise") };
    let reversed = plan.rings.get(at).map_or_else(String::new, |ring| reversed(reader, ring));
    let key = if at == 0 { "corners = " } else { "this courtyard as " };
    reader.fault(
        &plan.ring_span(at),
        "plan-wrong-way-round",
        format!("The corners of {which} run the wrong way round"),
        format!("They run {way} seen from above, which tells inside from outside; the letters of walls follow them"),
        format!(
            "Reverse their order (wall {} stays where it is): {key}{reversed}",
            plan.letter(CornerRef { ring: at, corner: 0 })
        ),
    );
}

/// The corners the other way round, as written in the file, so that the first
/// wall stays the first.
fn reversed(reader: &Reader<'_>, ring: &Ring) -> String {
    let corners = ring.corners.iter();
    let written: Vec<String> = corners
        .map(|corner| {
            let text = reader.quote(&corner.span);
            match corner.at {
                // A comment inside a corner would swallow what follows it.
                Some([x, y]) if text.contains(['\n', '#']) => format!("[{x}, {y}]"),
                _ => text.to_owned(),
            }
        })
        .collect();
    let (front, back) = written.split_at(written.len().min(2));
    let order: Vec<&str> = front.iter().rev().chain(back.iter().rev()).map(String::as_str).collect();
    format!("[{}]", order.join(", "))
}
