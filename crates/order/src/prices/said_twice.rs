//! Prices that say the same thing twice, or two things of the same.

use super::fault::PriceListFault;
use super::row::{PriceRow, SAME, TimberRow};
use crate::money::Money;
use job::{Per, StrengthClass};
use std::collections::BTreeMap;

/// What a price is of: an item, or a timber with its length; sizes in steps of [`SAME`].
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Of {
    Item(String),
    Timber([i64; 2], Option<&'static str>, bool, Option<i64>),
}

fn steps(mm: f64) -> i64 {
    (mm / SAME).round() as i64
}

fn timber(timber: &TimberRow, length: Option<f64>) -> Of {
    let sides = [steps(timber.thickness_mm), steps(timber.depth_mm)];
    Of::Timber(sides, timber.class.map(StrengthClass::name), timber.clean, length.map(steps))
}

fn of(row: &PriceRow) -> Of {
    row.timber.as_ref().map_or_else(|| Of::Item(row.item.clone()), |t| timber(t, t.length_mm))
}

fn words(row: &PriceRow) -> String {
    match &row.timber {
        Some(timber) => match timber.length_mm {
            Some(length) => format!("{} × {length} mm", timber.words()),
            None => timber.words(),
        },
        None => format!("`{}`", row.item),
    }
}

/// Rows that disagree with an earlier one.
pub(super) fn said_twice(rows: &[PriceRow]) -> Vec<PriceListFault> {
    let mut first: BTreeMap<Of, &PriceRow> = BTreeMap::new();
    let mut by_metre: BTreeMap<Of, &PriceRow> = BTreeMap::new();
    let mut by_length: BTreeMap<Of, &PriceRow> = BTreeMap::new();
    let mut faults = Vec::new();
    for row in rows {
        let known = *first.entry(of(row)).or_insert(row);
        if (known.price, known.per) != (row.price, row.per) || known.dated != row.dated {
            let dates = (known.price, known.per) == (row.price, row.per);
            faults.push(PriceListFault::new(
                row.line,
                "said-twice",
                format!("{} has another {} on line {}", words(row), if dates { "date" } else { "price" }, known.line),
                "Which of them holds cannot be told",
                "Take one of the two lines out",
            ));
        }
        let Some(t) = &row.timber else { continue };
        let whole = timber(t, None);
        let (mine, other) =
            if t.length_mm.is_none() { (&mut by_metre, &by_length) } else { (&mut by_length, &by_metre) };
        mine.entry(whole.clone()).or_insert(row);
        if let Some(other) = other.get(&whole) {
            faults.push(PriceListFault::new(
                row.line,
                "priced-two-ways",
                format!("{} goes by its lengths and by the metre: see line {}", t.words(), other.line),
                "Only one of them can be what is paid",
                "Take out the price of a metre, or the prices of its lengths",
            ));
        }
    }
    faults
}

/// Rows without those that say the same again.
pub(super) fn without_repeats(rows: Vec<PriceRow>) -> Vec<PriceRow> {
    let mut seen: BTreeMap<Of, ()> = BTreeMap::new();
    rows.into_iter().filter(|row| seen.insert(of(row), ()).is_none()).collect()
}

/// What a row asks for a length, mm.
pub(super) fn price_of(row: &PriceRow, length: f64) -> f64 {
    if row.per == Per::Metre { of_length(row.price, length) } else { row.price }
}

/// What a length costs at a price of a metre, as finely as money is reckoned.
pub(super) fn of_length(metre: f64, length: f64) -> f64 {
    Money::of(metre * length / 1000.0).amount()
}
