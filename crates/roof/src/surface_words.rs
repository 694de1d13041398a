//! A surface that was refused, in the carpenter's words: walls by their
//! letters, corners by their place.

use geometry::surface::{SurfaceError, WallId};
use job::Job;

/// What is wrong, where, and what to do.
pub fn of(job: &Job, error: &SurfaceError) -> String {
    let letter = |w: &WallId| job.walls.get(w.index()).map_or("?", |w| w.letter.as_str());
    let letters = |walls: &[WallId]| walls.iter().map(letter).collect::<Vec<_>>().join(", ");
    match error {
        SurfaceError::UnlikeInLine { place, before, after, .. } => format!(
            "walls {} and {} are in one line, meeting at ({:.0}, {:.0}), but differ in pitch, height or gable: \
             make them alike, or part them by a step in the plan",
            letter(before),
            letter(after),
            place.x,
            place.y
        ),
        SurfaceError::UnsureCorner { place, .. } => format!(
            "the walls that meet at ({:.0}, {:.0}) are so nearly in line that their corner has no sure place: make \
             them one line, or bend them more",
            place.x, place.y
        ),
        SurfaceError::Profile { wall, fault } => format!("wall {} cannot be roofed: {fault}", letter(wall)),
        SurfaceError::GableNeverMet { walls, at, .. } => format!(
            "no slope ever meets the gables of walls {} near ({:.0}, {:.0}): give one of them a pitch",
            letters(walls),
            at.x,
            at.y
        ),
        SurfaceError::NeverCloses { walls, at, height } => format!(
            "no slope closes the roof near ({:.0}, {:.0}) above {height:.0} mm, where walls {} go on upright: give one \
             of them a pitch",
            at.x,
            at.y,
            letters(walls)
        ),
        SurfaceError::SlopeAroundShaft { wall, at } => format!(
            "the slope of wall {} runs all round an upright courtyard near ({:.0}, {:.0}): give a wall of that \
             courtyard a pitch, or leave it out of the plan",
            letter(wall),
            at.x,
            at.y
        ),
        other => other.to_string(),
    }
}
