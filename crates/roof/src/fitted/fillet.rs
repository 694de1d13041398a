//! Tilting fillets: triangular pieces on the backs of the rafters behind the
//! fascia, mitred on the upright planes of hips and valleys.

use super::boards::{self, Draft, FOOT_CUT, HEAD_CUT};
use super::eaves_lines::{self, EavesLine, Meets};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, FrameCut, Made};
use crate::solution::{CutPlace, MemberKind};
use geometry::Plane;
use job::Section;

/// A piece is cut back for the next wall's eaves when it runs past them by
/// more than this, mm.
const RUNS_PAST: f64 = 1e-3;

/// Fit the tilting fillets.
///
/// # Errors
/// None: a fillet without room is left out with a remark.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(size) = carcass.job.timber.parts.fillet else { return Ok(()) };
    let lines = eaves_lines::of(carcass);
    let drafts = lines.iter().map(|line| fillet(line, &lines, size)).collect();
    boards::settle(carcass, drafts, &[Made::Left]);
    Ok(())
}

/// The fillet of one wall: one side on the backs of the rafters, one in line
/// with the tails, and the third falling from there to nothing.
fn fillet(line: &EavesLine, lines: &[EavesLine], size: Section) -> Option<Draft> {
    let along = line.along().extend(0.0);
    let slope = line.tail.plane.inward.extend(line.top.tan_pitch).normalize();
    let square = slope.cross(along);
    let up = if square.z > 0.0 { square } else { -square };
    // Height square to the slope of a front that is `thickness` high.
    let front = line.up_face();
    let high = size.thickness * front.dot(up);
    let axes = boards::axes(line.edge() + up * (high / 2.0), along, slope);
    let ends = [false, true].map(|head| end(line, head, lines));
    let section = Section { thickness: high, depth: size.depth };
    let mut draft = Draft::between(MemberKind::TiltingFillet, line.wall, section, axes, ends)?;
    draft.section = size;
    draft.clip(line.face(), Made::Underside);
    let (crest, feather) = (line.edge() + front * size.thickness, line.edge() + slope * size.depth);
    let fall = feather - crest;
    let out = fall.cross(along).normalize_or_zero();
    draft.clip(Plane::through(crest, if out.z > 0.0 { out } else { -out }), Made::Top);
    for (head, cut) in [(false, FOOT_CUT), (true, HEAD_CUT)] {
        let Some(mate) = line.next(head) else { continue };
        draft.mates.push((cut, mate));
        let Some(other) = lines.get(mate).filter(|o| line.is_outer(head, o)) else { continue };
        let past = |p: &geometry::DVec3| other.face().distance(*p) > RUNS_PAST;
        if draft.cells.iter().flat_map(|c| &c.points).any(past) {
            let tag = Made::Cut(draft.cuts.len() as u16);
            draft.cuts.push(FrameCut { purpose: CutUse::Trim, at: if head { CutPlace::Head } else { CutPlace::Foot } });
            draft.clip(other.face(), tag);
        }
    }
    Some(draft)
}

/// The plane at which a fillet ends.
fn end(line: &EavesLine, head: bool, lines: &[EavesLine]) -> Plane {
    match line.meets[usize::from(head)] {
        Meets::Line(k) => {
            lines.get(k).and_then(|o| line.seam(head, &o.top)).unwrap_or_else(|| line.square_end(head, 0.0))
        }
        Meets::Verge(verge) => verge,
        Meets::Wall => line.square_end(head, 0.0),
        Meets::Over(lower) => line.seam(head, &lower).unwrap_or_else(|| line.square_end(head, 0.0)),
    }
}
