//! Barge boards on the outer faces of the outermost rafters of gables, mitred
//! plumb where they meet and cut in line with the fascia at the foot.

use super::boards::{self, Draft, FOOT_CUT, HEAD_CUT};
use super::eaves_lines::{self, EavesLine, Meets};
use super::verges::{self, VergeEdge};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::Made;
use crate::solution::{MemberKind, NoticeLevel};
use geometry::surface::{RoofPlane, WallId};
use geometry::{DVec2, Plane};
use job::Section;

/// A board touches a rafter when it stands off it by less than this, mm.
const TOUCHES: f64 = 0.05;

/// An edge starts at the plates when it misses their corner by less, mm.
const AT_CORNER: f64 = 0.5;

/// A line where two slopes meet that crosses their verge more slantwise than
/// this (as a sine) makes no mitre.
const LEAST_CROSSING: f64 = 0.3;

/// Fit the barge boards.
///
/// # Errors
/// None: a board without room is left out with a remark.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(size) = carcass.job.timber.parts.barge else { return Ok(()) };
    let lines = eaves_lines::of(carcass);
    let edges = verges::of(carcass.surface);
    let mut drafts = Vec::with_capacity(edges.len());
    for edge in &edges {
        let back = edge.at() + carcass.job.verge.overhang;
        if lines.iter().any(|l| covers(l, edge, back + size.thickness)) {
            // The eaves of a higher slope run out over this edge: it is no verge.
            drafts.push(None);
            continue;
        }
        let carried = carried(carcass, edge, back);
        tell(carcass, edge, &carried);
        let wanted = !matches!(carried, Carried::Nothing);
        drafts.push(if wanted { board(carcass, edge, (&edges, &lines), back, size) } else { None });
    }
    boards::settle(carcass, drafts, &[Made::Left, Made::Right]);
    Ok(())
}

/// What carries the board of an edge.
enum Carried {
    /// A rafter, over its whole length.
    Rafter,
    /// The ends of ridge and plates, and packing this thick on the rafter
    /// behind, mm.
    Packing(f64),
    /// Nothing: no rafter stands square along the edge.
    Nothing,
}

/// What carries the board of an edge whose back lies at `back` along the
/// outward vector.
fn carried(carcass: &Carcass<'_>, edge: &VergeEdge, back: f64) -> Carried {
    if !edge.rises(carcass.surface) {
        return Carried::Nothing;
    }
    let plane = carcass.surface.face(edge.face).plane;
    let [low, high] = edge.ends.map(|p| plane.inward.dot(p.truncate()) - plane.offset);
    let abreast = |reach: [f64; 2]| reach[0] < high && reach[1] > low;
    let beside = verges::rafters(carcass, edge);
    let behind = beside.iter().filter(|r| abreast(r.reach)).map(|r| back - r.outmost).find(|gap| *gap > -TOUCHES);
    match behind {
        Some(gap) if gap < TOUCHES => Carried::Rafter,
        Some(gap) if edge.wall.is_some() => Carried::Packing(gap),
        _ => Carried::Nothing,
    }
}

fn tell(carcass: &mut Carcass<'_>, edge: &VergeEdge, carried: &Carried) {
    let letter = |w: WallId| carcass.job.walls.get(w.index()).map(|w| w.letter.clone());
    let Some(wall) = edge.wall.and_then(letter) else { return };
    let (level, code, text) = match carried {
        Carried::Rafter => return,
        Carried::Packing(gap) => (
            NoticeLevel::Note,
            "barge-packed",
            format!(
                "A barge board of wall {wall} lies on the ends of ridge and plates only: pack it out {gap:.0} mm from \
                 the rafter, or plug it to the wall."
            ),
        ),
        Carried::Nothing => (
            NoticeLevel::Warn,
            "no-barge-board",
            format!(
                "An edge of the gable of wall {wall} has no barge board: no rafter stands square along it. Fit one on \
                 site."
            ),
        ),
    };
    carcass.remark(level, code, format!("wall {wall}"), text);
}

/// The board of one edge.
fn board(
    carcass: &Carcass<'_>,
    edge: &VergeEdge,
    (edges, lines): (&[VergeEdge], &[EavesLine]),
    back: f64,
    size: Section,
) -> Option<Draft> {
    let plane = carcass.surface.face(edge.face).plane;
    // Along the verge, upright: its top falls with its line, not across it.
    let up = edge.up(carcass.surface);
    let rise = plane.tan_pitch * plane.inward.dot(up);
    let slope = up.extend(rise).normalize();
    let normal = (up * -rise).extend(1.0).normalize();
    let foot = edge.ends[0].truncate();
    let flat = foot + edge.out * (back + size.thickness / 2.0 - edge.at());
    let top = flat.extend(plane.height_at(flat) + carcass.heights.upstand);
    let axes = boards::axes(top - normal * size.depth, slope, normal);
    let upright = |k: usize| {
        let away = if k == 1 { plane.inward } else { -plane.inward };
        let across = edges
            .iter()
            .filter(|o| o.face != edge.face && o.in_line(edge) && edge.joins(o) == Some(k == 1))
            .find_map(|o| meeting(plane, carcass.surface.face(o.face).plane, up));
        // Where two boards meet, over the line where their slopes do.
        let out = across.map_or(away, |n| if n.dot(away) < 0.0 { -n } else { n });
        Plane::through(edge.ends[k], out.extend(0.0))
    };
    let over = lines.iter().find_map(|l| Some((l, raised_at(l, edge)?)));
    let head = over.map_or_else(|| upright(1), |over| under(carcass, over, edge, back));
    let at_plate = lines.iter().find(|l| l.corners.iter().any(|c| (*c - foot).length() < AT_CORNER));
    let at_plate = at_plate.filter(|l| edge.ends[0].z - l.tail.plane.base_height < AT_CORNER);
    let fascia = carcass.job.timber.parts.fascia.map_or(0.0, |f| f.thickness);
    let start = at_plate.map_or_else(|| upright(0), |l| Plane { offset: l.face().offset + fascia, ..l.face() });
    let wall = edge.wall.or_else(|| carcass.surface.face(edge.face).walls.first().copied()).unwrap_or(WallId(0));
    let mut draft = Draft::between(MemberKind::BargeBoard, wall, size, axes, [start, head])?;
    draft.seeks.extend(over.map(|_| HEAD_CUT));
    for (k, other) in edges.iter().enumerate().filter(|(_, o)| o.in_line(edge)) {
        let same = core::ptr::eq(other, edge);
        match edge.joins(other).filter(|_| !same) {
            Some(true) => draft.mates.push((HEAD_CUT, k)),
            Some(false) if at_plate.is_none() => draft.mates.push((FOOT_CUT, k)),
            _ => {}
        }
    }
    Some(draft)
}

/// Unit plan vector square to the line where two slopes meet, if that crosses
/// a verge along `along`.
fn meeting(a: RoofPlane, b: RoofPlane, along: DVec2) -> Option<DVec2> {
    let across = (a.inward * a.tan_pitch - b.inward * b.tan_pitch).normalize_or_zero();
    (across.dot(along).abs() > LEAST_CROSSING).then_some(across)
}

/// The end of a line's eaves that starts where an edge ends: above it, as at a
/// half hip.
fn raised_at(line: &EavesLine, edge: &VergeEdge) -> Option<bool> {
    let at = start_above(line, edge)?;
    matches!(line.meets[usize::from(at)], Meets::Over(_)).then_some(at)
}

/// The end of a line's eaves that lies at the upper end of an edge.
fn start_above(line: &EavesLine, edge: &VergeEdge) -> Option<bool> {
    let top = edge.ends[1].truncate();
    [false, true].into_iter().find(|head| (line.corners[usize::from(*head)] - top).length() < AT_CORNER)
}

/// Whether the eaves of a line start above an edge and run out past `out` mm.
fn covers(line: &EavesLine, edge: &VergeEdge, out: f64) -> bool {
    start_above(line, edge).is_some() && line.out().dot(edge.out) > 0.0 && line.reach() > out
}

/// The plane at which a board ends under raised eaves: mitred with the fascia
/// there where both lie in one upright plane, and plumb otherwise.
fn under(carcass: &Carcass<'_>, (line, head): (&EavesLine, bool), edge: &VergeEdge, back: f64) -> Plane {
    if let Some(mitre) = line.mitre_with_barge(head, carcass.job) {
        return mitre;
    }
    let plane = carcass.surface.face(edge.face).plane;
    let lower = eaves_lines::raised(plane, carcass.heights.upstand);
    // Where the two roofs meet over the nearer of the two boards' backs.
    let at = edge.ends[1].truncate() + edge.out * (back.min(line.reach()) - edge.at());
    let gap = line.top.height_at(at) - lower.height_at(at);
    Plane::through((at + plane.inward * (gap / plane.tan_pitch)).extend(0.0), plane.inward.extend(0.0))
}
