//! Plans of plate lines: what is wrong with one, and truing one up.
//!
//! A plan is one loop of corners for the outer plates, anticlockwise, and one
//! for each courtyard, clockwise, so that the building is always on the left.

mod check;
mod crossing;
mod lattice;
mod regular;

pub use check::check;

use crate::DVec2;
pub(crate) use regular::{Line, Regular, regularise};

/// The grid on which corners are told apart and walls are tested for
/// crossing, mm. A tape reads to 1 mm; a tenth of that keeps every mark of it
/// and lets the crossing test be exact in whole numbers.
pub const GRID: f64 = 0.1;

/// How far from the datum a corner may lie, mm: 1 km, far past any one roof,
/// and near enough for products of grid coordinates to fit 64 bits.
pub const FARTHEST: f64 = 1_000_000.0;

/// The shortest wall that can be framed, mm: about the thickness of one
/// rafter, below which no timber stands on it. It is far above every
/// tolerance of the solver.
pub const SHORTEST_WALL: f64 = 50.0;

/// Two walls have one direction when truing up would move the far end of the
/// shorter by less than this, mm: half of what a tape can read.
pub const DIRECTION_TOLERANCE: f64 = 0.5;

/// Walls in one direction lie on one line when they are less than this
/// apart, mm: the reading of a tape. Nor may truing up move a
/// corner further.
pub const LINE_TOLERANCE: f64 = 1.0;

/// Most crossings that [`check`] reports: enough to find the slip, few enough
/// to read. A plan with more of them is one mistake repeated.
pub const MOST_CROSSINGS: usize = 50;

/// Both ends of a wall by its number through all loops, in the direction of
/// its loop, mm; `None` if there are fewer walls.
#[must_use]
pub fn wall_ends(loops: &[Vec<DVec2>], wall: usize) -> Option<[DVec2; 2]> {
    let mut k = wall;
    for ring in loops {
        if k < ring.len() {
            return Some([ring[k], ring[(k + 1) % ring.len()]]);
        }
        k -= ring.len();
    }
    None
}
