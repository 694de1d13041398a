//! The proof in whole numbers: over all patterns that a better plan could have, branch by branch, until every branch is
//! shown to hold nothing better.
//!
//! The linear programs are solved by a library; its answers are not taken on trust. From the times it gives to the
//! patterns a basis is made, and from the basis what each row is worth; the bound of a branch is counted from these
//! worths over all patterns, and it is a bound whatever the worths are.

use super::rows::{Basis, Row, moved, rounded};
use microlp::{ComparisonOp, Error, OptimizationDirection, Problem, SolveOptions};

/// Rounds in which rows are added to the first branch, and to the others.
const ROUNDS: [usize; 2] = [40, 4];

/// Rows added in a round.
const EACH_ROUND: usize = 12;

/// Most rows that are kept beside those of the problem.
const MOST_ADDED: usize = 60;

/// A row with more surplus than this is left out again.
const LOOSE: f64 = 1e-6;

/// Times within this of a whole number are whole.
const WHOLE: f64 = 1e-6;

/// Times within this of a limit are at it.
const FULL: f64 = 2e-8;

/// Part of a bound that rounding of its sums can be.
const SUMS: f64 = 1e-9;

/// What a row costs that is met by no pattern, in the scale of the program: more than any plan would pay for it.
const PRICE: f64 = 1e4;

/// A bound must rise by this in three rounds for more to follow, in the scale of the program.
const RISES: f64 = 0.02;

/// A search over patterns.
#[derive(Debug)]
pub(super) struct Tree {
    /// Cost of each pattern, in the scale of the program.
    pub costs: Vec<f64>,
    /// Kind of length of each pattern.
    pub stores: Vec<usize>,
    /// How often each can be cut at most.
    pub most: Vec<f64>,
    /// What must be met.
    pub rows: Vec<Row>,
    /// Work that is left: patterns times rows of every program.
    pub work: u64,
}

/// A branch: rows that hold in it, and how often patterns can be cut in it.
#[derive(Clone, Debug)]
struct Branch {
    bound: f64,
    rows: Vec<Row>,
    most: Vec<f64>,
}

/// What a branch came to.
enum Came {
    /// Nothing better is in it.
    Closed,
    /// Divided by a row that holds in one part and another that holds in the other.
    Divided(Branch, [Row; 2]),
    /// All whole: how often each pattern is cut.
    Plan(Branch, Vec<u32>),
    /// The work is done, or the library has no answer.
    Open(Branch),
}

impl Tree {
    /// Searches all branches for plans below a value; gives each to `found`, which answers with the new value to stay
    /// below. Returns a bound of everything that was searched, in the scale of the program: infinite when nothing is
    /// left.
    pub fn search(&mut self, mut below: f64, mut found: impl FnMut(&[u32]) -> f64) -> f64 {
        let mut open = vec![Branch { bound: f64::NEG_INFINITY, rows: self.rows.clone(), most: self.most.clone() }];
        let mut first = true;
        let mut left_open = f64::INFINITY;
        // The branch with the lowest bound is next: it must be searched in any case.
        while let Some(at) = lowest(&open) {
            let branch = open.swap_remove(at);
            if branch.bound >= below {
                continue;
            }
            let rounds = if first { ROUNDS[0] } else { ROUNDS[1] };
            first = false;
            match self.visit(branch, below, rounds) {
                Came::Closed => {}
                Came::Open(branch) => left_open = left_open.min(branch.bound),
                Came::Plan(branch, times) => {
                    below = below.min(found(&times));
                    if branch.bound < below {
                        left_open = left_open.min(branch.bound);
                    }
                }
                Came::Divided(branch, parts) => {
                    for row in parts {
                        let mut part = branch.clone();
                        part.rows.push(row);
                        open.push(part);
                    }
                }
            }
            if self.work == 0 {
                return open.iter().map(|branch| branch.bound).fold(left_open, f64::min);
            }
        }
        left_open
    }

    fn visit(&mut self, mut branch: Branch, below: f64, rounds: usize) -> Came {
        let own = self.rows.len();
        let mut history: Vec<f64> = Vec::new();
        for round in 0..=rounds {
            let cost = (self.costs.len() * (branch.rows.len() + 10)) as u64;
            let Some(work) = self.work.checked_sub(cost) else {
                self.work = 0;
                return Came::Open(branch);
            };
            self.work = work;
            let near = match self.times(&branch, false) {
                Ok(Some(times)) => times,
                Ok(None) => return self.without(branch, below),
                Err(()) => return Came::Open(branch),
            };
            let limits = limits(&branch);
            let basis = Basis::of(&branch.rows, &near, &limits);
            let full: Vec<bool> =
                near.iter().zip(&limits).map(|(x, most)| *most > 0.0 && (x - most).abs() <= FULL).collect();
            let times = basis.times(&branch.rows, &branch.most, &full);
            let worths = basis.worths(&self.costs, PRICE);
            let (bound, most) = self.count(&branch, &worths, below);
            branch.bound = branch.bound.max(bound);
            if branch.bound >= below {
                return Came::Closed;
            }
            branch.most = most;
            if times.iter().all(|x| (x - x.round()).abs() <= WHOLE) {
                let whole = times.iter().map(|x| x.round().max(0.0) as u32).collect();
                return Came::Plan(branch, whole);
            }
            history.push(branch.bound);
            let rises =
                history.len() < 4 || history.get(history.len() - 4).is_some_and(|before| branch.bound > before + RISES);
            let fresh = if round < rounds && rises { self.fresh(&branch, &basis, &times) } else { Vec::new() };
            if fresh.is_empty() {
                return self.divide(branch, &times);
            }
            if branch.rows.len() > own + MOST_ADDED / 2 {
                branch.rows.retain(|row| row.stays || row.sum(&times) - row.least <= LOOSE);
            }
            let room = (own + MOST_ADDED).saturating_sub(branch.rows.len());
            branch.rows.extend(fresh.into_iter().take(room));
        }
        Came::Open(branch)
    }

    /// How often each pattern is cut at the least cost, in parts; and how much of each row is met at a price, when rows
    /// may be.
    fn times(&self, branch: &Branch, at_a_price: bool) -> Result<Option<Vec<f64>>, ()> {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let mut variables: Vec<_> =
            self.costs.iter().zip(limits(branch)).map(|(cost, most)| problem.add_var(*cost, (0.0, most))).collect();
        for (number, row) in branch.rows.iter().enumerate() {
            let mut each: Vec<_> =
                variables.iter().zip(&row.each).filter(|(_, a)| **a != 0.0).map(|(v, a)| (*v, *a)).collect();
            if at_a_price {
                let met = problem.add_var(PRICE, (0.0, f64::INFINITY));
                variables.push(met);
                each.push((met, 1.0));
            }
            problem.add_constraint(each, ComparisonOp::Ge, row.least - moved(number));
        }
        let mut options = SolveOptions::default();
        options.presolve = false;
        match problem.solve_with(options).map(|outcome| outcome.into_solution()) {
            Ok(Ok(solution)) => {
                let times: Vec<f64> = variables.iter().map(|v| solution.var_value(*v)).collect();
                if times.iter().all(|x| x.is_finite()) { Ok(Some(times)) } else { Err(()) }
            }
            Err(Error::Infeasible) => Ok(None),
            _ => Err(()),
        }
    }

    /// The bound that worths of rows give, and how often patterns can be cut in a plan below a value.
    fn count(&self, branch: &Branch, worths: &[f64], below: f64) -> (f64, Vec<f64>) {
        let mut bound: f64 = branch.rows.iter().zip(worths).map(|(row, worth)| row.least * worth).sum();
        let dear: Vec<f64> = (0..self.costs.len())
            .map(|j| {
                let worth: f64 = branch
                    .rows
                    .iter()
                    .zip(worths)
                    .map(|(row, worth)| row.each.get(j).copied().unwrap_or(0.0) * worth)
                    .sum();
                self.costs.get(j).copied().unwrap_or(0.0) - worth
            })
            .collect();
        bound += dear.iter().zip(&branch.most).map(|(dear, most)| dear.min(0.0) * most).sum::<f64>();
        bound -= SUMS * bound.abs();
        let room = below - bound + SUMS * below.abs();
        let limit =
            |(dear, most): (&f64, &f64)| if *dear > WHOLE { most.min((room / dear).floor().max(0.0)) } else { *most };
        let most = dear.iter().zip(&branch.most).map(limit).collect();
        (bound, most)
    }

    /// A branch of which the library says that nothing is in it: what its rows are worth when they can also be met at
    /// a price that no plan would pay shows that, or it stays open.
    fn without(&self, branch: Branch, below: f64) -> Came {
        let Ok(Some(times)) = self.times(&branch, true) else { return Came::Open(branch) };
        let worths = Basis::of(&branch.rows, &times, &limits(&branch)).worths(&self.costs, PRICE);
        if self.count(&branch, &worths, below).0 >= below { Came::Closed } else { Came::Open(branch) }
    }

    /// Rows that these times miss, those that are missed furthest first.
    fn fresh(&self, branch: &Branch, basis: &Basis, times: &[f64]) -> Vec<Row> {
        let mut found: Vec<(f64, Row)> = Vec::new();
        let mut try_with = |multipliers: &[f64]| {
            for sign in [1.0, -1.0] {
                found.extend(rounded(&branch.rows, multipliers, sign, times));
            }
        };
        let parts = |x: f64| (x - x.round()).abs() > WHOLE;
        let of = |pattern: &Option<usize>| pattern.and_then(|j| Some((j, *times.get(j)?)));
        let mut by_store: std::collections::BTreeMap<usize, (f64, Vec<f64>)> = std::collections::BTreeMap::new();
        for (pattern, row) in basis.pattern.iter().zip(&basis.inverse) {
            let Some((j, x)) = of(pattern) else { continue };
            if parts(x) {
                try_with(row);
            }
            let store = by_store.entry(self.stores.get(j).copied().unwrap_or(0)).or_insert((0.0, vec![0.0; row.len()]));
            store.0 += x;
            store.1.iter_mut().zip(row).for_each(|(sum, t)| *sum += t);
        }
        for (sum, row) in by_store.into_values() {
            if parts(sum) {
                try_with(&row);
            }
        }
        found.sort_by(|a, b| b.0.total_cmp(&a.0));
        found.dedup_by(|a, b| a.1 == b.1);
        found.into_iter().take(EACH_ROUND).map(|(_, row)| row).collect()
    }

    /// Divides a branch by how many of one kind of length there are, or by how often one pattern is cut.
    fn divide(&self, branch: Branch, times: &[f64]) -> Came {
        let mut sums: std::collections::BTreeMap<usize, f64> = std::collections::BTreeMap::new();
        for (store, x) in self.stores.iter().zip(times) {
            *sums.entry(*store).or_default() += x;
        }
        let halfway = |x: f64| (x - x.floor() - 0.5).abs();
        let nearest = |all: &mut dyn Iterator<Item = (usize, f64)>| {
            all.filter(|(_, x)| (x - x.round()).abs() > WHOLE).min_by(|a, b| halfway(a.1).total_cmp(&halfway(b.1)))
        };
        let one = |on: &dyn Fn(usize) -> bool| -> Vec<f64> {
            (0..times.len()).map(|j| if on(j) { 1.0 } else { 0.0 }).collect()
        };
        let divided = if let Some((store, x)) = nearest(&mut sums.into_iter()) {
            Some((one(&|j| self.stores.get(j) == Some(&store)), x))
        } else {
            nearest(&mut times.iter().copied().enumerate()).map(|(pattern, x)| (one(&|j| j == pattern), x))
        };
        let Some((each, x)) = divided else { return Came::Open(branch) };
        let more = Row { each: each.clone(), least: x.ceil(), stays: true };
        let fewer = Row { each: each.into_iter().map(|a| -a).collect(), least: -x.floor(), stays: true };
        Came::Divided(branch, [more, fewer])
    }
}

/// How often patterns can be cut, moved a little.
fn limits(branch: &Branch) -> Vec<f64> {
    let limit =
        |(number, most): (usize, &f64)| if *most > 0.0 { most + moved(branch.rows.len() + number) } else { 0.0 };
    branch.most.iter().enumerate().map(limit).collect()
}

fn lowest(open: &[Branch]) -> Option<usize> {
    open.iter().enumerate().min_by(|a, b| a.1.bound.total_cmp(&b.1.bound)).map(|(at, _)| at)
}
