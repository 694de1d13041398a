//! Outlines follow their arcs, are simple, and use every side of every arc
//! once.

use super::{CheckFailure, OFF_PLANE};
use crate::DVec2;
use crate::surface::types::{ArcId, FaceId, RoofFace, Surface};

/// Outlines up to this many corners have all pairs of sides tried; longer
/// ones are sorted first.
const FEW: usize = 12;

pub(super) fn check(surface: &Surface, failures: &mut Vec<CheckFailure>) {
    let mut used = vec![[0u8; 2]; surface.arcs.len()];
    for (k, face) in surface.faces.iter().enumerate() {
        let id = FaceId(k as u32);
        let next = face.outline.iter().cycle().skip(1);
        for ((&from, &to), &arc) in face.outline.iter().zip(next).zip(&face.arcs) {
            let line = surface.arc(arc);
            let side = if (line.from, line.to) == (from, to) && line.left == Some(id) {
                0
            } else if (line.to, line.from) == (from, to) && line.right == Some(id) {
                1
            } else {
                failures.push(CheckFailure::Outline { face: id, at: surface.node(from) });
                continue;
            };
            let count = &mut used[arc.index()][side];
            *count = count.saturating_add(1);
        }
        let corners: Vec<DVec2> = face.outline.iter().map(|&n| surface.node(n).truncate()).collect();
        if let Some(corner) = fault(&corners) {
            let at = surface.node(face.outline[corner]);
            failures.push(CheckFailure::NotSimple { face: id, at });
        }
    }
    for (k, (arc, used)) in surface.arcs.iter().zip(used).enumerate() {
        let named = [arc.left, arc.right].map(|f| u8::from(f.is_some()));
        let level_enough = surface.node(arc.from).z <= surface.node(arc.to).z;
        if used != named || named == [0, 0] || arc.left == arc.right || !level_enough {
            failures.push(CheckFailure::Sides { arc: ArcId(k as u32), at: surface.node(arc.from) });
        }
    }
}

/// Twice the plan area of an outline, from its first corner.
pub(super) fn twice_area(corners: &[DVec2]) -> f64 {
    let Some(&origin) = corners.first() else { return 0.0 };
    corners.windows(2).map(|pair| (pair[0] - origin).perp_dot(pair[1] - origin)).sum()
}

/// Plan corners of a face.
pub(super) fn corners_of(surface: &Surface, face: &RoofFace) -> Vec<DVec2> {
    face.outline.iter().map(|&n| surface.node(n).truncate()).collect()
}

/// A corner near which an outline crosses itself, or its first corner when it
/// runs clockwise.
fn fault(corners: &[DVec2]) -> Option<usize> {
    if twice_area(corners) <= 0.0 {
        return Some(0);
    }
    let n = corners.len();
    let side = |k: usize| (corners[k], corners[(k + 1) % n]);
    if n <= FEW {
        let pairs = (0..n).flat_map(|a| (a + 2..n).map(move |b| (a, b)));
        return pairs.filter(|&(a, b)| b + 1 - a < n).find(|&(a, b)| cross(side(a), side(b))).map(|(a, _)| a);
    }
    // Along the longest side the sides of a roof face hardly overlap.
    let longest = (0..n).max_by(|&a, &b| {
        let length = |k: usize| side(k).0.distance_squared(side(k).1);
        length(a).total_cmp(&length(b)).then(b.cmp(&a))
    })?;
    let axis = (side(longest).1 - side(longest).0).normalize_or_zero();
    let mut order: Vec<(f64, f64, usize)> = (0..n)
        .map(|k| {
            let (a, b) = (axis.dot(side(k).0), axis.dot(side(k).1));
            (a.min(b), a.max(b), k)
        })
        .collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.2.cmp(&b.2)));
    for (i, &(_, high, a)) in order.iter().enumerate() {
        for &(_, _, b) in order[i + 1..].iter().take_while(|(low, _, _)| *low <= high) {
            if cross(side(a), side(b)) {
                return Some(a.min(b));
            }
        }
    }
    None
}

/// Whether two segments cross with all four ends clear of the other line by
/// more than nodes are ever moved.
fn cross((a, b): (DVec2, DVec2), (c, d): (DVec2, DVec2)) -> bool {
    let parts = |p: DVec2, q: DVec2, r: DVec2, s: DVec2| {
        let way = (q - p).normalize_or_zero();
        let (left, right) = (way.perp_dot(r - p), way.perp_dot(s - p));
        left.min(right) < -OFF_PLANE && left.max(right) > OFF_PLANE
    };
    parts(a, b, c, d) && parts(c, d, a, b)
}
