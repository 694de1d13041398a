//! The frame of a roof: from a checked job to timbers with every cut.

pub mod solution;
