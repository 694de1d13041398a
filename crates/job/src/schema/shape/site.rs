//! The shape of what is said about putting the roof up.

use super::Length;
use crate::{AccessKind, Ground};
use schemars::JsonSchema;

/// A number for all months, or one for each.
#[derive(JsonSchema)]
#[schemars(untagged)]
pub(in crate::schema) enum Months {
    All(f64),
    Each([f64; 12]),
}

/// When the roof goes up, and by how many.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct ProgrammeKeys {
    start: String,
    crew: u32,
    roofers: u32,
    hours_a_day: f64,
    saturdays: bool,
    holidays: Vec<String>,
    weather_loss: Months,
    scaffold_up: f64,
    scaffold_down: f64,
    hours: HoursKeys,
}

/// Hours of one person for one unit of work.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct HoursKeys {
    plate_m: f64,
    strap_each: f64,
    rafter_each: f64,
    jack_each: f64,
    hip_each: f64,
    ridge_m: f64,
    purlin_m: f64,
    strut_each: f64,
    collar_each: f64,
    ceiling_joist_each: f64,
    binder_m: f64,
    tie_each: f64,
    opening_each: f64,
    dormer_each: f64,
    noggin_each: f64,
    board_m: f64,
    underlay_battens_m2: f64,
    covering_m2: f64,
    edge_m: f64,
}

/// What the roof is put up from.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct AccessKeys {
    kind: AccessKind,
    class: u32,
    bay: Length,
    boards: u32,
    lift: Length,
    plate_height: Length,
    people: u32,
    stack: u32,
    hire: f64,
    hire_weeks: u32,
    extra_week: f64,
    ground: Ground,
    passers_by: bool,
    on_pavement: bool,
    overhead_lines: bool,
    sheeted: bool,
}

/// What people on site say in place of a statement.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::schema) struct RecordKeys {
    text: String,
}
