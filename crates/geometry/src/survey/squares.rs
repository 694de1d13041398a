//! Least squares: the corners that make the sum of weighted squares of the
//! residuals least (Gauss-Newton, damped after Levenberg and Marquardt).

use super::observation::{Change, Observation, distance_changes};
use crate::DVec2;
use nalgebra::linalg::Cholesky;
use nalgebra::{DMatrix, DVector};

/// Most rounds; from a plan that was put together from the readings it takes
/// less than ten.
const MOST_ROUNDS: usize = 200;

/// Damping to start with, as a part of the diagonal: nearly none, for the
/// start is good.
const FIRST_DAMPING: f64 = 1e-3;

/// Damping is changed by this factor.
const DAMPING_FACTOR: f64 = 10.0;

/// Less damping than this changes nothing in double precision.
const LEAST_DAMPING: f64 = 1e-12;

/// With more damping than this a step moves nothing, so there is no way down.
const MOST_DAMPING: f64 = 1e12;

/// Corners that move less than this in a round stay where they are, mm: far
/// below the place they are given to.
const STILL: f64 = 1e-7;

/// A round that takes less than this part off the sum of squares has reached
/// the bottom, within the rounding of the sum.
const NO_GAIN: f64 = 1e-14;

/// Part of the mean diagonal that makes equations solvable that leave the
/// plan loose; its loose distances then come out with a deviation of a
/// hundred thousand times that of a reading.
const LOOSE: f64 = 1e-10;

/// A plan fitted to readings.
pub(super) struct Fit {
    /// Its corners; the first at the origin, the second on +x.
    pub corners: Vec<DVec2>,
    /// Sum of squared residuals, each in standard deviations.
    pub squares: f64,
    /// Whether a least sum was reached.
    pub settled: bool,
    /// Whether the readings fix the plan.
    pub fixed: bool,
    /// Of the unknowns, mm².
    covariance: DMatrix<f64>,
}

/// The unknown of a coordinate: the first corner is fixed, the second moves
/// along x only.
fn unknown(corner: usize, axis: usize) -> Option<usize> {
    match (corner, axis) {
        (0, _) | (1, 1) => None,
        (1, _) => Some(0),
        _ => Some(2 * corner - 3 + axis),
    }
}

/// The row of a reading in the equations.
pub(super) fn row(changes: &[Change], deviation: f64) -> Vec<(usize, f64)> {
    changes
        .iter()
        .flat_map(|(corner, change)| [(*corner, 0, change.x), (*corner, 1, change.y)])
        .filter_map(|(corner, axis, change)| Some((unknown(corner, axis)?, change / deviation)))
        .collect()
}

/// All pairs of corners.
pub(super) fn pairs(count: usize) -> impl Iterator<Item = (usize, usize)> {
    (0..count).flat_map(move |i| (i + 1..count).map(move |j| (i, j)))
}

fn sum_of_squares(observations: &[Observation], plan: &[DVec2]) -> f64 {
    let weighted = observations.iter().map(|o| o.residual(plan) / o.deviation);
    weighted.map(|r| r * r).sum()
}

/// Fits a plan to readings, from one that is near.
pub(super) fn fit(observations: &[Observation], start: &[DVec2]) -> Fit {
    let mut plan = aligned(start);
    let mut squares = sum_of_squares(observations, &plan);
    let mut damping = FIRST_DAMPING;
    let mut settled = false;
    for _ in 0..MOST_ROUNDS {
        let (normal, slope) = equations(observations, &plan);
        let full = damped(&normal, 0.0).map(|factor| factor.solve(&slope).amax());
        if full.is_some_and(|step| step < STILL) {
            settled = true;
            break;
        }
        let before = squares;
        while damping <= MOST_DAMPING {
            let trial = damped(&normal, damping).map(|factor| stepped(&plan, &factor.solve(&-&slope)));
            if let Some(better) = trial.filter(|trial| sum_of_squares(observations, trial) <= squares) {
                squares = sum_of_squares(observations, &better);
                plan = better;
                damping = (damping / DAMPING_FACTOR).max(LEAST_DAMPING);
                break;
            }
            damping *= DAMPING_FACTOR;
        }
        if before - squares <= NO_GAIN * before {
            settled = true;
            break;
        }
    }
    // From a poor start the second corner may come to lie the other way: half a turn brings it back.
    if plan.get(1).is_some_and(|second| second.x < 0.0) {
        plan.iter_mut().for_each(|p| *p = -*p);
    }
    let (normal, _) = equations(observations, &plan);
    let exact = Cholesky::new(normal.clone());
    let fixed = exact.is_some();
    let mean = normal.trace() / normal.nrows() as f64;
    let eased = || Cholesky::new(normal.clone() + DMatrix::identity(normal.nrows(), normal.nrows()) * (mean * LOOSE));
    let covariance =
        exact.or_else(eased).map_or_else(|| DMatrix::zeros(normal.nrows(), normal.nrows()), |f| f.inverse());
    Fit { corners: plan, squares, settled, fixed, covariance }
}

impl Fit {
    /// The variance of a row of the equations.
    pub fn variance(&self, row: &[(usize, f64)]) -> f64 {
        row.iter().map(|(i, a)| a * row.iter().map(|(j, b)| self.covariance[(*i, *j)] * b).sum::<f64>()).sum()
    }

    /// The standard deviation of the distance of two corners, mm.
    pub fn deviation(&self, from: usize, to: usize) -> f64 {
        self.variance(&row(&distance_changes(&self.corners, from, to), 1.0)).max(0.0).sqrt()
    }
}

fn aligned(plan: &[DVec2]) -> Vec<DVec2> {
    let (Some(first), Some(second)) = (plan.first(), plan.get(1)) else { return plan.to_vec() };
    let along = (*second - *first).normalize_or(DVec2::X);
    plan.iter().map(|p| DVec2::new(along.dot(*p - *first), along.perp_dot(*p - *first))).collect()
}

fn stepped(plan: &[DVec2], step: &DVector<f64>) -> Vec<DVec2> {
    let part = |corner, axis| unknown(corner, axis).map_or(0.0, |k| step[k]);
    plan.iter().enumerate().map(|(k, p)| *p + DVec2::new(part(k, 0), part(k, 1))).collect()
}

/// Normal matrix and slope of the sum of squares at a plan.
fn equations(observations: &[Observation], plan: &[DVec2]) -> (DMatrix<f64>, DVector<f64>) {
    let count = 2 * plan.len() - 3;
    let (mut normal, mut slope) = (DMatrix::zeros(count, count), DVector::zeros(count));
    for o in observations {
        let residual = o.residual(plan) / o.deviation;
        let row = row(&o.changes(plan), o.deviation);
        for (i, a) in &row {
            slope[*i] += a * residual;
            for (j, b) in &row {
                normal[(*i, *j)] += a * b;
            }
        }
    }
    (normal, slope)
}

fn damped(normal: &DMatrix<f64>, damping: f64) -> Option<Cholesky<f64, nalgebra::Dyn>> {
    let mut damped = normal.clone();
    for k in 0..damped.nrows() {
        damped[(k, k)] *= 1.0 + damping;
    }
    Cholesky::new(damped)
}
