//! Plans that are good at once: one pattern after another, each as often as it can be.

use super::model::Model;
use super::patterns::{Ask, Pattern, Searcher};

/// Steps of the search for one pattern of one length.
const FUEL: u64 = 1_500;

/// What the length of a bar counts beside its cost, so that of lengths that cost nothing the shorter is taken.
const LENGTH_COUNTS: f64 = 1e-9;

/// Patterns with how often they are cut, and what they count together.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cutting {
    /// Patterns and how often.
    pub patterns: Vec<(Pattern, u32)>,
    /// The value of the aim.
    pub value: i64,
}

impl Cutting {
    /// With its value counted.
    pub fn of(model: &Model, patterns: Vec<(Pattern, u32)>) -> Self {
        let cost = |store: usize| model.stores.get(store).map_or(0, |store| store.cost);
        let value =
            patterns.iter().fold(0_i64, |sum, (p, n)| sum.saturating_add(cost(p.store).saturating_mul(i64::from(*n))));
        Self { patterns, value }
    }
}

/// The store in which room for a pattern costs least, of those that are left.
fn cheapest(model: &Model, left: &[u32], pattern: &Pattern, room: i64) -> usize {
    let clean = model.stores.get(pattern.store).is_some_and(|store| store.clean);
    let fits = model.stores.iter().enumerate().filter(|(n, store)| {
        store.usable >= room && store.clean == clean && left.get(*n).is_some_and(|&have| have > 0)
    });
    fits.min_by_key(|(n, store)| (store.cost, store.usable, *n)).map_or(pattern.store, |(n, _)| n)
}

/// Cuts everything by the patterns with the least cost for their value; none when something is left over.
pub(super) fn fill(searcher: &mut Searcher<'_>, values: &[f64]) -> Option<Cutting> {
    let model = searcher.model;
    let mut wanted: Vec<u32> = model.items.iter().map(|item| item.count).collect();
    let mut left: Vec<u32> = model.stores.iter().map(|store| store.have.unwrap_or(u32::MAX)).collect();
    let mut patterns: Vec<(Pattern, u32)> = Vec::new();
    while wanted.iter().any(|&n| n > 0) {
        searcher.value(values, &wanted);
        let mut best: Option<(f64, Pattern)> = None;
        for number in 0..model.stores.len() {
            if left.get(number).is_none_or(|&have| have == 0) {
                continue;
            }
            let Some(mut pattern) = searcher.search(number, Ask::Best, 0.0, FUEL).patterns.pop() else { continue };
            let Some(room) = searcher.room(&pattern.take) else { continue };
            pattern.store = cheapest(model, &left, &pattern, room);
            let Some(store) = model.stores.get(pattern.store) else { continue };
            let cost = store.cost as f64 + LENGTH_COUNTS * store.usable as f64;
            let ratio = cost / pattern.sum(values);
            if best.as_ref().is_none_or(|(known, _)| ratio < *known) {
                best = Some((ratio, pattern));
            }
        }
        let (_, pattern) = best?;
        let of = |list: &[u32], at: usize| list.get(at).copied().unwrap_or(0);
        let often = pattern.take.iter().map(|&(item, n)| of(&wanted, item) / u32::from(n.max(1))).min().unwrap_or(0);
        let often = often.min(of(&left, pattern.store));
        if often == 0 {
            return None;
        }
        for &(item, n) in &pattern.take {
            if let Some(count) = wanted.get_mut(item) {
                *count -= often * u32::from(n);
            }
        }
        if let Some(have) = left.get_mut(pattern.store) {
            *have -= often;
        }
        patterns.push((pattern, often));
    }
    Some(Cutting::of(model, patterns))
}

/// Values of items by what they take of a bar, long ones a little more so that they go first.
pub(super) fn by_length(model: &Model, long_first: f64) -> Vec<f64> {
    let most = model.stores.iter().map(|store| store.usable).max().unwrap_or(1).max(1) as f64;
    model.items.iter().map(|item| item.share as f64 * (1.0 + long_first * item.share as f64 / most)).collect()
}

/// Takes from patterns what is cut more often than it is wanted, and gives each the cheapest length for what is left.
pub(super) fn exact(searcher: &mut Searcher<'_>, patterns: &[(Pattern, u32)]) -> Option<Cutting> {
    let model = searcher.model;
    let mut wanted: Vec<u32> = model.items.iter().map(|item| item.count).collect();
    let mut left: Vec<u32> = model.stores.iter().map(|store| store.have.unwrap_or(u32::MAX)).collect();
    let mut bars: Vec<Pattern> = Vec::new();
    for (pattern, often) in patterns {
        for _ in 0..*often {
            let mut take = Vec::new();
            for &(item, n) in &pattern.take {
                let slot = wanted.get_mut(item)?;
                let n = u16::try_from((*slot).min(u32::from(n))).unwrap_or(n);
                *slot -= u32::from(n);
                if n > 0 {
                    take.push((item, n));
                }
            }
            if take.is_empty() {
                continue;
            }
            let clean = take.iter().any(|&(item, _)| model.items.get(item).is_some_and(|item| item.clean));
            if model.stores.get(pattern.store).is_some_and(|store| store.clean != clean) {
                return None;
            }
            bars.push(Pattern { store: pattern.store, take });
        }
    }
    if wanted.iter().any(|&n| n > 0) {
        return None;
    }
    // Those that were meant for a length keep their place in what there is of it until all have moved.
    for bar in &bars {
        let have = left.get_mut(bar.store)?;
        *have = have.checked_sub(1)?;
    }
    for bar in &mut bars {
        let room = searcher.room(&bar.take)?;
        if let Some(have) = left.get_mut(bar.store) {
            *have = have.saturating_add(1);
        }
        bar.store = cheapest(model, &left, bar, room);
        if room > model.stores.get(bar.store)?.usable {
            return None;
        }
        let have = left.get_mut(bar.store)?;
        *have = have.saturating_sub(1);
    }
    bars.sort();
    let mut grouped: Vec<(Pattern, u32)> = Vec::new();
    for bar in bars {
        match grouped.last_mut() {
            Some((known, often)) if *known == bar => *often += 1,
            _ => grouped.push((bar, 1)),
        }
    }
    Some(Cutting::of(model, grouped))
}
