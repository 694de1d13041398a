//! What can be said of a survey before any plan is made.

use super::{Diagonal, MOST_CORNERS, MOST_READINGS, Measure, Survey, SurveyFault};
use crate::plan::FARTHEST;

/// Checks numbers, and lengths against the walls round them.
pub(super) fn check(survey: &Survey) -> Result<(), SurveyFault> {
    let count = survey.sides.len();
    if !(3..=MOST_CORNERS).contains(&count) {
        return Err(SurveyFault::Sides { sides: count, most: MOST_CORNERS });
    }
    let readings = count + survey.diagonals.len() + survey.turns.len();
    if readings > MOST_READINGS {
        return Err(SurveyFault::Readings { readings, most: MOST_READINGS });
    }
    let positive = |x: f64| x > 0.0 && x.is_finite();
    if !positive(survey.tolerance) || !positive(survey.turn_tolerance_deg) {
        return Err(SurveyFault::Tolerance);
    }
    let is_length = |x: f64| x > 0.0 && x <= FARTHEST;
    if let Some(k) = survey.sides.iter().position(|s| !is_length(*s)) {
        return Err(SurveyFault::NotAReading(Measure::Side(k)));
    }
    let between = |d: &Diagonal| d.from < count && d.to < count && d.from != d.to;
    if let Some(d) = survey.diagonals.iter().find(|d| !is_length(d.length) || !between(d)) {
        return Err(SurveyFault::NotAReading(Measure::Diagonal(d.from, d.to)));
    }
    if let Some(t) = survey.turns.iter().find(|t| t.corner >= count || !(t.inside_deg > 0.0 && t.inside_deg < 360.0)) {
        return Err(SurveyFault::NotAReading(Measure::Turn(t.corner)));
    }
    long_sides(survey)?;
    survey.diagonals.iter().try_for_each(|d| long_diagonal(survey, d))
}

fn long_sides(survey: &Survey) -> Result<(), SurveyFault> {
    let all: f64 = survey.sides.iter().sum();
    for (side, length) in survey.sides.iter().enumerate() {
        let rest = all - length;
        if *length >= rest {
            return Err(SurveyFault::SideTooLong { side, length: *length, rest });
        }
    }
    Ok(())
}

/// A diagonal may come out longer than a straight run of walls between its
/// corners by the tolerance of every reading in the comparison.
fn long_diagonal(survey: &Survey, diagonal: &Diagonal) -> Result<(), SurveyFault> {
    let count = survey.sides.len();
    let way = |from: usize, to: usize| {
        let steps = (to + count - from) % count;
        let length: f64 = (0..steps).map(|k| survey.sides[(from + k) % count]).sum();
        (length, length + (steps + 1) as f64 * survey.tolerance)
    };
    let (there, back) = (way(diagonal.from, diagonal.to), way(diagonal.to, diagonal.from));
    let (round, most) = if there.1 < back.1 { there } else { back };
    if diagonal.length > most {
        let Diagonal { from, to, length } = *diagonal;
        return Err(SurveyFault::DiagonalTooLong { from, to, length, round });
    }
    Ok(())
}
