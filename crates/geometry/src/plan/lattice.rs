//! Corners as whole numbers of grid steps, and exact predicates on them.

use super::{FARTHEST, GRID};
use crate::DVec2;

/// A corner in grid steps. Within [`FARTHEST`] each is at most 10^7, so that
/// every product below stays under 10^15.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Knot {
    pub x: i64,
    pub y: i64,
}

impl Knot {
    /// The nearest knot, or `None` for what is not a place within reach.
    pub fn of(p: DVec2) -> Option<Self> {
        let within = |v: f64| v.is_finite() && v.abs() <= FARTHEST;
        (within(p.x) && within(p.y)).then(|| Self { x: (p.x / GRID).round() as i64, y: (p.y / GRID).round() as i64 })
    }

    /// Length of the way to `other` in grid steps.
    pub fn distance(self, other: Self) -> f64 {
        let (dx, dy) = (other.x - self.x, other.y - self.y);
        ((dx * dx + dy * dy) as f64).sqrt()
    }
}

/// Twice the signed area of the triangle: positive when it turns left.
pub(super) fn turn(a: Knot, b: Knot, c: Knot) -> i64 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

/// Whether `p`, known to be in line with `a` and `b`, lies between them.
fn between(a: Knot, b: Knot, p: Knot) -> bool {
    a.x.min(b.x) <= p.x && p.x <= a.x.max(b.x) && a.y.min(b.y) <= p.y && p.y <= a.y.max(b.y)
}

/// Whether the closed segments `ab` and `cd` share a point.
pub(super) fn meet(a: Knot, b: Knot, c: Knot, d: Knot) -> bool {
    let (c_side, d_side) = (turn(a, b, c).signum(), turn(a, b, d).signum());
    let (a_side, b_side) = (turn(c, d, a).signum(), turn(c, d, b).signum());
    (c_side * d_side < 0 && a_side * b_side < 0)
        || (c_side == 0 && between(a, b, c))
        || (d_side == 0 && between(a, b, d))
        || (a_side == 0 && between(c, d, a))
        || (b_side == 0 && between(c, d, b))
}

/// Whether the walls `ab` and `bc` fold back over each other.
pub(super) fn folds_back(a: Knot, b: Knot, c: Knot) -> bool {
    turn(a, b, c) == 0 && (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0
}

/// Twice the signed area of a loop, summed in 128 bits so that any number of
/// corners fits.
pub(super) fn twice_area(ring: &[Knot]) -> i128 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| i128::from(a.x) * i128::from(b.y) - i128::from(a.y) * i128::from(b.x)).sum()
}

/// Whether `p` is strictly inside the loop, by counting walls to its right.
pub(super) fn inside(ring: &[Knot], p: Knot) -> bool {
    let next = ring.iter().cycle().skip(1);
    let crossings = ring.iter().zip(next).filter(|&(&a, &b)| {
        let (low, high) = if a.y <= b.y { (a, b) } else { (b, a) };
        low.y <= p.y && p.y < high.y && turn(low, high, p) > 0
    });
    crossings.count() % 2 == 1
}

#[cfg(test)]
mod tests {
    use super::{Knot, folds_back, inside, meet, twice_area};

    const fn k(x: i64, y: i64) -> Knot {
        Knot { x, y }
    }

    #[test]
    fn segments_that_touch_meet() {
        assert!(meet(k(0, 0), k(10, 0), k(5, 0), k(5, 7)));
        assert!(meet(k(0, 0), k(10, 10), k(0, 10), k(10, 0)));
        assert!(!meet(k(0, 0), k(10, 0), k(0, 1), k(10, 1)));
        assert!(!meet(k(0, 0), k(10, 0), k(11, 0), k(20, 0)));
    }

    #[test]
    fn a_fold_is_not_a_straight_joint() {
        assert!(folds_back(k(0, 0), k(10, 0), k(5, 0)));
        assert!(!folds_back(k(0, 0), k(10, 0), k(15, 0)));
    }

    #[test]
    fn inside_and_area_of_a_square() {
        let square = [k(0, 0), k(10, 0), k(10, 10), k(0, 10)];
        assert_eq!(twice_area(&square), 200);
        assert!(inside(&square, k(5, 5)));
        assert!(!inside(&square, k(15, 5)));
    }
}
