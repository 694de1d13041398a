//! The front of a dormer: a sole plate on the main rafters, and studs up to
//! the plates.

use super::parts::{STUD_CENTRES, Site, cut_on, put, spaced};
use crate::carcass::Carcass;
use crate::frame::timber::{Made, TimberId};
use crate::solution::{CutPlace, MemberKind};
use geometry::DVec3;

/// Place the sole plate and the studs of the front; the plates over them stand
/// already.
pub fn place(carcass: &mut Carcass<'_>, site: &Site<'_>) {
    let sole = sole(carcass, site);
    let l = site.layout;
    let stud = site.stud();
    let half = stud.thickness / 2.0;
    let reach = [l.over_main(l.front, 0.0), l.plates - l.plate.thickness];
    for x in spaced(l.x[0] + half, l.x[1] - half, STUD_CENTRES) {
        let mut beam = site.beam(MemberKind::Stud, stud, l.point(x, l.front, 0.0), [DVec3::Z, l.inward()], reach);
        cut_on(&mut beam, l.on_main(l.plate.thickness), sole, CutPlace::Foot);
        put(carcass, beam, &[Made::End(true)]);
    }
}

/// The sole plate lies flat on the main rafters and the lower trimmer.
fn sole(carcass: &mut Carcass<'_>, site: &Site<'_>) -> TimberId {
    let l = site.layout;
    let slope = &l.slope;
    let origin = slope.point(l.x[0], l.sole()) + slope.normal() * (l.plate.thickness / 2.0);
    let beam = site.beam(MemberKind::SolePlate, l.plate, origin, [l.axis(), slope.up()], [0.0, l.x[1] - l.x[0]]);
    // Its width runs up the slope, so its left lies on the rafters.
    put(carcass, beam, &[Made::Left])
}
