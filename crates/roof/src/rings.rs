//! Flat rings in space: their area, and the part of one that lies abreast of
//! another. The check of the frame has its own, on purpose.

use geometry::DVec3;

/// Twice the area of a flat ring, along its normal.
pub fn area_vector(ring: &[DVec3]) -> DVec3 {
    ring[1..].windows(2).map(|w| (w[0] - ring[0]).cross(w[1] - ring[0])).fold(DVec3::ZERO, |a, b| a + b)
}

/// The part of a flat ring that lies abreast of a convex one with this normal;
/// empty if there is none.
pub fn abreast(ring: &[DVec3], border: &[DVec3], normal: DVec3) -> Vec<DVec3> {
    let mut left = ring.to_vec();
    for (k, &p) in border.iter().enumerate() {
        left = inside(&left, p, (border[(k + 1) % border.len()] - p).cross(normal));
        if left.len() < 3 {
            return Vec::new();
        }
    }
    left
}

/// The part of a ring on the inner side of the plane through `p`; `out` points
/// out of it.
fn inside(ring: &[DVec3], p: DVec3, out: DVec3) -> Vec<DVec3> {
    let mut kept = Vec::with_capacity(ring.len() + 1);
    for (i, &a) in ring.iter().enumerate() {
        let b = ring[(i + 1) % ring.len()];
        let (da, db) = (out.dot(a - p), out.dot(b - p));
        if da <= 0.0 {
            kept.push(a);
        }
        if (da < 0.0 && db > 0.0) || (da > 0.0 && db < 0.0) {
            kept.push(a + (b - a) * (da / (da - db)));
        }
    }
    kept
}
