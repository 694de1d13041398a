//! A lean-to dormer: rafters from a plate over the front up to a lay board on
//! the main rafters.

use super::parts::{PitchLine, Site, cut_on, put, put_rafter, spaced};
use super::{cheeks, front};
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Face, Made, TimberId};
use crate::solution::{CutPlace, MemberKind};
use geometry::{DVec3, Plane};

/// Timbers are drawn past their cuts by this much, mm.
const PAST: f64 = 1000.0;

/// Build it over its hole.
pub fn place(carcass: &mut Carcass<'_>, site: &Site<'_>) {
    let plate = plate(carcass, site);
    front::place(carcass, site);
    let board = board(carcass, site);
    let l = site.layout;
    let half = l.rafter.thickness / 2.0;
    let places = spaced(l.x[0] + half, l.x[1] - half, l.centres);
    let ids: Vec<TimberId> = places.iter().map(|x| rafter(carcass, site, *x, plate, board)).collect();
    let (Some(first), Some(last)) = (ids.first(), ids.last()) else { return };
    // The studs of the cheeks stand under the outermost rafters.
    let under = l.plates + l.upstand - l.rafter.depth / l.cos;
    let foot = l.point(0.0, l.front, under);
    let plane = Plane::through(foot, l.inward() * -l.sin + DVec3::Z * l.cos);
    let top = |y: f64| under + l.tan * (y - l.front);
    // In front of that the seats of the rafters are cut higher.
    let behind_seat = l.front + (l.plates - under) / l.tan;
    for (side, over) in [*first, *last].into_iter().enumerate() {
        let tall = |y: f64| top(y + half);
        cheeks::studs(carcass, site, side, behind_seat, &tall, &|beam| {
            beam.cut(plane, CutUse::Against(over), CutPlace::Head);
            None
        });
    }
}

/// The plate over the front.
fn plate(carcass: &mut Carcass<'_>, site: &Site<'_>) -> TimberId {
    let l = site.layout;
    let origin = l.point(l.x[0], l.front, l.plates - l.plate.thickness / 2.0);
    let reach = [0.0, l.x[1] - l.x[0]];
    let beam = site.beam(MemberKind::WallPlate, l.plate, origin, [l.axis(), l.inward()], reach);
    put(carcass, beam, &[])
}

/// The lay board across the main rafters, under the heads of the rafters.
fn board(carcass: &mut Carcass<'_>, site: &Site<'_>) -> TimberId {
    let l = site.layout;
    let slope = &l.slope;
    let origin = slope.point(l.x[0], l.board_top() - l.board.depth) + slope.normal() * (l.board.thickness / 2.0);
    let reach = [0.0, l.x[1] - l.x[0]];
    let beam = site.beam(MemberKind::LayBoard, l.board, origin, [l.axis(), slope.up()], reach);
    put(carcass, beam, &[Made::Left])
}

fn rafter(carcass: &mut Carcass<'_>, site: &Site<'_>, x: f64, plate: TimberId, board: TimberId) -> TimberId {
    let l = site.layout;
    let along = l.inward() * l.cos + DVec3::Z * l.sin;
    let up = l.inward() * -l.sin + DVec3::Z * l.cos;
    let foot = l.point(x, l.front, l.plates + l.upstand - l.rafter.depth / l.cos);
    let reach = [-PAST, (l.tip() - l.front) / l.cos + PAST];
    let mut beam = site.beam(MemberKind::CommonRafter, l.rafter, foot, [along, up], reach);
    cut_on(&mut beam, l.on_main(l.board.thickness), board, CutPlace::Head);
    let at = |y: f64| l.point(0.0, y, l.plates);
    beam.cut(Plane::through(at(l.front - l.eaves), -l.inward()), CutUse::Trim, CutPlace::Tail);
    let k = beam.cuts.len() as u16;
    if l.eaves > 0.0 {
        beam.hollow(&[
            Face { plane: Plane::through(at(l.front), DVec3::Z), purpose: CutUse::Seat, at: CutPlace::Foot },
            Face { plane: Plane::through(at(l.front), -l.inward()), purpose: CutUse::Heel, at: CutPlace::Foot },
        ]);
        beam.rests = vec![(Made::Cut(k), plate), (Made::Cut(k + 1), plate)];
    } else {
        let seat = beam.cut(Plane::through(at(l.front), -DVec3::Z), CutUse::Seat, CutPlace::Foot);
        beam.rests = vec![(seat, plate)];
    }
    let line = [l.front, l.tip()].map(|y| l.point(x, y, l.plates + l.tan * (y - l.front)));
    put_rafter(carcass, beam, &PitchLine { line, upstand: l.upstand, cos: l.cos, seated: l.eaves > 0.0 })
}
