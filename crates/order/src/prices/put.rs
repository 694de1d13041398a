//! Puts a price list into the text of a job.

use super::row::{PriceRow, SAME, TimberRow};
use super::said_twice::{of_length, price_of};
use crate::stock::Region;
use job::edit::EditError;
use job::{Faults, Job, Per, StockTimber, edit};
use std::collections::BTreeSet;
use thiserror::Error;

/// Why prices were not put into a job. Nothing is changed then.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PutFault {
    /// The job cannot be read.
    #[error("prices cannot be put into the job until it can be read: {0}")]
    NotAJob(Faults),
    /// Two entries of the job are of the timber that a price is for.
    #[error(
        "line {line}: {timber} is in the job twice, as [stock.{first}] and [stock.{second}], so it cannot be told which \
         of them the price is for; take one of them out of the job, or give it another class"
    )]
    TwoOfIt {
        /// Line of the list.
        line: u32,
        /// The timber.
        timber: String,
        /// The one entry.
        first: String,
        /// The other.
        second: String,
    },
    /// The job does not take them.
    #[error("the prices cannot be put into the job: {0}")]
    Edit(#[from] EditError),
    /// What was written does not read back.
    #[error("the price on line {line} of the list is not in the job after it was put there; set it by hand")]
    Lost {
        /// Line of the list.
        line: u32,
    },
}

/// The text of a job with the prices of a list, all else as it was. Timber is found by its section, class and whether
/// it is kept clean; what is not there yet is added, as `[stock.timber-47x150-C24]`. Its lengths are then those that
/// have a price: of the list, and those that had one before (the usual lengths of the region, if it had a price for a
/// metre and no lengths). Timber that the list has by the metre keeps its lengths.
/// A date goes when its price changes and the list has none; of several dates for one timber the oldest is kept.
///
/// # Errors
/// A job that cannot be read, or in which two entries are of one timber; then nothing is changed.
pub fn put_into(job_text: &str, rows: &[PriceRow]) -> Result<String, PutFault> {
    let job = job::read(job_text).map_err(PutFault::NotAJob)?;
    let mut changes: Vec<(String, Option<String>)> = Vec::new();
    let mut done: Vec<&TimberRow> = Vec::new();
    // What a price for a metre with no lengths beside it is a price of.
    let usual = Region::of(&job.region).map_or(&[][..], |region| &region.lengths.value);
    let mut names: BTreeSet<String> = job.stock.iter().map(|stock| stock.name.clone()).collect();
    for row in rows {
        match &row.timber {
            None => item(&job, row, &mut changes),
            Some(timber) if done.iter().any(|known| known.same_timber(timber)) => {}
            Some(timber) => {
                done.push(timber);
                let all: Vec<(&PriceRow, &TimberRow)> = rows
                    .iter()
                    .filter_map(|row| Some((row, row.timber.as_ref()?)))
                    .filter(|(_, other)| other.same_timber(timber))
                    .collect();
                let mut mine = job.stock.iter().filter(|s| timber.is_of(s.size, s.class, s.clean));
                let old = mine.next();
                if let (Some(first), Some(second)) = (old, mine.next()) {
                    return Err(PutFault::TwoOfIt {
                        line: row.line,
                        timber: timber.words(),
                        first: first.name.clone(),
                        second: second.name.clone(),
                    });
                }
                stock(timber, &all, old, usual, &mut names, &mut changes);
            }
        }
    }
    let changes = changes.iter().map(|(path, value)| (path.as_str(), value.as_deref()));
    let text = edit::set_all(job_text, changes)?;
    let new = job::read(&text).map_err(PutFault::NotAJob)?;
    match rows.iter().find(|row| !is_in(row, &new)) {
        Some(row) => Err(PutFault::Lost { line: row.line }),
        None => Ok(text),
    }
}

fn quoted(text: &str) -> String {
    // A date: digits and dashes, or what the list was not read from.
    format!("\"{}\"", text.replace(['"', '\\'], "").replace(char::is_control, ""))
}

/// Sets the price of an item.
fn item(job: &Job, row: &PriceRow, changes: &mut Vec<(String, Option<String>)>) {
    let path = |key: &str| format!("price.{}.{key}", row.item);
    let Some(old) = job.prices.iter().find(|price| price.item == row.item) else {
        let dated = row.dated.as_ref().map_or(String::new(), |date| format!(", dated = {}", quoted(date)));
        let group = format!("{{ price = {}, per = \"{}\"{dated} }}", row.price, row.per.word());
        changes.push((format!("price.{}", row.item), Some(group)));
        return;
    };
    if (old.price, old.per) != (row.price, row.per) {
        changes.push((path("price"), Some(row.price.to_string())));
        changes.push((path("per"), Some(quoted(row.per.word()))));
        changes.push((path("dated"), row.dated.as_deref().map(quoted)));
    } else if let Some(date) = &row.dated
        && old.dated.as_ref() != Some(date)
    {
        changes.push((path("dated"), Some(quoted(date))));
    }
}

/// What is to be written of a timber.
struct Wanted {
    price: Option<f64>,
    lengths: Vec<f64>,
    prices: Vec<f64>,
    dated: Option<String>,
}

/// Sets the prices of a timber.
fn stock(
    timber: &TimberRow,
    rows: &[(&PriceRow, &TimberRow)],
    old: Option<&StockTimber>,
    usual: &[f64],
    names: &mut BTreeSet<String>,
    changes: &mut Vec<(String, Option<String>)>,
) {
    let wanted = wanted(rows, old, usual);
    let list = |values: &[f64]| format!("[{}]", values.iter().map(f64::to_string).collect::<Vec<_>>().join(", "));
    let some = |values: &[f64]| (!values.is_empty()).then(|| list(values));
    let Some(old) = old else {
        let name = fresh_name(timber, names);
        let mut keys = vec![format!("size = [{}, {}]", timber.thickness_mm, timber.depth_mm)];
        keys.extend(timber.class.map(|class| format!("class = \"{}\"", class.name())));
        keys.extend(some(&wanted.lengths).map(|lengths| format!("lengths = {lengths}")));
        keys.extend(wanted.price.map(|price| format!("price = {price}")));
        keys.extend(some(&wanted.prices).map(|prices| format!("prices = {prices}")));
        keys.extend(timber.clean.then(|| "clean = true".to_owned()));
        keys.extend(wanted.dated.as_deref().map(|date| format!("dated = {}", quoted(date))));
        changes.push((format!("stock.{name}"), Some(format!("{{ {} }}", keys.join(", ")))));
        return;
    };
    let mut set = |key: &str, new: Option<String>, same: bool| {
        if !same {
            changes.push((format!("stock.{}.{key}", old.name), new));
        }
    };
    set("lengths", some(&wanted.lengths), wanted.lengths == old.lengths);
    set("price", wanted.price.map(|price| price.to_string()), wanted.price == old.price);
    set("prices", some(&wanted.prices), wanted.prices == old.prices);
    let same_prices = wanted.price == old.price && wanted.prices == old.prices && wanted.lengths == old.lengths;
    let keeps = wanted.dated == old.dated || (wanted.dated.is_none() && same_prices);
    set("dated", wanted.dated.as_deref().map(quoted), keeps);
}

fn wanted(rows: &[(&PriceRow, &TimberRow)], old: Option<&StockTimber>, usual: &[f64]) -> Wanted {
    let dated = rows.iter().filter_map(|(row, _)| row.dated.clone()).min();
    let metre = rows.iter().find(|(row, timber)| timber.length_mm.is_none() && row.per == Per::Metre);
    if let Some((row, _)) = metre {
        let lengths = old.map(|old| old.lengths.clone()).unwrap_or_default();
        return Wanted { price: Some(row.price), lengths, prices: Vec::new(), dated };
    }
    let mut all: Vec<(f64, &PriceRow)> = rows.iter().filter_map(|(row, t)| Some((t.length_mm?, *row))).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    // Lengths that had a price before and are not in the list keep it.
    let kept: Vec<(f64, f64)> = old
        .map(|old| match old.price {
            Some(metre) if old.lengths.is_empty() => {
                usual.iter().map(|length| (*length, of_length(metre, *length))).collect()
            }
            _ => old.lengths.iter().enumerate().filter_map(|(k, length)| Some((*length, old_price(old, k)?))).collect(),
        })
        .unwrap_or_default();
    let kept = kept.into_iter().filter(|(length, _)| !all.iter().any(|(new, _)| (new - length).abs() < SAME));
    let kept: Vec<(f64, f64)> = kept.collect();
    // The date is that of the oldest price; when that is not known, neither is the other.
    let dated = match old {
        Some(old) if !kept.is_empty() => old.dated.clone().zip(dated).map(|(before, now)| before.min(now)),
        _ => dated,
    };
    let by_metre = all.first().map(|(_, row)| row.price).filter(|price| {
        all.iter().all(|(_, row)| row.per == Per::Metre && row.price == *price)
            && old.is_none_or(|old| kept.is_empty() || old.price == Some(*price))
    });
    let mut lengths: Vec<(f64, f64)> = all.iter().map(|(length, row)| (*length, price_of(row, *length))).collect();
    lengths.extend(kept);
    lengths.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (lengths, prices): (Vec<f64>, Vec<f64>) = lengths.into_iter().unzip();
    Wanted { price: by_metre, lengths, prices: if by_metre.is_some() { Vec::new() } else { prices }, dated }
}

/// What a length of the job costs, by its place.
fn old_price(old: &StockTimber, place: usize) -> Option<f64> {
    let length = old.lengths.get(place)?;
    old.price.map(|metre| of_length(metre, *length)).or_else(|| old.prices.get(place).copied())
}

/// A name that is not taken, e.g. `timber-47x150-C24`.
fn fresh_name(timber: &TimberRow, names: &mut BTreeSet<String>) -> String {
    let class = timber.class.map_or(String::new(), |class| format!("-{}", class.name()));
    let clean = if timber.clean { "clean-" } else { "" };
    let plain = format!("{clean}timber-{}x{}{class}", timber.thickness_mm, timber.depth_mm).replace('.', "-");
    let mut name = plain.clone();
    let mut number = 1_u32;
    while !names.insert(name.clone()) {
        number += 1;
        name = format!("{plain}-{number}");
    }
    name
}

/// Whether a job asks for something what a row says, to within rounding.
fn is_in(row: &PriceRow, job: &Job) -> bool {
    const ROUNDING: f64 = 1e-9;
    let near = |a: f64, b: f64| (a - b).abs() <= ROUNDING * b.abs();
    let Some(timber) = &row.timber else {
        return job.prices.iter().any(|p| p.item == row.item && p.per == row.per && near(p.price, row.price));
    };
    let mut mine = job.stock.iter().filter(|s| timber.is_of(s.size, s.class, s.clean));
    mine.any(|stock| match timber.length_mm {
        None => stock.price.is_some_and(|price| near(price, row.price)),
        Some(length) => {
            let place = stock.lengths.iter().position(|known| (known - length).abs() < SAME);
            place.and_then(|k| old_price(stock, k)).is_some_and(|price| near(price, price_of(row, length)))
        }
    })
}
