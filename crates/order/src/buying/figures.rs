//! Figures of fixings and sundries: `regions/<region>/buying.toml`, compiled in.

use roof::rules::Standing;
use roof::solution::MemberKind;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use strength::annex::Figure;
use strength::carrying::is_rafter;

/// The United Kingdom.
const UK: &str = include_str!("../../../../regions/uk/buying.toml");

/// Everything about sundries that depends on the region.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Figures {
    /// Currency of prices, by its code.
    pub currency: String,
    /// Density of steel, kg/m³.
    pub steel: Figure,
    /// Share of nails that are lost.
    pub lost_nails: Figure,
    /// Nails by their words.
    pub nails: BTreeMap<String, NailSize>,
    /// What holds each joint; the first that fits counts.
    pub joints: Vec<JointRule>,
    /// Splices without bolts, by form.
    pub splices: BTreeMap<String, SpliceRule>,
    /// Bolts.
    pub bolts: BoltFigures,
    /// Straps.
    pub straps: StrapFigures,
    /// Screws of straps.
    pub screws: Screws,
    /// Joist hangers.
    pub hangers: HangerFigures,
    /// Preservative for cut ends.
    pub preservative: Preservative,
}

/// A nail, mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NailSize {
    /// Diameter.
    pub diameter: f64,
    /// Length.
    pub length: f64,
    /// What it is, in words.
    pub what: String,
}

/// What holds a joint between two kinds of timber.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JointRule {
    /// The joints, in words.
    pub what: String,
    /// Kinds on the one side.
    pub of: Vec<Who>,
    /// Kinds on the other.
    pub on: Vec<Who>,
    /// Word of its nails.
    pub nails: Option<String>,
    /// Diameter of its bolts, mm.
    pub bolts: Option<f64>,
    /// How many; rows of them with `every`.
    #[serde(default)]
    pub count: u32,
    /// How far apart in a row along the joint, mm.
    pub every: Option<f64>,
    /// Name of the joint in the strength.
    pub checked: Option<String>,
    /// Why nothing is counted.
    pub none: Option<String>,
    /// Where the rule is from.
    #[serde(default)]
    pub source: String,
    /// How it was come by.
    pub standing: Option<Standing>,
}

/// Which timbers a rule is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(untagged)]
pub enum Who {
    /// One kind.
    Kind(MemberKind),
    /// A group of kinds.
    Group(Group),
}

/// Kinds of timber that are fixed alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Group {
    /// Up a slope.
    Rafter,
    /// Hip or valley.
    Spine,
    /// All.
    Any,
}

impl Who {
    /// Whether a kind is meant.
    #[must_use]
    pub fn is(self, kind: MemberKind) -> bool {
        match self {
            Self::Kind(mine) => mine == kind,
            Self::Group(Group::Rafter) => is_rafter(kind),
            Self::Group(Group::Spine) => matches!(kind, MemberKind::HipRafter | MemberKind::ValleyRafter),
            Self::Group(Group::Any) => true,
        }
    }
}

impl JointRule {
    /// Whether it is for a joint of two kinds, either way round.
    #[must_use]
    pub fn fits(&self, a: MemberKind, b: MemberKind) -> bool {
        let has = |who: &[Who], kind| who.iter().any(|w| w.is(kind));
        (has(&self.of, a) && has(&self.on, b)) || (has(&self.of, b) && has(&self.on, a))
    }
}

/// What holds a splice without bolts.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpliceRule {
    /// The splices, in words.
    pub what: String,
    /// Word of its nails.
    pub nails: String,
    /// How many.
    pub count: u32,
    /// Where the rule is from.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// Bolts: multiples of the diameter, and lengths that can be had, mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct BoltFigures {
    /// Width of a washer.
    pub washer_wide: Figure,
    /// Its thickness.
    pub washer_thick: Figure,
    /// Height of a nut.
    pub nut: Figure,
    /// Height of a head.
    pub head: Figure,
    /// Width of head and nut across their flats.
    pub across_flats: Figure,
    /// Thread beyond the nut.
    pub beyond: Figure,
    /// Lengths under the head, rising, mm.
    pub lengths: Vec<f64>,
    /// Where they are from.
    pub lengths_source: String,
    /// How they were come by.
    pub lengths_standing: Standing,
}

/// Straps.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StrapFigures {
    /// Holding down.
    pub down: DownStrap,
    /// Holding gables.
    pub gable: GableStrap,
}

/// Straps that hold plates down, mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DownStrap {
    /// Most from one to the next.
    pub apart: Figure,
    /// Width.
    pub wide: Figure,
    /// Thickness.
    pub thick: Figure,
    /// Length.
    pub length: Figure,
    /// Word of its nails into timber.
    pub nails: String,
    /// How many.
    pub nailed: Figure,
    /// Screws into the wall.
    pub screwed: Figure,
}

/// Straps from a gable across rafters, mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GableStrap {
    /// Most from one to the next.
    pub apart: Figure,
    /// Width.
    pub wide: Figure,
    /// Thickness.
    pub thick: Figure,
    /// How many timbers it crosses.
    pub over: Figure,
    /// How much is turned down.
    pub down: Figure,
    /// How much lies on the wall.
    pub wall: Figure,
    /// Screws.
    pub screwed: Figure,
    /// Lengths that can be had, rising.
    pub lengths: Vec<f64>,
}

/// Screws of straps.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Screws {
    /// Their word.
    pub item: String,
    /// In words.
    pub what: String,
    /// In words.
    pub size: String,
    /// mm.
    pub diameter: f64,
    /// mm.
    pub length: f64,
    /// Where the size is from.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// Joist hangers.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HangerFigures {
    /// Word of their nails.
    pub nails: String,
    /// How many to each.
    pub nailed: Figure,
    /// Weight of one, kg.
    pub weight: Figure,
}

/// Preservative for cut ends.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Preservative {
    /// Coats.
    pub coats: Figure,
    /// m² that a litre covers once.
    pub covers: Figure,
    /// Litres in a tin.
    pub tin: Figure,
    /// kg a litre.
    pub density: Figure,
}

impl Figures {
    /// Figures of a region, as named by [`Job::region`](job::Job::region). A region without figures of its own has
    /// those of the United Kingdom.
    ///
    /// # Panics
    /// Never with the files as they are: they are compiled in, and a test reads them. No job can change that.
    #[must_use]
    pub fn of(_region: &str) -> &'static Self {
        static UK_FIGURES: OnceLock<Figures> = OnceLock::new();
        UK_FIGURES.get_or_init(|| toml::from_str(UK).expect("the figures compiled in can be read"))
    }

    /// Weight of a round rod of steel, kg; diameter and length in mm.
    #[must_use]
    pub fn rod_kg(&self, diameter: f64, length: f64) -> f64 {
        core::f64::consts::FRAC_PI_4 * diameter * diameter * length * self.steel.value / MM3_IN_M3
    }

    /// Weight of a steel bar, kg; mm.
    #[must_use]
    pub fn bar_kg(&self, wide: f64, thick: f64, length: f64) -> f64 {
        wide * thick * length * self.steel.value / MM3_IN_M3
    }

    /// Weight of a nail, kg: its wire without head and point, which make up for one another within a few percent.
    #[must_use]
    pub fn nail_kg(&self, nail: &NailSize) -> f64 {
        self.rod_kg(nail.diameter, nail.length)
    }
}

/// mm³ in a m³.
const MM3_IN_M3: f64 = 1e9;
