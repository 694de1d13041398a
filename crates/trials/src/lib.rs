//! What must hold for any input at all. The fuzz targets and the plain seeded
//! tests call the same functions; each panics when its promise is broken.
//! [`houses`] are input for everything that reads a job file.

pub mod houses;
mod job_text;
mod plan;
mod seed;

pub use job_text::job_text;
pub use plan::{CORNER_BYTES, MOST_CORNERS, plan};
pub use seed::Seed;
