//! Names and sentences for walls, corners and readings.

use super::touch::Part;
use geometry::survey::{Measure, SurveyFault};
use job::wall_letter;
use job::written::{Lengths, degrees};

/// A survey fault in words.
pub(super) struct Fault {
    /// Short stable name.
    pub(super) code: &'static str,
    /// What is wrong and what to do, sentences.
    pub(super) words: String,
    /// Where, in words.
    pub(super) place: String,
    /// What to do next, a sentence.
    pub(super) next: String,
    /// The wall to measure again.
    pub(super) part: Option<Part>,
    /// The corners whose distance is to be measured.
    pub(super) diagonal: Option<(usize, usize)>,
}

/// A wall by its letter.
pub(super) fn wall(number: usize) -> String {
    format!("wall {}", wall_letter(number))
}

/// Walls by their letters.
pub(super) fn walls(numbers: &[usize]) -> String {
    match numbers {
        [one] => wall(*one),
        _ => format!("walls {}", listed(&numbers.iter().map(|k| wall_letter(*k)).collect::<Vec<_>>())),
    }
}

/// A diagonal by its corners.
pub(super) fn diagonal(from: usize, to: usize) -> String {
    format!("the diagonal from corner {} to corner {}", from.min(to) + 1, from.max(to) + 1)
}

/// What a reading is of.
pub(super) fn measure(what: Measure) -> String {
    match what {
        Measure::Side(side) => wall(side),
        Measure::Diagonal(from, to) => diagonal(from, to),
        Measure::Turn(corner) => format!("the angle at corner {}", corner + 1),
    }
}

/// An amount of a reading.
pub(super) fn amount(what: Measure, value: f64, lengths: Lengths) -> String {
    match what {
        Measure::Turn(_) => degrees(value.abs()),
        Measure::Side(_) | Measure::Diagonal(..) => lengths.write_with_unit(value.abs()),
    }
}

/// A list with `and` before the last.
pub(super) fn listed(all: &[String]) -> String {
    match all {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// Numbers of corners, counted from 1.
fn corners(numbers: &[usize]) -> String {
    match numbers {
        [] => "none".to_owned(),
        _ => listed(&numbers.iter().map(|corner| (corner + 1).to_string()).collect::<Vec<_>>()),
    }
}

/// A survey fault in words, corners by their numbers.
pub(super) fn fault(fault: &SurveyFault, lengths: Lengths) -> Fault {
    let write = |mm: f64| lengths.write_with_unit(mm);
    let of = |code, words: String, place: String, next: String| Fault {
        code,
        words,
        place,
        next,
        part: None,
        diagonal: None,
    };
    match fault {
        SurveyFault::SideTooLong { side, length, rest } => Fault {
            part: Some(Part::wall(*side)),
            ..of(
                "cannot-close",
                format!(
                    "Wall {} is {}, and all the others together only {}",
                    wall_letter(*side),
                    write(*length),
                    write(*rest)
                ),
                wall(*side),
                format!("Measure {} again, and look at its unit.", wall(*side)),
            )
        },
        SurveyFault::DiagonalTooLong { from, to, length, round } => Fault {
            diagonal: Some((*from, *to)),
            ..of(
                "cannot-close",
                format!(
                    "Corners {} and {} are {} apart by the tape, but the walls from one to the other only {} long",
                    from + 1,
                    to + 1,
                    write(*length),
                    write(*round)
                ),
                diagonal(*from, *to),
                format!("Measure {} again, and the walls between its ends.", diagonal(*from, *to)),
            )
        },
        SurveyFault::NoTriangle { corners: [p, q, r], lengths: sides } => {
            let pairs = [(*p, *q), (*q, *r), (*r, *p)];
            let each: Vec<String> =
                pairs.iter().zip(sides).map(|((a, b), mm)| format!("{} to {} {}", a + 1, b + 1, write(*mm))).collect();
            of(
                "cannot-close",
                format!("Corners {} make no triangle: {}", corners(&[*p, *q, *r]), listed(&each)),
                format!("corners {}", corners(&[*p, *q, *r])),
                format!("Measure again between corners {}.", corners(&[*p, *q, *r])),
            )
        }
        SurveyFault::TooWeak { from, to, within } => Fault {
            diagonal: Some((*from, *to)),
            ..of(
                "too-weak",
                format!(
                    "The readings leave corners {} and {} open to each other by {} either way",
                    from + 1,
                    to + 1,
                    write(*within)
                ),
                diagonal(*from, *to),
                format!("Measure {}: it is known least.", diagonal(*from, *to)),
            )
        },
        SurveyFault::Ambiguous { next: (from, to), lengths: [one, other], .. } => Fault {
            diagonal: Some((*from, *to)),
            ..of(
                "two-plans",
                "Two plans fit the readings, each other's mirror at a corner".to_owned(),
                diagonal(*from, *to),
                format!(
                    "Measure {}: it reads {} in one plan and {} in the other.",
                    diagonal(*from, *to),
                    write(*one),
                    write(*other)
                ),
            )
        },
        SurveyFault::Crossing { first, second } => Fault {
            part: Some(Part::wall(*first)),
            ..of(
                "walls-cross",
                format!(
                    "Walls {} and {} cross in every plan that fits the readings",
                    wall_letter(*first),
                    wall_letter(*second)
                ),
                walls(&[*first, *second]),
                format!("Measure {} again, and the diagonals at their ends.", walls(&[*first, *second])),
            )
        },
        SurveyFault::InwardDisagrees | SurveyFault::TooManyPlacings | SurveyFault::WrongWayRound => of(
            "not-as-drawn",
            "The readings give no plan of the form that is drawn".to_owned(),
            "the diagonals".to_owned(),
            "Look through the diagonals: their corners, and their lengths.".to_owned(),
        ),
        other => of(
            "no-plan",
            super::reading::sentence(&other.to_string()),
            String::new(),
            "Look through the readings.".to_owned(),
        ),
    }
}
