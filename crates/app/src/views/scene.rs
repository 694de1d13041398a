//! What the 3-D view draws. The points themselves travel beside it as plain
//! numbers; see `Desk::take_scene`.

use serde::Serialize;

/// What the 3-D view draws, in mm, x east, y north, z up.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Scene {
    /// The least of all coordinates, mm.
    pub low: [f64; 3],
    /// The greatest of all coordinates, mm.
    pub high: [f64; 3],
    /// The timbers, in the order of the overview's members.
    pub members: Vec<SceneMember>,
    /// The slopes.
    pub slopes: Vec<SceneSlope>,
}

/// Points of a buffer: three numbers each, one after the other.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Run {
    /// The first point.
    pub first: u32,
    /// How many.
    pub count: u32,
}

/// A timber in the view.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SceneMember {
    /// Its mark.
    pub mark: String,
    /// What it is shown or hidden with: `rafters`, `ridges`, `plates`, `inside`, `edges`.
    pub layer: String,
    /// Its triangles, in the buffer of timbers.
    pub triangles: Run,
    /// Its arrises, pairs of points in the buffer of arrises.
    pub arrises: Run,
    /// Where its mark is written, mm.
    pub label: [f64; 3],
    /// Timbers that touch it.
    pub neighbours: Vec<String>,
}

/// A slope in the view.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SceneSlope {
    /// The wall that a touch of the slope means.
    pub wall: String,
    /// All walls in one line that share the slope, that one among them.
    pub walls: Vec<String>,
    /// Its triangles, in the buffer of slopes.
    pub triangles: Run,
    /// Middle of the slope, where a finger takes hold of it, mm.
    pub handle: [f64; 3],
    /// Pitch, degrees.
    pub pitch_deg: f64,
}
