//! The faces cover the plan once, and their numbers and areas agree.
//!
//! Faces are simple and every arc between two of them is walked once each
//! way, so their outlines add up to the arcs with one face only. If that sum
//! is the rim of the plan, every place of the plan is inside one face. Sums
//! of the moments of area up to the second tell whether it is.

use super::outlines::{corners_of, twice_area};
use super::{CheckFailure, OFF_PLANE, OFF_RIM, beyond};
use crate::surface::types::{FaceId, Surface};
use crate::{DVec2, DVec3};

/// Moments of area of the region left of some edges: 1, x, y, xx, xy, yy.
type Moments = [f64; 6];

pub(super) fn check(surface: &Surface, failures: &mut Vec<CheckFailure>) {
    let rim: Vec<(DVec2, DVec2)> =
        surface.loops.iter().flat_map(|ring| ring.iter().copied().zip(ring.iter().copied().cycle().skip(1))).collect();
    let middle = rim.iter().map(|(a, _)| *a).sum::<DVec2>() / rim.len().max(1) as f64;
    let reach = rim.iter().map(|(a, _)| (*a - middle).length()).fold(1.0, f64::max);
    let length_of = |edges: &[(DVec2, DVec2)]| edges.iter().map(|(a, b)| a.distance(*b)).sum::<f64>();
    let mut open = Vec::new();
    for arc in surface.arcs.iter() {
        let (from, to) = (surface.node(arc.from).truncate(), surface.node(arc.to).truncate());
        match (arc.left, arc.right) {
            (Some(_), None) => open.push((from, to)),
            (None, Some(_)) => open.push((to, from)),
            _ => {}
        }
    }
    let (plan, faces) = (moments(&rim, middle, reach), moments(&open, middle, reach));
    let (rim_length, open_length) = (length_of(&rim), length_of(&open));
    for (moment, (p, f)) in plan.iter().zip(&faces).enumerate() {
        let off = (p - f).abs() / open_length.max(1.0);
        if beyond(off, OFF_RIM) {
            failures.push(CheckFailure::Partition { moment, off });
        }
    }
    // Where uprights stand inside the plan the faces do not hang together,
    // and their number is not bound.
    if open_length - rim_length < OFF_RIM * surface.arcs.len() as f64 {
        let count = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
        let found = count(surface.nodes.len()) - count(surface.arcs.len()) + count(surface.faces.len());
        let expected = 2 - count(surface.loops.len());
        if found != expected {
            failures.push(CheckFailure::Euler { found, expected });
        }
    }
    slope_areas(surface, failures);
}

/// Moments of area by edges, about `middle` and in units of `reach` so that
/// all are of one size: mm2.
fn moments(edges: &[(DVec2, DVec2)], middle: DVec2, reach: f64) -> Moments {
    let mut sums = [0.0; 6];
    for (a, b) in edges {
        let (p, q) = ((*a - middle) / reach, (*b - middle) / reach);
        let twice = (*a - middle).perp_dot(*b - middle);
        let s = p + q;
        let terms = [
            1.0 / 2.0,
            s.x / 6.0,
            s.y / 6.0,
            (p.x * p.x + p.x * q.x + q.x * q.x) / 12.0,
            (p.x * p.y + q.x * q.y + s.x * s.y) / 24.0,
            (p.y * p.y + p.y * q.y + q.y * q.y) / 12.0,
        ];
        for (sum, term) in sums.iter_mut().zip(terms) {
            *sum += twice * term;
        }
    }
    sums
}

/// The area of each face measured in space is its plan area over cos(pitch).
fn slope_areas(surface: &Surface, failures: &mut Vec<CheckFailure>) {
    for (k, face) in surface.faces.iter().enumerate() {
        let corners: Vec<DVec3> = face.outline.iter().map(|&n| surface.node(n)).collect();
        let Some(&origin) = corners.first() else { continue };
        let twice: DVec3 = corners.windows(2).map(|pair| (pair[0] - origin).cross(pair[1] - origin)).sum();
        let rim: f64 = corners.iter().zip(corners.iter().cycle().skip(1)).map(|(a, b)| a.distance(*b)).sum();
        let expected =
            twice_area(&corners_of(surface, face)) * (1.0 + face.plane.tan_pitch * face.plane.tan_pitch).sqrt();
        if beyond((twice.length() - expected).abs(), 2.0 * OFF_PLANE * rim) {
            failures.push(CheckFailure::SlopeArea { face: FaceId(k as u32) });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::moments;
    use crate::DVec2;

    #[test]
    fn moments_of_a_rectangle() {
        let c = [[0.0, 0.0], [4.0, 0.0], [4.0, 2.0], [0.0, 2.0]].map(DVec2::from_array);
        let edges: Vec<(DVec2, DVec2)> = (0..4).map(|k| (c[k], c[(k + 1) % 4])).collect();
        let found = moments(&edges, DVec2::ZERO, 1.0);
        let expected = [8.0, 16.0, 8.0, 4.0f64.powi(3) * 2.0 / 3.0, 16.0, 8.0 * 4.0 / 3.0];
        for (f, e) in found.iter().zip(expected) {
            assert!((f - e).abs() < 1e-12, "{f} {e}");
        }
    }
}
