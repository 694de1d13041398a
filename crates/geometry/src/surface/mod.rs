//! The roof surface over a plan of wall plates.
//!
//! Fronts start on the plate lines and move inwards as height grows, each at
//! the cotangent of its pitch; where fronts meet, the arcs of the roof are
//! drawn (a weighted straight skeleton, swept in height). A gable is a front
//! that stands still, a half hip one that starts late, a gablet one that
//! stops. See `reference/` for the plans that it is checked on.
//!
//! `fronts` says how each wall moves, `state` and `hits` know what happens
//! next, `slice` and `resolve` make it happen, `sweep` runs it, `tidy` and
//! `faces` build the [`Surface`], and [`check`] tests it without using any of
//! them.

mod error;
mod faces;
mod fronts;
mod hits;
mod near;
mod queue;
mod raw;
mod resolve;
mod slice;
mod solve;
mod soundness;
mod state;
mod sweep;
mod tidy;
mod types;

pub use error::{ProfileFault, SurfaceError};
pub use fronts::PITCH_RANGE;
pub use solve::solve;
pub use soundness::{CheckFailure, check};
pub use tidy::FRAMING;
pub use types::{
    ArcId, ArcKind, FaceId, NodeId, ProfileStep, RoofArc, RoofFace, RoofPlane, Slope, Surface, SurfaceWarning, WallId,
    WallProfile,
};
