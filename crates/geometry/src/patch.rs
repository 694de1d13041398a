//! Flat rings that lie side by side in one plane, joined to as few rings
//! without holes as can be.

use crate::{DVec3, Ring};
use smallvec::{SmallVec, smallvec};

/// A directed edge between two point numbers.
pub(crate) type Edge = (u32, u32);

/// Directed edges of a ring.
pub(crate) fn edges_of(ring: &[u32]) -> impl Iterator<Item = Edge> {
    ring.iter().enumerate().map(|(i, &a)| (a, ring[(i + 1) % ring.len()]))
}

/// Twice the area of a ring, along its normal.
pub(crate) fn area_vector(points: &[DVec3], ring: &[u32]) -> DVec3 {
    let Some((&first, rest)) = ring.split_first() else { return DVec3::ZERO };
    let o = points[first as usize];
    rest.windows(2)
        .map(|w| (points[w[0] as usize] - o).cross(points[w[1] as usize] - o))
        .fold(DVec3::ZERO, |a, b| a + b)
}

/// Whether a ring passes no point twice.
pub(crate) fn is_simple(ring: &[u32]) -> bool {
    ring.iter().enumerate().all(|(i, a)| !ring[i + 1..].contains(a))
}

/// Join rings of one plane, all anticlockwise about `normal`, that do not
/// overlap. Where the whole has a hole, it is left in parts, each without one.
pub(crate) fn joined(points: &[DVec3], normal: DVec3, rings: &[&[u32]]) -> Vec<Ring> {
    let whole = outlines(points, normal, rings);
    let sound = |ring: &Ring| is_simple(ring) && area_vector(points, ring).dot(normal) > 0.0;
    if whole.iter().all(sound) {
        return whole;
    }
    // Grow each part as long as it stays one ring without a hole.
    let mut left: Vec<Ring> = rings.iter().flat_map(|r| outlines(points, normal, &[r])).filter(sound).collect();
    left.reverse();
    let mut parts = Vec::new();
    while let Some(mut part) = left.pop() {
        let mut next = left.len();
        while next > 0 {
            next -= 1;
            let both = outlines(points, normal, &[&part, &left[next]]);
            if let [one] = both.as_slice()
                && sound(one)
            {
                part = one.clone();
                left.remove(next);
                next = left.len();
            }
        }
        parts.push(part);
    }
    parts
}

/// The outlines of rings: edges walked both ways cancel. Where outlines touch
/// in a point they are kept apart, the inside on the left.
fn outlines(points: &[DVec3], normal: DVec3, rings: &[&[u32]]) -> Vec<Ring> {
    if let [only] = rings
        && is_simple(only)
    {
        return vec![Ring::from_slice(only)];
    }
    let mut edges: SmallVec<[Edge; 32]> = SmallVec::new();
    for (a, b) in rings.iter().flat_map(|r| edges_of(r)) {
        match edges.iter().position(|e| *e == (b, a)) {
            Some(k) => {
                edges.swap_remove(k);
            }
            None => edges.push((a, b)),
        }
    }
    let mut loops = Vec::new();
    while let Some(first) = edges.pop() {
        let (start, mut at) = first;
        let mut before = start;
        let mut ring: Ring = smallvec![start];
        loop {
            let out = |k: &usize| edges[*k].0 == at;
            let onward = sharpest(points, normal, (before, at), &edges, (0..edges.len()).filter(out));
            let closes = at == start
                && onward.is_none_or(|k| {
                    turn(points, normal, (before, at), first.1) <= turn(points, normal, (before, at), edges[k].1)
                });
            if closes {
                break;
            }
            ring.push(at);
            let Some(k) = onward else { break };
            before = at;
            at = edges.swap_remove(k).1;
        }
        loops.push(ring);
    }
    loops
}

/// Of the edges that lead on, the one that keeps closest to the left.
fn sharpest(
    points: &[DVec3],
    normal: DVec3,
    came: Edge,
    edges: &[Edge],
    mut out: impl Iterator<Item = usize>,
) -> Option<usize> {
    let mut best = out.next()?;
    for k in out {
        if turn(points, normal, came, edges[k].1) < turn(points, normal, came, edges[best].1) {
            best = k;
        }
    }
    Some(best)
}

/// How wide the inside is between the way on to `to` and the way back, as a
/// number from 0 to 4 that grows with the angle.
fn turn(points: &[DVec3], normal: DVec3, (before, at): Edge, to: u32) -> f64 {
    let here = points[at as usize];
    let on = (points[to as usize] - here).normalize_or_zero();
    let back = (points[before as usize] - here).normalize_or_zero();
    let (sine, cosine) = (normal.dot(on.cross(back)), on.dot(back));
    if sine >= 0.0 { 1.0 - cosine } else { 3.0 + cosine }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid() -> Vec<DVec3> {
        (0..16).map(|k| DVec3::new(f64::from(k % 4), f64::from(k / 4), 0.0)).collect()
    }

    fn square(x: u32, y: u32) -> Ring {
        let at = y * 4 + x;
        smallvec![at, at + 1, at + 5, at + 4]
    }

    #[test]
    fn a_frame_of_squares_is_left_in_parts_without_holes() {
        let rings: Vec<Ring> = (0..9).filter(|k| *k != 4).map(|k| square(k % 3, k / 3)).collect();
        let refs: Vec<&[u32]> = rings.iter().map(Ring::as_slice).collect();
        let parts = joined(&grid(), DVec3::Z, &refs);
        assert_eq!(parts.len(), 2);
        let area: f64 = parts.iter().map(|r| area_vector(&grid(), r).z / 2.0).sum();
        assert!((area - 8.0).abs() < 1e-12);
        assert!(parts.iter().all(|r| is_simple(r) && area_vector(&grid(), r).z > 0.0));
    }

    #[test]
    fn squares_that_touch_in_a_point_stay_apart() {
        let rings = [square(0, 0), square(1, 1)];
        let refs: Vec<&[u32]> = rings.iter().map(Ring::as_slice).collect();
        let parts = joined(&grid(), DVec3::Z, &refs);
        assert_eq!(parts.len(), 2);
        assert!(parts.iter().all(|r| r.len() == 4));
    }

    #[test]
    fn a_ring_that_runs_out_and_back_loses_its_spike() {
        let spiked: Ring = smallvec![0, 1, 2, 1, 5, 4];
        let parts = joined(&grid(), DVec3::Z, &[&spiked]);
        assert_eq!(parts.len(), 1);
        assert!((area_vector(&grid(), &parts[0]).z / 2.0 - 1.0).abs() < 1e-12);
        assert_eq!(parts[0].len(), 4);
    }
}
