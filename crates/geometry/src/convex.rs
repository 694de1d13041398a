//! Convex polygons in plan that remember what made each of their sides.

use crate::DVec2;

/// Sides closer than this to a cutting line count as lying on it, mm. Far above
/// the noise of f64 on a 1 km site (1e-7 mm), far below anything a saw can do.
pub const ON_LINE: f64 = 1e-6;

/// The half of the plan where `normal · p <= offset`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HalfPlan {
    /// Unit vector pointing out.
    pub normal: DVec2,
    /// `normal · p` on the line, mm.
    pub offset: f64,
}

impl HalfPlan {
    /// The half plan whose edge runs through `point`.
    #[must_use]
    pub fn through(point: DVec2, normal: DVec2) -> Self {
        Self { normal, offset: normal.dot(point) }
    }

    /// How far `p` lies outside, mm; negative inside.
    #[must_use]
    pub fn distance(&self, p: DVec2) -> f64 {
        self.normal.dot(p) - self.offset
    }

    /// The other half.
    #[must_use]
    pub fn flipped(&self) -> Self {
        Self { normal: -self.normal, offset: -self.offset }
    }
}

/// A side of a [`ConvexPlan`]: its start and what made it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Side<T> {
    /// Where it starts; it ends where the next one starts.
    pub start: DVec2,
    /// What made it.
    pub tag: T,
    /// The half plan it bounds.
    pub half: HalfPlan,
}

/// A convex polygon, anticlockwise; may be empty, as by default.
#[derive(Clone, Debug, PartialEq)]
pub struct ConvexPlan<T> {
    sides: Vec<Side<T>>,
}

impl<T> Default for ConvexPlan<T> {
    fn default() -> Self {
        Self { sides: Vec::new() }
    }
}

impl<T: Copy> ConvexPlan<T> {
    /// The rectangle along `axis` (a unit vector) from `origin`: `along` is its
    /// reach `[from, to]` on the axis, `across` its reach `[right, left]`
    /// square to it. Tags are for the right side, the far end, the left side
    /// and the near end.
    #[must_use]
    pub fn strip(origin: DVec2, axis: DVec2, along: [f64; 2], across: [f64; 2], tags: [T; 4]) -> Self {
        let left = axis.perp();
        let at = |a: f64, c: f64| origin + axis * a + left * c;
        let corners =
            [at(along[0], across[0]), at(along[1], across[0]), at(along[1], across[1]), at(along[0], across[1])];
        let normals = [-left, axis, left, -axis];
        let sides = (0..4)
            .map(|k| Side { start: corners[k], tag: tags[k], half: HalfPlan::through(corners[k], normals[k]) })
            .collect();
        Self { sides }
    }

    /// Its sides in order.
    #[must_use]
    pub fn sides(&self) -> &[Side<T>] {
        &self.sides
    }

    /// Nothing left of it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.sides.is_empty()
    }

    /// Corners in order.
    pub fn corners(&self) -> impl Iterator<Item = DVec2> + '_ {
        self.sides.iter().map(|s| s.start)
    }

    /// Area, mm².
    #[must_use]
    pub fn area(&self) -> f64 {
        let Some(first) = self.sides.first() else { return 0.0 };
        let o = first.start;
        self.sides.windows(2).map(|w| (w[0].start - o).perp_dot(w[1].start - o)).sum::<f64>() / 2.0
    }

    /// Lowest and highest corner on each axis.
    #[must_use]
    pub fn bounds(&self) -> (DVec2, DVec2) {
        self.corners()
            .fold((DVec2::splat(f64::INFINITY), DVec2::splat(f64::NEG_INFINITY)), |(lo, hi), p| (lo.min(p), hi.max(p)))
    }

    /// Least and greatest reach along a direction, mm.
    #[must_use]
    pub fn reach(&self, axis: DVec2) -> [f64; 2] {
        self.corners().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], p| {
            let d = axis.dot(p);
            [lo.min(d), hi.max(d)]
        })
    }

    /// What is left after keeping only the inside of `half`; the new side, if
    /// any, carries `tag`.
    #[must_use]
    pub fn clipped(&self, half: HalfPlan, tag: T) -> Self {
        let n = self.sides.len();
        if n == 0 {
            return Self { sides: Vec::new() };
        }
        let out: Vec<f64> = self.sides.iter().map(|s| half.distance(s.start)).collect();
        if out.iter().all(|d| *d <= ON_LINE) {
            return self.clone();
        }
        if out.iter().all(|d| *d >= -ON_LINE) {
            return Self { sides: Vec::new() };
        }
        let mut sides = Vec::with_capacity(n + 1);
        for k in 0..n {
            let j = (k + 1) % n;
            let (a, b) = (out[k], out[j]);
            let side = self.sides[k];
            if a <= ON_LINE {
                if a >= -ON_LINE && b > ON_LINE {
                    sides.push(Side { start: side.start, tag, half });
                } else {
                    sides.push(side);
                }
            }
            if (a < -ON_LINE && b > ON_LINE) || (a > ON_LINE && b < -ON_LINE) {
                let cut = side.start + (self.sides[j].start - side.start) * (a / (a - b));
                if b > ON_LINE {
                    sides.push(Side { start: cut, tag, half });
                } else {
                    sides.push(Side { start: cut, ..side });
                }
            }
        }
        if sides.len() < 3 {
            sides.clear();
        }
        Self { sides }
    }

    /// How deep the two polygons run into one another, mm: the least distance
    /// by which one of their own sides fails to part them; 0 or less when
    /// they are apart or only touch.
    #[must_use]
    pub fn penetration<U: Copy>(&self, other: &ConvexPlan<U>) -> f64 {
        if self.is_empty() || other.is_empty() {
            return f64::NEG_INFINITY;
        }
        let one_way = |halves: &mut dyn Iterator<Item = HalfPlan>, points: &dyn Fn(DVec2) -> [f64; 2]| {
            halves.map(|h| h.offset - points(h.normal)[0]).fold(f64::INFINITY, f64::min)
        };
        let a = one_way(&mut self.sides.iter().map(|s| s.half), &|axis| other.reach(axis));
        let b = one_way(&mut other.sides.iter().map(|s| s.half), &|axis| self.reach(axis));
        a.min(b)
    }

    /// Where a line through `point` along `axis` enters and leaves, as
    /// distances along the axis with the sides crossed; `None` if it misses.
    #[must_use]
    pub fn crossing(&self, point: DVec2, axis: DVec2) -> Option<[(f64, T); 2]> {
        let mut enter: Option<(f64, T)> = None;
        let mut leave: Option<(f64, T)> = None;
        for side in &self.sides {
            let toward = side.half.normal.dot(axis);
            let short = -side.half.distance(point);
            if toward.abs() < 1e-12 {
                if short < 0.0 {
                    return None;
                }
                continue;
            }
            let t = short / toward;
            if toward > 0.0 {
                if leave.is_none_or(|(best, _)| t < best) {
                    leave = Some((t, side.tag));
                }
            } else if enter.is_none_or(|(best, _)| t > best) {
                enter = Some((t, side.tag));
            }
        }
        match (enter, leave) {
            (Some(a), Some(b)) if a.0 <= b.0 => Some([a, b]),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit() -> ConvexPlan<u8> {
        ConvexPlan::strip(DVec2::ZERO, DVec2::X, [0.0, 10.0], [-2.0, 2.0], [0, 1, 2, 3])
    }

    #[test]
    fn a_corner_is_cut_off() {
        let diagonal = DVec2::new(1.0, 1.0).normalize();
        let cut = unit().clipped(HalfPlan::through(DVec2::new(10.0, 0.0), diagonal), 9);
        assert!((cut.area() - 38.0).abs() < 1e-9);
        assert_eq!(cut.sides().iter().filter(|s| s.tag == 9).count(), 1);
    }

    #[test]
    fn a_line_through_corners_leaves_a_triangle() {
        let along = DVec2::new(10.0, 4.0).normalize();
        let cut = unit().clipped(HalfPlan::through(DVec2::new(0.0, -2.0), along.perp()), 9);
        assert_eq!(cut.sides().len(), 3);
        assert!((cut.area() - 20.0).abs() < 1e-9);
    }

    #[test]
    fn touching_is_not_running_into() {
        let next = ConvexPlan::strip(DVec2::new(10.0, 0.0), DVec2::X, [0.0, 5.0], [-2.0, 2.0], [0, 1, 2, 3]);
        assert!(unit().penetration(&next) <= 0.0);
        let into = ConvexPlan::strip(DVec2::new(9.0, 0.0), DVec2::X, [0.0, 5.0], [-2.0, 2.0], [0, 1, 2, 3]);
        assert!((unit().penetration(&into) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_line_crosses_two_sides() {
        let [a, b] = unit().crossing(DVec2::new(3.0, 0.0), DVec2::X).expect("inside");
        assert_eq!((a.1, b.1), (3, 1));
        assert!((a.0 + 3.0).abs() < 1e-12 && (b.0 - 7.0).abs() < 1e-12);
        assert!(unit().crossing(DVec2::new(0.0, 5.0), DVec2::X).is_none());
    }
}
