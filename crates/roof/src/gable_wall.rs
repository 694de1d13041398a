//! The upright pieces of wall under the roof's edges: where the masonry of a
//! gable ends below the rafters or the rungs of its ladder.

use crate::fitted::ladder::NARROWEST;
use crate::fitted::verges::{self, VergeEdge};
use crate::frame::heights::Heights;
use crate::solution::GableOut;
use geometry::surface::{ArcKind, Surface, WallId};
use geometry::{DVec2, DVec3};
use job::Job;

/// The masonry ends this far below the timber, mm, plumb: a bed of mortar or a
/// packing (common practice).
const BED: f64 = 10.0;

/// Points of an outline nearer than this are one, mm.
const SAME_POINT: f64 = 0.5;

/// Lines that turn less than this (rise per mm) go straight on.
const STRAIGHT: f64 = 1e-6;

/// The lines of two neighbouring slopes meet at most this far from where their
/// edges do, mm; further off the masonry steps.
const FARTHEST_MEETING: f64 = 500.0;

/// A piece of the upper edge of a wall: from and to along the wall, and the
/// masonry's heights there, mm.
#[derive(Clone, Copy, Debug)]
struct Top {
    s: [f64; 2],
    z: [f64; 2],
}

impl Top {
    fn slope(&self) -> f64 {
        (self.z[1] - self.z[0]) / (self.s[1] - self.s[0])
    }

    fn at(&self, s: f64) -> f64 {
        self.z[0] + self.slope() * (s - self.s[0])
    }
}

/// The outlines of all gables and other upright pieces of wall.
pub fn of(job: &Job, surface: &Surface, heights: &Heights) -> Vec<GableOut> {
    let mut edges = verges::of(surface);
    let mut out = Vec::new();
    while let Some(first) = edges.first().copied() {
        let (line, rest): (Vec<VergeEdge>, Vec<VergeEdge>) = edges.into_iter().partition(|e| e.in_line(&first));
        edges = rest;
        for group in chains(line) {
            out.extend(outline(job, surface, heights, &group));
        }
    }
    out.sort_by(|a: &GableOut, b: &GableOut| a.wall.cmp(&b.wall));
    out
}

/// Edges over one line, parted into those that hang together.
fn chains(mut line: Vec<VergeEdge>) -> Vec<Vec<VergeEdge>> {
    let mut out = Vec::new();
    while let Some(first) = line.pop() {
        let mut chain = vec![first];
        loop {
            let linked =
                |e: &VergeEdge| chain.iter().any(|c| c.joins(e).is_some() || (c.wall.is_some() && c.wall == e.wall));
            let Some(k) = line.iter().position(linked) else { break };
            chain.push(line.swap_remove(k));
        }
        out.push(chain);
    }
    out
}

/// The outline of one upright piece of wall.
fn outline(job: &Job, surface: &Surface, heights: &Heights, chain: &[VergeEdge]) -> Option<GableOut> {
    let first = chain.first()?;
    let (out, at) = (first.out, first.at());
    let along: DVec2 = out.perp();
    let mut tops: Vec<Top> = chain.iter().map(|e| under(job, surface, heights, e, along)).collect();
    tops.extend(level_tops(job, surface, chain, along));
    tops.retain(|t| t.s[1] - t.s[0] > SAME_POINT);
    tops.sort_by(|a, b| a.s[0].total_cmp(&b.s[0]));
    let wall = first.wall.or_else(|| surface.face(first.face).walls.first().copied())?;
    let lowest = chain.iter().map(|e| e.ends[0].z).fold(f64::INFINITY, f64::min);
    let base = first.wall.map_or(lowest, |w| plate(job, w).min(lowest));
    let profile = profile(&tops, base);
    let (from, to) = (profile.first()?.0, profile.last()?.0);
    // Anticlockwise seen from outside: along the base, then back over the top.
    let mut points: Vec<(f64, f64)> = vec![(from, base), (to, base)];
    points.extend(profile.into_iter().rev());
    points.dedup_by(|a, b| (a.0 - b.0).abs().max((a.1 - b.1).abs()) < SAME_POINT);
    if points.len() > 1
        && points.first().zip(points.last()).is_some_and(|(a, b)| (a.0 - b.0).abs().max((a.1 - b.1).abs()) < SAME_POINT)
    {
        points.pop();
    }
    let area = area(&points);
    if points.len() < 3 || area < SAME_POINT {
        return None;
    }
    let place = |(s, z): (f64, f64)| {
        let flat = out * at + along * s;
        DVec3::new(flat.x, flat.y, z).to_array()
    };
    Some(GableOut {
        wall: job.walls.get(wall.index()).map_or_else(String::new, |w| w.letter.clone()),
        outline: points.into_iter().map(place).collect(),
        area_m2: area / 1e6,
    })
}

fn plate(job: &Job, wall: WallId) -> f64 {
    job.walls.get(wall.index()).map_or(0.0, |w| w.plate)
}

/// The masonry's top under the edge of a slope.
fn under(job: &Job, surface: &Surface, heights: &Heights, edge: &VergeEdge, along: DVec2) -> Top {
    let plane = surface.face(edge.face).plane;
    let per_run = (1.0 + plane.tan_pitch * plane.tan_pitch).sqrt();
    let rafter = job.timber.rafter.size;
    // Rungs cross the wall where there is room for them; elsewhere the
    // rafters stand beside it.
    let clear = job.verge.overhang + job.verge.inset - rafter.thickness;
    let rungs = job.timber.parts.ladder.filter(|l| clear >= NARROWEST && l.size.depth <= rafter.depth);
    let deep = rungs.map_or(rafter.depth, |l| l.size.depth);
    let below = heights.upstand - deep * per_run - BED;
    let ends = edge.ends.map(|p| (along.dot(p.truncate()), p.z + below));
    let [a, b] = if ends[0].0 <= ends[1].0 { ends } else { [ends[1], ends[0]] };
    Top { s: [a.0, b.0], z: [a.1, b.1] }
}

/// Level tops of a wall that is carried up part of the way, under the plates
/// of the slopes that start there.
fn level_tops(job: &Job, surface: &Surface, chain: &[VergeEdge], along: DVec2) -> Vec<Top> {
    let low = chain.iter().map(|e| e.ends[0].z).fold(f64::INFINITY, f64::min);
    let Some(first) = chain.first() else { return Vec::new() };
    let touches = |p: DVec3| chain.iter().any(|e| e.ends.iter().any(|q| (*q - p).length() < SAME_POINT));
    surface
        .arcs
        .iter()
        .filter(|a| a.kind == ArcKind::Eaves)
        .map(|a| [surface.node(a.from), surface.node(a.to)])
        .filter(|ends| ends.iter().all(|p| (first.out.dot(p.truncate()) - first.at()).abs() < SAME_POINT))
        .filter(|ends| ends[0].z > low + SAME_POINT && ends.iter().any(|p| touches(*p)))
        .map(|ends| {
            let s = ends.map(|p| along.dot(p.truncate()));
            let z = ends[0].z - job.timber.plate.thickness;
            Top { s: [s[0].min(s[1]), s[0].max(s[1])], z: [z, z] }
        })
        .collect()
}

/// The upper edge of the masonry above its base, as points along the wall.
fn profile(tops: &[Top], base: f64) -> Vec<(f64, f64)> {
    let mut line: Vec<(f64, f64)> = Vec::new();
    for (k, top) in tops.iter().enumerate() {
        let meeting = |a: &Top, b: &Top| {
            let turn = a.slope() - b.slope();
            if turn.abs() < STRAIGHT {
                return None;
            }
            let s = (b.z[0] - b.slope() * b.s[0] - a.z[0] + a.slope() * a.s[0]) / turn;
            ((s - a.s[1]).abs() < FARTHEST_MEETING).then(|| (s, a.at(s)))
        };
        let before = k.checked_sub(1).and_then(|j| tops.get(j));
        line.push(before.and_then(|b| meeting(b, top)).unwrap_or((top.s[0], top.z[0])));
        line.push(tops.get(k + 1).and_then(|next| meeting(top, next)).unwrap_or((top.s[1], top.z[1])));
    }
    // What lies below the base is not wall: a slope starts where it rises past it.
    let mut out: Vec<(f64, f64)> = Vec::new();
    for pair in line.windows(2) {
        let [(sa, za), (sb, zb)] = [pair[0], pair[1]];
        if out.is_empty() && za >= base {
            out.push((sa, za));
        }
        if (za < base) != (zb < base) {
            out.push((sa + (sb - sa) * ((base - za) / (zb - za)), base));
        }
        if zb >= base {
            out.push((sb, zb));
        }
    }
    out
}

/// Area of a closed outline, mm².
fn area(points: &[(f64, f64)]) -> f64 {
    let n = points.len();
    let cross = |k: usize| {
        let (a, b) = (points[k], points[(k + 1) % n]);
        a.0 * b.1 - b.0 * a.1
    };
    ((0..n).map(cross).sum::<f64>() / 2.0).abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plain_gable_is_a_triangle() {
        let tops = [Top { s: [0.0, 3000.0], z: [-50.0, 2950.0] }, Top { s: [3000.0, 6000.0], z: [2950.0, -50.0] }];
        assert_eq!(profile(&tops, 0.0), [(50.0, 0.0), (3000.0, 2950.0), (3000.0, 2950.0), (5950.0, 0.0)]);
        let points = [(50.0, 0.0), (5950.0, 0.0), (3000.0, 2950.0)];
        assert!((area(&points) - 5900.0 * 2950.0 / 2.0).abs() < 1e-6);
    }

    #[test]
    fn unlike_slopes_meet_off_the_ridge() {
        // The steeper rafter hangs lower: its line meets the other's past the ridge.
        let tops = [Top { s: [0.0, 2000.0], z: [0.0, 2000.0] }, Top { s: [2000.0, 6000.0], z: [1900.0, -100.0] }];
        let top = profile(&tops, 0.0);
        assert!(
            top.iter().any(|(s, z)| (s - 1_933.333_333).abs() < 1e-3 && (z - 1_933.333_333).abs() < 1e-3),
            "{top:?}"
        );
    }
}
