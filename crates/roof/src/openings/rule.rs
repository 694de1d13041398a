//! Rules of trimming, read from the rules of the job's region.

use crate::rules::{self, Id};
use job::Job;

/// Most rafters that a hole may cut without an engineer.
pub fn most_cut(job: &Job) -> usize {
    rules::of(&job.region).value(Id::OpeningCutMost) as usize
}

/// Trimming rafters on each side of a hole that cuts so many rafters; `None`
/// where an engineer must decide.
pub fn plies(job: &Job, cut: usize) -> Option<usize> {
    let per_pair = rules::of(&job.region).value(Id::OpeningCutPerPair);
    (cut <= most_cut(job)).then(|| (cut as f64 / per_pair).ceil().max(1.0) as usize)
}

/// Distance that timber keeps from a chimney's masonry, mm: far enough from
/// its face or from its flue, whichever asks less.
pub fn from_face(job: &Job, flue_wall: Option<f64>) -> f64 {
    let rules = rules::of(&job.region);
    let (face, flue) = (rules.value(Id::ChimneyFromFace), rules.value(Id::ChimneyFromFlue));
    flue_wall.map_or(face, |wall| face.min((flue - wall).max(0.0)))
}

/// A rule in brackets, for the end of a notice.
pub fn quote(job: &Job, id: Id) -> String {
    rules::of(&job.region).get(id).quote()
}
