//! Roof lines: what a roof is set out to on plates that were built by hand.
//!
//! Plate lines are what the tape says. A carpenter beds his plates true: walls
//! that were meant to be square, parallel, in line or equal are made so, as
//! long as no corner has to move further than he can bed a plate off its wall.
//! [`set_out`] finds those lines. Nothing but the plan decides: relations that
//! the plates come near are asked of them all together, corners are moved as
//! little as that takes (least squares, each corner by its own uncertainty),
//! and relations that would move a corner too far are let go, the one that
//! strains the plan most first.
//!
//! `relations` finds what may hold, `fitting` moves the corners, `choosing`
//! lets go. A plan that is true already comes back bit for bit.

mod choosing;
mod fitting;
mod relations;

use crate::DVec2;
use crate::plan;

/// Plans with more corners are set out as they were measured: the equations
/// grow with the third power, and no roof that is cut by hand comes near.
pub const MOST_CORNERS: usize = 120;

/// Corners that move less than this stay where they are, mm: below what any
/// plan is given to, so that a true plan keeps its figures.
const STILL: f64 = 1e-3;

/// Corners are set out to this, mm: a thousandth of what a tape reads.
const STEP: f64 = 1e-3;

/// Plates as they were built.
#[derive(Clone, Debug)]
pub struct Plates<'a> {
    /// Corners of the outer plates anticlockwise, then of each courtyard
    /// clockwise, mm.
    pub loops: &'a [Vec<DVec2>],
    /// What each wall does above its plate, as a number: walls that meet in
    /// one line must be alike, or the roof over them would be torn.
    pub kinds: &'a [usize],
    /// Standard deviation of each corner, mm; `None` when all are alike.
    pub deviations: Option<&'a [f64]>,
    /// The furthest that any corner may be moved, mm.
    pub within: f64,
    /// How far a plate may stand out from the wall as measured, and how far
    /// in, mm: further, it would no longer bear.
    pub bed: Bed,
}

/// How far a plate may be bedded off the line of its wall, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bed {
    /// Outwards.
    pub out: f64,
    /// Inwards.
    pub inward: f64,
}

/// Something that walls were made to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Relation {
    /// The wall runs square to or along the one that leads its family.
    Squared {
        /// The wall.
        wall: usize,
        /// The longest wall of the family.
        to: usize,
    },
    /// The two walls lie in one line.
    InLine(usize, usize),
    /// The two walls are of one length.
    Equal(usize, usize),
}

/// The lines a roof is set out to.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofLines {
    /// Corners, as many as the plates have.
    pub loops: Vec<Vec<DVec2>>,
    /// What holds of them.
    pub kept: Vec<Relation>,
    /// What was near, and let go, because a corner would have moved too far.
    pub let_go: Vec<Relation>,
}

impl RoofLines {
    /// The plates as they are.
    fn as_measured(plates: &Plates<'_>) -> Self {
        Self { loops: plates.loops.to_vec(), kept: Vec::new(), let_go: Vec::new() }
    }

    /// Whether nothing was moved.
    #[must_use]
    pub fn is_as_measured(&self, loops: &[Vec<DVec2>]) -> bool {
        self.loops == loops
    }
}

/// The roof lines over plates that [`plan::check`] finds clean.
///
/// ```
/// use geometry::{DVec2, roof_lines::{Bed, Plates, set_out}};
/// let ring = [[0.0, 0.0], [8400.0, 0.0], [8401.0, 5200.0], [0.0, 5203.0]].map(DVec2::from_array).to_vec();
/// let bed = Bed { out: 25.0, inward: 25.0 };
/// let plates = Plates { loops: &[ring.clone()], kinds: &[0; 4], deviations: None, within: 12.0, bed };
/// let lines = set_out(&plates);
/// let corner = &lines.loops[0];
/// assert_eq!(corner[2].x, corner[1].x);
/// assert_eq!(corner[2].y, corner[3].y);
/// assert!(ring.iter().zip(corner).all(|(a, b)| a.distance(*b) < 12.0));
/// ```
#[must_use]
pub fn set_out(plates: &Plates<'_>) -> RoofLines {
    let corners: usize = plates.loops.iter().map(Vec::len).sum();
    if corners > MOST_CORNERS || plates.within <= 0.0 || plates.kinds.len() != corners {
        return RoofLines::as_measured(plates);
    }
    let walls = relations::Walls::of(plates.loops, plates.kinds);
    let chosen = choosing::choose(plates, &walls);
    let still = chosen.corners.iter().zip(&walls.corners).all(|(a, b)| a.distance(*b) < STILL);
    let mut rest = chosen.corners.into_iter().map(|p| (p / STEP).round() * STEP);
    let loops: Vec<Vec<DVec2>> = plates.loops.iter().map(|ring| rest.by_ref().take(ring.len()).collect()).collect();
    if still {
        RoofLines { kept: chosen.kept, let_go: chosen.let_go, ..RoofLines::as_measured(plates) }
    } else if plan::check(&loops).is_empty() {
        RoofLines { loops, kept: chosen.kept, let_go: chosen.let_go }
    } else {
        RoofLines::as_measured(plates)
    }
}
