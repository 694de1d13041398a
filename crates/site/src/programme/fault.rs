//! Why there is no programme.

use thiserror::Error;

/// Why there is no programme.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum ProgrammeFault {
    /// No hours for the region.
    #[error("there are no hours of work for the region '{0}': use 'uk' or 'us', or add a file for it")]
    NoRegion(String),
    /// The file of hours is not as it should be.
    #[error("the hours of work of a region cannot be read: {0}")]
    Unreadable(String),
    /// The work never ends.
    #[error(
        "the work takes more than {most} working days: look at the hours of each piece, the crew and the weather loss in [programme]"
    )]
    TooLong {
        /// The most working days that are counted.
        most: u32,
    },
    /// The days cannot be found in the calendar.
    #[error("the working days cannot be counted from {0}: write another start in [programme]")]
    Calendar(String),
}
