//! Faces into triangles.

use super::push;
use super::vec3::{V3, cross, dot, sub, twice_area};
use earcut::Earcut;
use roof::solution::SolidOut;

/// A corner that turns inwards by less than this part of the face's area is
/// taken for straight: rounding of coordinates, no notch.
const STRAIGHT: f64 = 1e-9;

/// Cuts faces into triangles; keeps its room from one face to the next.
#[derive(Default)]
pub(super) struct Triangles {
    ears: Earcut<f64>,
    loop_points: Vec<V3>,
    corners: Vec<u32>,
    normals: Vec<V3>,
}

impl Triangles {
    /// The triangles of a solid. Gives twice the area of every face, as a vector square to it.
    pub(super) fn solid(&mut self, solid: &SolidOut, out: &mut Vec<f32>) -> &[V3] {
        self.normals.clear();
        for face in &solid.faces {
            self.loop_points.clear();
            self.loop_points.extend(face.iter().filter_map(|&n| solid.points.get(n as usize)));
            let normal = twice_area(&self.loop_points);
            self.normals.push(normal);
            self.cut(normal);
            for &corner in &self.corners {
                push(self.loop_points[corner as usize], out);
            }
        }
        &self.normals
    }

    /// The triangles of one loop, as points.
    pub(super) fn outline(&mut self, outline: &[V3]) -> Vec<[V3; 3]> {
        self.loop_points.clear();
        self.loop_points.extend_from_slice(outline);
        self.cut(twice_area(outline));
        let corner = |&n: &u32| self.loop_points[n as usize];
        self.corners.chunks_exact(3).map(|three| [corner(&three[0]), corner(&three[1]), corner(&three[2])]).collect()
    }

    /// Cuts the loop into corners of triangles that turn as the loop does.
    fn cut(&mut self, normal: V3) {
        self.corners.clear();
        let points = &self.loop_points;
        if points.len() < 3 {
            return;
        }
        if is_convex(points, normal) {
            self.corners.extend((2..points.len() as u32).flat_map(|n| [0, n - 1, n]));
            return;
        }
        // Seen along the axis that the face looks along most.
        let size = normal.map(f64::abs);
        let away = if size[2] >= size[0] && size[2] >= size[1] { 2 } else { usize::from(size[1] > size[0]) };
        let (u, v) = ((away + 1) % 3, (away + 2) % 3);
        self.ears.earcut(points.iter().map(|p| [p[u], p[v]]), &[], &mut self.corners);
        for three in self.corners.chunks_exact_mut(3) {
            let [a, b, c] = [0, 1, 2].map(|k| points[three[k] as usize]);
            if dot(cross(sub(b, a), sub(c, a)), normal) < 0.0 {
                three.swap(1, 2);
            }
        }
    }
}

/// Whether no corner of a loop turns inwards.
fn is_convex(points: &[V3], normal: V3) -> bool {
    let least = -STRAIGHT * dot(normal, normal);
    let count = points.len();
    (0..count).all(|n| {
        let [a, b, c] = [n, (n + 1) % count, (n + 2) % count].map(|k| points[k]);
        dot(cross(sub(b, a), sub(c, b)), normal) >= least
    })
}
