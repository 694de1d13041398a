//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

#[cfg(feature = "bindings")]
mod bindings;
mod common;
mod edits;
mod measure;
mod opening;
mod order;
mod scene;
mod site;
mod strength;
