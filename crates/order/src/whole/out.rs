//! An order as plain data: what `solve --json` writes under `order`, and what sheets and screens show.
//! Lengths in mm, money in the currency of the region.

use crate::buying::{LiftLoad, Notice, PricedLine, Quote};
use crate::covering::Covered;
use roof::solution::{SawSetting, Size, SquareSetting};
use serde::{Deserialize, Serialize};

/// What to buy for a roof, and how to cut it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Order {
    /// Sign of the currency.
    pub currency: String,
    /// `cost` or `waste`: what the cutting plans make least.
    pub aim: String,
    /// What the saw takes, mm.
    pub kerf_mm: f64,
    /// What is cut off each end of a length, mm.
    pub trim_mm: f64,
    /// Offcuts of this length are kept, mm.
    pub keep_mm: f64,
    /// What goes up in one lift, kg.
    pub lift_kg: f64,
    /// Structural timber is bought treated.
    pub treated: bool,
    /// Timber by section and class.
    pub timber: Vec<TimberOut>,
    /// The covering, when the job names one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub covering: Option<Covered>,
    /// Why the slopes cannot be covered so, and what to do.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub covering_refused: Option<String>,
    /// How many of `lines` are of the covering: the first.
    pub covering_lines: u32,
    /// What is bought besides timber.
    pub lines: Vec<PricedLine>,
    /// What goes up, and in how many lifts.
    pub lifts: Vec<LiftLoad>,
    /// Sums.
    pub quote: Quote,
    /// What whoever orders must know.
    pub notices: Vec<Notice>,
    /// Cautions for every sheet.
    pub cautions: Vec<String>,
}

/// Timber of one section and class: what to buy, and how to cut it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TimberOut {
    /// Section, the thickness the smaller.
    pub size: Size,
    /// Strength class; none for boards and what carries nothing.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub class: Option<String>,
    /// How many timbers are cut from it.
    pub timbers: u32,
    /// What to buy, the longest first; what lies in the yard comes last.
    pub buy: Vec<Buy>,
    /// Length bought, without the yard's, m.
    pub bought_m: f64,
    /// Length of what is cut up, with the yard's, m.
    pub used_m: f64,
    /// Part of what is cut up that becomes neither timber nor an offcut that is kept, percent.
    pub waste_percent: f64,
    /// Weight of what is bought, kg.
    pub kg: f64,
    /// What is bought costs so much; none while a length has no price.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cost: Option<f64>,
    /// When prices were asked.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub dated: Vec<String>,
    /// How far the plan is from the best there can be.
    pub best: Best,
    /// The same without cuts that are shared: each timber in its box.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub unshared: Option<Unshared>,
    /// How to cut it: lengths that are cut alike together.
    pub layouts: Vec<Layout>,
    /// Offcuts that are kept, the longest first, mm.
    pub offcuts: Vec<f64>,
    /// Why it cannot be cut from the stock there is, and what to do.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub refused: Option<String>,
}

/// How far a plan is from the best there can be.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Best {
    /// What was made least: `money`, `length` (metres, long lengths dearer) or `waste` (metres).
    pub of: String,
    /// The plan has this much.
    pub value: f64,
    /// No plan can have less.
    pub at_least: f64,
    /// The two are the same: nothing better exists.
    pub proven: bool,
}

/// The same timbers, each in its box.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Unshared {
    /// Length bought, m.
    pub bought_m: f64,
    /// Cost, when prices are known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cost: Option<f64>,
}

/// Lengths of one kind to buy.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Buy {
    /// mm.
    pub length_mm: f64,
    /// How many.
    pub count: u32,
    /// Its name in the job's stock; none when it is a usual length of the region.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub stock: Option<String>,
    /// Its name in the yard, when it is there and need not be bought.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub yard: Option<String>,
    /// Price of one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub each: Option<f64>,
}

/// Lengths of stock that are cut alike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Layout {
    /// Length of the stock, mm.
    pub length_mm: f64,
    /// How many are cut so.
    pub count: u32,
    /// Its name in the yard, when it is from there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub yard: Option<String>,
    /// The timbers, from the left.
    pub pieces: Vec<LaidOut>,
    /// The cuts in their order.
    pub cuts: Vec<CutOut>,
    /// What is left at the right end, mm.
    pub left_mm: f64,
    /// It is long enough to keep.
    pub kept: bool,
}

/// A timber in its length of stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LaidOut {
    /// Its mark in each of the lengths that are cut alike.
    pub marks: Vec<String>,
    /// Mark of its card.
    pub card: String,
    /// `as it lies`, `end for end`, `end for end, top edge down` or `top edge down`.
    pub turn: String,
    /// From the left end of the stock to its nearest and farthest point, mm.
    pub from_mm: f64,
    /// See `from_mm`.
    pub to_mm: f64,
    /// Its sides as seen on the wide side of the stock, from the left end and from the lower edge, mm.
    pub outline: Vec<Vec<[f64; 2]>>,
}

/// A cut of the saw.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CutOut {
    /// `squaring`, `parting`, `shared` or `trimming`.
    pub what: String,
    /// Numbers, from 0, of the timbers in the layout whose ends it makes.
    pub ends: Vec<u32>,
    /// Where its line crosses the lower and the upper edge of the wide side that faces up, from the left end, mm: the
    /// side of the blade that is kept.
    pub at_mm: [f64; 2],
    /// The same on the wide side that lies down: where it differs, the blade leans.
    #[serde(default)]
    pub under_mm: [f64; 2],
    /// The blade takes its kerf to the right of the line.
    pub kerf_right: bool,
    /// On the wide side, from square across, degrees.
    pub face_angle_deg: f64,
    /// On the edge, from square across, degrees.
    pub edge_angle_deg: f64,
    /// Saw settings with the stock on its wide side.
    pub saw: SawSetting,
    /// Run and rise to set on the roofing square for the wide side.
    pub square: SquareSetting,
}
