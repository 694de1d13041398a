//! The shape of what is bought.

use super::{Length, Pitch};
use crate::{OrderAim, Per, StrengthClass};
use schemars::JsonSchema;

/// How timber is ordered and cut.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct OrderKeys {
    aim: OrderAim,
    kerf: Length,
    trim: Length,
    keep: Length,
    treated: bool,
    lift: f64,
}

/// Timber that can be bought.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct StockKeys {
    size: [Length; 2],
    class: StrengthClass,
    lengths: Vec<Length>,
    price: f64,
    prices: Vec<f64>,
    clean: bool,
    dated: String,
}

/// An offcut in the yard.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct YardKeys {
    size: [Length; 2],
    length: Length,
    count: u32,
    class: StrengthClass,
    clean: bool,
}

/// A price.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct PriceKeys {
    price: f64,
    per: Per,
    dated: String,
}

/// What covers the slopes.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct CoveringKeys {
    of: String,
    length: Length,
    width: Length,
    cover_width: Length,
    head_lap: Length,
    most_gauge: Length,
    least_pitch: Pitch,
    weight: f64,
    batten: [Length; 2],
    boarded: bool,
    breakage: f64,
}
