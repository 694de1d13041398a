//! Pattern pieces as rows, in the order in which the bench takes them: that of
//! the cards of the pack, mirror images together.

use super::Shown;
use crate::views::{Done, MemberRow, PieceRow};
use crate::wording::kind;
use roof::solution::{Member, PatternPiece};
use std::collections::HashMap;

/// The pieces.
pub(super) fn rows(shown: &Shown<'_>, members: &[MemberRow]) -> Vec<PieceRow> {
    let pieces = &shown.solution.pieces;
    let place: HashMap<&str, usize> = pieces.iter().enumerate().map(|(n, piece)| (piece.mark.as_str(), n)).collect();
    let mirror = |piece: &PatternPiece| piece.mirror_of.as_deref().and_then(|mark| place.get(mark)).copied();
    let mut out = Vec::with_capacity(pieces.len());
    for (n, piece) in pieces.iter().enumerate() {
        match mirror(piece) {
            // Taken with the piece that it mirrors.
            Some(first) if first < n => {}
            other => {
                out.push(row(shown, members, piece));
                out.extend(other.and_then(|n| pieces.get(n)).map(|mirrored| row(shown, members, mirrored)));
            }
        }
    }
    out
}

fn row(shown: &Shown<'_>, members: &[MemberRow], piece: &PatternPiece) -> PieceRow {
    let of_piece = || members.iter().filter(|member| member.piece == piece.mark);
    let count = |least: Done| u32::try_from(of_piece().filter(|m| m.done >= least).count()).unwrap_or(u32::MAX);
    let member = shown.solution.members.iter().find(|member| member.mark == piece.mark);
    let of = |text: &dyn Fn(&Member) -> String| member.map_or_else(String::new, text);
    PieceRow {
        mark: piece.mark.clone(),
        kind: kind(shown.words, piece.kind),
        count: piece.count,
        cut: count(Done::Cut),
        fixed: count(Done::Fixed),
        size: of(&|m| shown.lengths.section(m.size.thickness_mm, m.size.depth_mm)),
        length: of(&|m| shown.lengths.write_with_unit(m.cut_length_mm)),
        mirror_of: piece.mirror_of.clone(),
        changed: of_piece().any(|member| member.changed),
    }
}
