//! What can be wrong with a frame.

use std::fmt;
use thiserror::Error;

/// A way in which a node can move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Level.
    Sideways,
    /// Up and down.
    UpAndDown,
    /// Turning.
    Turning,
}

impl fmt::Display for Way {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Sideways => "sideways",
            Self::UpAndDown => "up and down",
            Self::Turning => "by turning",
        })
    }
}

/// Why a frame has no answer.
#[derive(Clone, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum FrameFault {
    /// No bars.
    #[error("the frame has no bars: give it at least one")]
    Empty,
    /// A bar, support or load names a node or bar that is not there.
    #[error("{what} {index} names a node or bar that is not in the frame")]
    NoSuchPart {
        /// `bar`, `support` or `load`.
        what: &'static str,
        /// Its place in its list.
        index: usize,
    },
    /// A number that is not finite.
    #[error("{what} {index} has a figure that is not a finite number")]
    NotFinite {
        /// `node`, `bar`, `support` or `load`.
        what: &'static str,
        /// Its place in its list.
        index: usize,
    },
    /// Both ends of a bar are in one place.
    #[error("bar {bar} has no length: join its nodes or move one")]
    NoLength {
        /// The bar.
        bar: usize,
    },
    /// `ea` or `ei` of a bar, or the stiffness of a spring, is not above nought.
    #[error("{what} {index} has a stiffness that is not above nought")]
    NoStiffness {
        /// `bar` or `support`.
        what: &'static str,
        /// Its place in its list.
        index: usize,
    },
    /// Two supports at one node.
    #[error("node {node} has two supports: give it one that holds what both hold")]
    HeldTwice {
        /// The node.
        node: usize,
    },
    /// A point load off its bar, a spread load off its beam, a support or hinge off its beam.
    #[error("{what} {index} is off the timber at {at} mm")]
    OffTheBar {
        /// `load`, `support` or `hinge`.
        what: &'static str,
        /// Its place in its list.
        index: usize,
        /// Where it was put.
        at: f64,
    },
    /// The frame can move without straining: it needs another support, tie or stiff joint.
    #[error("the frame is a mechanism: node {node} can move {way}; it needs a support, a tie or a stiff joint there")]
    Mechanism {
        /// The node that moves most.
        node: usize,
        /// How it moves.
        way: Way,
    },
    /// Forces do not balance: stiffnesses too far apart for the arithmetic.
    #[error(
        "case {case} is out of balance at {place} by {by:e} of its loads: the stiffnesses of the bars are too far apart"
    )]
    OutOfBalance {
        /// The case.
        case: usize,
        /// `the whole frame`, `bar 3`, `node 2`.
        place: String,
        /// Share of the loads.
        by: f64,
    },
}
