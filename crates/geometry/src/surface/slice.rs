//! Re-planarising a level slice of fronts where events happen.
//!
//! Pure functions on strands: straight pieces of fronts between nodes, the
//! building on their left. Merged nodes, pieces that cancel and the turn rule
//! at a node give every kind of event (a front vanishing, a corner splitting
//! a front, loops pinching or joining, a whole loop closing) without naming
//! any of them.

use std::collections::BTreeMap;

use crate::DVec2;

/// A straight piece of front from one node to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strand {
    pub from: usize,
    pub to: usize,
    pub dir: DVec2,
}

/// Part of a strand between two nodes next to each other on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Piece {
    pub strand: usize,
    pub from: usize,
    pub to: usize,
}

/// Merges points that are within `reach` of each other, or that `forced`
/// pairs up. Gives the node of each point and the place of each node.
pub(super) fn merge(points: &[DVec2], forced: &[(usize, usize)], reach: f64) -> (Vec<usize>, Vec<DVec2>) {
    let mut leader: Vec<usize> = (0..points.len()).collect();
    let mut order = leader.clone();
    order.sort_by(|&a, &b| points[a].x.total_cmp(&points[b].x).then(a.cmp(&b)));
    for (k, &a) in order.iter().enumerate() {
        let near = order[k + 1..].iter().take_while(|&&b| points[b].x - points[a].x <= reach);
        for &b in near {
            if (points[a] - points[b]).length_squared() <= reach * reach {
                join(&mut leader, a, b);
            }
        }
    }
    for &(a, b) in forced {
        join(&mut leader, a, b);
    }
    let mut nodes: Vec<(DVec2, f64)> = Vec::new();
    let mut node_of_leader = vec![usize::MAX; points.len()];
    let mut node_of_point = Vec::with_capacity(points.len());
    for (k, p) in points.iter().enumerate() {
        let head = find(&mut leader, k);
        if node_of_leader[head] == usize::MAX {
            node_of_leader[head] = nodes.len();
            nodes.push((DVec2::ZERO, 0.0));
        }
        let node = node_of_leader[head];
        node_of_point.push(node);
        nodes[node].0 += *p;
        nodes[node].1 += 1.0;
    }
    (node_of_point, nodes.into_iter().map(|(sum, count)| sum / count).collect())
}

/// Head of the group of `k`, shortening the way to it.
pub(super) fn find(leader: &mut [usize], k: usize) -> usize {
    let mut head = k;
    while leader[head] != head {
        leader[head] = leader[leader[head]];
        head = leader[head];
    }
    head
}

/// Puts two into one group, whose head is the lower number.
pub(super) fn join(leader: &mut [usize], a: usize, b: usize) {
    let (a, b) = (find(leader, a), find(leader, b));
    leader[a.max(b)] = a.min(b);
}

/// For every strand, the nodes that lie on it between its ends, in order.
/// `forced` names nodes that lie on a strand whatever their distance.
pub(super) fn nodes_on(strands: &[Strand], nodes: &[DVec2], forced: &[(usize, usize)], reach: f64) -> Vec<Vec<usize>> {
    let mut order: Vec<usize> = (0..nodes.len()).collect();
    order.sort_by(|&a, &b| nodes[a].x.total_cmp(&nodes[b].x).then(a.cmp(&b)));
    let mut found = Vec::with_capacity(strands.len());
    for (k, strand) in strands.iter().enumerate() {
        if strand.from == strand.to {
            found.push(Vec::new());
            continue;
        }
        let (a, b) = (nodes[strand.from], nodes[strand.to]);
        let (low, high) = (a.min(b) - DVec2::splat(reach), a.max(b) + DVec2::splat(reach));
        let first = order.partition_point(|&n| nodes[n].x < low.x);
        let length = strand.dir.dot(b - a);
        let mut on: Vec<(f64, usize)> = order[first..]
            .iter()
            .copied()
            .take_while(|&n| nodes[n].x <= high.x)
            .filter(|&n| n != strand.from && n != strand.to && low.y <= nodes[n].y && nodes[n].y <= high.y)
            .map(|n| (nodes[n] - a, n))
            .filter(|(way, _)| strand.dir.perp_dot(*way).abs() <= reach)
            .map(|(way, n)| (strand.dir.dot(way), n))
            .filter(|&(along, _)| along > 0.0 && along < length)
            .collect();
        for &(node, _) in forced.iter().filter(|&&(_, s)| s == k) {
            let missing = node != strand.from && node != strand.to && !on.iter().any(|&(_, n)| n == node);
            if missing {
                on.push((strand.dir.dot(nodes[node] - a), node));
            }
        }
        on.sort_by(|x, y| x.0.total_cmp(&y.0).then(x.1.cmp(&y.1)));
        found.push(on.into_iter().map(|(_, n)| n).collect());
    }
    found
}

/// Cuts strands at the nodes on them. Strands of no length vanish.
pub(super) fn pieces(strands: &[Strand], on: &[Vec<usize>]) -> Vec<Piece> {
    let mut pieces = Vec::with_capacity(strands.len());
    for (strand, (s, between)) in strands.iter().zip(on).enumerate() {
        let mut from = s.from;
        for &to in between.iter().chain(core::iter::once(&s.to)) {
            if from != to {
                pieces.push(Piece { strand, from, to });
            }
            from = to;
        }
    }
    pieces
}

/// Takes out pairs of pieces that run over each other in opposite directions:
/// there two slopes have met. Gives what is left and the pairs.
pub(super) fn cancel(pieces: Vec<Piece>) -> (Vec<Piece>, Vec<(Piece, Piece)>) {
    let mut waiting: BTreeMap<(usize, usize), Vec<usize>> = BTreeMap::new();
    let mut gone = vec![false; pieces.len()];
    let mut pairs = Vec::new();
    for (k, piece) in pieces.iter().enumerate() {
        match waiting.get_mut(&(piece.to, piece.from)).and_then(Vec::pop) {
            Some(other) => {
                gone[other] = true;
                gone[k] = true;
                pairs.push((pieces[other], *piece));
            }
            None => waiting.entry((piece.from, piece.to)).or_default().push(k),
        }
    }
    let left = pieces.into_iter().zip(gone).filter(|(_, gone)| !gone).map(|(p, _)| p).collect();
    (left, pairs)
}

/// How far `to` is turned clockwise from `from`: 0 up to 4, growing with the
/// angle (a diamond in place of a circle).
pub(super) fn clockwise(from: DVec2, to: DVec2) -> f64 {
    let (along, across) = (from.dot(to), -from.perp_dot(to));
    let size = along.abs() + across.abs();
    if size == 0.0 {
        return 0.0;
    }
    match (along >= 0.0, across >= 0.0) {
        (true, true) => across / size,
        (false, true) => 1.0 - along / size,
        (false, false) => 2.0 - across / size,
        (true, false) => 3.0 + along / size,
    }
}

/// Which outgoing direction each incoming one continues with at a node: the
/// first one clockwise from its reverse. `None` when the directions do not
/// pair off, which a planar slice never shows.
pub(super) fn continuations(incoming: &[DVec2], outgoing: &[DVec2]) -> Option<Vec<usize>> {
    if incoming.len() != outgoing.len() {
        return None;
    }
    let mut taken = vec![false; outgoing.len()];
    let mut pairs = Vec::with_capacity(incoming.len());
    for dir in incoming {
        let turn = |k: &usize| clockwise(-*dir, outgoing[*k]);
        let first = (0..outgoing.len()).min_by(|a, b| turn(a).total_cmp(&turn(b)))?;
        if core::mem::replace(&mut taken[first], true) {
            return None;
        }
        pairs.push(first);
    }
    Some(pairs)
}

#[cfg(test)]
mod tests {
    use super::{Piece, Strand, cancel, clockwise, continuations, merge, nodes_on, pieces};
    use crate::DVec2;

    const E: DVec2 = DVec2::new(1.0, 0.0);
    const N: DVec2 = DVec2::new(0.0, 1.0);

    #[test]
    fn clockwise_grows_from_east_by_south_west_and_north() {
        let turns = [E, -N, -E, N].map(|d| clockwise(E, d));
        assert_eq!(turns, [0.0, 1.0, 2.0, 3.0]);
    }

    #[test]
    fn a_pinch_pairs_each_side_with_itself() {
        // Two corners touch head-on: one loop comes from the west and leaves
        // to the north-west, the other comes from the east.
        let incoming = [DVec2::new(1.0, 1.0), DVec2::new(-1.0, -1.0)];
        let outgoing = [DVec2::new(-1.0, 1.0), DVec2::new(1.0, -1.0)];
        assert_eq!(continuations(&incoming, &outgoing), Some(vec![0, 1]));
        assert_eq!(continuations(&incoming, &outgoing[..1]), None);
    }

    #[test]
    fn a_strip_that_has_closed_cancels_where_its_sides_overlap() {
        let nodes = [DVec2::ZERO, E * 10.0, E * 6.0, E * 2.0];
        let strands = [Strand { from: 0, to: 1, dir: E }, Strand { from: 2, to: 3, dir: -E }];
        let on = nodes_on(&strands, &nodes, &[], 1e-3);
        assert_eq!(on, vec![vec![3, 2], vec![]]);
        let (left, pairs) = cancel(pieces(&strands, &on));
        assert_eq!(left, vec![Piece { strand: 0, from: 0, to: 3 }, Piece { strand: 0, from: 2, to: 1 }]);
        assert_eq!(pairs.len(), 1);
    }

    #[test]
    fn points_merge_when_near_or_forced() {
        let points = [DVec2::ZERO, E * 5.0, E * 1e-4, E * 9.0];
        let (node, places) = merge(&points, &[(1, 3)], 1e-3);
        assert_eq!(node, vec![0, 1, 0, 1]);
        assert_eq!(places[1], E * 7.0);
    }
}
