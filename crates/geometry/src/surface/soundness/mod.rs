//! An independent check of a finished surface. It shares no code with the
//! sweep: it knows only the plan, the wall profiles and the result.
//!
//! Together the checks leave no room for a wrong roof: outlines are simple
//! and every arc has one face on each side (`outlines`), every face lies in a
//! plane that rises from its own wall and nowhere below it, and lines of each
//! kind bend the way their kind says (`planes`), and the faces cover the plan
//! once (`whole`). Time grows as n log n.

mod outlines;
mod planes;
mod whole;

use thiserror::Error;

use super::types::{ArcId, FaceId, NodeId, Surface, WallId, WallProfile};
use crate::DVec3;

/// How far a node may lie off the planes of its faces, mm, and how far a line
/// may stray: as much as nodes are moved when they are framed as one.
pub const OFF_PLANE: f64 = super::tidy::FRAMING;

/// How far the rim of the faces may lie off the plate lines on the whole, mm.
/// Nodes on the rim are only ever moved along it.
const OFF_RIM: f64 = 0.1;

/// Something that a sound roof surface does not have. Places are in mm.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Error)]
pub enum CheckFailure {
    /// An index points nowhere, or a coordinate is not a number.
    #[error("the lists of the surface do not belong together")]
    Lists,
    /// An outline and its arcs do not follow one another, or an arc does not
    /// name the faces beside it.
    #[error("the outline of face {} is not made of its arcs near ({:.0}, {:.0})", .face.0, .at.x, .at.y)]
    Outline {
        /// The face.
        face: FaceId,
        /// Where.
        at: DVec3,
    },
    /// An arc with other than one face on each side that it names.
    #[error("arc {} has not one face on each side near ({:.0}, {:.0})", .arc.0, .at.x, .at.y)]
    Sides {
        /// The arc.
        arc: ArcId,
        /// Where.
        at: DVec3,
    },
    /// An outline that crosses itself or runs clockwise.
    #[error("the outline of face {} crosses itself near ({:.0}, {:.0})", .face.0, .at.x, .at.y)]
    NotSimple {
        /// The face.
        face: FaceId,
        /// Where.
        at: DVec3,
    },
    /// A node off the plane of its face.
    #[error("node {} is {off:.2} mm off the plane of face {} near ({:.0}, {:.0})", .node.0, .face.0, .at.x, .at.y)]
    OffPlane {
        /// The face.
        face: FaceId,
        /// The node.
        node: NodeId,
        /// How far, mm.
        off: f64,
        /// Where.
        at: DVec3,
    },
    /// A face whose plane does not rise from its walls as their profiles say,
    /// or which does not touch their line, or reaches below it.
    #[error("face {} does not rise from its wall near ({:.0}, {:.0})", .face.0, .at.x, .at.y)]
    NotOnItsWall {
        /// The face.
        face: FaceId,
        /// Where.
        at: DVec3,
    },
    /// A wall that slopes from the lowest plate but has no face.
    #[error("wall {} has a pitch but no face", .wall.0)]
    NoFace {
        /// The wall.
        wall: WallId,
    },
    /// A line that does not bend the way its kind says, or is not level when
    /// its kind is.
    #[error("arc {} is not of its kind near ({:.0}, {:.0})", .arc.0, .at.x, .at.y)]
    WrongKind {
        /// The arc.
        arc: ArcId,
        /// Where.
        at: DVec3,
    },
    /// The faces do not cover the plan exactly once.
    #[error("the faces do not cover the plan once: moment {moment} is {off:.0} mm off")]
    Partition {
        /// Which moment of area: 0 the area itself, then x, y, xx, xy, yy.
        moment: usize,
        /// The difference as a shift of the rim, mm.
        off: f64,
    },
    /// Nodes less arcs plus faces is not one less the number of courtyards.
    #[error("nodes less arcs plus faces is {found}, not {expected}")]
    Euler {
        /// What it is.
        found: i64,
        /// What it should be.
        expected: i64,
    },
    /// The sloping area does not agree with the plan area and pitches.
    #[error("the sloping area of face {} does not agree with its plan area and pitch", .face.0)]
    SlopeArea {
        /// The face.
        face: FaceId,
    },
}

/// Checks a surface against its own plan and the profiles of its walls.
///
/// # Errors
/// Everything that was found wrong, in the order of faces and arcs.
pub fn check(surface: &Surface, walls: &[WallProfile]) -> Result<(), Vec<CheckFailure>> {
    if !lists_agree(surface, walls) {
        return Err(vec![CheckFailure::Lists]);
    }
    let mut failures = Vec::new();
    outlines::check(surface, &mut failures);
    planes::check(surface, walls, &mut failures);
    whole::check(surface, &mut failures);
    if failures.is_empty() { Ok(()) } else { Err(failures) }
}

/// Whether a difference is too large, or not a number.
fn beyond(difference: f64, limit: f64) -> bool {
    difference > limit || difference.is_nan()
}

/// Whether every index of the surface points into its list, so that the
/// other checks may follow them.
fn lists_agree(surface: &Surface, walls: &[WallProfile]) -> bool {
    let node = |n: NodeId| n.index() < surface.nodes.len();
    let face = |f: Option<FaceId>| f.is_none_or(|f| f.index() < surface.faces.len());
    let arcs = surface.arcs.iter().all(|a| node(a.from) && node(a.to) && face(a.left) && face(a.right));
    let faces = surface.faces.iter().all(|f| {
        f.outline.len() == f.arcs.len()
            && f.outline.len() >= 3
            && !f.walls.is_empty()
            && f.outline.iter().all(|&n| node(n))
            && f.arcs.iter().all(|a| a.index() < surface.arcs.len())
            && f.walls.iter().all(|w| w.index() < walls.len())
    });
    let finite = surface.nodes.iter().all(|n| n.is_finite());
    let corners: usize = surface.loops.iter().map(Vec::len).sum();
    let counts = surface.face_of_wall.len() == walls.len() && corners == walls.len();
    let owners = surface.face_of_wall.iter().all(|f| face(*f)) && !surface.faces.is_empty();
    arcs && faces && finite && counts && owners
}
