//! The papers of access.

mod calendar;
mod fault;

pub use calendar::calendar;
pub use fault::RecordsFault;
