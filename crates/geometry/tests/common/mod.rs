//! Shared by the tests of the roof surface.

pub mod fixed;
