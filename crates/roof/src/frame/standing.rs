//! Where rafters stand along the walls of a roof with no openings in it: what
//! their numbers are counted by.

use super::heights::Heights;
use super::joints::Joints;
use super::stations::FaceStations;
use super::supporting::FaceLine;
use super::{rafters, spines, stations, supporting};
use crate::SolveError;
use geometry::surface::{Surface, WallId};
use job::Job;

/// A place along a wall at which a rafter stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// The wall.
    pub wall: WallId,
    /// Distance along the direction of the wall, mm.
    pub at: f64,
    /// The shape of the roof fixes it: the end of a ridge, a gable.
    pub fixed: bool,
}

/// The places of all rafters of a roof, as if it had no openings and dormers.
///
/// # Errors
/// When the job's sizes cannot make a frame; see [`SolveError`].
pub fn of(job: &Job, surface: &Surface) -> Result<Vec<Standing>, SolveError> {
    let heights = Heights::of(job)?;
    let joints = Joints::of_surface(surface, super::thickest(job));
    let spines::Spines { mut timbers, of_arc } = spines::place(job, surface, &heights, &joints);
    let lines = supporting::extend(surface, &joints, &mut timbers, &of_arc);
    let (faces, _) = stations::of_faces(job, surface, &timbers, &of_arc, &heights, &[])?;
    Ok(on(surface, &lines, &faces))
}

/// The places of rafters at the stations of faces.
pub fn on(surface: &Surface, lines: &[FaceLine], faces: &[FaceStations]) -> Vec<Standing> {
    let mut out = Vec::new();
    for face in faces {
        // A wall runs with its roof on the left.
        let turn = face.axis.dot(-surface.face(face.face).plane.inward.perp()).signum();
        for station in face.stations.iter().filter(|s| rafters::stands(surface, lines, face, s)) {
            let wall = stations::wall_at(surface, face.face, face.axis, station.at);
            out.extend(wall.map(|wall| Standing { wall, at: station.at * turn, fixed: station.fixed }));
        }
    }
    out
}
