//! Which part of a roof a timber belongs to: each ridge with what leans on it is one part; main parts come first.

use super::super::graph::{Graph, Timber};
use roof::solution::MemberKind;
use std::collections::BTreeMap;
use strength::carrying::is_rafter;

/// A contact below this share of a timber's length is at its foot.
const FOOT_SHARE: f64 = 0.4;

/// The parts of a roof.
#[derive(Debug)]
pub struct Systems {
    /// For each timber, the number of its part; parts are numbered in the order of work.
    pub of: Vec<usize>,
    /// For each timber, the first length of the spliced timber that it belongs to.
    pub chain: Vec<usize>,
    /// For each timber, whether the rafters below end against it and those above stand on it.
    pub pitch_break: Vec<bool>,
    /// How many parts.
    pub count: usize,
}

/// Order of a part: storey, then height, then length.
#[derive(Clone, Copy, Debug)]
struct Key {
    storey: u8,
    height: f64,
    length: f64,
    chain: usize,
}

/// Sort the timbers into parts.
pub fn systems(graph: &Graph<'_>) -> Systems {
    let chain: Vec<usize> = (0..graph.timbers.len()).map(|k| first_length(graph, k)).collect();
    let pitch_break: Vec<bool> = (0..graph.timbers.len()).map(|k| is_break(graph, k)).collect();
    let any_break = pitch_break.iter().any(|b| *b);
    let mut keys: BTreeMap<usize, Key> = BTreeMap::new();
    for (k, t) in graph.timbers.iter().enumerate().filter(|(_, t)| t.kind() == MemberKind::RidgeBoard) {
        let storey = storey(graph, t, &pitch_break);
        let key = keys.entry(chain[k]).or_insert(Key { storey, height: t.origin.z, length: 0.0, chain: chain[k] });
        key.length += t.length;
        key.storey = key.storey.max(storey);
    }
    let mut order: Vec<Key> = keys.into_values().collect();
    order.sort_by(|a, b| {
        a.storey
            .cmp(&b.storey)
            .then(b.height.total_cmp(&a.height))
            .then(b.length.total_cmp(&a.length))
            .then(a.chain.cmp(&b.chain))
    });
    let shift = usize::from(any_break);
    let number: BTreeMap<usize, usize> = order.iter().enumerate().map(|(n, key)| (key.chain, n + shift)).collect();
    let count = order.len() + shift;
    let mut of: Vec<Option<usize>> = (0..graph.timbers.len())
        .map(|k| if pitch_break[k] { Some(0) } else { number.get(&chain[k]).copied() })
        .collect();
    let count = dormers(graph, &mut of, count);
    by_head(graph, &mut of, |t| is_rafter(t.kind()));
    by_least(graph, &mut of, |t| t.kind() == MemberKind::Trimmer);
    by_head(graph, &mut of, |t| t.kind() == MemberKind::HipRafter);
    by_most(graph, &mut of, |t| matches!(t.kind(), MemberKind::ValleyRafter | MemberKind::LayBoard));
    for _ in 0..4 {
        by_most(graph, &mut of, |t| is_rafter(t.kind()) || t.kind() == MemberKind::HipRafter);
    }
    by_least(graph, &mut of, |t| t.kind() == MemberKind::Purlin);
    for _ in 0..4 {
        by_most(graph, &mut of, |t| {
            !matches!(t.kind(), MemberKind::WallPlate | MemberKind::CeilingJoist) || !t.on_wall
        });
    }
    Systems { of: of.into_iter().map(|s| s.unwrap_or(count)).collect(), chain, pitch_break, count: count + 1 }
}

fn first_length(graph: &Graph<'_>, k: usize) -> usize {
    let mut at = k;
    // No timber has more lengths than there are timbers.
    for _ in 0..graph.timbers.len() {
        match graph.timbers.get(at).and_then(|t| t.before) {
            Some(before) => at = before,
            None => break,
        }
    }
    at
}

fn is_break(graph: &Graph<'_>, k: usize) -> bool {
    let Some(me) = graph.timbers.get(k).filter(|t| t.kind() == MemberKind::Purlin) else { return false };
    let stands = |at_foot: bool| {
        me.contacts.iter().filter_map(|c| graph.timbers.get(c.other)).any(|t| {
            is_rafter(t.kind())
                && t.contacts
                    .iter()
                    .any(|c| c.other == k && c.endways && (c.reach[0] < FOOT_SHARE * t.length) == at_foot)
        })
    };
    stands(true) && stands(false)
}

/// 0 on walls, 1 on a break of pitch, 2 on the plates of a dormer.
fn storey(graph: &Graph<'_>, ridge: &Timber<'_>, pitch_break: &[bool]) -> u8 {
    let mut least = None;
    for rafter in ridge.contacts.iter().filter_map(|c| graph.timbers.get(c.other)).filter(|t| is_rafter(t.kind())) {
        for foot in rafter.contacts.iter().filter(|c| c.reach[0] < FOOT_SHARE * rafter.length) {
            let Some(under) = graph.timbers.get(foot.other) else { continue };
            let storey = match under.kind() {
                MemberKind::WallPlate if under.on_wall => 0,
                MemberKind::WallPlate => 2,
                _ if pitch_break.get(foot.other).copied().unwrap_or(false) => 1,
                _ => continue,
            };
            least = Some(least.map_or(storey, |l: u8| l.min(storey)));
        }
    }
    least.unwrap_or(0)
}

/// Whether a timber belongs to the front or the cheeks of a dormer.
fn in_dormer(graph: &Graph<'_>, t: &Timber<'_>) -> bool {
    !t.on_wall
        && matches!(t.kind(), MemberKind::WallPlate | MemberKind::SolePlate | MemberKind::Stud)
        && !under_struts(graph, t)
}

/// Whether a timber is the sole plate of struts.
pub fn under_struts(graph: &Graph<'_>, t: &Timber<'_>) -> bool {
    let touched =
        |kind: MemberKind| t.contacts.iter().filter_map(|c| graph.timbers.get(c.other)).any(|o| o.kind() == kind);
    t.kind() == MemberKind::SolePlate && !touched(MemberKind::Stud)
}

/// Each dormer is a part: that of its own ridge, or one after all others. Gives how many parts there are then.
fn dormers(graph: &Graph<'_>, of: &mut [Option<usize>], mut count: usize) -> usize {
    let mut seen = vec![false; graph.timbers.len()];
    for first in 0..graph.timbers.len() {
        if seen[first] || !in_dormer(graph, &graph.timbers[first]) {
            continue;
        }
        let (mut group, mut next) = (Vec::new(), vec![first]);
        while let Some(k) = next.pop() {
            if !std::mem::replace(&mut seen[k], true) {
                group.push(k);
                let touched = graph.timbers[k].contacts.iter().map(|c| c.other);
                next.extend(touched.filter(|o| graph.timbers.get(*o).is_some_and(|t| in_dormer(graph, t))));
            }
        }
        let plates = group.iter().filter(|k| graph.timbers[**k].kind() == MemberKind::WallPlate);
        let on_plates = plates.flat_map(|k| graph.timbers[*k].contacts.iter().map(|c| c.other));
        let from_below = |k: usize| {
            graph.timbers[k]
                .contacts
                .iter()
                .filter_map(|c| graph.timbers.get(c.other))
                .any(|o| o.on_wall && o.kind() == MemberKind::WallPlate)
        };
        let rafters: Vec<usize> =
            on_plates.filter(|o| is_rafter(graph.timbers[*o].kind()) && !from_below(*o)).collect();
        // Studs by themselves go with what they touch.
        if !group.iter().any(|k| graph.timbers[*k].kind() == MemberKind::WallPlate) {
            continue;
        }
        let heads = rafters.iter().flat_map(|k| graph.timbers[*k].contacts.iter().map(|c| c.other));
        // The ridge of the dormer is the last part that its rafters reach; the main ridge is none of its own.
        let own = heads.filter(|o| storey_of(graph, *o) == 2).filter_map(|o| of.get(o).copied().flatten()).max();
        let part = own.unwrap_or_else(|| {
            count += 1;
            count - 1
        });
        for k in group.into_iter().chain(rafters) {
            of[k] = Some(part);
        }
    }
    count
}

fn storey_of(graph: &Graph<'_>, k: usize) -> u8 {
    graph.timbers.get(k).filter(|t| t.kind() == MemberKind::RidgeBoard).map_or(0, |t| storey(graph, t, &[]))
}

/// Gives each timber the part of what it touches nearest to its head.
fn by_head(graph: &Graph<'_>, of: &mut [Option<usize>], which: impl Fn(&Timber<'_>) -> bool) {
    fill(graph, of, which, |t, of| {
        // What stands on a break of pitch with its foot belongs to what is above it.
        let above = t.contacts.iter().filter(|c| c.reach[1] > FOOT_SHARE * t.length);
        let known = above.filter_map(|c| Some((c.reach[1], of.get(c.other).copied().flatten()?)));
        known.max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1))).map(|(_, part)| part)
    });
}

/// Gives each timber the last part of what it touches.
fn by_most(graph: &Graph<'_>, of: &mut [Option<usize>], which: impl Fn(&Timber<'_>) -> bool) {
    fill(graph, of, which, |t, of| t.contacts.iter().filter_map(|c| of.get(c.other).copied().flatten()).max());
}

/// Gives each timber the first part of what it touches.
fn by_least(graph: &Graph<'_>, of: &mut [Option<usize>], which: impl Fn(&Timber<'_>) -> bool) {
    fill(graph, of, which, |t, of| t.contacts.iter().filter_map(|c| of.get(c.other).copied().flatten()).min());
}

fn fill(
    graph: &Graph<'_>,
    of: &mut [Option<usize>],
    which: impl Fn(&Timber<'_>) -> bool,
    choose: impl Fn(&Timber<'_>, &[Option<usize>]) -> Option<usize>,
) {
    let found: Vec<(usize, Option<usize>)> = graph
        .timbers
        .iter()
        .enumerate()
        .filter(|(k, t)| of[*k].is_none() && !t.on_wall && which(t))
        .map(|(k, t)| (k, choose(t, of)))
        .collect();
    for (k, part) in found {
        of[k] = part;
    }
}
