//! What all parts of a dormer share: its site, flat timbers, and studs.

use super::Layout;
use crate::carcass::Carcass;
use crate::fitted::beam::{Beam, axes};
use crate::fitted::contacts;
use crate::frame::timber::{CutUse, Made, Seat, Timber, TimberId};
use crate::openings::Trimmed;
use crate::solution::{CutPlace, MemberKind};
use geometry::{DVec3, HalfPlan, Plane};
use job::Section;

/// Greatest distance between the centres of studs, mm (common practice: half
/// the width of a board of 1200 mm).
pub const STUD_CENTRES: f64 = 600.0;

/// A dormer's layout and the hole under it.
pub struct Site<'a> {
    /// Where everything lies.
    pub layout: &'a Layout,
    /// The hole, as it was trimmed.
    pub trimmed: &'a Trimmed,
}

impl Site<'_> {
    /// The trimming rafter beside the hole under a cheek.
    pub fn under_cheek(&self, side: usize) -> Option<TimberId> {
        self.trimmed.trimming.get(side).and_then(|ids| ids.first()).copied()
    }

    /// A timber of the dormer with square ends, listed under its wall.
    pub fn beam(
        &self,
        kind: MemberKind,
        section: Section,
        origin: DVec3,
        [along, up]: [DVec3; 2],
        reach: [f64; 2],
    ) -> Beam {
        let mut beam = Beam::new(kind, section, axes(origin, along, up), reach);
        beam.wall = Some(self.layout.wall);
        beam
    }

    /// Section of studs: as thick as the rafters, as deep as the plates are wide.
    pub fn stud(&self) -> Section {
        Section { thickness: self.layout.rafter.thickness, depth: self.layout.plate.depth }
    }
}

/// A cut that keeps the wood above a plane, against the timber under it.
pub fn cut_on(beam: &mut Beam, plane: Plane, on: TimberId, at: CutPlace) -> Made {
    beam.cut(plane.flipped(), CutUse::Against(on), at)
}

/// A rafter of a dormer: its pitch line, and the plumb height of its top above
/// it.
pub struct PitchLine {
    /// Foot and head.
    pub line: [DVec3; 2],
    /// Plumb height of the top above the line, mm.
    pub upstand: f64,
    /// Slope of the line.
    pub cos: f64,
    /// Whether it has a birdsmouth over its plate at the foot of the line.
    pub seated: bool,
}

/// Add a rafter that is measured on its pitch line.
pub fn put_rafter(carcass: &mut Carcass<'_>, beam: Beam, pitch: &PitchLine) -> TimberId {
    let rests = beam.rests;
    let mut timber = Timber::fitted(beam.kind, beam.wall, beam.section, pitch.line, beam.axes, beam.cells, beam.cuts);
    timber.rests = rests;
    timber.top_offset = pitch.upstand;
    timber.under_offset = pitch.upstand - beam.section.depth / pitch.cos;
    timber.seat = pitch.seated.then(|| Seat { heel: HalfPlan::through(timber.foot, timber.dir), level: timber.base });
    carcass.add(timber)
}

/// Add a timber; the faces named lie on whatever is found there.
pub fn put(carcass: &mut Carcass<'_>, beam: Beam, seeking: &[Made]) -> TimberId {
    let id = carcass.add(beam.timber());
    let near = carcass.beside(carcass.wood(id));
    for tag in seeking {
        for on in contacts::among(carcass, id, *tag, &near) {
            carcass.timber_mut(id).rests.push((*tag, on));
        }
    }
    id
}

/// Places from `first` to `last`, both included, no further apart than `centres`.
pub fn spaced(first: f64, last: f64, centres: f64) -> Vec<f64> {
    let length = last - first;
    if length <= 0.0 {
        return vec![first];
    }
    let bays = (length / centres).ceil().max(1.0);
    (0..=bays as usize).map(|k| first + length * k as f64 / bays).collect()
}

#[cfg(test)]
mod tests {
    use super::spaced;

    #[test]
    fn studs_share_a_wall_equally() {
        assert_eq!(spaced(100.0, 1300.0, 600.0), [100.0, 700.0, 1300.0]);
        assert_eq!(spaced(100.0, 1310.0, 600.0).len(), 4);
        assert_eq!(spaced(100.0, 90.0, 600.0), [100.0]);
    }
}
