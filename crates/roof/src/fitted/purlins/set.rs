//! How a purlin stands under its rafters: square to the slope or plumb.

use super::stretch;
use crate::carcass::Carcass;
use crate::fitted::beam::{Beam, EDGE, axes, covers, outward, upright};
use crate::frame::timber::{CutUse, Face, Made, Notch, Role, TimberId};
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::FaceId;
use geometry::{Angle, DVec2, DVec3, HalfPlan, Plane};
use job::{PurlinSet, PurlinTimber};

/// Purlins are drawn past their ends by this many times their thickness and
/// depth before they are cut, enough for lines down to about 3° to them.
const DRAWN_PAST: f64 = 24.0;

/// A purlin along a stretch of a face, before its ends are cut.
///
/// Square: the middle of its top lies square below the line on the pitch
/// plane, in the plane of the rafters' undersides. Plumb: its middle lies plumb
/// below that line, and its top where the rafters' seats want it.
pub fn drawn(carcass: &Carcass<'_>, purlin: &PurlinTimber, face: FaceId, inwards: f64, reach: [f64; 2]) -> Beam {
    let plane = carcass.surface.face(face).plane;
    let dir = stretch::along(carcass.surface, face);
    let flat = plane.inward * (plane.offset + inwards);
    let point = flat.extend(plane.height_at(flat));
    let up = match purlin.set {
        PurlinSet::Square => outward(plane),
        PurlinSet::Plumb => DVec3::Z,
    };
    let below = match purlin.set {
        PurlinSet::Square => under_rafters(carcass, face) * Angle::deg(plane.pitch_deg).cos(),
        PurlinSet::Plumb => {
            let outer = purlin.size.thickness / 2.0;
            under_rafters(carcass, face) + (outer - seat(carcass, purlin, face)) * plane.tan_pitch
        }
    };
    let past = DRAWN_PAST * (purlin.size.thickness + purlin.size.depth);
    let origin = point - up * (below + purlin.size.depth);
    Beam::new(MemberKind::Purlin, purlin.size, axes(origin, dir.extend(0.0), up), [reach[0] - past, reach[1] + past])
}

/// How far the rafters' undersides lie below the pitch plane, plumb, mm.
fn under_rafters(carcass: &Carcass<'_>, face: FaceId) -> f64 {
    let pitch = Angle::deg(carcass.surface.face(face).plane.pitch_deg);
    carcass.job.timber.rafter.size.depth / pitch.cos() - carcass.heights.upstand
}

/// Level width of the rafters' seats on a plumb purlin: all of its thickness,
/// unless that takes more off a rafter than the birdsmouth that the job asks
/// for (reference/geometry.md section 4: depth = seat · sin(pitch)).
fn seat(carcass: &Carcass<'_>, purlin: &PurlinTimber, face: FaceId) -> f64 {
    let pitch = Angle::deg(carcass.surface.face(face).plane.pitch_deg);
    purlin.size.thickness.min(carcass.job.timber.rafter.birdsmouth / pitch.sin())
}

/// The rafters that a purlin carries: those that sit on it with their whole
/// thickness are declared in contact, and the birdsmouths of all over a plumb
/// purlin are given back.
pub fn carries(carcass: &Carcass<'_>, beam: &mut Beam, purlin: &PurlinTimber, face: FaceId) -> Vec<(TimberId, Notch)> {
    let plumb = purlin.set == PurlinSet::Plumb;
    let inward = carcass.surface.face(face).plane.inward;
    let half = purlin.size.thickness / 2.0;
    let slope = beam.axes.across.dot(inward.extend(0.0));
    let width = if plumb { [-half, seat(carcass, purlin, face) - half] } else { [-half * slope, half * slope] };
    let middle = beam.axes.origin + beam.axes.up * purlin.size.depth;
    let along = beam.axes.along.truncate();
    let mut seated = Vec::new();
    for (id, rafter) in carcass.built().filter(|(_, t)| t.role == Role::Rafter { face }) {
        let station = along.dot(rafter.foot - middle.truncate());
        let line = middle.truncate() + along * station;
        let at = |side: f64, inwards: f64| line + along * side + inward * inwards;
        let [right, left] = [rafter.half[0] - EDGE, rafter.half[1] - EDGE];
        // The rafter looks up the slope: its right lies along the walls.
        let corners: [DVec2; 4] = [
            at(right, width[0] + EDGE),
            at(right, width[1] - EDGE),
            at(-left, width[1] - EDGE),
            at(-left, width[0] + EDGE),
        ];
        if covers(carcass.wood(id), Made::Underside, &corners) && covers(&beam.cells, Made::Top, &corners) {
            seated.push(id);
        }
    }
    beam.rests.extend(seated.iter().map(|id| (Made::Top, *id)));
    if !plumb {
        return Vec::new();
    }
    beam.rests.extend(seated.iter().map(|id| (Made::Right, *id)));
    let outer = middle.truncate() - inward * half;
    let over = Notch {
        faces: vec![
            Face { plane: Plane::through(middle, DVec3::Z), purpose: CutUse::Seat, at: CutPlace::Head },
            Face { plane: upright(HalfPlan::through(outer, -inward)), purpose: CutUse::Heel, at: CutPlace::Head },
        ],
    };
    let own = |id: &TimberId| carcass.timber(*id).role == (Role::Rafter { face });
    carcass.in_the_way(&beam.cells).into_iter().filter(own).map(|id| (id, over.clone())).collect()
}
