//! Convex solids cut by planes. Each face remembers what made it.

use crate::{ConvexPlan, DVec3, Plane};
use smallvec::{SmallVec, smallvec};

/// Point numbers of a face; most faces have no more than eight corners.
pub type Ring = SmallVec<[u32; 8]>;

/// Points closer than this to a cutting plane count as lying on it, mm; same
/// reason as [`crate::ON_LINE`].
pub const ON_PLANE: f64 = 1e-6;

/// A cell all of whose points lie further outside a plane than this is outside
/// it, whatever is cut off it first, mm: twice [`ON_PLANE`], so that no
/// rounding of a new point brings it back.
const CLEAR: f64 = 2.0 * ON_PLANE;

/// What a plane leaves of a cell.
enum Left<C> {
    All,
    Part(C),
    Nothing,
}

/// A face of a [`Cell`] or a [`crate::Solid`].
#[derive(Clone, Debug, PartialEq)]
pub struct Face<T> {
    /// Point numbers, anticlockwise from outside.
    pub ring: Ring,
    /// What made it.
    pub tag: T,
}

/// A convex solid.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell<T> {
    /// Corner points, mm.
    pub points: Vec<DVec3>,
    /// Faces.
    pub faces: Vec<Face<T>>,
}

impl<T: Copy + PartialEq> Cell<T> {
    /// The upright prism over a convex plan between two heights given at each
    /// corner; both must be planar over the plan and `top` above `bottom`.
    #[must_use]
    pub fn prism(
        plan: &ConvexPlan<T>,
        bottom: impl Fn(crate::DVec2) -> f64,
        top: impl Fn(crate::DVec2) -> f64,
        bottom_tag: T,
        top_tag: T,
    ) -> Self {
        let n = plan.sides().len() as u32;
        let mut points = Vec::with_capacity(2 * plan.sides().len());
        points.extend(plan.corners().map(|p| p.extend(bottom(p))));
        points.extend(plan.corners().map(|p| p.extend(top(p))));
        let mut faces = Vec::with_capacity(plan.sides().len() + 2);
        for (k, side) in (0..n).zip(plan.sides()) {
            let j = (k + 1) % n;
            faces.push(Face { ring: smallvec![k, j, j + n, k + n], tag: side.tag });
        }
        faces.push(Face { ring: (0..n).rev().collect(), tag: bottom_tag });
        faces.push(Face { ring: (n..2 * n).collect(), tag: top_tag });
        Self { points, faces }
    }

    /// What is left inside `plane`, its new face tagged `tag`; `None` if
    /// nothing is.
    #[must_use]
    pub fn clipped(&self, plane: Plane, tag: T) -> Option<Self> {
        match self.cut(plane, tag) {
            Left::All => Some(self.clone()),
            Left::Part(part) => Some(part),
            Left::Nothing => None,
        }
    }

    /// What is left inside all of these planes, every new face tagged `tag`;
    /// `None` if nothing is.
    #[must_use]
    pub fn within(&self, planes: impl Iterator<Item = Plane> + Clone, tag: T) -> Option<Self> {
        // What one plane shuts out is not worth cutting by the others first.
        if self.shut_out(planes.clone()) {
            return None;
        }
        let mut left: Option<Self> = None;
        for plane in planes {
            match left.as_ref().unwrap_or(self).cut(plane, tag) {
                Left::All => {}
                Left::Part(part) => left = Some(part),
                Left::Nothing => return None,
            }
        }
        Some(left.unwrap_or_else(|| self.clone()))
    }

    /// Whether one of these planes alone leaves nothing, with room to spare.
    pub(crate) fn shut_out(&self, mut planes: impl Iterator<Item = Plane>) -> bool {
        planes.any(|plane| self.points.iter().all(|p| plane.distance(*p) > CLEAR))
    }

    fn cut(&self, plane: Plane, tag: T) -> Left<Self> {
        let out: SmallVec<[f64; 16]> = self
            .points
            .iter()
            .map(|p| {
                let d = plane.distance(*p);
                if d.abs() <= ON_PLANE { 0.0 } else { d }
            })
            .collect();
        if out.iter().all(|d| *d <= 0.0) {
            return Left::All;
        }
        if out.iter().all(|d| *d >= 0.0) {
            return Left::Nothing;
        }
        let mut points = Vec::with_capacity(self.points.len() + 4);
        let mut moved: SmallVec<[u32; 16]> = smallvec![u32::MAX; self.points.len()];
        let mut on: SmallVec<[bool; 24]> = SmallVec::new();
        for (k, p) in self.points.iter().enumerate() {
            if out[k] <= 0.0 {
                moved[k] = points.len() as u32;
                points.push(*p);
                on.push(out[k] == 0.0);
            }
        }
        // New points, one for each edge that the plane crosses.
        let mut crossed: SmallVec<[(u32, u32, u32); 12]> = SmallVec::new();
        let mut faces = Vec::with_capacity(self.faces.len() + 1);
        let mut cap_edges: SmallVec<[(u32, u32); 12]> = SmallVec::new();
        for face in &self.faces {
            if !face.ring.iter().any(|k| out[*k as usize] < 0.0) {
                continue;
            }
            let mut ring = Ring::new();
            for (i, &a) in face.ring.iter().enumerate() {
                let b = face.ring[(i + 1) % face.ring.len()];
                let (da, db) = (out[a as usize], out[b as usize]);
                if da <= 0.0 {
                    ring.push(moved[a as usize]);
                }
                if (da < 0.0 && db > 0.0) || (da > 0.0 && db < 0.0) {
                    let key = (a.min(b), a.max(b));
                    let known = crossed.iter().find(|(x, y, _)| (*x, *y) == key);
                    let id = match known {
                        Some(&(_, _, id)) => id,
                        None => {
                            // From the lower number to the higher, so that both
                            // faces at this edge compute the same bits.
                            let (p, q) = (self.points[key.0 as usize], self.points[key.1 as usize]);
                            let (dp, dq) = (out[key.0 as usize], out[key.1 as usize]);
                            let id = points.len() as u32;
                            points.push(p + (q - p) * (dp / (dp - dq)));
                            on.push(true);
                            crossed.push((key.0, key.1, id));
                            id
                        }
                    };
                    ring.push(id);
                }
            }
            if ring.len() < 3 {
                continue;
            }
            for (i, &a) in ring.iter().enumerate() {
                let b = ring[(i + 1) % ring.len()];
                if on[a as usize] && on[b as usize] {
                    cap_edges.push((b, a));
                }
            }
            faces.push(Face { ring, tag: face.tag });
        }
        let mut cap = Ring::new();
        if let Some(&(start, _)) = cap_edges.first() {
            let mut at = start;
            for _ in 0..cap_edges.len() {
                cap.push(at);
                match cap_edges.iter().find(|(a, _)| *a == at) {
                    Some(&(_, next)) => at = next,
                    None => break,
                }
                if at == start {
                    break;
                }
            }
        }
        if cap.len() >= 3 {
            faces.push(Face { ring: cap, tag });
        }
        Left::Part(Self { points, faces })
    }

    /// The parts inside and outside a plane; both caps carry `tag`.
    #[must_use]
    pub fn split(&self, plane: Plane, tag: T) -> (Option<Self>, Option<Self>) {
        (self.clipped(plane, tag), self.clipped(plane.flipped(), tag))
    }

    /// Change the tag of faces.
    pub fn retag(&mut self, from: T, to: T) {
        for face in &mut self.faces {
            if face.tag == from {
                face.tag = to;
            }
        }
    }

    /// Volume, mm³.
    #[must_use]
    pub fn volume(&self) -> f64 {
        volume(&self.points, &self.faces)
    }
}

/// Volume inside closed faces, mm³, by the divergence theorem.
pub(crate) fn volume<T>(points: &[DVec3], faces: &[Face<T>]) -> f64 {
    let Some(&o) = points.first() else { return 0.0 };
    let mut six = 0.0;
    for face in faces {
        let a = points[face.ring[0] as usize] - o;
        for w in face.ring[1..].windows(2) {
            six += a.dot((points[w[0] as usize] - o).cross(points[w[1] as usize] - o));
        }
    }
    six / 6.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::DVec2;

    fn brick() -> Cell<u8> {
        let plan = ConvexPlan::strip(DVec2::ZERO, DVec2::X, [0.0, 10.0], [-1.0, 1.0], [0, 1, 2, 3]);
        Cell::prism(&plan, |_| 0.0, |_| 3.0, 4, 5)
    }

    #[test]
    fn a_wedge_has_half_the_volume() {
        let n = DVec3::new(3.0, 0.0, 10.0).normalize();
        let half = brick().clipped(Plane::through(DVec3::new(10.0, 0.0, 0.0), n), 9).expect("half is left");
        assert!((half.volume() - 30.0).abs() < 1e-9);
        assert!(half.faces.iter().any(|f| f.tag == 9 && f.ring.len() == 4));
    }

    #[test]
    fn a_corner_cut_leaves_a_closed_solid() {
        let n = DVec3::ONE.normalize();
        let cut = brick().clipped(Plane::through(DVec3::new(10.0, 1.0, 2.0), n), 9).expect("most is left");
        assert!((60.0 - cut.volume() - 1.0 / 6.0).abs() < 1e-9);
        for face in &cut.faces {
            for (i, a) in face.ring.iter().enumerate() {
                let b = face.ring[(i + 1) % face.ring.len()];
                let back = cut
                    .faces
                    .iter()
                    .flat_map(|f| (0..f.ring.len()).map(move |i| (f.ring[i], f.ring[(i + 1) % f.ring.len()])))
                    .filter(|e| *e == (b, *a))
                    .count();
                assert_eq!(back, 1);
            }
        }
    }

    #[test]
    fn parts_of_a_split_add_up() {
        let (a, b) = brick().split(Plane::through(DVec3::new(4.0, 0.0, 0.0), DVec3::X), 9);
        assert!((a.expect("in").volume() - 24.0).abs() < 1e-9);
        assert!((b.expect("out").volume() - 36.0).abs() < 1e-9);
    }
}
