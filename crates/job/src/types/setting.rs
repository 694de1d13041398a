//! What a roof is set out to: its lines, and the plates as they were built.

use geometry::roof_lines::Relation;
use schemars::JsonSchema;

/// How far corners are moved to make plates true when a file says nothing, mm
/// (common practice: what a bed of mortar takes up).
pub const TRUE_WITHIN: f64 = 12.0;

/// The furthest that corners are ever moved to make plates true, mm: further,
/// a plate of usual width no longer bears on its wall.
pub const TRUE_AT_MOST: f64 = 25.0;

/// Least bearing of a plate on its wall, mm (common practice).
pub const LEAST_BEARING: f64 = 75.0;

/// Thickness of the wall under the plates when a file says nothing, mm: one
/// leaf of blocks.
pub const WALL: f64 = 100.0;

/// Most packing under the rafters of one wall when a file says nothing, mm
/// (common practice: a rafter stands on no more than its own thickness).
pub const PACKING: f64 = 50.0;

/// What was asked of setting out, and what came of it.
#[derive(Clone, Debug, PartialEq)]
pub struct SettingOut {
    /// The plate lines as measured, in the order of [`crate::Job::loops`];
    /// empty when the roof lines are the same.
    pub plates: Vec<Vec<[f64; 2]>>,
    /// How far a corner may be moved, mm.
    pub within: f64,
    /// Thickness of the wall under the plates, mm.
    pub wall: f64,
    /// Measurements that disagree are taken as they are.
    pub accept: bool,
    /// What ridges do over plates that are out of parallel.
    pub ridge: RidgeRun,
    /// Most packing under the rafters of a wall, mm.
    pub packing: f64,
    /// What the walls were made to be.
    pub kept: Vec<Relation>,
    /// What they came near to, and are not.
    pub let_go: Vec<Relation>,
}

impl Default for SettingOut {
    fn default() -> Self {
        Self {
            plates: Vec::new(),
            within: TRUE_WITHIN,
            wall: WALL,
            accept: false,
            ridge: RidgeRun::Level,
            packing: PACKING,
            kept: Vec::new(),
            let_go: Vec::new(),
        }
    }
}

/// What ridges do over plates that are out of parallel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum RidgeRun {
    /// They are kept level: the rafters of one wall are packed.
    #[default]
    Level,
    /// They fall as the plates run together.
    AsItFalls,
}
