//! A solid put together from convex cells that share whole faces.

use crate::cell::volume;
use crate::{Cell, DVec3, Face, Ring};
use smallvec::{SmallVec, smallvec};

/// Points of neighbouring cells closer than this are one point, mm. They come
/// from the same three planes, so they differ by rounding only.
const SAME_POINT: f64 = 1e-5;

/// A point is dropped from a straight edge when it lies this close to it, mm.
const STRAIGHT: f64 = 1e-5;

/// A closed solid, not necessarily convex.
#[derive(Clone, Debug, PartialEq)]
pub struct Solid<T> {
    /// Corner points, mm.
    pub points: Vec<DVec3>,
    /// Faces.
    pub faces: Vec<Face<T>>,
}

impl<T: Copy + PartialEq> Solid<T> {
    /// Join cells into one solid. Faces tagged `inner` are where cells meet:
    /// they must match in pairs and vanish. Faces with one tag lie in one
    /// plane and are joined where they share an edge.
    #[must_use]
    pub fn join(cells: &[Cell<T>], inner: T) -> Self {
        let mut points: Vec<DVec3> = Vec::new();
        let mut rings: Vec<(T, Ring)> = Vec::new();
        for cell in cells {
            let map: SmallVec<[u32; 24]> = cell.points.iter().map(|p| shared_point(&mut points, *p)).collect();
            for face in cell.faces.iter().filter(|f| f.tag != inner) {
                let mut ring: Ring = face.ring.iter().map(|k| map[*k as usize]).collect();
                ring.dedup();
                if ring.len() > 1 && ring.first() == ring.last() {
                    ring.pop();
                }
                if ring.len() >= 3 {
                    rings.push((face.tag, ring));
                }
            }
        }
        let mut faces: Vec<Face<T>> = Vec::new();
        if cells.len() == 1 {
            faces.extend(rings.into_iter().map(|(tag, ring)| Face { ring, tag }));
        } else {
            let mut done: SmallVec<[T; 12]> = SmallVec::new();
            for (tag, _) in &rings {
                if !done.contains(tag) {
                    done.push(*tag);
                    let same: SmallVec<[&[u32]; 8]> =
                        rings.iter().filter(|(t, _)| t == tag).map(|(_, r)| r.as_slice()).collect();
                    faces.extend(outlines(&same).into_iter().map(|ring| Face { ring, tag: *tag }));
                }
            }
        }
        let mut solid = Self { points, faces };
        solid.straighten();
        solid
    }

    /// Volume, mm³.
    #[must_use]
    pub fn volume(&self) -> f64 {
        volume(&self.points, &self.faces)
    }

    /// Drop points in the middle of straight edges and points no face uses.
    fn straighten(&mut self) {
        let mut needed = vec![false; self.points.len()];
        for face in &self.faces {
            let n = face.ring.len();
            for k in 0..n {
                let at = face.ring[k] as usize;
                let before = self.points[face.ring[(k + n - 1) % n] as usize];
                let after = self.points[face.ring[(k + 1) % n] as usize];
                let along = after - before;
                let off = (self.points[at] - before).cross(along).length();
                if off > STRAIGHT * along.length().max(1.0) {
                    needed[at] = true;
                }
            }
        }
        let mut moved = vec![u32::MAX; self.points.len()];
        let mut points = Vec::with_capacity(self.points.len());
        for (k, p) in self.points.iter().enumerate() {
            if needed[k] {
                moved[k] = points.len() as u32;
                points.push(*p);
            }
        }
        for face in &mut self.faces {
            face.ring.retain(|k| needed[*k as usize]);
            for k in &mut face.ring {
                *k = moved[*k as usize];
            }
        }
        self.faces.retain(|f| f.ring.len() >= 3);
        self.points = points;
    }
}

fn shared_point(points: &mut Vec<DVec3>, p: DVec3) -> u32 {
    if let Some(k) = points.iter().position(|q| (*q - p).abs().max_element() < SAME_POINT) {
        return k as u32;
    }
    points.push(p);
    (points.len() - 1) as u32
}

/// The outlines of a patch of rings in one plane: edges walked both ways cancel.
fn outlines(rings: &[&[u32]]) -> SmallVec<[Ring; 2]> {
    if let [only] = rings {
        return smallvec![Ring::from_slice(only)];
    }
    let mut edges: SmallVec<[(u32, u32); 24]> = SmallVec::new();
    for ring in rings {
        for (i, &a) in ring.iter().enumerate() {
            let b = ring[(i + 1) % ring.len()];
            match edges.iter().position(|e| *e == (b, a)) {
                Some(k) => {
                    edges.swap_remove(k);
                }
                None => edges.push((a, b)),
            }
        }
    }
    let mut loops = SmallVec::new();
    while let Some((start, mut at)) = edges.pop() {
        let mut ring: Ring = smallvec![start];
        while at != start {
            ring.push(at);
            match edges.iter().position(|e| e.0 == at) {
                Some(k) => at = edges.swap_remove(k).1,
                None => break,
            }
        }
        loops.push(ring);
    }
    loops
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{ConvexPlan, DVec2, Plane};

    #[test]
    fn a_notched_block_is_one_closed_solid() {
        let plan = ConvexPlan::strip(DVec2::ZERO, DVec2::X, [0.0, 10.0], [-1.0, 1.0], [0, 1, 2, 3]);
        let block = Cell::prism(&plan, |_| 0.0, |_| 4.0, 4, 5);
        let heel = Plane::through(DVec3::new(3.0, 0.0, 0.0), DVec3::X);
        let level = Plane::through(DVec3::new(0.0, 0.0, 1.0), DVec3::Z);
        let (tail, body) = block.split(heel, 7);
        let mut body = body.and_then(|c| c.clipped(level.flipped(), 6)).expect("body");
        body.retag(7, 99);
        let (lower, upper) = tail.expect("tail").split(level, 99);
        let mut upper = upper.expect("upper");
        upper.retag(7, 99);
        let solid = Solid::join(&[body, lower.expect("lower"), upper], 99);
        assert!((solid.volume() - (10.0 * 2.0 * 4.0 - 7.0 * 2.0)).abs() < 1e-9);
        assert_eq!(solid.points.len(), 12);
        assert_eq!(solid.faces.len(), 8);
        let euler = solid.points.len() as i64 - solid.faces.iter().map(|f| f.ring.len() as i64).sum::<i64>() / 2
            + solid.faces.len() as i64;
        assert_eq!(euler, 2);
    }
}
