//! Timbers on the lines of the surface: ridges, hips, valleys and the purlin
//! under a pitch break.

use super::PARALLEL;
use super::heights::Heights;
use super::joints::Joints;
use super::seating;
use super::timber::{Body, EndOn, Made, Role, Timber, TimberId, Top};
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::{ArcId, ArcKind, FaceId, NodeId, RoofArc, RoofPlane, Surface};
use geometry::{ConvexPlan, DVec2};
use job::{HipEdge, HipLine, Job, RidgeTop, Section};

/// Faces whose fall lines are nearer to opposite than this (as a cosine: 30°)
/// meet in a ridge even when it falls; otherwise the line is a hip.
const RIDGE_FACING: f64 = -0.866;

/// Ridges that miss one another by less than this are one line, mm: the gap
/// that timbers in contact may have.
const ONE_LINE: f64 = 0.05;

/// Two ridges in one line, up to this sine between them, run through as one timber.
const IN_LINE: f64 = 1e-6;

/// A hip or valley square to an eaves line has 1 here and one along it 0 (as a
/// sine); nearer to along than this, it is drawn as if at this.
pub const LEAST_SPLAY: f64 = 0.05;

/// A node is a plate corner when it lies this near to one, mm: the framing
/// tidy of a surface moves no node further.
pub const AT_CORNER: f64 = 0.5;

/// Timbers of a frame that lie on lines, with the timber of every arc.
pub struct Spines {
    /// The timbers.
    pub timbers: Vec<Timber>,
    /// For every arc of the surface, the timber on it.
    pub of_arc: Vec<Option<TimberId>>,
}

/// One straight run of arcs, low end first.
pub struct Run {
    arcs: Vec<ArcId>,
    /// Kind of its timber.
    pub kind: MemberKind,
    /// Face on its left.
    pub left: FaceId,
    /// Face on its right.
    pub right: FaceId,
    /// Its lower end.
    pub from: NodeId,
    to: NodeId,
    through: Vec<u32>,
}

/// Place timbers on every line long enough to carry one.
pub fn place(job: &Job, surface: &Surface, heights: &Heights, joints: &Joints) -> Spines {
    let mut runs: Vec<Run> = Vec::new();
    for (k, arc) in surface.arcs.iter().enumerate() {
        let (Some(left), Some(right)) = (arc.left, arc.right) else { continue };
        if joints.of(arc.from) == joints.of(arc.to) {
            continue;
        }
        let kind = match arc.kind {
            _ if is_ridge(surface, arc) => MemberKind::RidgeBoard,
            ArcKind::Ridge | ArcKind::Eaves | ArcKind::Verge | ArcKind::Abutment => continue,
            ArcKind::Hip | ArcKind::BrokenHip => MemberKind::HipRafter,
            ArcKind::Valley => MemberKind::ValleyRafter,
            ArcKind::PitchBreak => MemberKind::Purlin,
        };
        let arcs = vec![ArcId(k as u32)];
        runs.push(Run { arcs, kind, left, right, from: arc.from, to: arc.to, through: Vec::new() });
    }
    join_ridges(surface, joints, &mut runs);
    let mut of_arc = vec![None; surface.arcs.len()];
    let mut timbers: Vec<Timber> = Vec::with_capacity(runs.len());
    for run in &runs {
        let Some(timber) = timber_on(job, surface, heights, joints, run) else { continue };
        let id = TimberId(timbers.len() as u32);
        for arc in &run.arcs {
            of_arc[arc.index()] = Some(id);
        }
        timbers.push(timber);
    }
    for (k, of) in of_arc.iter_mut().enumerate() {
        if let Some(timber) = wall_piece(job, surface, heights, joints, ArcId(k as u32)) {
            *of = Some(TimberId(timbers.len() as u32));
            timbers.push(timber);
        }
    }
    Spines { timbers, of_arc }
}

/// Whether a line is a ridge, level or falling: its slopes face nearly opposite
/// ways, and it does not run to a corner of plates.
pub fn is_ridge(surface: &Surface, arc: &RoofArc) -> bool {
    let (Some(left), Some(right)) = (arc.left, arc.right) else { return false };
    let planes = [left, right].map(|f| surface.face(f).plane);
    let opposite = planes[0].inward.dot(planes[1].inward) < RIDGE_FACING;
    let over_plates = || {
        let foot = surface.node(arc.from).z;
        planes.iter().any(|p| foot > p.base_height + AT_CORNER)
    };
    match arc.kind {
        ArcKind::Ridge => true,
        ArcKind::BrokenHip => opposite,
        ArcKind::Hip => opposite && over_plates(),
        _ => false,
    }
}

/// The ridge board against a wall: where a slope ends level against a wall
/// that is carried up, its rafters are cut against a board fixed to that wall.
fn wall_piece(job: &Job, surface: &Surface, heights: &Heights, joints: &Joints, arc: ArcId) -> Option<Timber> {
    let line = surface.arc(arc);
    let face = match (line.left, line.right) {
        (Some(face), None) | (None, Some(face)) => face,
        _ => return None,
    };
    let (from, to) = (surface.node(line.from), surface.node(line.to));
    let plane = surface.face(face).plane;
    let level = (from.z - to.z).abs() < ONE_LINE && from.z > plane.base_height + AT_CORNER;
    if !matches!(line.kind, ArcKind::Verge | ArcKind::Abutment) || !level {
        return None;
    }
    let size = job.timber.ridge.size;
    let chord = (to - from).truncate();
    // The roof on its left, so that the board lies wholly on that side.
    let dir = chord.normalize_or_zero() * chord.perp_dot(-plane.inward).signum();
    let foot = if dir.dot(chord) > 0.0 { from } else { to }.truncate();
    let ends = if dir.dot(chord) > 0.0 { [line.from, line.to] } else { [line.to, line.from] };
    let top = heights.upstand - size.thickness * plane.tan_pitch;
    Some(Timber {
        kind: MemberKind::RidgeBoard,
        role: Role::Spine { left: face, right: face },
        section: size,
        foot,
        dir,
        run: chord.length(),
        base: from.z,
        slope: 0.0,
        half: [0.0, size.thickness],
        top_offset: top,
        under_offset: top - size.depth,
        top: Top::Flat,
        drop: None,
        ends: [EndOn::Wall; 2],
        over_verge: ends.map(|n| line.kind == ArcKind::Verge && joints.is_verge(n)),
        plate_level: plane.base_height,
        seat: None,
        tails: Vec::new(),
        footprint: ConvexPlan::default(),
        cuts: Vec::new(),
        at_joint: None,
        through: Vec::new(),
        gone: false,
        body: Body::Upright,
        ends_cut: Vec::new(),
        notches: Vec::new(),
        rests: Vec::new(),
        firring: Vec::new(),
        lengthened: None,
        slot: 0,
    })
}

/// Join level ridges in one line into one timber, one pair at every joint, the
/// longest pair first.
fn join_ridges(surface: &Surface, joints: &Joints, runs: &mut Vec<Run>) {
    let length = |r: &Run| (surface.node(r.to) - surface.node(r.from)).length();
    loop {
        let mut best: Option<(f64, usize, usize, u32)> = None;
        for i in 0..runs.len() {
            for j in i + 1..runs.len() {
                let (a, b) = (&runs[i], &runs[j]);
                if a.kind != MemberKind::RidgeBoard || b.kind != MemberKind::RidgeBoard {
                    continue;
                }
                let Some(joint) = shared_joint(joints, a, b) else { continue };
                if runs.iter().any(|r| r.through.contains(&joint)) || !in_line(surface, a, b) {
                    continue;
                }
                let total = length(a) + length(b);
                if best.is_none_or(|(t, ..)| total > t) {
                    best = Some((total, i, j, joint));
                }
            }
        }
        let Some((_, i, j, joint)) = best else { return };
        let b = runs.remove(j);
        let a = &mut runs[i];
        let dir = (surface.node(a.to) - surface.node(a.from)).truncate();
        let same_way = (surface.node(b.to) - surface.node(b.from)).truncate().dot(dir) > 0.0;
        let mut ends = [a.from, a.to, if same_way { b.from } else { b.to }, if same_way { b.to } else { b.from }];
        ends.sort_by(|p, q| {
            let reach = |n: &NodeId| dir.dot(surface.node(*n).truncate());
            reach(p).total_cmp(&reach(q))
        });
        (a.from, a.to) = (ends[0], ends[3]);
        a.arcs.extend(b.arcs);
        a.through.extend(b.through);
        a.through.push(joint);
    }
}

fn shared_joint(joints: &Joints, a: &Run, b: &Run) -> Option<u32> {
    let ends = [joints.of(b.from), joints.of(b.to)];
    [a.from, a.to].iter().map(|n| joints.of(*n)).find(|j| ends.contains(j))
}

/// Level, in one line, between planes of the same pitches on each side.
fn in_line(surface: &Surface, a: &Run, b: &Run) -> bool {
    let planes = |r: &Run| [surface.face(r.left).plane, surface.face(r.right).plane];
    let vector = |r: &Run| (surface.node(r.to) - surface.node(r.from)).truncate().normalize_or_zero();
    let (u, v) = (vector(a), vector(b));
    let joined = (surface.node(b.from) - surface.node(a.from)).truncate();
    let straight = u.perp_dot(v).abs() < IN_LINE && u.perp_dot(joined).abs() < ONE_LINE;
    let level = (surface.node(a.from).z - surface.node(b.from).z).abs() < ONE_LINE
        && a.arcs.iter().chain(&b.arcs).all(|k| surface.arc(*k).kind == ArcKind::Ridge);
    let [pa, pb] = [planes(a), planes(b)];
    let pairs = if u.dot(v) > 0.0 { [(pa[0], pb[0]), (pa[1], pb[1])] } else { [(pa[0], pb[1]), (pa[1], pb[0])] };
    straight && level && pairs.iter().all(|(p, q)| p.tan_pitch == q.tan_pitch && p.inward.dot(q.inward) > 0.9)
}

/// A timber on the line where two planes meet, from node to node.
fn timber_on(job: &Job, surface: &Surface, heights: &Heights, joints: &Joints, run: &Run) -> Option<Timber> {
    let planes = [surface.face(run.right).plane, surface.face(run.left).plane];
    let (from, to) = (surface.node(run.from), surface.node(run.to));
    let line = meeting_line(planes[0], planes[1])?;
    let foot = line.nearest(from.truncate());
    let head = line.nearest(to.truncate());
    let length = (head - foot).length();
    if length < 1.0 {
        return None;
    }
    let dir = line.dir * (head - foot).dot(line.dir).signum();
    let base = planes[0].height_at(foot);
    let level = matches!(run.kind, MemberKind::Purlin) || surface.arc(run.arcs[0]).kind == ArcKind::Ridge;
    let slope = if level { 0.0 } else { (planes[0].height_at(head) - base) / length };
    let mut timber = Timber {
        kind: run.kind,
        role: Role::Spine { left: run.left, right: run.right },
        section: section_of(job, run.kind),
        foot,
        dir,
        run: length,
        base,
        slope,
        half: [0.0; 2],
        top_offset: 0.0,
        under_offset: 0.0,
        top: Top::Flat,
        drop: None,
        ends: [EndOn::Joint(joints.of(run.from)), EndOn::Joint(joints.of(run.to))],
        over_verge: [false; 2],
        plate_level: planes[0].base_height,
        seat: None,
        tails: Vec::new(),
        footprint: ConvexPlan::default(),
        cuts: Vec::new(),
        at_joint: None,
        through: run.through.clone(),
        gone: false,
        body: Body::Upright,
        ends_cut: Vec::new(),
        notches: Vec::new(),
        rests: Vec::new(),
        firring: Vec::new(),
        lengthened: None,
        slot: 0,
    };
    shape_section(job, heights, &mut timber, planes);
    if let Some(walls) = seating::corner_walls(surface, run) {
        seating::on_corner(job, surface, heights, &mut timber, walls);
    } else if let Some(foot) = seating::raised_foot(surface, run) {
        seating::on_raised_plate(job, surface, heights, &mut timber, foot);
    }
    for (k, node) in [run.from, run.to].into_iter().enumerate() {
        if joints.is_on_wall(node) && timber.ends[k] != EndOn::Plate {
            timber.ends[k] = EndOn::Wall;
            timber.over_verge[k] = joints.is_verge(node);
        }
    }
    Some(timber)
}

fn section_of(job: &Job, kind: MemberKind) -> Section {
    match kind {
        MemberKind::HipRafter => job.timber.hip.size,
        MemberKind::ValleyRafter => job.timber.valley.size,
        _ => job.timber.ridge.size,
    }
}

/// Thickness to each side, drop or backing, top and underside. `planes` are
/// those on the right and on the left.
fn shape_section(job: &Job, heights: &Heights, timber: &mut Timber, planes: [RoofPlane; 2]) {
    let t = timber.section.thickness;
    // Fall of each plane away from the line, mm per mm (negative on a valley).
    let left = timber.left();
    let fall = [-planes[0].tan_pitch * planes[0].inward.dot(-left), -planes[1].tan_pitch * planes[1].inward.dot(left)];
    timber.half = [t / 2.0; 2];
    let hip = match timber.kind {
        MemberKind::HipRafter => Some(&job.timber.hip),
        MemberKind::ValleyRafter => Some(&job.timber.valley),
        _ => None,
    };
    let plumb_depth = timber.section.depth * (1.0 + timber.slope * timber.slope).sqrt();
    if let Some(hip) = hip {
        if hip.line == HipLine::SetOver && fall.iter().all(|f| f.abs() > 1e-6) && fall[0] * fall[1] > 0.0 {
            let sum = fall[0] + fall[1];
            timber.half = [t * fall[1] / sum, t * fall[0] / sum];
        }
        if hip.edge == HipEdge::Backed {
            let hollow = timber.kind == MemberKind::ValleyRafter;
            timber.top = Top::Backed { left: planes[1], right: planes[0], hollow };
            timber.top_offset = heights.upstand;
            timber.under_offset = heights.upstand - plumb_depth;
            return;
        }
    }
    let centred = timber.kind == MemberKind::RidgeBoard && job.timber.ridge.top == RidgeTop::Centre;
    let drop = if centred { 0.0 } else { (0..2).map(|k| timber.half[k] * fall[k]).fold(0.0, f64::max) };
    if hip.is_some() {
        timber.drop = Some(drop);
    }
    timber.top_offset = heights.upstand - drop;
    timber.under_offset = timber.top_offset - plumb_depth;
}

/// How far a spine's tail must be drawn out before its fascia cuts, mm.
pub fn tail_reach(timber: &Timber) -> f64 {
    timber
        .tails
        .iter()
        .enumerate()
        .map(|(k, tail)| {
            let side = if k == 0 { -timber.left() } else { timber.left() };
            let toward = tail.plane.inward.dot(timber.dir).max(LEAST_SPLAY);
            let across = timber.half[k] * tail.plane.inward.dot(side).abs();
            (tail.plane.inward.dot(timber.foot) - tail.plane.offset + tail.overhang + across) / toward
        })
        .fold(0.0, f64::max)
}

/// The strip of a spine in plan, drawn out past its foot and head.
pub fn strip(timber: &Timber, past_foot: f64, past_head: f64) -> ConvexPlan<Made> {
    ConvexPlan::strip(
        timber.foot,
        timber.dir,
        [-past_foot, timber.run + past_head],
        [-timber.half[0], timber.half[1]],
        [Made::Right, Made::End(true), Made::Left, Made::End(false)],
    )
}

/// A line in plan.
pub struct PlanLine {
    /// A point on it.
    pub point: DVec2,
    /// Unit direction.
    pub dir: DVec2,
}

impl PlanLine {
    /// The nearest point of the line.
    pub fn nearest(&self, p: DVec2) -> DVec2 {
        self.point + self.dir * self.dir.dot(p - self.point)
    }
}

/// The plan line on which two planes have one height; `None` if they are parallel.
pub fn meeting_line(a: RoofPlane, b: RoofPlane) -> Option<PlanLine> {
    let gradient = a.inward * a.tan_pitch - b.inward * b.tan_pitch;
    let size = gradient.length();
    if size < PARALLEL {
        return None;
    }
    let c = (a.tan_pitch * a.offset - a.base_height) - (b.tan_pitch * b.offset - b.base_height);
    let normal = gradient / size;
    Some(PlanLine { point: normal * (c / size), dir: normal.perp() })
}

/// Which end of a spine lies at a joint.
pub fn end_at(timber: &Timber, joint: u32) -> Option<CutPlace> {
    match timber.ends {
        [EndOn::Joint(j), _] if j == joint => Some(CutPlace::Foot),
        [_, EndOn::Joint(j)] if j == joint => Some(CutPlace::Head),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Angle;

    fn plane(inward: DVec2, pitch: f64) -> RoofPlane {
        RoofPlane { inward, offset: 0.0, base_height: 0.0, pitch_deg: pitch, tan_pitch: Angle::deg(pitch).tan() }
    }

    #[test]
    fn planes_of_unequal_pitch_meet_off_the_bisector() {
        // reference/geometry.md 5.1 row 9: corner 90, pitches 30 and 45: plan angle 60 to the 30° eaves.
        let line = meeting_line(plane(DVec2::Y, 30.0), plane(DVec2::X, 45.0)).expect("not parallel");
        let angle = Angle::from_rise_run(line.dir.y.abs(), line.dir.x.abs()).to_deg();
        assert!((angle - 60.0).abs() < 1e-9);
        assert!((line.nearest(DVec2::ZERO)).length() < 1e-9);
    }
}
