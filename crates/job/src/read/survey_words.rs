//! Puts faults of a survey into words, with corners by their letters.

use super::reader::Reader;
use super::survey::Places;
use crate::letters::wall_letter;
use core::ops::Range;
use geometry::survey::{Measure, SurveyFault};

/// Reports a fault of the survey at its place in the file.
pub(super) fn report(reader: &mut Reader<'_>, places: &Places, count: usize, fault: &SurveyFault) {
    let Words { span, code, what, why, remedy } = words(places, count, fault);
    reader.fault(span, code, what, why, remedy);
}

struct Words<'p> {
    span: &'p Range<usize>,
    code: &'static str,
    what: String,
    why: &'static str,
    remedy: String,
}

fn words<'p>(places: &'p Places, count: usize, fault: &SurveyFault) -> Words<'p> {
    match fault {
        SurveyFault::SideTooLong { side, length, rest } => Words {
            span: places.of(Measure::Side(*side)),
            code: "survey-cannot-close",
            what: format!(
                "Wall {} is {length:.0} mm long, and all the others together only {rest:.0} mm",
                wall_letter(*side)
            ),
            why: "The others cannot reach from one end of it to the other",
            remedy: "Measure it again, check its unit, and that every wall is in the list once".to_owned(),
        },
        SurveyFault::DiagonalTooLong { from, to, length, round } => Words {
            span: places.of(Measure::Diagonal(*from, *to)),
            code: "survey-cannot-close",
            what: format!(
                "Corners {} are {length:.0} mm apart, but the walls from one to the other only {round:.0} mm long",
                name(*from, *to)
            ),
            why: "The straight way is the shortest",
            remedy: format!("Measure {} again, and the walls between them", name(*from, *to)),
        },
        SurveyFault::NoTriangle { corners: [p, q, r], lengths } => {
            let pairs = [(*p, *q), (*q, *r), (*r, *p)];
            let each: Vec<String> =
                pairs.iter().zip(lengths).map(|((a, b), length)| format!("{} {length:.0} mm", name(*a, *b))).collect();
            let measured = pairs.iter().find_map(|(a, b)| places.distance(*a, *b, count));
            Words {
                span: measured.unwrap_or(&places.sides),
                code: "survey-cannot-close",
                what: format!(
                    "Corners {}, {} and {} make no triangle: {}",
                    wall_letter(*p),
                    wall_letter(*q),
                    wall_letter(*r),
                    each.join(", ")
                ),
                why: "One of these is longer than the other two together, by more than the tape may be out",
                remedy: "Measure them again; lengths that were not measured here follow from the others round them"
                    .to_owned(),
            }
        }
        SurveyFault::UnderMeasured { next } => {
            let names: Vec<String> = next.iter().map(|(a, b)| name(*a, *b)).collect();
            Words {
                span: &places.sides,
                code: "survey-loose",
                what: format!("The measurements leave the plan loose: it lacks {}", counted(next.len())),
                why: "Walls alone fold like a frame on hinges; every corner past the third takes one more measurement",
                remedy: format!("Measure {} and write them in plan.diagonals", names.join(", then ")),
            }
        }
        SurveyFault::TooWeak { from, to, within } => Words {
            span: &places.sides,
            code: "survey-weak",
            what: format!(
                "The measurements leave corners {} open to one another by {within:.0} mm either way",
                name(*from, *to)
            ),
            why: "What the tape may be out by moves a corner too far to cut timber by",
            remedy: format!("Measure {} and write it in plan.diagonals", name(*from, *to)),
        },
        SurveyFault::Ambiguous { inward, next, lengths: [one, other] } => {
            let ways: Vec<String> = inward.iter().map(|corners| list(corners)).collect();
            Words {
                span: &places.sides,
                code: "survey-two-plans",
                what: "Two plans fit the measurements, each other's mirror at a corner".to_owned(),
                why: "A diagonal alone does not tell on which side of it a corner lies",
                remedy: format!(
                    "Say which corners point into the building: {}. Or measure {}: it is {one:.0} mm in one and \
                     {other:.0} mm in the other",
                    ways.iter().map(|way| format!("inward = {way}")).collect::<Vec<_>>().join(" or "),
                    name(next.0, next.1)
                ),
            }
        }
        SurveyFault::TooManyPlacings => Words {
            span: &places.sides,
            code: "survey-two-plans",
            what: "Very many plans fit the measurements, mirrored at one corner or another".to_owned(),
            why: "A diagonal alone does not tell on which side of it a corner lies",
            remedy: "Say which corners point into the building, such as inward = [\"D\"], or measure more diagonals \
                     or turns"
                .to_owned(),
        },
        SurveyFault::InwardDisagrees => Words {
            span: &places.inward,
            code: "survey-two-plans",
            what: "No plan that fits the measurements has just these corners pointing into the building".to_owned(),
            why: "The measurements and this list speak of different plans",
            remedy: "Check the letters, that walls run anticlockwise, and the diagonals at these corners".to_owned(),
        },
        SurveyFault::Crossing { first, second } => Words {
            span: places.of(Measure::Side(*first)),
            code: "survey-walls-cross",
            what: format!("Walls {} and {} cross in every plan that fits", wall_letter(*first), wall_letter(*second)),
            why: "Walls may meet only at the corner they share",
            remedy: "Check the walls and diagonals at their ends, and that walls are in order".to_owned(),
        },
        SurveyFault::WrongWayRound => Words {
            span: &places.sides,
            code: "survey-cannot-close",
            what: "The measured turns close only clockwise".to_owned(),
            why: "Walls run anticlockwise seen from above, and turns are angles inside the building",
            remedy: "Write the walls the other way round, or 360 less each turn".to_owned(),
        },
        other => Words {
            span: &places.sides,
            code: "survey-size",
            what: format!("No plan can be made of the measurements: {other}"),
            why: "The roof is made from the plan",
            remedy: "Check what was measured".to_owned(),
        },
    }
}

/// A distance by its corners, as the file writes it.
fn name(from: usize, to: usize) -> String {
    let (from, to) = (from.min(to), from.max(to));
    format!("{}-{}", wall_letter(from), wall_letter(to))
}

fn list(corners: &[usize]) -> String {
    let letters: Vec<String> = corners.iter().map(|k| format!("\"{}\"", wall_letter(*k))).collect();
    format!("[{}]", letters.join(", "))
}

fn counted(number: usize) -> String {
    if number == 1 { "one measurement".to_owned() } else { format!("{number} measurements") }
}
