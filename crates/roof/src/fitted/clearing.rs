//! Keeping fitted timbers out of the way of those that already stand.

use super::beam::Beam;
use crate::carcass::{Carcass, share_space};
use crate::frame::timber::{CutUse, Made, TimberId};
use crate::solution::CutPlace;
use geometry::{Cell, DVec3, Plane};

/// A face that lies nearer to along a timber than this (as a sine: about 6°)
/// makes no end cut for it.
const LEAST_SLANT: f64 = 0.1;

/// A timber is cut back or parted this many times before it is given up.
const MOST_CUTS: usize = 12;

/// What is left of a timber when it is cut back to the faces of whatever
/// stands in its way, or parted by it: pieces at least `shortest` mm long.
/// Timbers that `pass` says yes to are no hindrance; chimneys and hatches are.
pub fn cleared(carcass: &Carcass<'_>, beam: Beam, shortest: f64, pass: &dyn Fn(TimberId) -> bool) -> Vec<Beam> {
    let spaces: Vec<&Cell<Made>> = carcass.voids_for(beam.kind).collect();
    let mut open = vec![beam];
    let mut out = Vec::new();
    for _ in 0..MOST_CUTS {
        let Some(beam) = open.pop() else { break };
        if beam.length() < shortest {
            continue;
        }
        let timber = carcass.in_the_way(&beam.cells).into_iter().find(|id| !pass(*id));
        let space = spaces.iter().find(|s| meets(s, &beam));
        match (timber, space) {
            (Some(id), _) => open.extend(parted(&beam, carcass.wood(id), CutUse::Against(id))),
            (None, Some(space)) => open.extend(parted(&beam, core::slice::from_ref(*space), CutUse::Trim)),
            (None, None) => out.push(beam),
        }
    }
    out.reverse();
    out
}

/// Whether nothing stands in the way of a timber but what `pass` says yes to,
/// and no opening either.
pub fn is_clear(carcass: &Carcass<'_>, beam: &Beam, pass: &dyn Fn(TimberId) -> bool) -> bool {
    !carcass.voids_for(beam.kind).any(|v| meets(v, beam)) && carcass.in_the_way(&beam.cells).into_iter().all(pass)
}

/// Whether a timber reaches into a cell.
fn meets(cell: &Cell<Made>, beam: &Beam) -> bool {
    beam.cells.iter().any(|b| share_space(cell, b))
}

/// What is left of a timber on the two sides of other wood: the most that two
/// cuts along its faces, or one, leave.
fn parted(beam: &Beam, wood: &[Cell<Made>], purpose: CutUse) -> Vec<Beam> {
    let [feet, heads] = [CutPlace::Head, CutPlace::Foot].map(|at| sides(beam, wood, purpose, at));
    let mut best = None;
    let mut most = 0.0;
    for (v, foot) in feet.iter().map(|(v, b)| (*v, Some(b))).chain([(0.0, None)]) {
        for (w, head) in heads.iter().map(|(w, b)| (*w, Some(b))).chain([(0.0, None)]) {
            let apart = foot.zip(head).is_none_or(|(a, b)| !a.cells.iter().any(|c| meets(c, b)));
            if v + w > most && apart {
                (most, best) = (v + w, Some((foot, head)));
            }
        }
    }
    best.into_iter().flat_map(|(foot, head)| foot.into_iter().chain(head)).cloned().collect()
}

/// The ways to keep a timber clear of other wood by a cut at this end, with the
/// wood that each leaves, mm³.
fn sides(beam: &Beam, wood: &[Cell<Made>], purpose: CutUse, at: CutPlace) -> Vec<(f64, Beam)> {
    let sign = if at == CutPlace::Head { 1.0 } else { -1.0 };
    wood.iter()
        .flat_map(outsides)
        .filter(|plane| plane.normal.dot(beam.axes.along) * sign > LEAST_SLANT)
        .map(|plane| {
            let mut left = beam.clone();
            left.cut(plane, purpose, at);
            (left.cells.iter().map(Cell::volume).sum(), left)
        })
        .filter(|(volume, left)| *volume > 0.0 && !wood.iter().any(|c| meets(c, left)))
        .collect()
}

/// The half-spaces outside each face of a cell.
fn outsides(cell: &Cell<Made>) -> impl Iterator<Item = Plane> + '_ {
    cell.faces.iter().filter(|f| f.tag != Made::Inner).map(|face| {
        let at = |k: usize| cell.points[face.ring[k] as usize];
        let normal = (1..face.ring.len() - 1)
            .map(|k| (at(k) - at(0)).cross(at(k + 1) - at(0)))
            .fold(DVec3::ZERO, |s, n| s + n)
            .normalize_or_zero();
        Plane::through(at(0), -normal)
    })
}
