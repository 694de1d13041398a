//! A plan that was measured on site.

use geometry::survey;

/// What was measured of the outer plates, and the plan that came of it.
/// Corners go by number from 0, in lettering order.
#[derive(Clone, Debug, PartialEq)]
pub struct Survey {
    /// The measurements.
    pub measured: survey::Survey,
    /// The plan that fits them best; its corners are the first of
    /// [`crate::Job::plates`].
    pub adjusted: survey::Adjusted,
    /// Levels of the plate at corners, in the order of the file; not part of
    /// the plan.
    pub levels: Vec<survey::Level>,
}
