//! The frame: which timbers there are and how they are cut in plan.

mod cutting;
mod firring;
pub mod gable_ends;
pub mod heights;
mod joints;
mod pairing;
mod plate_corners;
mod plates;
mod rafters;
mod seating;
mod spines;
mod standing;
mod stations;
mod supporting;
pub mod timber;
pub mod trimming;

use crate::SolveError;
use crate::level_ridge::Levelled;
use crate::mending::Mends;
use crate::openings::{self, Room};
use crate::solution::MemberKind;
use heights::Heights;
use job::Job;
use joints::Joints;
pub use spines::{LEAST_SPLAY, is_ridge};
pub use standing::{Standing, of as standing};
pub use stations::wall_at as station_wall;
pub use supporting::FaceLine;
use timber::{EndOn, Timber};

/// A timber with less of its line left than this after all cuts is left out, mm.
const LEAST_LEFT: f64 = 60.0;

/// A ridge, hip or valley longer than this is never left out, mm: the roof is
/// refused instead.
const LONGEST_LEFT_OUT: f64 = 500.0;

/// Directions nearer than this (as a sine) are parallel: the surface has trued
/// its walls, so real corners turn by 5e-5 at the least.
pub const PARALLEL: f64 = 1e-9;

/// The frame of a roof.
pub struct Frame {
    /// Heights that all timbers share.
    pub heights: Heights,
    /// The timbers; those with `gone` set are not built.
    pub timbers: Vec<Timber>,
    /// Where rafters stand, if the roof has no openings that move any.
    pub standing: Option<Vec<Standing>>,
}

/// Frame a roof over its surface.
///
/// # Errors
/// When the job's sizes cannot make a frame; see [`SolveError`].
pub fn build(job: &Job, levelled: &Levelled, mends: &Mends) -> Result<Frame, SolveError> {
    let surface = &levelled.surface;
    let (plates, corners) = (levelled.plates.clone(), levelled.corners.clone());
    let heights = Heights { plates, corners, ..Heights::of(job)? };
    heights::check_eaves(job, surface, &heights)?;
    let joints = Joints::of_surface(surface, thickest(job));
    let spines::Spines { mut timbers, of_arc } = spines::place(job, surface, &heights, &joints);
    let lines = supporting::extend(surface, &joints, &mut timbers, &of_arc);
    let holes = openings::holes(job, surface, &heights)?;
    let room = Room { job, surface, lines: &lines };
    room.for_holes(&holes)?;
    let (stations, stood) = stations::of_faces(job, surface, &timbers, &of_arc, &heights, &holes)?;
    room.for_stood(&stood)?;
    let standing = holes.is_empty().then(|| standing::on(surface, &lines, &stations));
    let mut rafters = Vec::new();
    for face in &stations {
        rafters.extend(rafters::in_face(job, surface, &heights, (&timbers, &of_arc), &lines, face, &|n| joints.of(n)));
    }
    timbers.extend(rafters);
    timbers.extend(plates::place(job, surface, &heights));
    cutting::resolve(job, surface, &mut timbers);
    plate_corners::join(job, surface, &heights, &mut timbers);
    for [firm, weak] in &mends.apart {
        cutting::part_always(&mut timbers, *firm, *weak);
    }
    firring::place(&heights, &mut timbers);
    for (k, t) in timbers.iter_mut().enumerate() {
        let left = t.footprint.crossing(t.foot, t.dir).map_or(0.0, |[a, b]| b.0 - a.0);
        let seated = t.ends[0] != EndOn::Plate || t.footprint.reach(t.dir)[1] - t.dir.dot(t.foot) > LEAST_LEFT;
        t.gone = mends.without.contains(&k)
            || t.kind != MemberKind::WallPlate && (left < LEAST_LEFT || !seated)
            || t.footprint.is_empty();
        if t.gone && !mends.bare_lines && !mends.without.contains(&k) && !t.is_rafter() && t.run > LONGEST_LEFT_OUT {
            return Err(SolveError::Swallowed { kind: t.kind.name(), length: t.run, x: t.foot.x, y: t.foot.y });
        }
    }
    Ok(Frame { heights, timbers, standing })
}

/// The thickest timber that lines of the roof may carry or meet, mm.
fn thickest(job: &Job) -> f64 {
    let timber = &job.timber;
    let sizes = [timber.hip.size, timber.valley.size, timber.ridge.size, timber.rafter.size];
    sizes.iter().map(|s| s.thickness).fold(0.0, f64::max)
}
