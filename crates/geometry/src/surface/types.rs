//! What a solved roof surface is made of: nodes, arcs and faces as indices
//! into vectors. Topology is kept apart from position: the only positions are
//! in [`Surface::nodes`].

use crate::{DVec2, DVec3, plan};

/// One wall of the plan, numbered through all loops: first the outer loop from
/// its corner 0, then each courtyard in turn. Wall `k` of a loop runs from its
/// corner `k` to corner `k + 1`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct WallId(pub u32);

/// Index into [`Surface::nodes`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeId(pub u32);

/// Index into [`Surface::arcs`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ArcId(pub u32);

/// Index into [`Surface::faces`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FaceId(pub u32);

macro_rules! index {
    ($($id:ident),*) => {$(
        impl $id {
            /// As an index into its vector.
            #[must_use]
            pub const fn index(self) -> usize {
                self.0 as usize
            }
        }
    )*};
}
index!(WallId, NodeId, ArcId, FaceId);

/// What a wall does above its plate, from the bottom up. Each step starts at a
/// height above datum (mm) and holds until the next one.
///
/// A front that stands still (`Vertical`) is a gable, a half hip below its
/// hip, a gablet above its slope, or the wall below a raised plate: all four
/// are one mechanism.
#[derive(Clone, Debug, PartialEq)]
pub struct WallProfile {
    /// The plate height of this wall, mm above datum.
    pub plate_height: f64,
    /// Steps in rising order of height; the first starts at or below
    /// `plate_height`.
    pub steps: Vec<ProfileStep>,
}

/// One step of a [`WallProfile`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProfileStep {
    /// Height above datum where the step starts, mm.
    pub from_height: f64,
    /// What the front does from here up.
    pub slope: Slope,
}

/// How a front moves inwards as height grows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Slope {
    /// It stands still: a gable or another upright piece of wall.
    Vertical,
    /// It leans in at this pitch from level, degrees, 5 to 80.
    Pitch(f64),
}

impl WallProfile {
    /// A plain slope from a plate at `plate_height`, pitch in degrees.
    #[must_use]
    pub fn slope(plate_height: f64, pitch_deg: f64) -> Self {
        Self { plate_height, steps: vec![ProfileStep { from_height: plate_height, slope: Slope::Pitch(pitch_deg) }] }
    }

    /// A gable: upright all the way.
    #[must_use]
    pub fn gable(plate_height: f64) -> Self {
        Self { plate_height, steps: vec![ProfileStep { from_height: plate_height, slope: Slope::Vertical }] }
    }
}

/// The plane of a sloping face: `z = plate_height + tan(pitch) * (inward · p - offset)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoofPlane {
    /// Unit vector square to the wall, pointing into the building.
    pub inward: DVec2,
    /// `inward · p` on the line where the plane is at `base_height`, mm.
    pub offset: f64,
    /// Height of the plane on that line, mm.
    pub base_height: f64,
    /// Pitch from level, degrees.
    pub pitch_deg: f64,
    /// tan(pitch), kept so that everyone uses the same bits.
    pub tan_pitch: f64,
}

impl RoofPlane {
    /// Height of the plane above the plan point `p`, mm.
    #[must_use]
    pub fn height_at(&self, p: DVec2) -> f64 {
        self.base_height + self.tan_pitch * (self.inward.dot(p) - self.offset)
    }
}

/// What kind of line an arc is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ArcKind {
    /// The plate line of a sloping wall: the bottom of its face.
    Eaves,
    /// Level, both faces fall away from it.
    Ridge,
    /// Sloping, both faces fall away, its foot on a plate corner or gable.
    Hip,
    /// Sloping, both faces fall away, both ends inside the plan: a broken hip
    /// or a sloping ridge.
    BrokenHip,
    /// Both faces fall towards it.
    Valley,
    /// The edge of a face on a gable (or another upright piece of wall).
    Verge,
    /// Level: a flatter face takes over from a steeper one below it. Also the
    /// line between the two pitches of one wall.
    PitchBreak,
    /// The edge of a face that dies against an upright piece of wall which
    /// rises above it: under a gablet, or beside a wall that is carried up
    /// past a lower roof.
    Abutment,
}

/// A line of the roof between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoofArc {
    /// Kind of line.
    pub kind: ArcKind,
    /// The lower end (for a level arc, either).
    pub from: NodeId,
    /// The upper end.
    pub to: NodeId,
    /// Face on the left hand when walking from `from` to `to` in plan.
    /// `None` on eaves and verges for the outside.
    pub left: Option<FaceId>,
    /// Face on the right hand.
    pub right: Option<FaceId>,
}

/// A sloping face of the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofFace {
    /// The wall it rises from, and any wall in line with it at one pitch that
    /// shares the face, in rising order.
    pub walls: Vec<WallId>,
    /// Its plane.
    pub plane: RoofPlane,
    /// Outline in plan order, anticlockwise seen from above, as nodes. The
    /// arc from `outline[k]` to `outline[k + 1]` is `arcs[k]`.
    pub outline: Vec<NodeId>,
    /// The arcs of the outline, in the same order.
    pub arcs: Vec<ArcId>,
}

/// A choice that the solver made for the user.
#[derive(Clone, Debug, PartialEq)]
pub enum SurfaceWarning {
    /// Two fronts in one direction met: the flatter takes over, the steeper
    /// face ends in a level pitch break.
    FlatterTookOver {
        /// The wall whose face ends.
        steeper: WallId,
        /// The wall whose face goes on.
        flatter: WallId,
        /// Where, in plan, mm.
        at: DVec2,
        /// Height of the break, mm.
        height: f64,
    },
    /// A gable stands beside a re-entrant corner: the wall is carried up and
    /// the lower roof abuts it.
    UprightCheek {
        /// The gable wall.
        wall: WallId,
        /// Where, in plan, mm.
        at: DVec2,
    },
    /// Walls within tolerance of one line or one direction were trued up.
    Regularised {
        /// The wall that was trued.
        wall: WallId,
        /// How far its corner moved, mm.
        moved: f64,
    },
}

/// A solved roof surface over plate lines, checked by [`super::check`].
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Surface {
    /// Corner positions, mm.
    pub nodes: Vec<DVec3>,
    /// Lines of the roof. Every one separates two faces or borders one.
    pub arcs: Vec<RoofArc>,
    /// Sloping faces, in order of their first wall.
    pub faces: Vec<RoofFace>,
    /// For every wall: the face that rises from it, or `None` for a gable.
    pub face_of_wall: Vec<Option<FaceId>>,
    /// The plan as it was solved, after truing up: one loop of corners each,
    /// the outer loop first.
    pub loops: Vec<Vec<DVec2>>,
    /// What the solver chose for the user.
    pub warnings: Vec<SurfaceWarning>,
}

impl Surface {
    /// Position of a node.
    #[must_use]
    pub fn node(&self, id: NodeId) -> DVec3 {
        self.nodes[id.index()]
    }

    /// An arc by its id.
    #[must_use]
    pub fn arc(&self, id: ArcId) -> &RoofArc {
        &self.arcs[id.index()]
    }

    /// Both ends of the plate line of a wall, in the direction of its loop.
    #[must_use]
    pub fn wall_ends(&self, wall: WallId) -> Option<[DVec2; 2]> {
        plan::wall_ends(&self.loops, wall.index())
    }

    /// A face by its id.
    #[must_use]
    pub fn face(&self, id: FaceId) -> &RoofFace {
        &self.faces[id.index()]
    }
}
