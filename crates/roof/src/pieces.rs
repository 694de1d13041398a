//! Pattern pieces: timbers that are cut alike share one card; mirror images
//! are named as a pair.

use crate::solution::{Member, PatternPiece};

/// Timbers whose corners all lie within this of one another are cut alike, mm.
pub const ALIKE: f64 = 0.5;

/// Group members into pattern pieces and note on each which it is cut from.
pub fn group(members: &mut [Member]) -> Vec<PatternPiece> {
    let mut patterns: Vec<usize> = Vec::new();
    let mut of: Vec<usize> = Vec::with_capacity(members.len());
    for k in 0..members.len() {
        let found = patterns.iter().position(|p| alike(&members[*p], &members[k], false));
        of.push(found.unwrap_or_else(|| {
            patterns.push(k);
            patterns.len() - 1
        }));
    }
    let mut mirror: Vec<Option<usize>> = vec![None; patterns.len()];
    for i in 0..patterns.len() {
        for j in 0..i {
            if mirror[j].is_none() && mirror[i].is_none() && alike(&members[patterns[j]], &members[patterns[i]], true) {
                mirror[i] = Some(j);
                mirror[j] = Some(i);
            }
        }
    }
    let marks: Vec<String> = patterns.iter().map(|p| members[*p].mark.clone()).collect();
    for (member, piece) in members.iter_mut().zip(&of) {
        member.count_as.clone_from(&marks[*piece]);
        member.mirror_of = mirror[*piece].map(|m| marks[m].clone());
    }
    (0..patterns.len())
        .map(|p| {
            let all: Vec<String> =
                members.iter().zip(&of).filter(|(_, o)| **o == p).map(|(m, _)| m.mark.clone()).collect();
            PatternPiece {
                mark: marks[p].clone(),
                kind: members[patterns[p]].kind,
                count: all.len() as u32,
                members: all,
                mirror_of: mirror[p].map(|m| marks[m].clone()),
            }
        })
        .collect()
}

/// Same kind, section and corners, the second turned over edge for edge if `mirrored`.
fn alike(a: &Member, b: &Member, mirrored: bool) -> bool {
    let side = if mirrored { -1.0 } else { 1.0 };
    a.kind == b.kind
        && a.size == b.size
        && (a.stock_length_mm - b.stock_length_mm).abs() < ALIKE
        && (a.cut_length_mm - b.cut_length_mm).abs() < ALIKE
        && a.bench.points.len() == b.bench.points.len()
        && covers(&a.bench.points, &b.bench.points, side)
        && covers(&b.bench.points, &a.bench.points, side)
}

/// Every point of `a` has one of `b` near it.
fn covers(a: &[[f64; 3]], b: &[[f64; 3]], side: f64) -> bool {
    a.iter().all(|p| {
        b.iter()
            .any(|q| (p[0] - q[0]).abs() < ALIKE && (p[1] - q[1]).abs() < ALIKE && (p[2] - side * q[2]).abs() < ALIKE)
    })
}
