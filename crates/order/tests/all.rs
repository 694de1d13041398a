//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod buying_counts;
mod buying_sums;
mod covering_roofs;
mod covering_rows;
mod cutting;
mod cutting_properties;
mod cutting_roofs;
mod prices_list;
