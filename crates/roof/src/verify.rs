//! The check of a finished frame. It looks at points and faces only and
//! shares no code with what made them.
//!
//! * every solid is closed, and its volume is that of its parts;
//! * no two timbers share more than [`MOST_SHARED`];
//! * where a timber is cut against another, the faces touch within
//!   [`WIDEST_GAP`].

use crate::SolveError;
use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::mending::Fault;
use crate::shape::Shape;
use geometry::DVec3;

/// Most wood that two timbers may share, mm³ (DESIGN contract).
pub const MOST_SHARED: f64 = 1.0;

/// Widest gap between faces in contact, mm (DESIGN contract).
pub const WIDEST_GAP: f64 = 0.05;

/// Faces further apart than this are not meant to touch, mm.
const NOT_MEANT: f64 = 5.0;

/// Normals of touching faces are opposite to within this (1 - cosine).
const OPPOSITE: f64 = 1e-6;

/// Least area of a contact, mm².
const LEAST_CONTACT: f64 = 1.0;

/// Volumes agree to this share of the whole.
const SAME_VOLUME: f64 = 1e-6;

/// A convex part with the planes of its faces.
struct Part {
    points: Vec<DVec3>,
    low: DVec3,
    high: DVec3,
    /// Corners of all faces, one face after the other.
    rings: Vec<DVec3>,
    faces: Vec<Face>,
}

struct Face {
    /// Where its corners stand in [`Part::rings`].
    ring: core::ops::Range<usize>,
    normal: DVec3,
    offset: f64,
    tag: Made,
}

impl Part {
    fn ring(&self, face: &Face) -> &[DVec3] {
        &self.rings[face.ring.clone()]
    }
}

struct Body {
    parts: Vec<Part>,
    low: DVec3,
    high: DVec3,
}

impl Body {
    /// All faces with the parts they belong to.
    fn faces(&self) -> impl Iterator<Item = (&Face, &Part)> {
        self.parts.iter().flat_map(|p| p.faces.iter().map(move |f| (f, p)))
    }
}

/// What a sound frame still leaves to be said: cuts that touch nothing.
#[derive(Debug, Default, PartialEq)]
pub struct Bearings {
    /// For each timber, for each of its cuts: the timber whose face it lies
    /// on. Usually the one it was cut against, but one cut may serve two
    /// timbers whose faces are in one plane.
    pub touches: Vec<Vec<Option<TimberId>>>,
}

/// Check a frame.
///
/// # Errors
/// All that is wrong: solids that are not sound, timbers that share wood,
/// contacts that do not close.
pub fn frame(timbers: &[Timber], shapes: &[Option<Shape>], marks: &[String]) -> Result<Bearings, Vec<Fault>> {
    let mut faults = Vec::new();
    let mut bodies: Vec<Option<Body>> = shapes.iter().map(|s| s.as_ref().map(body)).collect();
    for (k, shape) in shapes.iter().enumerate() {
        if let (Some(shape), Some(body)) = (shape, &bodies[k])
            && let Err(what) = closed(shape, body)
        {
            let error = SolveError::Solid { mark: marks[k].clone(), what };
            faults.push(Fault { error, on: k, with: None, cut: None });
            // Nothing can be said of what it touches.
            bodies[k] = None;
        }
    }
    let pairs = pairs_near(&bodies);
    apart(&bodies, &pairs, marks, &mut faults);
    let bearings = contacts(timbers, &bodies, &neighbours(bodies.len(), &pairs), marks, &mut faults);
    if faults.is_empty() { Ok(bearings) } else { Err(faults) }
}

fn body(shape: &Shape) -> Body {
    let parts: Vec<Part> = shape
        .cells
        .iter()
        .map(|cell| {
            let mut rings = Vec::with_capacity(cell.faces.iter().map(|f| f.ring.len()).sum());
            let faces = cell
                .faces
                .iter()
                .map(|f| {
                    let from = rings.len();
                    rings.extend(f.ring.iter().map(|k| cell.points[*k as usize]));
                    let ring = &rings[from..];
                    let normal = area_vector(ring).normalize_or_zero();
                    let offset = ring.iter().map(|p| normal.dot(*p)).sum::<f64>() / ring.len() as f64;
                    Face { ring: from..rings.len(), normal, offset, tag: f.tag }
                })
                .collect();
            let low = cell.points.iter().fold(DVec3::INFINITY, |a, b| a.min(*b));
            let high = cell.points.iter().fold(DVec3::NEG_INFINITY, |a, b| a.max(*b));
            Part { points: cell.points.clone(), low, high, rings, faces }
        })
        .collect();
    let low = parts.iter().fold(DVec3::INFINITY, |a, p| a.min(p.low));
    let high = parts.iter().fold(DVec3::NEG_INFINITY, |a, p| a.max(p.high));
    Body { parts, low, high }
}

/// Twice the area of a flat ring, along its normal.
fn area_vector(ring: &[DVec3]) -> DVec3 {
    let Some((&o, rest)) = ring.split_first() else { return DVec3::ZERO };
    rest.windows(2).map(|w| (w[0] - o).cross(w[1] - o)).fold(DVec3::ZERO, |a, b| a + b)
}

/// Every edge is walked once each way, and the volume is that of the parts.
fn closed(shape: &Shape, body: &Body) -> Result<(), String> {
    let solid = &shape.solid;
    let mut edges: Vec<(u32, u32)> = solid
        .faces
        .iter()
        .flat_map(|f| (0..f.ring.len()).map(|k| (f.ring[k], f.ring[(k + 1) % f.ring.len()])))
        .collect();
    edges.sort_unstable();
    for pair in edges.windows(2) {
        if pair[0] == pair[1] {
            return Err("an edge is walked twice the same way".into());
        }
    }
    if edges.iter().any(|(a, b)| edges.binary_search(&(*b, *a)).is_err()) {
        return Err("it is not closed".into());
    }
    let o = body.low;
    let whole: f64 = solid
        .faces
        .iter()
        .map(|f| {
            // Triangles from the first corner, seen from `o`.
            let at = |k: u32| solid.points[k as usize] - o;
            let first = at(f.ring[0]);
            f.ring[1..].windows(2).map(|w| first.dot(at(w[0]).cross(at(w[1])))).sum::<f64>() / 6.0
        })
        .sum();
    let parts: f64 = body
        .parts
        .iter()
        .flat_map(|p| p.faces.iter().map(|f| (f, p.ring(f))))
        .map(|(f, ring)| f.normal.dot(ring[0] - o) * area_vector(ring).length() / 6.0)
        .sum();
    if !(whole > 0.0 && (whole - parts).abs() <= SAME_VOLUME * whole + MOST_SHARED) {
        return Err(format!("its volume is {whole:.0} mm³ but its parts have {parts:.0} mm³"));
    }
    Ok(())
}

fn apart(bodies: &[Option<Body>], pairs: &[(usize, usize)], marks: &[String], faults: &mut Vec<Fault>) {
    for &(a, b) in pairs {
        let (Some(ba), Some(bb)) = (&bodies[a], &bodies[b]) else { continue };
        if bb.low.cmpge(ba.high).any() || ba.low.cmpge(bb.high).any() {
            continue;
        }
        let shared: f64 = ba.parts.iter().flat_map(|p| bb.parts.iter().map(move |q| shared_volume(p, q))).sum();
        if shared > MOST_SHARED {
            let at = (ba.low.max(bb.low) + ba.high.min(bb.high)) / 2.0;
            let (first, second) = (marks[a].clone(), marks[b].clone());
            let error = SolveError::Clash { first, second, volume: shared, x: at.x, y: at.y };
            faults.push(Fault { error, on: a, with: Some(b), cut: None });
        }
    }
}

/// Volume that two convex parts share: by the divergence theorem over the
/// faces of each that lie inside the other.
fn shared_volume(a: &Part, b: &Part) -> f64 {
    let parted =
        |p: &Part, q: &Part| p.faces.iter().any(|f| q.points.iter().all(|v| f.normal.dot(*v) >= f.offset - 1e-6));
    let boxes_apart = a.low.cmpge(b.high).any() || b.low.cmpge(a.high).any();
    if boxes_apart || parted(a, b) || parted(b, a) {
        return 0.0;
    }
    let o = a.points[0];
    let (mut ring, mut left) = (Vec::new(), Vec::new());
    let mut inside = |from: &Part, of: &Part| -> f64 {
        from.faces
            .iter()
            .map(|face| {
                ring.clear();
                ring.extend_from_slice(from.ring(face));
                for cut in &of.faces {
                    kept(&ring, cut.normal, cut.offset, &mut left);
                    core::mem::swap(&mut ring, &mut left);
                    if ring.len() < 3 {
                        return 0.0;
                    }
                }
                area_vector(&ring).dot(ring[0] - o) / 6.0
            })
            .sum()
    };
    inside(a, b) + inside(b, a)
}

/// Puts the part of a flat convex ring on the inner side of a plane into `out`.
fn kept(ring: &[DVec3], normal: DVec3, offset: f64, out: &mut Vec<DVec3>) {
    out.clear();
    for (k, &p) in ring.iter().enumerate() {
        let q = ring[(k + 1) % ring.len()];
        let (dp, dq) = (normal.dot(p) - offset, normal.dot(q) - offset);
        if dp <= 0.0 {
            out.push(p);
        }
        if (dp < 0.0 && dq > 0.0) || (dp > 0.0 && dq < 0.0) {
            out.push(p + (q - p) * (dp / (dp - dq)));
        }
    }
}

/// Pairs of bodies whose boxes come near one another, in the order in which
/// they start along the first axis.
fn pairs_near(bodies: &[Option<Body>]) -> Vec<(usize, usize)> {
    let built = bodies.iter().enumerate().filter_map(|(k, b)| b.as_ref().map(|b| (k, b.low, b.high)));
    let mut order: Vec<(usize, DVec3, DVec3)> = built.collect();
    order.sort_by(|(_, a, _), (_, b, _)| a.x.total_cmp(&b.x));
    let mut pairs = Vec::with_capacity(8 * order.len());
    for (i, &(a, low, high)) in order.iter().enumerate() {
        let later = order[i + 1..].iter().take_while(|(_, l, _)| l.x <= high.x + NOT_MEANT);
        let near = later.filter(|(_, l, h)| !(l.cmpgt(high + NOT_MEANT).any() || low.cmpgt(*h + NOT_MEANT).any()));
        pairs.extend(near.map(|(b, ..)| (a, *b)));
    }
    pairs
}

/// For each body, the others that it is paired with, in rising order.
fn neighbours(count: usize, pairs: &[(usize, usize)]) -> Vec<Vec<usize>> {
    let mut near: Vec<Vec<usize>> = vec![Vec::new(); count];
    for &(a, b) in pairs {
        near[a].push(b);
        near[b].push(a);
    }
    for list in &mut near {
        list.sort_unstable();
    }
    near
}

fn contacts(
    timbers: &[Timber],
    bodies: &[Option<Body>],
    near: &[Vec<usize>],
    marks: &[String],
    faults: &mut Vec<Fault>,
) -> Bearings {
    let mut gap_in = |k: usize, other: usize, cut: Option<usize>, gap: f64, at: DVec3| {
        let (first, second) = (marks[k].clone(), marks[other].clone());
        let error = SolveError::Gap { first, second, gap, x: at.x, y: at.y };
        faults.push(Fault { error, on: k, with: Some(other), cut });
    };
    let mut touches: Vec<Vec<Option<TimberId>>> = timbers.iter().map(|t| vec![None; t.cuts.len()]).collect();
    let is_plate = |k: usize| matches!(timbers[k].role, Role::Plate { .. });
    for (k, t) in timbers.iter().enumerate() {
        let Some(mine) = &bodies[k] else { continue };
        for &(tag, id) in &t.rests {
            let found = bodies[id.index()].as_ref().and_then(|other| nearest_contact(mine, tag, other));
            let (gap, at) = found.unwrap_or((f64::INFINITY, mine.low));
            if gap > WIDEST_GAP {
                gap_in(k, id.index(), None, gap, at);
            }
        }
        for (c, cut) in t.cuts.iter().enumerate() {
            let declared = match cut.purpose {
                CutUse::Seat => None,
                purpose => match purpose.other() {
                    Some(id) => Some(id.index()),
                    None => continue,
                },
            };
            let others = near[k].iter().copied().filter(|o| Some(*o) != declared && is_plate(*o) == declared.is_none());
            let declared_near = declared.filter(|o| near[k].binary_search(o).is_ok());
            for other in declared_near.into_iter().chain(others) {
                let Some(body) = &bodies[other] else { continue };
                let Some((gap, at)) = nearest_contact(mine, Made::Cut(c as u16), body) else { continue };
                if gap <= WIDEST_GAP {
                    touches[k][c] = Some(TimberId(other as u32));
                    break;
                }
                if Some(other) == declared {
                    gap_in(k, other, Some(c), gap, at);
                    break;
                }
            }
        }
    }
    Bearings { touches }
}

/// The closest facing pair between the faces of one cut and another body: gap
/// and place.
fn nearest_contact(mine: &Body, tag: Made, other: &Body) -> Option<(f64, DVec3)> {
    let mut best: Option<(f64, DVec3)> = None;
    let (mut ring, mut left) = (Vec::new(), Vec::new());
    for (face, of) in mine.faces().filter(|(f, _)| f.tag == tag) {
        for (facing, by) in other.faces().filter(|(f, _)| f.tag != Made::Inner) {
            if face.normal.dot(facing.normal) > OPPOSITE - 1.0 {
                continue;
            }
            let gap = (face.offset + facing.offset).abs();
            if gap > NOT_MEANT || best.is_some_and(|(g, _)| g <= gap) {
                continue;
            }
            // The part of this face abreast of the facing one.
            ring.clear();
            ring.extend_from_slice(of.ring(face));
            let border = by.ring(facing);
            for (i, &p) in border.iter().enumerate() {
                let q = border[(i + 1) % border.len()];
                let out = (q - p).cross(facing.normal).normalize_or_zero();
                kept(&ring, out, out.dot(p), &mut left);
                core::mem::swap(&mut ring, &mut left);
                if ring.len() < 3 {
                    break;
                }
            }
            if ring.len() >= 3 && area_vector(&ring).length() / 2.0 > LEAST_CONTACT {
                best = Some((gap, ring[0]));
            }
        }
    }
    best
}
