//! The pitch of a wall or of the roof.

use super::Changes;
use super::slopes::{PitchKey, rounded, sharing, wall_number};
use crate::opening::Open;
use crate::refusal::Refusal;

/// Sets the pitch of a wall, or of the roof when no wall is named.
pub(super) fn set(open: &Open, wall: Option<&str>, pitch_deg: f64) -> Result<Changes, Refusal> {
    let job = open.job.as_ref().map_err(Clone::clone)?;
    let written = rounded(pitch_deg);
    let Some(letter) = wall else {
        return Ok(Changes { steps: vec![PitchKey::Roof.step(job, pitch_deg)], said: format!("Pitch {written}°") });
    };
    let number = wall_number(job, letter)?;
    if job.walls[number].gable {
        return Err(Refusal::new(
            "gable-with-pitch",
            format!("Wall {letter} is a gable: no slope rises from it"),
            format!("Make wall {letter} a hip first"),
        ));
    }
    let walls = sharing(open.solution().ok(), job, number);
    let steps = walls.iter().map(|&wall| PitchKey::Wall(wall).step(job, pitch_deg)).collect();
    let letters: Vec<&str> = walls.iter().filter_map(|&wall| job.walls.get(wall)).map(|w| w.letter.as_str()).collect();
    let who = if letters.len() > 1 { "Walls" } else { "Wall" };
    Ok(Changes { steps, said: format!("{who} {}: pitch {written}°", letters.join(", ")) })
}
