//! Gable ladders: rungs between the rafter outside a gable and the one inside
//! it, square to both, their tops in line with the rafters'.

use super::boards::{self, Draft, FOOT_CUT, HEAD_CUT};
use super::contacts;
use super::left_out::Tally;
use super::verges::{self, Beside, VergeEdge};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made};
use crate::solution::{MemberKind, NoticeLevel};
use geometry::DVec2;
use geometry::surface::WallId;
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

/// Why a rung finds no place.
const NO_BEARING: &str = "other timbers stand there, or the rafters beside them give no bearing";

/// Rungs further apart than the centres by less than this are not worth a
/// word, mm.
const WORTH_TELLING: f64 = 1.0;

/// Along a gable that strays from square by more than this share of the
/// rafters' centres, the rungs do not all reach one rafter.
const WIDEST_WEDGE: f64 = 0.5;

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
    let mut tally = Tally::of("rungs of the gable ladders");
    let mut bare: Vec<WallId> = Vec::new();
    for edge in verges::of(carcass.surface).iter().filter(|e| e.climbs()) {
        let (started, wall) = (carcass.next_id(), edge.wall);
        let beside = if edge.rises(carcass.surface) { verges::rafters(carcass, edge) } else { Vec::new() };
        let outermost = edge.at() + carcass.job.verge.overhang;
        let outside = |r: &&Beside| r.sides[0] > edge.at() && (r.sides[1] - outermost).abs() < AT_VERGE;
        for outer in beside.iter().filter(outside) {
            if edge.wedge(carcass.surface) > carcass.job.timber.rafter.centres * WIDEST_WEDGE {
                // The rafters run into the wall one by one: a rung goes to the nearest.
                rungs(carcass, edge, (&beside, outer), wanted, &mut tally);
                continue;
            }
            let inside = beside.iter().filter(|r| r.outmost <= edge.at() + WORTH_TELLING);
            let along = |r: &&Beside| r.reach[1].min(outer.reach[1]) - r.reach[0].max(outer.reach[0]) > 0.0;
            let Some(nearest) = inside.clone().filter(along).map(|r| r.sides[1]).reduce(f64::max) else { continue };
            for inner in inside.filter(along).filter(|r| r.sides[1] >= nearest) {
                rungs(carcass, edge, (core::slice::from_ref(inner), outer), wanted, &mut tally);
            }
        }
        let room = carcass.job.verge.overhang + carcass.job.verge.inset - rafter.thickness;
        if carcass.next_id() == started && room >= NARROWEST {
            bare.extend(wall.filter(|w| !bare.contains(w)));
        }
    }
    let then = "Fit them on site.";
    tally.tell(carcass, NoticeLevel::Warn, "rungs-left-out", then);
    for wall in bare {
        let letter = carcass.job.walls.get(wall.index()).map_or_else(String::new, |w| w.letter.clone());
        let text = format!(
            "A slope at the gable of wall {letter} has no ladder: no two rafters stand along its verge, inside the wall \
             and outside it. Carry the verge on site."
        );
        carcass.remark(NoticeLevel::Warn, "no-gable-ladder", format!("wall {letter}"), text);
    }
    Ok(())
}

/// Of some rafters, the one inside an edge that lies nearest to it this far up
/// the face, mm in plan.
fn nearest<'a>(inside: &'a [Beside], edge: &VergeEdge, up: f64) -> Option<&'a Beside> {
    // The tails run on past the end of the wall.
    let inside_wall = |r: &Beside| r.outer_at(up.max(0.0)) <= edge.at() + WORTH_TELLING;
    let here = |r: &&Beside| r.reach[0] < up && r.reach[1] > up && inside_wall(r);
    inside.iter().filter(here).max_by(|a, b| a.outer_at(up).total_cmp(&b.outer_at(up)))
}

/// The rungs between the rafter outside a gable and those inside.
fn rungs(
    carcass: &mut Carcass<'_>,
    edge: &VergeEdge,
    (inside, outer): (&[Beside], &Beside),
    wanted: SpacedTimber,
    tally: &mut Tally,
) {
    let plane = carcass.surface.face(edge.face).plane;
    let per_run = (1.0 + plane.tan_pitch * plane.tan_pitch).sqrt();
    let half = wanted.size.thickness / 2.0;
    let reach = |k: usize, pick: fn(f64, f64) -> f64| inside.iter().map(|r| r.reach[k]).reduce(pick);
    let (Some(lowest), Some(highest)) = (reach(0, f64::min), reach(1, f64::max)) else { return };
    // Up the slope, of the rungs' middles: behind the tail, and clear of a
    // plumb cut at the head.
    let low = outer.reach[0].max(lowest) * per_run + half;
    let high = outer.reach[1].min(highest) * per_run - wanted.size.depth * plane.tan_pitch - half;
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
        let mut narrow = false;
        let found = tries.map(|m| at + m * step).filter(|x| *x >= low && *x <= high).find_map(|x| {
            let inner = nearest(inside, edge, x / per_run)?;
            if outer.sides[0] - inner.outer_at(x / per_run) < NARROWEST {
                narrow = true;
                return None;
            }
            let draft = rung(carcass, edge, [inner, outer], wanted, x)?;
            Some((x, draft))
        });
        match found {
            Some((x, draft)) => {
                for id in boards::settle(carcass, vec![Some(draft)], &[]).into_iter().flatten() {
                    carcass.timber_mut(id).slot = k as u16;
                }
                placed.push(x);
                tally.fitted();
            }
            None if narrow => {}
            None => tally.missed(NO_BEARING, edge.wall),
        }
    }
    tell(carcass, edge, &placed, wanted);
}

/// Say where rungs had to make way.
fn tell(carcass: &mut Carcass<'_>, edge: &VergeEdge, placed: &[f64], wanted: SpacedTimber) {
    let widest = placed.windows(2).map(|w| w[1] - w[0]).fold(0.0, f64::max);
    let name = edge
        .wall
        .and_then(|w| carcass.job.walls.get(w.index()))
        .map_or_else(|| "a gable".to_string(), |w| format!("wall {}", w.letter));
    if widest > wanted.centres + WORTH_TELLING {
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

/// Unit plan vector along the eaves, out over an edge.
fn along_eaves(edge: &VergeEdge, inward: DVec2) -> DVec2 {
    let along = inward.perp();
    if along.dot(edge.out) < 0.0 { -along } else { along }
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
    // Level across the slope, whatever the gable does.
    let out = along_eaves(edge, plane.inward);
    let flat: DVec2 = plane.inward * plane.offset + out * out.dot(carcass.timber(inner.id).foot);
    let top = flat.extend(plane.base_height + carcass.heights.upstand) + slope * x;
    let axes = boards::axes(top - normal * wanted.size.depth, out.extend(0.0), normal);
    let ends = [inner.planes[1].flipped(), outer.planes[0].flipped()];
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
