//! The slopes of the roof, to be taken hold of.

use super::triangles::Triangles;
use super::vec3::{V3, cross, dot, sub};
use super::{push, run};
use crate::views::SceneSlope;
use roof::solution::{FaceOut, Solution};

/// The slopes, on the backs of the rafters.
pub(super) fn of(solution: &Solution, triangles: &mut Triangles, out: &mut Vec<f32>) -> Vec<SceneSlope> {
    let raise = solution.totals.upstand_mm;
    solution.faces.iter().map(|face| slope(face, raise, triangles, out)).collect()
}

fn slope(face: &FaceOut, raise: f64, triangles: &mut Triangles, out: &mut Vec<f32>) -> SceneSlope {
    let outline: Vec<V3> = face.outline.iter().map(|p| [p[0], p[1], p[2] + raise]).collect();
    let first = out.len();
    let triangles = triangles.outline(&outline);
    for point in triangles.iter().flatten() {
        push(*point, out);
    }
    SceneSlope {
        wall: face.id.clone(),
        walls: face.walls.clone(),
        triangles: run(first, out),
        handle: handle(&triangles).or(outline.first().copied()).unwrap_or_default(),
        pitch_deg: face.pitch_deg,
    }
}

/// The middle of the triangles where it lies on one of them; otherwise the
/// middle of the greatest.
fn handle(triangles: &[[V3; 3]]) -> Option<V3> {
    let middle = |t: &[V3; 3]| -> V3 { core::array::from_fn(|k| (t[0][k] + t[1][k] + t[2][k]) / 3.0) };
    let area = |t: &[V3; 3]| {
        let twice = cross(sub(t[1], t[0]), sub(t[2], t[0]));
        dot(twice, twice).sqrt() / 2.0
    };
    let whole: f64 = triangles.iter().map(area).sum();
    if whole.is_nan() || whole <= 0.0 {
        return None;
    }
    let mut centre = [0.0; 3];
    for triangle in triangles {
        let (part, middle) = (area(triangle) / whole, middle(triangle));
        for k in 0..3 {
            centre[k] += part * middle[k];
        }
    }
    if triangles.iter().any(|triangle| over(triangle, centre)) {
        return Some(centre);
    }
    triangles.iter().max_by(|a, b| area(a).total_cmp(&area(b))).map(middle)
}

/// Whether a point of the plane of a triangle lies on it, in plan.
fn over(triangle: &[V3; 3], point: V3) -> bool {
    (0..3).all(|k| {
        let (a, b) = (triangle[k], triangle[(k + 1) % 3]);
        (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) >= 0.0
    })
}
