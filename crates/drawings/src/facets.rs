//! The faces of a solid with the edges an eye would see: two faces in one
//! plane have no line between them.

use std::collections::BTreeMap;

use roof::solution::SolidOut;

use crate::vec3::{V3, between, cross, dot, sub, unit};

/// Two faces whose normals' product is nearer to 1 than this lie in one plane
/// to the eye (about 0.25°).
const SAME_PLANE: f64 = 1e-5;

/// A flat face.
#[derive(Clone, Debug)]
pub struct Facet {
    /// Corners, anticlockwise from outside.
    pub points: Vec<V3>,
    /// Whether the edge from each corner to the next is a line to draw.
    pub drawn: Vec<bool>,
    /// Direction outwards.
    pub normal: V3,
    /// What made the face.
    pub name: String,
}

/// Faces of a solid at these positions of its points. Faces that name points
/// the solid lacks, and those without an area, are left out.
pub fn facets(solid: &SolidOut, positions: &[V3]) -> Vec<Facet> {
    let mut loops: Vec<(&[u32], Facet)> = Vec::with_capacity(solid.faces.len());
    for (index, face) in solid.faces.iter().enumerate() {
        let points: Option<Vec<V3>> = face
            .iter()
            .map(|&i| positions.get(i as usize).copied().filter(|p| p.iter().all(|v| v.is_finite())))
            .collect();
        let Some(points) = points else { continue };
        let Some(normal) = normal_of(&points) else { continue };
        let name = solid.names.get(index).cloned().unwrap_or_default();
        loops.push((face, Facet { drawn: vec![true; points.len()], points, normal, name }));
    }
    let mut sides: BTreeMap<(u32, u32), Vec<(usize, usize)>> = BTreeMap::new();
    for (which, (face, _)) in loops.iter().enumerate() {
        for (corner, (&a, &b)) in face.iter().zip(face.iter().cycle().skip(1)).enumerate() {
            sides.entry((a.min(b), a.max(b))).or_default().push((which, corner));
        }
    }
    for uses in sides.values() {
        if let [(first, edge), (second, other_edge)] = *uses.as_slice()
            && dot(loops[first].1.normal, loops[second].1.normal) > 1.0 - SAME_PLANE
        {
            loops[first].1.drawn[edge] = false;
            loops[second].1.drawn[other_edge] = false;
        }
    }
    loops.into_iter().map(|(_, facet)| facet).collect()
}

/// Outward direction of a loop, by summing over its edges (Newell's method).
fn normal_of(points: &[V3]) -> Option<V3> {
    let first = *points.first()?;
    let mut sum = [0.0; 3];
    for (&a, &b) in points.iter().zip(points.iter().cycle().skip(1)) {
        let c = cross(sub(a, first), sub(b, first));
        sum = [sum[0] + c[0], sum[1] + c[1], sum[2] + c[2]];
    }
    unit(sum)
}

/// The part of a face on one side (`sign`) of a plane, from its corners'
/// distances to it; nothing, if no corner is there.
pub fn half(facet: &Facet, sides: &[f64], sign: f64) -> Facet {
    let n = facet.points.len();
    let (mut points, mut drawn) = (Vec::with_capacity(n + 1), Vec::with_capacity(n + 1));
    for i in 0..n {
        let j = (i + 1) % n;
        let (a, b) = (sides[i] * sign, sides[j] * sign);
        if a >= 0.0 {
            points.push(facet.points[i]);
            drawn.push(facet.drawn[i]);
        }
        if (a >= 0.0) != (b >= 0.0) {
            let t = sides[i] / (sides[i] - sides[j]);
            points.push(between(facet.points[i], facet.points[j], t));
            // Where the outline leaves, its next edge is the cut, no line.
            drawn.push(a < 0.0 && facet.drawn[i]);
        }
    }
    Facet { points, drawn, normal: facet.normal, name: facet.name.clone() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_between_two_faces_in_one_plane() {
        let solid = SolidOut {
            points: vec![],
            faces: vec![vec![0, 1, 4, 3], vec![1, 2, 5, 4], vec![0, 3, 6], vec![9, 1, 2]],
            names: vec!["top".into()],
        };
        let points =
            [[0., 0., 0.], [1., 0., 0.], [2., 0., 0.], [0., 1., 0.], [1., 1., 0.], [2., 1., 0.], [0., 0., -1.]];
        let facets = facets(&solid, &points);
        // The face that names a missing point is left out.
        assert_eq!(facets.len(), 3);
        assert_eq!(facets[0].drawn, [true, false, true, true]);
        assert_eq!(facets[1].drawn, [true, true, true, false]);
        assert_eq!(facets[2].drawn, [true, true, true]);
        assert_eq!(facets[0].normal, [0.0, 0.0, 1.0]);
    }

    #[test]
    fn the_line_of_a_split_is_not_drawn() {
        let face = Facet {
            points: vec![[0., 0., 0.], [2., 0., 0.], [2., 1., 0.], [0., 1., 0.]],
            drawn: vec![true; 4],
            normal: [0., 0., 1.],
            name: String::new(),
        };
        let sides: Vec<f64> = face.points.iter().map(|p| p[0] - 1.0).collect();
        for sign in [1.0, -1.0] {
            let half = half(&face, &sides, sign);
            assert_eq!(half.points.len(), 4);
            assert_eq!(half.drawn.iter().filter(|d| !**d).count(), 1);
            let n = half.points.len();
            let hidden = half.drawn.iter().position(|d| !*d).unwrap_or(n);
            assert_eq!(half.points[hidden][0], 1.0);
            assert_eq!(half.points[(hidden + 1) % n][0], 1.0);
        }
    }
}
