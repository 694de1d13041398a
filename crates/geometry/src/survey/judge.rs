//! What is left of each reading, and which of them disagrees with the others.
//!
//! Statistics of adjustment as in geodetic practice (W. Baarda, *A testing
//! procedure for use in geodetic networks*, 1968; from memory): the redundancy
//! of a reading is the part of its error that shows in its residual, and its
//! residual over the standard deviation of that residual tells whether it is
//! out of line.

use super::Measure;
use super::observation::Observation;
use super::squares::{Fit, row};
use crate::Angle;

/// A standardised residual past this is a slip, not chance: a right reading
/// comes out past it once in a thousand (Baarda's usual level; from memory).
pub const SLIP: f64 = 3.29;

/// Readings of which less than this part shows are not judged: what is seen
/// of them would be multiplied by more than twenty.
const LEAST_REDUNDANCY: f64 = 0.05;

/// Readings whose standardised residual comes so near to the greatest cannot
/// be told from it.
const RIVAL: f64 = 0.95;

/// Standardised residuals that are equal but for rounding, as a part.
const EQUAL: f64 = 1.0 - 1e-6;

/// What became of a reading. Lengths mm, angles degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// What it is of.
    pub what: Measure,
    /// What was read.
    pub measured: f64,
    /// What the plan reads.
    pub adjusted: f64,
    /// Adjusted less measured: its share of what did not close.
    pub residual: f64,
    /// The part of an error in it that shows in its residual: 0 if nothing
    /// else checks it, near 1 if all others do.
    pub redundancy: f64,
    /// Its residual in standard deviations of residuals there; `None` where
    /// too little of it is checked.
    pub standardised: Option<f64>,
}

/// The reading that disagrees most.
#[derive(Clone, Debug, PartialEq)]
pub struct Worst {
    /// Its number in [`super::Adjusted::readings`].
    pub reading: usize,
    /// How much more it reads than all the others say, mm or degrees.
    pub off: f64,
    /// Whether that is past chance ([`SLIP`]).
    pub slip: bool,
    /// Readings that could be the wrong one just as well.
    pub rivals: Vec<usize>,
}

pub(super) struct Judged {
    pub readings: Vec<Reading>,
    pub closing_error: f64,
    pub worst: Option<Worst>,
}

pub(super) fn judge(observations: &[Observation], fit: &Fit, freedom: usize) -> Judged {
    let readings: Vec<Reading> = observations.iter().map(|o| reading(o, fit, freedom)).collect();
    let worst = if freedom == 0 { None } else { worst(&readings) };
    let closing_error = worst.as_ref().map_or(0.0, |worst| off_in_mm(worst, &readings));
    Judged { readings, closing_error, worst }
}

fn reading(o: &Observation, fit: &Fit, freedom: usize) -> Reading {
    let left = o.residual(&fit.corners);
    let known = fit.variance(&row(&o.changes(&fit.corners), o.deviation));
    let redundancy = if freedom == 0 { 0.0 } else { (1.0 - known).clamp(0.0, 1.0) };
    let shown = |value: f64| match o.what {
        Measure::Turn(_) => Angle::rad(value).to_deg(),
        Measure::Side(_) | Measure::Diagonal(..) => value,
    };
    Reading {
        what: o.what,
        measured: shown(o.value),
        adjusted: shown(o.value + left),
        residual: shown(left),
        redundancy,
        standardised: (redundancy >= LEAST_REDUNDANCY).then(|| left / o.deviation / redundancy.sqrt()),
    }
}

fn worst(readings: &[Reading]) -> Option<Worst> {
    let size = |k: usize| readings.get(k).and_then(|r| r.standardised).map(f64::abs);
    let judged: Vec<(usize, f64)> = (0..readings.len()).filter_map(|k| Some((k, size(k)?))).collect();
    let most = judged.iter().map(|(_, size)| *size).fold(0.0, f64::max);
    // With one free reading all are equal: then the best checked one stands for them.
    let (number, reading) = judged
        .iter()
        .filter(|(_, size)| *size >= most * EQUAL)
        .filter_map(|(k, _)| Some((*k, readings.get(*k)?)))
        .max_by(|a, b| a.1.redundancy.total_cmp(&b.1.redundancy))?;
    let rivals = judged.iter().filter(|(k, size)| *k != number && *size >= most * RIVAL).map(|(k, _)| *k).collect();
    Some(Worst { reading: number, off: -reading.residual / reading.redundancy, slip: most > SLIP, rivals })
}

/// How far the worst reading is off, mm; an angle at the end of its shorter side.
fn off_in_mm(worst: &Worst, readings: &[Reading]) -> f64 {
    let Some(reading) = readings.get(worst.reading) else { return 0.0 };
    let Measure::Turn(corner) = reading.what else { return worst.off.abs() };
    let sides: Vec<f64> =
        readings.iter().take_while(|r| matches!(r.what, Measure::Side(_))).map(|r| r.adjusted).collect();
    let before = (corner + sides.len().max(1) - 1) % sides.len().max(1);
    let arm = sides.get(corner).copied().unwrap_or(0.0).min(sides.get(before).copied().unwrap_or(0.0));
    Angle::deg(worst.off.abs()).to_rad() * arm
}
