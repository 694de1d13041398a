//! From the bound to a plan in whole lengths.

use super::bound::{Bound, Costs, Worths, common};
use super::greedy::{Cutting, exact};
use super::model::Model;
use super::patterns::{Ask, Pattern, Searcher};
use super::rows::Row;
use super::tree::Tree;
use microlp::{ComparisonOp, OptimizationDirection, Problem, SolutionStatus, SolveOptions, Variable};

/// Work of all searches for a plan in whole lengths: nodes times patterns.
const WORK: u64 = 300_000;

/// What a node costs beside its patterns, in patterns.
const EACH_NODE: u64 = 20;

/// How far from the bound patterns are looked for, as a part of the gap: a narrow search gives a better plan, with
/// which the gap to search is smaller.
const PARTS: [f64; 3] = [0.15, 0.45, 1.0];

/// Which share of the work that is left goes to each try.
const SHARES: [u64; 3] = [12, 6, 2];

/// Most patterns of a search.
const MOST_PATTERNS: usize = 4_000;

/// Steps of one search for all patterns of all lengths.
const FUEL: u64 = 600_000;

/// Rounding allowed when patterns are left out because they cost too much, in the scale of the program.
const ROUNDING: f64 = 1e-6;

/// A pattern that may be in a better plan, and how often it can be in it.
#[derive(Clone, Debug)]
struct Choice {
    pattern: Pattern,
    /// How much more it costs than it is worth, in the scale of the bound.
    dear: f64,
}

/// Patterns with how much more each costs than it is worth.
fn choices(costs: &Costs, worths: &Worths, patterns: Vec<Pattern>) -> Vec<Choice> {
    let of = |list: &[f64], at: usize| list.get(at).copied().unwrap_or(0.0);
    let dear = |p: &Pattern| of(&costs.each, p.store) + of(&worths.stores, p.store) - p.sum(&worths.items);
    patterns.into_iter().map(|pattern| Choice { dear: dear(&pattern).max(0.0), pattern }).collect()
}

/// A good plan of these patterns that costs at most `room` more than the bound, and whether the library has searched
/// them all. It is a way to a better plan; what it says about the best is not used ([`prove`]).
fn whole(searcher: &mut Searcher<'_>, choices: &[Choice], room: f64, nodes: u64) -> (Option<Cutting>, bool) {
    let model = searcher.model;
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let lattice = model.stores.iter().map(|store| store.cost).fold(0, common).max(1);
    let have = |store: usize| model.stores.get(store).and_then(|store| store.have).unwrap_or(u32::MAX);
    let cost = |store: usize| model.stores.get(store).map_or(0.0, |store| (store.cost / lattice) as f64);
    let mut often: Vec<Variable> = Vec::new();
    for choice in choices {
        often.push(problem.add_integer_var(0.0, (0, i32::try_from(most(model, choice, room)).unwrap_or(i32::MAX))));
    }
    for (number, item) in model.items.iter().enumerate() {
        let row: Vec<(Variable, f64)> = often
            .iter()
            .zip(choices)
            .map(|(variable, choice)| (*variable, f64::from(choice.pattern.count(number))))
            .filter(|(_, n)| *n > 0.0)
            .collect();
        // What makes a bar clean is not cut twice and left out of one of them.
        let relation = if item.clean { ComparisonOp::Eq } else { ComparisonOp::Ge };
        problem.add_constraint(row, relation, f64::from(item.count));
    }
    // The number of bars of each length is a whole number of its own, and the best to divide the search by.
    for number in 0..model.stores.len() {
        let of = often.iter().zip(choices).filter(|(_, choice)| choice.pattern.store == number);
        let mut row: Vec<(Variable, f64)> = of.map(|(variable, _)| (*variable, 1.0)).collect();
        if row.is_empty() {
            continue;
        }
        let bars = problem.add_integer_var(cost(number), (0, i32::try_from(have(number)).unwrap_or(i32::MAX)));
        row.push((bars, -1.0));
        problem.add_constraint(row, ComparisonOp::Eq, 0.0);
    }
    let mut options = SolveOptions::default();
    options.node_limit = Some(nodes);
    match problem.solve_with(options) {
        Ok(outcome) => {
            let Ok(solution) = outcome.into_solution() else { return (None, false) };
            let times =
                |variable: &Variable| solution.var_value(*variable).round().clamp(0.0, f64::from(u32::MAX)) as u32;
            let taken: Vec<(Pattern, u32)> = choices
                .iter()
                .zip(&often)
                .map(|(choice, variable)| (choice.pattern.clone(), times(variable)))
                .filter(|(_, n)| *n > 0)
                .collect();
            let best = solution.status() == SolutionStatus::Optimal;
            (exact(searcher, &taken), best)
        }
        Err(microlp::Error::Infeasible) => (None, true),
        Err(_) => (None, false),
    }
}

/// Betters a plan until it is shown to be the best, or until the work set for it is done (of a proof: patterns times
/// rows of all programs); with the bound that is shown, and whether all patterns that matter were looked at.
pub(super) fn close(
    searcher: &mut Searcher<'_>,
    costs: &Costs,
    bound: &Bound,
    start: Cutting,
    proof: u64,
) -> (Cutting, i64, bool) {
    let mut best = start;
    let at_least = bound.at_least;
    if best.value <= at_least {
        return (best, at_least, true);
    }
    let room = |best: &Cutting| costs.scaled(best.value) - bound.exact + ROUNDING;
    let mut work = WORK.min(proof);
    for part in PARTS {
        let radius = room(&best) * part;
        let all = within(searcher, costs, bound, radius);
        let complete = all.is_some();
        if !complete && part >= 1.0 {
            break;
        }
        // When they are too many, those that the bound made have to do for a better plan; they prove nothing.
        let mut near = choices(costs, &bound.worths, all.unwrap_or_else(|| bound.patterns.clone()));
        near.retain(|choice| choice.dear <= radius);
        // A better plan leaves fewer patterns, and the search is tried again with those.
        for share in SHARES {
            let room = room(&best);
            near.retain(|choice| choice.dear <= room);
            let nodes = ((work / share) / (near.len() as u64 + EACH_NODE)).max(10);
            let (found, done) = whole(searcher, &near, room, nodes);
            work -= work / share;
            let before = best.value;
            best = found.filter(|found| found.value < before).unwrap_or(best);
            if best.value <= at_least {
                return (best, at_least, true);
            }
            if done || best.value == before {
                break;
            }
        }
        let room = room(&best);
        near.retain(|choice| choice.dear <= room);
        let whole = complete && radius >= room;
        let work = if whole { proof } else { proof / 16 };
        let (found, shown) = prove(searcher, costs, &near, room, best, work);
        best = found;
        if whole {
            return (best, at_least.max(shown), true);
        }
        if best.value <= at_least {
            return (best, at_least, true);
        }
    }
    (best, at_least, false)
}

/// Searches all patterns of plans that are better, and gives the best plan with the bound that is shown.
fn prove(
    searcher: &mut Searcher<'_>,
    costs: &Costs,
    choices: &[Choice],
    room: f64,
    start: Cutting,
    work: u64,
) -> (Cutting, i64) {
    let model = searcher.model;
    let times = |choice: &Choice, item: usize| f64::from(choice.pattern.count(item));
    let mut rows = Vec::new();
    for (number, item) in model.items.iter().enumerate() {
        let each: Vec<f64> = choices.iter().map(|choice| times(choice, number)).collect();
        if item.clean {
            let less = each.iter().map(|n| -n).collect();
            rows.push(Row { each: less, least: -f64::from(item.count), stays: true });
        }
        rows.push(Row { each, least: f64::from(item.count), stays: true });
    }
    for (number, store) in model.stores.iter().enumerate() {
        let Some(have) = store.have else { continue };
        let each = choices.iter().map(|choice| if choice.pattern.store == number { -1.0 } else { 0.0 }).collect();
        rows.push(Row { each, least: -f64::from(have), stays: true });
    }
    let mut tree = Tree {
        costs: choices.iter().map(|c| costs.each.get(c.pattern.store).copied().unwrap_or(0.0)).collect(),
        stores: choices.iter().map(|choice| choice.pattern.store).collect(),
        most: choices.iter().map(|choice| f64::from(most(model, choice, room))).collect(),
        rows,
        work,
    };
    let mut best = start;
    let first = costs.below(best.value);
    let left = tree.search(first, |times| {
        let taken = choices.iter().zip(times).filter(|(_, n)| **n > 0).map(|(c, n)| (c.pattern.clone(), *n));
        let found = exact(searcher, &taken.collect::<Vec<_>>());
        if let Some(found) = found.filter(|found| found.value < best.value) {
            best = found;
        }
        costs.below(best.value)
    });
    let shown = if left.is_finite() { costs.up(left).min(best.value) } else { best.value };
    (best, shown)
}

/// How often a pattern can be in a plan that costs at most `room` more than the bound.
fn most(model: &Model, choice: &Choice, room: f64) -> u32 {
    let item = |&(item, n): &(usize, u16)| Some(model.items.get(item)?.count.div_ceil(u32::from(n)));
    let each = choice.pattern.take.iter().filter_map(item).max().unwrap_or(0);
    let have = model.stores.get(choice.pattern.store).and_then(|store| store.have).unwrap_or(u32::MAX);
    // So many times what it is too dear is all that a better plan can be above the bound.
    let room = if choice.dear > ROUNDING { (room / choice.dear).floor().min(1e6) as u32 } else { u32::MAX };
    each.min(have).min(room)
}

/// All patterns that a plan within this of the bound can have; none when they are too many.
fn within(searcher: &mut Searcher<'_>, costs: &Costs, bound: &Bound, room: f64) -> Option<Vec<Pattern>> {
    let model = searcher.model;
    let limits: Vec<u32> = model.items.iter().map(|item| item.count).collect();
    searcher.value(&bound.worths.items, &limits);
    let mut all: Vec<Pattern> = Vec::new();
    let before = searcher.work;
    for (number, cost) in costs.each.iter().enumerate() {
        let fuel = FUEL.saturating_sub(searcher.work - before);
        let over = cost + bound.worths.stores.get(number).copied().unwrap_or(0.0) - room;
        let found = searcher.search(number, Ask::All(MOST_PATTERNS), over.max(-1.0), fuel);
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
