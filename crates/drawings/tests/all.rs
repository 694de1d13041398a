//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod fixture;
mod order;
mod order_fixture;
mod pack;
mod site;
