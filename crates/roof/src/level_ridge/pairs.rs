//! Pairs of slopes that meet in a line that falls and should not, or that
//! should be one slope.

use super::PARALLEL;
use crate::frame::heights;
use geometry::DVec2;
use geometry::plan::wall_ends;
use geometry::surface::{ArcKind, FaceId, RoofArc, RoofPlane, Surface, WallId};
use job::Job;

/// Slopes whose fall lines are nearer to opposite than this (as a cosine: 10°)
/// face one another; past it their plates are not meant to be parallel.
const FACING: f64 = -0.985;

/// Slopes in one direction whose lines are nearer than this lie on one line, mm.
const IN_LINE: f64 = 1e-6;

/// Two slopes that meet in a line that should be level, or none at all.
pub struct Pair {
    /// Length of the line in plan, mm.
    pub length: f64,
    /// How much the line falls, mm.
    pub falls: f64,
    /// They face the same way: they should be one slope.
    pub one: bool,
    /// The slopes, the lower number first.
    pub faces: [FaceId; 2],
}

/// All pairs over a surface, those that should be one slope first, then the
/// longest.
pub fn all(job: &Job, surface: &Surface, plates: &[Vec<DVec2>]) -> Vec<Pair> {
    let mut pairs: Vec<Pair> = surface.arcs.iter().filter_map(|arc| pair_at(surface, arc)).collect();
    pairs.extend(halves(job, surface, plates));
    pairs.sort_by(|a, b| b.one.cmp(&a.one).then(b.length.total_cmp(&a.length)).then(a.faces.cmp(&b.faces)));
    pairs
}

/// Whether two slopes that face the same way are alike but for their lines.
fn are_parted(p: RoofPlane, q: RoofPlane) -> bool {
    let apart = p.inward.perp_dot(q.inward).abs() > PARALLEL || (p.offset - q.offset).abs() > IN_LINE;
    apart && p.tan_pitch == q.tan_pitch && p.base_height == q.base_height
}

/// The slopes beside a line, if it should be level or none at all.
fn pair_at(surface: &Surface, arc: &RoofArc) -> Option<Pair> {
    let faces = [arc.left?, arc.right?];
    let [p, q] = faces.map(|f| surface.face(f).plane);
    let facing = p.inward.dot(q.inward);
    let one = facing > -FACING && are_parted(p, q);
    let over = facing < FACING && matches!(arc.kind, ArcKind::Ridge | ArcKind::Hip | ArcKind::BrokenHip);
    if !(one || over && p.inward.perp_dot(q.inward).abs() > PARALLEL) {
        return None;
    }
    let (from, to) = (surface.node(arc.from), surface.node(arc.to));
    let [a, b] = faces;
    Some(Pair {
        length: (to - from).truncate().length(),
        falls: (to.z - from.z).abs(),
        one,
        faces: [a.min(b), a.max(b)],
    })
}

/// Slopes that face the same third one across a ridge, on either side of a
/// wing, and lie so near to one line that firring makes one slope of them.
fn halves(job: &Job, surface: &Surface, plates: &[Vec<DVec2>]) -> Vec<Pair> {
    let plane = |f: FaceId| surface.face(f).plane;
    let mut across: Vec<[FaceId; 2]> = Vec::new();
    for arc in &surface.arcs {
        if let (Some(a), Some(b)) = (arc.left, arc.right)
            && plane(a).inward.dot(plane(b).inward) < FACING
        {
            across.extend([[a, b], [b, a]]);
        }
    }
    across.sort_unstable();
    across.dedup();
    let mut out = Vec::new();
    for (k, [third, a]) in across.iter().enumerate() {
        for [_, b] in across[k + 1..].iter().take_while(|[other, _]| other == third) {
            let (p, q) = (plane(*a), plane(*b));
            let reach = [p, q].map(|plane| across_reach(job, surface, plates, &[*a, *b], plane.inward));
            let by = reach.iter().map(|[low, high]| high - low).fold(f64::INFINITY, f64::min);
            let near = by * p.tan_pitch <= job.setting_out.packing;
            if near && are_parted(p, q) {
                out.push(Pair { length: 0.0, falls: 0.0, one: true, faces: [*a, *b] });
            }
        }
    }
    out
}

/// Least and greatest reach of the plates under some slopes along a direction.
pub fn across_reach(job: &Job, surface: &Surface, plates: &[Vec<DVec2>], faces: &[FaceId], inward: DVec2) -> [f64; 2] {
    let walls = faces.iter().flat_map(|f| &surface.face(*f).walls);
    let reach = walls.filter_map(|w| reach_of(job, plates, *w)).flatten().map(|p| inward.dot(p));
    reach.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], d| [low.min(d), high.max(d)])
}

/// Both ends of the plate of a wall, run out under the verges beside it.
fn reach_of(job: &Job, plates: &[Vec<DVec2>], wall: WallId) -> Option<[DVec2; 2]> {
    let [from, to] = wall_ends(plates, wall.index())?;
    let mut first = 0;
    let ring = plates.iter().map(Vec::len).find(|n| {
        let here = wall.index() < first + n;
        first += if here { 0 } else { *n };
        here
    })?;
    let k = wall.index() - first;
    let past = |neighbour: usize| {
        let upright = job.walls.get(first + neighbour).is_some_and(heights::starts_upright);
        if upright { job.verge.overhang } else { 0.0 }
    };
    let along = (to - from).normalize_or_zero();
    Some([from - along * past((k + ring - 1) % ring), to + along * past((k + 1) % ring)])
}
