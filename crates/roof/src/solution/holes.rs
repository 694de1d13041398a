//! Openings in slopes, and the walls under gables, in the document.

use serde::{Deserialize, Serialize};

/// An upright piece of wall under the roof's edges: a gable, the part of a wall
/// below a half hip, the front of a gablet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct GableOut {
    /// Letter of the wall that it stands on; a gablet has that of the slope below it.
    pub wall: String,
    /// Its outline on the outside of the wall, anticlockwise seen from
    /// outside, mm: from the plates up to the bed under rafters or rungs.
    pub outline: Vec<[f64; 3]>,
    /// Its area, m².
    pub area_m2: f64,
}

/// A trimmed opening in a slope.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OpeningOut {
    /// Its name in the job.
    pub name: String,
    /// `roof window`, `chimney`, `dormer` or `hatch`.
    pub kind: String,
    /// Letter of the wall whose slope it lies in.
    pub wall: String,
    /// Corners of the hole that must be clear, on the tops of the rafters (of a
    /// hatch: on the undersides of the joists): anticlockwise from above, from
    /// the corner nearest to the start of the wall, mm.
    pub outline: [[f64; 3]; 4],
    /// Marks of the trimming rafters, or of the joists beside a hatch; from the hole outwards: those at the start of the wall, then the others.
    pub trimming_rafters: Vec<String>,
    /// Marks of the trimmers, from the hole outwards: those below it, then those above.
    pub trimmers: Vec<String>,
    /// Marks of what is left of the rafters or joists that are cut: below and above the hole in turn.
    pub cut: Vec<String>,
    /// Joist hangers.
    pub hangers: u32,
}
