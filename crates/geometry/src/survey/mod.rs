//! A plan from what was measured on site: sides, diagonals and inside angles.
//!
//! Corners go round anticlockwise and by number from 0; side `k` runs from
//! corner `k` to the next. Corner 0 comes to lie at the origin and side 0 runs
//! along +x. All readings are brought into one plan by least squares, each
//! weighted by its tolerance; what was left of each, and which of them
//! disagrees with the others, is said beside it.
//!
//! [`adjust`] finds a first plan by putting triangles together
//! (`assembly`, `placing`, `search`), fits it (`squares`) and judges the
//! readings (`judge`). Nothing is guessed: a plan that the readings do not fix
//! is refused with the reading to take next.
//!
//! Not guaranteed: plans whose readings fix them only all together, without
//! three bodies that close to a triangle anywhere, are asked for one more
//! diagonal although a solver of equations would find them.

mod assembly;
mod early;
mod fault;
mod judge;
mod levels;
mod needed;
mod observation;
mod placing;
mod search;
mod squares;
mod triangle;

pub use fault::SurveyFault;
pub use judge::{Reading, SLIP, Worst};
pub use levels::{Level, Levels, Tilt, levels};

use crate::DVec2;
use assembly::Assembly;
use squares::Fit;

/// Most corners of a survey: corners are kept as bits of one word, and no
/// plan with more is measured with a tape.
pub const MOST_CORNERS: usize = 60;

/// Most readings of a survey: a few for each corner; more only makes a phone
/// wait.
pub const MOST_READINGS: usize = 500;

/// Tolerance of a tape that says nothing of its own, mm (common practice: what
/// two people agree on over a house, with sag and pull).
pub const TAPE_TOLERANCE: f64 = 5.0;

/// Tolerance of an inside angle that says nothing of its own, degrees (common
/// practice: a bevel set in a corner and read on a protractor).
pub const TURN_TOLERANCE_DEG: f64 = 0.5;

/// A tolerance holds for 95 readings of 100, which for errors of the usual
/// spread is two standard deviations.
const DEVIATIONS_IN_TOLERANCE: f64 = 2.0;

/// A plan is refused when some distance in it is open by more than this many
/// tolerances of the tape: then a slip of one reading moves a corner by inches.
const MOST_OPEN: f64 = 10.0;

/// Another placing is kept beside the best one while its sum of squares is
/// not this much greater, in squared standard deviations of the readings as
/// they came out: five deviations are far past chance, so that a placing is
/// only put aside when the readings speak against it.
const KEPT_SQUARES: f64 = 25.0;

/// Two placings are one when no corner differs by more, mm: they were fitted
/// to the same least sum of squares.
const SAME_PLACE: f64 = 1.0;

/// Corners are given to this, mm: a thousandth of what a tape reads.
const PLACE_STEP: f64 = 0.001;

/// What was measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Survey {
    /// Lengths of the sides in order, mm.
    pub sides: Vec<f64>,
    /// Distances between two corners, mm. A side may be measured again here.
    pub diagonals: Vec<Diagonal>,
    /// Inside angles that were measured.
    pub turns: Vec<Turn>,
    /// Tolerance of the tape, mm.
    pub tolerance: f64,
    /// Tolerance of the inside angles, degrees.
    pub turn_tolerance_deg: f64,
    /// Corners that point into the building, if that is known of all corners.
    pub inward: Option<Vec<usize>>,
}

/// A measured distance between two corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diagonal {
    /// One corner.
    pub from: usize,
    /// The other.
    pub to: usize,
    /// Their distance, mm.
    pub length: f64,
}

/// A measured inside angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// The corner.
    pub corner: usize,
    /// Its inside angle, degrees: 90 at a square corner, 270 at one that
    /// points into the building.
    pub inside_deg: f64,
}

/// What a reading is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// The side that starts at this corner.
    Side(usize),
    /// The distance of two corners.
    Diagonal(usize, usize),
    /// The inside angle at a corner.
    Turn(usize),
}

/// A plan that fits the readings best.
#[derive(Clone, Debug, PartialEq)]
pub struct Adjusted {
    /// Corners, anticlockwise, mm; the first at the origin, the second on +x.
    pub corners: Vec<DVec2>,
    /// Every reading: sides, then diagonals, then turns, each in its order.
    pub readings: Vec<Reading>,
    /// How many readings there are beyond those that just fix the plan.
    pub freedom: usize,
    /// By how much the reading that disagrees most differs from what all the
    /// others say, mm (a turn: at the end of its shorter side). 0 if nothing
    /// checks the readings.
    pub closing_error: f64,
    /// The reading that disagrees most, if there is anything to tell it by.
    pub worst: Option<Worst>,
    /// Corners that could point into the building for all that the readings
    /// say, and were taken to point outwards.
    pub taken_outward: Vec<usize>,
    /// The two corners whose distance is known least, and within how much, mm
    /// (95 times of 100).
    pub weakest: Weakest,
    /// For every corner, how well its place among the others is known: the
    /// usual standard deviation of its distances from them, mm.
    pub deviations: Vec<f64>,
}

/// The distance in a plan that is known least.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weakest {
    /// One corner.
    pub from: usize,
    /// The other.
    pub to: usize,
    /// Within how much it is known, mm (95 times of 100).
    pub within: f64,
}

/// Brings the readings into one plan.
///
/// ```
/// use geometry::survey::{Diagonal, Survey, adjust};
/// let survey = Survey {
///     sides: vec![4000.0, 3000.0, 4000.0, 3000.0],
///     diagonals: vec![Diagonal { from: 0, to: 2, length: 5000.0 }],
///     turns: vec![],
///     tolerance: 5.0,
///     turn_tolerance_deg: 0.5,
///     inward: None,
/// };
/// let plan = adjust(&survey)?;
/// assert!((plan.corners[2].x - 4000.0).abs() < 0.01 && (plan.corners[2].y - 3000.0).abs() < 0.01);
/// # Ok::<(), geometry::survey::SurveyFault>(())
/// ```
///
/// # Errors
/// When the readings do not close, do not fix the plan, fix it too weakly,
/// leave two plans open, or give walls that cross.
pub fn adjust(survey: &Survey) -> Result<Adjusted, SurveyFault> {
    early::check(survey)?;
    let observations = observation::all(survey);
    let assembly = Assembly::of(survey);
    if !assembly.is_whole() {
        return Err(needed::fault(assembly));
    }
    let found = search::placings(survey, &assembly)?;
    let mut fits: Vec<Fit> = Vec::new();
    let mut refused = None;
    for start in &found.placings {
        let fit = squares::fit(&observations, start);
        if let Some((first, second)) = search::walls_crossing(&fit.corners) {
            refused.get_or_insert(SurveyFault::Crossing { first, second });
        } else if search::area(&fit.corners) <= 0.0 {
            refused.get_or_insert(SurveyFault::WrongWayRound);
        } else if !fit.settled {
            refused = refused.or(weakest(&fit, 0.0).err());
        } else if !fits.iter().any(|other| same_place(other, &fit)) {
            fits.push(fit);
        }
    }
    if let (true, Some(fault)) = (fits.is_empty(), refused) {
        return Err(fault);
    }
    let freedom = (observations.len() + 3).saturating_sub(2 * survey.sides.len());
    let best = fits.iter().map(|fit| fit.squares).fold(f64::INFINITY, f64::min);
    let spread = (best / freedom.max(1) as f64).max(1.0);
    fits.retain(|fit| fit.squares - best <= KEPT_SQUARES * spread);
    let (fit, taken_outward) = choose(fits, found.complete, survey.inward.is_some())?;
    let weakest = weakest(&fit, survey.tolerance)?;
    let deviations = (0..fit.corners.len()).map(|corner| usual_deviation(&fit, corner)).collect();
    let corners: Vec<DVec2> = fit.corners.iter().map(|p| (*p / PLACE_STEP).round() * PLACE_STEP).collect();
    let judged = judge::judge(&observations, &fit, freedom);
    Ok(Adjusted {
        corners,
        readings: judged.readings,
        freedom,
        closing_error: judged.closing_error,
        worst: judged.worst,
        taken_outward,
        weakest,
        deviations,
    })
}

/// The usual standard deviation of the distances of one corner from all
/// others, mm: their root mean square.
fn usual_deviation(fit: &Fit, corner: usize) -> f64 {
    let others = (0..fit.corners.len()).filter(|other| *other != corner);
    let squares: f64 = others.map(|other| fit.deviation(corner, other)).map(|d| d * d).sum();
    (squares / (fit.corners.len() - 1).max(1) as f64).sqrt()
}

fn same_place(a: &Fit, b: &Fit) -> bool {
    a.corners.iter().zip(&b.corners).all(|(p, q)| p.distance(*q) < SAME_PLACE)
}

/// The one plan among those that fit, with the corners that were taken to
/// point outwards for want of a reading.
///
/// Of plans without inward corners there is one at most, so that it is taken
/// even where not all placings were followed, if it was asked for.
fn choose(fits: Vec<Fit>, complete: bool, told: bool) -> Result<(Fit, Vec<usize>), SurveyFault> {
    let inward: Vec<Vec<usize>> = fits.iter().map(|fit| search::inward_corners(&fit.corners)).collect();
    let convex = inward.iter().position(Vec::is_empty).filter(|_| complete || told);
    let alone = fits.len() == 1 && complete;
    let chosen = if alone { Some(0) } else { convex };
    let Some(chosen) = chosen else { return Err(ambiguous(&fits, inward)) };
    let mut open: Vec<usize> = inward.into_iter().flatten().collect();
    open.sort_unstable();
    open.dedup();
    let mut fits = fits;
    Ok((fits.swap_remove(chosen), if alone { Vec::new() } else { open }))
}

/// Says which two plans are left open, and the diagonal that tells them apart best.
fn ambiguous(fits: &[Fit], mut inward: Vec<Vec<usize>>) -> SurveyFault {
    let (Some(a), Some(b)) = (fits.first(), fits.get(1)) else {
        return SurveyFault::TooManyPlacings;
    };
    let mut next = (0, 0);
    let mut lengths = [0.0_f64; 2];
    for (i, j) in squares::pairs(a.corners.len()) {
        let both = [a, b].map(|fit| fit.corners[i].distance(fit.corners[j]));
        if (both[0] - both[1]).abs() > (lengths[0] - lengths[1]).abs() {
            (next, lengths) = ((i, j), both);
        }
    }
    inward.truncate(2);
    SurveyFault::Ambiguous { inward, next, lengths }
}

/// The distance that is known least.
///
/// # Errors
/// When it is not known well enough to cut timber by.
fn weakest(fit: &Fit, tolerance: f64) -> Result<Weakest, SurveyFault> {
    let mut weakest = Weakest { from: 0, to: 1, within: 0.0 };
    for (from, to) in squares::pairs(fit.corners.len()) {
        let within = DEVIATIONS_IN_TOLERANCE * fit.deviation(from, to);
        if within > weakest.within {
            weakest = Weakest { from, to, within };
        }
    }
    if fit.fixed && weakest.within <= MOST_OPEN * tolerance {
        return Ok(weakest);
    }
    Err(SurveyFault::TooWeak { from: weakest.from, to: weakest.to, within: weakest.within })
}
