//! A convex patch of a slope in plan, and how far lines lie from it.

use geometry::DVec2;

/// A convex outline along the axis of a slope and inwards from its plate line,
/// anticlockwise, mm.
#[derive(Clone, Debug)]
pub struct Patch(Vec<DVec2>);

impl Patch {
    /// A patch with these corners.
    pub const fn new(corners: Vec<DVec2>) -> Self {
        Self(corners)
    }

    /// The rectangle between two corners.
    pub fn rect(low: DVec2, high: DVec2) -> Self {
        Self(vec![low, DVec2::new(high.x, low.y), high, DVec2::new(low.x, high.y)])
    }

    /// A point inside.
    pub fn middle(&self) -> DVec2 {
        self.0.iter().sum::<DVec2>() / self.0.len().max(1) as f64
    }

    fn sides(&self) -> impl Iterator<Item = [DVec2; 2]> + '_ {
        self.0.iter().zip(self.0.iter().cycle().skip(1)).map(|(a, b)| [*a, *b])
    }

    /// Distance to a segment, mm; 0 where they meet.
    pub fn off(&self, a: DVec2, b: DVec2) -> f64 {
        if self.meets(a, b) {
            return 0.0;
        }
        let from_corners = self.0.iter().map(|c| to_segment(*c, a, b));
        let from_ends = self.sides().flat_map(|[p, q]| [to_segment(a, p, q), to_segment(b, p, q)]);
        from_corners.chain(from_ends).fold(f64::INFINITY, f64::min)
    }

    /// Whether a segment passes through.
    fn meets(&self, a: DVec2, b: DVec2) -> bool {
        let mut part = [0.0_f64, 1.0];
        for [p, q] in self.sides() {
            // Inside is on the left.
            let inwards = (q - p).perp();
            let (from, gain) = (inwards.dot(a - p), inwards.dot(b - a));
            if gain == 0.0 {
                if from < 0.0 {
                    return false;
                }
            } else if gain > 0.0 {
                part[0] = part[0].max(-from / gain);
            } else {
                part[1] = part[1].min(-from / gain);
            }
        }
        part[0] <= part[1]
    }
}

fn to_segment(p: DVec2, a: DVec2, b: DVec2) -> f64 {
    let side = b - a;
    let length = side.length_squared();
    let share = if length > 0.0 { ((p - a).dot(side) / length).clamp(0.0, 1.0) } else { 0.0 };
    (a + side * share - p).length()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distance_of_a_rectangle_to_segments() {
        let rect = Patch::rect(DVec2::ZERO, DVec2::new(4.0, 2.0));
        assert_eq!(rect.off(DVec2::new(-1.0, 1.0), DVec2::new(9.0, 1.5)), 0.0);
        assert_eq!(rect.off(DVec2::new(-3.0, -4.0), DVec2::new(-3.0, 9.0)), 3.0);
        assert_eq!(rect.off(DVec2::new(7.0, 6.0), DVec2::new(9.0, 9.0)), 5.0);
        let beside = rect.off(DVec2::new(4.0, 4.0), DVec2::new(6.0, 2.0));
        assert!((beside - 2.0_f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn distance_of_a_gable_to_its_ridge() {
        let patch = Patch::new(vec![
            DVec2::ZERO,
            DVec2::new(4.0, 0.0),
            DVec2::new(4.0, 2.0),
            DVec2::new(2.0, 4.0),
            DVec2::new(0.0, 2.0),
        ]);
        assert_eq!(patch.off(DVec2::new(-9.0, 5.0), DVec2::new(9.0, 5.0)), 1.0);
        assert_eq!(patch.off(DVec2::new(-9.0, 3.5), DVec2::new(9.0, 3.5)), 0.0);
    }
}
