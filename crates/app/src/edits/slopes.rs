//! Which keys of a job set which slopes.

use super::Step;
use crate::refusal::Refusal;
use job::Job;
use job::listing::Said;
use roof::solution::Solution;

/// Pitches that a finger sets are written to the hundredth of a degree: over
/// a rafter of 6 m that moves its head by 1 mm.
const PITCH_STEPS_PER_DEGREE: f64 = 100.0;

/// A pitch as it is written.
pub(super) fn rounded(pitch_deg: f64) -> f64 {
    (pitch_deg * PITCH_STEPS_PER_DEGREE).round() / PITCH_STEPS_PER_DEGREE
}

/// The number of a wall.
pub(super) fn wall_number(job: &Job, wall: &str) -> Result<usize, Refusal> {
    job.walls.iter().position(|known| known.letter == wall).ok_or_else(|| {
        let last = job.walls.last().map_or("", |wall| wall.letter.as_str());
        let what = format!("This plan has no wall {wall}");
        Refusal::new("no-such-wall", what, format!("Choose one of its walls, A to {last}"))
    })
}

/// All walls that share a slope with a wall: it breaks unless their pitches are alike.
pub(super) fn sharing(solution: Option<&Solution>, job: &Job, wall: usize) -> Vec<usize> {
    let Some(letter) = job.walls.get(wall).map(|wall| &wall.letter) else { return Vec::new() };
    let face = solution.and_then(|solution| solution.faces.iter().find(|face| face.walls.contains(letter)));
    let numbers = |letters: &[String]| {
        letters.iter().filter_map(|letter| job.walls.iter().position(|wall| wall.letter == *letter)).collect()
    };
    face.map_or_else(|| vec![wall], |face| numbers(&face.walls))
}

/// A key that sets a pitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum PitchKey {
    /// Of every wall that has none of its own.
    Roof,
    /// The second pitch of every wall that has none of its own.
    RoofUpper,
    /// Of a wall.
    Wall(usize),
    /// The second pitch of a wall.
    WallUpper(usize),
}

impl PitchKey {
    /// Where it stands.
    fn path(self, job: &Job) -> String {
        let letter = |wall: usize| job.walls.get(wall).map_or("", |wall| wall.letter.as_str());
        match self {
            Self::Roof => "roof.pitch".to_owned(),
            Self::RoofUpper => "roof.upper.pitch".to_owned(),
            Self::Wall(wall) => format!("roof.walls.{}.pitch", letter(wall)),
            Self::WallUpper(wall) => format!("roof.walls.{}.upper.pitch", letter(wall)),
        }
    }

    /// The step that sets it.
    pub(super) fn step(self, job: &Job, pitch_deg: f64) -> Step {
        (self.path(job), Some(rounded(pitch_deg).to_string()))
    }

    /// The key of the whole roof that holds for the wall of this one, if the wall does not say its own.
    pub(super) fn shared(self, job: &Job, said: &Said) -> Option<Self> {
        match self {
            Self::Wall(_) if !said.has(&self.path(job)) => Some(Self::Roof),
            Self::WallUpper(_) if !said.has(&self.path(job)) => Some(Self::RoofUpper),
            _ => None,
        }
    }
}
