//! Noggins: rows of short timbers between the rafters of a face, square to
//! them, set a little up and down by turns so that both ends can be nailed.

use super::boards::{self, Draft, FOOT_CUT, HEAD_CUT};
use super::contacts;
use super::left_out::Tally;
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::solution::{MemberKind, NoticeLevel};
use geometry::surface::{FaceId, RoofPlane, WallId};
use geometry::{DVec2, Plane};
use job::NogginTimber;

/// A bay narrower than this has no noggin, mm: there is no room to nail it.
const NARROWEST: f64 = 75.0;

/// A noggin needs so much of its end on the timber beside it (a share).
const LEAST_BEARING: f64 = 0.5;

/// Bays wider than the centres by more than this are openings, mm.
const WIDER: f64 = 1.0;

/// A line of the roof carries a timber when that lies within this of it, mm.
const ON_LINE: f64 = 5.0;

/// A side of a bay: the timber, and how far along the row its near side is.
#[derive(Clone, Copy, Debug)]
struct Side {
    id: TimberId,
    /// Its middle along the axis of the face, mm.
    at: f64,
    /// Outward planes of the bay at this timber, if the bay lies before it and
    /// if it lies beyond it.
    planes: [Plane; 2],
}

/// Fit the rows.
///
/// # Errors
/// None: a noggin without room is left out with a remark.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(wanted) = carcass.job.timber.parts.noggin else { return Ok(()) };
    let mut tally = Tally::of("noggins");
    for f in 0..carcass.surface.faces.len() {
        let face = FaceId(f as u32);
        let plane = carcass.surface.face(face).plane;
        let depths =
            carcass.surface.face(face).outline.iter().map(|n| inward(&plane, carcass.surface.node(*n).truncate()));
        let [low, high] = depths.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], d| [lo.min(d), hi.max(d)]);
        let rafters = rafters(carcass, face);
        for row in 1..=wanted.rows {
            let d = low + (high - low) * f64::from(row) / (f64::from(wanted.rows) + 1.0);
            one_row(carcass, face, &rafters, (row, d), wanted, &mut tally);
        }
    }
    let then = "Fit what keeps these rafters apart on site.";
    tally.tell(carcass, NoticeLevel::Note, "noggins-left-out", then);
    Ok(())
}

/// Distance of a plan point up a face from the line where its plane is at the
/// height of its plate, mm.
fn inward(plane: &RoofPlane, p: DVec2) -> f64 {
    plane.inward.dot(p) - plane.offset
}

/// Unit plan vector along a face, its wall on the right.
fn axis(plane: &RoofPlane) -> DVec2 {
    -plane.inward.perp()
}

/// The rafters of a face in the order of their stations, with their reach up it.
fn rafters(carcass: &Carcass<'_>, face: FaceId) -> Vec<(Side, [f64; 2])> {
    let plane = carcass.surface.face(face).plane;
    let axis = axis(&plane);
    let mut out: Vec<(Side, [f64; 2])> = carcass
        .built()
        .filter(|(_, t)| t.role == Role::Rafter { face })
        .map(|(id, t)| {
            let points = carcass.wood(id).iter().flat_map(|c| &c.points).map(|p| inward(&plane, p.truncate()));
            let reach = points.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], d| [lo.min(d), hi.max(d)]);
            (side(id, t, axis, axis.dot(t.foot)), reach)
        })
        .collect();
    out.sort_by(|a, b| a.0.at.total_cmp(&b.0.at));
    out
}

/// A timber as the side of a bay.
fn side(id: TimberId, timber: &Timber, axis: DVec2, at: f64) -> Side {
    let facing = |toward: DVec2| {
        let half = timber.side_facing(toward).flipped();
        Plane { normal: half.normal.extend(0.0), offset: half.offset }
    };
    Side { id, at, planes: [facing(-axis), facing(axis)] }
}

/// One row.
fn one_row(
    carcass: &mut Carcass<'_>,
    face: FaceId,
    rafters: &[(Side, [f64; 2])],
    (row, d): (u32, f64),
    wanted: NogginTimber,
    tally: &mut Tally,
) {
    let plane = carcass.surface.face(face).plane;
    let wall = carcass.surface.face(face).walls.first().copied();
    let mut up = false;
    for [from, to] in stretches(carcass, face, d) {
        let within = rafters.iter().filter(|(s, reach)| s.at > from && s.at < to && reach[0] < d && reach[1] > d);
        let mut sides: Vec<Side> = within.map(|(s, _)| *s).collect();
        let closing =
            [from, to].map(|at| spine_at(carcass, face, axis(&plane) * at + plane.inward * (plane.offset + d)));
        let timber = |k: usize| closing[k].map(|id| side(id, carcass.timber(id), axis(&plane), [from, to][k]));
        let (first, last) = (timber(0), timber(1));
        sides.splice(0..0, first);
        sides.extend(last);
        for pair in sides.windows(2) {
            let [a, b] = [pair[0], pair[1]];
            if b.at - a.at > carcass.job.timber.rafter.centres + WIDER {
                continue;
            }
            up = !up;
            let shift = if up { 0.5 } else { -0.5 } * wanted.size.thickness;
            match noggin(carcass, face, [a, b], d, shift, wanted) {
                Fit::Fits(draft) => {
                    for id in boards::settle(carcass, vec![Some(*draft)], &[]).into_iter().flatten() {
                        carcass.timber_mut(id).slot = (row - 1) as u16;
                    }
                    tally.fitted();
                }
                Fit::Blocked => tally.missed("other timbers stand in their place or close the bay", wall),
                Fit::Narrow => {}
            }
        }
    }
}

/// Whether a noggin fits a bay.
enum Fit {
    Fits(Box<Draft>),
    /// Something stands in its place, or what closes the bay is too shallow.
    Blocked,
    /// The bay is too narrow for one.
    Narrow,
}

/// The noggin of one bay, its middle `d` mm up the face in plan and moved
/// `shift` mm up the slope.
fn noggin(carcass: &Carcass<'_>, face: FaceId, [a, b]: [Side; 2], d: f64, shift: f64, wanted: NogginTimber) -> Fit {
    let plane = carcass.surface.face(face).plane;
    let slope = plane.inward.extend(plane.tan_pitch).normalize();
    let normal = (plane.inward * -plane.tan_pitch).extend(1.0).normalize();
    let flat = axis(&plane) * ((a.at + b.at) / 2.0) + plane.inward * (plane.offset + d);
    let top = flat.extend(plane.height_at(flat) + carcass.heights.upstand) + slope * shift;
    let axes = boards::axes(top - normal * wanted.size.depth, axis(&plane).extend(0.0), normal);
    let wall = carcass.surface.face(face).walls.first().copied().unwrap_or(WallId(0));
    let Some(mut draft) = Draft::between(MemberKind::Noggin, wall, wanted.size, axes, [a.planes[1], b.planes[0]])
    else {
        return Fit::Narrow;
    };
    let along = |p: &geometry::DVec3| axes.along.dot(*p);
    let reach = |tag: Made| {
        let faces = draft.cells.iter().flat_map(|c| c.faces.iter().filter(|f| f.tag == tag).map(move |f| (c, f)));
        faces
            .flat_map(|(c, f)| f.ring.iter().map(|k| along(&c.points[*k as usize])))
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)])
    };
    if reach(Made::Cut(HEAD_CUT))[0] - reach(Made::Cut(FOOT_CUT))[1] < NARROWEST {
        return Fit::Narrow;
    }
    let area = wanted.size.thickness * wanted.size.depth * LEAST_BEARING;
    for (cut, id) in [(FOOT_CUT, a.id), (HEAD_CUT, b.id)] {
        if contacts::area(&draft.cells, Made::Cut(cut), carcass.wood(id)) < area {
            return Fit::Blocked;
        }
        if let Some(cut) = draft.cuts.get_mut(usize::from(cut)) {
            cut.purpose = CutUse::Against(id);
        }
    }
    let free = !carcass.in_an_opening(&draft.cells) && carcass.in_the_way(&draft.cells).is_empty();
    if free { Fit::Fits(Box::new(draft)) } else { Fit::Blocked }
}

/// Where a level line across a face lies inside it, as distances along its axis.
fn stretches(carcass: &Carcass<'_>, face: FaceId, d: f64) -> Vec<[f64; 2]> {
    let face = carcass.surface.face(face);
    let flat = |k: usize| {
        let p = carcass.surface.node(face.outline[k % face.outline.len()]).truncate();
        (axis(&face.plane).dot(p), inward(&face.plane, p) - d)
    };
    let mut at: Vec<f64> = (0..face.outline.len())
        .filter_map(|k| {
            let ((xa, ya), (xb, yb)) = (flat(k), flat(k + 1));
            ((ya <= 0.0) != (yb <= 0.0)).then(|| xa + (xb - xa) * (ya / (ya - yb)))
        })
        .collect();
    at.sort_by(f64::total_cmp);
    at.chunks_exact(2).map(|c| [c[0], c[1]]).collect()
}

/// The hip, valley or other timber on a line of the face at a plan point.
fn spine_at(carcass: &Carcass<'_>, face: FaceId, p: DVec2) -> Option<TimberId> {
    let on = |t: &Timber| {
        let of_face = matches!(t.role, Role::Spine { left, right } if left == face || right == face);
        let along = t.along(p);
        let off = t.dir.perp_dot(p - t.foot).abs();
        of_face && along > 0.0 && along < t.run && off < ON_LINE
    };
    carcass.built().find(|(_, t)| on(t)).map(|(id, _)| id)
}
