//! Why there is no order of work.

use super::check::CheckFault;
use super::rules::RulesError;

/// Why there is no order of work.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SequenceFault {
    /// The region keeps no figures.
    #[error(transparent)]
    Rules(#[from] RulesError),
    /// There is nothing to put up.
    #[error("the roof has no timbers: there is nothing to put up")]
    NothingToPutUp,
    /// A timber that no step can fix.
    #[error(
        "{mark} ({kind}) has nothing to stand on in any order of work: {left} timbers are left; look at what it should rest on, and fix those by eye after the others"
    )]
    CannotStand {
        /// Its mark.
        mark: String,
        /// What it is.
        kind: String,
        /// How many timbers are left with it.
        left: usize,
    },
    /// The order did not pass its own check.
    #[error("the order of work did not pass its check: {0}")]
    NotChecked(#[from] CheckFault),
}
