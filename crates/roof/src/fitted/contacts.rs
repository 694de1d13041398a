//! Which timbers a face of a fitted timber lies against.

use crate::carcass::{Carcass, bounds};
use crate::frame::timber::{Made, TimberId};
use crate::rings::{Corners, abreast, area_vector};
use geometry::{Cell, DVec3, Face, Plane};

/// Faces nearer than this lie on one another, mm: half of the gap that the
/// check of the frame allows.
const LIES_ON: f64 = 0.025;

/// Normals of faces that lie on one another are opposite to within this
/// (1 - cosine).
const OPPOSITE: f64 = 5e-7;

/// A contact smaller than this carries nothing, mm².
const LEAST_AREA: f64 = 50.0;

/// Wood further apart than this is not looked at, mm: far over [`LIES_ON`].
const WELL_APART: f64 = 1.0;

/// Those of the timbers in `near` that the faces of a timber tagged `tag` lie
/// against.
pub fn among(carcass: &Carcass<'_>, id: TimberId, tag: Made, near: &[TimberId]) -> Vec<TimberId> {
    let wood = carcass.wood(id);
    let touches = |other: &&TimberId| {
        **other != id
            && lie(wood, tag, carcass.wood(**other))
            && notched(carcass, **other).is_none_or(|left| lie(wood, tag, &left))
    };
    near.iter().filter(touches).copied().collect()
}

/// Whether the faces tagged `tag` of some wood lie on other wood well enough to
/// carry something.
pub fn lie(wood: &[Cell<Made>], tag: Made, other: &[Cell<Made>]) -> bool {
    area(wood, tag, other) > LEAST_AREA
}

/// The wood of a timber without the notches and ends that were asked for since
/// it was cut; `None` if there are none.
fn notched(carcass: &Carcass<'_>, id: TimberId) -> Option<Vec<Cell<Made>>> {
    let timber = carcass.timber(id);
    if timber.notches.is_empty() && timber.ends_cut.is_empty() {
        return None;
    }
    let mut wood = carcass.wood(id).to_vec();
    for face in &timber.ends_cut {
        wood = wood.iter().filter_map(|c| c.clipped(face.plane, Made::Inner)).collect();
    }
    for notch in &timber.notches {
        let hole: Vec<(Plane, Made)> = notch.faces.iter().map(|f| (f.plane, Made::Inner)).collect();
        wood = geometry::carve(&wood, &hole, Made::Inner);
    }
    Some(wood)
}

/// Area over which the faces tagged `tag` of some wood lie on other wood, mm².
pub fn area(wood: &[Cell<Made>], tag: Made, other: &[Cell<Made>]) -> f64 {
    let mut sum = 0.0;
    for cell in wood {
        // The faces of wood whose box is well apart from this cell's share nothing with its faces.
        let (low, high) = bounds(&cell.points);
        for face in cell.faces.iter().filter(|f| f.tag == tag) {
            let mine = ring(cell, face);
            let normal = area_vector(&mine).normalize_or_zero();
            let offset = normal.dot(mine[0]);
            for by in other.iter().filter(|by| meets(&by.points, low, high)) {
                // Most faces are nowhere near the plane: look at that first.
                let on_plane = |k: &u32| (normal.dot(by.points[*k as usize]) - offset).abs() < LIES_ON;
                let facing = by.faces.iter().filter(|f| f.tag != Made::Inner && f.ring.iter().all(on_plane));
                for facing in facing {
                    let theirs = ring(by, facing);
                    let toward = area_vector(&theirs).normalize_or_zero();
                    if normal.dot(toward) < OPPOSITE - 1.0 {
                        let shared = abreast(&mine, &theirs, toward);
                        if !shared.is_empty() {
                            sum += area_vector(&shared).length() / 2.0;
                        }
                    }
                }
            }
        }
    }
    sum
}

/// Whether points have a box that comes near another.
fn meets(points: &[DVec3], low: DVec3, high: DVec3) -> bool {
    let (l, h) = bounds(points);
    !(l.cmpgt(high + WELL_APART).any() || low.cmpgt(h + WELL_APART).any())
}

fn ring(cell: &Cell<Made>, face: &Face<Made>) -> Corners {
    face.ring.iter().map(|k| cell.points[*k as usize]).collect()
}
