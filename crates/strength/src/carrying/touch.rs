//! Where timbers lie on one another, found from their solids alone.

use geometry::{DVec2, DVec3};
use roof::solution::Member;

/// Faces nearer than this lie on one another, mm: the gap that the check of a frame allows.
const LIES_ON: f64 = 0.06;

/// Normals of faces that lie on one another are opposite to within this (1 − cosine).
const OPPOSITE: f64 = 1e-6;

/// A contact smaller than this carries nothing, mm².
const LEAST_AREA: f64 = 50.0;

/// A place where two timbers touch.
#[derive(Clone, Copy, Debug)]
pub struct Touch {
    /// The one, by its number in the solution.
    pub a: usize,
    /// The other; its number is greater.
    pub b: usize,
    /// The middle of what they share, mm.
    pub at: DVec3,
    /// Unit normal out of `a`, into `b`.
    pub normal: DVec3,
    /// What they share, mm².
    pub area: f64,
}

impl Touch {
    /// The other timber, seen from one, with the normal out of that one.
    #[must_use]
    pub fn from(&self, member: usize) -> Option<(usize, DVec3)> {
        if member == self.a {
            Some((self.b, self.normal))
        } else if member == self.b {
            Some((self.a, -self.normal))
        } else {
            None
        }
    }
}

struct Flat {
    ring: Vec<DVec3>,
    normal: DVec3,
    offset: f64,
    low: DVec3,
    high: DVec3,
}

struct Body {
    member: usize,
    faces: Vec<Flat>,
    low: DVec3,
    high: DVec3,
}

/// All places where the given timbers touch, in the order of their numbers.
#[must_use]
pub fn touches(members: &[Member], which: impl Fn(&Member) -> bool) -> Vec<Touch> {
    let mut bodies: Vec<Body> = members.iter().enumerate().filter(|(_, m)| which(m)).map(|(k, m)| body(k, m)).collect();
    // Left to right, so that a timber is only held against those that it may reach.
    bodies.sort_by(|a, b| a.low.x.total_cmp(&b.low.x));
    let mut found = Vec::new();
    for (k, a) in bodies.iter().enumerate() {
        for b in bodies[k + 1..].iter().take_while(|b| b.low.x <= a.high.x + LIES_ON) {
            if near(a.low, a.high, b.low, b.high) {
                pair(a, b, &mut found);
            }
        }
    }
    found.sort_by_key(|t| (t.a, t.b));
    found
}

fn near(low: DVec3, high: DVec3, other_low: DVec3, other_high: DVec3) -> bool {
    !(low.cmpgt(other_high + LIES_ON).any() || other_low.cmpgt(high + LIES_ON).any())
}

fn pair(a: &Body, b: &Body, found: &mut Vec<Touch>) {
    for mine in a.faces.iter().filter(|f| near(f.low, f.high, b.low, b.high)) {
        for theirs in b.faces.iter().filter(|f| near(f.low, f.high, mine.low, mine.high)) {
            if mine.normal.dot(theirs.normal) > OPPOSITE - 1.0 || (mine.offset + theirs.offset).abs() > LIES_ON {
                continue;
            }
            if let Some((area, at)) = shared(mine, theirs)
                && area > LEAST_AREA
            {
                let (first, second, normal) = if a.member < b.member {
                    (a.member, b.member, mine.normal)
                } else {
                    (b.member, a.member, -mine.normal)
                };
                found.push(Touch { a: first, b: second, at, normal, area });
            }
        }
    }
}

fn body(number: usize, member: &Member) -> Body {
    let points: Vec<DVec3> = member.solid.points.iter().map(|p| DVec3::from_array(*p)).collect();
    let faces: Vec<Flat> = member
        .solid
        .faces
        .iter()
        .filter_map(|ring| {
            let ring: Vec<DVec3> = ring.iter().filter_map(|k| points.get(*k as usize).copied()).collect();
            let o = *ring.first()?;
            let area = ring.windows(2).map(|w| (w[0] - o).cross(w[1] - o)).fold(DVec3::ZERO, |a, b| a + b);
            let normal = area.normalize_or_zero();
            let (low, high) = bounds(&ring);
            Some(Flat { normal, offset: normal.dot(o), low, high, ring })
        })
        .collect();
    let (low, high) = bounds(&points);
    Body { member: number, faces, low, high }
}

fn bounds(points: &[DVec3]) -> (DVec3, DVec3) {
    points.iter().fold((DVec3::INFINITY, DVec3::NEG_INFINITY), |(l, h), p| (l.min(*p), h.max(*p)))
}

/// Area and middle of what two faces in one plane share. A face that is not convex is cut by the other; of two such
/// faces, the second counts as its hull would in the plane, which may only make the patch greater.
fn shared(a: &Flat, b: &Flat) -> Option<(f64, DVec3)> {
    let across = if a.normal.x.abs() < 0.6 { DVec3::X } else { DVec3::Y };
    let u = a.normal.cross(across).normalize_or_zero();
    let v = a.normal.cross(u);
    let flat = |p: &DVec3| DVec2::new(u.dot(*p), v.dot(*p));
    let mut one: Vec<DVec2> = a.ring.iter().map(flat).collect();
    let mut two: Vec<DVec2> = b.ring.iter().rev().map(flat).collect();
    if !convex(&two) {
        core::mem::swap(&mut one, &mut two);
        if !convex(&two) {
            two = hull(two);
        }
    }
    for k in 0..two.len() {
        let (p, q) = (two[k], two[(k + 1) % two.len()]);
        one = left_of(&one, p, q);
        if one.len() < 3 {
            return None;
        }
    }
    let (area, middle) = area_and_middle(&one)?;
    let on_plane = a.normal * a.offset;
    Some((area, on_plane + u * (middle.x - u.dot(on_plane)) + v * (middle.y - v.dot(on_plane))))
}

fn convex(ring: &[DVec2]) -> bool {
    let n = ring.len();
    let turn = |k: usize| (ring[(k + 1) % n] - ring[k]).perp_dot(ring[(k + 2) % n] - ring[(k + 1) % n]);
    (0..n).all(|k| turn(k) >= -LIES_ON)
}

/// The convex hull, anticlockwise.
fn hull(mut points: Vec<DVec2>) -> Vec<DVec2> {
    points.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let half = |points: &mut dyn Iterator<Item = DVec2>| {
        let mut chain: Vec<DVec2> = Vec::new();
        for p in points {
            while let [.., a, b] = chain[..]
                && (b - a).perp_dot(p - b) <= 0.0
            {
                chain.pop();
            }
            chain.push(p);
        }
        chain.pop();
        chain
    };
    let mut below = half(&mut points.iter().copied());
    below.extend(half(&mut points.iter().rev().copied()));
    below
}

/// What of a ring lies left of a line.
pub(super) fn left_of(ring: &[DVec2], p: DVec2, q: DVec2) -> Vec<DVec2> {
    let side = |r: DVec2| (q - p).perp_dot(r - p);
    let mut kept = Vec::with_capacity(ring.len() + 1);
    for k in 0..ring.len() {
        let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
        let (sa, sb) = (side(a), side(b));
        if sa >= 0.0 {
            kept.push(a);
        }
        if (sa > 0.0 && sb < 0.0) || (sa < 0.0 && sb > 0.0) {
            kept.push(a + (b - a) * (sa / (sa - sb)));
        }
    }
    kept
}

/// Area and middle of a ring, anticlockwise; `None` when it is too small to have one.
pub(super) fn area_and_middle(ring: &[DVec2]) -> Option<(f64, DVec2)> {
    let o = *ring.first()?;
    let (twice, moment) = ring[1..].windows(2).fold((0.0, DVec2::ZERO), |(sum, moment), w| {
        let (a, b) = (w[0] - o, w[1] - o);
        let twice = a.perp_dot(b);
        (sum + twice, moment + (a + b) * twice)
    });
    // Below a thousandth of a square millimetre there is nothing.
    (twice > 2e-3).then(|| (twice / 2.0, o + moment / (3.0 * twice)))
}
