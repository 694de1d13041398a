//! The order of the open job: what to buy, how to cut it, what covers it, what it costs.

use super::{Done, Figure, Ways};
use picture::Picture;
use serde::{Deserialize, Serialize};

/// What to buy for the open job.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct OrderView {
    /// The sign of the currency.
    pub currency: String,
    /// What is read first: the sum of what is priced, weight, metres.
    pub figures: Vec<Figure>,
    /// What the sum is and is not, a sentence each.
    pub notes: Vec<String>,
    /// Timber by section and class.
    pub timber: Vec<OrderTimber>,
    /// What covers the slopes.
    pub covering: OrderCovering,
    /// Everything else, in the order of a shopping list.
    pub lines: Vec<OrderLine>,
    /// What lies in the yard for this job.
    pub yard: Vec<YardRow>,
    /// What goes up in how many lifts, a sentence each.
    pub lifts: Vec<String>,
    /// What whoever orders must know.
    pub notices: Vec<OrderNotice>,
    /// Who decides.
    pub cautions: Vec<String>,
    /// Date of the oldest price, as written; nothing when none has one.
    pub oldest: Option<String>,
}

/// Timber of one section and class.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct OrderTimber {
    /// Its name in other calls.
    pub id: String,
    /// Section and class.
    pub title: String,
    /// Which timbers are cut from it.
    pub kinds: String,
    /// How many.
    pub timbers: String,
    /// What to buy, the longest first.
    pub buy: Vec<OrderBuy>,
    /// What is taken from the yard.
    pub yard: Vec<OrderBuy>,
    /// Metres, weight, cost.
    pub figures: Vec<Figure>,
    /// Every length has a price.
    pub priced: bool,
    /// How far the plan is from the best there can be, a sentence.
    pub best: String,
    /// Nothing better exists.
    pub proven: bool,
    /// What shared cuts save, a sentence.
    pub saving: Option<String>,
    /// What becomes sawdust and short ends, a sentence.
    pub waste: String,
    /// Why it can't be cut from the stock there is, and what to do.
    pub refused: Option<String>,
    /// Its prices, to be written: one for each merchant's stock of the job, or one to start with.
    pub prices: Vec<StockPrice>,
}

/// Lengths of one kind.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct OrderBuy {
    /// How many.
    pub count: String,
    /// Of which length.
    pub length: String,
    /// What one costs.
    pub each: Option<String>,
}

/// The price of a stock of timber, to be written.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StockPrice {
    /// Which: to be given back with an edit.
    pub of: String,
    /// What it is called, when the job has several for the same timber.
    pub name: Option<String>,
    /// Price of a metre; empty when none is written.
    pub metre: String,
    /// Lengths that may be had, with their prices; empty where none is written.
    pub lengths: Vec<(String, String)>,
    /// What a price of a metre is taken to mean, a sentence; empty when it means just that.
    pub hint: String,
    /// It is priced by the length.
    pub by_length: bool,
    /// When it was asked; empty when that is not written.
    pub dated: String,
}

/// What covers the slopes.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct OrderCovering {
    /// The word of the covering that is chosen; empty when none is.
    pub chosen: String,
    /// What can be chosen: the word of the job file, and what is shown for it.
    pub choices: Vec<(String, String)>,
    /// Why it can't be laid on this roof, and what to do.
    pub refused: Option<String>,
    /// Area, weight, battens, underlay.
    pub figures: Vec<Figure>,
    /// Its slopes.
    pub slopes: Vec<CoveredSlope>,
    /// What to order for it.
    pub lines: Vec<OrderLine>,
    /// How the roof is aired, a sentence each.
    pub air: Vec<String>,
    /// What the roofer must know.
    pub notices: Vec<OrderNotice>,
    /// Where its figures are from.
    pub sources: Vec<String>,
}

/// A slope as it is covered.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct CoveredSlope {
    /// Which, with its pitch.
    pub title: String,
    /// Courses and gauge.
    pub main: Vec<Figure>,
    /// The rest.
    pub figures: Vec<Figure>,
}

/// Something that is bought.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct OrderLine {
    /// Its word: what its price goes by.
    pub item: String,
    /// What it is, with its size.
    pub what: String,
    /// How much, with its unit.
    pub quantity: String,
    /// How it was counted.
    pub counted: String,
    /// Where the rule is from.
    pub source: String,
    /// How sure it is, in a word or two; empty when it is counted.
    pub remark: String,
    /// Weight; empty when it is not known.
    pub weight: String,
    /// What it comes to.
    pub cost: Option<String>,
    /// Its price as written; empty when none is.
    pub price: String,
    /// What that is a price of: the word of the job file.
    pub per: String,
    /// What it may be a price of: the word of the job file, and what is shown for it.
    pub pers: Vec<(String, String)>,
    /// When it was asked; empty when that is not written.
    pub dated: String,
}

/// What whoever orders must know.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct OrderNotice {
    /// How serious: `stop`, `warn` or `note`.
    pub level: String,
    /// What, and what to do.
    pub text: String,
    /// Where, if it is about one place.
    pub place: String,
}

/// Offcuts of one section, class and length.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Offcut {
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Depth, mm.
    pub depth_mm: f64,
    /// Strength class, when it is known.
    pub class: Option<String>,
    /// Length, mm.
    pub length_mm: f64,
    /// How many.
    pub count: u32,
}

/// Offcuts as shown.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct YardRow {
    /// Their name in the job; empty when they are not in it.
    pub name: String,
    /// Section, class, length.
    pub words: String,
    /// How many.
    pub count: String,
    /// Some timber of the open job could be cut from them.
    pub fits: bool,
    /// The offcuts.
    pub offcut: Offcut,
}

/// Asks how offcuts look that are kept on the device.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct YardAsk {
    /// The offcuts; those that are alike become one row.
    pub offcuts: Vec<Offcut>,
}

/// Asks how to cut what is bought.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct CuttingAsk {
    /// Width that a picture may take, px.
    pub width: f64,
}

/// How the timber of one section and class is cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct CuttingGroup {
    /// Its name in other calls.
    pub id: String,
    /// Section and class.
    pub title: String,
    /// Lengths that are cut alike together.
    pub layouts: Vec<LayoutRow>,
    /// Offcuts that are kept.
    pub left: Vec<Offcut>,
    /// The same in words; empty when there are none.
    pub left_words: String,
}

/// Lengths that are cut alike.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct LayoutRow {
    /// Its name in other calls.
    pub id: String,
    /// How many.
    pub times: String,
    /// Length of the stock.
    pub length: String,
    /// It is from the yard.
    pub yard: bool,
    /// What is left at its end, and whether that is kept.
    pub left: String,
    /// How far its timbers are: the least of them.
    pub done: Done,
    /// The length with its timbers, to scale.
    pub picture: Picture,
}

/// Asks how some lengths are cut.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct LayoutAsk {
    /// Which: the `id` of a [`LayoutRow`].
    pub id: String,
    /// Width that its picture may take, px.
    pub width: f64,
}

/// How lengths that are cut alike are cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct LayoutView {
    /// The lengths.
    pub row: LayoutRow,
    /// Section and class.
    pub title: String,
    /// The cuts in their order.
    pub steps: Vec<SawStep>,
    /// The timbers, from the left.
    pub pieces: Vec<LaidRow>,
    /// What to mind.
    pub cautions: Vec<String>,
}

/// One cut at the saw.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SawStep {
    /// The name that parts of the picture have that belong to it.
    pub name: String,
    /// Where on the tape from the left end, as shown.
    pub tape: Figure,
    /// Where the line crosses the other edges, as far as it is on the stock.
    pub marks: Vec<Figure>,
    /// How the line runs and on which side of it the saw goes.
    pub words: String,
    /// Which timbers it makes ends of, a sentence.
    pub makes: String,
    /// The settings; nothing when it is square across and the blade stands upright.
    pub ways: Option<Ways>,
}

/// A timber in its length.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct LaidRow {
    /// What to write on it: its mark in each of the lengths that are cut alike.
    pub marks: Vec<String>,
    /// Mark of its card.
    pub card: String,
    /// How it lies, in words.
    pub lies: String,
    /// How far it is: the least of them.
    pub done: Done,
}

/// The price of a stock of timber, as typed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StockPriceGiven {
    /// Which: the `of` of a [`StockPrice`].
    pub of: String,
    /// By the length, or else by the metre.
    pub by_length: bool,
    /// Price of a metre; empty takes it out.
    pub metre: String,
    /// Price of each length, in their order; what has none can't be had.
    pub lengths: Vec<String>,
    /// When it was asked.
    pub dated: String,
}

/// The price of anything else, as typed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct ItemPriceGiven {
    /// What it is a price of: the `item` of an [`OrderLine`].
    pub item: String,
    /// Empty takes it out.
    pub price: String,
    /// What it is a price of.
    pub per: String,
    /// When it was asked.
    pub dated: String,
}

/// Offcuts, as typed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct OffcutGiven {
    /// Thickness.
    pub thickness: String,
    /// Depth.
    pub depth: String,
    /// Length.
    pub length: String,
    /// How many.
    pub count: String,
    /// Strength class; empty when it is not known.
    pub class: String,
}
