//! The arrises of solids: edges where two faces meet at an angle.

use super::push;
use super::vec3::{V3, dot};
use roof::solution::SolidOut;

/// Two faces whose directions differ by less than this lie in one plane:
/// 1 - cos of 0.5°, less than any cut that is made on purpose.
const ONE_PLANE: f64 = 4e-5;

/// Finds arrises; keeps its room from one solid to the next.
#[derive(Default)]
pub(super) struct Arrises {
    /// The lesser and the greater point of each edge, and its face.
    edges: Vec<(u32, u32, usize)>,
}

impl Arrises {
    /// The arrises of a solid, each once. `normals` are those of its faces, of any length.
    pub(super) fn solid(&mut self, solid: &SolidOut, normals: &[V3], out: &mut Vec<f32>) {
        self.edges.clear();
        for (face, corners) in solid.faces.iter().enumerate() {
            for (k, &from) in corners.iter().enumerate() {
                let to = corners.get(k + 1).or(corners.first()).copied().unwrap_or(from);
                self.edges.push((from.min(to), from.max(to), face));
            }
        }
        self.edges.sort_unstable();
        for same in self.edges.chunk_by(|a, b| (a.0, a.1) == (b.0, b.1)) {
            let Some(&(from, to, face)) = same.first() else { continue };
            let flat = same.len() > 1 && same.iter().all(|edge| in_one_plane(normals, face, edge.2));
            if let (false, Some(&from), Some(&to)) =
                (flat, solid.points.get(from as usize), solid.points.get(to as usize))
            {
                push(from, out);
                push(to, out);
            }
        }
    }
}

fn in_one_plane(normals: &[V3], a: usize, b: usize) -> bool {
    let (Some(&a), Some(&b)) = (normals.get(a), normals.get(b)) else { return false };
    let product = dot(a, b);
    let sizes = (dot(a, a) * dot(b, b)).sqrt();
    product >= sizes * (1.0 - ONE_PLANE)
}
