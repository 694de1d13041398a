//! Reading figures off a solution the way a carpenter would off the finished
//! frame: from members, cuts and solids.

#![allow(dead_code, reason = "each test file uses its own part")]

use geometry::{Angle, DVec2, DVec3};
use job::Job;
use roof::solution::{Cut, CutPlace, FaceOut, Member, MemberKind, Solution};

/// Two plan points nearer than this are one, mm.
pub const SAME_POINT: f64 = 0.5;

pub fn solve(job: &Job, what: &str) -> Solution {
    roof::solve(job).unwrap_or_else(|e| panic!("{what} is not solved: {e}"))
}

pub fn vec3(p: [f64; 3]) -> DVec3 {
    DVec3::from_array(p)
}

pub fn foot(m: &Member) -> DVec2 {
    vec3(m.axis.from).truncate()
}

pub fn head(m: &Member) -> DVec2 {
    vec3(m.axis.to).truncate()
}

/// Plan length of the pitch line, mm.
pub fn run(m: &Member) -> f64 {
    (head(m) - foot(m)).length()
}

pub fn rise(m: &Member) -> f64 {
    m.axis.to[2] - m.axis.from[2]
}

/// Unit plan vector from foot to head.
pub fn dir(m: &Member) -> DVec2 {
    (head(m) - foot(m)).normalize()
}

pub fn member<'a>(s: &'a Solution, mark: &str) -> &'a Member {
    s.members.iter().find(|m| m.mark == mark).unwrap_or_else(|| panic!("no member {mark}"))
}

pub fn of_kind(s: &Solution, kind: MemberKind) -> Vec<&Member> {
    s.members.iter().filter(|m| m.kind == kind).collect()
}

/// The hip or valley that starts at a plan corner.
pub fn spine_from(s: &Solution, kind: MemberKind, corner: [f64; 2]) -> &Member {
    let at = DVec2::from_array(corner);
    of_kind(s, kind)
        .into_iter()
        .find(|m| (foot(m) - at).length() < SAME_POINT)
        .unwrap_or_else(|| panic!("no {} at {corner:?}", kind.name()))
}

/// Rafters of a wall whose head is cut against a timber, in order along the wall.
pub fn cut_against<'a>(s: &'a Solution, wall: &str, mark: &str) -> Vec<&'a Member> {
    let mut out: Vec<&Member> =
        s.members.iter().filter(|m| m.wall.as_deref() == Some(wall) && head_cut(m, mark).is_some()).collect();
    out.sort_by(|a, b| along_wall(a).total_cmp(&along_wall(b)));
    out
}

/// Distance along its wall (towards the right, looking up the slope).
pub fn along_wall(m: &Member) -> f64 {
    -dir(m).perp().dot(foot(m))
}

/// The head cut against the timber of this mark.
pub fn head_cut<'a>(m: &'a Member, mark: &str) -> Option<&'a Cut> {
    m.cuts.iter().find(|c| c.at == CutPlace::Head && c.against.as_deref() == Some(mark))
}

/// The head cut of a member against any of those that fit.
pub fn head_cut_where<'a>(s: &Solution, m: &'a Member, fits: impl Fn(&Member) -> bool) -> Option<&'a Cut> {
    m.cuts.iter().find(|c| c.at == CutPlace::Head && c.against.as_deref().is_some_and(|k| fits(member(s, k))))
}

/// What is deducted at the head, level and along the slope, mm.
pub fn head_deduction(m: &Member) -> [f64; 2] {
    m.deductions
        .iter()
        .filter(|d| d.at == CutPlace::Head)
        .fold([0.0; 2], |[level, slope], d| [level + d.mm, slope + d.slope_mm])
}

/// A flat face of a solid.
#[derive(Clone, Copy, Debug)]
pub struct Flat {
    pub normal: DVec3,
    pub offset: f64,
}

/// Faces of a member's solid with this name.
pub fn faces_named(m: &Member, name: &str) -> Vec<Flat> {
    let points: Vec<DVec3> = m.solid.points.iter().map(|p| vec3(*p)).collect();
    m.solid
        .faces
        .iter()
        .zip(&m.solid.names)
        .filter(|(_, n)| *n == name)
        .map(|(ring, _)| {
            let ring: Vec<DVec3> = ring.iter().map(|k| points[*k as usize]).collect();
            let normal = area_vector(&ring).normalize();
            Flat { normal, offset: ring.iter().map(|p| normal.dot(*p)).sum::<f64>() / ring.len() as f64 }
        })
        .collect()
}

/// Twice the area of a flat ring along its outward normal.
pub fn area_vector(ring: &[DVec3]) -> DVec3 {
    let o = ring[0];
    ring[1..].windows(2).map(|w| (w[0] - o).cross(w[1] - o)).fold(DVec3::ZERO, |a, b| a + b)
}

/// Level distance from the head of the pitch line down to an upright face, mm:
/// what that face takes off, square off the plumb line.
pub fn level_from_head(m: &Member, face: Flat) -> f64 {
    let out = face.normal.truncate();
    (out.dot(head(m)) - face.offset) / out.dot(dir(m))
}

/// Angle between the planes of two faces of the roof, measured inside, degrees.
pub fn dihedral(a: &FaceOut, b: &FaceOut) -> f64 {
    let normal = |f: &FaceOut| {
        let ring: Vec<DVec3> = f.outline.iter().map(|p| vec3(*p)).collect();
        area_vector(&ring).normalize()
    };
    180.0 - Angle::from_cos(normal(a).dot(normal(b))).to_deg()
}

/// The face of a wall.
pub fn face<'a>(s: &'a Solution, wall: &str) -> &'a FaceOut {
    s.faces.iter().find(|f| f.walls.iter().any(|w| w == wall)).unwrap_or_else(|| panic!("no face at wall {wall}"))
}

/// Angle in plan between a line that leaves the start (or end) of a wall and
/// that wall, degrees.
pub fn angle_to_wall(toward: DVec2, along: DVec2) -> f64 {
    Angle::from_rise_run(along.perp_dot(toward).abs(), along.dot(toward)).to_deg()
}

/// Differences of true length of neighbours that stand exactly `centres` apart.
pub fn steps(rafters: &[&Member], centres: f64) -> Vec<f64> {
    rafters
        .windows(2)
        .filter(|w| (along_wall(w[1]) - along_wall(w[0]) - centres).abs() < 1e-6)
        .map(|w| (w[1].true_length_mm - w[0].true_length_mm).abs())
        .collect()
}

/// The value furthest from a figure: if it agrees, all do.
pub fn worst(values: &[f64], want: f64, what: &str) -> f64 {
    values
        .iter()
        .copied()
        .max_by(|a, b| (a - want).abs().total_cmp(&(b - want).abs()))
        .unwrap_or_else(|| panic!("nothing to compare: {what}"))
}

/// Reach of a solid to the left (positive) of its pitch line in plan, mm: `[least, most]`.
pub fn reach_left(m: &Member) -> [f64; 2] {
    let left = dir(m).perp();
    m.solid
        .points
        .iter()
        .map(|p| left.dot(vec3(*p).truncate() - foot(m)))
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], v| [lo.min(v), hi.max(v)])
}

/// Height of a plumb cut of the solid, mm.
pub fn plumb_height(m: &Member, name: &str) -> f64 {
    let k = m.solid.names.iter().position(|n| n == name).unwrap_or_else(|| panic!("{} has no {name}", m.mark));
    let heights = m.solid.faces[k].iter().map(|p| m.solid.points[*p as usize][2]);
    let [lo, hi] = heights.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], z| [lo.min(z), hi.max(z)]);
    hi - lo
}

/// Height of the lowest point of the top, at the tail, mm.
pub fn top_height_at_tail(m: &Member) -> f64 {
    let k = m.solid.names.iter().position(|n| n == "top").unwrap_or_else(|| panic!("{} has no top", m.mark));
    m.solid.faces[k].iter().map(|p| m.solid.points[*p as usize][2]).fold(f64::INFINITY, f64::min)
}

/// Level distance along the pitch line from its foot to an upright face, mm
/// (negative out towards the tail).
pub fn level_from_foot(m: &Member, face: Flat) -> f64 {
    let out = face.normal.truncate();
    (face.offset - out.dot(foot(m))) / out.dot(dir(m))
}
