//! The strength of a roof as plain data: what `solve --json` writes under `strength`, and what sheets and screens show.

use super::feet::PairFeet;
use super::joints::JointUse;
use super::refusals::Refused;
use crate::annex::Standing;
use roof::solution::MemberKind;
use serde::{Deserialize, Serialize};

/// The strength of a roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Strength {
    /// Editions of the codes whose figures were used.
    pub editions: Vec<String>,
    /// What was taken for granted.
    pub assumed: Assumed,
    /// What the roof carries, each with its source.
    pub loads: Vec<FigureOut>,
    /// The combinations of loads, in the order of their numbers.
    pub combinations: Vec<CombinationOut>,
    /// Every timber that carries, the most used first.
    pub members: Vec<MemberUse>,
    /// Joints, the most used first.
    pub joints: Vec<JointUse>,
    /// Pairs of rafters with free and with held feet.
    pub feet: Vec<PairFeet>,
    /// What comes on each wall and bearing.
    pub walls: Vec<WallLoad>,
    /// What is for an engineer, each with its reason.
    pub refused: Vec<Refused>,
    /// Cautions for every sheet.
    pub cautions: Vec<String>,
    /// Loads and reactions of the whole roof.
    pub totals: Totals,
}

/// What was taken for granted.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Assumed {
    /// Strength class.
    pub class: String,
    /// Service class.
    pub service: u8,
    /// `free` or `held`: what the results of timbers are for.
    pub feet: String,
    /// `board` or `beam`.
    pub ridge: String,
    /// Rafters and joists share their loads (k_sys).
    pub sharing: bool,
    /// How many of the figures used are from memory of their source.
    pub from_memory: u32,
}

/// A figure with its source.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FigureOut {
    /// What it is.
    pub what: String,
    /// How it comes about.
    pub how: String,
    /// The value.
    pub value: f64,
    /// Its unit.
    pub unit: String,
    /// Its source.
    pub from: String,
}

/// A combination of loads.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CombinationOut {
    /// In words.
    pub name: String,
    /// The shortest load in it.
    pub duration: String,
    /// k_mod for it.
    pub kmod: f64,
}

/// Whether a timber or joint passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Every check is met, with something left.
    Within,
    /// Every check is met, but so nearly that figures from memory might turn it.
    Near,
    /// A check is not met.
    Over,
}

/// How much is left.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Left {
    /// Of all it can take, what is asked: 1 is all of it.
    pub used: f64,
    /// Whether it passes.
    pub verdict: Verdict,
}

/// A size of timber.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct StructuralSize {
    /// mm.
    pub thickness_mm: f64,
    /// mm.
    pub depth_mm: f64,
}

/// A timber.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MemberUse {
    /// Its mark; of several lengths, the one that they share.
    pub mark: String,
    /// Marks of its lengths.
    pub lengths: Vec<String>,
    /// Kind.
    pub kind: MemberKind,
    /// Section.
    pub size: StructuralSize,
    /// How far it is used.
    pub left: Left,
    /// Its checks, the governing one first.
    pub checks: Vec<CheckUse>,
    /// The least stock section that would pass under the same loads, when this one does not.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub would_pass: Option<StructuralSize>,
    /// Where the governing check is, mm.
    pub place: [f64; 3],
}

/// A check of a timber.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CheckUse {
    /// What was checked.
    pub name: String,
    /// Clause.
    pub clause: String,
    /// 1 is all of it.
    pub used: f64,
    /// The combination by its number; none for deflection, which is of all loads that can come together.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub combination: Option<u32>,
    /// From the foot of the timber, mm.
    pub at_mm: f64,
}

/// What comes on a wall or bearing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WallLoad {
    /// Letter of a wall, or name of a bearing.
    pub name: String,
    /// Own weight, kN down, without factors.
    pub permanent_kn: f64,
    /// Most, kN down, with factors.
    pub most_kn: f64,
    /// Most that lifts, kN up, with factors; 0 when nothing does.
    pub uplift_kn: f64,
    /// Length of the wall, m; 0 for a bearing.
    pub length_m: f64,
    /// Straps against lifting, when any are needed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub straps: Option<u32>,
    /// How far apart they stand, mm.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub straps_apart_mm: Option<f64>,
}

/// Sums of the whole roof.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Totals {
    /// Own weight, kN.
    pub permanent_kn: f64,
    /// Even snow, kN.
    pub snow_kn: f64,
    /// What the walls and bearings get of both, kN.
    pub arrived_kn: f64,
    /// Greatest part of the loads of a case that does not arrive, as a share of it.
    pub worst_share: f64,
    /// Area of the slopes in plan with the overhangs, m².
    pub plan_m2: f64,
}

/// How a figure was come by, in a word.
#[must_use]
pub(super) const fn from_memory(standing: Standing) -> bool {
    matches!(standing, Standing::Memory)
}
