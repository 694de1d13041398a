//! Marks, pattern pieces and mirror images.

use super::roofs::{Broken, all, shape};
use crate::reading::{member, solve};
use roof::solution::{MemberKind, PatternPiece, Solution};
use std::collections::BTreeSet;

/// Pieces cut alike differ by at most this (twice, over a length), mm.
const ALIKE: f64 = 1.0;

#[test]
fn marks_are_unique_and_pieces_share_out_all_members() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        let marks: BTreeSet<&str> = s.members.iter().map(|m| m.mark.as_str()).collect();
        broken.unless(marks.len() == s.members.len(), || format!("{}: two members share a mark", roof.name));
        let shared: Vec<&str> = s.pieces.iter().flat_map(|p| &p.members).map(String::as_str).collect();
        let once = shared.len() == marks.len() && shared.iter().copied().collect::<BTreeSet<_>>() == marks;
        broken.unless(once, || format!("{}: pieces do not share out the members", roof.name));
        broken.unless(s.totals.members as usize == s.members.len(), || format!("{}: count of members", roof.name));
        broken.unless(s.totals.pieces as usize == s.pieces.len(), || format!("{}: count of pieces", roof.name));
        for piece in &s.pieces {
            of_piece(&mut broken, &roof.name, s, piece);
        }
    }
    broken.finish(3000);
}

fn of_piece(broken: &mut Broken, roof: &str, s: &Solution, piece: &PatternPiece) {
    let pattern = member(s, &piece.mark);
    broken.unless(piece.count as usize == piece.members.len(), || format!("{roof}: count of {}", piece.mark));
    broken.unless(piece.members.contains(&piece.mark), || format!("{roof}: {} is not its own", piece.mark));
    for mark in &piece.members {
        let m = member(s, mark);
        let same = m.count_as == piece.mark && m.mirror_of == piece.mirror_of && m.kind == piece.kind;
        broken.unless(same, || format!("{roof}: {mark} is cut as {}, listed under {}", m.count_as, piece.mark));
        let alike = (m.cut_length_mm - pattern.cut_length_mm).abs() < ALIKE && m.size == pattern.size;
        broken.unless(alike, || format!("{roof}: {mark} is not like {}", piece.mark));
    }
    if let Some(other) = &piece.mirror_of {
        let back = s.pieces.iter().find(|p| p.mark == *other).and_then(|p| p.mirror_of.as_deref());
        broken.unless(back == Some(&piece.mark), || format!("{roof}: {} mirrors {other}, not back", piece.mark));
        let volumes = pattern.volume_m3 - member(s, other).volume_m3;
        broken.unless(volumes.abs() < 1e-5, || format!("{roof}: {} and {other} differ in volume", piece.mark));
    }
}

#[test]
fn jacks_of_a_square_hip_come_in_left_and_right_pairs() {
    for (name, hips) in [("rectangle", 4), ("octagon", 8)] {
        let s = solve(&shape(name, false), name);
        let of_jacks = |p: &&PatternPiece| p.kind == MemberKind::JackRafter;
        let jacks: Vec<&PatternPiece> = s.pieces.iter().filter(of_jacks).collect();
        assert!(!jacks.is_empty());
        for piece in jacks {
            // One on either side of every hip, at every distance from the corner.
            assert_eq!(piece.count, hips, "{name}: {}", piece.mark);
            let other = piece.mirror_of.as_deref().unwrap_or_else(|| panic!("{name}: {} has no mirror", piece.mark));
            let other = s.pieces.iter().find(|p| p.mark == other).expect("the mirror is a piece");
            assert_eq!(other.count, hips, "{name}: mirror of {}", piece.mark);
            let [a, b] = [member(&s, &piece.mark), member(&s, &other.mark)];
            let cheek = |m: &roof::solution::Member| m.cuts.iter().find(|c| c.name.starts_with("head cheek")).cloned();
            let [a, b] = [cheek(a), cheek(b)].map(|c| c.expect("a jack has a cheek"));
            assert!((a.edge_angle_deg - b.edge_angle_deg).abs() < 1e-6);
            assert_ne!(a.name, b.name, "{name}: {} and its mirror face the same way", piece.mark);
        }
    }
}
