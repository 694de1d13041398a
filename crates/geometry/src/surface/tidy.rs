//! Clearing up what no carpenter can frame: nodes a hair apart become one,
//! nodes a hair off an arc come to lie on it, arcs that then run over each
//! other become one, and straight runs lose the nodes between.

use std::collections::BTreeMap;

use super::fronts::PlaneId;
use super::near::Grid;
use super::raw::{Origin, Raw, RawArc};
use super::slice::{find, join};
use crate::{DVec2, DVec3};

/// What cannot be told apart on the roof, mm: half the kerf of a saw. Nodes
/// closer than this are framed as one.
pub const FRAMING: f64 = 2.0;

/// Rounds of clearing up. One is nearly always enough; the second catches
/// nodes that the first moved next to something else.
const ROUNDS: usize = 3;

/// Clears up the result of a sweep in place. Nodes that no arc uses stay.
/// `apart` is normally [`FRAMING`].
pub(super) fn tidy(raw: &mut Raw, apart: f64) {
    for _ in 0..ROUNDS {
        let merged = merge_nodes(raw, apart);
        let snapped = snap_onto_arcs(raw, apart);
        drop_doubles(raw);
        if !merged && !snapped {
            break;
        }
    }
    join_straight(raw, apart);
}

/// A grid of the nodes that arcs use.
fn grid_of_nodes(raw: &Raw) -> Grid {
    let mut used: Vec<u32> = raw.arcs.iter().flat_map(|a| [a.from, a.to]).collect();
    used.sort_unstable();
    used.dedup();
    let place = |n: &u32| raw.nodes[*n as usize].truncate();
    let low = used.iter().map(place).fold(DVec2::splat(f64::INFINITY), DVec2::min);
    let high = used.iter().map(place).fold(DVec2::splat(f64::NEG_INFINITY), DVec2::max);
    if used.is_empty() {
        return Grid::new(DVec2::ZERO, DVec2::ZERO, 0);
    }
    let mut grid = Grid::new(low, high, used.len());
    let mut cells = Vec::new();
    for &n in &used {
        grid.cells(&[place(&n)], &mut cells);
        if let Some(&cell) = cells.first() {
            grid.segments[cell].push(n);
        }
    }
    grid
}

/// Box of half-width `apart` around the way from `a` to `b`, as a hull.
fn around(a: DVec2, b: DVec2, apart: f64) -> [DVec2; 8] {
    let f = apart;
    let corners =
        |p: DVec2| [DVec2::new(-f, -f), DVec2::new(f, -f), DVec2::new(f, f), DVec2::new(-f, f)].map(|d| p + d);
    let ([p, q, r, s], [t, u, v, w]) = (corners(a), corners(b));
    [p, q, r, s, t, u, v, w]
}

/// Merges nodes closer than `apart`, nearest first, as long as no group
/// grows wider than twice that.
fn merge_nodes(raw: &mut Raw, apart: f64) -> bool {
    let grid = grid_of_nodes(raw);
    let mut pairs: Vec<(f64, u32, u32)> = Vec::new();
    let mut cells = Vec::new();
    for a in grid.segments.iter().flatten().copied() {
        let at = raw.nodes[a as usize];
        grid.cells(&around(at.truncate(), at.truncate(), apart)[..4], &mut cells);
        for b in cells.iter().flat_map(|&c| grid.segments[c].iter().copied()).filter(|&b| b > a) {
            let distance = (raw.nodes[b as usize] - at).length();
            if distance < apart {
                pairs.push((distance, a, b));
            }
        }
    }
    if pairs.is_empty() {
        return false;
    }
    pairs.sort_by(|x, y| x.0.total_cmp(&y.0).then((x.1, x.2).cmp(&(y.1, y.2))));
    let mut leader: Vec<usize> = (0..raw.nodes.len()).collect();
    let mut boxes: Vec<(DVec3, DVec3)> = raw.nodes.iter().map(|&p| (p, p)).collect();
    let mut changed = false;
    for (_, a, b) in pairs {
        let (a, b) = (find(&mut leader, a as usize), find(&mut leader, b as usize));
        let both = (boxes[a].0.min(boxes[b].0), boxes[a].1.max(boxes[b].1));
        if a != b && (both.1 - both.0).length() <= 2.0 * apart {
            join(&mut leader, a, b);
            boxes[a.min(b)] = both;
            changed = true;
        }
    }
    place_groups(raw, &mut leader);
    for arc in &mut raw.arcs {
        arc.from = find(&mut leader, arc.from as usize) as u32;
        arc.to = find(&mut leader, arc.to as usize) as u32;
    }
    raw.arcs.retain(|a| a.from != a.to);
    changed
}

/// Nodes of arcs that have a face on one side only.
fn nodes_on_rim(raw: &Raw) -> Vec<bool> {
    let mut on_rim = vec![false; raw.nodes.len()];
    for arc in raw.arcs.iter().filter(|a| a.left.is_none() || a.right.is_none()) {
        on_rim[arc.from as usize] = true;
        on_rim[arc.to as usize] = true;
    }
    on_rim
}

/// Puts each group of merged nodes in one place: the middle of those on the
/// rim of the faces when there are any, so that the rim stays where it is,
/// and of all otherwise.
fn place_groups(raw: &mut Raw, leader: &mut [usize]) {
    let on_rim = nodes_on_rim(raw);
    let mut groups: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for n in 0..raw.nodes.len() {
        let head = find(leader, n);
        if head != n {
            groups.entry(head).or_insert_with(|| vec![head]).push(n);
        }
    }
    for (head, members) in groups {
        let fixed: Vec<DVec3> = members.iter().filter(|&&n| on_rim[n]).map(|&n| raw.nodes[n]).collect();
        let all: Vec<DVec3> = if fixed.is_empty() { members.iter().map(|&n| raw.nodes[n]).collect() } else { fixed };
        raw.nodes[head] = all.iter().copied().sum::<DVec3>() / all.len() as f64;
    }
}

/// Cuts arcs at nodes that lie closer to them than `apart`. Nodes that
/// come to lie on the rim are moved onto it.
fn snap_onto_arcs(raw: &mut Raw, apart: f64) -> bool {
    let grid = grid_of_nodes(raw);
    let mut cells = Vec::new();
    let mut cut = Vec::with_capacity(raw.arcs.len());
    let on_rim = nodes_on_rim(raw);
    let mut moves = Vec::new();
    for arc in &raw.arcs {
        let (a, b) = (raw.nodes[arc.from as usize], raw.nodes[arc.to as usize]);
        let way = b - a;
        let length = way.length();
        grid.cells(&around(a.truncate(), b.truncate(), apart), &mut cells);
        let mut on: Vec<(f64, u32)> = Vec::new();
        for n in cells.iter().flat_map(|&c| grid.segments[c].iter().copied()) {
            let to = raw.nodes[n as usize] - a;
            let along = to.dot(way) / length;
            let off = (to - way * (along / length)).length();
            if n != arc.from && n != arc.to && off < apart && along > 0.0 && along < length {
                on.push((along, n));
                if (arc.left.is_none() || arc.right.is_none()) && !on_rim[n as usize] {
                    moves.push((n, a + way * (along / length)));
                }
            }
        }
        on.sort_by(|x, y| x.0.total_cmp(&y.0).then(x.1.cmp(&y.1)));
        let mut from = arc.from;
        for to in on.into_iter().map(|(_, n)| n).chain(core::iter::once(arc.to)) {
            cut.push(RawArc { from, to, ..*arc });
            from = to;
        }
    }
    let changed = cut.len() != raw.arcs.len();
    raw.arcs = cut;
    for (node, place) in moves {
        raw.nodes[node as usize] = place;
    }
    changed
}

/// Makes one arc of arcs between the same two nodes: the slivers of face
/// between them vanish.
fn drop_doubles(raw: &mut Raw) {
    let mut groups: BTreeMap<(u32, u32), Vec<usize>> = BTreeMap::new();
    for (k, arc) in raw.arcs.iter().enumerate() {
        groups.entry((arc.from.min(arc.to), arc.from.max(arc.to))).or_default().push(k);
    }
    let mut keep = vec![true; raw.arcs.len()];
    for (&(from, to), members) in groups.iter().filter(|(_, members)| members.len() > 1) {
        let mut left: Vec<Option<PlaneId>> = Vec::new();
        let mut right: Vec<Option<PlaneId>> = Vec::new();
        for &k in members {
            let arc = &raw.arcs[k];
            let (l, r) = if arc.from == from { (arc.left, arc.right) } else { (arc.right, arc.left) };
            left.push(l);
            right.push(r);
        }
        left.retain(|side| match right.iter().position(|r| r == side) {
            Some(k) => {
                right.remove(k);
                false
            }
            None => true,
        });
        if left.len() > 1 || right.len() > 1 {
            continue;
        }
        // What had only this face says how it is bordered; when the other
        // face of a crease has vanished, it ends on an upright.
        let sides = [left.first().copied().flatten(), right.first().copied().flatten()];
        let alike = members.iter().map(|&k| raw.arcs[k]).find(|a| match sides {
            [Some(l), Some(r)] => a.foot.is_some_and(|(p, _)| p == l || p == r),
            [Some(p), None] | [None, Some(p)] => {
                (a.left, a.right) == (Some(p), None) || (a.left, a.right) == (None, Some(p))
            }
            [None, None] => false,
        });
        let origin = match (sides, alike) {
            ([Some(_), Some(_)], _) => Origin::Crease,
            (_, Some(arc)) => arc.origin,
            (_, None) => Origin::Verge,
        };
        let foot = alike.and_then(|a| a.foot);
        for &k in members {
            keep[k] = false;
        }
        if let (Some(&left), Some(&right), Some(&first)) = (left.first(), right.first(), members.first()) {
            keep[first] = true;
            raw.arcs[first] = RawArc { from, to, left, right, origin, foot };
        }
    }
    let mut keep = keep.into_iter();
    raw.arcs.retain(|_| keep.next().unwrap_or(true));
}

/// Joins arcs of one pair of faces that run straight on through a node which
/// nothing else uses.
fn join_straight(raw: &mut Raw, apart: f64) {
    let mut at: Vec<Vec<usize>> = vec![Vec::new(); raw.nodes.len()];
    for (k, arc) in raw.arcs.iter().enumerate() {
        at[arc.from as usize].push(k);
        at[arc.to as usize].push(k);
    }
    let mut gone = vec![false; raw.arcs.len()];
    for n in 0..raw.nodes.len() {
        let &[a, b] = at[n].as_slice() else { continue };
        let node = n as u32;
        let (first, second) = (towards(raw.arcs[a], node), towards(raw.arcs[b], node));
        let alike = (first.left, first.right) == (second.right, second.left) && first.origin == second.origin;
        let (p, q) = (raw.nodes[first.from as usize], raw.nodes[second.from as usize]);
        let (way, to) = (q - p, raw.nodes[n] - p);
        let along = to.dot(way) / way.length_squared();
        if a == b || !alike || !(0.0..=1.0).contains(&along) || (to - way * along).length() > apart {
            continue;
        }
        let foot = match (first.foot, second.foot) {
            (Some((plane, x)), Some((other, y))) if x != y && plane == other => {
                let mut all: Vec<u32> =
                    [x, y].iter().flat_map(|&s| raw.wall_sets[s as usize].iter().copied()).collect();
                all.sort_unstable();
                all.dedup();
                raw.wall_sets.push(all);
                Some((plane, (raw.wall_sets.len() - 1) as u32))
            }
            (x, y) => x.or(y),
        };
        raw.arcs[a] = RawArc { to: second.from, foot, ..first };
        gone[b] = true;
        let far = second.from as usize;
        at[far].iter_mut().filter(|k| **k == b).for_each(|k| *k = a);
    }
    let mut gone = gone.into_iter();
    raw.arcs.retain(|_| !gone.next().unwrap_or(false));
}

/// The arc turned so that it ends at a node.
fn towards(arc: RawArc, node: u32) -> RawArc {
    if arc.to == node { arc } else { RawArc { from: arc.to, to: arc.from, left: arc.right, right: arc.left, ..arc } }
}
