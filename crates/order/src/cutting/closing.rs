//! From the bound to a plan in whole lengths.

use super::bound::{Bound, Costs};
use super::greedy::{Cutting, exact};
use super::model::Model;
use super::patterns::{Ask, Pattern, Searcher};
use microlp::{ComparisonOp, OptimizationDirection, Problem, SolutionStatus, SolveOptions, Variable};

/// Nodes of a search over the patterns that the bound made.
const NODES_FIRST: u64 = 60;

/// Nodes of a search over all patterns that can be in a better plan.
const NODES_ALL: u64 = 1_500;

/// Most patterns of a search.
const MOST_PATTERNS: usize = 4_000;

/// Steps of the search for all patterns of one length.
const FUEL: u64 = 400_000;

/// Rounding allowed when patterns are left out because they cost too much, in the scale of the program.
const ROUNDING: f64 = 1e-6;

/// The best of these patterns in whole numbers, and whether nothing better can be made of them.
fn whole(
    searcher: &mut Searcher<'_>,
    costs: &Costs,
    patterns: &[Pattern],
    below: i64,
    nodes: u64,
) -> (Option<Cutting>, bool) {
    let model = searcher.model;
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let most = |pattern: &Pattern| {
        let each =
            pattern.take.iter().filter_map(|&(item, n)| Some(model.items.get(item)?.count.div_ceil(u32::from(n))));
        let have = model.stores.get(pattern.store).and_then(|store| store.have).unwrap_or(u32::MAX);
        i32::try_from(each.max().unwrap_or(0).min(have)).unwrap_or(i32::MAX)
    };
    let cost = |pattern: &Pattern| costs.each.get(pattern.store).copied().unwrap_or(0.0);
    let often: Vec<Variable> = patterns.iter().map(|p| problem.add_integer_var(cost(p), (0, most(p)))).collect();
    for (number, item) in model.items.iter().enumerate() {
        let row: Vec<(Variable, f64)> = often
            .iter()
            .zip(patterns)
            .map(|(variable, pattern)| (*variable, f64::from(pattern.count(number))))
            .filter(|(_, n)| *n > 0.0)
            .collect();
        // What makes a bar clean is not cut twice and left out of one of them.
        let relation = if item.clean { ComparisonOp::Eq } else { ComparisonOp::Ge };
        problem.add_constraint(row, relation, f64::from(item.count));
    }
    for (number, store) in model.stores.iter().enumerate() {
        let Some(have) = store.have else { continue };
        let of = often.iter().zip(patterns).filter(|(_, pattern)| pattern.store == number);
        let row: Vec<(Variable, f64)> = of.map(|(variable, _)| (*variable, 1.0)).collect();
        problem.add_constraint(row, ComparisonOp::Le, f64::from(have));
    }
    let mut options = SolveOptions::default();
    options.node_limit = Some(nodes);
    let _ = below;
    match problem.solve_with(options) {
        Ok(outcome) => {
            let Ok(solution) = outcome.into_solution() else { return (None, false) };
            let times =
                |variable: &Variable| solution.var_value(*variable).round().clamp(0.0, f64::from(u32::MAX)) as u32;
            let taken: Vec<(Pattern, u32)> = patterns
                .iter()
                .zip(&often)
                .map(|(pattern, variable)| (pattern.clone(), times(variable)))
                .filter(|(_, n)| *n > 0)
                .collect();
            let best = solution.status() == SolutionStatus::Optimal;
            (exact(searcher, &taken), best)
        }
        Err(microlp::Error::Infeasible) => (None, true),
        Err(_) => (None, false),
    }
}

/// Betters a plan until it is shown to be the best, or until the work set for it is done; with the bound that is shown.
pub(super) fn close(searcher: &mut Searcher<'_>, costs: &Costs, bound: &Bound, start: Cutting) -> (Cutting, i64) {
    let mut best = start;
    let mut at_least = bound.at_least;
    if best.value <= at_least {
        return (best, at_least);
    }
    let dear = |model: &Model, pattern: &Pattern| {
        let cost = costs.each.get(pattern.store).copied().unwrap_or(0.0);
        let dearer = bound.worths.stores.get(pattern.store).copied().unwrap_or(0.0);
        debug_assert!(pattern.store < model.stores.len());
        cost + dearer - pattern.sum(&bound.worths.items)
    };
    let room = |best: &Cutting| costs.scaled(best.value) - bound.exact + ROUNDING;
    let model = searcher.model;
    let near: Vec<Pattern> = bound.patterns.iter().filter(|p| dear(model, p) <= room(&best)).cloned().collect();
    if let (Some(found), _) = whole(searcher, costs, &near, best.value, NODES_FIRST)
        && found.value < best.value
    {
        best = found;
    }
    if best.value <= at_least {
        return (best, at_least);
    }
    if let Some(all) = within(searcher, costs, bound, room(&best)) {
        let (found, whole) = whole(searcher, costs, &all, best.value, NODES_ALL);
        if let Some(found) = found
            && found.value < best.value
        {
            best = found;
        }
        if whole {
            at_least = best.value;
        }
    }
    (best, at_least)
}

/// All patterns that a plan within this of the bound can have; none when they are too many.
fn within(searcher: &mut Searcher<'_>, costs: &Costs, bound: &Bound, room: f64) -> Option<Vec<Pattern>> {
    let model = searcher.model;
    let limits: Vec<u32> = model.items.iter().map(|item| item.count).collect();
    searcher.value(&bound.worths.items, &limits);
    let mut all: Vec<Pattern> = Vec::new();
    for (number, cost) in costs.each.iter().enumerate() {
        let over = cost + bound.worths.stores.get(number).copied().unwrap_or(0.0) - room;
        let found = searcher.search(number, Ask::All(MOST_PATTERNS), over.max(-1.0), FUEL);
        if !found.whole {
            return None;
        }
        let store = model.stores.get(number)?;
        for pattern in found.patterns {
            let needs = searcher.room(&pattern.take)?;
            // A length that costs no more and of which there is no end takes its place.
            let better = model.stores.iter().enumerate().any(|(n, other)| {
                n != number
                    && other.have.is_none()
                    && other.clean == store.clean
                    && other.usable >= needs
                    && (other.cost, n) < (store.cost, number)
            });
            if !better {
                all.push(pattern);
            }
        }
        if all.len() > MOST_PATTERNS {
            return None;
        }
    }
    Some(all)
}
