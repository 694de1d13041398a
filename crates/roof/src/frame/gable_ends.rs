//! Where rafters stand beside gables, square to the eaves or not.
//!
//! A carpenter keeps the end rafters square to the eaves, like all the others:
//! the pair stands inside the gable where the whole of it clears the wall, and
//! where the wall runs on far past that, more rafters follow that end on it.
//! The verge is what is seen against the wall, so outside a gable that is out
//! of square the rafters follow the wall.

use super::heights::{Heights, starts_upright};
use super::pairing::Paired;
use geometry::surface::{ArcKind, FaceId, Surface, WallId};
use geometry::{DVec2, HalfPlan};
use job::Job;

/// Gables nearer to square than this (as a sine) are square.
const PARALLEL: f64 = 1e-6;

/// A verge further from square to the eaves than this (as a sine: 45°) is not
/// the end of a row of rafters: they run into it one by one.
pub const MOST_SKEW: f64 = 0.707_2;

/// A line lies on a wall when its ends miss it by less, mm: the framing tidy
/// of a surface moves no node further.
const ON_WALL: f64 = 0.5;

/// Lines of rafters along a gable are looked up this far inside it, mm.
const JUST_INSIDE: f64 = 1e-3;

/// The line of a rafter that runs along a gable out of square.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rake {
    /// Unit plan vector square to the gable, away from the roof.
    pub out: DVec2,
    /// Where the gable's own line lies along it, mm.
    pub gable: f64,
    /// Where the rafter's centre line lies along it, mm.
    pub at: f64,
}

impl Rake {
    /// The plan direction of the rafter, up a slope.
    pub fn dir(&self, inward: DVec2) -> DVec2 {
        let along = self.out.perp();
        if along.dot(inward) < 0.0 { -along } else { along }
    }

    /// Where along [`Self::out`] the roof's lines are looked up, mm.
    pub fn inside(&self) -> f64 {
        self.gable - JUST_INSIDE
    }
}

/// A gable that ends a row of rafters in one face.
#[derive(Clone, Copy, Debug)]
pub struct GableEnd {
    /// The face.
    pub face: FaceId,
    /// Its innermost and outermost point along the axis, mm, those of the
    /// faces across the ridge included.
    pub reach: [f64; 2],
    /// Which way along the axis the roof lies.
    pub inward: f64,
    /// It stands on a wall that is carried up from its plate, so that a rafter
    /// outside it has a plate under its foot.
    pub upright: bool,
    /// Unit plan vector square to it, away from the roof, where it is not
    /// square to the eaves; and where it lies along that, mm.
    pub skew: Option<(DVec2, f64)>,
    /// Where along the axis the rafters outside a gable out of square come
    /// furthest in: the inner sides of their tails, mm.
    pub tail: Option<f64>,
}

/// One edge of a face on a gable.
#[derive(Clone, Copy)]
struct Edge {
    of: Paired,
    ends: [DVec2; 2],
    out: DVec2,
}

impl Edge {
    /// Where a plan point lies along the axis of the group, mm, straight up the
    /// slope that the edge ends.
    fn along(&self, p: DVec2) -> f64 {
        self.of.to_group(self.of.axis.dot(p))
    }

    fn is_square(&self) -> bool {
        self.out.perp_dot(self.of.axis).abs() <= PARALLEL
    }

    fn in_line(&self, other: &Self) -> bool {
        self.out.dot(other.out) > 0.0 && other.ends.iter().all(|p| self.out.dot(*p - self.ends[0]).abs() < ON_WALL)
    }
}

/// The gables that end the rows of rafters of some faces on the two sides of a
/// ridge.
pub fn of_group(job: &Job, surface: &Surface, heights: &Heights, members: &[Paired]) -> Vec<GableEnd> {
    let edges: Vec<Edge> = members.iter().flat_map(|m| edges_of(surface, m)).collect();
    let mut ends: Vec<GableEnd> = Vec::new();
    let mut told: Vec<Edge> = Vec::new();
    for edge in &edges {
        if told.iter().any(|t| t.of.face == edge.of.face && t.in_line(edge)) {
            continue;
        }
        told.push(*edge);
        // The face lies on the left of its outline.
        let inward = -edge.out.dot(edge.of.axis).signum();
        let line = || edges.iter().filter(|e| edge.in_line(e));
        let square = line().all(Edge::is_square);
        let reach = if square {
            [edge.along(edge.ends[0]); 2]
        } else {
            let all = line().flat_map(|e| e.ends.map(|p| e.along(p) * inward));
            let [low, high] = all.fold([f64::INFINITY, f64::NEG_INFINITY], |[l, h], s| [l.min(s), h.max(s)]);
            [high * inward, low * inward]
        };
        let tails = line().filter(|_| !square).map(|e| tail_of(job, surface, heights, e) * inward);
        ends.push(GableEnd {
            face: edge.of.face,
            reach,
            tail: tails.reduce(f64::max).map(|at| at * inward),
            inward,
            upright: stands_on_upright_wall(job, surface, edge.ends),
            skew: (!square).then(|| (edge.out, edge.out.dot(edge.ends[0]))),
        });
    }
    ends
}

/// Where along the axis the inner side of the tail of a rafter outside an edge
/// ends, mm.
fn tail_of(job: &Job, surface: &Surface, heights: &Heights, edge: &Edge) -> f64 {
    let (face, axis) = (surface.face(edge.of.face), edge.of.axis);
    let inward = face.plane.inward;
    let eaves = face.walls.iter().map(|w| heights.overhang(*w)).fold(0.0, f64::max);
    let low = if inward.dot(edge.ends[1] - edge.ends[0]) > 0.0 { edge.ends[0] } else { edge.ends[1] };
    let along = (edge.ends[1] - edge.ends[0]).normalize_or_zero();
    let up = if inward.dot(along) < 0.0 { -along } else { along };
    let side = job.verge.overhang - job.timber.rafter.size.thickness;
    // Along the eaves line from the gable to that side, then down to the fascia.
    edge.along(low + axis * (side / edge.out.dot(axis)) - up * (eaves / up.dot(inward)))
}

/// The edges of a face on gables that are near enough to square to its eaves.
fn edges_of(surface: &Surface, of: &Paired) -> Vec<Edge> {
    let f = surface.face(of.face);
    let n = f.outline.len();
    (0..n)
        .filter(|k| surface.arc(f.arcs[*k]).kind == ArcKind::Verge)
        .map(|k| {
            let ends = [k, (k + 1) % n].map(|k| surface.node(f.outline[k]).truncate());
            Edge { of: *of, ends, out: -(ends[1] - ends[0]).normalize_or_zero().perp() }
        })
        .filter(|e| e.out != DVec2::ZERO && e.out.perp_dot(of.axis).abs() < MOST_SKEW)
        .collect()
}

/// Whether a line in plan lies on a wall that is carried up from its plate.
fn stands_on_upright_wall(job: &Job, surface: &Surface, ends: [DVec2; 2]) -> bool {
    job.walls.iter().enumerate().filter(|(_, w)| starts_upright(w)).any(|(k, _)| {
        surface.wall_ends(WallId(k as u32)).is_some_and(|[p, q]| {
            let side = (q - p).normalize_or_zero();
            ends.iter().all(|x| side.perp_dot(*x - p).abs() < ON_WALL)
        })
    })
}

/// The end of a ridge or plate that runs out over a gable out of square.
pub struct RunOut {
    /// How far its strip is drawn past the gable to reach the verge, mm.
    pub past: f64,
    /// The line of the verge; the timber is inside.
    pub verge: HalfPlan,
}

/// How a timber along `dir` whose line crosses a gable at `at` runs out to the
/// verge; `None` where the gable is square to it. `width` is its reach to the
/// sides, mm.
pub fn run_out(job: &Job, surface: &Surface, at: DVec2, dir: DVec2, width: f64) -> Option<RunOut> {
    surface.arcs.iter().filter(|a| a.kind == ArcKind::Verge).find_map(|arc| {
        let [a, b] = [arc.from, arc.to].map(|n| surface.node(n).truncate());
        let along = (b - a).normalize_or_zero();
        let s = along.dot(at - a);
        let on = along.perp_dot(at - a).abs() < ON_WALL && s > -ON_WALL && s < (b - a).length() + ON_WALL;
        // The face lies on the left of the arc, or on its right.
        let out = if arc.left.is_some() { -along.perp() } else { along.perp() };
        let skew = along.dot(dir).abs();
        if !on || skew <= PARALLEL || skew > MOST_SKEW {
            return None;
        }
        let square = out.dot(dir).abs();
        let past = (job.verge.overhang + width * skew) / square;
        Some(RunOut { past, verge: HalfPlan::through(at + out * job.verge.overhang, out) })
    })
}
