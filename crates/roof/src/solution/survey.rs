//! A measured plan in the document.

use serde::{Deserialize, Serialize};

/// What was measured, and what became of it. Corners go by the letter of the
/// wall that starts there.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SurveyOut {
    /// Every measurement: walls, diagonals, turns.
    pub measurements: Vec<MeasurementOut>,
    /// How many measurements there are beyond those that just fix the plan.
    pub freedom: u32,
    /// What the tape may be out by, mm, 95 times of 100.
    pub tolerance_mm: f64,
    /// The measurement that disagrees most; absent if nothing tells.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub worst: Option<WorstOut>,
    /// The two corners whose distance is known least.
    pub weakest: [String; 2],
    /// Within how much it is known, mm, 95 times of 100.
    pub weakest_within_mm: f64,
    /// Corners taken to point outwards for want of a measurement.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub taken_outward: Vec<String>,
    /// Levels of the plates, if they were taken.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub levels: Option<LevelsOut>,
}

/// What a measurement is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MeasurementKind {
    /// A wall; mm.
    Wall,
    /// Between two corners; mm.
    Diagonal,
    /// An inside angle; degrees.
    Turn,
}

/// A measurement. Lengths mm, turns degrees.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeasurementOut {
    /// What it is of.
    pub kind: MeasurementKind,
    /// The letter of the wall or corner, or two corners as `B-D`.
    pub name: String,
    /// What was read.
    pub measured: f64,
    /// What the plan has.
    pub adjusted: f64,
    /// Adjusted less measured.
    pub residual: f64,
    /// The part of an error in it that would show: 0 if nothing checks it.
    pub redundancy: f64,
    /// The residual in standard deviations; absent where too little is checked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub standardised: Option<f64>,
}

/// The measurement that disagrees most.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WorstOut {
    /// Its number in the measurements, from 0.
    pub measurement: u32,
    /// How much more it reads than all the others say, mm or degrees.
    pub off: f64,
    /// Whether that is past chance: it was misread, or the plate moved.
    pub slip: bool,
    /// Numbers of measurements that could be the wrong one just as well.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub rivals: Vec<u32>,
}

/// Levels of the plates.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LevelsOut {
    /// The highest corner.
    pub highest: String,
    /// From the lowest to the highest, mm.
    pub out_of_level_mm: f64,
    /// Each corner with its packing.
    pub corners: Vec<LevelOut>,
    /// Fall of the plane nearest to the levels, mm for each metre; absent for
    /// fewer than three corners.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub fall_mm_per_m: Option<f64>,
    /// Which way that plane falls, degrees anticlockwise from east.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub falls_towards_deg: Option<f64>,
}

/// The level of the plate at a corner.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LevelOut {
    /// The corner.
    pub corner: String,
    /// Over the level line, mm.
    pub level_mm: f64,
    /// What brings it up to the highest, mm.
    pub packing_mm: f64,
    /// Over the plane nearest to the levels, mm: wind.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub off_plane_mm: Option<f64>,
}
