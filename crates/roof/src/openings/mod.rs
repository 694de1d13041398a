//! Openings: holes in slopes, what trims them, and where they fit.
//!
//! A hole is looked at three times: before rafters stand (does it lie in the
//! slope at all), when its trimming rafters stand (is there room for them), and
//! when the frame is cut (its rafters are split and the trimmers put in).

mod hole;
mod misfit;
mod nearest;
mod patch;
mod place;
mod room;
pub mod rule;
mod slope;
mod trim;
mod void;

pub use hole::{Hole, Owner, start_of};
pub use misfit::{Misfit, Place, advice};
pub use nearest::advised;
pub use place::{out, place};
pub use room::Room;
pub use slope::Slope;
pub use trim::Trimmed;
pub use void::{Void, speak_of_crossings};

use crate::SolveError;
use crate::frame::heights::Heights;
use geometry::surface::Surface;
use job::{Job, OpeningKind};

/// All holes in slopes that a job asks for.
///
/// # Errors
/// When one has no slope to lie in.
pub fn holes(job: &Job, surface: &Surface, heights: &Heights) -> Result<Vec<Hole>, SolveError> {
    // Dormers first: openings give way to them.
    let dormers = job.dormers.iter().enumerate().map(|(k, d)| hole::of_dormer(job, surface, heights, k, d));
    let openings = job
        .openings
        .iter()
        .enumerate()
        .filter(|(_, o)| o.kind != OpeningKind::Hatch)
        .map(|(k, o)| hole::of_opening(job, surface, heights, k, o));
    dormers.chain(openings).collect()
}
