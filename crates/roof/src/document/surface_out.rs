//! Plan, faces and lines of the document.

use super::{beds, survey};
use crate::frame::heights::Heights;
use crate::frame::is_ridge;
use crate::solution::{FaceOut, LineKind, LineOut, PlanOut, WallOut};
use geometry::surface::{ArcKind, FaceId, RoofArc, RoofPlane, Surface, WallId};
use geometry::{Angle, DVec2, DVec3};
use job::Job;

fn letter(job: &Job, wall: WallId) -> String {
    job.walls.get(wall.index()).map_or_else(String::new, |w| w.letter.clone())
}

fn face_id(job: &Job, surface: &Surface, face: FaceId) -> String {
    surface.face(face).walls.first().map_or_else(String::new, |w| letter(job, *w))
}

/// The plan as solved.
pub fn plan(job: &Job, surface: &Surface, heights: &Heights) -> PlanOut {
    let mut loops = surface.loops.iter().map(|ring| ring.iter().map(|p| p.to_array()).collect::<Vec<_>>());
    let corners = loops.next().unwrap_or_default();
    let beds = beds::of_walls(job);
    let mut walls = Vec::with_capacity(job.walls.len());
    for ring in &surface.loops {
        for (k, from) in ring.iter().enumerate() {
            let to = ring[(k + 1) % ring.len()];
            let id = WallId(walls.len() as u32);
            let Some(wall) = job.walls.get(id.index()) else { continue };
            walls.push(WallOut {
                id: wall.letter.clone(),
                from: from.to_array(),
                to: to.to_array(),
                length_mm: (to - *from).length(),
                gable: wall.gable,
                pitch_deg: (!wall.gable).then_some(wall.pitch_deg),
                overhang_mm: heights.overhang(id),
                bed: beds.get(id.index()).copied().flatten(),
            });
        }
    }
    PlanOut {
        corners,
        measured: job.setting_out.plates.clone(),
        holes: loops.collect(),
        closing_error_mm: survey::closing_error(job),
        survey: survey::of(job),
        walls,
    }
}

/// Plan area inside the plate lines, mm².
pub fn plan_area(surface: &Surface) -> f64 {
    surface.loops.iter().map(|ring| ring_area(ring.iter().copied())).sum()
}

fn ring_area(ring: impl Iterator<Item = DVec2>) -> f64 {
    let points: Vec<DVec2> = ring.collect();
    let Some(&o) = points.first() else { return 0.0 };
    points.windows(2).map(|w| (w[0] - o).perp_dot(w[1] - o)).sum::<f64>() / 2.0
}

/// The sloping faces.
pub fn faces(job: &Job, surface: &Surface) -> Vec<FaceOut> {
    surface
        .faces
        .iter()
        .enumerate()
        .map(|(k, f)| {
            let area = ring_area(f.outline.iter().map(|n| surface.node(*n).truncate()));
            FaceOut {
                id: face_id(job, surface, FaceId(k as u32)),
                walls: f.walls.iter().map(|w| letter(job, *w)).collect(),
                pitch_deg: f.plane.pitch_deg,
                plan_area_m2: area / 1e6,
                slope_area_m2: area / Angle::deg(f.plane.pitch_deg).cos() / 1e6,
                outline: f.outline.iter().map(|n| surface.node(*n).to_array()).collect(),
            }
        })
        .collect()
}

/// The lines between faces and along their edges.
pub fn lines(job: &Job, surface: &Surface) -> Vec<LineOut> {
    surface.arcs.iter().map(|arc| line(job, surface, arc)).collect()
}

fn line(job: &Job, surface: &Surface, arc: &RoofArc) -> LineOut {
    let (from, to) = (surface.node(arc.from), surface.node(arc.to));
    let along = to - from;
    let run = along.truncate().length();
    let kind = match arc.kind {
        _ if is_ridge(surface, arc) => LineKind::Ridge,
        ArcKind::Ridge => LineKind::Ridge,
        ArcKind::Hip | ArcKind::BrokenHip => LineKind::Hip,
        ArcKind::Valley => LineKind::Valley,
        ArcKind::Eaves => LineKind::Eaves,
        ArcKind::Verge | ArcKind::Abutment => LineKind::Verge,
        ArcKind::PitchBreak => LineKind::PitchBreak,
    };
    let sides = [arc.left, arc.right];
    let backing_deg = match (kind, sides) {
        (LineKind::Hip | LineKind::Valley, [Some(l), Some(r)]) => {
            let planes = [surface.face(l).plane, surface.face(r).plane];
            Some([backing(along, planes[0], 1.0), backing(along, planes[1], -1.0)])
        }
        _ => None,
    };
    LineOut {
        kind,
        faces: sides.iter().flatten().map(|f| face_id(job, surface, *f)).collect(),
        from: from.to_array(),
        to: to.to_array(),
        length_mm: along.length(),
        pitch_deg: Angle::from_rise_run(along.z.abs(), run).to_deg(),
        backing_deg,
    }
}

/// Angle between a face and the level square across its hip or valley,
/// degrees: positive where the face falls away. `side` is 1 on the left.
fn backing(along: DVec3, plane: RoofPlane, side: f64) -> f64 {
    let dir = along.normalize_or_zero();
    let across = along.truncate().perp().normalize_or_zero().extend(0.0) * side;
    let up = dir.cross(across) * side;
    let normal = (plane.inward * -plane.tan_pitch).extend(1.0);
    Angle::from_rise_run(normal.dot(across), normal.dot(up)).to_deg()
}
