//! Flat rings in space: their area, and the part of one that lies abreast of
//! another. The check of the frame has its own, on purpose.

use geometry::DVec3;
use smallvec::SmallVec;

/// A ring that a face leaves of another; few have more corners than this holds
/// without a heap block.
pub type Corners = SmallVec<[DVec3; 8]>;

/// Twice the area of a flat ring, along its normal.
pub fn area_vector(ring: &[DVec3]) -> DVec3 {
    ring[1..].windows(2).map(|w| (w[0] - ring[0]).cross(w[1] - ring[0])).fold(DVec3::ZERO, |a, b| a + b)
}

/// The part of a flat ring that lies abreast of a convex one with this normal;
/// empty if there is none.
pub fn abreast(ring: &[DVec3], border: &[DVec3], normal: DVec3) -> Corners {
    let (mut one, mut other) = (Corners::from_slice(ring), Corners::new());
    let (mut left, mut kept) = (&mut one, &mut other);
    for (k, &p) in border.iter().enumerate() {
        let next = if k + 1 < border.len() { border[k + 1] } else { border[0] };
        inside(left, p, (next - p).cross(normal), kept);
        if kept.len() < 3 {
            return Corners::new();
        }
        core::mem::swap(&mut left, &mut kept);
    }
    core::mem::take(left)
}

/// Put the part of a ring on the inner side of the plane through `p` into
/// `kept`; `out` points out of the plane.
fn inside(ring: &[DVec3], p: DVec3, out: DVec3, kept: &mut Corners) {
    kept.clear();
    for (i, &a) in ring.iter().enumerate() {
        let b = if i + 1 < ring.len() { ring[i + 1] } else { ring[0] };
        let (da, db) = (out.dot(a - p), out.dot(b - p));
        if da <= 0.0 {
            kept.push(a);
        }
        if (da < 0.0 && db > 0.0) || (da > 0.0 && db < 0.0) {
            kept.push(a + (b - a) * (da / (da - db)));
        }
    }
}
