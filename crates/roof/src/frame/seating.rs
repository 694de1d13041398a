//! The feet of hips and valleys: which plates they stand on, their birdsmouth,
//! and the eaves that end their tails.

use super::firring;
use super::heights::Heights;
use super::spines::{AT_CORNER, LEAST_SPLAY, Run};
use super::timber::{EndOn, Seat, TailEnd, Timber};
use crate::solution::MemberKind;
use geometry::surface::{ArcKind, FaceId, Surface, WallId};
use geometry::{DVec2, HalfPlan};
use job::{Job, TailCut};

/// The two walls at the plate corner where a hip or valley starts: the one on
/// its right and the one on its left.
pub fn corner_walls(surface: &Surface, run: &Run) -> Option<[WallId; 2]> {
    if !matches!(run.kind, MemberKind::HipRafter | MemberKind::ValleyRafter) {
        return None;
    }
    let foot = surface.node(run.from);
    // Lowest node on both faces' eaves: a plate corner.
    let eaves_at = |face: FaceId| {
        let f = surface.face(face);
        f.arcs.iter().any(|a| {
            let arc = surface.arc(*a);
            arc.kind == ArcKind::Eaves && (arc.from == run.from || arc.to == run.from)
        })
    };
    if !eaves_at(run.left) || !eaves_at(run.right) {
        return None;
    }
    let mut first = 0;
    for ring in &surface.loops {
        let n = ring.len();
        for (k, corner) in ring.iter().enumerate() {
            if (*corner - foot.truncate()).length() < AT_CORNER {
                let before = WallId((first + (k + n - 1) % n) as u32);
                let after = WallId((first + k) as u32);
                let on = |w: WallId, f: FaceId| surface.face_of_wall.get(w.index()).copied().flatten() == Some(f);
                if on(before, run.left) && on(after, run.right) {
                    return Some([after, before]);
                }
                if on(before, run.right) && on(after, run.left) {
                    return Some([before, after]);
                }
            }
        }
        first += n;
    }
    None
}

/// Where a hip starts on the line of one wall, above the plate of the other: a
/// half hip, or plates at different heights. The walls on its right and left,
/// and which of the two has the plate that its foot stands on.
pub fn raised_foot(surface: &Surface, run: &Run) -> Option<([WallId; 2], usize)> {
    if run.kind != MemberKind::HipRafter {
        return None;
    }
    let foot = surface.node(run.from).truncate();
    let arc_here = |face: FaceId, kind: ArcKind| {
        surface.face(face).arcs.iter().any(|a| {
            let arc = surface.arc(*a);
            arc.kind == kind && (arc.from == run.from || arc.to == run.from)
        })
    };
    let nearest = |face: FaceId| {
        let off = |w: &WallId| surface.wall_ends(*w).map_or(f64::INFINITY, |[a, b]| off_segment(foot, a, b));
        surface.face(face).walls.iter().copied().min_by(|a, b| off(a).total_cmp(&off(b)))
    };
    let faces = [run.right, run.left];
    let own = (0..2).find(|k| arc_here(faces[*k], ArcKind::Eaves) && arc_here(faces[1 - k], ArcKind::Verge))?;
    let walls = [nearest(run.right)?, nearest(run.left)?];
    // Where a flatter slope takes over above a gable no plate is near.
    let [a, b] = surface.wall_ends(walls[own])?;
    (off_segment(foot, a, b) < AT_CORNER).then_some((walls, own))
}

/// Distance of a point from a segment, mm.
fn off_segment(p: DVec2, a: DVec2, b: DVec2) -> f64 {
    let side = b - a;
    let share = ((p - a).dot(side) / side.length_squared().max(1e-9)).clamp(0.0, 1.0);
    (p - a - side * share).length()
}

/// The tails at the eaves of the walls on the right and left.
fn tail_ends(job: &Job, surface: &Surface, heights: &Heights, walls: [WallId; 2]) -> Vec<TailEnd> {
    let end = |wall: WallId| {
        let face = surface.face_of_wall.get(wall.index()).copied().flatten()?;
        Some(TailEnd::new(wall, surface.face(face).plane, heights.overhang(wall), heights.upstand, job.eaves.tail))
    };
    walls.into_iter().filter_map(end).collect()
}

/// Birdsmouth over the end of a raised plate. The tail runs out to the eaves
/// line of that plate, and is also cut at the eaves of the lower face where
/// these come nearer.
pub fn on_raised_plate(
    job: &Job,
    surface: &Surface,
    heights: &Heights,
    timber: &mut Timber,
    (walls, own): ([WallId; 2], usize),
) {
    timber.ends[0] = EndOn::Plate;
    let ends = tail_ends(job, surface, heights, walls);
    let Some(own) = ends.iter().copied().find(|t| t.wall == walls[own]) else { return };
    // How far out a fascia crosses each side of the hip.
    let out = |tail: &TailEnd, k: usize| {
        let side = if k == 0 { -timber.left() } else { timber.left() };
        let toward = tail.plane.inward.dot(timber.dir).max(LEAST_SPLAY);
        let at = timber.foot + side * timber.half[k];
        (tail.plane.inward.dot(at) - tail.plane.offset + tail.overhang) / toward
    };
    let bounds = |tail: &TailEnd| tail.wall == own.wall || (0..2).any(|k| out(tail, k) < out(&own, k));
    let tails: Vec<TailEnd> = ends.iter().copied().filter(bounds).collect();
    let toward = own.plane.inward.dot(timber.dir).max(LEAST_SPLAY);
    let across = own.plane.inward.dot(timber.left());
    let back = (timber.half[1] * across).max(-timber.half[0] * across) / toward;
    timber.seat =
        Some(Seat { heel: HalfPlan::through(timber.foot - timber.dir * back, timber.dir), level: timber.base });
    timber.tails = tails;
    firring::spine_onto_plate(heights, timber);
}

/// Birdsmouth over the plate corner and tail out to the eaves.
pub fn on_corner(job: &Job, surface: &Surface, heights: &Heights, timber: &mut Timber, walls: [WallId; 2]) {
    timber.ends[0] = EndOn::Plate;
    let mut tails = tail_ends(job, surface, heights, walls);
    if timber.kind == MemberKind::ValleyRafter && tails.iter().any(|t| t.cut != job.eaves.tail) {
        // Both halves of a valley end alike.
        tails.iter_mut().for_each(|t| t.cut = TailCut::Plumb);
    }
    // The heel is cut square across, so far out that both arrises of the heel
    // are clear of the plates. At an outer corner a point is clear when it is
    // outside either wall, at a re-entrant one when it is outside both.
    let clear = |k: usize| {
        let side = if k == 0 { -timber.left() } else { timber.left() };
        let steps = tails.iter().map(|tail| {
            let toward = tail.plane.inward.dot(timber.dir).max(LEAST_SPLAY);
            timber.half[k] * tail.plane.inward.dot(side) / toward
        });
        if timber.kind == MemberKind::ValleyRafter {
            steps.fold(f64::NEG_INFINITY, f64::max)
        } else {
            steps.fold(f64::INFINITY, f64::min)
        }
    };
    let back = clear(0).max(clear(1)).max(0.0);
    timber.seat =
        Some(Seat { heel: HalfPlan::through(timber.foot - timber.dir * back, timber.dir), level: timber.base });
    timber.tails = tails;
    firring::spine_onto_plate(heights, timber);
}
