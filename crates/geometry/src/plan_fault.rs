//! What can be wrong with a plan of plate lines.

use thiserror::Error;

/// A corner of a plan: which loop (0 is the outer one, then the courtyards)
/// and which corner of it. Also names the wall that starts at that corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CornerRef {
    /// The loop, 0 for the outer one.
    pub ring: usize,
    /// The corner within the loop.
    pub corner: usize,
}

/// A rule that a plan breaks, with its place. The texts name corners by
/// number; callers that know wall letters and lines in a file add them.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PlanFault {
    /// Fewer than three corners in a loop.
    #[error("a loop needs at least three corners, this one has {corners}")]
    TooFewCorners {
        /// The loop.
        ring: usize,
        /// How many it has.
        corners: usize,
    },
    /// A coordinate is not a number, or further out than 1 km.
    #[error("this corner is not a place within 1 km of the datum")]
    NotAPlace {
        /// The corner.
        at: CornerRef,
    },
    /// The same corner twice.
    #[error("this corner is the same place as the one before it")]
    RepeatedCorner {
        /// The second of the two.
        at: CornerRef,
    },
    /// Two walls cross or touch away from a shared corner.
    #[error("two walls cross or touch")]
    WallsCross {
        /// The wall that starts here …
        first: CornerRef,
        /// … crosses the wall that starts here.
        second: CornerRef,
    },
    /// The loop runs the wrong way round.
    #[error("this loop runs the wrong way round: the outer plates run anticlockwise, courtyards clockwise")]
    WrongWayRound {
        /// The loop.
        ring: usize,
    },
    /// A wall is shorter than the shortest that can be framed.
    #[error("this wall is {length:.1} mm long; the shortest that can be framed is {shortest:.0} mm")]
    WallTooShort {
        /// The corner where it starts.
        at: CornerRef,
        /// Its length, mm.
        length: f64,
        /// The limit, mm.
        shortest: f64,
    },
    /// A courtyard that is not inside the outer plates, or inside another one.
    #[error("this courtyard does not lie inside the outer plates, or lies inside another courtyard")]
    CourtyardOutside {
        /// The loop.
        ring: usize,
    },
}
