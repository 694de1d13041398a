//! The roof surface over a plan of wall plates.

mod types;

pub use types::{
    ArcId, ArcKind, FaceId, NodeId, ProfileStep, RoofArc, RoofFace, RoofPlane, Slope, Surface, SurfaceWarning, WallId,
    WallProfile,
};
