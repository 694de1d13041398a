//! Timber with a rectangular section along a straight line in space.

use crate::frame::timber::Made;
use crate::marking::Axes;
use geometry::{Cell, Face, Ring};

/// A square-ended length of timber between `along[0]` and `along[1]` on its
/// axes, `up` and `across` likewise, mm from their origin.
pub fn beam(axes: &Axes, along: [f64; 2], up: [f64; 2], across: [f64; 2]) -> Cell<Made> {
    let mut points = Vec::with_capacity(8);
    for y in up {
        for z in across {
            for x in along {
                points.push(axes.origin + axes.along * x + axes.up * y + axes.across * z);
            }
        }
    }
    // Corner k: bit 0 the head, bit 1 the left, bit 2 the top.
    let faces = [
        ([0, 2, 3, 1], Made::Underside),
        ([4, 5, 7, 6], Made::Top),
        ([0, 1, 5, 4], Made::Right),
        ([2, 6, 7, 3], Made::Left),
        ([0, 4, 6, 2], Made::End(false)),
        ([1, 3, 7, 5], Made::End(true)),
    ];
    let faces = faces.map(|(ring, tag)| Face { ring: Ring::from_slice(&ring), tag });
    Cell { points, faces: faces.to_vec() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::DVec3;

    #[test]
    fn a_beam_has_its_volume_and_its_faces_look_outwards() {
        // Looking along x with the top up, the left is +y.
        let axes = Axes { origin: DVec3::ZERO, along: DVec3::X, up: DVec3::Z, across: DVec3::Y };
        let cell = beam(&axes, [0.0, 3000.0], [0.0, 150.0], [-23.5, 23.5]);
        assert!((cell.volume() - 3000.0 * 150.0 * 47.0).abs() < 1e-6);
        let normal = |tag| {
            let face = cell.faces.iter().find(|f| f.tag == tag).expect("every face is there");
            let at = |k: usize| cell.points[face.ring[k] as usize];
            (at(1) - at(0)).cross(at(2) - at(1)).normalize()
        };
        for (tag, out) in [(Made::Left, DVec3::Y), (Made::Top, DVec3::Z), (Made::End(true), DVec3::X)] {
            assert!((normal(tag) - out).length() < 1e-9, "{tag:?}");
        }
    }
}
