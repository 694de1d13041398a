//! Lifts.
mod centroid;
pub use centroid::balance;
