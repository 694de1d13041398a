//! Walls in one line whose slopes would be torn apart: both are roofed alike.

use super::faults::notice;
use crate::SolveError;
use crate::solution::Notice;
use geometry::plan::wall_ends;
use geometry::surface::{SurfaceError, WallId};
use job::{Job, Wall, places};

/// The job with the shorter of the two walls that a surface was refused for
/// roofed as the longer, and what there is to say; `None` if it was refused for
/// something else.
pub fn made(job: &Job, error: &SolveError) -> Option<(Job, Notice)> {
    let SolveError::Surface { source: SurfaceError::UnlikeInLine { before, after, .. }, .. } = error else {
        return None;
    };
    let (a, b) = (job.walls.get(before.index())?, job.walls.get(after.index())?);
    let loops = places(&job.loops);
    let length = |wall: &WallId| wall_ends(&loops, wall.index()).map(|[from, to]| from.distance(to));
    let (long, short) = if length(before)? >= length(after)? { (a, *after) } else { (b, *before) };
    let given = &job.walls[short.index()];
    let mut one = job.clone();
    one.walls[short.index()] = Wall { letter: given.letter.clone(), overhang: given.overhang, ..long.clone() };
    let text = format!(
        "Walls {} and {} are in one line, where two slopes would be torn apart: wall {} is roofed as wall {}, at {:.1}°. \
         Make them alike in pitch, height and gable, or part them by a step in the plan.",
        a.letter, b.letter, given.letter, long.letter, long.pitch_deg
    );
    Some((one, notice("one-slope-in-line", format!("walls {} and {}", a.letter, b.letter), text)))
}
