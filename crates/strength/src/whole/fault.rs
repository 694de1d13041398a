//! Why the strength of a roof could not be worked out at all.

use crate::actions::ActionsFault;
use crate::annex::loads::LoadsFault;
use crate::annex::timber::{UnknownClass, UnknownRegion};
use crate::carrying::flow::FlowFault;

/// Why the strength of a roof could not be worked out at all. What can be worked out and does not pass, or is for an
/// engineer, is a result and no fault.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum CheckFault {
    /// The job says nothing of what the roof carries.
    #[error("the job has no [loads]; write covering, snow_zone, altitude and wind there, and its strength is checked")]
    NoLoads,
    /// No codes are kept for the region.
    #[error(transparent)]
    Region(#[from] UnknownRegion),
    /// The strength class is not in the region's edition.
    #[error(transparent)]
    Class(#[from] UnknownClass),
    /// Figures for loads.
    #[error(transparent)]
    Loads(#[from] LoadsFault),
    /// Loads that the figures do not cover.
    #[error(transparent)]
    Actions(#[from] ActionsFault),
    /// Joints.
    #[error("figures for joints: {0}")]
    Joints(String),
    /// A form of roof that is not modelled: figures would be wrong, so there are none.
    #[error("Needs an engineer: {0}")]
    Form(&'static str),
    /// Too much of the load comes on timbers that nothing holds up, as far as this can see.
    #[error("Needs an engineer: {percent:.0} % of the load comes on timbers that nothing is seen to hold up: {}", marks.join(", "))]
    Unheld {
        /// Share of the load, per cent.
        percent: f64,
        /// Their marks.
        marks: Vec<String>,
    },
    /// Loads that could not be followed to the walls.
    #[error(transparent)]
    Flow(#[from] FlowFault),
}
