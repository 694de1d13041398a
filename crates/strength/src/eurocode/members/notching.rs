//! Notches and holes in joists that the trade allows without a check.

use crate::annex::timber::Timber;

/// How much may be cut, and where along the span.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Deepest notch or widest hole, mm.
    pub most: f64,
    /// Nearest to a support, mm.
    pub from: f64,
    /// Farthest from it, mm.
    pub to: f64,
}

impl Reach {
    /// Whether a cut of this size (mm) at this distance (mm) from the nearer support is within it.
    #[must_use]
    pub const fn allows(&self, size: f64, from_support: f64) -> bool {
        size <= self.most && self.from <= from_support && from_support <= self.to
    }
}

/// Notches in the top or bottom edge of a joist of this depth and span, mm.
#[must_use]
pub const fn notch_of_trade(timber: &Timber, depth: f64, span: f64) -> Reach {
    let by = &timber.factors.cutting;
    Reach { most: by.notch_depth.value * depth, from: by.notch_from.value * span, to: by.notch_to.value * span }
}

/// Holes at half the depth of a joist of this depth and span, mm. Their centres stand at least
/// [`hole_apart`](crate::annex::timber::Cutting::hole_apart) diameters apart.
#[must_use]
pub const fn hole_of_trade(timber: &Timber, depth: f64, span: f64) -> Reach {
    let by = &timber.factors.cutting;
    Reach { most: by.hole_depth.value * depth, from: by.hole_from.value * span, to: by.hole_to.value * span }
}
