//! Weights: of timber by the metre, and of what goes up in one lift.

use super::line::Line;
use job::Per;
use serde::{Deserialize, Serialize};

/// mm² in a m².
const MM2_IN_M2: f64 = 1e6;

/// Weight of a metre of timber, kg; sides in mm, density in kg/m³: `b·h·ρ`.
#[must_use]
pub fn timber_kg_per_m(thickness: f64, depth: f64, density: f64) -> f64 {
    thickness * depth * density / MM2_IN_M2
}

/// Things of one weight that go up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LiftGroup {
    /// What they are.
    pub what: String,
    /// How many.
    pub pieces: u32,
    /// Weight of one, kg.
    pub each_kg: f64,
}

/// What a group of things weighs, and how many lifts it takes by itself.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LiftLoad {
    /// What they are.
    pub what: String,
    /// How many.
    pub pieces: u32,
    /// Weight of one, kg.
    pub each_kg: f64,
    /// Weight of all, kg.
    pub kg: f64,
    /// How many go in one lift; 0 when one is too heavy for it.
    pub pieces_per_lift: u32,
    /// Lifts; 0 when one piece is too heavy.
    pub lifts: u32,
}

/// A share of a piece by which a lift may seem too small only by rounding.
const ROUNDING: f64 = 1e-9;

impl LiftGroup {
    /// A line as what goes up: each piece, or each metre, square metre or kilogram of what goes by these. `None` when
    /// its weight is not known. `each_kg`: what a whole piece weighs, where the line tells the weight of what is laid.
    #[must_use]
    pub fn of(line: &Line, each_kg: Option<f64>) -> Option<Self> {
        let pieces = match line.unit {
            Per::Hundred => line.quantity * 100.0,
            Per::Thousand => line.quantity * 1000.0,
            _ => line.quantity,
        };
        if !((line.kg > 0.0 || each_kg.is_some()) && pieces > 0.0) {
            return None;
        }
        let what = if line.size.is_empty() { line.what.clone() } else { format!("{}, {}", line.what, line.size) };
        let whole = pieces.ceil().min(f64::from(u32::MAX));
        Some(Self { what, pieces: whole as u32, each_kg: each_kg.unwrap_or(line.kg / whole) })
    }
}

/// What weighs less in all than this goes up with others of its kind in one box, kg.
const SMALL: f64 = 25.0;

/// The groups with what is small put into one.
#[must_use]
pub fn small_goods(groups: Vec<LiftGroup>) -> Vec<LiftGroup> {
    let all_kg = |group: &LiftGroup| f64::from(group.pieces) * group.each_kg;
    let (small, mut out): (Vec<_>, Vec<_>) = groups.into_iter().partition(|group| all_kg(group) < SMALL);
    if !small.is_empty() {
        let kg: f64 = small.iter().map(all_kg).sum();
        let boxes = (kg / SMALL).ceil().clamp(1.0, f64::from(u32::MAX));
        let what = "boxes of nails, bolts and other small goods".to_owned();
        out.push(LiftGroup { what, pieces: boxes as u32, each_kg: kg / boxes });
    }
    out
}

/// How many lifts each group takes, when a lift holds one kind of thing and no more than `lift_kg`.
#[must_use]
pub fn loads_up(groups: &[LiftGroup], lift_kg: f64) -> Vec<LiftLoad> {
    let load = |group: &LiftGroup| {
        let light = group.each_kg > 0.0 && lift_kg > 0.0;
        let fit = if light { (lift_kg / group.each_kg * (1.0 + ROUNDING)).floor() } else { 0.0 };
        let pieces_per_lift = fit.min(f64::from(u32::MAX)) as u32;
        LiftLoad {
            what: group.what.clone(),
            pieces: group.pieces,
            each_kg: group.each_kg,
            kg: f64::from(group.pieces) * group.each_kg,
            pieces_per_lift,
            lifts: if pieces_per_lift == 0 { 0 } else { group.pieces.div_ceil(pieces_per_lift) },
        }
    };
    groups.iter().map(load).collect()
}
