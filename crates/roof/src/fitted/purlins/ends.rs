//! How purlins end: mitred with the next slope's purlin under a hip or valley,
//! with the cheek and the lip against it; cut off at gables and abutments.

use crate::carcass::Carcass;
use crate::fitted::beam::{Beam, upright};
use crate::frame::timber::{CutUse, Face, Made, Role, Timber, TimberId};
use crate::solution::CutPlace;
use geometry::surface::{ArcId, Surface};
use geometry::{DVec2, DVec3, HalfPlan, Plane};

/// A timber is on a line of the surface when the line's middle is no further
/// from its own than this, mm: surfaces are trued by less.
const ON_LINE: f64 = 1.0;

/// End a purlin at a line of the surface. Gives the tag of the mitre, where
/// there is a slope beyond that may have a purlin of its own.
pub fn end_at(carcass: &Carcass<'_>, beam: &mut Beam, arc: ArcId, at: CutPlace) -> Option<Made> {
    let line = carcass.surface.arc(arc);
    let (from, to) = (carcass.surface.node(line.from).truncate(), carcass.surface.node(line.to).truncate());
    let sign = if at == CutPlace::Head { 1.0 } else { -1.0 };
    let outward = |dir: DVec2| {
        let n = dir.perp();
        if n.extend(0.0).dot(beam.axes.along) * sign > 0.0 { n } else { -n }
    };
    let spine = on_arc(carcass, arc);
    let (point, out) = match spine {
        Some(id) => (carcass.timber(id).foot, outward(carcass.timber(id).dir)),
        None => (from, outward((to - from).normalize_or_zero())),
    };
    let mitre = beam.cut(upright(HalfPlan::through(point, out)), CutUse::Trim, at);
    if let Some(id) = spine {
        let timber = carcass.timber(id);
        let against = |plane| Face { plane, purpose: CutUse::Against(id), at };
        beam.hollow(&[against(upright(timber.side_facing(-out))), against(underside(timber).flipped())]);
    }
    (line.left.is_some() && line.right.is_some()).then_some(mitre)
}

/// The plane of a timber's underside; inside is the open space below it, where
/// a lip runs on.
fn underside(timber: &Timber) -> Plane {
    let point = timber.foot.extend(timber.base + timber.under_offset);
    Plane::through(point, (timber.dir * -timber.slope).extend(1.0).normalize_or(DVec3::Z))
}

/// The timber that stands on a line of the surface.
pub fn on_arc(carcass: &Carcass<'_>, arc: ArcId) -> Option<TimberId> {
    let surface: &Surface = carcass.surface;
    let line = surface.arc(arc);
    let (left, right) = (line.left?, line.right?);
    let middle = (surface.node(line.from) + surface.node(line.to)).truncate() / 2.0;
    let on = |t: &Timber| {
        let along = t.along(middle);
        matches!(t.role, Role::Spine { left: l, right: r } if (l, r) == (left, right) || (r, l) == (left, right))
            && along > 0.0
            && along < t.run
            && t.left().dot(middle - t.foot).abs() < ON_LINE
    };
    carcass.built().find(|(_, t)| on(t)).map(|(id, _)| id)
}
