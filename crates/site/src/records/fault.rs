//! Why there is no record.

use crate::access::AccessFault;
use thiserror::Error;

/// Why there is no record.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum RecordsFault {
    /// Days are not dated.
    #[error("a calendar needs dates: write the first day on site as `start` in [programme]")]
    NoStart,
    /// There are no figures for access.
    #[error(transparent)]
    Access(#[from] AccessFault),
}
