//! Where along a timber its splices stand.

use core::cell::OnceCell;
use std::collections::VecDeque;

/// Splices are looked for at every so many mm from the foot, and abreast of
/// everything that the timber touches: finer than matters to a splice, coarse
/// enough that a long board is planned in well under a millisecond.
const STEP: f64 = 10.0;

/// How many splices more than the fewest are tried before giving up.
const SPARE: usize = 3;

/// What one timber offers to its splices, along its own length, mm.
#[derive(Clone, Debug, Default)]
pub struct Ground {
    /// Where its wood starts and ends.
    pub reach: [f64; 2],
    /// Where no splice may reach: other cuts, and what is in the way.
    pub closed: Vec<[f64; 2]>,
    /// Where no middle of a splice may lie: beside a neighbour's.
    pub beside: Vec<[f64; 2]>,
    /// Places worth trying beside those at every step.
    pub hints: Vec<f64>,
}

/// How long splices and pieces are, mm.
#[derive(Clone, Copy, Debug)]
pub struct Lengths {
    /// Length of a splice.
    pub splice: f64,
    /// Longest piece to be had.
    pub longest: f64,
    /// Shortest wood between a splice and an end or the next splice.
    pub least: f64,
}

impl Lengths {
    /// Shortest piece with a splice at one end.
    pub fn least_end(&self) -> f64 {
        self.splice + self.least
    }

    /// Shortest piece with a splice at both ends.
    pub fn least_middle(&self) -> f64 {
        2.0 * self.splice + self.least
    }
}

/// The middles of the splices, from the foot: as few as can be, and of those
/// the ones that cost least.
pub fn choose(ground: &Ground, lengths: &Lengths, cost: impl Fn(f64) -> f64) -> Option<Vec<f64>> {
    let [start, end] = ground.reach;
    let half = lengths.splice / 2.0;
    // Where no middle may lie, as stretches that do not overlap.
    let widened = ground.closed.iter().map(|[a, b]| [a - half, b + half]);
    let shut = merged(widened.chain(ground.beside.iter().copied()).collect());
    let open = |c: f64| {
        let next = shut.partition_point(|[a, _]| *a < c);
        next == 0 || c >= shut[next - 1][1]
    };
    let steps = ((end - start) / STEP) as usize;
    let mut spots: Vec<f64> = (1..steps).map(|k| start + STEP * k as f64).collect();
    spots.extend(&ground.hints);
    spots.retain(|c| open(*c));
    spots.sort_by(f64::total_cmp);
    spots.dedup();
    // Most spots are too far from an end for any splice: what they cost is never asked.
    let known: Vec<OnceCell<f64>> = vec![OnceCell::new(); spots.len()];
    let costs = |i: usize| *known[i].get_or_init(|| cost(spots[i]));
    let gain = lengths.longest - lengths.splice;
    if gain <= 0.0 {
        return None;
    }
    let fewest = (((end - start - lengths.splice) / gain).ceil() as usize).max(2) - 1;
    (fewest..=fewest + SPARE).find_map(|count| cheapest(&spots, &costs, ground.reach, lengths, count))
}

/// Stretches (open ones) joined where they overlap, in order.
pub fn merged(mut stretches: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    stretches.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut out: Vec<[f64; 2]> = Vec::with_capacity(stretches.len());
    for [a, b] in stretches {
        match out.last_mut() {
            Some(last) if a < last[1] => last[1] = last[1].max(b),
            _ => out.push([a, b]),
        }
    }
    out
}

/// The cheapest way to place so many splices.
fn cheapest(
    spots: &[f64],
    costs: &dyn Fn(usize) -> f64,
    [start, end]: [f64; 2],
    lengths: &Lengths,
    count: usize,
) -> Option<Vec<f64>> {
    let half = lengths.splice / 2.0;
    let fits = |piece: f64, least: f64| piece >= least && piece <= lengths.longest;
    // best[j][i]: cost of j + 1 splices, the last of them at spot i, and where
    // the one before it stands.
    let mut best: Vec<Vec<(f64, usize)>> = Vec::with_capacity(count);
    let can_be_last = |c: f64| fits(end - c + half, lengths.least_end());
    let first = spots.iter().enumerate().map(|(i, c)| {
        let fits = fits(c + half - start, lengths.least_end()) && (count > 1 || can_be_last(*c));
        (if fits { costs(i) } else { f64::INFINITY }, usize::MAX)
    });
    best.push(first.collect());
    for j in 1..count {
        let before = &best[j - 1];
        // The spots that the one before may stand at move on with this one:
        // the cheapest of them is kept at the front of a queue.
        let mut queue: VecDeque<usize> = VecDeque::new();
        let (mut from, mut to) = (0, 0);
        let mut row = Vec::with_capacity(spots.len());
        for (i, c) in spots.iter().enumerate() {
            while to < i && c - spots[to] + lengths.splice >= lengths.least_middle() {
                while queue.back().is_some_and(|k| before[*k].0 > before[to].0) {
                    queue.pop_back();
                }
                queue.push_back(to);
                to += 1;
            }
            while from < i && c - spots[from] + lengths.splice > lengths.longest {
                from += 1;
            }
            while queue.front().is_some_and(|k| *k < from) {
                queue.pop_front();
            }
            let cheapest = queue.front().map_or((f64::INFINITY, usize::MAX), |k| (before[*k].0, *k));
            let reached = cheapest.0.is_finite() && (j + 1 < count || can_be_last(*c));
            row.push((if reached { cheapest.0 + costs(i) } else { f64::INFINITY }, cheapest.1));
        }
        best.push(row);
    }
    let last = best.last()?;
    let (mut sum, mut at) = (f64::INFINITY, usize::MAX);
    for (i, c) in spots.iter().enumerate() {
        if can_be_last(*c) && last[i].0 < sum {
            (sum, at) = (last[i].0, i);
        }
    }
    if !sum.is_finite() {
        return None;
    }
    let mut out = vec![0.0; count];
    for j in (0..count).rev() {
        out[j] = *spots.get(at)?;
        at = best[j][at].1;
    }
    Some(out)
}

/// How much a beam bends at a point, from 0 over its supports and ends to 1 in
/// the middle between its only two; `supports` are those in between, in order. A beam that runs
/// on over a support bends little for a quarter of the span beside it.
pub fn bending(at: f64, [start, end]: [f64; 2], supports: &[f64]) -> f64 {
    let inner = |s: &&f64| **s > start && **s < end;
    let (below, above) = supports.split_at(supports.partition_point(|s| *s <= at));
    let left = below.iter().rev().find(inner).copied().unwrap_or(start);
    let right = above.iter().find(inner).copied().unwrap_or(end);
    let span = right - left;
    if span <= 0.0 {
        return 0.0;
    }
    let t = (at - left) / span;
    let simple = 4.0 * t * (1.0 - t);
    let beside = |s: f64, is_end: bool| if is_end { f64::INFINITY } else { 2.0 * (at - s).abs() / span };
    simple.min(beside(left, left == start)).min(beside(right, right == end))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ground(length: f64) -> Ground {
        Ground { reach: [0.0, length], ..Ground::default() }
    }

    const LENGTHS: Lengths = Lengths { splice: 600.0, longest: 4200.0, least: 150.0 };

    fn pieces(length: f64, at: &[f64]) -> Vec<f64> {
        let half = LENGTHS.splice / 2.0;
        let starts = core::iter::once(0.0).chain(at.iter().map(|c| c - half));
        let ends = at.iter().map(|c| c + half).chain(core::iter::once(length));
        starts.zip(ends).map(|(a, b)| b - a).collect()
    }

    #[test]
    fn pieces_are_as_few_as_the_stock_allows() {
        for length in [4300.0, 7800.0, 7801.0, 11_399.0, 20_000.0] {
            let at = choose(&ground(length), &LENGTHS, |_| 1.0).expect("there is room");
            let fewest = ((length - 600.0) / 3600.0_f64).ceil() as usize;
            assert!(at.len() + 1 == fewest || at.len() == fewest, "{length}: {at:?}");
            assert!(pieces(length, &at).iter().all(|p| *p <= 4200.0 + 1e-9), "{length}: {at:?}");
        }
    }

    #[test]
    fn the_cheapest_place_is_taken() {
        let at = choose(&ground(6000.0), &LENGTHS, |c| (c - 3500.0).abs()).expect("there is room");
        assert_eq!(at, [3500.0]);
        let closed = Ground { closed: vec![[3400.0, 3450.0]], ..ground(6000.0) };
        let at = choose(&closed, &LENGTHS, |c| (c - 3500.0).abs()).expect("there is room");
        assert_eq!(at, [3750.0]);
    }

    #[test]
    fn neighbours_keep_apart() {
        let beside = Ground { beside: vec![[2900.0, 4100.0]], ..ground(6000.0) };
        let at = choose(&beside, &LENGTHS, |c| (c - 3500.0).abs()).expect("there is room");
        assert_eq!(at, [2900.0]);
    }

    #[test]
    fn stock_that_is_too_short_finds_no_place() {
        let short = Lengths { longest: 1200.0, ..LENGTHS };
        assert!(choose(&ground(6000.0), &short, |_| 1.0).is_none());
    }

    #[test]
    fn a_beam_bends_most_midway_and_least_at_supports() {
        assert_eq!(bending(2000.0, [0.0, 4000.0], &[]), 1.0);
        assert_eq!(bending(2000.0, [0.0, 4000.0], &[2000.0]), 0.0);
        assert_eq!(bending(2500.0, [0.0, 6000.0], &[2000.0, 4000.0]), 0.5);
    }
}
