//! Fascia boards along the tails: plumb on plumb and level tails, square to
//! the rafters on square ones; mitred at corners, square at verges.

use super::boards::{self, Draft, FOOT_CUT, HEAD_CUT};
use super::eaves_lines::{self, EavesLine};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, TimberId};
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::surface::WallId;
use geometry::{Cell, DVec3, Plane};
use job::{Job, Section};

/// Fascia lines that miss one another by more than this at a corner are a step
/// that the carpenter is told of, mm: what a plane takes off.
const STEP: f64 = 2.0;

/// A tail may be cut back for the boards to within this of its heel and seat, mm.
const OFF_THE_HEEL: f64 = 1.0;

/// Fit the fascia boards.
///
/// # Errors
/// None: a board without room is left out with a remark.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(size) = carcass.job.timber.parts.fascia else { return Ok(()) };
    let lines = eaves_lines::of(carcass);
    clear_valleys(carcass, &lines);
    let job = carcass.job;
    let drafts: Vec<Option<Draft>> = lines.iter().map(|line| board(job, line, &lines, size)).collect();
    for (line, board) in lines.iter().zip(&drafts) {
        if let Some(board) = board {
            clear_tails(carcass, line, board);
        }
    }
    boards::settle(carcass, drafts, &[Made::Left]);
    tell_steps(carcass, &lines, size);
    Ok(())
}

/// The board of one wall: its back on the tails, its top back arris on the
/// line where the backs of the rafters end.
fn board(job: &Job, line: &EavesLine, lines: &[EavesLine], size: Section) -> Option<Draft> {
    let (face, up) = (line.face(), line.up_face());
    let origin = line.edge() - up * size.depth + face.normal * (size.thickness / 2.0);
    let axes = boards::axes(origin, line.along().extend(0.0), up);
    let end = |head| match line.mitre_with_barge(head, job) {
        Some(mitre) => mitre.flipped(),
        None => line.board_end(head, lines),
    };
    let mut draft = Draft::between(MemberKind::Fascia, line.wall, size, axes, [end(false), end(true)])?;
    for (head, cut) in [(false, FOOT_CUT), (true, HEAD_CUT)] {
        draft.mates.extend(line.next(head).map(|mate| (cut, mate)));
    }
    Some(draft)
}

/// Boards square to the rafters lean in under the roof, and at a re-entrant
/// corner the tail of the valley would stand through both: it is cut back to
/// the line where their backs meet.
fn clear_valleys(carcass: &mut Carcass<'_>, lines: &[EavesLine]) {
    let valleys: Vec<TimberId> = carcass
        .built()
        .filter(|(_, t)| t.kind == MemberKind::ValleyRafter && t.seat.is_some())
        .map(|(id, _)| id)
        .collect();
    for id in valleys {
        let timber = carcass.timber(id);
        let at = |k: usize| timber.tails.get(k).and_then(|t| lines.iter().find(|l| l.wall == t.wall));
        let (Some(a), Some(b)) = (at(0), at(1)) else { continue };
        if !a.is_square() && !b.is_square() {
            continue;
        }
        let (fa, fb) = (a.face(), b.face());
        let across = fa.normal + fb.normal;
        let plane = Plane { normal: across / across.length(), offset: (fa.offset + fb.offset) / across.length() };
        cut_tail(carcass, id, plane, a.wall);
    }
}

/// Rafters beside a re-entrant corner may run out through the board of the
/// next wall: their tails end at its back.
fn clear_tails(carcass: &mut Carcass<'_>, line: &EavesLine, board: &Draft) {
    let crossed = carcass.in_the_way(&board.cells);
    for id in crossed.into_iter().filter(|id| carcass.timber(*id).is_rafter()).collect::<Vec<_>>() {
        cut_tail(carcass, id, line.face(), line.wall);
    }
}

/// Cut a tail along a plane, unless that reaches the seat.
fn cut_tail(carcass: &mut Carcass<'_>, id: TimberId, plane: Plane, wall: WallId) {
    let wood = carcass.wood(id).to_vec();
    let off: Vec<Cell<Made>> = wood.iter().filter_map(|c| c.clipped(plane.flipped(), Made::Inner)).collect();
    if !only_tail(carcass, id, &off) {
        return;
    }
    let tag = carcass.timber_mut(id).tag(CutUse::Tail(wall), CutPlace::Tail);
    carcass.set_wood(id, wood.iter().filter_map(|c| c.clipped(plane, tag)).collect());
}

/// Whether all of this wood is tail: outside the heel, or below the seat.
fn only_tail(carcass: &Carcass<'_>, id: TimberId, off: &[Cell<Made>]) -> bool {
    let Some(seat) = carcass.timber(id).seat else { return false };
    let of_tail = |p: &DVec3| seat.heel.distance(p.truncate()) <= -OFF_THE_HEEL || p.z <= seat.level + OFF_THE_HEEL;
    off.iter().flat_map(|c| &c.points).all(of_tail)
}

/// Where the fascia lines of two walls do not meet, their boards can't be
/// mitred over their whole depth.
fn tell_steps(carcass: &mut Carcass<'_>, lines: &[EavesLine], size: Section) {
    for line in lines {
        let Some(other) = line.next(true).and_then(|k| lines.get(k)) else { continue };
        let step = (line.edge().z - other.edge().z).abs();
        if step <= STEP {
            continue;
        }
        let letter =
            |l: &EavesLine| carcass.job.walls.get(l.wall.index()).map_or("", |w| w.letter.as_str()).to_string();
        let (a, b) = (letter(line), letter(other));
        let how = if step < size.depth {
            "they are mitred where both are, and the end grain of one shows in the step"
        } else {
            "they pass one another, and each ends on its own"
        };
        carcass.remark(
            NoticeLevel::Note,
            "fascia-boards-step",
            format!("walls {a} and {b}"),
            format!("The fascia boards of walls {a} and {b} miss one another by {step:.0} mm in height: {how}."),
        );
    }
}
