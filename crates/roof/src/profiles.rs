//! What each wall of a job does above its plate, for the surface.

use geometry::surface::{ProfileStep, Slope, WallProfile};
use job::Wall;

/// The profile of a wall, from the plate up.
pub fn of_wall(wall: &Wall) -> WallProfile {
    let plate = wall.plate;
    let step = |above: f64, slope| ProfileStep { from_height: plate + above, slope };
    let pitch = Slope::Pitch(wall.pitch_deg);
    let steps = if wall.gable {
        vec![step(0.0, Slope::Vertical)]
    } else if let Some(from) = wall.half_hip {
        vec![step(0.0, Slope::Vertical), step(from, pitch)]
    } else if let Some(to) = wall.gablet {
        vec![step(0.0, pitch), step(to, Slope::Vertical)]
    } else if let Some(upper) = wall.upper {
        vec![step(0.0, pitch), step(upper.from, Slope::Pitch(upper.pitch_deg))]
    } else {
        vec![step(0.0, pitch)]
    };
    WallProfile { plate_height: plate, steps }
}
