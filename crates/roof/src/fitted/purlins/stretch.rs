//! Where a level line on a face begins and ends.

use geometry::DVec2;
use geometry::surface::{ArcId, FaceId, Surface};

/// A level line on a face, from one edge of its outline to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Both ends as distances along the face's walls, mm, in rising order.
    pub reach: [f64; 2],
    /// The lines of the surface at both ends.
    pub ends: [ArcId; 2],
}

/// The direction of a face's walls, with the building on the left.
pub fn along(surface: &Surface, face: FaceId) -> DVec2 {
    -surface.face(face).plane.inward.perp()
}

/// The stretches of the level line `inwards` mm in plan from the face's base line.
pub fn at(surface: &Surface, face: FaceId, inwards: f64) -> Vec<Stretch> {
    let f = surface.face(face);
    let axis = along(surface, face);
    let n = f.outline.len();
    let flat = |k: usize| {
        let p = surface.node(f.outline[k % n]).truncate();
        (axis.dot(p), f.plane.inward.dot(p) - f.plane.offset - inwards)
    };
    let mut crossings: Vec<(f64, ArcId)> = (0..n)
        .filter_map(|k| {
            let ((xa, ya), (xb, yb)) = (flat(k), flat(k + 1));
            ((ya <= 0.0) != (yb <= 0.0)).then(|| (xa + (xb - xa) * (ya / (ya - yb)), f.arcs[k]))
        })
        .collect();
    crossings.sort_by(|a, b| a.0.total_cmp(&b.0));
    crossings
        .chunks_exact(2)
        .map(|pair| Stretch { reach: [pair[0].0, pair[1].0], ends: [pair[0].1, pair[1].1] })
        .collect()
}

/// How far a face reaches inwards in plan from its base line: least and most, mm.
pub fn depth(surface: &Surface, face: FaceId) -> [f64; 2] {
    let f = surface.face(face);
    f.outline.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], n| {
        let d = f.plane.inward.dot(surface.node(*n).truncate()) - f.plane.offset;
        [lo.min(d), hi.max(d)]
    })
}
