//! From a job to a sketch of its plan, and from a sketch back into the job.

use super::course::unit;
use super::plan::Plan;
use super::text::{keys, number};
use super::tidy::{heading, tidy};
use super::too_many_walls;
use crate::refusal::{FaultLine, Refusal};
use crate::views::{Diagonal, Sketch, SketchWall};
use geometry::survey::{MOST_CORNERS, TAPE_TOLERANCE};
use geometry::{Angle, DVec2};
use job::Job;
use job::edit::EditError;

/// Directions this near to square are square, degrees: corners of a file are
/// given to a thousandth of a millimetre.
const ROUNDED_SQUARE: f64 = 1e-4;

/// A plan lies as a survey lays it when corner 1 and the direction of wall A
/// differ by less, mm (a direction: in a metre).
const SAME_PLACE: f64 = 0.01;

/// The plan of a job as a sketch, to measure it anew: as it was measured, or
/// with the lengths between its corners.
///
/// # Errors
/// When the plan has more walls than a survey takes.
pub fn of_job(job: &Job) -> Result<Sketch, Refusal> {
    let ring: Vec<DVec2> = job.plates().first().into_iter().flatten().map(|at| DVec2::from_array(*at)).collect();
    if ring.len() > MOST_CORNERS {
        return Err(too_many_walls());
    }
    let measured = job.survey.as_ref().map(|survey| &survey.measured);
    let next = ring.iter().cycle().skip(1);
    let walls = ring.iter().zip(next).enumerate().map(|(k, (from, to))| {
        let way = *to - *from;
        let drawn_mm = way.length();
        let turn = measured.and_then(|m| m.turns.iter().find(|turn| turn.corner == k));
        SketchWall {
            heading_deg: rounded(Angle::from_rise_run(way.y, way.x).to_deg()),
            known: true,
            drawn_mm,
            tape: number(measured.and_then(|m| m.sides.get(k)).copied().unwrap_or(drawn_mm)),
            turn: turn.map(|turn| number(turn.inside_deg)).unwrap_or_default(),
        }
    });
    let diagonals = measured.into_iter().flat_map(|m| &m.diagonals).filter_map(|line| {
        Some(Diagonal {
            from: u32::try_from(line.from).ok()?,
            to: u32::try_from(line.to).ok()?,
            tape: number(line.length),
        })
    });
    tidy(Sketch {
        title: job.title.clone(),
        start: ring.first().map(DVec2::to_array),
        walls: walls.collect(),
        diagonals: diagonals.collect(),
        closed: true,
        pitch: number(job.pitch_deg),
        tolerance_mm: measured.map(|m| m.tolerance).filter(|mm| *mm != TAPE_TOLERANCE),
    })
}

fn rounded(deg: f64) -> f64 {
    let square = (deg / 45.0).round() * 45.0;
    heading(if (deg - square).abs() <= ROUNDED_SQUARE { square } else { deg })
}

/// The text of a job with the plan of a sketch in place of its own. All else
/// stays as it is written.
///
/// Corner 1 stays where it was. A survey has corner A at the origin and wall A
/// running east; in a job that lies otherwise, measured corners are written in
/// place of the measurements, for all else in the file that has a place on the
/// plan would slip.
///
/// # Errors
/// When the job can't be read, the plan is not whole, or the rest of the job
/// does not fit it.
pub fn into_job(text: &str, sketch: &Sketch) -> Result<String, Refusal> {
    let job = job::read(text).map_err(|faults| refused("faults", "The open job can't be read", &faults))?;
    let sketch = tidy(sketch.clone())?;
    let plan = Plan::of(&sketch);
    let corner = job.plates().first().and_then(|ring| ring.first()).map_or(DVec2::ZERO, |at| DVec2::from_array(*at));
    let along = sketch.walls.first().map_or(DVec2::X, |wall| unit(wall.heading_deg));
    let as_surveyed = corner.length() <= SAME_PLACE && (along - DVec2::X).length() * 1000.0 <= SAME_PLACE;
    let laid = (!as_surveyed).then_some(corner);
    let keys = keys(&sketch, &plan, laid).ok_or_else(|| {
        Refusal::new(
            "plan-not-whole",
            "The plan is not measured yet so far that a roof can stand on it",
            "Do what is asked for above the plan first",
        )
    })?;
    let keys: Vec<(String, Option<String>)> =
        keys.into_iter().map(|(key, value)| (format!("plan.{key}"), value)).collect();
    let changes = keys.iter().map(|(path, value)| (path.as_str(), value.as_deref()));
    job::edit::set_all(text, changes).map_err(|error| match &error {
        EditError::Faults(faults) | EditError::NotAJob(faults) => {
            refused("plan-unfit", "The rest of the job does not fit the new plan", faults)
        }
        other => Refusal::new("plan-unfit", super::reading::sentence(&other.to_string()), "The job stays as it was"),
    })
}

fn refused(code: &str, what: &str, faults: &job::Faults) -> Refusal {
    let line = |fault: &job::Fault| FaultLine {
        line: u32::try_from(fault.line).unwrap_or(u32::MAX),
        column: u32::try_from(fault.column).unwrap_or(u32::MAX),
        what: fault.what.clone(),
        why: fault.why.clone(),
        remedy: fault.remedy.clone(),
    };
    let first = faults.iter().next();
    let mut refusal = Refusal::new(
        code,
        first.map_or_else(|| what.to_owned(), |fault| format!("{what}: {}", fault.what)),
        first.map_or_else(String::new, |fault| fault.remedy.clone()),
    );
    refusal.faults = faults.iter().map(line).collect();
    refusal
}
