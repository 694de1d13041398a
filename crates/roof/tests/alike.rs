//! Pieces that differ by less than the working tolerance share a pattern.

use crate::common;
use crate::reading::{member, of_kind};
use job::Job;
use roof::solution::{Member, MemberKind, PatternPiece, Solution};

/// A hipped house whose end walls are out by `by` mm, so that the jacks of its
/// hips all differ a little.
fn out_by(by: f64, alike_within: f64) -> Job {
    let corners = vec![[0.0, 0.0], [9000.0, 0.0], [9000.0 + by, 5600.0], [-by / 3.0, 5600.0]];
    let mut job = common::job_over(vec![corners], 40.0);
    job.bench.alike_within = alike_within;
    job
}

/// How far two members differ at any corner, the second turned over if
/// `turned`, mm.
fn apart(a: &Member, b: &Member, turned: bool) -> f64 {
    let side = if turned { -1.0 } else { 1.0 };
    let far = |p: &[[f64; 3]], q: &[[f64; 3]]| {
        let off =
            |p: &[f64; 3], q: &[f64; 3]| (p[0] - q[0]).abs().max((p[1] - q[1]).abs()).max((p[2] - side * q[2]).abs());
        p.iter().map(|p| q.iter().map(|q| off(p, q)).fold(f64::MAX, f64::min)).fold(0.0, f64::max)
    };
    far(&a.bench.points, &b.bench.points).max(far(&b.bench.points, &a.bench.points))
}

fn jacks(s: &Solution) -> Vec<&PatternPiece> {
    s.pieces.iter().filter(|p| p.kind == MemberKind::JackRafter).collect()
}

#[test]
fn members_keep_within_the_tolerance_of_their_pattern() {
    for by in [0.0, 0.4, 1.0, 3.0, 9.0, 25.0] {
        for within in [0.0, 0.3, 1.0, 2.5, 5.0] {
            let s = roof::solve(&out_by(by, within)).expect("a plain house");
            let limit = f64::max(within, 0.05) + 1e-9;
            for piece in &s.pieces {
                let own = member(&s, &piece.mark);
                let farthest = piece.members.iter().map(|m| apart(own, member(&s, m), false)).fold(0.0, f64::max);
                assert!(farthest <= limit, "{by} {within}: {} differs by {farthest}", piece.mark);
                let turned = piece.mirror_of.as_deref().map(|m| member(&s, m));
                let images = turned
                    .map_or(0.0, |o| piece.members.iter().map(|m| apart(o, member(&s, m), true)).fold(0.0, f64::max));
                assert!(images <= 2.0 * limit, "{by} {within}: {} and its mirror differ by {images}", piece.mark);
                assert!(piece.differ_mm == 0.0 || piece.differ_mm > 0.5 && piece.differ_mm <= limit);
                assert!(farthest <= piece.differ_mm.max(0.5) + 1e-9, "{} says {}", piece.mark, piece.differ_mm);
            }
        }
    }
}

#[test]
fn a_wider_tolerance_never_makes_more_patterns() {
    for by in [0.4, 3.0, 9.0] {
        let count = |within| jacks(&roof::solve(&out_by(by, within)).expect("a plain house")).len();
        let counts = [0.0, 0.5, 1.0, 2.0, 5.0].map(count);
        assert!(counts.windows(2).all(|w| w[0] >= w[1]), "{by}: {counts:?}");
    }
}

#[test]
fn walls_out_by_less_than_the_tolerance_cut_like_true_ones() {
    let true_s = roof::solve(&out_by(0.0, 1.0)).expect("a plain house");
    let s = roof::solve(&out_by(0.4, 1.0)).expect("a plain house");
    assert_eq!(jacks(&s).len(), jacks(&true_s).len());
    assert_eq!(of_kind(&s, MemberKind::JackRafter).len(), of_kind(&true_s, MemberKind::JackRafter).len());
    // Left and right still come in pairs.
    assert!(jacks(&s).iter().all(|p| p.mirror_of.is_some()));
}

#[test]
fn differences_do_not_add_up_along_a_row() {
    // Rungs over a wedge: each is 2 mm or so longer than the one before.
    let mut job = common::job_over(vec![vec![[0.0, 0.0], [8400.0, 0.0], [8420.0, 5200.0], [0.0, 5200.0]]], 40.0);
    job.walls[1].gable = true;
    job.walls[3].gable = true;
    let size = job::Section { thickness: 47.0, depth: 97.0 };
    job.timber.parts.ladder = Some(job::SpacedTimber { size, centres: 600.0 });
    job.bench.alike_within = 2.5;
    let s = roof::solve(&job).expect("it solves");
    let rungs: Vec<&PatternPiece> = s.pieces.iter().filter(|p| p.kind == MemberKind::GableLadder).collect();
    let lengths = |p: &PatternPiece| {
        p.members
            .iter()
            .map(|m| member(&s, m).stock_length_mm)
            .fold([f64::MAX, f64::MIN], |[a, b], l| [a.min(l), b.max(l)])
    };
    for p in &rungs {
        let [least, most] = lengths(p);
        assert!(most - least <= 5.0, "{}: {least}..{most}", p.mark);
    }
    // 20 mm of wedge in spans of 5 mm, those over the square gable among them.
    assert!((4..=7).contains(&rungs.len()), "{} patterns", rungs.len());
    assert!(rungs.iter().any(|p| p.differ_mm > 1.0));
}
