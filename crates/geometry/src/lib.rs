//! Points, planes, plans, roof surfaces and solids.
//!
//! Lengths are millimetres, `z` is up, plans run anticlockwise outside and
//! clockwise around courtyards.

mod angle;
mod carve;
mod cell;
mod convex;
mod patch;
pub mod plan;
mod plan_fault;
mod plane;
pub mod roof_lines;
mod solid;
pub mod surface;
pub mod survey;

pub use angle::Angle;
pub use carve::{carve, trim};
pub use cell::{Cell, Face, ON_PLANE, Ring};
pub use convex::{ConvexPlan, HalfPlan, ON_LINE, Side};
pub use glam::{DVec2, DVec3};
pub use plan_fault::{CornerRef, PlanFault};
pub use plane::Plane;
pub use solid::Solid;
