//! Sums of an order by group: what is priced, what is not, and how old the prices are.

use super::line::LineKind;
use super::pricing::PricedLine;
use crate::money::Money;
use crate::prices::is_date;
use serde::{Deserialize, Serialize};

/// Something to be paid, in a group.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// What it is summed under, e.g. `timber`.
    pub group: String,
    /// What it is.
    pub what: String,
    /// What it comes to, when that is known.
    pub cost: Option<Money>,
    /// When its price was asked, as written.
    pub dated: Option<String>,
    /// Wanted only if it is chosen: not in the sum.
    pub to_choose: bool,
}

impl Entry {
    /// A priced line in a group.
    #[must_use]
    pub fn of(group: &str, priced: &PricedLine) -> Self {
        let line = &priced.line;
        Self {
            group: group.to_owned(),
            what: if line.size.is_empty() { line.what.clone() } else { format!("{}, {}", line.what, line.size) },
            cost: priced.cost,
            dated: priced.dated.clone(),
            to_choose: line.kind == LineKind::ToChoose,
        }
    }
}

/// The sum of a group.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct GroupSum {
    /// The group.
    pub group: String,
    /// The sum of what is priced in it, without what is to be chosen.
    pub sum: Money,
    /// How many are in the sum.
    pub priced: u32,
    /// How many have no price.
    pub not_priced: u32,
}

/// Sums of an order.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quote {
    /// Groups in the order in which they came.
    pub groups: Vec<GroupSum>,
    /// The sum of all that is priced, without what is to be chosen.
    pub total: Money,
    /// What has no price, and is not in the sum.
    pub not_priced: Vec<String>,
    /// What may be chosen besides, and is not in the sum: with what it comes to where that is known.
    pub to_choose: Vec<(String, Option<Money>)>,
    /// Date of the oldest price, when any has one.
    pub oldest: Option<String>,
    /// Date of the newest.
    pub newest: Option<String>,
    /// How many of the prices in the sum have no date that can be read.
    pub undated: u32,
    /// What the sum is and is not.
    pub notes: Vec<String>,
}

/// Sums entries.
#[must_use]
pub fn quote(entries: &[Entry]) -> Quote {
    let mut quote = Quote {
        groups: Vec::new(),
        total: Money::default(),
        not_priced: Vec::new(),
        to_choose: Vec::new(),
        oldest: None,
        newest: None,
        undated: 0,
        notes: Vec::new(),
    };
    for entry in entries {
        if entry.to_choose {
            quote.to_choose.push((entry.what.clone(), entry.cost));
            continue;
        }
        let group = match quote.groups.iter().position(|g| g.group == entry.group) {
            Some(k) => k,
            None => {
                quote.groups.push(GroupSum {
                    group: entry.group.clone(),
                    sum: Money::default(),
                    priced: 0,
                    not_priced: 0,
                });
                quote.groups.len() - 1
            }
        };
        let Some(sum) = quote.groups.get_mut(group) else { continue };
        let Some(cost) = entry.cost else {
            sum.not_priced += 1;
            quote.not_priced.push(entry.what.clone());
            continue;
        };
        sum.sum += cost;
        sum.priced += 1;
        quote.total += cost;
        match entry.dated.as_deref().filter(|date| is_date(date)) {
            None => quote.undated += 1,
            // Dates written year first are in the order of their letters.
            Some(date) => {
                if quote.oldest.as_deref().is_none_or(|oldest| date < oldest) {
                    quote.oldest = Some(date.to_owned());
                }
                if quote.newest.as_deref().is_none_or(|newest| date > newest) {
                    quote.newest = Some(date.to_owned());
                }
            }
        }
    }
    quote.notes = notes(&quote);
    quote
}

fn notes(quote: &Quote) -> Vec<String> {
    let mut notes =
        vec!["Prices are summed as they were given: no tax, delivery or discount is put in or taken out.".to_owned()];
    if !quote.not_priced.is_empty() {
        notes.push(format!("{} lines have no price and are not in the sum.", quote.not_priced.len()));
    }
    if !quote.to_choose.is_empty() {
        notes.push(format!("{} lines are to be chosen and are not in the sum.", quote.to_choose.len()));
    }
    if let (Some(oldest), Some(newest)) = (&quote.oldest, &quote.newest) {
        notes.push(if oldest == newest {
            format!("Prices were asked on {oldest}.")
        } else {
            format!("Prices were asked from {oldest} to {newest}.")
        });
    }
    if quote.undated > 0 {
        notes.push(format!("{} prices have no date: ask whether they still hold.", quote.undated));
    }
    notes
}
