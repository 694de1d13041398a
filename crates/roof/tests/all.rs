//! The tests of this crate from outside, as one program: built and linked once.

#![allow(missing_docs, reason = "a test")]

mod alike;
mod board_rows;
mod by_tape;
mod common;
mod corner_rows;
mod dormers;
mod edge_parts;
mod edge_rows;
mod forms;
mod frame_rules;
mod inside_frames;
mod inside_house;
mod inside_rows;
mod lengthening;
mod marks;
mod mended;
mod openings;
mod out_of_parallel;
mod plate_corners;
mod published;
mod random_frames;
mod reading;
mod refusals;
mod skew_gables;
mod splice_rows;
mod square_rows;
mod surveyed;
mod worked_examples;
