//! The edges of faces on gables, and the rafters that stand beside them.

use crate::carcass::Carcass;
use crate::frame::gable_ends::MOST_SKEW;
use crate::frame::timber::{Made, Role, TimberId};
use geometry::surface::{ArcKind, FaceId, Surface, WallId};
use geometry::{DVec2, DVec3, Plane};

/// Edges that miss a wall or one another by less than this lie on it, mm: the
/// tidy of a surface moves no node further.
const ON_LINE: f64 = 0.5;

/// Edges are in one line, or straight up their face, to within this (as a sine).
const SQUARE: f64 = 1e-6;

/// Edges whose ends differ in height by less than this are level, mm.
const LEVEL: f64 = 1.0;

/// An edge of a face on a gable.
#[derive(Clone, Copy, Debug)]
pub struct VergeEdge {
    /// The face.
    pub face: FaceId,
    /// Lower and upper end, on the pitch plane, mm.
    pub ends: [DVec3; 2],
    /// Unit plan vector square to the edge, away from the face.
    pub out: DVec2,
    /// The wall that it stands over, where it stands over one.
    pub wall: Option<WallId>,
}

impl VergeEdge {
    /// Where its line lies along the outward vector, mm.
    pub fn at(&self) -> f64 {
        self.out.dot(self.ends[0].truncate())
    }

    /// Whether it rises up its face, square to the eaves or near enough for
    /// rafters and rungs along it.
    pub fn rises(&self, surface: &Surface) -> bool {
        self.out.dot(surface.face(self.face).plane.inward).abs() < MOST_SKEW && self.climbs()
    }

    /// Whether its two ends lie at different heights.
    pub fn climbs(&self) -> bool {
        self.ends[1].z - self.ends[0].z > LEVEL
    }

    /// How far it strays from straight up its face, mm along the eaves.
    pub fn wedge(&self, surface: &Surface) -> f64 {
        (self.ends[1] - self.ends[0]).truncate().perp_dot(surface.face(self.face).plane.inward).abs()
    }

    /// Unit plan vector from it up its face.
    pub fn up(&self, surface: &Surface) -> DVec2 {
        let along = self.out.perp();
        if along.dot(surface.face(self.face).plane.inward) < 0.0 { -along } else { along }
    }

    /// Whether two edges lie over one line.
    pub fn in_line(&self, other: &Self) -> bool {
        self.out.perp_dot(other.out).abs() < SQUARE
            && self.out.dot(other.out) > 0.0
            && (self.at() - self.out.dot(other.ends[0].truncate())).abs() < ON_LINE
    }

    /// The end at which another edge joins this one (`true`: its upper end).
    pub fn joins(&self, other: &Self) -> Option<bool> {
        let near = |k: usize| other.ends.iter().any(|p| (*p - self.ends[k]).length() < ON_LINE);
        match (near(0), near(1)) {
            (_, true) => Some(true),
            (true, false) => Some(false),
            _ => None,
        }
    }
}

/// All edges of a surface on gables and other upright pieces of wall.
pub fn of(surface: &Surface) -> Vec<VergeEdge> {
    let mut out = Vec::new();
    for arc in surface.arcs.iter().filter(|a| a.kind == ArcKind::Verge) {
        let (from, to) = (surface.node(arc.from), surface.node(arc.to));
        let along = (to - from).truncate().normalize_or_zero();
        // The face lies on the left of the arc, or on its right.
        let (face, away) = match (arc.left, arc.right) {
            (Some(face), _) => (face, -along.perp()),
            (None, Some(face)) => (face, along.perp()),
            (None, None) => continue,
        };
        let ends = if from.z <= to.z { [from, to] } else { [to, from] };
        let wall = wall_under(surface, ends, away);
        out.push(VergeEdge { face, ends, out: away, wall });
    }
    out
}

/// The wall over whose line an edge stands.
fn wall_under(surface: &Surface, ends: [DVec3; 2], out: DVec2) -> Option<WallId> {
    let mut first = 0;
    for ring in &surface.loops {
        let n = ring.len();
        for k in 0..n {
            let (a, b) = (ring[k], ring[(k + 1) % n]);
            let along = (b - a).normalize_or_zero();
            let on = |p: DVec3| {
                let from = p.truncate() - a;
                let s = along.dot(from);
                along.perp_dot(from).abs() < ON_LINE && s > -ON_LINE && s < (b - a).length() + ON_LINE
            };
            if along.perp().dot(out) < 0.0 && ends.iter().all(|p| on(*p)) {
                return Some(WallId((first + k) as u32));
            }
        }
        first += n;
    }
    None
}

/// A rafter of a face beside a gable.
#[derive(Clone, Copy, Debug)]
pub struct Beside {
    /// The rafter.
    pub id: TimberId,
    /// Where its two sides cross the line where its plane is at the height of
    /// its plate, along the outward vector of the edge, the inner one first, mm.
    pub sides: [f64; 2],
    /// How far out it reaches anywhere along its length, mm.
    pub outmost: f64,
    /// How much further out it lies for every mm up the face in plan.
    lean: f64,
    /// Its two sides as planes that face out of it, the inner one first.
    pub planes: [Plane; 2],
    /// Reach of its top up the face, from the line where its plane is at the
    /// height of its plate, mm in plan.
    pub reach: [f64; 2],
}

impl Beside {
    /// Where its outer side lies this far up the face, along the outward vector
    /// of the edge, mm.
    pub fn outer_at(&self, up: f64) -> f64 {
        self.sides[1] + self.lean * up
    }
}

/// The rafters of the face of an edge that rises up it, the outermost first.
pub fn rafters(carcass: &Carcass<'_>, edge: &VergeEdge) -> Vec<Beside> {
    let plane = carcass.surface.face(edge.face).plane;
    let mut out: Vec<Beside> = carcass
        .built()
        .filter(|(_, t)| t.role == Role::Rafter { face: edge.face })
        .map(|(id, t)| {
            let toward = if t.left().dot(edge.out) > 0.0 { t.left() } else { -t.left() };
            let [inner, outer] = [-toward, toward].map(|v| t.side_facing(v));
            // Its line where the plane is at the height of the plate.
            let inside = plane.inward.dot(t.foot) - plane.offset;
            let foot = t.foot - t.dir * (inside / plane.inward.dot(t.dir));
            let at = edge.out.dot(foot);
            // Sideways along the edge's outward vector, not square to itself.
            let slant = toward.dot(edge.out);
            let halves = [-toward, toward].map(|v| t.half[usize::from(t.left().dot(v) > 0.0)] / slant);
            let grows = edge.out.dot(t.dir) * t.run;
            let start = edge.out.dot(t.foot);
            Beside {
                id,
                sides: [at - halves[0], at + halves[1]],
                outmost: start.max(start + grows) + halves[1],
                lean: edge.out.dot(t.dir) / plane.inward.dot(t.dir),
                planes: [inner, outer].map(|h| Plane { normal: h.normal.extend(0.0), offset: h.offset }),
                reach: top_reach(carcass, id, plane.inward, plane.offset),
            }
        })
        .collect();
    out.sort_by(|a, b| b.outmost.total_cmp(&a.outmost).then(a.reach[0].total_cmp(&b.reach[0])));
    out
}

/// Reach of a timber's top along a plan vector from an offset, mm.
fn top_reach(carcass: &Carcass<'_>, id: TimberId, toward: DVec2, offset: f64) -> [f64; 2] {
    carcass
        .wood(id)
        .iter()
        .flat_map(|c| {
            c.faces
                .iter()
                .filter(|f| matches!(f.tag, Made::Top | Made::TopLeft | Made::TopRight))
                .flat_map(|f| f.ring.iter().map(|k| c.points[*k as usize]))
        })
        .map(|p| toward.dot(p.truncate()) - offset)
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], d| [lo.min(d), hi.max(d)])
}
