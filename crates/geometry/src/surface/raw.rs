//! What the sweep leaves behind: nodes and arcs before tidying.

use super::fronts::PlaneId;
use crate::{DVec2, DVec3};

/// How an arc came about, which tells its kind when only one face has it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Origin {
    /// Drawn by a corner between two fronts, or where fronts cancelled.
    Crease,
    /// The bottom of a face: where its front starts.
    Foot,
    /// A face that an upright front borders on the inside of a corner.
    Verge,
    /// A face that dies against an upright front above it.
    Abutment,
}

/// An arc between two nodes, with the planes on its left and right when
/// walking from `from` to `to`; `None` is an upright wall or outdoors.
#[derive(Clone, Copy, Debug)]
pub(super) struct RawArc {
    pub from: u32,
    pub to: u32,
    pub left: Option<PlaneId>,
    pub right: Option<PlaneId>,
    pub origin: Origin,
    /// When a face starts or goes on from here: its plane, and the walls that
    /// it rises from as a number of [`Raw::wall_sets`].
    pub foot: Option<(PlaneId, u32)>,
}

/// A slower front that a faster one in line with it took over.
#[derive(Clone, Copy, Debug)]
pub(super) struct Takeover {
    pub steeper: u32,
    pub flatter: u32,
    pub at: DVec2,
    pub height: f64,
}

/// The result of a sweep.
#[derive(Clone, Debug, Default)]
pub(super) struct Raw {
    pub nodes: Vec<DVec3>,
    pub arcs: Vec<RawArc>,
    /// Sets of walls, each in rising order.
    pub wall_sets: Vec<Vec<u32>>,
    /// Takeovers; `steeper` and `flatter` are wall sets.
    pub takeovers: Vec<Takeover>,
    /// Upright fronts that slopes climb past: wall set and place.
    pub cheeks: Vec<(u32, DVec2)>,
}
