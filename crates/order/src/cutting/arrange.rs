//! In which order, and in which turns, pieces of given shapes take the least of a bar.

use super::model::Model;
use std::collections::BTreeMap;

/// How many of each shape.
pub(super) type Counts = Vec<u16>;

/// No arrangement.
const NEVER: i64 = i64::MAX / 4;

/// Most sets of shapes that are remembered; the others are arranged well and not as well as can be.
const MOST_SETS: usize = 30_000;

/// Least sums of gaps for sets of shapes, remembered.
#[derive(Debug, Default)]
pub(super) struct Arranger {
    /// For each set, the least sum of gaps by the kind of the last right end.
    known: BTreeMap<Counts, Vec<i64>>,
}

/// A shape in one of its turns: the kinds of its left and right end.
pub(super) type Placed = (usize, [usize; 2]);

impl Arranger {
    /// Least sum of all gaps between the pieces of a set, in units; none when the sets that would have to be looked at
    /// are too many.
    pub fn gaps(&mut self, model: &Model, set: &Counts) -> Option<i64> {
        if set.iter().all(|&n| n == 0) {
            return Some(0);
        }
        if !self.learn(model, set) {
            return None;
        }
        self.known.get(set).and_then(|by_end| by_end.iter().min().copied())
    }

    /// Fills in a set and all sets within it.
    fn learn(&mut self, model: &Model, set: &Counts) -> bool {
        if self.known.contains_key(set) {
            return true;
        }
        if self.known.len() >= MOST_SETS {
            return false;
        }
        let alone = set.iter().map(|&n| u32::from(n)).sum::<u32>() == 1;
        let mut best = vec![NEVER; model.ends.joins.len()];
        for shape in 0..set.len() {
            let Some(rest) = without(set, shape) else { continue };
            if !alone && !self.learn(model, &rest) {
                return false;
            }
            let before = if alone { None } else { self.known.get(&rest) };
            for &[left, right] in model.shapes.get(shape).into_iter().flatten() {
                let sum = match before {
                    None => 0,
                    Some(by_end) => least(model, by_end, left).0,
                };
                if let Some(slot) = best.get_mut(right) {
                    *slot = sum.min(*slot);
                }
            }
        }
        self.known.insert(set.clone(), best);
        true
    }

    /// The sum of gaps of [`Self::order`].
    pub fn gaps_in_order(&mut self, model: &Model, set: &Counts) -> Option<i64> {
        self.gaps(model, set).or_else(|| in_turn(model, set).map(|(sum, _)| sum))
    }

    /// The order from left to right that has the least sum of gaps; a good order when the least is not known.
    pub fn order(&mut self, model: &Model, set: &Counts) -> Option<Vec<Placed>> {
        let Some(mut sum) = self.gaps(model, set) else { return in_turn(model, set).map(|(_, order)| order) };
        let mut end = self.known.get(set).and_then(|by_end| by_end.iter().position(|&s| s == sum));
        let mut rest = set.clone();
        let mut order = Vec::new();
        while let Some(right) = end {
            let found = self.last(model, &rest, right, sum)?;
            order.push((found.0, found.1));
            rest = found.2;
            (end, sum) = (found.3, found.4);
        }
        order.reverse();
        Some(order)
    }

    /// A last piece with which a set that ends in this kind has this sum: its shape and turn, the rest, and how the
    /// rest ends.
    #[expect(clippy::type_complexity, reason = "one step of the way back, read in one place")]
    fn last(
        &self,
        model: &Model,
        set: &Counts,
        end: usize,
        sum: i64,
    ) -> Option<(usize, [usize; 2], Counts, Option<usize>, i64)> {
        for shape in 0..set.len() {
            let Some(rest) = without(set, shape) else { continue };
            for &kinds in model.shapes.get(shape).into_iter().flatten().filter(|kinds| kinds[1] == end) {
                if rest.iter().all(|&n| n == 0) {
                    return Some((shape, kinds, rest, None, 0));
                }
                let by_end = self.known.get(&rest)?;
                let (before, kind) = least(model, by_end, kinds[0]);
                if before == sum {
                    let left = by_end.get(kind).copied()?;
                    return Some((shape, kinds, rest, Some(kind), left));
                }
            }
        }
        None
    }
}

/// The best of the orders in which each piece is followed by the one that comes nearest to it.
fn in_turn(model: &Model, set: &Counts) -> Option<(i64, Vec<Placed>)> {
    let placed = |set: &Counts| -> Vec<Placed> {
        let open = model.shapes.iter().enumerate().filter(|(shape, _)| set.get(*shape).is_some_and(|&n| n > 0));
        open.flat_map(|(shape, turns)| turns.iter().map(move |&kinds| (shape, kinds))).collect()
    };
    let from = |first: Placed| {
        let (mut order, mut sum, mut rest) = (vec![first], 0, without(set, first.0)?);
        let mut end = first.1[1];
        while let Some(next) = placed(&rest).into_iter().min_by_key(|next| model.ends.between(end, next.1[0]).gap) {
            sum += model.ends.between(end, next.1[0]).gap;
            end = next.1[1];
            rest = without(&rest, next.0)?;
            order.push(next);
        }
        Some((sum, order))
    };
    placed(set).into_iter().filter_map(from).min_by_key(|(sum, _)| *sum)
}

/// The least sum before a left end, and the kind of right end before it.
fn least(model: &Model, by_end: &[i64], left: usize) -> (i64, usize) {
    by_end
        .iter()
        .enumerate()
        .filter(|(_, before)| **before < NEVER)
        .map(|(kind, before)| (before + model.ends.between(kind, left).gap, kind))
        .min()
        .unwrap_or((NEVER, 0))
}

fn without(set: &Counts, shape: usize) -> Option<Counts> {
    let n = *set.get(shape)?;
    let mut rest = set.clone();
    *rest.get_mut(shape)? = n.checked_sub(1)?;
    Some(rest)
}
