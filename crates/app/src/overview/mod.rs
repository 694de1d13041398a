//! The roof at a glance.

mod figures;
mod pieces;
mod ridges;
mod rows;

pub(crate) use ridges::{Ridge, ridges};

use crate::entries;
use crate::scene::{self, Buffers};
use crate::views::{Dialect, Overview};
use job::Job;
use job::listing::Said;
use job::written::Lengths;
use roof::solution::Solution;

/// What is shown, and how.
pub(crate) struct Shown<'a> {
    /// The job.
    pub(crate) job: &'a Job,
    /// Its roof.
    pub(crate) solution: &'a Solution,
    /// What the text of the job says.
    pub(crate) said: &'a Said,
    /// How lengths are written.
    pub(crate) lengths: Lengths,
    /// Whose words.
    pub(crate) words: Dialect,
}

/// Everything.
pub(crate) fn whole(shown: &Shown<'_>) -> (Overview, Buffers) {
    let (mut overview, buffers) = of_drag(shown);
    overview.pieces = pieces::rows(shown, &overview.members);
    overview.entries = entries::of(shown);
    (overview, buffers)
}

/// What is looked at while a finger drags: without pieces and entries.
pub(crate) fn of_drag(shown: &Shown<'_>) -> (Overview, Buffers) {
    let (scene, buffers) = scene::of(shown.solution);
    let members = rows::members(shown);
    let overview = Overview {
        figures: figures::of(shown),
        notices: rows::notices(shown),
        loads: shown.job.carried.is_some(),
        walls: rows::walls(shown),
        ridges: rows::ridges(shown),
        tally: rows::tally(&members),
        members,
        pieces: Vec::new(),
        entries: Vec::new(),
        scene,
    };
    (overview, buffers)
}
