//! What a timber knows about being one length of several.

use crate::frame::timber::TimberId;
use crate::solution::{BoltWay, CutPlace, SpliceForm};
use geometry::DVec3;

/// One of the lengths that a timber is made of, or a piece that holds them
/// together.
#[derive(Clone, Debug, PartialEq)]
pub struct Lengthened {
    /// The length at the foot.
    pub first: TimberId,
    /// Which length this is, from the foot: 0, 1, …
    pub part: usize,
    /// How many lengths there are.
    pub parts: usize,
    /// Its splices, from the foot.
    pub splices: Vec<Splice>,
}

/// A splice, as one of its halves sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Splice {
    /// How it is made.
    pub form: SpliceForm,
    /// At which end.
    pub at: CutPlace,
    /// The other half.
    pub mate: TimberId,
    /// Length along the timber, mm.
    pub length: f64,
    /// Where it starts towards the foot: a point on the timber's axis, mm.
    pub start: DVec3,
    /// Bolts through it, from the foot.
    pub bolts: Vec<Bolt>,
    /// Taper of its folding wedges: mm of thickness per mm of length.
    pub wedge_taper: Option<f64>,
}

/// A bolt hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolt {
    /// Where it crosses the joint, mm.
    pub at: DVec3,
    /// Which way it goes through.
    pub way: BoltWay,
    /// Diameter of the bolt, mm.
    pub diameter: f64,
}
