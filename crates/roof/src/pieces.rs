//! Pattern pieces: timbers that are cut alike share one card; mirror images
//! are named as a pair.
//!
//! Every member of a pattern differs from the pattern's own piece by less than
//! the working tolerance, so that differences never add up along a row of
//! jacks. Of pieces that differ a little, one of middle length is the pattern:
//! it stands for those that are shorter and for those that are longer.

use crate::solution::{Member, PatternPiece};

/// Pieces that differ by less than this are the same, whatever tolerance is
/// asked for, mm: rounding, and what no tape reads.
const SAME: f64 = 0.05;

/// A difference smaller than this is not told, mm: a pencil line.
const WORTH_TELLING: f64 = 0.5;

/// Members cut from one pattern.
struct Pattern {
    /// The one that it is named after.
    own: usize,
    /// All of them, in their order.
    members: Vec<usize>,
    mirror: Option<usize>,
    /// How far its members differ from its own piece at the most, mm.
    differ: f64,
}

/// Group members into pattern pieces and note on each which it is cut from.
/// Members of one pattern are within `alike_within` mm of its own piece.
pub fn group(members: &mut [Member], alike_within: f64) -> Vec<PatternPiece> {
    let within = alike_within.max(SAME);
    let mut order: Vec<usize> = (0..members.len()).collect();
    order.sort_by(|a, b| {
        let key = |m: &Member| (m.kind, m.bench.points.len());
        let (a, b) = (&members[*a], &members[*b]);
        let size = |m: &Member| (m.size.thickness_mm, m.size.depth_mm);
        key(a)
            .cmp(&key(b))
            .then(size(a).0.total_cmp(&size(b).0))
            .then(size(a).1.total_cmp(&size(b).1))
            .then(a.stock_length_mm.total_cmp(&b.stock_length_mm))
    });
    let mut patterns: Vec<Pattern> = Vec::new();
    let mut taken = vec![false; members.len()];
    for (at, &first) in order.iter().enumerate() {
        if taken[first] {
            continue;
        }
        // Those of nearly its length; all that is shorter is taken.
        let ahead = |k: &&usize| members[**k].stock_length_mm - members[first].stock_length_mm <= within;
        let near: Vec<usize> = order[at..].iter().take_while(ahead).copied().filter(|k| !taken[*k]).collect();
        let own = middle(members, &near, first, within);
        let ahead = |k: &&usize| members[**k].stock_length_mm - members[own].stock_length_mm <= within;
        let free: Vec<usize> = order[at..].iter().take_while(ahead).copied().filter(|k| !taken[*k]).collect();
        let direct = like(members, own, &free, false, within);
        direct.members.iter().for_each(|k| taken[*k] = true);
        let place = patterns.len();
        patterns.push(direct);
        // Its mirror images are cut from it turned over, so they are held to it
        // as well as to the one that names them.
        let rest: Vec<usize> = free.into_iter().filter(|k| !taken[*k]).collect();
        let images = like(members, own, &rest, true, within);
        let nearest = images.members.iter().copied().min_by(|a, b| {
            let off = |k: usize| difference(&members[own], &members[k], true, within).unwrap_or(within);
            let rounded = |k: usize| (off(k) / SAME).round();
            rounded(*a).total_cmp(&rounded(*b)).then(a.cmp(b))
        });
        if let Some(name) = nearest {
            let mut turned = like(members, name, &images.members, false, within);
            turned.differ = turned.differ.max(images.differ);
            turned.mirror = Some(place);
            turned.members.iter().for_each(|k| taken[*k] = true);
            patterns[place].mirror = Some(place + 1);
            patterns.push(turned);
        }
    }
    told(members, patterns)
}

/// The longest piece that the shortest of some is still like: the pattern that
/// serves most of them. Of those that are the same, the first.
fn middle(members: &[Member], near: &[usize], shortest: usize, within: f64) -> usize {
    let like = |k: &&usize| difference(&members[shortest], &members[**k], false, within).is_some();
    let longest = near.iter().rev().find(like).copied().unwrap_or(shortest);
    let same = |k: &&usize| difference(&members[longest], &members[**k], false, SAME).is_some();
    near.iter().filter(|k| like(k) && same(k)).min().copied().unwrap_or(longest)
}

/// The pieces among some that are like one of them, or like its mirror image.
fn like(members: &[Member], own: usize, among: &[usize], mirrored: bool, within: f64) -> Pattern {
    let found = |k: &usize| Some((*k, difference(&members[own], &members[*k], mirrored, within)?));
    let mut alike: Vec<(usize, f64)> = among.iter().filter_map(found).collect();
    alike.sort_by_key(|(k, _)| *k);
    let differ = alike.iter().map(|(_, off)| *off).fold(0.0, f64::max);
    Pattern { own, members: alike.into_iter().map(|(k, _)| k).collect(), mirror: None, differ }
}

/// The patterns in the order of their first members, and on every member what
/// it is cut from.
fn told(members: &mut [Member], patterns: Vec<Pattern>) -> Vec<PatternPiece> {
    let marks: Vec<String> = patterns.iter().map(|p| members[p.own].mark.clone()).collect();
    let mut out: Vec<(usize, PatternPiece)> = Vec::with_capacity(patterns.len());
    for (pattern, mark) in patterns.iter().zip(&marks) {
        let mirror_of = pattern.mirror.map(|m| marks[m].clone());
        for k in &pattern.members {
            members[*k].count_as.clone_from(mark);
            members[*k].mirror_of.clone_from(&mirror_of);
        }
        let first = pattern.members.first().copied().unwrap_or(pattern.own);
        let piece = PatternPiece {
            mark: mark.clone(),
            kind: members[first].kind,
            count: pattern.members.len() as u32,
            members: pattern.members.iter().map(|k| members[*k].mark.clone()).collect(),
            mirror_of,
            differ_mm: if pattern.differ > WORTH_TELLING { pattern.differ } else { 0.0 },
        };
        out.push((first, piece));
    }
    out.sort_by_key(|(first, _)| *first);
    out.into_iter().map(|(_, piece)| piece).collect()
}

/// How far two pieces differ at any corner, mm, the second turned over edge for
/// edge if `mirrored`; `None` if they are of two sorts or it is more than
/// `within`.
fn difference(a: &Member, b: &Member, mirrored: bool, within: f64) -> Option<f64> {
    let side = if mirrored { -1.0 } else { 1.0 };
    let lengths = (a.stock_length_mm - b.stock_length_mm).abs().max((a.cut_length_mm - b.cut_length_mm).abs());
    let (p, q) = (&a.bench.points, &b.bench.points);
    if a.kind != b.kind || a.size != b.size || lengths > within || p.len() != q.len() {
        return None;
    }
    let there = farthest(p, q, side, within)?;
    let back = farthest(q, p, side, within)?;
    Some(lengths.max(there).max(back))
}

/// How far the corner of `a` that is furthest from all of `b` is from them, mm.
fn farthest(a: &[[f64; 3]], b: &[[f64; 3]], side: f64, within: f64) -> Option<f64> {
    let mut most = 0.0_f64;
    for (k, p) in a.iter().enumerate() {
        let off = |q: &[f64; 3]| (p[0] - q[0]).abs().max((p[1] - q[1]).abs()).max((p[2] - side * q[2]).abs());
        // Pieces made alike mostly have their corners in one order.
        let own = b.get(k).map_or(f64::INFINITY, off);
        let nearest = if own <= SAME { own } else { b.iter().map(off).fold(own, f64::min) };
        if nearest > within {
            return None;
        }
        most = most.max(nearest);
    }
    Some(most)
}
