//! Faces lie in the planes of their walls, rise from the wall line, and bend
//! at their arcs as the arcs' kinds say.

use super::{CheckFailure, OFF_PLANE};
use crate::surface::types::{ArcId, ArcKind, FaceId, RoofFace, RoofPlane, Slope, Surface, WallId, WallProfile};
use crate::{Angle, DVec2};

/// Slopes across a line that differ by less than this (mm per mm) bend
/// neither way: over the longest roof it is less than nodes are moved.
const NO_BEND: f64 = 1e-6;

pub(super) fn check(surface: &Surface, walls: &[WallProfile], failures: &mut Vec<CheckFailure>) {
    let corners: Vec<(DVec2, DVec2)> =
        surface.loops.iter().flat_map(|ring| ring.iter().copied().zip(ring.iter().copied().cycle().skip(1))).collect();
    for (k, face) in surface.faces.iter().enumerate() {
        let id = FaceId(k as u32);
        for &node in &face.outline {
            let at = surface.node(node);
            let off = (face.plane.height_at(at.truncate()) - at.z).abs()
                / (1.0 + face.plane.tan_pitch * face.plane.tan_pitch).sqrt();
            // Written so that a NaN fails.
            if !(off <= OFF_PLANE) {
                failures.push(CheckFailure::OffPlane { face: id, node, off, at });
            }
        }
        let rises = face.walls.iter().all(|&w| rises_from(&face.plane, corners[w.index()], &walls[w.index()]));
        if !rises || !touches_its_foot(surface, face) {
            failures.push(CheckFailure::NotOnItsWall { face: id, at: surface.node(face.outline[0]) });
        }
    }
    let lowest = walls.iter().map(|w| w.plate_height).fold(f64::INFINITY, f64::min);
    for (k, (wall, face)) in walls.iter().zip(&surface.face_of_wall).enumerate() {
        if slope_at(wall, lowest).is_some() && face.is_none() {
            failures.push(CheckFailure::NoFace { wall: WallId(k as u32) });
        }
    }
    for (k, arc) in surface.arcs.iter().enumerate() {
        let (from, to) = (surface.node(arc.from), surface.node(arc.to));
        let plane = |f: Option<FaceId>| f.map(|f| surface.face(f).plane);
        if !bends_as_named(arc.kind, [plane(arc.left), plane(arc.right)], (to - from).truncate(), to.z - from.z) {
            failures.push(CheckFailure::WrongKind { arc: ArcId(k as u32), at: from });
        }
    }
}

/// The pitch of a wall at a height, degrees, if it slopes there.
fn slope_at(wall: &WallProfile, z: f64) -> Option<f64> {
    if z < wall.plate_height {
        return None;
    }
    let step = wall.steps.iter().take_while(|s| s.from_height <= z).last()?;
    match step.slope {
        Slope::Vertical => None,
        Slope::Pitch(pitch) => Some(pitch),
    }
}

/// How far inside its plate line a wall's front stands at a height, mm.
fn inset_at(wall: &WallProfile, z: f64) -> f64 {
    let mut inset = 0.0;
    for (k, step) in wall.steps.iter().enumerate() {
        let from = step.from_height.max(wall.plate_height);
        let to = wall.steps.get(k + 1).map_or(z, |next| next.from_height.min(z));
        if let (Slope::Pitch(pitch), true) = (step.slope, to > from) {
            inset += (to - from) / Angle::deg(pitch).tan();
        }
    }
    inset
}

/// Whether a plane is that of a wall with this profile along `from`..`to`.
fn rises_from(plane: &RoofPlane, (from, to): (DVec2, DVec2), wall: &WallProfile) -> bool {
    let inward = (to - from).normalize_or_zero().perp();
    let shift = inward * inset_at(wall, plane.base_height);
    let on_line = [from, to].iter().all(|&p| (plane.height_at(p + shift) - plane.base_height).abs() <= OFF_PLANE);
    let pitched = slope_at(wall, plane.base_height) == Some(plane.pitch_deg)
        && (Angle::deg(plane.pitch_deg).tan() - plane.tan_pitch).abs() < NO_BEND;
    on_line && pitched && plane.inward.dot(inward) > 0.0
}

/// Whether a face starts on the line where its plane does, and is nowhere
/// below it.
fn touches_its_foot(surface: &Surface, face: &RoofFace) -> bool {
    let above = |z: f64| z - face.plane.base_height;
    let none_below = face.outline.iter().all(|&n| above(surface.node(n).z) >= -OFF_PLANE);
    let foot = face.arcs.iter().any(|&a| {
        let arc = surface.arc(a);
        let level = [arc.from, arc.to].iter().all(|&n| above(surface.node(n).z).abs() <= OFF_PLANE);
        level && matches!(arc.kind, ArcKind::Eaves | ArcKind::PitchBreak)
    });
    none_below && foot
}

/// Whether the planes beside an arc bend as its kind says. `way` leads up.
fn bends_as_named(kind: ArcKind, planes: [Option<RoofPlane>; 2], way: DVec2, rise: f64) -> bool {
    let to_left = way.normalize_or_zero().perp();
    let climb = |p: &RoofPlane| p.tan_pitch * p.inward.dot(to_left);
    let level = rise.abs() <= OFF_PLANE;
    match (kind, planes) {
        (ArcKind::Eaves, [Some(face), None]) => level && climb(&face) > 0.0,
        (ArcKind::Eaves, [None, Some(face)]) => level && climb(&face) < 0.0,
        (ArcKind::Verge | ArcKind::Abutment, [Some(_), None] | [None, Some(_)]) => true,
        (ArcKind::Ridge, [Some(l), Some(r)]) => level && climb(&l) < 0.0 && climb(&r) > 0.0,
        (ArcKind::PitchBreak, [Some(l), Some(r)]) => level && l.inward.dot(r.inward) > 0.0,
        (ArcKind::Hip | ArcKind::BrokenHip, [Some(l), Some(r)]) => climb(&l) - climb(&r) <= NO_BEND,
        (ArcKind::Valley, [Some(l), Some(r)]) => climb(&l) - climb(&r) >= -NO_BEND,
        _ => false,
    }
}
