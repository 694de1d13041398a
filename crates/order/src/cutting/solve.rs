//! From the problem in whole numbers to the best cutting that is found, and the bound.

use super::bound::{self, Bound, Costs};
use super::closing::close;
use super::greedy::{Cutting, by_length, exact, fill};
use super::model::Model;
use super::patterns::{Pattern, Searcher};

/// How much a long piece is preferred in the plans that are tried first: not, a little, and much.
const LONG_FIRST: [f64; 3] = [0.0, 0.3, 1.0];

/// Added to what an item is worth, in the scale of the bound, so that one that is worth nothing is cut as well.
const WORTH_CUTTING: f64 = 1e-6;

/// Pieces of the bars that are cut anew together.
const GROUP: usize = 18;

/// Bars that are cut anew together, at most.
const GROUP_BARS: usize = 8;

/// Groups that are tried after the last that was bettered, and in all.
const TRIES: [usize; 2] = [6, 30];

/// Steps of the searches for all groups.
const MOST_WORK: u64 = 4_000_000;

/// Work of the proofs of a problem, and of a group of bars.
pub(super) const PROOFS: [u64; 2] = [4_000_000, 150_000];

/// A good cutting with its value, and a value below which there is none; nothing when the stock does not do.
pub(super) fn solve(searcher: &mut Searcher<'_>) -> Option<(Cutting, i64)> {
    let costs = Costs::of(searcher.model);
    let (bound, mut best) = start(searcher, &costs)?;
    if best.value <= bound.at_least {
        return Some((best, bound.at_least));
    }
    let closed = close(searcher, &costs, &bound, best, PROOFS[0]);
    best = closed.0;
    if best.value <= closed.1 || closed.2 {
        return Some((best, closed.1));
    }
    // There were too many patterns to search them all. A better plan leaves fewer.
    let before = best.value;
    best = regrouped(searcher, &costs, &bound, best);
    if best.value <= bound.at_least || best.value == before {
        return Some((best, closed.1));
    }
    let closed = close(searcher, &costs, &bound, best, PROOFS[0]);
    Some((closed.0, closed.1))
}

/// The bound, and the best of the plans that are good at once.
fn start(searcher: &mut Searcher<'_>, costs: &Costs) -> Option<(Bound, Cutting)> {
    let model = searcher.model;
    let mut known: Vec<Cutting> = Vec::new();
    for first in LONG_FIRST {
        if let Some(cutting) = fill(searcher, &by_length(model, first)) {
            known.extend(exact(searcher, &cutting.patterns));
        }
    }
    let bound = bound::bound(searcher, costs, &known);
    if !known.iter().any(|cutting| cutting.value <= bound.at_least) && !bound.worths.items.is_empty() {
        let worths: Vec<f64> = bound.worths.items.iter().map(|worth| worth + WORTH_CUTTING).collect();
        if let Some(cutting) = fill(searcher, &worths) {
            known.extend(exact(searcher, &cutting.patterns));
        }
    }
    Some((bound, known.into_iter().min_by_key(|cutting| cutting.value)?))
}

/// Betters a plan a few bars at a time: the most wasteful with some others are cut anew as a problem of their own.
fn regrouped(searcher: &mut Searcher<'_>, costs: &Costs, bound: &Bound, start: Cutting) -> Cutting {
    let model = searcher.model;
    let mut bars: Vec<Pattern> =
        start.patterns.iter().flat_map(|(p, n)| std::iter::repeat_n(p.clone(), *n as usize)).collect();
    let mut value = start.value;
    let (mut tries, mut seed) = (TRIES[0], 1_u64);
    let before = searcher.work;
    for _ in 0..TRIES[1] {
        if tries == 0 || value <= bound.at_least || searcher.work - before > MOST_WORK {
            break;
        }
        tries -= 1;
        let group = group(model, costs, bound, &mut bars, &mut seed);
        let (chosen, rest) = bars.split_at(group);
        let old = Cutting::of(model, chosen.iter().map(|p| (p.clone(), 1)).collect()).value;
        let Some(new) = anew(searcher, chosen, rest).filter(|new| new.value < old) else { continue };
        value -= old - new.value;
        let fresh = new.patterns.into_iter().flat_map(|(p, n)| std::iter::repeat_n(p, n as usize));
        bars = fresh.chain(rest.to_vec()).collect();
        tries = TRIES[0];
    }
    let patterns: Vec<(Pattern, u32)> = bars.into_iter().map(|bar| (bar, 1)).collect();
    exact(searcher, &patterns).filter(|better| better.value < start.value).unwrap_or(start)
}

/// Puts the bars of the next group first and says how many they are: the dearest for what they are worth, each with a
/// chance, then any others.
fn group(model: &Model, costs: &Costs, bound: &Bound, bars: &mut [Pattern], seed: &mut u64) -> usize {
    let mut next = || {
        *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (*seed >> 40) as f64 / (1_u64 << 24) as f64
    };
    let dear = |bar: &Pattern| costs.each.get(bar.store).copied().unwrap_or(0.0) - bar.sum(&bound.worths.items);
    let most = bars.iter().map(dear).fold(0.0, f64::max);
    let mut keyed: Vec<(f64, Pattern)> = bars.iter().map(|bar| (next() * most + dear(bar), bar.clone())).collect();
    keyed.sort_by(|a, b| b.0.total_cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
    bars.iter_mut().zip(keyed).for_each(|(slot, (_, bar))| *slot = bar);
    let pieces = |bar: &Pattern| bar.take.iter().map(|&(_, n)| usize::from(n)).sum::<usize>();
    let mut sum = 0;
    let fits = bars.iter().take(GROUP_BARS).take_while(|bar| {
        sum += pieces(bar);
        sum <= GROUP
    });
    debug_assert_eq!(model.items.len(), bound.worths.items.len());
    fits.count().max(2).min(bars.len())
}

/// The best cutting of the pieces of some bars, from stock that the rest leaves.
fn anew(searcher: &mut Searcher<'_>, chosen: &[Pattern], rest: &[Pattern]) -> Option<Cutting> {
    let model = searcher.model;
    let mut counts = vec![0_u32; model.items.len()];
    for &(item, n) in chosen.iter().flat_map(|bar| &bar.take) {
        *counts.get_mut(item)? += u32::from(n);
    }
    let mut part = model.clone_to_solve();
    for (number, store) in part.stores.iter_mut().enumerate() {
        let taken = rest.iter().filter(|bar| bar.store == number).count();
        store.have = store.have.map(|have| have.saturating_sub(u32::try_from(taken).unwrap_or(u32::MAX)));
    }
    let kept: Vec<usize> = (0..counts.len()).filter(|&n| counts.get(n).is_some_and(|&count| count > 0)).collect();
    part.items = kept
        .iter()
        .filter_map(|&n| Some(super::model::Item { count: *counts.get(n)?, ..model.items.get(n)?.clone() }))
        .collect();
    let mut inner = Searcher::new(&part);
    std::mem::swap(&mut inner.arranger, &mut searcher.arranger);
    let costs = Costs::of(&part);
    let found = start(&mut inner, &costs).map(|(bound, best)| {
        if best.value <= bound.at_least { best } else { close(&mut inner, &costs, &bound, best, PROOFS[1]).0 }
    });
    std::mem::swap(&mut inner.arranger, &mut searcher.arranger);
    searcher.work += inner.work;
    let mut found = found?;
    for (pattern, _) in &mut found.patterns {
        for (item, _) in &mut pattern.take {
            *item = *kept.get(*item)?;
        }
    }
    Some(found)
}
