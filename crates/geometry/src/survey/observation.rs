//! Readings as equations: what a plan would read, and how that changes with
//! its corners.

use super::{DEVIATIONS_IN_TOLERANCE, Measure, Survey};
use crate::{Angle, DVec2};
use core::f64::consts::{PI, TAU};

/// Two corners nearer than this have no direction, mm.
const NO_LENGTH: f64 = 1e-9;

/// A reading with its weight.
pub(super) struct Observation {
    /// What it is of.
    pub what: Measure,
    /// What was read, mm or radians.
    pub value: f64,
    /// Its standard deviation, mm or radians.
    pub deviation: f64,
}

/// How a reading changes with a corner: radians or mm for each mm east and north.
pub(super) type Change = (usize, DVec2);

/// All readings of a survey: sides, diagonals, turns.
pub(super) fn all(survey: &Survey) -> Vec<Observation> {
    let tape = survey.tolerance / DEVIATIONS_IN_TOLERANCE;
    let bevel = Angle::deg(survey.turn_tolerance_deg / DEVIATIONS_IN_TOLERANCE).to_rad();
    let sides = survey.sides.iter().enumerate().map(|(k, s)| Observation {
        what: Measure::Side(k),
        value: *s,
        deviation: tape,
    });
    let diagonals = survey.diagonals.iter().map(|d| Observation {
        what: Measure::Diagonal(d.from, d.to),
        value: d.length,
        deviation: tape,
    });
    let turns = survey.turns.iter().map(|t| Observation {
        what: Measure::Turn(t.corner),
        value: Angle::deg(t.inside_deg).to_rad(),
        deviation: bevel,
    });
    sides.chain(diagonals).chain(turns).collect()
}

impl Observation {
    /// The corners at the ends of a length; those before, at and after a turn.
    fn corners(&self, count: usize) -> [usize; 3] {
        match self.what {
            Measure::Side(k) => [k, (k + 1) % count, k],
            Measure::Diagonal(from, to) => [from, to, from],
            Measure::Turn(k) => [(k + count - 1) % count, k, (k + 1) % count],
        }
    }

    /// What the plan would read, mm or radians in 0..2π.
    pub fn read(&self, plan: &[DVec2]) -> f64 {
        let [a, b, c] = self.corners(plan.len()).map(|k| plan[k]);
        match self.what {
            Measure::Side(_) | Measure::Diagonal(..) => a.distance(b),
            Measure::Turn(_) => inside_angle(a, b, c),
        }
    }

    /// What the plan would read, less what was read, mm or radians.
    pub fn residual(&self, plan: &[DVec2]) -> f64 {
        let off = self.read(plan) - self.value;
        match self.what {
            Measure::Turn(_) if off > PI => off - TAU,
            Measure::Turn(_) if off < -PI => off + TAU,
            _ => off,
        }
    }

    /// How the reading changes with the corners.
    pub fn changes(&self, plan: &[DVec2]) -> Vec<Change> {
        let [a, b, c] = self.corners(plan.len());
        match self.what {
            Measure::Side(_) | Measure::Diagonal(..) => distance_changes(plan, a, b),
            Measure::Turn(_) => {
                let turn = |arm: DVec2| arm.perp() / arm.length_squared().max(NO_LENGTH);
                let (before, after) = (turn(plan[a] - plan[b]), turn(plan[c] - plan[b]));
                vec![(a, before), (c, -after), (b, after - before)]
            }
        }
    }
}

/// The angle at `corner` from the side after it round to the side before it,
/// anticlockwise, radians in 0..2π.
fn inside_angle(before: DVec2, corner: DVec2, after: DVec2) -> f64 {
    let (before, after) = (before - corner, after - corner);
    let angle = Angle::from_rise_run(after.perp_dot(before), after.dot(before)).to_rad();
    if angle < 0.0 { angle + TAU } else { angle }
}

/// How a distance changes with its two corners.
pub(super) fn distance_changes(plan: &[DVec2], a: usize, b: usize) -> Vec<Change> {
    let along = plan[b] - plan[a];
    let unit = along / along.length().max(NO_LENGTH);
    vec![(a, -unit), (b, unit)]
}
