//! Filling a convex piece of a lap with a grid of fasteners.

use super::sides::{Side, unit};
use super::{Fit, Limit};
use crate::eurocode::joints::spacing::Spacings;
use geometry::Angle;

/// Rounding that does not keep a fastener out, mm.
const HAIR: f64 = 1e-6;
/// Stretches of the grid along and between the rows that are tried: the least that a timber at an angle allows may ask for
/// more of one or of the other.
const STRETCHES: [f64; 5] = [1.0, 1.25, 1.5, 2.0, 3.0];
/// Neighbours this many steps away are looked at for being too near.
const NEIGHBOURS: i32 = 3;
/// Half of the square that holds any lap, mm.
const FAR: f64 = 1e5;
/// More rows than any lap has.
const MOST_ROWS: f64 = 60.0;

/// Grids along the grain of one timber that keep the distances in both.
#[derive(Clone, Debug)]
pub(super) struct Grids {
    /// The timber, 0 or 1.
    along: usize,
    /// Unit vector of its grain.
    axis: [f64; 2],
    /// Steps along and between the rows, mm; none when the distances are no sizes.
    steps: Vec<[f64; 2]>,
}

impl Grids {
    /// `apart` eases the distances between fasteners.
    pub(super) fn new(spacings: &[Spacings; 2], grain_deg: [f64; 2], along: usize, apart: f64) -> Self {
        let other = 1 - along;
        let own = [spacings[along].along_mm * apart, spacings[along].across_mm * apart];
        let others = [spacings[other].along_mm * apart, spacings[other].across_mm * apart];
        let angle = Angle::deg(grain_deg[other] - grain_deg[along]);
        let between = [angle.cos(), angle.sin()];
        let mut steps = Vec::new();
        if own.iter().chain(&others).all(|distance| *distance > 0.0 && distance.is_finite()) {
            let least =
                [own[0].max(alone(between[0], between[1], others)), own[1].max(alone(between[1], between[0], others))];
            for stretch in STRETCHES {
                let x = least[0] * stretch;
                let y = STRETCHES.iter().map(|stretch| least[1] * stretch).find(|y| clear(x, *y, between, others));
                // A longer step along the rows is of use only with a shorter one between them.
                let shortest = steps.last().map_or(f64::INFINITY, |step: &[f64; 2]| step[1]);
                steps.extend(y.filter(|y| *y < shortest).map(|y| [x, y]));
            }
        }
        Self { along, axis: unit(grain_deg[along]), steps }
    }

    /// Fill `sides` with up to `most`.
    pub(super) fn fill(&self, sides: &[Side], most: u32) -> Fit {
        let mut best = Fit {
            places: vec![],
            in_rows: vec![],
            along: self.along,
            apart_mm: 0.0,
            between_rows_mm: 0.0,
            limited_by: Limit::Room,
        };
        let turned: Vec<Side> = sides.iter().map(|side| turn(side, self.axis)).collect();
        let Some((bottom, top)) = extent(&turned) else { return best };
        for step in &self.steps {
            let rows = ((top - bottom + HAIR) / step[1]).floor().min(MOST_ROWS);
            let slack = top - bottom - rows * step[1];
            for lowest in [bottom, bottom + slack / 2.0, bottom + slack] {
                try_rows(&turned, lowest, rows, *step, most, self.axis, &mut best);
            }
        }
        best
    }
}

/// The same half-plane with the axis as x.
fn turn(side: &Side, axis: [f64; 2]) -> Side {
    let [x, y] = side.normal;
    Side { normal: [x * axis[0] + y * axis[1], y * axis[0] - x * axis[1]], reach: side.reach }
}

/// Least step in a direction with these components along and across the other timber.
fn alone(along: f64, across: f64, apart: [f64; 2]) -> f64 {
    (apart[0] / along.abs().max(HAIR)).min(apart[1] / across.abs().max(HAIR))
}

/// Whether no two of a grid are too near in the other timber.
fn clear(step_x: f64, step_y: f64, between: [f64; 2], apart: [f64; 2]) -> bool {
    (0..=NEIGHBOURS).all(|i| {
        (-NEIGHBOURS..=NEIGHBOURS).filter(|j| i > 0 || *j > 0).all(|j| {
            let (x, y) = (f64::from(i) * step_x, f64::from(j) * step_y);
            let along = (x * between[0] + y * between[1]).abs();
            let across = (y * between[0] - x * between[1]).abs();
            along + HAIR >= apart[0] || across + HAIR >= apart[1]
        })
    })
}

/// Lowest and highest place inside all sides; `None` when nothing is.
fn extent(sides: &[Side]) -> Option<(f64, f64)> {
    let mut outline = vec![[-FAR, -FAR], [FAR, -FAR], [FAR, FAR], [-FAR, FAR]];
    for side in sides {
        let inside = |p: &[f64; 2]| side.reach - side.normal[0] * p[0] - side.normal[1] * p[1];
        let mut kept = Vec::with_capacity(outline.len() + 1);
        for (i, p) in outline.iter().enumerate() {
            let q = &outline[(i + 1) % outline.len()];
            let (at_p, at_q) = (inside(p), inside(q));
            if at_p >= -HAIR {
                kept.push(*p);
            }
            if (at_p >= -HAIR) != (at_q >= -HAIR) {
                let share = at_p / (at_p - at_q);
                kept.push([p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]);
            }
        }
        outline = kept;
        if outline.is_empty() {
            return None;
        }
    }
    let low = outline.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min);
    let high = outline.iter().map(|p| p[1]).fold(f64::NEG_INFINITY, f64::max);
    (low.is_finite() && high.is_finite() && low <= high).then_some((low, high))
}

/// From where to where a row at height `y` may run.
fn reach(sides: &[Side], y: f64) -> Option<(f64, f64)> {
    let (mut from, mut to) = (-FAR, FAR);
    for side in sides {
        let room = side.reach - side.normal[1] * y;
        if side.normal[0] > HAIR {
            to = to.min(room / side.normal[0]);
        } else if side.normal[0] < -HAIR {
            from = from.max(room / side.normal[0]);
        } else if room < -HAIR {
            return None;
        }
    }
    (from <= to + HAIR).then_some((from, to.max(from)))
}

/// Put down the rows and keep them when they are more than the best.
fn try_rows(sides: &[Side], lowest: f64, rows: f64, step: [f64; 2], most: u32, axis: [f64; 2], best: &mut Fit) {
    let heights: Vec<f64> = (0..=rows as u32).map(|j| lowest + f64::from(j) * step[1]).collect();
    let runs: Vec<Option<(f64, f64)>> = heights.iter().map(|y| reach(sides, *y)).collect();
    for phase in runs.iter().flatten().map(|run| run.0) {
        let numbers: Vec<(f64, u32)> =
            runs.iter().map(|run| run.map_or((0.0, 0), |run| number(run, phase, step[0]))).collect();
        let count: u32 = numbers.iter().map(|(_, n)| n).sum();
        if count.min(most) <= best.count() {
            continue;
        }
        best.places.clear();
        best.in_rows.clear();
        let mut left = most;
        for (y, (start, n)) in heights.iter().zip(&numbers) {
            let n = (*n).min(left);
            left -= n;
            if n > 0 {
                best.in_rows.push(n);
            }
            for k in 0..n {
                let x = start + f64::from(k) * step[0];
                best.places.push([x * axis[0] - y * axis[1], x * axis[1] + y * axis[0]]);
            }
        }
        (best.apart_mm, best.between_rows_mm) = (step[0], step[1]);
    }
}

/// First place and number of fasteners in a run, on a grid through `phase`.
fn number(run: (f64, f64), phase: f64, step: f64) -> (f64, u32) {
    let start = phase + ((run.0 - phase - HAIR) / step).ceil() * step;
    let room = (run.1 - start + HAIR) / step;
    if room < 0.0 || !room.is_finite() {
        (start, 0)
    } else {
        (start, room.min(f64::from(super::super::MOST_FASTENERS)) as u32 + 1)
    }
}
