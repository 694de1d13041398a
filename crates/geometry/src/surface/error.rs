//! Why a roof was refused.

use core::fmt::Write as _;

use thiserror::Error;

use super::soundness::CheckFailure;
use super::types::WallId;
use crate::{CornerRef, DVec2, PlanFault};

/// Why no roof surface is returned. A wrong roof never is.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Error)]
pub enum SurfaceError {
    /// The plan breaks rules of its own; all of them are listed.
    #[error("the plan of the plates has faults: {}", listed(.0))]
    Plan(Vec<PlanFault>),
    /// The list of wall profiles does not match the walls.
    #[error("there are {walls} walls but {profiles} wall profiles; give every wall one")]
    ProfileCount {
        /// Walls in the plan.
        walls: usize,
        /// Profiles given.
        profiles: usize,
    },
    /// A profile that cannot be built.
    #[error("the profile of wall {} cannot be built: {fault}", .wall.0)]
    Profile {
        /// The wall.
        wall: WallId,
        /// What is wrong with it.
        fault: ProfileFault,
    },
    /// Two walls in line with each other have different profiles, so that
    /// their roof planes would part at the joint.
    #[error(
        "the walls that meet at corner {} of loop {} are in line but differ in pitch or height; \
         make them the same, or put a gable wall or a step between them",
        .at.corner, .at.ring
    )]
    UnlikeInLine {
        /// The corner between them.
        at: CornerRef,
        /// Where it is, mm.
        place: DVec2,
        /// The wall that ends there.
        before: WallId,
        /// The wall that starts there.
        after: WallId,
    },
    /// Truing up would move a corner further than a tape can read.
    #[error(
        "the walls at corner {} of loop {} are so nearly in line that the corner has no sure place; \
         make them exactly in line or bend them more", .at.corner, .at.ring
    )]
    UnsureCorner {
        /// The corner.
        at: CornerRef,
        /// Where it is, mm.
        place: DVec2,
    },
    /// No wall has a slope.
    #[error("every wall is a gable, so there is no roof; give at least one wall a pitch")]
    AllGables,
    /// Gables stand around a part of the plan that no slope reaches.
    #[error(
        "the gables of walls {} are never met by a slope near ({:.0}, {:.0}); give one of them a pitch",
        numbered(.walls), .at.x, .at.y
    )]
    GableNeverMet {
        /// The gables left standing.
        walls: Vec<WallId>,
        /// A place between them, mm.
        at: DVec2,
        /// Height from which nothing closes, mm.
        height: f64,
    },
    /// Upright pieces of wall stand around a part that no slope closes.
    #[error(
        "no slope closes the roof near ({:.0}, {:.0}) above height {height:.0}: walls {} go on upright; \
         let one of them slope from there", .at.x, .at.y, numbered(.walls)
    )]
    NeverCloses {
        /// The walls that go on upright.
        walls: Vec<WallId>,
        /// A place between them, mm.
        at: DVec2,
        /// Height from which nothing closes, mm.
        height: f64,
    },
    /// A slope runs right round an upright courtyard, which leaves a face
    /// with a hole.
    #[error(
        "the slope of wall {} runs all round an upright shaft near ({:.0}, {:.0}); give a wall of that courtyard a \
         pitch, or leave it out here and trim an opening instead", .wall.0, .at.x, .at.y
    )]
    SlopeAroundShaft {
        /// A wall of the face.
        wall: WallId,
        /// A place on the edge of the hole, mm.
        at: DVec2,
    },
    /// The solver lost its way. This is a fault of the program, found by its
    /// own checks.
    #[error(
        "the roof could not be worked out near ({:.0}, {:.0}) at height {height:.0}: {what}; \
         moving a corner there by a few millimetres may help", .at.x, .at.y
    )]
    Lost {
        /// Where, mm.
        at: DVec2,
        /// Height reached, mm.
        height: f64,
        /// What was found wrong.
        what: &'static str,
    },
    /// The finished surface failed its independent check. This is a fault of
    /// the program.
    #[error(
        "the roof that was worked out fails its check: {}; moving a corner there by a few millimetres may help",
        listed(.0)
    )]
    Unsound(Vec<CheckFailure>),
}

/// What is wrong with a wall profile.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum ProfileFault {
    /// No step at all.
    #[error("it has no steps; a gable is one upright step")]
    NoSteps,
    /// A pitch that cannot be cut.
    #[error("a pitch of {pitch_deg} degrees; pitches run from 5 to 80")]
    Pitch {
        /// The pitch, degrees.
        pitch_deg: f64,
    },
    /// A height that is not a number or further than 1 km.
    #[error("a height is not within 1 km of the datum")]
    Height,
    /// Steps not in rising order.
    #[error("its steps do not rise: one starts at {from_height} mm, below or level with the step before it")]
    Order {
        /// Start of the second of the two, mm.
        from_height: f64,
    },
}

fn listed<T: core::fmt::Display>(items: &[T]) -> String {
    joined(items.iter(), "; ")
}

fn numbered(walls: &[WallId]) -> String {
    joined(walls.iter().map(|w| w.0), ", ")
}

fn joined<T: core::fmt::Display>(items: impl Iterator<Item = T>, separator: &str) -> String {
    let mut text = String::new();
    for (k, item) in items.enumerate() {
        let before = if k == 0 { "" } else { separator };
        // Writing to a string cannot fail.
        let _ = write!(text, "{before}{item}");
    }
    text
}
