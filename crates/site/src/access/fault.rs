//! Why there is no access sheet.

use thiserror::Error;

/// Why there is no access sheet.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum AccessFault {
    /// No figures for the region.
    #[error("there are no figures for access in the region '{0}': use 'uk' or 'us', or add a file for it")]
    NoRegion(String),
    /// The file of figures is not as it should be.
    #[error("the figures for access of a region cannot be read: {0}")]
    Unreadable(String),
}
