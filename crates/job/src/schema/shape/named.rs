//! The shape of what goes by names of the user's own.

use super::{Length, Pitch};
use crate::{DormerKind, OpeningKind, TickState, ValleyAs};
use schemars::JsonSchema;

/// An opening.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct OpeningKeys {
    kind: OpeningKind,
    wall: String,
    along: Length,
    up: Length,
    up_plan: Length,
    width: Length,
    height: Length,
    flue_wall: Length,
}

/// A dormer.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct DormerKeys {
    kind: DormerKind,
    wall: String,
    along: Length,
    back: Length,
    width: Length,
    plate: Length,
    pitch: Pitch,
    valley: ValleyAs,
}

/// A wall or beam inside the plan that carries load down.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct BearingKeys {
    from: [Length; 2],
    to: [Length; 2],
    top: Length,
}

/// A timber that is cut or fixed.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct DoneKeys {
    state: TickState,
    piece: String,
}
