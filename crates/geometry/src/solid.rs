//! A solid put together from convex cells that fill it without overlap.

use crate::cell::volume;
use crate::patch::{area_vector, edges_of, is_simple, joined};
use crate::{Cell, DVec3, Face, Ring};
use smallvec::SmallVec;

/// Points of neighbouring cells closer than this are one point, mm. They come
/// from the same three planes, so they differ by rounding only.
const SAME_POINT: f64 = 1e-5;

/// A point lies on a straight edge when it is this close to it, mm; as
/// [`SAME_POINT`].
const STRAIGHT: f64 = 1e-5;

/// Faces of one tag lie in one plane when no point is further off it, mm: ten
/// times the rounding of their points.
const SAME_PLANE: f64 = 1e-4;

/// A ring whose area is less than this has no normal to speak of, mm²: a
/// sliver of a metre's length and [`SAME_POINT`] width.
const SLIVER: f64 = 1e-2;

/// A closed solid, not necessarily convex.
#[derive(Clone, Debug, PartialEq)]
pub struct Solid<T> {
    /// Corner points, mm.
    pub points: Vec<DVec3>,
    /// Faces, none with a hole: what surrounds a hole is left in two faces or
    /// more that share a tag and a plane.
    pub faces: Vec<Face<T>>,
}

impl<T: Copy + PartialEq> Solid<T> {
    /// Join cells that fill a solid without overlap. Faces tagged `inner` are
    /// where cells meet and vanish; cells need not share whole faces there.
    /// Faces that share a tag and a plane are joined where they share an edge.
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
            meet_in_corners(&points, &mut rings);
            let mut done: SmallVec<[T; 12]> = SmallVec::new();
            for (tag, _) in &rings {
                if !done.contains(tag) {
                    done.push(*tag);
                    let same: SmallVec<[&[u32]; 8]> =
                        rings.iter().filter(|(t, _)| t == tag).map(|(_, r)| r.as_slice()).collect();
                    faces.extend(patches(&points, &same).into_iter().map(|ring| Face { ring, tag: *tag }));
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
    // Most points differ in the first coordinate.
    let same = |a: f64, b: f64| (a - b).abs() < SAME_POINT;
    if let Some(k) = points.iter().position(|q| same(q.x, p.x) && same(q.y, p.y) && same(q.z, p.z)) {
        return k as u32;
    }
    points.push(p);
    (points.len() - 1) as u32
}

/// Make every edge end where another cell has a corner on it, so that edges
/// match in pairs.
fn meet_in_corners<T>(points: &[DVec3], rings: &mut [(T, Ring)]) {
    let mut edges: SmallVec<[(u32, u32); 128]> = rings.iter().flat_map(|(_, r)| edges_of(r)).collect();
    edges.sort_unstable();
    let paired = |(a, b): (u32, u32)| edges.binary_search(&(b, a)).is_ok();
    let mut used: SmallVec<[u32; 64]> = SmallVec::new();
    for (_, ring) in rings.iter_mut() {
        if edges_of(ring).all(paired) {
            continue;
        }
        if used.is_empty() {
            used.extend(edges.iter().map(|e| e.0));
            used.dedup();
        }
        let mut whole = Ring::new();
        for (a, b) in edges_of(ring) {
            whole.push(a);
            if paired((a, b)) {
                continue;
            }
            let (from, to) = (points[a as usize], points[b as usize]);
            let (along, length) = ((to - from).normalize_or_zero(), (to - from).length());
            let mut on: SmallVec<[(f64, u32); 4]> = used
                .iter()
                .filter(|k| **k != a && **k != b)
                .filter_map(|&k| {
                    let out = points[k as usize] - from;
                    let t = out.dot(along);
                    let near = t > 0.0 && t < length && (out - along * t).length_squared() < STRAIGHT * STRAIGHT;
                    near.then_some((t, k))
                })
                .collect();
            on.sort_by(|x, y| x.0.total_cmp(&y.0));
            whole.extend(on.into_iter().map(|(_, k)| k));
        }
        *ring = whole;
    }
}

/// Rings of one tag in one plane.
struct Sheet {
    normal: DVec3,
    offset: f64,
    rings: SmallVec<[usize; 8]>,
}

/// Sort rings of one tag by plane and join those of each.
fn patches(points: &[DVec3], rings: &[&[u32]]) -> Vec<Ring> {
    if let [only] = rings
        && is_simple(only)
    {
        return vec![Ring::from_slice(only)];
    }
    let areas: SmallVec<[DVec3; 8]> = rings.iter().map(|r| area_vector(points, r)).collect();
    // The largest ring of a plane gives its normal: slivers go with it.
    let mut by_size: SmallVec<[usize; 8]> = (0..rings.len()).collect();
    by_size.sort_by(|a, b| areas[*b].length_squared().total_cmp(&areas[*a].length_squared()));
    let mut planes: SmallVec<[Sheet; 2]> = SmallVec::new();
    for k in by_size {
        let fits = |normal: DVec3, offset: f64| {
            (areas[k].dot(normal) > 0.0 || areas[k].length() < 2.0 * SLIVER)
                && rings[k].iter().all(|i| (normal.dot(points[*i as usize]) - offset).abs() < SAME_PLANE)
        };
        match planes.iter_mut().find(|s| fits(s.normal, s.offset)) {
            Some(sheet) => sheet.rings.push(k),
            None => {
                let normal = areas[k].normalize_or_zero();
                let offset = rings[k].first().map_or(0.0, |i| normal.dot(points[*i as usize]));
                planes.push(Sheet { normal, offset, rings: SmallVec::from_slice(&[k]) });
            }
        }
    }
    for sheet in &mut planes {
        sheet.rings.sort_unstable();
    }
    planes.sort_by_key(|s| s.rings.first().copied());
    planes
        .iter()
        .flat_map(|sheet| {
            let these: SmallVec<[&[u32]; 8]> = sheet.rings.iter().map(|k| rings[*k]).collect();
            joined(points, sheet.normal, &these)
        })
        .collect()
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
