//! A timber while it is being framed: a strip in plan with heights along it.

use crate::lengthening::Lengthened;
use crate::marking::Axes;
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::{FaceId, RoofPlane, WallId};
use geometry::{Cell, ConvexPlan, DVec2, DVec3, HalfPlan, Plane};
use job::{Section, TailCut};

/// Index into the timbers of a frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TimberId(pub u32);

impl TimberId {
    /// As an index into the frame's timbers.
    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

/// What made a side of a footprint or a face of a solid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Made {
    /// The wide side on the right, looking from foot to head.
    Right,
    /// The wide side on the left.
    Left,
    /// The top edge, or its only plane.
    Top,
    /// The half of a backed top on the left.
    TopLeft,
    /// The half of a backed top on the right.
    TopRight,
    /// The underside.
    Underside,
    /// A square end that no cut has replaced (`true` at the head).
    End(bool),
    /// A cut: an index into [`Timber::cuts`].
    Cut(u16),
    /// Where two cells of one timber meet: not a face at all.
    Inner,
}

/// What a cut is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutUse {
    /// Against another timber.
    Against(TimberId),
    /// A mitre with its mate.
    Mitre(TimberId),
    /// Half the depth taken out, so that the other runs through in one level.
    Halved(TimberId),
    /// Joined in length to the other.
    Spliced(TimberId),
    /// Trimmed square in plan at the end of its line.
    Trim,
    /// The plumb or square cut at the tail; the wall whose fascia it carries.
    Tail(WallId),
    /// The level cut under a tail.
    Soffit,
    /// The plumb cut of a birdsmouth.
    Heel,
    /// The level cut of a birdsmouth.
    Seat,
}

impl CutUse {
    /// The timber that the cut lies against.
    pub const fn other(self) -> Option<TimberId> {
        match self {
            Self::Against(id) | Self::Mitre(id) | Self::Halved(id) | Self::Spliced(id) => Some(id),
            Self::Trim | Self::Tail(_) | Self::Soffit | Self::Heel | Self::Seat => None,
        }
    }

    /// The same cut against another timber.
    pub const fn against(self, id: TimberId) -> Self {
        match self {
            Self::Against(_) => Self::Against(id),
            Self::Mitre(_) => Self::Mitre(id),
            Self::Halved(_) => Self::Halved(id),
            Self::Spliced(_) => Self::Spliced(id),
            Self::Trim | Self::Tail(_) | Self::Soffit | Self::Heel | Self::Seat => self,
        }
    }
}

/// A cut of a timber. Upright cuts are made in plan; the others carry their
/// plane in the solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrameCut {
    /// What it is for.
    pub purpose: CutUse,
    /// Which end.
    pub at: CutPlace,
}

/// The top of a timber, as heights over plan points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Top {
    /// Flat across: rafters, ridges, dropped hips.
    Flat,
    /// Planed to the plane on the left and the one on the right; the lower of
    /// the two for a hip, the higher for a valley.
    Backed {
        /// Plane of the face on the left.
        left: RoofPlane,
        /// Plane of the face on the right.
        right: RoofPlane,
        /// A valley: hollow instead of ridged.
        hollow: bool,
    },
    /// Planed right across to the plane of its face: rafters that do not run
    /// straight up it.
    Planed(RoofPlane),
}

/// What a timber is in the frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Role {
    /// In a face; `at` is its station along the face's own direction.
    Rafter {
        /// The face.
        face: FaceId,
    },
    /// On a line between two faces.
    Spine {
        /// Face on the left, looking from foot to head.
        left: FaceId,
        /// Face on the right.
        right: FaceId,
    },
    /// On a wall.
    Plate {
        /// The wall.
        wall: WallId,
    },
    /// Fitted to the frame; the wall that it is listed under, if any.
    Fitted {
        /// The wall.
        wall: Option<WallId>,
    },
}

/// How the wood of a timber is bounded.
#[derive(Clone, Debug, PartialEq)]
pub enum Body {
    /// By its outline in plan and its heights.
    Upright,
    /// A section along an axis in space, already cut: convex cells that share
    /// whole faces or parts of them.
    Fitted {
        /// Its own axes.
        axes: Axes,
        /// Its centre or pitch line from foot to head, mm.
        line: [DVec3; 2],
        /// The cells; where two of them meet, their faces are [`Made::Inner`].
        cells: Vec<Cell<Made>>,
    },
}

/// A plane that a cut follows where it is not upright: wood is inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// The plane; its normal points out of the wood that is left.
    pub plane: Plane,
    /// What the cut is for.
    pub purpose: CutUse,
    /// Which end it is listed under.
    pub at: CutPlace,
}

/// Wood taken out of a timber: what lies inside all of these planes goes. The
/// planes' normals point out of the hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Notch {
    /// The sides of the hole.
    pub faces: Vec<Face>,
}

/// A birdsmouth: level seat on the plate, plumb heel against it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// The heel: inside is towards the tail.
    pub heel: HalfPlan,
    /// Height of the seat, mm.
    pub level: f64,
}

/// Firring on a plate: what a rafter, hip or valley is packed up by.
#[derive(Clone, Debug, PartialEq)]
pub struct Firring {
    /// Its sides: those of what stands on it, and where the plate ends under it.
    pub sides: Vec<HalfPlan>,
    /// How high it is, mm.
    pub height: f64,
}

/// How one half of a tail ends: at the fascia of a wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TailEnd {
    /// The wall.
    pub wall: WallId,
    /// Plane of its face (pitch plane, not raised).
    pub plane: RoofPlane,
    /// Overhang in plan, mm.
    pub overhang: f64,
    /// How it is cut.
    pub cut: TailCut,
}

impl TailEnd {
    /// The tail at the eaves of a wall. A square cut that would run into the
    /// seat on the plate is made plumb: it needs an overhang of
    /// upstand · sin(pitch) · cos(pitch).
    pub fn new(wall: WallId, plane: RoofPlane, overhang: f64, upstand: f64, wanted: TailCut) -> Self {
        let needed = upstand * plane.tan_pitch / (1.0 + plane.tan_pitch * plane.tan_pitch);
        let cut = if wanted == TailCut::Square && overhang < needed { TailCut::Plumb } else { wanted };
        Self { wall, plane, overhang, cut }
    }
}

/// Where an end of a pitch line lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EndOn {
    /// On a plate line.
    Plate,
    /// At a joint of lines.
    Joint(u32),
    /// Along another timber's centre line.
    Timber(TimberId),
    /// On a gable or another wall that is carried up.
    Wall,
    /// On a line of the surface that carries no timber.
    Bare,
}

/// A timber in the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Timber {
    /// Kind.
    pub kind: MemberKind,
    /// What it is in the frame.
    pub role: Role,
    /// Section.
    pub section: Section,
    /// Plan point of the foot of its pitch line, mm.
    pub foot: DVec2,
    /// Plan direction from foot to head, unit.
    pub dir: DVec2,
    /// Plan length of the pitch line, mm.
    pub run: f64,
    /// Height of the pitch line at the foot, mm.
    pub base: f64,
    /// Rise of the pitch line per mm of run.
    pub slope: f64,
    /// Thickness on the right and left of the pitch line, mm.
    pub half: [f64; 2],
    /// Plumb height of a flat top above the pitch line, mm.
    pub top_offset: f64,
    /// Plumb height of the underside above the pitch line, mm (negative below).
    pub under_offset: f64,
    /// Shape of the top.
    pub top: Top,
    /// How far a dropped hip is lowered, plumb, mm.
    pub drop: Option<f64>,
    /// Where the foot and the head of the pitch line lie.
    pub ends: [EndOn; 2],
    /// Which ends run out over a gable's verge.
    pub over_verge: [bool; 2],
    /// Height of the plates of its face, mm: nothing of it hangs lower inside
    /// the building.
    pub plate_level: f64,
    /// Birdsmouth.
    pub seat: Option<Seat>,
    /// Tail ends: none, one (rafters) or left and right (hips and valleys).
    pub tails: Vec<TailEnd>,
    /// Outline in plan, after all upright cuts so far.
    pub footprint: ConvexPlan<Made>,
    /// Its cuts.
    pub cuts: Vec<FrameCut>,
    /// A rafter that belongs to the joint its head lies on (crown and last
    /// commons): hips are cut against it.
    pub at_joint: Option<u32>,
    /// A spine that runs on past this joint.
    pub through: Vec<u32>,
    /// Left out: nothing is left of it, or too little to fix.
    pub gone: bool,
    /// How its wood is bounded.
    pub body: Body,
    /// Cuts right across it that are not upright.
    pub ends_cut: Vec<Face>,
    /// Notches in it, beside the birdsmouth.
    pub notches: Vec<Notch>,
    /// Faces of its own, not cut, that lie on another timber: the check of the
    /// frame wants them in contact.
    pub rests: Vec<(Made, TimberId)>,
    /// Firring on top of it, for a plate.
    pub firring: Vec<Firring>,
    /// What it knows about being one length of several.
    pub lengthened: Option<Box<Lengthened>>,
    /// Its place in the row that it was asked for in, from 0, where some of the
    /// row may be left out: a mark counts by this.
    pub slot: u16,
}

impl Timber {
    /// A timber fitted to the frame: `line` is its centre or pitch line from
    /// foot to head, mm; `cuts` are those that the tags of its cells name.
    pub fn fitted(
        kind: MemberKind,
        wall: Option<WallId>,
        section: Section,
        line: [DVec3; 2],
        axes: Axes,
        cells: Vec<Cell<Made>>,
        cuts: Vec<FrameCut>,
    ) -> Self {
        let flat = (line[1] - line[0]).truncate();
        let run = flat.length();
        Self {
            kind,
            role: Role::Fitted { wall },
            section,
            foot: line[0].truncate(),
            dir: if run > 0.0 { flat / run } else { DVec2::X },
            run,
            base: line[0].z,
            slope: if run > 0.0 { (line[1].z - line[0].z) / run } else { 0.0 },
            half: [section.thickness / 2.0; 2],
            top_offset: 0.0,
            under_offset: 0.0,
            top: Top::Flat,
            drop: None,
            ends: [EndOn::Bare; 2],
            over_verge: [false; 2],
            plate_level: line[0].z,
            seat: None,
            tails: Vec::new(),
            footprint: ConvexPlan::default(),
            cuts,
            at_joint: None,
            through: Vec::new(),
            gone: cells.is_empty(),
            body: Body::Fitted { axes, line, cells },
            rests: Vec::new(),
            firring: Vec::new(),
            lengthened: None,
            slot: 0,
            ends_cut: Vec::new(),
            notches: Vec::new(),
        }
    }

    /// Its own axes.
    pub fn axes(&self) -> Axes {
        match &self.body {
            Body::Upright => Axes::of(self),
            Body::Fitted { axes, .. } => *axes,
        }
    }

    /// Both ends of its centre or pitch line, mm.
    pub fn line(&self) -> [DVec3; 2] {
        match self.body {
            Body::Upright => [self.foot, self.head()].map(|p| p.extend(self.line_height(p))),
            Body::Fitted { line, .. } => line,
        }
    }

    /// The tag of a cut, added to the list when it is new there.
    pub fn tag(&mut self, purpose: CutUse, at: CutPlace) -> Made {
        let known = self.cuts.iter().position(|c| c.purpose == purpose && c.at == at);
        let k = known.unwrap_or_else(|| {
            self.cuts.push(FrameCut { purpose, at });
            self.cuts.len() - 1
        });
        Made::Cut(k as u16)
    }

    /// Unit plan vector to the left of the timber.
    pub fn left(&self) -> DVec2 {
        self.dir.perp()
    }

    /// Head of the pitch line in plan.
    pub fn head(&self) -> DVec2 {
        self.foot + self.dir * self.run
    }

    /// Distance of a plan point along the pitch line from the foot.
    pub fn along(&self, p: DVec2) -> f64 {
        self.dir.dot(p - self.foot)
    }

    /// Height of the pitch line abreast of a plan point.
    pub fn line_height(&self, p: DVec2) -> f64 {
        self.base + self.slope * self.along(p)
    }

    /// The half plan of its left (`true`) or right side: inside is the timber.
    pub fn side(&self, left: bool) -> HalfPlan {
        let out = if left { self.left() } else { -self.left() };
        HalfPlan::through(self.foot + out * self.half[usize::from(left)], out)
    }

    /// The side that faces along a plan direction.
    pub fn side_facing(&self, toward: DVec2) -> HalfPlan {
        self.side(self.left().dot(toward) > 0.0)
    }

    /// Cut it upright: keep the inside of `half`.
    pub fn cut(&mut self, half: HalfPlan, purpose: CutUse, at: CutPlace) {
        let tag = Made::Cut(self.cuts.len() as u16);
        let left = self.footprint.clipped(half, tag);
        if left.sides().iter().any(|s| s.tag == tag) {
            self.cuts.push(FrameCut { purpose, at });
        }
        self.footprint = left;
    }

    /// Whether it is built and has a mark of its own: later lengths of a timber
    /// share that of the first.
    pub fn is_numbered(&self) -> bool {
        !self.gone && self.lengthened.as_ref().is_none_or(|l| l.part == 0)
    }

    /// Whether this is a rafter of any kind.
    pub fn is_rafter(&self) -> bool {
        matches!(self.role, Role::Rafter { .. })
    }

    /// Which end of the timber a plan point is nearer to.
    pub fn end_near(&self, p: DVec2) -> CutPlace {
        if self.along(p) * 2.0 > self.run { CutPlace::Head } else { CutPlace::Foot }
    }
}
