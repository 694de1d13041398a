//! How stations on one slope stand opposite those on the next across a ridge.
//!
//! Where walls are parallel both slopes measure along one axis. Where they are
//! not quite, each slope has its own, and opposite rafters meet in one point of
//! the ridge.

use super::PARALLEL;
use super::spines::is_ridge;
use geometry::DVec2;
use geometry::surface::{FaceId, Surface};

/// Walls that turn from one another by no more than this (as a sine: some 3°)
/// have their rafters in pairs: bays then differ by less than 1 in 500.
pub const MOST_TURN: f64 = 0.05;

/// A slope of a group that shares its stations.
#[derive(Clone, Copy, Debug)]
pub struct Paired {
    /// The slope.
    pub face: FaceId,
    /// Unit vector along its walls, the way of the group's axis.
    pub axis: DVec2,
    /// Own distance is `shift + scale` times that of the group.
    shift: f64,
    scale: f64,
}

impl Paired {
    /// A distance along the group's axis, along the slope's own, mm.
    pub fn to_own(self, at: f64) -> f64 {
        self.shift + self.scale * at
    }

    /// A distance along the slope's own axis, along the group's, mm.
    pub fn to_group(self, at: f64) -> f64 {
        (at - self.shift) / self.scale
    }
}

/// The slopes of a group, each with its own measure along `axis`, which is that
/// of the first.
pub fn across_ridges(surface: &Surface, members: &[FaceId], axis: DVec2) -> Vec<Paired> {
    let mut out: Vec<Paired> = Vec::with_capacity(members.len());
    out.extend(members.first().map(|face| Paired { face: *face, axis, shift: 0.0, scale: 1.0 }));
    let mut next = 0;
    while let Some(&from) = out.get(next) {
        next += 1;
        for arc in surface.arcs.iter().filter(|a| is_ridge(surface, a)) {
            let other = match (arc.left, arc.right) {
                (Some(a), Some(b)) if a == from.face => b,
                (Some(a), Some(b)) if b == from.face => a,
                _ => continue,
            };
            if members.contains(&other) && !out.iter().any(|p| p.face == other) {
                let ridge = [arc.from, arc.to].map(|n| surface.node(n).truncate());
                out.push(over(&from, other, surface.face(other).plane.inward, ridge));
            }
        }
    }
    // What no ridge of its own joins to the first measures as that does.
    for face in members {
        if !out.iter().any(|p| p.face == *face) {
            out.push(Paired { face: *face, axis, shift: 0.0, scale: 1.0 });
        }
    }
    out.sort_by_key(|p| members.iter().position(|f| *f == p.face));
    out
}

/// The measure of a slope across a ridge from another.
fn over(from: &Paired, face: FaceId, inward: DVec2, [a, b]: [DVec2; 2]) -> Paired {
    let square = inward.perp();
    let axis = if square.dot(from.axis) < 0.0 { -square } else { square };
    let (there, here) = (from.axis.dot(b - a), axis.dot(b - a));
    if axis.perp_dot(from.axis).abs() <= PARALLEL || there.abs() <= PARALLEL {
        return Paired { face, ..*from };
    }
    // Both have the same distance where the ridge is.
    let turn = here / there;
    let shift = axis.dot(a) - turn * from.axis.dot(a);
    Paired { face, axis, shift: shift + turn * from.shift, scale: turn * from.scale }
}
