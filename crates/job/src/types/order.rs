//! What is bought for the roof: from which stock, at which prices, and what covers it.

use super::{Section, StrengthClass};
use schemars::JsonSchema;

/// How timber is ordered and cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ordering {
    /// What the cutting plan makes least.
    pub aim: OrderAim,
    /// What the saw takes, square to the cut, mm.
    pub kerf: f64,
    /// What is cut off each end of a length to square it, mm.
    pub trim: f64,
    /// Offcuts of this length are kept, mm.
    pub keep: f64,
    /// Structural timber is bought treated.
    pub treated: bool,
    /// What goes up in one lift, kg.
    pub lift: f64,
}

/// What a cutting plan makes least.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum OrderAim {
    /// Money.
    Cost,
    /// What becomes neither a timber nor an offcut that is kept.
    Waste,
}

/// Timber that can be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct StockTimber {
    /// Its name in the job.
    pub name: String,
    /// Section.
    pub size: Section,
    /// Strength class; timber of any class of this section when none is said.
    pub class: Option<StrengthClass>,
    /// Lengths that can be had, rising, mm; those usual in the region when empty.
    pub lengths: Vec<f64>,
    /// Price of a metre.
    pub price: Option<f64>,
    /// Price of each length, in the order of `lengths`; empty when they go by the metre.
    pub prices: Vec<f64>,
    /// Long and clean: kept for hips and valleys.
    pub clean: bool,
    /// When its prices were asked, as written.
    pub dated: Option<String>,
}

/// Offcuts that lie in the yard.
#[derive(Clone, Debug, PartialEq)]
pub struct YardTimber {
    /// Their name in the job.
    pub name: String,
    /// Section.
    pub size: Section,
    /// Length, mm.
    pub length: f64,
    /// How many there are.
    pub count: u32,
    /// Strength class; not known when none is said.
    pub class: Option<StrengthClass>,
    /// Long and clean.
    pub clean: bool,
}

/// The price of what is bought besides timber.
#[derive(Clone, Debug, PartialEq)]
pub struct PriceOf {
    /// What it is of: a word of the order.
    pub item: String,
    /// In the currency of the region.
    pub price: f64,
    /// What it is a price of.
    pub per: Per,
    /// When it was asked, as written.
    pub dated: Option<String>,
}

/// What a price is a price of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
pub enum Per {
    /// One.
    #[schemars(rename = "each")]
    Each,
    /// A hundred.
    #[schemars(rename = "hundred")]
    Hundred,
    /// A thousand.
    #[schemars(rename = "thousand")]
    Thousand,
    /// A metre.
    #[schemars(rename = "m")]
    Metre,
    /// A square metre.
    #[schemars(rename = "m2")]
    SquareMetre,
    /// A cubic metre.
    #[schemars(rename = "m3")]
    CubicMetre,
    /// A kilogram.
    #[schemars(rename = "kg")]
    Kilogram,
    /// A roll.
    #[schemars(rename = "roll")]
    Roll,
}

impl Per {
    /// Every word with what it stands for.
    pub const ALL: &'static [(&'static str, Self)] = &[
        ("each", Self::Each),
        ("hundred", Self::Hundred),
        ("thousand", Self::Thousand),
        ("m", Self::Metre),
        ("m2", Self::SquareMetre),
        ("m3", Self::CubicMetre),
        ("kg", Self::Kilogram),
        ("roll", Self::Roll),
    ];

    /// Its word.
    #[must_use]
    pub fn word(self) -> &'static str {
        Self::ALL.iter().find(|(_, per)| *per == self).map_or("", |(word, _)| word)
    }
}

/// What covers the slopes. Sizes and figures that are not said are those of the covering in the region.
#[derive(Clone, Debug, PartialEq)]
pub struct CoveringChoice {
    /// Name of a covering of the region.
    pub of: String,
    /// Length of a tile, slate or sheet, mm.
    pub length: Option<f64>,
    /// Its width, mm.
    pub width: Option<f64>,
    /// The width that it covers, mm.
    pub cover_width: Option<f64>,
    /// Head lap, mm.
    pub head_lap: Option<f64>,
    /// Greatest gauge, mm.
    pub most_gauge: Option<f64>,
    /// Least pitch, degrees.
    pub least_pitch: Option<f64>,
    /// Weight of one, kg.
    pub weight: Option<f64>,
    /// Section of the battens.
    pub batten: Option<Section>,
    /// Boards lie under the underlay.
    pub boarded: bool,
    /// Allowance for what breaks, percent.
    pub breakage: Option<f64>,
}
