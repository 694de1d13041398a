//! Walls end to end, and how they close.

use geometry::plan::SHORTEST_WALL;
use geometry::{Angle, DVec2};

/// Directions that differ by less are one, degrees: far below what a bevel
/// reads, far above rounding.
const SAME_DIRECTION: f64 = 1e-6;

/// Walls span no plane when the determinant of their directions is less than
/// this part of the square of its trace: all lie within a tenth of a degree.
const ALL_PARALLEL: f64 = 1e-6;

/// A direction as a vector of length 1. Square ones are exact, so that square
/// plans close to nothing.
pub(super) fn unit(heading_deg: f64) -> DVec2 {
    let turns = heading_deg.rem_euclid(360.0) / 90.0;
    let quarter = turns.round();
    if (turns - quarter).abs() * 90.0 > SAME_DIRECTION {
        let angle = Angle::deg(heading_deg);
        return DVec2::new(angle.cos(), angle.sin());
    }
    match quarter as u8 % 4 {
        0 => DVec2::X,
        1 => DVec2::Y,
        2 => -DVec2::X,
        _ => -DVec2::Y,
    }
}

/// Whether a direction is a whole number of steps from another.
pub(super) fn in_steps(heading_deg: f64, base_deg: f64, step_deg: f64) -> bool {
    let steps = (heading_deg - base_deg) / step_deg;
    (steps - steps.round()).abs() * step_deg <= SAME_DIRECTION
}

/// The corners of walls laid end to end: one more than there are walls.
pub(super) fn lay(start: DVec2, units: &[DVec2], lengths: &[f64]) -> Vec<DVec2> {
    let mut at = start;
    let ends = units.iter().zip(lengths).map(|(unit, length)| {
        at += *unit * *length;
        at
    });
    core::iter::once(start).chain(ends).collect()
}

/// From where the walls start to where they end.
pub(super) fn gap(units: &[DVec2], lengths: &[f64]) -> DVec2 {
    units.iter().zip(lengths).map(|(unit, length)| *unit * *length).sum()
}

/// Lengths that close as well as the directions allow, with the least change
/// in the sense of least squares. A wall changes the more, the greater its
/// `give`; those with 0 keep their length. Lengths that would leave no wall
/// are left as they are.
pub(super) fn closed(units: &[DVec2], lengths: &[f64], give: &[f64]) -> Vec<f64> {
    let gap = gap(units, lengths);
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for (unit, give) in units.iter().zip(give) {
        xx += give * unit.x * unit.x;
        xy += give * unit.x * unit.y;
        yy += give * unit.y * unit.y;
    }
    let (trace, determinant) = (xx + yy, xx * yy - xy * xy);
    if trace <= 0.0 {
        return lengths.to_vec();
    }
    let pull = if determinant > ALL_PARALLEL * trace * trace {
        DVec2::new(yy * gap.x - xy * gap.y, xx * gap.y - xy * gap.x) / determinant
    } else {
        // All that give are parallel, and take up what misses along them.
        let along = units.iter().zip(give).find(|(_, give)| **give > 0.0).map_or(DVec2::X, |(unit, _)| *unit);
        along * (along.dot(gap) / trace)
    };
    let changed: Vec<f64> =
        units.iter().zip(lengths).zip(give).map(|((unit, length), give)| length - give * unit.dot(pull)).collect();
    if changed.iter().all(|length| *length >= SHORTEST_WALL) { changed } else { lengths.to_vec() }
}

/// Twice the area inside a ring of corners; negative when it runs clockwise.
pub(super) fn double_area(ring: &[DVec2]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a.perp_dot(*b)).sum()
}

/// The first two walls that cross, by the number of their corner; `ring` has
/// one corner for each wall.
pub(super) fn crossing(ring: &[DVec2], closed: bool) -> Option<(usize, usize)> {
    let count = ring.len();
    let walls = if closed { count } else { count.saturating_sub(1) };
    let end = |k: usize| ring.get((k + 1) % count.max(1)).copied();
    for (first, a) in ring.iter().enumerate().take(walls) {
        for (second, c) in ring.iter().enumerate().take(walls).skip(first + 2) {
            let neighbours = closed && first == 0 && second + 1 == walls;
            if let (false, Some(b), Some(d)) = (neighbours, end(first), end(second))
                && meet(*a, b, *c, d)
            {
                return Some((first, second));
            }
        }
    }
    None
}

/// Whether two walls have a point in common.
fn meet(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> bool {
    let side = |p: DVec2, q: DVec2, r: DVec2| (q - p).perp_dot(r - p);
    let (abc, abd) = (side(a, b, c), side(a, b, d));
    let (cda, cdb) = (side(c, d, a), side(c, d, b));
    let apart = |p: f64, q: f64| (p > 0.0 && q > 0.0) || (p < 0.0 && q < 0.0);
    let boxes = |p: f64, q: f64, r: f64, s: f64| p.max(q) >= r.min(s) && r.max(s) >= p.min(q);
    !apart(abc, abd) && !apart(cda, cdb) && boxes(a.x, b.x, c.x, d.x) && boxes(a.y, b.y, c.y, d.y)
}
