//! Which walls cross: a sweep over boxes, then an exact test of each pair.

use super::lattice::{Knot, folds_back, meet};
use crate::CornerRef;

/// A wall on the grid, of some length.
#[derive(Clone, Copy)]
pub(super) struct Wall {
    pub at: CornerRef,
    pub from: Knot,
    pub to: Knot,
    /// The wall that follows it round the loop.
    next: CornerRef,
}

/// Walls of a loop, leaving out those of no length (they are reported as
/// repeated corners).
pub(super) fn walls_of(ring: usize, corners: &[Knot]) -> Vec<Wall> {
    let next = corners.iter().cycle().skip(1);
    let real: Vec<(usize, Knot, Knot)> =
        corners.iter().zip(next).enumerate().filter(|(_, (a, b))| a != b).map(|(k, (&a, &b))| (k, a, b)).collect();
    let followers = real.iter().cycle().skip(1);
    real.iter()
        .zip(followers)
        .map(|(&(corner, from, to), &(after, _, _))| Wall {
            at: CornerRef { ring, corner },
            from,
            to,
            next: CornerRef { ring, corner: after },
        })
        .collect()
}

/// Pairs of walls that cross, touch or fold back, at most `limit`, in order.
///
/// Walls are sorted by the low end of their boxes along the axis on which
/// they overlap less; each is tested against those that start before it ends.
pub(super) fn crossings(walls: &[Wall], limit: usize) -> Vec<(CornerRef, CornerRef)> {
    let span_x: i64 = walls.iter().map(|w| (w.to.x - w.from.x).abs()).sum();
    let span_y: i64 = walls.iter().map(|w| (w.to.y - w.from.y).abs()).sum();
    let along_x = span_x <= span_y;
    let range = |w: &Wall, first: bool| {
        let (a, b) = if first == along_x { (w.from.x, w.to.x) } else { (w.from.y, w.to.y) };
        (a.min(b), a.max(b))
    };
    let mut order: Vec<(i64, i64, i64, i64, &Wall)> = walls
        .iter()
        .map(|w| {
            let ((low, high), (left, right)) = (range(w, true), range(w, false));
            (low, high, left, right, w)
        })
        .collect();
    order.sort_by_key(|&(low, _, _, _, w)| (low, w.at));
    let mut found = Vec::new();
    for (k, &(_, high, left, right, first)) in order.iter().enumerate() {
        for &(low_2, _, left_2, right_2, second) in order.iter().skip(k + 1) {
            if low_2 > high {
                break;
            }
            if left_2 <= right && left <= right_2 && faulty(first, second) {
                found.push((first.at.min(second.at), first.at.max(second.at)));
                if found.len() >= limit {
                    found.sort_unstable();
                    return found;
                }
            }
        }
    }
    found.sort_unstable();
    found
}

/// Neighbours share a corner and may not fold back; others may not meet.
fn faulty(a: &Wall, b: &Wall) -> bool {
    let (then_b, then_a) = (a.next == b.at, b.next == a.at);
    if then_b && then_a {
        return true; // a loop of two walls lies on itself
    }
    if then_b {
        folds_back(a.from, a.to, b.to)
    } else if then_a {
        folds_back(b.from, b.to, a.to)
    } else {
        meet(a.from, a.to, b.from, b.to)
    }
}
