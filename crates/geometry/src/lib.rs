//! Points, planes, plans, roof surfaces and solids.
//!
//! Lengths are millimetres, `z` is up, plans run anticlockwise outside and
//! clockwise around courtyards.

mod angle;
pub mod plan;
mod plan_fault;
pub mod surface;

pub use angle::Angle;
pub use glam::{DVec2, DVec3};
pub use plan_fault::{CornerRef, PlanFault};
