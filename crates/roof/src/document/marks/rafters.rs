//! Marks of rafters: the letter of their wall and a number along it.

use super::grid::{Grid, Place, SAME};
use super::{Given, Marks, letter};
use crate::frame::station_wall;
use crate::frame::timber::{Role, Timber};
use crate::solution::MemberKind;
use geometry::surface::{FaceId, Surface, WallId};
use job::Job;

/// A rafter's place.
pub struct Spot {
    /// Index of the timber.
    pub timber: usize,
    /// The wall.
    pub wall: WallId,
    /// Along the wall, mm.
    pub at: f64,
    /// Up the slope in plan, mm.
    inwards: f64,
    face: FaceId,
}

/// The places of all rafters, in the order of the lists: by wall, along the
/// wall, from the plate up.
pub fn spots(surface: &Surface, timbers: &[Timber]) -> Vec<Spot> {
    let spot = |(k, t): (usize, &Timber)| {
        let Role::Rafter { face } = t.role else { return None };
        // Square to the face: rafters along a gable may run out of square.
        let axis = -surface.face(face).plane.inward.perp();
        let at = axis.dot(t.foot);
        let wall = t.tails.first().map(|e| e.wall).or_else(|| station_wall(surface, face, axis, at))?;
        Some(Spot { timber: k, wall, at, inwards: t.dir.dot(t.foot), face })
    };
    let mut out: Vec<Spot> = timbers.iter().enumerate().filter(|(_, t)| t.is_numbered()).filter_map(spot).collect();
    out.sort_by(|a, b| a.wall.cmp(&b.wall).then(a.at.total_cmp(&b.at)).then(a.inwards.total_cmp(&b.inwards)));
    out
}

/// Name the rafters. What stands further up at one place has letters behind
/// the number: `u`, `v` … for the next piece up, past a valley or a break of
/// pitch; `t` for the piece on top of an opening.
pub fn name(job: &Job, surface: &Surface, timbers: &[Timber], grid: &Grid, marks: &mut Marks, given: &mut Given) {
    let spots = spots(surface, timbers);
    for wall in spots.chunk_by(|a, b| a.wall == b.wall) {
        let id = wall[0].wall;
        let standing: Vec<&[Spot]> = wall.chunk_by(|a, b| b.at - a.at < SAME).collect();
        let trims = |s: &Spot| timbers[s.timber].kind == MemberKind::TrimmingRafter;
        // Trimming rafters ask for no number: they come beside those that have one.
        let place = |s: &&[Spot]| Place { at: s[0].at, rank: (!s.iter().any(trims)).then_some(0) };
        let places: Vec<Place> = standing.iter().map(place).collect();
        let letter = letter(job, id);
        for (pieces, tail) in standing.iter().zip(grid.tails(id.index(), &places)) {
            let name = format!("{}{tail}", letter.as_deref().unwrap_or_default());
            let mut faces: Vec<FaceId> = pieces.iter().map(|p| p.face).collect();
            faces.dedup();
            for (k, piece) in pieces.iter().enumerate() {
                let slot = |p: &Spot| timbers[p.timber].slot;
                let level = faces.iter().position(|f| *f == piece.face).unwrap_or(0) + usize::from(slot(piece));
                let below = pieces[..k].iter().filter(|p| p.face == piece.face && slot(p) == slot(piece)).count();
                let full = format!("{name}{}{}", ["", "u", "v", "w"][level.min(3)], "t".repeat(below));
                marks.names[piece.timber] = given.unique(&full, 1);
                marks.stations[piece.timber].clone_from(&name);
                marks.walls[piece.timber].clone_from(&letter);
                marks.order.push(piece.timber);
            }
        }
    }
}
