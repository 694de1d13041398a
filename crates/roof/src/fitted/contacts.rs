//! Which timbers a face of a fitted timber lies against.

use crate::carcass::Carcass;
use crate::frame::timber::{Made, TimberId};
use geometry::{Cell, DVec3, Face};

/// Faces nearer than this lie on one another, mm: half of the gap that the
/// check of the frame allows.
const LIES_ON: f64 = 0.025;

/// Normals of faces that lie on one another are opposite to within this
/// (1 - cosine).
const OPPOSITE: f64 = 5e-7;

/// A contact smaller than this carries nothing, mm².
const LEAST_AREA: f64 = 50.0;

/// Those of the timbers in `near` that the faces of a timber tagged `tag` lie
/// against.
pub fn among(carcass: &Carcass<'_>, id: TimberId, tag: Made, near: &[TimberId]) -> Vec<TimberId> {
    let touches = |other: &&TimberId| **other != id && lie(carcass.wood(id), tag, carcass.wood(**other));
    near.iter().filter(touches).copied().collect()
}

/// Whether the faces tagged `tag` of some wood lie on other wood well enough to
/// carry something.
pub fn lie(wood: &[Cell<Made>], tag: Made, other: &[Cell<Made>]) -> bool {
    area(wood, tag, other) > LEAST_AREA
}

/// Area over which the faces tagged `tag` of some wood lie on other wood, mm².
pub fn area(wood: &[Cell<Made>], tag: Made, other: &[Cell<Made>]) -> f64 {
    let mut sum = 0.0;
    for cell in wood {
        for face in cell.faces.iter().filter(|f| f.tag == tag) {
            let mine = ring(cell, face);
            let normal = vector_area(&mine).normalize_or_zero();
            for by in other {
                for facing in by.faces.iter().filter(|f| f.tag != Made::Inner) {
                    let theirs = ring(by, facing);
                    let toward = vector_area(&theirs).normalize_or_zero();
                    let apart = normal.dot(theirs[0] - mine[0]);
                    if normal.dot(toward) < OPPOSITE - 1.0 && apart.abs() < LIES_ON {
                        sum += shared(&mine, &theirs, toward);
                    }
                }
            }
        }
    }
    sum
}

fn ring(cell: &Cell<Made>, face: &Face<Made>) -> Vec<DVec3> {
    face.ring.iter().map(|k| cell.points[*k as usize]).collect()
}

/// Twice the area of a flat ring, along its normal.
fn vector_area(ring: &[DVec3]) -> DVec3 {
    ring[1..].windows(2).map(|w| (w[0] - ring[0]).cross(w[1] - ring[0])).fold(DVec3::ZERO, |a, b| a + b)
}

/// Area of the part of a ring that lies abreast of a convex one, mm².
fn shared(ring: &[DVec3], border: &[DVec3], normal: DVec3) -> f64 {
    let mut left = ring.to_vec();
    for (k, &p) in border.iter().enumerate() {
        let out = (border[(k + 1) % border.len()] - p).cross(normal);
        let side: Vec<f64> = left.iter().map(|q| out.dot(*q - p)).collect();
        let mut kept = Vec::with_capacity(left.len() + 1);
        for i in 0..left.len() {
            let j = (i + 1) % left.len();
            if side[i] <= 0.0 {
                kept.push(left[i]);
            }
            if (side[i] < 0.0 && side[j] > 0.0) || (side[i] > 0.0 && side[j] < 0.0) {
                kept.push(left[i] + (left[j] - left[i]) * (side[i] / (side[i] - side[j])));
            }
        }
        left = kept;
        if left.len() < 3 {
            return 0.0;
        }
    }
    vector_area(&left).length() / 2.0
}
