//! Lines with the prices of the job.

use super::line::{Line, LineKind, per_word};
use crate::money::Money;
use job::{Per, PriceOf};
use serde::{Deserialize, Serialize};

/// A line with its price.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PricedLine {
    /// The line.
    #[serde(flatten)]
    pub line: Line,
    /// The price that was used.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub price: Option<PriceUsed>,
    /// What it comes to; none without a price.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cost: Option<Money>,
    /// When the price was asked, as written.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub dated: Option<String>,
}

/// A price as it was asked.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct PriceUsed {
    /// In the currency of the region.
    pub amount: f64,
    /// What it is a price of.
    #[serde(with = "per_word")]
    pub per: Per,
}

/// What whoever orders must know.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Notice {
    /// Short fixed code: `price-unit`, `price-unused`, `price-missing`.
    pub code: String,
    /// Level.
    pub level: NoticeLevel,
    /// What, and what to do.
    pub text: String,
    /// Where in the job, e.g. `price.batten`.
    pub place: String,
}

/// How serious a notice is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoticeLevel {
    /// Look at this before ordering.
    Warn,
    /// Good to know.
    Note,
}

/// How many single things a unit counts, when it counts things.
const fn things(per: Per) -> Option<f64> {
    match per {
        Per::Each => Some(1.0),
        Per::Hundred => Some(100.0),
        Per::Thousand => Some(1000.0),
        _ => None,
    }
}

/// How much of a quantity in one unit is in another, where that is exact.
fn converted(quantity: f64, from: Per, to: Per) -> Option<f64> {
    if from == to {
        return Some(quantity);
    }
    Some(quantity * things(from)? / things(to)?)
}

/// Puts prices to lines. All lines of an order belong in one call, or prices of the others are said to be wanted by
/// nothing. A price in a unit that the line is not counted in is not used, and told.
#[must_use]
pub fn priced(lines: Vec<Line>, prices: &[PriceOf]) -> (Vec<PricedLine>, Vec<Notice>) {
    let mut notices: Vec<Notice> = Vec::new();
    let mut missing: Vec<String> = Vec::new();
    let mut used = vec![false; prices.len()];
    let mut all = Vec::with_capacity(lines.len());
    for line in lines {
        let found = prices.iter().position(|p| p.item == line.item);
        let price = found.and_then(|k| prices.get(k));
        if let Some(used) = found.and_then(|k| used.get_mut(k)) {
            *used = true;
        }
        let quantity = price.and_then(|p| converted(line.quantity, line.unit, p.per));
        match price {
            None if line.kind != LineKind::ToChoose && !missing.contains(&line.item) => missing.push(line.item.clone()),
            Some(price) if quantity.is_none() => {
                let notice = units_mixed(&line, price);
                if !notices.contains(&notice) {
                    notices.push(notice);
                }
            }
            _ => {}
        }
        let price = price.filter(|_| quantity.is_some());
        all.push(PricedLine {
            cost: price.zip(quantity).map(|(price, quantity)| Money::of(price.price * quantity)),
            dated: price.and_then(|p| p.dated.clone()),
            price: price.map(|p| PriceUsed { amount: p.price, per: p.per }),
            line,
        });
    }
    let spare: Vec<&str> = prices.iter().zip(&used).filter(|(_, used)| !**used).map(|(p, _)| p.item.as_str()).collect();
    if !spare.is_empty() {
        notices.push(Notice {
            code: "price-unused".to_owned(),
            level: NoticeLevel::Note,
            text: format!(
                "Nothing in this order goes by {}. A price does no harm where nothing is bought at it; if one was meant \
                 for something else, write the word of that line",
                listed(&spare)
            ),
            place: "price".to_owned(),
        });
    }
    if !missing.is_empty() {
        let names: Vec<String> = missing.iter().map(|item| format!("[price.{item}]")).collect();
        notices.push(Notice {
            code: "price-missing".to_owned(),
            level: NoticeLevel::Note,
            text: format!(
                "There is no price for {} of the lines, and the sum is without them. Write them under {}, or read a \
                 price list in",
                missing.len(),
                names.join(", ")
            ),
            place: "price".to_owned(),
        });
    }
    (all, notices)
}

fn listed(items: &[&str]) -> String {
    items.iter().map(|item| format!("`{item}`")).collect::<Vec<_>>().join(", ")
}

fn units_mixed(line: &Line, price: &PriceOf) -> Notice {
    let (counted, asked) = (line.unit.word(), price.per.word());
    Notice {
        code: "price-unit".to_owned(),
        level: NoticeLevel::Warn,
        text: format!(
            "Units mixed: {} is ordered per {counted}, and its price is per {asked}, so it is not used. Ask for a price \
             per {counted}, or work it out and write per = \"{counted}\"",
            line.what
        ),
        place: format!("price.{}", line.item),
    }
}
