//! Patterns: what can be cut from one length of stock. They are searched through item by item, with a bound on what
//! the rest of the bar can still bring; joins count exactly in every pattern that is given out.

use super::arrange::{Arranger, Counts};
use super::model::{Model, Store};

/// Steps in which the bound on the rest measures a bar; lengths are rounded down to them, so the bound stays one.
const STEPS: usize = 2048;

/// A value must be better by this part of itself to count as better.
const BETTER: f64 = 1e-9;

/// What is cut from one length.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Pattern {
    /// Its number in [`Model::stores`].
    pub store: usize,
    /// How many of each item, those it has.
    pub take: Vec<(usize, u16)>,
}

impl Pattern {
    /// Sum over what is cut.
    pub fn sum(&self, of: &[f64]) -> f64 {
        self.take.iter().map(|&(item, n)| of.get(item).copied().unwrap_or(0.0) * f64::from(n)).sum()
    }

    /// How many of an item it has.
    pub fn count(&self, item: usize) -> u16 {
        self.take.iter().find(|&&(of, _)| of == item).map_or(0, |&(_, n)| n)
    }
}

/// The order in which items are searched, for plain stock or for clean stock, and where searches begin.
#[derive(Debug)]
struct Family {
    order: Vec<usize>,
    /// First place, places of which one must be taken, and what the ends of the bar give back at most.
    starts: Vec<(usize, usize, i64)>,
}

impl Family {
    fn of(model: &Model, clean: bool) -> Self {
        let back = |i: usize| model.items.get(i).and_then(|it| model.back.get(it.shape)).copied().unwrap_or(0);
        let key = |i: usize| model.items.get(i).map_or((false, 0), |it| (it.clean, it.length));
        let mut order: Vec<usize> = (0..model.items.len()).filter(|&i| clean || !key(i).0).collect();
        if clean {
            order.sort_by_key(|&i| (std::cmp::Reverse(key(i)), i));
            let wanting = order.iter().filter(|&&i| key(i).0).count();
            let most = order.iter().map(|&i| back(i)).max().unwrap_or(0);
            return Self { starts: vec![(0, wanting, most)], order };
        }
        // What the ends of a bar give back is the most among its pieces: those that give back alike begin together.
        order.sort_by_key(|&i| (std::cmp::Reverse((back(i), key(i))), i));
        let mut starts: Vec<(usize, usize, i64)> = Vec::new();
        for (place, &item) in order.iter().enumerate() {
            match starts.last_mut() {
                Some(last) if last.2 == back(item) => last.1 = place + 1,
                _ => starts.push((place, place + 1, back(item))),
            }
        }
        Self { order, starts }
    }
}

/// What a search gave.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    /// No pattern of this store has more value.
    pub at_most: f64,
    /// What was found, the best last in a search for the best.
    pub patterns: Vec<Pattern>,
    /// Whether everything was searched.
    pub whole: bool,
}

/// What is asked of a search.
#[derive(Clone, Copy, Debug)]
pub(super) enum Ask {
    /// The most value over the threshold; those met on the way as well.
    Best,
    /// All patterns over the threshold that nothing can be added to, but no more than this.
    All(usize),
}

/// Searches patterns by the values of items.
#[derive(Debug)]
pub(super) struct Searcher<'a> {
    /// The problem.
    pub model: &'a Model,
    /// Arrangements that are known.
    pub arranger: Arranger,
    /// Steps of searches so far.
    pub work: u64,
    families: [Family; 2],
    values: Vec<f64>,
    limits: Vec<u32>,
    step: i64,
    /// By family and place: the most value of what comes from this place on, for each number of steps.
    rest: [Vec<Vec<f64>>; 2],
}

/// One walk through the patterns of a store.
struct Walk<'f> {
    family: usize,
    order: &'f [usize],
    must_before: usize,
    store: &'f Store,
    number: usize,
    ask: Ask,
    over: f64,
    fuel: u64,
    length: i64,
    set: Counts,
    take: Vec<(usize, u16)>,
    /// The most that what was not searched can be worth.
    left: f64,
    found: Found,
}

impl<'a> Searcher<'a> {
    /// For a problem.
    pub fn new(model: &'a Model) -> Self {
        let most = model.stores.iter().map(|store| store.usable).max().unwrap_or(0);
        let back = model.back.iter().copied().max().unwrap_or(0).max(0);
        Self {
            model,
            arranger: Arranger::default(),
            work: 0,
            families: [Family::of(model, false), Family::of(model, true)],
            values: Vec::new(),
            limits: Vec::new(),
            step: (most + 2 * back) / STEPS as i64 + 1,
            rest: [Vec::new(), Vec::new()],
        }
    }

    /// From now on items have these values (0 or more) and no pattern has more of an item than its limit.
    pub fn value(&mut self, values: &[f64], limits: &[u32]) {
        self.values = values.to_vec();
        self.limits = limits.to_vec();
        for family in 0..2 {
            let wanted = self.model.stores.iter().any(|store| store.clean == (family == 1));
            let rest = if wanted { self.rest_of(family) } else { Vec::new() };
            if let Some(slot) = self.rest.get_mut(family) {
                *slot = rest;
            }
        }
    }

    fn rest_of(&self, family: usize) -> Vec<Vec<f64>> {
        let order = self.families.get(family).map_or(&[][..], |f| &f.order);
        let mut tables = vec![vec![0.0; STEPS + 1]];
        for &item in order.iter().rev() {
            let (value, limit) = self.worth(item);
            let steps = usize::try_from(self.share(item) / self.step).unwrap_or(0);
            let after = tables.last().cloned().unwrap_or_default();
            let mut table = after.clone();
            if value > 0.0 {
                for (at, best) in table.iter_mut().enumerate() {
                    let known: &mut f64 = best;
                    let most = at.checked_div(steps).map_or(limit as usize, |room| room.min(limit as usize));
                    for n in 1..=most {
                        let rest = after.get(at - n * steps).copied().unwrap_or(0.0);
                        *known = known.max(rest + value * n as f64);
                    }
                }
            }
            tables.push(table);
        }
        tables.reverse();
        tables
    }

    fn worth(&self, item: usize) -> (f64, u32) {
        (self.values.get(item).copied().unwrap_or(0.0), self.limits.get(item).copied().unwrap_or(0))
    }

    fn share(&self, item: usize) -> i64 {
        self.model.items.get(item).map_or(i64::MAX / 4, |item| item.share)
    }

    fn at_most(&self, family: usize, place: usize, room: i64) -> f64 {
        let Ok(steps) = usize::try_from(room.div_euclid(self.step)) else { return f64::NEG_INFINITY };
        let table = self.rest.get(family).and_then(|tables| tables.get(place));
        table.and_then(|table| table.get(steps.min(STEPS))).copied().unwrap_or(0.0)
    }

    /// Searches the patterns of a store with a value over the threshold, in at most so many steps.
    pub fn search(&mut self, number: usize, ask: Ask, over: f64, fuel: u64) -> Found {
        let Some(store) = self.model.stores.get(number) else { return Found::default() };
        let family = usize::from(store.clean);
        let Some(Family { order, starts }) = self.families.get(family) else { return Found::default() };
        let (order, starts) = (order.clone(), starts.clone());
        let bound = |searcher: &Self| {
            let each = starts.iter().map(|&(first, _, back)| searcher.at_most(family, first, store.usable + 2 * back));
            each.fold(0.0, f64::max)
        };
        let mut walk = Walk {
            family,
            order: &order,
            must_before: 0,
            store,
            number,
            ask,
            over,
            fuel,
            length: 0,
            set: vec![0; self.model.shapes.len()],
            take: Vec::new(),
            left: 0.0,
            found: Found { whole: true, ..Found::default() },
        };
        for &(first, must_before, back) in &starts {
            walk.must_before = must_before;
            let room = store.usable + 2 * back;
            let most = self.at_most(family, first, room);
            self.walk(&mut walk, first, room, [0.0, most]);
        }
        self.work += fuel - walk.fuel;
        let best_possible = bound(self);
        walk.found.at_most = match ask {
            Ask::Best => walk.over.max(walk.left).min(best_possible),
            Ask::All(_) => best_possible,
        };
        walk.found
    }

    /// Takes the item at this place from none to as many as there is room for, the most promising number first. With the
    /// value of what was taken, and the most that it can become.
    fn walk(&mut self, walk: &mut Walk<'_>, place: usize, room: i64, [value, most_value]: [f64; 2]) {
        if walk.fuel == 0 {
            walk.found.whole = false;
            walk.left = walk.left.max(most_value);
            return;
        }
        walk.fuel -= 1;
        let Some(&item) = walk.order.get(place) else { return self.leaf(walk, value) };
        if place >= walk.must_before && walk.take.is_empty() {
            return;
        }
        let (worth, limit) = self.worth(item);
        let (share, Some((shape, length))) =
            (self.share(item), self.model.items.get(item).map(|item| (item.shape, item.length)))
        else {
            return;
        };
        let most = u16::try_from((room / share).clamp(0, i64::from(limit))).unwrap_or(u16::MAX);
        let mut ways: Vec<(f64, u16)> = (0..=most)
            .map(|n| {
                let rest = self.at_most(walk.family, place + 1, room - share * i64::from(n));
                (value + worth * f64::from(n) + rest, n)
            })
            .filter(|&(bound, _)| walk.may_beat(bound))
            .collect();
        ways.sort_by(|a, b| b.0.total_cmp(&a.0).then(b.1.cmp(&a.1)));
        for (bound, n) in ways {
            if !walk.may_beat(bound) {
                continue;
            }
            let slot = walk.set.get(shape).copied().unwrap_or(0);
            let added = length * i64::from(n);
            if n > 0 {
                walk.put(shape, slot + n);
                walk.length += added;
                walk.take.push((item, n));
            }
            if n == 0 || !self.model.monotone || self.fits(walk) {
                self.walk(walk, place + 1, room - share * i64::from(n), [value + worth * f64::from(n), bound]);
            }
            if n > 0 {
                walk.put(shape, slot);
                walk.length -= added;
                walk.take.pop();
            }
        }
    }

    /// Whether what a walk has taken can be cut from its store; yes when that cannot be told.
    fn fits(&mut self, walk: &Walk<'_>) -> bool {
        self.arranger.gaps(self.model, &walk.set).is_none_or(|gaps| walk.length + gaps <= walk.store.usable)
    }

    fn leaf(&mut self, walk: &mut Walk<'_>, value: f64) {
        if walk.take.is_empty() || !walk.may_beat(value) {
            return;
        }
        match self.arranger.gaps(self.model, &walk.set) {
            // It cannot be told whether this is a pattern: the bound must allow for it, and it is given out when some
            // order of it is one.
            None => {
                walk.found.whole = false;
                walk.left = walk.left.max(value);
                let gaps = self.arranger.gaps_in_order(self.model, &walk.set);
                if gaps.is_some_and(|gaps| walk.length + gaps <= walk.store.usable) {
                    walk.over = walk.over.max(value);
                    walk.give();
                }
            }
            Some(gaps) if walk.length + gaps > walk.store.usable => {}
            Some(_) => match walk.ask {
                Ask::Best => {
                    walk.over = value;
                    walk.give();
                }
                Ask::All(most) if walk.found.patterns.len() >= most => {
                    walk.found.whole = false;
                    walk.fuel = 0;
                }
                Ask::All(_) => {
                    if self.full(walk) {
                        walk.give();
                    }
                }
            },
        }
    }

    /// Whether no item that may be anywhere can be added.
    fn full(&mut self, walk: &Walk<'_>) -> bool {
        let mut set = walk.set.clone();
        let model = self.model;
        for (number, item) in model.items.iter().enumerate().filter(|(_, item)| !item.clean) {
            let taken = walk.take.iter().find(|&&(of, _)| of == number).map_or(0, |&(_, n)| u32::from(n));
            if taken >= self.worth(number).1 || walk.length + item.length > walk.store.usable {
                continue;
            }
            let Some(slot) = set.get_mut(item.shape) else { continue };
            *slot += 1;
            let gaps = self.arranger.gaps(model, &set);
            if let Some(slot) = set.get_mut(item.shape) {
                *slot -= 1;
            }
            if gaps.is_some_and(|gaps| walk.length + item.length + gaps <= walk.store.usable) {
                return false;
            }
        }
        true
    }

    /// Room that a pattern needs, in units; none when it cannot be told.
    pub fn room(&mut self, take: &[(usize, u16)]) -> Option<i64> {
        let mut set: Counts = vec![0; self.model.shapes.len()];
        let mut length = 0;
        for &(item, n) in take {
            let item = self.model.items.get(item)?;
            length += item.length * i64::from(n);
            *set.get_mut(item.shape)? += n;
        }
        Some(length + self.arranger.gaps_in_order(self.model, &set)?)
    }
}

impl Walk<'_> {
    fn may_beat(&self, bound: f64) -> bool {
        bound > self.over + BETTER * self.over.abs()
    }

    fn put(&mut self, shape: usize, n: u16) {
        if let Some(slot) = self.set.get_mut(shape) {
            *slot = n;
        }
    }

    fn give(&mut self) {
        let mut take = self.take.clone();
        take.sort_unstable();
        self.found.patterns.push(Pattern { store: self.number, take });
    }
}
