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
/// Timbers that `pass` says yes to are no hindrance.
pub fn cleared(carcass: &Carcass<'_>, beam: Beam, shortest: f64, pass: &dyn Fn(TimberId) -> bool) -> Vec<Beam> {
    let mut open = vec![beam];
    let mut out = Vec::new();
    for _ in 0..MOST_CUTS {
        let Some(beam) = open.pop() else { break };
        if beam.length() < shortest {
            continue;
        }
        let Some(id) = carcass.in_the_way(&beam.cells).into_iter().find(|id| !pass(*id)) else {
            out.push(beam);
            continue;
        };
        let [mut first, mut second] = [CutPlace::Foot, CutPlace::Head].map(|at| best_side(carcass, &beam, id, at));
        if let (Some(a), Some(b)) = (&first, &second) {
            // Slanting cuts on the two sides of a timber may run into one another.
            if a.cells.iter().any(|p| b.cells.iter().any(|q| share_space(p, q))) {
                if a.length() < b.length() {
                    first = None;
                } else {
                    second = None;
                }
            }
        }
        open.extend(first.into_iter().chain(second));
    }
    out.reverse();
    out
}

/// Whether nothing stands in the way of a timber but what `pass` says yes to.
pub fn is_clear(carcass: &Carcass<'_>, beam: &Beam, pass: &dyn Fn(TimberId) -> bool) -> bool {
    carcass.in_the_way(&beam.cells).into_iter().all(pass)
}

/// The most that a cut at this end leaves clear of another timber.
fn best_side(carcass: &Carcass<'_>, beam: &Beam, id: TimberId, at: CutPlace) -> Option<Beam> {
    let sign = if at == CutPlace::Head { 1.0 } else { -1.0 };
    let mut sides: Vec<(f64, Beam)> = carcass
        .wood(id)
        .iter()
        .flat_map(outsides)
        .filter(|plane| plane.normal.dot(beam.axes.along) * sign > LEAST_SLANT)
        .map(|plane| {
            let mut left = beam.clone();
            left.cut(plane, CutUse::Against(id), at);
            (left.cells.iter().map(Cell::volume).sum(), left)
        })
        .filter(|(volume, _)| *volume > 0.0)
        .collect();
    sides.sort_by(|a, b| b.0.total_cmp(&a.0));
    sides.into_iter().map(|(_, left)| left).find(|left| !carcass.in_the_way(&left.cells).contains(&id))
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
