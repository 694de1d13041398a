//! The eaves as the boards along them see it: one line for every wall with
//! tails, and what it meets at its two ends.

use super::{beam, sprockets, verges};
use crate::carcass::Carcass;
use crate::frame::timber::TailEnd;
use crate::frame::{PARALLEL, gable_ends};
use geometry::surface::{ArcKind, RoofPlane, WallId};
use geometry::{DVec2, DVec3, Plane};
use job::{Job, TailCut};

/// Walls that turn less than this (as a sine) run on in one line: boards along
/// them are butted square, for a mitre would run far along both.
const STRAIGHT: f64 = 1e-4;

/// A point is a corner or lies on a wall when it misses it by less, mm: the
/// tidy of a surface moves no node further.
const AT_CORNER: f64 = 0.5;

/// Fascia lines that miss one another by less than this in height are one
/// line, mm.
const ONE_LINE: f64 = 0.5;

/// Fascia lines that step by more than this at a corner are not carried round
/// it, mm: no board is so deep.
const HIGHEST_STEP: f64 = 300.0;

/// Boards whose backs miss one another by less than this lie in one plane, mm.
const ONE_PLANE: f64 = 0.05;

/// What an eaves line meets at one of its ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Meets {
    /// The eaves line of the next wall, by its place in the list.
    Line(usize),
    /// A gable: it runs out to the verge, the upright plane over which faces
    /// away from the gable.
    Verge(Plane),
    /// A wall that is carried up: it stops at the corner.
    Wall,
    /// The slope of a lower face that passes by its end: it starts above the
    /// plates of that face, as at a half hip. The plane of that face's rafters'
    /// backs.
    Over(RoofPlane),
}

/// The eaves of one wall.
#[derive(Clone, Copy, Debug)]
pub struct EavesLine {
    /// The wall.
    pub wall: WallId,
    /// Start and end of its eaves in plan, on the plate line, the building on
    /// the left.
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
    let surface = carcass.surface;
    let tails = tails_by_wall(carcass);
    let mut place = Vec::with_capacity(tails.len());
    let mut out = Vec::with_capacity(tails.len());
    for (k, tail) in tails.into_iter().enumerate() {
        let wall = WallId(k as u32);
        let line = tail.zip(surface.wall_ends(wall)).map(|(tail, ends)| bare(carcass, wall, tail, ends));
        place.push(line.map(|_| out.len()));
        out.extend(line);
    }
    let mut first = 0;
    for ring in &surface.loops {
        let n = ring.len();
        for k in 0..n {
            let Some(own) = place[first + k] else { continue };
            for head in [false, true] {
                let other = if head { (k + 1) % n } else { (k + n - 1) % n };
                let corner = ring[if head { other } else { k }];
                let outer = turn(ring, if head { k } else { other }) > PARALLEL;
                out[own].meets[usize::from(head)] =
                    meets(carcass, &out, (own, head), place[first + other], (corner, outer));
            }
        }
        first += n;
    }
    out
}

/// The sine by which a loop turns at the end of its wall `k`; positive at an
/// outer corner.
fn turn(ring: &[DVec2], k: usize) -> f64 {
    let n = ring.len();
    let dir = |k: usize| (ring[(k + 1) % n] - ring[k % n]).normalize_or_zero();
    dir(k).perp_dot(dir(k + 1))
}

/// The eaves line of a wall, without what it meets.
fn bare(carcass: &Carcass<'_>, wall: WallId, mut tail: TailEnd, ends: [DVec2; 2]) -> EavesLine {
    let backs = raised(tail.plane, carcass.heights.upstand);
    let (top, sprocket) = match sprockets::surface(carcass.job, backs) {
        Some(found) => {
            // Sprockets are cut plumb, whatever the tails under them are.
            tail.cut = TailCut::Plumb;
            found
        }
        None => (backs, 0.0),
    };
    EavesLine { wall, corners: reach_of(carcass, wall, ends), tail, top, sprocket, meets: [Meets::Wall; 2] }
}

/// What a line meets at one end: `other` is the line of the next wall there,
/// `corner` where the walls meet, and whether that is an outer corner.
fn meets(
    carcass: &Carcass<'_>,
    lines: &[EavesLine],
    (own, head): (usize, bool),
    other: Option<usize>,
    (corner, outer): (DVec2, bool),
) -> Meets {
    let line = &lines[own];
    let at_corner = |l: &EavesLine, head: bool| (l.corners[usize::from(head)] - corner).length() < AT_CORNER;
    if let Some(k) = other {
        let next = &lines[k];
        // Plates at different heights under one fascia line: the eaves run out
        // to where they meet.
        let step = (line.edge().z - next.edge().z).abs();
        let one_line = outer && step < ONE_LINE;
        if one_line || (step < HIGHEST_STEP && at_corner(line, head) && at_corner(next, !head)) {
            return Meets::Line(k);
        }
    }
    if !at_corner(line, head) {
        let end = line.corners[usize::from(head)];
        return lower_face(carcass, end).map_or(Meets::Wall, Meets::Over);
    }
    if outer { Meets::Verge(verge_at(carcass, line, head)) } else { Meets::Wall }
}

/// The upright plane over the verge past an end of a line: along the gable
/// there, square to the line where the gable is, or where there is none.
fn verge_at(carcass: &Carcass<'_>, line: &EavesLine, head: bool) -> Plane {
    let corner = line.corners[usize::from(head)];
    let along = if head { line.along() } else { -line.along() };
    let skew = gable_ends::run_out(carcass.job, carcass.surface, corner, along, 0.0);
    skew.map_or_else(|| line.square_end(head, carcass.job.verge.overhang), |o| beam::upright(o.verge))
}

/// From where to where along its plate line a wall carries eaves: not over its
/// whole length where another slope passes its ends lower down.
fn reach_of(carcass: &Carcass<'_>, wall: WallId, ends: [DVec2; 2]) -> [DVec2; 2] {
    let surface = carcass.surface;
    let Some(face) = surface.face_of_wall.get(wall.index()).copied().flatten() else { return ends };
    let along = (ends[1] - ends[0]).normalize_or_zero();
    let length = (ends[1] - ends[0]).length();
    let beside = |p: DVec2| along.perp_dot(p - ends[0]).abs() < AT_CORNER;
    let at = |p: DVec2| along.dot(p - ends[0]);
    let of_wall = |pair: &[DVec2; 2]| {
        let [a, b] = pair.map(at);
        pair.iter().all(|p| beside(*p)) && a.min(b) < length - AT_CORNER && a.max(b) > AT_CORNER
    };
    let reach = surface
        .face(face)
        .arcs
        .iter()
        .map(|a| surface.arc(*a))
        .filter(|a| a.kind == ArcKind::Eaves)
        .map(|a| [a.from, a.to].map(|n| surface.node(n).truncate()))
        .filter(of_wall)
        .flatten()
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], p| [lo.min(at(p)), hi.max(at(p))]);
    // Whole walls keep the bits of their corners.
    let [low, high] = reach;
    let start = if low > AT_CORNER && low < length { ends[0] + along * low } else { ends[0] };
    let end = if high < length - AT_CORNER && high > 0.0 { ends[0] + along * high } else { ends[1] };
    [start, end]
}

/// The backs of the rafters of the face that ends on a wall below a plan point.
fn lower_face(carcass: &Carcass<'_>, at: DVec2) -> Option<RoofPlane> {
    let edges = verges::of(carcass.surface);
    let edge = edges.iter().find(|e| (e.ends[1].truncate() - at).length() < AT_CORNER)?;
    Some(raised(carcass.surface.face(edge.face).plane, carcass.heights.upstand))
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

    /// The line in plan over which its roof and another plane meet, as an
    /// upright plane that faces away from this one past its start or end;
    /// `None` where the two run on straight.
    pub fn seam(&self, head: bool, other: &RoofPlane) -> Option<Plane> {
        if self.out().perp_dot(other.inward).abs() < STRAIGHT {
            return None;
        }
        let grade = |p: &RoofPlane| (p.inward * p.tan_pitch, p.tan_pitch * p.offset - p.base_height);
        let ((ga, ca), (gb, cb)) = (grade(&self.top), grade(other));
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
    /// inner faces do. Where the lines are at different heights, it is upright
    /// through their corner. `None` where they run on straight.
    pub fn mitre(&self, head: bool, other: &Self) -> Option<Plane> {
        if self.out().perp_dot(other.out()).abs() < STRAIGHT {
            return None;
        }
        let upright = |l: &Self| Plane { normal: l.out().extend(0.0), offset: l.reach() };
        let step = (self.edge().z - other.edge().z).abs() > ONE_LINE;
        let (mine, theirs) = if step { (upright(self), upright(other)) } else { (self.face(), other.face()) };
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
            Meets::Verge(verge) => verge,
            Meets::Wall => self.square_end(head, 0.0),
            Meets::Over(lower) => self.over_end(head, &lower, self.edge().z),
        }
    }

    /// Where a lower face passes its edge at a height, in plan.
    fn over_point(&self, head: bool, lower: &RoofPlane, height: f64) -> DVec2 {
        let along = if head { self.along() } else { -self.along() };
        let start = self.edge().truncate();
        let rise = lower.tan_pitch * lower.inward.dot(along);
        let s = if rise.abs() < STRAIGHT { 0.0 } else { (height - lower.height_at(start)) / rise };
        start + along * s
    }

    /// The upright plane square to this line at that place.
    pub fn over_end(&self, head: bool, lower: &RoofPlane, height: f64) -> Plane {
        let along = if head { self.along() } else { -self.along() };
        Plane::through(self.over_point(head, lower, height).extend(0.0), along.extend(0.0))
    }

    /// Where its fascia and the barge board on a lower face that passes its end
    /// are mitred, when both lie in one upright plane: through the points where
    /// their upper and their lower edges meet. Faces up the barge board.
    pub fn mitre_with_barge(&self, head: bool, job: &Job) -> Option<Plane> {
        let Meets::Over(lower) = self.meets[usize::from(head)] else { return None };
        let (fascia, barge) = (job.timber.parts.fascia?, job.timber.parts.barge?);
        let verge = self.out().dot(self.corners[usize::from(head)]) + job.verge.overhang;
        if self.is_square() || (verge - self.reach()).abs() > ONE_PLANE {
            return None;
        }
        let upper = self.over_point(head, &lower, self.edge().z).extend(self.edge().z);
        let plumb = barge.depth * (1.0 + lower.tan_pitch * lower.tan_pitch).sqrt();
        let on = (plumb - fascia.depth) / lower.tan_pitch;
        Some(Plane::through(upper, (lower.inward * fascia.depth).extend(on).normalize()))
    }

    /// The line it meets at an end, if any.
    pub fn next(&self, head: bool) -> Option<usize> {
        match self.meets[usize::from(head)] {
            Meets::Line(k) => Some(k),
            _ => None,
        }
    }
}
