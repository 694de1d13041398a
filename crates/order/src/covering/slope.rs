//! Slopes as they are covered: the real faces with their overhangs, laid flat, and what each edge is.

use super::ring;
use geometry::{Angle, DVec2, DVec3};
use roof::solution::{FaceOut, LineKind, LineOut, Member, MemberKind, Solution, WallOut};

/// Points nearer than this lie on one line, mm: the grid of plans is finer.
const ON_LINE: f64 = 1.0;

/// What lies beyond an edge is looked for this far out, mm.
const BEYOND: f64 = 20.0;

/// Edges whose directions differ by less than this are in one line (sine): they have no corner that could be moved.
const STRAIGHT: f64 = 0.02;

/// An edge is level when it rises less than this, mm.
const LEVEL: f64 = 1.0;

/// Boards are looked for up to this far outside the edge that they belong to, mm: no eaves hang out further.
const FURTHEST_OUT: f64 = 2500.0;

/// The end of a ridge over a small gable is looked for up to this far out, and up or down, mm: another ridge is further.
const RIDGE_END: f64 = 600.0;

/// What an edge of a slope is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EdgeKind {
    /// Tiles hang into the gutter.
    Eaves,
    /// The flatter slope begins: its tiles hang over the steeper one.
    BreakFoot,
    /// The steeper slope ends below the flatter one.
    BreakHead,
    /// Two slopes meet level.
    Ridge,
    /// Two slopes meet and fall away.
    Hip,
    /// Two slopes meet and fall towards it.
    Valley,
    /// The free edge of a gable.
    Verge,
    /// The slope ends at a wall above it.
    TopWall,
    /// The slope runs along a wall beside it.
    SideWall,
    /// A step between overhangs.
    Step,
}

/// One edge, in the measure of the slope.
#[derive(Clone, Copy, Debug)]
pub struct Edge {
    pub ends: [DVec2; 2],
    pub kind: EdgeKind,
    /// Its line of the roof.
    pub line: Option<usize>,
}

impl Edge {
    pub fn length(&self) -> f64 {
        (self.ends[1] - self.ends[0]).length()
    }
}

/// A hole for a window, a stack or a dormer.
#[derive(Clone, Debug)]
pub struct Hole {
    pub name: String,
    pub kind: String,
    pub ring: Vec<DVec2>,
}

/// A face with its overhangs, laid flat: `x` along its wall, `y` up the slope, mm.
#[derive(Clone, Debug)]
pub struct Slope {
    pub walls: Vec<String>,
    pub pitch_deg: f64,
    pub edges: Vec<Edge>,
    pub ring: Vec<DVec2>,
    pub holes: Vec<Hole>,
    /// Height of its lowest edge, mm.
    pub foot_z: f64,
    /// Level, from its plate or break to its top, mm.
    pub run: f64,
    /// Flattest pitch of sprockets at its eaves, degrees.
    pub sprocket_pitch: Option<f64>,
}

impl Slope {
    /// Lowest and highest, mm.
    pub fn heights(&self) -> [f64; 2] {
        ring::heights(&self.ring)
    }

    /// From end to end along its wall, mm.
    pub fn width(&self) -> f64 {
        let us = self.ring.iter().map(|p| p.x);
        let [a, b] = us.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], u| [a.min(u), b.max(u)]);
        b - a
    }

    /// What is covered of it, mm².
    pub fn area(&self) -> f64 {
        ring::area(&self.ring) - self.holes.iter().map(|h| ring::area(&h.ring).abs()).sum::<f64>()
    }

    /// In words.
    pub fn place(&self) -> String {
        let upper = if self.edges.iter().any(|e| e.kind == EdgeKind::BreakFoot) { "upper slope" } else { "slope" };
        format!("{upper} of wall {}", self.walls.join(" and "))
    }

    pub fn hole_rings(&self) -> Vec<Vec<DVec2>> {
        self.holes.iter().map(|h| h.ring.clone()).collect()
    }
}

/// Overhangs past the timber, mm.
#[derive(Clone, Copy, Debug)]
pub struct Overhangs {
    pub eaves: f64,
    pub verge: f64,
    pub over_break: f64,
}

/// A face in plan, with its own measure.
struct Laid<'a> {
    face: &'a FaceOut,
    origin: DVec2,
    along: DVec2,
    inward: DVec2,
    cos: f64,
}

impl Laid<'_> {
    fn flat(&self, p: DVec2) -> DVec2 {
        let from = p - self.origin;
        DVec2::new(self.along.dot(from), self.inward.dot(from) / self.cos)
    }
}

/// All slopes of a roof.
pub fn slopes(solution: &Solution, out: Overhangs) -> Vec<Slope> {
    solution.faces.iter().filter_map(|face| slope(solution, face, out)).collect()
}

fn slope(solution: &Solution, face: &FaceOut, out: Overhangs) -> Option<Slope> {
    let wall = solution.plan.walls.iter().find(|w| Some(&w.id) == face.walls.first())?;
    let origin = DVec2::from_array(wall.from);
    let along = (DVec2::from_array(wall.to) - origin).normalize_or_zero();
    let cos = Angle::deg(face.pitch_deg).cos();
    if face.outline.len() < 3 || along == DVec2::ZERO || cos <= 0.0 {
        return None;
    }
    let laid = Laid { face, origin, along, inward: along.perp(), cos };
    let tan = Angle::deg(face.pitch_deg).tan();
    let points: Vec<DVec3> = face.outline.iter().map(|p| DVec3::from_array(*p)).collect();
    let plan: Vec<PlanEdge> = points
        .iter()
        .enumerate()
        .map(|(k, a)| plan_edge(solution, &laid, [*a, points[(k + 1) % points.len()]], out))
        .collect();
    let edges = moved(&plan, &laid);
    let ring: Vec<DVec2> = edges.iter().map(|e| e.ends[0]).collect();
    let vs = points.iter().map(|p| laid.inward.dot(p.truncate() - origin));
    let [low_v, high_v] = vs.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], v| [a.min(v), b.max(v)]);
    let low_z = points.iter().map(|p| p.z).fold(f64::INFINITY, f64::min);
    let foot_z = low_z + (ring::heights(&ring)[0] * cos - low_v) * tan;
    let holes = holes(solution, &laid, &ring);
    let slope = Slope {
        walls: face.walls.clone(),
        pitch_deg: face.pitch_deg,
        edges,
        ring,
        holes,
        foot_z,
        run: high_v - low_v,
        sprocket_pitch: sprocket_pitch(solution, face),
    };
    (slope.area() > 0.0).then_some(slope)
}

/// An edge on the pitch plane, and how far out the covering goes.
struct PlanEdge {
    ends: [DVec2; 2],
    kind: EdgeKind,
    line: Option<usize>,
    out: f64,
}

fn plan_edge(solution: &Solution, laid: &Laid, ends: [DVec3; 2], out: Overhangs) -> PlanEdge {
    let line = line_at(solution, &laid.face.id, ends);
    let kind = line.and_then(|k| solution.lines.get(k)).map(|l| l.kind);
    let plan = ends.map(DVec3::truncate);
    let outward = -(plan[1] - plan[0]).normalize_or_zero().perp();
    let middle = (ends[0] + ends[1]) / 2.0;
    let level = (ends[1].z - ends[0].z).abs() < LEVEL;
    // A level edge at the foot looks down the slope.
    let at_foot = outward.dot(laid.inward) < 0.0;
    let wall = wall_on(solution, plan);
    let hang = wall.map_or(0.0, |w| w.overhang_mm);
    let board = |kind| wall.map_or(0.0, |w| boards(solution, kind, &w.id, ends, outward));
    let (kind, out) = match kind {
        Some(LineKind::Eaves) => (EdgeKind::Eaves, hang.max(board(MemberKind::Fascia)) + out.eaves),
        Some(LineKind::Ridge) => (EdgeKind::Ridge, 0.0),
        Some(LineKind::Hip) => (EdgeKind::Hip, 0.0),
        Some(LineKind::Valley) => (EdgeKind::Valley, 0.0),
        Some(LineKind::PitchBreak) if at_foot => (EdgeKind::BreakFoot, out.over_break),
        Some(LineKind::PitchBreak) => (EdgeKind::BreakHead, 0.0),
        Some(LineKind::Verge) | None if level => (EdgeKind::TopWall, 0.0),
        Some(LineKind::Verge) | None => match beyond(solution, middle, outward) {
            // Another slope rises there: the edge lies against its wall.
            Some(height) if height > middle.z => (EdgeKind::SideWall, 0.0),
            // It lies lower: a small gable over it, whose overhang the ridge shows.
            Some(_) => (EdgeKind::Verge, small_gable(solution, laid.face, ends, outward) + out.verge),
            None => (EdgeKind::Verge, hang.max(board(MemberKind::BargeBoard)) + out.verge),
        },
    };
    PlanEdge { ends: plan, kind, line, out }
}

/// The line of the roof that an edge of a face lies on.
fn line_at(solution: &Solution, face: &str, ends: [DVec3; 2]) -> Option<usize> {
    let on = |line: &LineOut| {
        let (a, b) = (DVec3::from_array(line.from), DVec3::from_array(line.to));
        ends.iter().all(|p| off_stretch(*p, a, b) < ON_LINE)
    };
    solution.lines.iter().position(|line| line.faces.iter().any(|f| f == face) && on(line))
}

fn off_stretch(p: DVec3, a: DVec3, b: DVec3) -> f64 {
    let d = b - a;
    let t = if d.length_squared() > 0.0 { ((p - a).dot(d) / d.length_squared()).clamp(0.0, 1.0) } else { 0.0 };
    (p - (a + d * t)).length()
}

/// The wall whose plate line an edge lies on, in plan.
fn wall_on(solution: &Solution, ends: [DVec2; 2]) -> Option<&WallOut> {
    let middle = (ends[0] + ends[1]) / 2.0;
    solution.plan.walls.iter().find(|wall| {
        let (a, b) = (DVec2::from_array(wall.from), DVec2::from_array(wall.to));
        off_stretch(middle.extend(0.0), a.extend(0.0), b.extend(0.0)) < ON_LINE
    })
}

/// Height of the roof just outside an edge, if it goes on there.
fn beyond(solution: &Solution, middle: DVec3, outward: DVec2) -> Option<f64> {
    let at = middle.truncate() + outward * BEYOND;
    solution.faces.iter().find_map(|face| {
        let ring: Vec<DVec2> = face.outline.iter().map(|p| DVec2::new(p[0], p[1])).collect();
        if !inside(&ring, at) {
            return None;
        }
        let wall = solution.plan.walls.iter().find(|w| Some(&w.id) == face.walls.first())?;
        let inward = (DVec2::from_array(wall.to) - DVec2::from_array(wall.from)).normalize_or_zero().perp();
        let known = DVec3::from_array(*face.outline.first()?);
        Some(known.z + inward.dot(at - known.truncate()) * Angle::deg(face.pitch_deg).tan())
    })
}

fn inside(ring: &[DVec2], p: DVec2) -> bool {
    ring::level(ring, p.y).iter().any(|[a, b]| p.x > *a && p.x < *b)
}

/// How far the boards of a wall reach out from its edge, mm.
fn boards(solution: &Solution, kind: MemberKind, wall: &str, ends: [DVec3; 2], outward: DVec2) -> f64 {
    let of_wall = solution.members.iter().filter(|m| m.kind == kind && m.wall.as_deref() == Some(wall));
    furthest(of_wall, ends[0], outward, FURTHEST_OUT)
}

/// How far the ridge and the barge boards of a small gable within the roof reach out from its edge, mm.
fn small_gable(solution: &Solution, face: &FaceOut, ends: [DVec3; 2], outward: DVec2) -> f64 {
    let top = if ends[0].z > ends[1].z { ends[0] } else { ends[1] };
    let here = |m: &&Member| {
        let of_slope = match m.kind {
            MemberKind::RidgeBoard => m.wall.is_none(),
            MemberKind::BargeBoard => m.wall.as_ref().is_some_and(|w| face.walls.contains(w)),
            _ => false,
        };
        of_slope && m.solid.points.iter().any(|p| (DVec3::from_array(*p) - top).length() < RIDGE_END)
    };
    furthest(solution.members.iter().filter(here), top, outward, RIDGE_END)
}

/// The furthest point of timbers out from an edge through a point, up to a limit, mm.
fn furthest<'a>(members: impl Iterator<Item = &'a Member>, on: DVec3, outward: DVec2, limit: f64) -> f64 {
    let points = members.flat_map(|m| &m.solid.points);
    let out = points.map(|p| outward.dot(DVec2::new(p[0], p[1]) - on.truncate()));
    out.filter(|out| *out < limit).fold(0.0, f64::max)
}

/// The edges with the overhangs, laid flat.
fn moved(plan: &[PlanEdge], laid: &Laid) -> Vec<Edge> {
    let count = plan.len();
    let line = |e: &PlanEdge| {
        let d = (e.ends[1] - e.ends[0]).normalize_or_zero();
        (e.ends[0] - d.perp() * e.out, d)
    };
    // Where an edge begins: one point, or two with a step between.
    let joints: Vec<[DVec2; 2]> = (0..count)
        .map(|k| {
            let (before, after) = (&plan[(k + count - 1) % count], &plan[k]);
            let ((p, d), (q, e)) = (line(before), line(after));
            let cross = d.perp_dot(e);
            if cross.abs() > STRAIGHT {
                let at = p + d * ((q - p).perp_dot(e) / cross);
                [at, at]
            } else {
                let corner = after.ends[0];
                [corner - d.perp() * before.out, corner - e.perp() * after.out]
            }
        })
        .collect();
    let mut edges = Vec::with_capacity(count);
    for (k, edge) in plan.iter().enumerate() {
        let [end_before, start] = joints[k];
        let step = [end_before, start].map(|p| laid.flat(p));
        if step[0].distance(step[1]) > ON_LINE {
            edges.push(Edge { ends: step, kind: EdgeKind::Step, line: None });
        }
        let ends = [start, joints[(k + 1) % count][0]].map(|p| laid.flat(p));
        edges.push(Edge { ends, kind: edge.kind, line: edge.line });
    }
    // Closed exactly, whatever a step was too small to have.
    let starts: Vec<DVec2> = edges.iter().map(|e| e.ends[0]).collect();
    for (k, edge) in edges.iter_mut().enumerate() {
        edge.ends[1] = starts[(k + 1) % starts.len()];
    }
    edges
}

fn holes(solution: &Solution, laid: &Laid, ring: &[DVec2]) -> Vec<Hole> {
    solution
        .openings
        .iter()
        .filter(|o| o.kind != "hatch" && laid.face.walls.contains(&o.wall))
        .filter_map(|o| {
            let corners: Vec<DVec2> = o.outline.iter().map(|p| laid.flat(DVec2::new(p[0], p[1]))).collect();
            let middle = corners.iter().copied().sum::<DVec2>() / corners.len().max(1) as f64;
            inside(ring, middle).then(|| Hole { name: o.name.clone(), kind: o.kind.clone(), ring: corners })
        })
        .collect()
}

/// The flattest top of the sprockets at a face, degrees.
fn sprocket_pitch(solution: &Solution, face: &FaceOut) -> Option<f64> {
    let mut flattest: Option<f64> = None;
    for member in &solution.members {
        if member.kind != MemberKind::Sprocket || !member.wall.as_ref().is_some_and(|w| face.walls.contains(w)) {
            continue;
        }
        for (corners, name) in member.solid.faces.iter().zip(&member.solid.names) {
            let at = |k: usize| {
                corners.get(k).and_then(|i| member.solid.points.get(*i as usize)).map(|p| DVec3::from_array(*p))
            };
            if let (true, Some(a), Some(b), Some(c)) = (name == "top", at(0), at(1), at(2)) {
                let n = (b - a).cross(c - a);
                let pitch = Angle::from_rise_run(n.truncate().length(), n.z.abs()).to_deg();
                flattest = Some(flattest.map_or(pitch, |least: f64| least.min(pitch)));
            }
        }
    }
    flattest
}
