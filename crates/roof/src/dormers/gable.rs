//! A gable dormer: plates over its cheeks, lay boards on the main rafters, a
//! ridge, and rafters from the plates and the lay boards up to it.

use super::parts::{PitchLine, STUD_CENTRES, Site, cut_on, put, put_rafter, spaced};
use super::{cheeks, front};
use crate::carcass::Carcass;
use crate::fitted::beam::Beam;
use crate::frame::timber::{CutUse, Face, Made, TimberId};
use crate::solution::{CutPlace, MemberKind};
use geometry::{DVec3, Plane};
use job::Section;

/// A jack shorter than this in plan is left out, mm: there is no room to fix it.
const SHORTEST_JACK: f64 = 150.0;

/// A stud of the gable shorter than this is left out, mm: it would split.
const SHORTEST_GABLE_STUD: f64 = 150.0;

/// The last common keeps this far from the end of its plate, mm.
const FROM_PLATE_END: f64 = 5.0;

/// Timbers are drawn past their cuts by this much, mm.
const PAST: f64 = 1000.0;

/// Build it over its hole.
pub fn place(carcass: &mut Carcass<'_>, site: &Site<'_>) {
    let plates = [0, 1].map(|side| cheek_plate(carcass, site, side));
    front_plate(carcass, site, plates);
    front::place(carcass, site);
    let l = site.layout;
    let top = l.plates - l.plate.thickness;
    for side in 0..2 {
        cheeks::studs(carcass, site, side, l.front, &|_| top, &|_| Some(Made::End(true)));
    }
    let boards = lay_boards(carcass, site);
    let ridge = ridge(carcass, site, boards[0]);
    let rafters = Rafters { site, plates, boards, ridge };
    let first = [0, 1].map(|side| rafters.place(carcass, side));
    if let [Some(near), Some(far)] = first {
        gable_studs(carcass, site, [near, far]);
    }
}

/// The plate over a cheek runs back until it comes down on the trimming rafter.
fn cheek_plate(carcass: &mut Carcass<'_>, site: &Site<'_>, side: usize) -> TimberId {
    let l = site.layout;
    let origin = l.point(l.in_cheek(side, 0.0), l.front, l.plates - l.plate.thickness / 2.0);
    let reach = [0.0, l.plates_end() - l.front];
    let mut beam = site.beam(MemberKind::WallPlate, l.plate, origin, [l.inward(), l.cheek_inward(side)], reach);
    if let Some(under) = site.under_cheek(side) {
        cut_on(&mut beam, l.on_main(0.0), under, CutPlace::Head);
    }
    put(carcass, beam, &[])
}

/// The plate across the front lies between those over the cheeks.
fn front_plate(carcass: &mut Carcass<'_>, site: &Site<'_>, plates: [TimberId; 2]) {
    let l = site.layout;
    let width = l.plate.depth;
    let origin = l.point(l.x[0] + width, l.front, l.plates - l.plate.thickness / 2.0);
    let reach = [0.0, l.x[1] - l.x[0] - 2.0 * width];
    let mut beam = site.beam(MemberKind::WallPlate, l.plate, origin, [l.axis(), l.inward()], reach);
    beam.rests = vec![(Made::End(false), plates[0]), (Made::End(true), plates[1])];
    put(carcass, beam, &[]);
}

/// The lay boards under the two valleys: their upper outer arrises lie where
/// the tops of the jacks come down on them, and they are mitred where they
/// meet.
fn lay_boards(carcass: &mut Carcass<'_>, site: &Site<'_>) -> [TimberId; 2] {
    let l = site.layout;
    let first = carcass.next_id();
    let ids = [first, TimberId(first.0 + 1)];
    for side in 0..2 {
        // Along the valley, up it.
        let [low, high] = [0.0, l.half_width()].map(|inside| {
            let y = l.valley(inside);
            l.point(l.in_cheek(side, inside), y, l.over_main(y, l.board.thickness))
        });
        let along = (high - low).normalize();
        let normal = l.slope.normal();
        // In the slope, outwards from under the dormer.
        let outwards = normal.cross(along) * if side == 0 { 1.0 } else { -1.0 };
        let origin = low - normal * (l.board.thickness / 2.0) - outwards * l.board.depth;
        let past = PAST + 4.0 * l.board.depth;
        let reach = [-past, (high - low).length() + past];
        let mut beam = site.beam(MemberKind::LayBoard, l.board, origin, [along, outwards], reach);
        let inwards = l.cheek_inward(side);
        let (middle, cheek) = (l.point(l.middle(), 0.0, 0.0), l.point(l.in_cheek(side, 0.0), 0.0, 0.0));
        let end = l.point(0.0, l.plates_end(), 0.0);
        beam.cut(Plane::through(middle, inwards), CutUse::Mitre(ids[1 - side]), CutPlace::Head);
        beam.cut(Plane::through(end, -l.inward()), CutUse::Trim, CutPlace::Foot);
        beam.cut(Plane::through(cheek, -inwards), CutUse::Trim, CutPlace::Foot);
        // Left of the timber is down for one board, up for the other.
        let below = if beam.axes.across.dot(normal) < 0.0 { Made::Left } else { Made::Right };
        put(carcass, beam, &[below]);
    }
    ids
}

/// The ridge runs back until it comes down on the lay boards.
fn ridge(carcass: &mut Carcass<'_>, site: &Site<'_>, board: TimberId) -> TimberId {
    let l = site.layout;
    let [under, top] = l.ridge_reach();
    let depth = top - under;
    let section = Section { depth, ..l.ridge };
    let origin = l.point(l.middle(), l.front, under);
    let reach = [0.0, l.valley(l.half_width()) - l.front + PAST];
    let mut beam = site.beam(MemberKind::RidgeBoard, section, origin, [l.inward(), DVec3::Z], reach);
    cut_on(&mut beam, l.on_main(l.board.thickness), board, CutPlace::Head);
    put(carcass, beam, &[])
}

/// The studs of the gable: from the plate across the front up to the first
/// pair of rafters, or to the ridge.
fn gable_studs(carcass: &mut Carcass<'_>, site: &Site<'_>, pair: [TimberId; 2]) {
    let l = site.layout;
    let stud = site.stud();
    let half = stud.thickness / 2.0;
    let (ridge, under) = (l.ridge_reach(), l.plates + l.upstand - l.rafter.depth / l.cos);
    let edge = l.plate.depth + half;
    for x in spaced(l.x[0] + edge, l.x[1] - edge, STUD_CENTRES) {
        let inside = l.half_width() - (x - l.middle()).abs() - half;
        if (under + l.tan * inside).min(ridge[0]) - l.plates < SHORTEST_GABLE_STUD {
            continue;
        }
        let under_ridge = (x - l.middle()).abs() < half + l.ridge.thickness / 2.0;
        let top = if under_ridge { ridge[0] } else { ridge[1] };
        let origin = l.point(x, l.front, 0.0);
        let mut beam = site.beam(MemberKind::Stud, stud, origin, [DVec3::Z, l.inward()], [l.plates, top]);
        for (side, over) in pair.into_iter().enumerate() {
            let foot = l.point(l.in_cheek(side, 0.0), l.front, under);
            let plane = Plane::through(foot, l.cheek_inward(side) * -l.sin + DVec3::Z * l.cos);
            beam.cut(plane, CutUse::Against(over), CutPlace::Head);
        }
        put(carcass, beam, &[Made::End(false), Made::End(true)]);
    }
}

/// What the dormer's rafters are fitted between.
struct Rafters<'a> {
    site: &'a Site<'a>,
    plates: [TimberId; 2],
    boards: [TimberId; 2],
    ridge: TimberId,
}

impl Rafters<'_> {
    /// The rafters of one side: commons as far as the plates go, then jacks.
    /// Returns the first.
    fn place(&self, carcass: &mut Carcass<'_>, side: usize) -> Option<TimberId> {
        let l = self.site.layout;
        let half = l.rafter.thickness / 2.0;
        let last = l.plates_end() - half - FROM_PLATE_END;
        let commons = spaced(l.front + half, last, l.centres);
        let ids: Vec<TimberId> = commons.iter().map(|y| self.common(carcass, side, *y)).collect();
        let mut y = commons.last()? + l.centres;
        while l.half_width() - l.valley_inside(y + half).max(0.0) > SHORTEST_JACK + l.ridge.thickness {
            self.jack(carcass, side, y);
            y += l.centres;
        }
        ids.first().copied()
    }

    /// A rafter as long as it can be, its head against the ridge.
    fn drawn(&self, kind: MemberKind, side: usize, y: f64) -> Beam {
        let l = self.site.layout;
        let inwards = l.cheek_inward(side);
        let along = inwards * l.cos + DVec3::Z * l.sin;
        let up = inwards * -l.sin + DVec3::Z * l.cos;
        let foot = l.point(l.in_cheek(side, 0.0), y, l.plates + l.upstand - l.rafter.depth / l.cos);
        let reach = [-PAST, l.half_width() / l.cos + PAST];
        let mut beam = self.site.beam(kind, l.rafter, foot, [along, up], reach);
        let head = l.point(l.in_cheek(side, l.half_width() - l.ridge.thickness / 2.0), 0.0, 0.0);
        beam.cut(Plane::through(head, inwards), CutUse::Against(self.ridge), CutPlace::Head);
        beam
    }

    /// A rafter over the plate.
    fn common(&self, carcass: &mut Carcass<'_>, side: usize, y: f64) -> TimberId {
        let l = self.site.layout;
        let mut beam = self.drawn(MemberKind::CommonRafter, side, y);
        let outwards = -l.cheek_inward(side);
        let at = |inside: f64| l.point(l.in_cheek(side, inside), 0.0, 0.0);
        let plates = l.point(0.0, 0.0, l.plates);
        let eaves = self.eaves(y);
        beam.cut(Plane::through(at(-eaves), outwards), CutUse::Trim, CutPlace::Tail);
        if eaves > 0.0 {
            let k = beam.cuts.len() as u16;
            beam.hollow(&[
                Face { plane: Plane::through(plates, DVec3::Z), purpose: CutUse::Seat, at: CutPlace::Foot },
                Face { plane: Plane::through(at(0.0), outwards), purpose: CutUse::Heel, at: CutPlace::Foot },
            ]);
            beam.rests = vec![(Made::Cut(k), self.plates[side]), (Made::Cut(k + 1), self.plates[side])];
        } else {
            let seat = beam.cut(Plane::through(plates, -DVec3::Z), CutUse::Seat, CutPlace::Foot);
            beam.rests = vec![(seat, self.plates[side])];
        }
        put_rafter(carcass, beam, &self.pitch_line(side, y, 0.0, eaves > 0.0))
    }

    /// The pitch line of a rafter from `inside` the cheek to the middle.
    fn pitch_line(&self, side: usize, y: f64, inside: f64, seated: bool) -> PitchLine {
        let l = self.site.layout;
        let line =
            [inside, l.half_width()].map(|inside| l.point(l.in_cheek(side, inside), y, l.plates + l.tan * inside));
        PitchLine { line, upstand: l.upstand, cos: l.cos, seated }
    }

    /// How far a rafter runs past its plate: to the eaves, unless it would come
    /// down on the main rafters there.
    fn eaves(&self, y: f64) -> f64 {
        let l = self.site.layout;
        let lowest = l.plates + l.upstand - l.rafter.depth / l.cos - l.tan * l.eaves;
        if lowest > l.over_main(y + l.rafter.thickness / 2.0, 0.0) { l.eaves } else { 0.0 }
    }

    /// A rafter from the lay board.
    fn jack(&self, carcass: &mut Carcass<'_>, side: usize, y: f64) {
        let l = self.site.layout;
        let mut beam = self.drawn(MemberKind::ValleyJack, side, y);
        cut_on(&mut beam, l.on_main(l.board.thickness), self.boards[side], CutPlace::Foot);
        let cheek = l.point(l.in_cheek(side, 0.0), 0.0, 0.0);
        beam.cut(Plane::through(cheek, -l.cheek_inward(side)), CutUse::Trim, CutPlace::Foot);
        put_rafter(carcass, beam, &self.pitch_line(side, y, l.valley_inside(y).max(0.0), false));
    }
}
