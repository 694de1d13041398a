//! The shape of what goes by names of the user's own.

use super::{Length, Pitch};
use crate::{Covering, DormerKind, Feet, OpeningKind, RidgeAs, StrengthClass, TickState, ValleyAs};
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

/// What the roof carries.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct LoadsKeys {
    covering: Covering,
    covering_weight: f64,
    under_covering: f64,
    lining: f64,
    ceiling: f64,
    loft: f64,
    snow_zone: u32,
    altitude: f64,
    snow_held: bool,
    wind: f64,
    tank: bool,
    panels: bool,
}

/// How strong the timber is.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct StrengthKeys {
    class: StrengthClass,
    graded: bool,
    service: u32,
    feet: Feet,
    ridge: RidgeAs,
}
