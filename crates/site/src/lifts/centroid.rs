//! Centre of gravity of a timber from its solid.

use geometry::DVec3;
use roof::solution::Member;

/// Below this volume a solid has no centre of its own, mm³: a speck.
const NOTHING: f64 = 1.0;

/// Centre of gravity in bench axes: along from the foot end, up from the underside, across from the middle; mm.
///
/// The exact centroid of the closed solid: each face is fanned into triangles, and each triangle spans a tetrahedron
/// with one point of the solid (first moments over volume). A solid without volume gives the middle of its points.
#[must_use]
pub fn balance(member: &Member) -> [f64; 3] {
    let points: Vec<DVec3> = member.bench.points.iter().map(|p| DVec3::from_array(*p)).collect();
    let Some(datum) = points.first().copied() else { return [0.0; 3] };
    let (mut volume, mut moment) = (0.0, DVec3::ZERO);
    for face in &member.solid.faces {
        let ring: Vec<DVec3> = face.iter().filter_map(|k| points.get(*k as usize)).map(|p| *p - datum).collect();
        let Some(a) = ring.first().copied() else { continue };
        for pair in ring[1..].windows(2) {
            let (b, c) = (pair[0], pair[1]);
            // Six times the volume of the tetrahedron; its centroid is a quarter of the sum of its corners.
            let six = a.cross(b).dot(c);
            volume += six;
            moment += (a + b + c) * (six / 4.0);
        }
    }
    // Bench axes are right-handed or left-handed: the sign of the volume goes out by the division.
    if volume.abs() > 6.0 * NOTHING {
        return (datum + moment / volume).to_array();
    }
    let sum = points.iter().fold(DVec3::ZERO, |sum, p| sum + *p);
    (sum / points.len() as f64).to_array()
}
