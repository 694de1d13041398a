//! Shared by the tests of the roof surface; each uses a part of it.
#![allow(dead_code)]

pub mod fixed;
pub mod plans;
pub mod twin;
