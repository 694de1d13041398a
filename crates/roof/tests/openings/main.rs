//! Openings in slopes.

#![allow(missing_docs, reason = "a test")]

#[path = "../common/mod.rs"]
mod common;

mod anywhere;
