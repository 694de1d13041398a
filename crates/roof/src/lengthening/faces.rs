//! Where faces of timbers lie on one another.

use crate::carcass::{Carcass, bounds, box_around};
use crate::frame::timber::{Made, TimberId};
use crate::marking::Axes;
use crate::rings::{Corners, abreast, area_vector};
use geometry::{Cell, DVec3};

/// Faces nearer than this lie on one another, mm: half the gap that the check
/// of the frame allows.
const LIES_ON: f64 = 0.025;

/// Normals of faces that lie on one another are opposite to within this
/// (1 - cosine).
const OPPOSITE: f64 = 5e-7;

/// Contacts smaller than this are edges that meet, mm².
const LEAST_AREA: f64 = 1.0;

/// A flat face of a cell.
pub struct Flat {
    ring: Vec<DVec3>,
    normal: DVec3,
    /// The box around it.
    low: DVec3,
    high: DVec3,
    /// What made it.
    pub tag: Made,
}

/// The outer faces of some wood.
pub fn flats(cells: &[Cell<Made>]) -> Vec<Flat> {
    flats_near(cells, (DVec3::NEG_INFINITY, DVec3::INFINITY))
}

/// Those outer faces of some wood that may lie on something in this box.
pub fn flats_near(cells: &[Cell<Made>], within: (DVec3, DVec3)) -> Vec<Flat> {
    let near = cells.iter().filter(|c| boxes_near(bounds(&c.points), within));
    let faces = near.flat_map(|c| c.faces.iter().map(move |f| (c, f)));
    faces
        .filter(|(_, f)| f.tag != Made::Inner)
        .filter_map(|(c, f)| {
            let corners = || f.ring.iter().map(|k| &c.points[*k as usize]);
            let (low, high) = box_around(corners());
            if !boxes_near((low, high), within) {
                return None;
            }
            let ring: Vec<DVec3> = corners().copied().collect();
            Some(Flat { normal: area_vector(&ring).normalize_or_zero(), ring, low, high, tag: f.tag })
        })
        .collect()
}

/// Whether things in two boxes may lie on one another.
fn boxes_near((low, high): (DVec3, DVec3), (l, h): (DVec3, DVec3)) -> bool {
    !(low.cmpgt(h + LIES_ON).any() || l.cmpgt(high + LIES_ON).any())
}

impl Flat {
    /// The part of this face that lies on another.
    fn on(&self, other: &Self) -> Option<Corners> {
        if !boxes_near((self.low, self.high), (other.low, other.high)) {
            return None;
        }
        let apart = self.normal.dot(other.ring[0] - self.ring[0]);
        if self.normal.dot(other.normal) > OPPOSITE - 1.0 || apart.abs() > LIES_ON {
            return None;
        }
        let left = abreast(&self.ring, &other.ring, other.normal);
        if left.is_empty() {
            return None;
        }
        (area_vector(&left).length() / 2.0 > LEAST_AREA).then_some(left)
    }

    /// Reach of the face along a timber.
    pub fn span(&self, axes: &Axes) -> [f64; 2] {
        reach(&self.ring, axes)
    }

    /// Its normal in a timber's own axes.
    pub fn facing(&self, axes: &Axes) -> DVec3 {
        axes.vector(self.normal)
    }
}

fn reach(ring: &[DVec3], axes: &Axes) -> [f64; 2] {
    ring.iter().map(|p| axes.point(*p).x).fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)])
}

/// Area over which faces of one tag lie on other wood, mm².
pub fn area_on(mine: &[Flat], tag: Made, other: &[Flat]) -> f64 {
    mine.iter()
        .filter(|f| f.tag == tag)
        .flat_map(|f| other.iter().filter_map(move |o| f.on(o)))
        .map(|ring| area_vector(&ring).length() / 2.0)
        .sum()
}

/// A contact with another timber.
#[derive(Clone, Copy, Debug)]
pub struct Touch {
    /// The other timber.
    pub other: TimberId,
    /// From where to where along this one, mm.
    pub span: [f64; 2],
    /// Outwards from this one, in its own axes.
    pub facing: DVec3,
}

/// Every contact of a timber along its length.
pub fn touches(carcass: &Carcass<'_>, id: TimberId) -> Vec<Touch> {
    let axes = carcass.timber(id).axes();
    let mine = flats(carcass.wood(id));
    let mut out: Vec<Touch> = Vec::new();
    for other in carcass.beside(carcass.wood(id)).into_iter().filter(|o| *o != id) {
        let theirs = flats_near(carcass.wood(other), carcass.box_of(id));
        let there = carcass.box_of(other);
        for face in mine.iter().filter(|f| boxes_near((f.low, f.high), there)) {
            for ring in theirs.iter().filter_map(|o| face.on(o)) {
                out.push(Touch { other, span: reach(&ring, &axes), facing: face.facing(&axes) });
            }
        }
    }
    out
}
