//! A straight timber while it is being fitted: a section along an axis, cut by
//! planes.

use crate::frame::timber::{CutUse, Face, FrameCut, Made, Timber, TimberId};
use crate::marking::Axes;
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::{RoofPlane, WallId};
use geometry::{Cell, ConvexPlan, DVec2, DVec3, HalfPlan, Plane};
use job::Section;

/// What lies on another timber covers all but this much of its width, mm.
pub const EDGE: f64 = 0.01;

/// The upper ends of what is lapped to the sides of rafters stay this far below
/// their tops, square to the slope, mm: clear of the battens, with room for a
/// slip of the saw.
pub const UNDER_TOPS: f64 = 10.0;

/// Level timbers nearer to parallel than this (as a sine: 15°) do not cross.
const LEAST_CROSSING: f64 = 0.26;

/// The plane under which the ends of lapped timbers stay: [`UNDER_TOPS`] below
/// the tops of the rafters of a slope.
pub fn under_tops(plane: RoofPlane, upstand: f64) -> Plane {
    // Square under the tops is further plumb.
    below(plane, upstand - UNDER_TOPS * (1.0 + plane.tan_pitch * plane.tan_pitch).sqrt())
}

/// Axes from an origin on the underside line at mid thickness: `along` and
/// `up` are unit vectors square to one another.
pub fn axes(origin: DVec3, along: DVec3, up: DVec3) -> Axes {
    Axes { origin, along, up, across: up.cross(along) }
}

/// The plane over a line in plan; wood is inside.
pub fn upright(half: HalfPlan) -> Plane {
    Plane { normal: half.normal.extend(0.0), offset: half.offset }
}

/// A roof plane raised plumb by `raise`, mm; inside is below it.
pub fn below(plane: RoofPlane, raise: f64) -> Plane {
    let point = plane.inward * plane.offset;
    Plane::through(point.extend(plane.base_height + raise), outward(plane))
}

/// Unit normal of a roof plane, up and out.
pub fn outward(plane: RoofPlane) -> DVec3 {
    (plane.inward * -plane.tan_pitch).extend(1.0).normalize()
}

/// A straight timber being fitted.
#[derive(Clone)]
pub struct Beam {
    /// Kind.
    pub kind: MemberKind,
    /// The wall it is listed under.
    pub wall: Option<WallId>,
    /// Section.
    pub section: Section,
    /// Its own axes.
    pub axes: Axes,
    /// Its wood.
    pub cells: Vec<Cell<Made>>,
    /// Its cuts, in the order in which they were asked for.
    pub cuts: Vec<FrameCut>,
    /// Faces that must lie on other timbers.
    pub rests: Vec<(Made, TimberId)>,
}

impl Beam {
    /// A timber with square ends, from `reach[0]` to `reach[1]` along its axis.
    pub fn new(kind: MemberKind, section: Section, axes: Axes, reach: [f64; 2]) -> Self {
        let half = section.thickness / 2.0;
        let tags = [Made::Right, Made::End(true), Made::Left, Made::End(false)];
        let plan = ConvexPlan::strip(DVec2::ZERO, DVec2::X, reach, [-half, half], tags);
        let mut cell = Cell::prism(&plan, |_| 0.0, |_| section.depth, Made::Underside, Made::Top);
        for p in &mut cell.points {
            *p = axes.origin + axes.along * p.x + axes.across * p.y + axes.up * p.z;
        }
        Self { kind, wall: None, section, axes, cells: vec![cell], cuts: Vec::new(), rests: Vec::new() }
    }

    /// A timber whose sides are plumb, along a line in plan and level.
    /// `underside` is the height of its underside, mm.
    pub fn level(kind: MemberKind, section: Section, at: DVec2, dir: DVec2, underside: f64, reach: [f64; 2]) -> Self {
        Self::new(kind, section, axes(at.extend(underside), dir.extend(0.0), DVec3::Z), reach)
    }

    /// Keep what is inside a plane; gives the tag of the new face.
    pub fn cut(&mut self, plane: Plane, purpose: CutUse, at: CutPlace) -> Made {
        let tag = self.new_tag(purpose, at);
        self.cells = geometry::trim(&self.cells, plane, tag, Made::Inner);
        tag
    }

    /// Take out a hole: what lies inside all of these planes goes.
    pub fn hollow(&mut self, faces: &[Face]) {
        let hole: Vec<(Plane, Made)> = faces.iter().map(|f| (f.plane, self.new_tag(f.purpose, f.at))).collect();
        self.cells = geometry::carve(&self.cells, &hole, Made::Inner);
    }

    fn new_tag(&mut self, purpose: CutUse, at: CutPlace) -> Made {
        self.cuts.push(FrameCut { purpose, at });
        Made::Cut((self.cuts.len() - 1) as u16)
    }

    /// Whether a face of this tag is left.
    pub fn has(&self, tag: Made) -> bool {
        self.cells.iter().any(|c| c.faces.iter().any(|f| f.tag == tag))
    }

    /// First and last point along its axis, mm from its origin; the first is
    /// past the last when nothing is left.
    pub fn reach(&self) -> [f64; 2] {
        self.cells.iter().flat_map(|c| &c.points).fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], p| {
            let x = self.axes.along.dot(*p - self.axes.origin);
            [lo.min(x), hi.max(x)]
        })
    }

    /// Length from end to end, mm; 0 when nothing is left.
    pub fn length(&self) -> f64 {
        let [from, to] = self.reach();
        (to - from).max(0.0)
    }

    /// The middle of its section at a distance along its axis.
    pub fn centre(&self, along: f64) -> DVec3 {
        self.axes.origin + self.axes.along * along + self.axes.up * (self.section.depth / 2.0)
    }

    /// The timber, with its line through the middle of its section.
    pub fn timber(self) -> Timber {
        let [from, to] = self.reach();
        let line = [self.centre(from), self.centre(to)];
        let mut timber = Timber::fitted(self.kind, self.wall, self.section, line, self.axes, self.cells, self.cuts);
        timber.rests = self.rests;
        timber
    }
}

/// The corners of the patch in plan where two level timbers cross; `None` when
/// they run alongside one another. Each is given by a point of its centre line,
/// its direction and half its width.
pub fn crossing(a: (DVec2, DVec2, f64), b: (DVec2, DVec2, f64)) -> Option<[DVec2; 4]> {
    let turn = a.1.perp_dot(b.1);
    if turn.abs() < LEAST_CROSSING {
        return None;
    }
    let middle = a.0 + a.1 * ((b.0 - a.0).perp_dot(b.1) / turn);
    let (along_a, along_b) = (a.1 * ((b.2 - EDGE) / turn.abs()), b.1 * ((a.2 - EDGE) / turn.abs()));
    Some([along_a + along_b, along_a - along_b, -along_a - along_b, along_b - along_a].map(|v| middle + v))
}

/// Whether a face of this tag on these cells covers all of the points, seen
/// from above.
pub fn covers(cells: &[Cell<Made>], tag: Made, points: &[DVec2]) -> bool {
    let faces = || cells.iter().flat_map(|c| c.faces.iter().filter(|f| f.tag == tag).map(move |f| (c, f)));
    points.iter().all(|p| {
        faces().any(|(cell, face)| {
            let n = face.ring.len();
            let at = |k: usize| cell.points[face.ring[k % n] as usize].truncate();
            let turns = (0..n).map(|k| (at(k + 1) - at(k)).perp_dot(*p - at(k)));
            let [least, most] = turns.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], t| [a.min(t), b.max(t)]);
            least >= 0.0 || most <= 0.0
        })
    })
}
