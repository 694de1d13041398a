//! How far the work on a timber is.

use schemars::JsonSchema;

/// A timber that was ticked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ticked {
    /// How far it is.
    pub state: TickState,
    /// A short mark of what it was cut to, from whoever ticked it: when the
    /// timber's own differs now, the roof has changed since.
    pub piece: Option<String>,
}

/// How far a ticked timber is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum TickState {
    /// Cut.
    Cut,
    /// Cut, and fixed in the roof.
    Fixed,
}
