//! The lengths that a group of timbers can be cut from, and what they cost.

use super::{Group, Region, same_section};
use crate::cutting::StockLength;
use crate::money::Money;
use job::{Job, StockTimber, StrengthClass, YardTimber};

/// A metre, mm.
const METRE: f64 = 1000.0;

/// Where a length comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Offer {
    /// Named in the job's stock.
    Merchant(String),
    /// Usual in the region.
    Usual,
    /// Lies in the yard.
    Yard(String),
}

/// All lengths for one group.
#[derive(Clone, Debug, PartialEq)]
pub struct Offers {
    /// The lengths.
    pub stock: Vec<StockLength>,
    /// Where each comes from, in the same order.
    pub from: Vec<Offer>,
    /// Costs are money; otherwise they only compare lengths, by the metre and dearer when long.
    pub priced: bool,
    /// When prices were asked.
    pub dated: Vec<String>,
}

/// Whether stock of a class will do for timbers of another: the same class, or either not said.
pub(crate) fn class_fits(stock: Option<StrengthClass>, wanted: Option<StrengthClass>) -> bool {
    match (stock, wanted) {
        (Some(stock), Some(wanted)) => stock == wanted,
        _ => true,
    }
}

/// Offcuts in the yard are for what carries only when their class is known.
pub(crate) fn yard_fits(yard: &YardTimber, group: &Group) -> bool {
    same_section([yard.size.thickness, yard.size.depth], group.section)
        && (group.class.is_none() || (yard.class.is_some() && yard.class == group.class))
}

/// What one length of a stock costs.
fn cost(stock: &StockTimber, number: usize, length: f64) -> Option<Money> {
    stock
        .prices
        .get(number)
        .map(|price| Money::of(*price))
        .or_else(|| stock.price.map(|p| Money::of(p * length / METRE)))
}

/// The lengths for a group: what the job's stock has in its section and class, or else those usual in the region; and
/// the offcuts in the yard.
#[must_use]
pub fn offers(job: &Job, region: &Region, group: &Group) -> Offers {
    let fitting: Vec<&StockTimber> = job
        .stock
        .iter()
        .filter(|s| same_section([s.size.thickness, s.size.depth], group.section) && class_fits(s.class, group.class))
        .collect();
    let mut lengths: Vec<(f64, Option<Money>, bool, Offer)> = Vec::new();
    for stock in &fitting {
        let usual = stock.lengths.is_empty();
        let all = if usual { &region.lengths.value } else { &stock.lengths };
        for (number, &length) in all.iter().enumerate() {
            // A price for a metre holds for usual lengths too, as it was given: what the user wrote is not raised.
            lengths.push((length, cost(stock, number, length), stock.clean, Offer::Merchant(stock.name.clone())));
        }
    }
    if lengths.is_empty() {
        lengths.extend(region.lengths.value.iter().map(|&l| (l, None, false, Offer::Usual)));
    }
    // One length without a price and nothing can be said in money.
    let priced = lengths.iter().all(|(_, price, ..)| price.is_some());
    let mut offers = Offers { stock: Vec::new(), from: Vec::new(), priced, dated: Vec::new() };
    for (length, price, clean, from) in lengths {
        let cost = match price {
            Some(price) if priced => price,
            _ => Money::of(length / METRE * region.dearer_at(length)),
        };
        offers.stock.push(StockLength { length, cost, have: None, clean, yard: None });
        offers.from.push(from);
    }
    for yard in job.yard.iter().filter(|y| yard_fits(y, group)) {
        offers.stock.push(StockLength {
            length: yard.length,
            cost: Money::default(),
            have: Some(yard.count),
            clean: yard.clean,
            yard: Some(yard.name.clone()),
        });
        offers.from.push(Offer::Yard(yard.name.clone()));
    }
    offers.dated = fitting.iter().filter_map(|s| s.dated.clone()).collect();
    offers.dated.sort();
    offers.dated.dedup();
    offers
}
