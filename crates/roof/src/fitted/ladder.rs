//! Gable ladders: rungs between the rafter outside a gable and the one inside
//! it, square to both, their tops in line with the rafters'.

use super::boards::{self, Draft, FOOT_CUT, HEAD_CUT};
use super::contacts;
use super::verges::{self, Beside, VergeEdge};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made};
use crate::solution::{MemberKind, NoticeLevel};
use geometry::surface::WallId;
use geometry::{DVec2, Plane};
use job::SpacedTimber;

/// Rafters nearer to one another than this get no rungs between them, mm: they
/// are packed and bolted together.
pub const NARROWEST: f64 = 75.0;

/// A rung bears fully when so much of its end lies on the rafter (a share).
const FULL_BEARING: f64 = 0.99;

/// A rung with something in its way is moved by steps of this share of its
/// thickness.
const MOVED_BY: f64 = 0.5;

/// Most steps by which a rung is moved either way.
const MOST_MOVES: f64 = 12.0;

/// The rafter outside a gable ends at the verge to within this, mm.
const AT_VERGE: f64 = 0.05;

/// Rungs further apart than the centres by less than this are not worth a
/// word, mm.
const WORTH_TELLING: f64 = 1.0;

/// Fit the rungs.
///
/// # Errors
/// None: a ladder without room is left out with a remark.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(wanted) = carcass.job.timber.parts.ladder else { return Ok(()) };
    let rafter = carcass.job.timber.rafter.size;
    if wanted.size.depth > rafter.depth {
        carcass.remark(
            NoticeLevel::Warn,
            "rungs-too-deep",
            "gable ladders",
            format!(
                "The rungs are {:.0} mm deep and the rafters {:.0} mm: gable ladders are left out. Make the rungs no \
                 deeper than the rafters.",
                wanted.size.depth, rafter.depth
            ),
        );
        return Ok(());
    }
    for edge in verges::of(carcass.surface).iter().filter(|e| e.is_square(carcass.surface)) {
        let beside = verges::rafters(carcass, edge);
        let outermost = edge.at() + carcass.job.verge.overhang;
        let outside = |r: &&Beside| r.sides[0] > edge.at() && (r.sides[1] - outermost).abs() < AT_VERGE;
        for outer in beside.iter().filter(outside) {
            let inside = beside.iter().filter(|r| r.sides[1] <= edge.at() + WORTH_TELLING);
            let along = |r: &&Beside| r.reach[1].min(outer.reach[1]) - r.reach[0].max(outer.reach[0]) > 0.0;
            let Some(nearest) = inside.clone().filter(along).map(|r| r.sides[1]).reduce(f64::max) else { continue };
            for inner in inside.filter(along).filter(|r| r.sides[1] >= nearest) {
                rungs(carcass, edge, [inner, outer], wanted);
            }
        }
    }
    Ok(())
}

/// The rungs between two rafters.
fn rungs(carcass: &mut Carcass<'_>, edge: &VergeEdge, [inner, outer]: [&Beside; 2], wanted: SpacedTimber) {
    if outer.sides[0] - inner.sides[1] < NARROWEST {
        return;
    }
    let plane = carcass.surface.face(edge.face).plane;
    let per_run = (1.0 + plane.tan_pitch * plane.tan_pitch).sqrt();
    let half = wanted.size.thickness / 2.0;
    // Up the slope, of the rungs' middles: behind the tail, and clear of a
    // plumb cut at the head.
    let low = outer.reach[0].max(inner.reach[0]) * per_run + half;
    let high = outer.reach[1].min(inner.reach[1]) * per_run - wanted.size.depth * plane.tan_pitch - half;
    if high < low {
        return;
    }
    let bays = ((high - low) / wanted.centres).ceil().max(1.0);
    let bay = (high - low) / bays;
    let mut placed: Vec<f64> = Vec::new();
    let step = wanted.size.thickness * MOVED_BY;
    let moves = (bay / 2.0 / step).floor().clamp(0.0, MOST_MOVES) as i32;
    for k in 0..=bays as u32 {
        let at = low + bay * f64::from(k);
        let tries = (0..=moves).flat_map(|m| [f64::from(m), -f64::from(m)]);
        let found = tries.map(|m| at + m * step).filter(|x| *x >= low && *x <= high).find_map(|x| {
            let draft = rung(carcass, edge, [inner, outer], wanted, x)?;
            Some((x, draft))
        });
        if let Some((x, draft)) = found {
            for id in boards::settle(carcass, vec![Some(draft)], &[]).into_iter().flatten() {
                carcass.timber_mut(id).slot = k as u16;
            }
            placed.push(x);
        }
    }
    let widest = placed.windows(2).map(|w| w[1] - w[0]).fold(0.0, f64::max);
    if widest > wanted.centres + WORTH_TELLING {
        let name = edge
            .wall
            .and_then(|w| carcass.job.walls.get(w.index()))
            .map_or_else(|| "a gable".to_string(), |w| format!("wall {}", w.letter));
        carcass.remark(
            NoticeLevel::Note,
            "rungs-moved",
            name.clone(),
            format!(
                "A rung of the gable ladder of {name} makes way for what stands there: the widest bay is {widest:.0} mm \
                 from centre to centre."
            ),
        );
    }
}

/// A rung with its middle `x` mm up the slope from plumb over the plate line;
/// `None` if something stands in its way or it would not bear fully.
fn rung(
    carcass: &Carcass<'_>,
    edge: &VergeEdge,
    [inner, outer]: [&Beside; 2],
    wanted: SpacedTimber,
    x: f64,
) -> Option<Draft> {
    let plane = carcass.surface.face(edge.face).plane;
    let slope = plane.inward.extend(plane.tan_pitch).normalize();
    let normal = (plane.inward * -plane.tan_pitch).extend(1.0).normalize();
    let flat: DVec2 = plane.inward * plane.offset + edge.out * inner.sides[1];
    let top = flat.extend(plane.base_height + carcass.heights.upstand) + slope * x;
    let axes = boards::axes(top - normal * wanted.size.depth, edge.out.extend(0.0), normal);
    let ends = [
        Plane { normal: -edge.out.extend(0.0), offset: -inner.sides[1] },
        Plane { normal: edge.out.extend(0.0), offset: outer.sides[0] },
    ];
    let wall = edge.wall.or_else(|| carcass.surface.face(edge.face).walls.first().copied()).unwrap_or(WallId(0));
    let mut draft = Draft::between(MemberKind::GableLadder, wall, wanted.size, axes, ends)?;
    let area = wanted.size.thickness * wanted.size.depth * FULL_BEARING;
    for (cut, id) in [(FOOT_CUT, inner.id), (HEAD_CUT, outer.id)] {
        if contacts::area(&draft.cells, Made::Cut(cut), carcass.wood(id)) < area {
            return None;
        }
        draft.cuts.get_mut(usize::from(cut))?.purpose = CutUse::Against(id);
    }
    carcass.in_the_way(&draft.cells).is_empty().then_some(draft)
}
