//! Prices of timber as they are written and typed.

use crate::views::StockPrice;
use crate::wording::Writing;
use job::written::tenth;
use job::{Job, StockTimber, StrengthClass};
use order::stock::{Region, same_section};
use order::whole::TimberOut;

/// Lengths that differ by less are one length, mm: merchants round feet to them.
const SAME_LENGTH: f64 = 0.5;

/// What a price of timber is written for.
pub(crate) enum Stocked<'j> {
    /// A stock of the job.
    Known(&'j StockTimber),
    /// One that is not in the job yet.
    New {
        /// Thickness and depth, mm.
        section: [f64; 2],
        /// Strength class.
        class: Option<StrengthClass>,
    },
}

impl Stocked<'_> {
    /// Lengths that may be had, mm: its own, and those usual in the region.
    pub(crate) fn lengths(&self, job: &Job) -> Vec<f64> {
        let own: &[f64] = match self {
            Self::Known(stock) => &stock.lengths,
            Self::New { .. } => &[],
        };
        let usual = Region::of(&job.region).map_or(&[][..], |region| &region.lengths.value);
        let mut all: Vec<f64> = own.iter().chain(usual).copied().collect();
        all.sort_by(f64::total_cmp);
        all.dedup_by(|a, b| (*a - *b).abs() < SAME_LENGTH);
        all
    }
}

/// What a price is written for, by the `of` of a [`StockPrice`].
pub(crate) fn stocked<'j>(job: &'j Job, of: &str) -> Option<Stocked<'j>> {
    match of.split_once(' ')? {
        ("stock", name) => job.stock.iter().find(|stock| stock.name == name).map(Stocked::Known),
        ("new", rest) => {
            let (section, class) = rest.split_once(' ').map_or((rest, None), |(section, class)| (section, Some(class)));
            let (thickness, depth) = section.split_once('x')?;
            let section = [thickness.parse().ok()?, depth.parse().ok()?];
            let class = match class {
                Some(word) => Some(StrengthClass::ALL.iter().find(|(name, _)| *name == word)?.1),
                None => None,
            };
            Some(Stocked::New { section, class })
        }
        _ => None,
    }
}

/// A section as it is written in a job: `[47, 150]`.
pub(crate) fn section_of([thickness, depth]: [f64; 2]) -> String {
    format!("[{thickness}, {depth}]")
}

/// The prices of a group: of every stock of the job that it is cut from, or one to start with.
pub(super) fn prices(job: &Job, timber: &TimberOut, writing: &Writing) -> Vec<StockPrice> {
    let section = [timber.size.thickness_mm, timber.size.depth_mm];
    let fits = |stock: &&StockTimber| {
        let class = stock.class.map(StrengthClass::name);
        let class_fits = class.is_none() || timber.class.is_none() || class == timber.class.as_deref();
        class_fits && same_section([stock.size.thickness, stock.size.depth], section)
    };
    let known: Vec<&StockTimber> = job.stock.iter().filter(fits).collect();
    if known.is_empty() {
        let of = format!("new {}", super::buy::id(timber));
        let Some(new) = stocked(job, &of) else { return Vec::new() };
        return vec![price(job, of, None, &new, writing)];
    }
    let several = known.len() > 1;
    let named = |stock: &&StockTimber| {
        let name = several.then(|| stock.name.clone());
        price(job, format!("stock {}", stock.name), name, &Stocked::Known(stock), writing)
    };
    known.iter().map(named).collect()
}

fn price(job: &Job, of: String, name: Option<String>, stocked: &Stocked<'_>, writing: &Writing) -> StockPrice {
    let stock = match stocked {
        Stocked::Known(stock) => Some(*stock),
        Stocked::New { .. } => None,
    };
    let each = |length: f64| {
        let stock = stock?;
        let at = stock.lengths.iter().position(|own| (own - length).abs() < SAME_LENGTH)?;
        stock.prices.get(at).map(f64::to_string)
    };
    StockPrice {
        of,
        name,
        metre: stock.and_then(|stock| stock.price).map(|price| price.to_string()).unwrap_or_default(),
        lengths: stocked
            .lengths(job)
            .into_iter()
            .map(|length| (writing.length(length), each(length).unwrap_or_default()))
            .collect(),
        hint: if stock.is_none_or(|stock| stock.lengths.is_empty()) { dearer(job, writing) } else { String::new() },
        by_length: stock.is_some_and(|stock| !stock.prices.is_empty()),
        dated: stock.and_then(|stock| stock.dated.clone()).unwrap_or_default(),
    }
}

/// What is put on the price of a metre where lengths are long.
fn dearer(job: &Job, writing: &Writing) -> String {
    let Ok(region) = Region::of(&job.region) else { return String::new() };
    let (over, percent) = (writing.length(region.long.value), tenth(region.dearer.value * 100.0));
    writing.say(&format!(
        "Lengths over {over} are reckoned {percent} % dearer by the metre, as merchants mostly ask. Where yours does not, \
         price by the length."
    ))
}
