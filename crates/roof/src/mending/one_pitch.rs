//! Walls in one line whose slopes would be torn apart: one pitch for both.

use super::faults::notice;
use crate::SolveError;
use crate::solution::Notice;
use geometry::surface::{SurfaceError, WallId};
use job::{Job, Wall};

/// The job with one pitch over the two walls that a surface was refused for,
/// that of the longer, and what there is to say; `None` if it was refused for
/// something else, or the walls differ in more than their pitch.
pub fn made(job: &Job, error: &SolveError) -> Option<(Job, Notice)> {
    let SolveError::Surface { source: SurfaceError::UnlikeInLine { before, after, .. }, .. } = error else {
        return None;
    };
    let (a, b) = (job.walls.get(before.index())?, job.walls.get(after.index())?);
    let rest = |w: &Wall| (w.gable, w.plate, w.half_hip, w.gablet, w.upper);
    if rest(a) != rest(b) {
        return None;
    }
    let (long, short) = if length(job, *before)? >= length(job, *after)? { (a, *after) } else { (b, *before) };
    let mut one = job.clone();
    let given = job.walls[short.index()].pitch_deg;
    one.walls[short.index()].pitch_deg = long.pitch_deg;
    let letter = &job.walls[short.index()].letter;
    let text = format!(
        "Walls {} and {} are in one line, so they carry one slope at the {:.2}° of wall {}; wall {letter} was given \
         {given:.2}°, and two slopes in one line would be torn apart. Give both one pitch, or part them by a gable or a step.",
        a.letter, b.letter, long.pitch_deg, long.letter
    );
    Some((one, notice("one-pitch", format!("walls {} and {}", a.letter, b.letter), text)))
}

/// Length of a wall, mm.
fn length(job: &Job, wall: WallId) -> Option<f64> {
    let mut k = wall.index();
    for ring in &job.loops {
        if k < ring.len() {
            let (p, q) = (ring[k], ring[(k + 1) % ring.len()]);
            return Some(((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1])).sqrt());
        }
        k -= ring.len();
    }
    None
}
