//! Marks of plates, ridges, hips and valleys: by walls and corners.

use super::{Given, Marks};
use crate::frame::timber::{Role, Timber};
use crate::solution::MemberKind;
use geometry::surface::{FaceId, Surface};

/// The corner of the plan between two walls, and its number.
pub struct Corner {
    /// The wall that ends there and the one that starts there.
    pub walls: [usize; 2],
    /// Where it is, mm.
    pub at: geometry::DVec2,
    /// It turns in.
    pub hollow: bool,
    /// Its number among the corners that turn the same way, from 1.
    pub number: usize,
}

/// The corners of the plan from which hips and valleys rise.
pub fn corners(surface: &Surface) -> Vec<Corner> {
    let mut out: Vec<Corner> = Vec::new();
    let mut first = 0;
    for ring in &surface.loops {
        let n = ring.len();
        for k in 0..n {
            let (before, at, after) = (ring[(k + n - 1) % n], ring[k], ring[(k + 1) % n]);
            let walls = [first + (k + n - 1) % n, first + k];
            let hollow = (at - before).perp_dot(after - at) < 0.0;
            let sloped = |w: &usize| surface.faces.iter().any(|f| f.walls.iter().any(|id| id.index() == *w));
            if walls.iter().all(sloped) {
                let number = out.iter().filter(|c| c.hollow == hollow).count() + 1;
                out.push(Corner { walls, at, hollow, number });
            }
        }
        first += n;
    }
    out
}

/// Name the plates and what lies on the lines of the roof.
pub fn name(surface: &Surface, timbers: &[Timber], marks: &mut Marks, given: &mut Given) {
    for (k, t) in timbers.iter().enumerate().filter(|(_, t)| t.is_numbered()) {
        if matches!(t.role, Role::Plate { .. }) {
            let letter = marks.walls[k].clone().unwrap_or_default();
            marks.names[k] = given.unique(&format!("Plate-{letter}"), 1);
            marks.order.push(k);
        }
    }
    let corners = corners(surface);
    for (kind, word) in [
        (MemberKind::RidgeBoard, "Ridge"),
        (MemberKind::HipRafter, "Hip"),
        (MemberKind::ValleyRafter, "Valley"),
        (MemberKind::Purlin, "Purlin"),
    ] {
        let from_corner = matches!(kind, MemberKind::HipRafter | MemberKind::ValleyRafter);
        let hollow = kind == MemberKind::ValleyRafter;
        let mut spines: Vec<(Option<usize>, [usize; 2], usize)> = timbers
            .iter()
            .enumerate()
            .filter(|(_, t)| t.kind == kind && t.is_numbered())
            .filter_map(|(k, t)| {
                let Role::Spine { left, right } = t.role else { return None };
                let on = |face: FaceId, wall: usize| surface.face(face).walls.iter().any(|w| w.index() == wall);
                let between = |c: &&Corner| {
                    c.hollow == hollow
                        && ((on(left, c.walls[0]) && on(right, c.walls[1]))
                            || (on(left, c.walls[1]) && on(right, c.walls[0])))
                };
                let near = |a: &&Corner, b: &&Corner| (a.at - t.foot).length().total_cmp(&(b.at - t.foot).length());
                let corner = corners.iter().filter(|_| from_corner).filter(between).min_by(near);
                let first = |face: FaceId| surface.face(face).walls.iter().map(|w| w.index()).min().unwrap_or(0);
                let mut walls = [left, right].map(first);
                walls.sort_unstable();
                Some((corner.map(|c| c.number), walls, k))
            })
            .collect();
        let place = |k: usize| (timbers[k].base, timbers[k].foot.x, timbers[k].foot.y);
        // Those from corners come first, the lowest of a corner before what rises above it.
        spines.sort_by(|a, b| {
            let (p, q) = (place(a.2), place(b.2));
            (a.0.is_none(), a.0, a.1)
                .cmp(&(b.0.is_none(), b.0, b.1))
                .then(p.0.total_cmp(&q.0).then(p.1.total_cmp(&q.1)).then(p.2.total_cmp(&q.2)))
        });
        let corners = corners.iter().filter(|c| from_corner && c.hollow == hollow).count();
        let mut seen: Vec<usize> = Vec::new();
        let mut count = corners;
        for (corner, _, k) in &spines {
            let number = corner.filter(|c| !seen.contains(c)).unwrap_or_else(|| {
                count += 1;
                count
            });
            seen.push(number);
            marks.names[*k] = given.unique(&format!("{word}-{number}"), 1);
        }
        let mut order: Vec<usize> = spines.iter().map(|s| s.2).collect();
        let number = |k: &usize| marks.names[*k].rsplit('-').next().and_then(|n| n.parse::<usize>().ok());
        order.sort_by_key(number);
        marks.order.extend(order);
    }
}
