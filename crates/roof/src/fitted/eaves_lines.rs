//! The eaves as the boards along them see it: one line for every wall with
//! tails, and what it meets at its two ends.

use super::sprockets;
use crate::carcass::Carcass;
use crate::frame::PARALLEL;
use crate::frame::timber::TailEnd;
use geometry::surface::{RoofPlane, WallId};
use geometry::{DVec2, DVec3, Plane};
use job::TailCut;

/// Walls that turn less than this (as a sine) run on in one line: boards along
/// them are butted square, for a mitre would run far along both.
const STRAIGHT: f64 = 1e-4;

/// What an eaves line meets at one of its ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Meets {
    /// The eaves line of the next wall, by its place in the list.
    Line(usize),
    /// A gable: it runs out this far past the corner of the plates, mm.
    Verge(f64),
    /// A wall that is carried up: it stops at the corner.
    Wall,
}

/// The eaves of one wall.
#[derive(Clone, Copy, Debug)]
pub struct EavesLine {
    /// The wall.
    pub wall: WallId,
    /// Start and end of its plate line in plan, the building on the left.
    pub corners: [DVec2; 2],
    /// How its tails end.
    pub tail: TailEnd,
    /// The plane in which the roof lies there: the backs of the rafters, or of
    /// the sprockets on them.
    pub top: RoofPlane,
    /// How far up the rafters sprockets reach from the plate line, mm in plan;
    /// 0 where there are none.
    pub sprocket: f64,
    /// What lies at the two ends.
    pub meets: [Meets; 2],
}

/// The eaves lines of a roof, in the order of the walls.
pub fn of(carcass: &Carcass<'_>) -> Vec<EavesLine> {
    let tails = tails_by_wall(carcass);
    let mut place = Vec::with_capacity(tails.len());
    let mut count = 0;
    for tail in &tails {
        place.push(tail.map(|_| count));
        count += usize::from(tail.is_some());
    }
    let mut out = Vec::with_capacity(count);
    let mut first = 0;
    for ring in &carcass.surface.loops {
        let n = ring.len();
        let dir = |k: usize| (ring[(k + 1) % n] - ring[k % n]).normalize_or_zero();
        for k in 0..n {
            let Some(mut tail) = tails[first + k] else { continue };
            let backs = raised(tail.plane, carcass.heights.upstand);
            let (top, sprocket) = match sprockets::surface(carcass.job, backs) {
                Some(found) => {
                    // Sprockets are cut plumb, whatever the tails under them are.
                    tail.cut = TailCut::Plumb;
                    found
                }
                None => (backs, 0.0),
            };
            let meets = |before: usize, after: usize, other: usize| match place[first + other] {
                Some(line) => Meets::Line(line),
                None if dir(before).perp_dot(dir(after)) > PARALLEL => Meets::Verge(carcass.job.verge.overhang),
                None => Meets::Wall,
            };
            let (before, after) = ((k + n - 1) % n, (k + 1) % n);
            out.push(EavesLine {
                wall: WallId((first + k) as u32),
                corners: [ring[k], ring[after]],
                tail,
                top,
                sprocket,
                meets: [meets(before, k, before), meets(k, after, after)],
            });
        }
        first += n;
    }
    out
}

/// A pitch plane raised by the upstand.
pub fn raised(plane: RoofPlane, upstand: f64) -> RoofPlane {
    RoofPlane { base_height: plane.base_height + upstand, ..plane }
}

/// How the tails of every wall end, read off the timbers that have some:
/// rafters first, for the tails of a valley follow both of its walls.
fn tails_by_wall(carcass: &Carcass<'_>) -> Vec<Option<TailEnd>> {
    let walls: usize = carcass.surface.loops.iter().map(Vec::len).sum();
    let mut tails: Vec<Option<(bool, TailEnd)>> = vec![None; walls];
    for (_, timber) in carcass.built().filter(|(_, t)| t.seat.is_some()) {
        for tail in &timber.tails {
            let Some(known) = tails.get_mut(tail.wall.index()) else { continue };
            let firm = timber.is_rafter();
            if known.is_none_or(|(by_rafter, _)| firm && !by_rafter) {
                *known = Some((firm, *tail));
            }
        }
    }
    tails.into_iter().map(|t| t.map(|(_, tail)| tail)).collect()
}

impl EavesLine {
    /// Unit plan vector out of the building.
    pub fn out(&self) -> DVec2 {
        -self.tail.plane.inward
    }

    /// Unit plan vector along the wall, the building on the left.
    pub fn along(&self) -> DVec2 {
        self.out().perp()
    }

    /// The line on which the backs of the rafters end, abreast of the start of
    /// the wall, mm.
    pub fn edge(&self) -> DVec3 {
        let flat = self.corners[0] + self.out() * (self.reach() - self.out().dot(self.corners[0]));
        flat.extend(self.top.height_at(flat))
    }

    /// How far the fascia line lies along the outward vector, mm.
    pub fn reach(&self) -> f64 {
        self.tail.overhang - self.tail.plane.offset
    }

    /// The line in plan below which its roof and that of another meet, as an
    /// upright plane that faces away from this one past its start or end;
    /// `None` where the two run on straight.
    pub fn seam(&self, head: bool, other: &Self) -> Option<Plane> {
        if self.out().perp_dot(other.out()).abs() < STRAIGHT {
            return None;
        }
        let grade = |p: &RoofPlane| (p.inward * p.tan_pitch, p.tan_pitch * p.offset - p.base_height);
        let ((ga, ca), (gb, cb)) = (grade(&self.top), grade(&other.top));
        let size = (ga - gb).length();
        let plane = Plane { normal: ((ga - gb) / size).extend(0.0), offset: (ca - cb) / size };
        let away = if head { self.along() } else { -self.along() };
        Some(if plane.normal.truncate().dot(away) > 0.0 { plane } else { plane.flipped() })
    }

    /// Whether the building turns outwards at one of its ends.
    pub fn is_outer(&self, head: bool, other: &Self) -> bool {
        self.out().perp_dot(other.out()) * if head { 1.0 } else { -1.0 } > 0.0
    }

    /// Whether the tails are cut square to the rafters.
    pub fn is_square(&self) -> bool {
        self.tail.cut == TailCut::Square
    }

    /// The plane of the tails' faces; its normal points out of the building.
    pub fn face(&self) -> Plane {
        let down = if self.is_square() { -self.top.tan_pitch } else { 0.0 };
        Plane::through(self.edge(), self.out().extend(down).normalize())
    }

    /// Unit vector up in the plane of the tails' faces, square to the eaves.
    pub fn up_face(&self) -> DVec3 {
        let lean = if self.is_square() { self.top.tan_pitch } else { 0.0 };
        (self.out() * lean).extend(1.0).normalize()
    }

    /// The upright plane at which a board along this line ends square, `past`
    /// mm beyond the start or the end of the wall.
    pub fn square_end(&self, head: bool, past: f64) -> Plane {
        let out = if head { self.along() } else { -self.along() };
        let corner = self.corners[usize::from(head)] + out * past;
        Plane::through(corner.extend(0.0), out.extend(0.0))
    }

    /// Where boards of one thickness on two lines are mitred: the plane
    /// through the line where their outer faces meet and the one where their
    /// inner faces do. `None` where the lines run on straight.
    pub fn mitre(&self, head: bool, other: &Self) -> Option<Plane> {
        if self.out().perp_dot(other.out()).abs() < STRAIGHT {
            return None;
        }
        let (mine, theirs) = (self.face(), other.face());
        let across = mine.normal - theirs.normal;
        let size = across.length();
        let plane = Plane { normal: across / size, offset: (mine.offset - theirs.offset) / size };
        let out = if head { self.along() } else { -self.along() };
        Some(if plane.normal.truncate().dot(out) > 0.0 { plane } else { plane.flipped() })
    }

    /// The plane at which a board on the tails ends.
    pub fn board_end(&self, head: bool, lines: &[Self]) -> Plane {
        match self.meets[usize::from(head)] {
            Meets::Line(k) => {
                lines.get(k).and_then(|o| self.mitre(head, o)).unwrap_or_else(|| self.square_end(head, 0.0))
            }
            Meets::Verge(past) => self.square_end(head, past),
            Meets::Wall => self.square_end(head, 0.0),
        }
    }

    /// The line it meets at an end, if any.
    pub fn next(&self, head: bool) -> Option<usize> {
        match self.meets[usize::from(head)] {
            Meets::Line(k) => Some(k),
            _ => None,
        }
    }
}
