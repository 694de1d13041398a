//! Faces lie in the planes of their walls, rise from the wall line, and bend
//! at their arcs as the arcs' kinds say.

use super::{CheckFailure, OFF_PLANE, beyond};
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
            if beyond(off, OFF_PLANE) {
                failures.push(CheckFailure::OffPlane { face: id, node, off, at });
            }
        }
        let founded = || {
            has_foot(surface, face, id)
                // Where a face is pinched to nothing its upper part hangs on
                // the lower one by a corner.
                || surface.faces.iter().enumerate().any(|(other, f)| {
                    f.plane == face.plane
                        && other != k
                        && f.outline.iter().any(|n| face.outline.contains(n))
                        && has_foot(surface, f, FaceId(other as u32))
                })
        };
        let none_below = face.outline.iter().all(|&n| surface.node(n).z >= face.plane.base_height - OFF_PLANE);
        let rises = face.walls.iter().all(|&w| rises_from(&face.plane, corners[w.index()], &walls[w.index()]));
        if !rises || !none_below || !founded() {
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

/// Whether a plane is that of some step of a wall along `from`..`to`.
fn rises_from(plane: &RoofPlane, (from, to): (DVec2, DVec2), wall: &WallProfile) -> bool {
    let inward = (to - from).normalize_or_zero().perp();
    let slant = (1.0 + plane.tan_pitch * plane.tan_pitch).sqrt();
    let is_step = |base: f64| {
        let shift = inward * inset_at(wall, base);
        let off = |p: DVec2| (plane.height_at(p + shift) - base).abs() / slant;
        slope_at(wall, base) == Some(plane.pitch_deg) && off(from) <= OFF_PLANE && off(to) <= OFF_PLANE
    };
    let pitched = (Angle::deg(plane.pitch_deg).tan() - plane.tan_pitch).abs() < NO_BEND;
    pitched
        && plane.inward.dot(inward) > 0.0
        && wall.steps.iter().any(|step| is_step(step.from_height.max(wall.plate_height)))
}

/// Whether a face starts on a foot: the line where its plane does, or a line
/// higher up where it took a steeper face over.
fn has_foot(surface: &Surface, face: &RoofFace, id: FaceId) -> bool {
    let heights = face.outline.iter().map(|&n| surface.node(n).z);
    let lowest = heights.fold(f64::INFINITY, f64::min);
    face.arcs.iter().any(|&a| {
        let arc = surface.arc(a);
        let (from, to) = (surface.node(arc.from), surface.node(arc.to));
        let above = if arc.left == Some(id) { (to - from).truncate().perp() } else { -(to - from).truncate().perp() };
        let climbs = face.plane.inward.dot(above) > 0.0;
        to.z - lowest <= OFF_PLANE && climbs && matches!(arc.kind, ArcKind::Eaves | ArcKind::PitchBreak)
    })
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
