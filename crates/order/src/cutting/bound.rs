//! The lower bound. A linear program sets what each item is worth, so that no pattern is worth more than its length
//! costs; what all items are worth then is a cost below which no plan can be. Patterns are made as they are found to
//! be worth too much.
//!
//! The program is solved by a library whose answers are not taken on trust: whatever worths it gives, the bound is
//! counted from them by a search of all patterns, after they are scaled down until no pattern is worth more than it
//! costs (Farley 1990, "A note on bounding a class of linear programming problems"). A wrong answer can make the bound
//! low; it cannot make it false.

use super::greedy::Cutting;
use super::model::Model;
use super::patterns::{Ask, Pattern, Searcher};
use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, SolveOptions, Variable};
use std::collections::BTreeSet;

/// What the dearest length costs in the linear program.
pub(super) const SCALE: f64 = 100.0;

/// A worth that stands for no limit, in the scale of the program: a hundred of the dearest lengths.
const NO_LIMIT: f64 = 100.0 * SCALE;

/// A pattern is worth too much past this, in the scale of the program.
const TOO_MUCH: f64 = 1e-6;

/// Rounds of the program.
const ROUNDS: usize = 400;

/// How far from the best worths known towards those of the program patterns are looked for.
const TOWARDS: f64 = 0.4;

/// Steps of the search of one length: at first, and when that finds nothing more.
const FUEL: [u64; 2] = [1_500, 60_000];

/// Patterns of a length that are added at once.
const OF_EACH: usize = 2;

/// Patterns that are added in a round.
const EACH_ROUND: usize = 10;

/// Steps of all searches for the bound.
const MOST_WORK: u64 = 1_500_000;

/// Into how many units the cost of a length is divided at most when a bound is rounded up.
const MOST_PARTS: i64 = 60;

/// Part of the bound that rounding of its sums can be.
const SUMS: f64 = 1e-9;

/// What items are worth, and lengths of which there are only so many.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Worths {
    /// Of items.
    pub items: Vec<f64>,
    /// By which the lengths are dearer than they cost, because there are so few.
    pub stores: Vec<f64>,
}

/// The bound and how it was come by.
#[derive(Clone, Debug, Default)]
pub(super) struct Bound {
    /// No plan has a smaller value of the aim.
    pub at_least: i64,
    /// The same before it is rounded up to a value that there can be, in the scale of the program.
    pub exact: f64,
    /// The worths that give it, in the scale of the program.
    pub worths: Worths,
    /// Patterns that were made.
    pub patterns: Vec<Pattern>,
}

/// Costs in the scale of the program, and values that there can be.
#[derive(Clone, Debug)]
pub(super) struct Costs {
    /// By store.
    pub each: Vec<f64>,
    money: Vec<i64>,
    scale: f64,
    lattice: i64,
}

impl Costs {
    /// Of a problem.
    pub fn of(model: &Model) -> Self {
        let most = model.stores.iter().map(|store| store.cost).max().unwrap_or(0).max(1) as f64;
        let scale = SCALE / most;
        let lattice = model.stores.iter().map(|store| store.cost).fold(0, common);
        let money = model.stores.iter().map(|store| store.cost).collect();
        Self { each: model.stores.iter().map(|store| store.cost as f64 * scale).collect(), money, scale, lattice }
    }

    /// The least value that there can be from this one on: values are sums of costs.
    pub fn up(&self, bound: f64) -> i64 {
        let value = bound / self.scale;
        let whole = ((value - SUMS * value.abs() - 1e-3).ceil() as i64).max(0);
        let lattice = self.lattice.max(1);
        whole.saturating_add(lattice - 1) / lattice * lattice
    }

    /// The same, when what a sum of costs can be is looked at more closely. Whatever the unit, as many units as each
    /// length costs, rounded up, are together at least as many as the bound is, rounded up (a Gomory cut of rank one):
    /// with a length of 300 mm as the unit that rounds a bound up to whole steps of length even when prices are not
    /// quite in step with it.
    pub fn up_by_units(&self, bound: f64) -> i64 {
        let value = bound / self.scale;
        let value = value - SUMS * value.abs() - 1e-3;
        let costs: Vec<i64> = self.money.iter().copied().filter(|cost| *cost > 0).collect();
        let mut best = value;
        for &unit in &costs {
            for parts in 1..=MOST_PARTS {
                let units = |cost: i64| cost.saturating_mul(parts).saturating_add(unit - 1) / unit;
                let worst = costs.iter().map(|&cost| cost as f64 / units(cost) as f64).fold(f64::INFINITY, f64::min);
                let whole = (value * parts as f64 / unit as f64 - SUMS).ceil();
                best = best.max(whole * worst * (1.0 - SUMS));
            }
        }
        self.up(best * self.scale).max(self.up(bound))
    }

    /// The value below which a bound must stay for a better plan than one of this value to be possible, in the scale
    /// of the program.
    pub fn below(&self, value: i64) -> f64 {
        self.scaled(value.saturating_sub(self.lattice.max(1))) * (1.0 + SUMS) + self.scale * 0.01
    }

    /// A value in the scale of the program.
    pub fn scaled(&self, value: i64) -> f64 {
        value as f64 * self.scale
    }
}

/// The greatest common divisor.
pub(super) fn common(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { common(b, a % b) }
}

/// The program: worths of items and lengths, and the patterns that hold them down.
struct Program<'a> {
    model: &'a Model,
    costs: &'a Costs,
    items: Vec<Variable>,
    stores: Vec<Option<Variable>>,
    rows: Vec<Pattern>,
    known: BTreeSet<Pattern>,
    solution: Option<Solution>,
}

impl<'a> Program<'a> {
    fn new(model: &'a Model, costs: &'a Costs) -> Self {
        Self {
            model,
            costs,
            items: Vec::new(),
            stores: Vec::new(),
            rows: Vec::new(),
            known: BTreeSet::new(),
            solution: None,
        }
    }

    fn row(&self, pattern: &Pattern) -> (Vec<(Variable, f64)>, f64) {
        let worth = |&(item, n): &(usize, u16)| Some((*self.items.get(item)?, f64::from(n)));
        let mut row: Vec<(Variable, f64)> = pattern.take.iter().filter_map(worth).collect();
        if let Some(Some(store)) = self.stores.get(pattern.store) {
            row.push((*store, -1.0));
        }
        (row, self.costs.each.get(pattern.store).copied().unwrap_or(0.0))
    }

    /// Solves it from nothing.
    fn solve(&mut self) -> Option<()> {
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let limit = |item| {
            let may = |(store, _): &(&super::model::Store, &f64)| store.have.is_none() && self.model.may(item, store);
            let costs = self.model.stores.iter().zip(&self.costs.each).filter(may).map(|(_, cost)| *cost);
            costs.fold(NO_LIMIT, f64::min)
        };
        self.items = self.model.items.iter().map(|it| problem.add_var(f64::from(it.count), (0.0, limit(it)))).collect();
        let store = |store: &super::model::Store| {
            store.have.map(|have| problem.add_var(-f64::from(have.min(1_000_000)), (0.0, NO_LIMIT)))
        };
        self.stores = self.model.stores.iter().map(store).collect();
        for pattern in &self.rows {
            let (row, most) = self.row(pattern);
            problem.add_constraint(row, ComparisonOp::Le, most);
        }
        let mut options = SolveOptions::default();
        options.presolve = false;
        self.solution = problem.solve_with(options).ok()?.into_solution().ok();
        self.solution.as_ref().map(|_| ())
    }

    /// Holds the worths down by one more pattern.
    fn add(&mut self, pattern: Pattern) -> Option<()> {
        if !self.known.insert(pattern.clone()) {
            return Some(());
        }
        let (row, most) = self.row(&pattern);
        self.rows.push(pattern);
        match self.solution.take()?.add_constraint(row, ComparisonOp::Le, most).map(|outcome| outcome.into_solution()) {
            Ok(Ok(solution)) => self.solution = Some(solution),
            _ => self.solve()?,
        }
        Some(())
    }

    fn worths(&self) -> Option<Worths> {
        let solution = self.solution.as_ref()?;
        let value = |variable: &Variable| {
            let value = solution.var_value(*variable);
            if value.is_finite() { value.clamp(0.0, NO_LIMIT) } else { 0.0 }
        };
        Some(Worths {
            items: self.items.iter().map(value).collect(),
            stores: self.stores.iter().map(|store| store.as_ref().map_or(0.0, value)).collect(),
        })
    }
}

/// The bound that any worths give, from the most that a pattern of each length can be worth: worths are scaled down
/// until no length that can be bought is worth more than it costs, and lengths of which there are only so many are made
/// as much dearer as they are worth.
fn counted(model: &Model, costs: &Costs, worths: &[f64], most: &[f64]) -> (f64, Worths) {
    let stores = || model.stores.iter().zip(&costs.each).zip(most);
    let bought = stores().filter(|((store, _), _)| store.have.is_none());
    // A length that costs nothing and of which there is no end holds every worth down to nothing.
    let part = bought.map(|((_, cost), most)| if *most > *cost { cost / most } else { 1.0 }).fold(1.0, f64::min);
    let items: Vec<f64> = worths.iter().map(|worth| worth * part).collect();
    let dearer: Vec<f64> =
        stores().map(|((store, cost), most)| store.have.map_or(0.0, |_| (most * part - cost).max(0.0))).collect();
    let sum: f64 = model.items.iter().zip(&items).map(|(item, worth)| f64::from(item.count) * worth).sum();
    let given: f64 = stores().zip(&dearer).map(|(((store, _), _), d)| f64::from(store.have.unwrap_or(0)) * d).sum();
    (sum - given, Worths { items, stores: dearer })
}

/// Between two lists of worths.
fn between(from: &Worths, to: &Worths, part: f64) -> Worths {
    let mix = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a + part * (b - a)).collect();
    Worths { items: mix(&from.items, &to.items), stores: mix(&from.stores, &to.stores) }
}

/// What a search of all lengths gave: the most that a pattern of each can be worth, patterns, and whether the fuel did.
struct Priced {
    most: Vec<f64>,
    patterns: Vec<Pattern>,
    whole: bool,
}

/// Searches the patterns of all lengths that are worth more than the length costs.
fn price(searcher: &mut Searcher<'_>, costs: &Costs, at: &Worths, limits: &[u32], fuel: u64) -> Priced {
    searcher.value(&at.items, limits);
    let mut priced = Priced { most: Vec::new(), patterns: Vec::new(), whole: true };
    for (number, cost) in costs.each.iter().enumerate() {
        let over = (cost + at.stores.get(number).copied().unwrap_or(0.0)).max(0.0);
        let found = searcher.search(number, Ask::Best, over, fuel);
        priced.most.push(found.at_most * (1.0 + SUMS));
        priced.whole &= found.whole;
        // The last ones are worth most; a few of them do.
        priced.patterns.extend(found.patterns.into_iter().rev().take(OF_EACH));
    }
    priced
}

/// The bound of a problem, until it shows that a plan is the best or until it cannot rise.
pub(super) fn bound(searcher: &mut Searcher<'_>, costs: &Costs, known: &[Cutting]) -> Bound {
    let model = searcher.model;
    let best_known = known.iter().map(|cutting| cutting.value).min().unwrap_or(i64::MAX);
    let limits: Vec<u32> = model.items.iter().map(|item| item.count).collect();
    let mut program = Program::new(model, costs);
    for (pattern, _) in known.iter().flat_map(|cutting| &cutting.patterns) {
        if program.known.insert(pattern.clone()) {
            program.rows.push(pattern.clone());
        }
    }
    // To begin with, what an item takes of a bar is what it is worth.
    let dearest = model.stores.iter().zip(&costs.each).map(|(store, cost)| cost / store.usable.max(1) as f64);
    let dearest = dearest.fold(0.0, f64::max);
    let mut at = Worths {
        items: model.items.iter().map(|item| item.share as f64 * dearest).collect(),
        stores: vec![0.0; model.stores.len()],
    };
    let mut best = Bound { exact: f64::NEG_INFINITY, ..Bound::default() };
    let (mut part, mut fuel) = (TOWARDS, FUEL[0]);
    let before = searcher.work;
    if program.solve().is_none() {
        return Bound { patterns: program.rows, ..Bound::default() };
    }
    for _ in 0..ROUNDS {
        let priced = price(searcher, costs, &at, &limits, fuel);
        let (exact, worths) = counted(model, costs, &at.items, &priced.most);
        if exact > best.exact {
            (best.exact, best.worths, best.at_least) = (exact, worths, costs.up(exact));
        }
        let Some(now) = program.worths() else { break };
        let top = program.solution.as_ref().map_or(f64::INFINITY, Solution::objective);
        if best.at_least >= best_known || best.at_least >= costs.up(top) || searcher.work - before > MOST_WORK {
            break;
        }
        let too_much = |pattern: &Pattern| {
            let cost = costs.each.get(pattern.store).copied().unwrap_or(0.0);
            pattern.sum(&now.items) - cost - now.stores.get(pattern.store).copied().unwrap_or(0.0)
        };
        let mut fresh: Vec<(f64, Pattern)> = priced.patterns.into_iter().map(|p| (too_much(&p), p)).collect();
        fresh.retain(|(by, _)| *by > TOO_MUCH);
        // Nothing at the worths of the program itself: they are the best, as far as this fuel can tell.
        if fresh.is_empty() && part >= 1.0 {
            if priced.whole || fuel >= FUEL[1] {
                break;
            }
            fuel = FUEL[1];
        } else {
            part = if fresh.is_empty() { 1.0 } else { TOWARDS };
        }
        fresh.sort_by(|a, b| b.0.total_cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
        for (_, pattern) in fresh.into_iter().take(EACH_ROUND) {
            if program.add(pattern).is_none() {
                break;
            }
        }
        let Some(now) = program.worths() else { break };
        at = between(&best.worths, &now, part);
    }
    best.at_least = costs.up_by_units(best.exact.max(0.0));
    best.patterns = program.rows;
    best
}
