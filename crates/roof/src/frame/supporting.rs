//! Supporting valleys: where two valleys meet below the ridge inside one
//! slope, one of them runs on up that slope to the next timber and the other
//! is framed against it.

use super::PARALLEL;
use super::joints::Joints;
use super::timber::{EndOn, Timber, TimberId};
use crate::solution::MemberKind;
use geometry::DVec2;
use geometry::surface::{ArcKind, FaceId, Surface};

/// A straight line inside a face that carries a timber.
#[derive(Clone, Copy, Debug)]
pub struct FaceLine {
    /// The face it crosses.
    pub face: FaceId,
    /// Lower end in plan, mm.
    pub from: DVec2,
    /// Upper end in plan, mm.
    pub to: DVec2,
    /// The timber.
    pub timber: TimberId,
}

/// A corner of a face outline turns back on itself when its sine is below this.
const REFLEX_SINE: f64 = -1e-3;

/// A line carries a valley on when it leaves within about 10° of it (cosine).
const CARRIES_ON: f64 = 0.985;

/// What a ray meets nearer than this is the joint it starts from, mm.
const PAST_JOINT: f64 = 1.0;

/// Run supporting valleys on and return the lines they make inside faces.
pub fn extend(
    surface: &Surface,
    joints: &Joints,
    timbers: &mut [Timber],
    of_arc: &[Option<TimberId>],
) -> Vec<FaceLine> {
    let mut lines: Vec<FaceLine> = Vec::new();
    for (f, face) in surface.faces.iter().enumerate() {
        let n = face.outline.len();
        for k in 0..n {
            let before = face.arcs[(k + n - 1) % n];
            let after = face.arcs[k];
            if surface.arc(before).kind != ArcKind::Valley || surface.arc(after).kind != ArcKind::Valley {
                continue;
            }
            let at = surface.node(face.outline[k]).truncate();
            let came = at - surface.node(face.outline[(k + n - 1) % n]).truncate();
            let goes = surface.node(face.outline[(k + 1) % n]).truncate() - at;
            if came.normalize_or_zero().perp_dot(goes.normalize_or_zero()) > REFLEX_SINE {
                continue;
            }
            // The longer valley carries on; of two alike, the one that comes first round the face.
            let candidates = [of_arc[before.index()], of_arc[after.index()]];
            let joint = joints.of(face.outline[k]);
            let chosen = candidates
                .iter()
                .flatten()
                .filter(|id| {
                    let t = &timbers[id.index()];
                    t.kind == MemberKind::ValleyRafter && t.ends[1] == EndOn::Joint(joint)
                })
                .fold(None::<TimberId>, |best, id| match best {
                    Some(b) if timbers[b.index()].run >= timbers[id.index()].run - 1.0 => Some(b),
                    _ => Some(*id),
                });
            let Some(id) = chosen else { continue };
            let face_id = FaceId(f as u32);
            let start = timbers[id.index()].head();
            let dir = timbers[id.index()].dir;
            if goes_on(surface, joints, joint, dir) {
                continue;
            }
            let Some((reach, end)) = next_line(surface, face_id, &lines, of_arc, start, dir) else { continue };
            let timber = &mut timbers[id.index()];
            timber.run += reach;
            timber.through.push(joint);
            timber.ends[1] = end;
            lines.push(FaceLine { face: face_id, from: start, to: start + dir * reach, timber: id });
        }
    }
    lines
}

/// Whether a line of the surface already carries on from a joint in nearly
/// this direction: then the valley has something to hang from.
fn goes_on(surface: &Surface, joints: &Joints, joint: u32, dir: DVec2) -> bool {
    surface.arcs.iter().any(|arc| {
        let (near, far) = match (joints.of(arc.from) == joint, joints.of(arc.to) == joint) {
            (true, false) => (arc.from, arc.to),
            (false, true) => (arc.to, arc.from),
            _ => return false,
        };
        (surface.node(far) - surface.node(near)).truncate().normalize_or_zero().dot(dir) > CARRIES_ON
    })
}

/// The first line that a ray inside a face meets, and what lies there.
fn next_line(
    surface: &Surface,
    face: FaceId,
    lines: &[FaceLine],
    of_arc: &[Option<TimberId>],
    start: DVec2,
    dir: DVec2,
) -> Option<(f64, EndOn)> {
    let outline = &surface.face(face).outline;
    let arcs = &surface.face(face).arcs;
    let n = outline.len();
    let borders = (0..n).map(|k| {
        let timber = of_arc[arcs[k].index()];
        (surface.node(outline[k]).truncate(), surface.node(outline[(k + 1) % n]).truncate(), timber)
    });
    let inner = lines.iter().filter(|l| l.face == face).map(|l| (l.from, l.to, Some(l.timber)));
    borders
        .chain(inner)
        .filter_map(|(a, b, timber)| {
            let side = b - a;
            let turn = dir.perp_dot(side);
            if turn.abs() < PARALLEL * side.length() {
                return None;
            }
            let reach = (a - start).perp_dot(side) / turn;
            let share = (a - start).perp_dot(dir) / turn;
            // Past the joint itself, and between the ends of the side.
            (reach > PAST_JOINT && (-PARALLEL..=1.0 + PARALLEL).contains(&share)).then_some((reach, timber))
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(reach, timber)| (reach, timber.map_or(EndOn::Bare, EndOn::Timber)))
}
