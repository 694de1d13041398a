//! The table of least distances.

use super::super::Standing;
use serde::Deserialize;

/// A distance `(fixed_d + turning_d · f) · d`, f the sine or cosine of the angle of force to grain.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Distance {
    /// Part that does not turn, times d.
    pub fixed_d: f64,
    /// Part that turns with the force, times d.
    pub turning_d: f64,
    /// No less than this, times d.
    #[serde(default)]
    pub least_d: f64,
    /// No less than this, mm.
    #[serde(default)]
    pub least_mm: f64,
    /// Title and table.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// Least distances of one kind of fastener.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Distances {
    /// Along the grain, turning with |cos|.
    pub a1: Distance,
    /// Across the grain, turning with |sin|.
    pub a2: Distance,
    /// From an end that the force goes towards, turning with |cos|.
    pub a3_loaded: Distance,
    /// From any other end, turning with |sin|.
    pub a3_free: Distance,
    /// From an edge that the force goes towards, turning with |sin|.
    pub a4_loaded: Distance,
    /// From any other edge, turning with |sin|.
    pub a4_free: Distance,
}

/// The table of distances. Thin and thick nails, in light and dense wood, and in bored holes.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spacing {
    /// Nails, light wood.
    pub nail_light_thin: Distances,
    /// Thick nails, light wood.
    pub nail_light_thick: Distances,
    /// Nails, dense wood.
    pub nail_dense_thin: Distances,
    /// Thick nails, dense wood.
    pub nail_dense_thick: Distances,
    /// Nails in bored holes.
    pub nail_bored_thin: Distances,
    /// Thick nails in bored holes.
    pub nail_bored_thick: Distances,
    /// Bolts.
    pub bolt: Distances,
}
