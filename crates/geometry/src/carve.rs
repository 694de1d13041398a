//! Holes in solids: convex cells with a convex hole taken out of them.

use crate::{Cell, Plane};

/// Take a convex hole out of cells: what lies inside all planes of the hole
/// goes. The planes' normals point out of the hole; a face that one of them
/// leaves carries its tag. Faces between cells that used to be one are tagged
/// `inner`.
#[must_use]
pub fn carve<T: Copy + PartialEq>(cells: &[Cell<T>], hole: &[(Plane, T)], inner: T) -> Vec<Cell<T>> {
    let mut out = Vec::with_capacity(cells.len() + hole.len());
    for cell in cells {
        let inside = hole.iter().try_fold(cell.clone(), |left, (plane, _)| left.clipped(*plane, inner));
        if inside.is_none() {
            out.push(cell.clone());
            continue;
        }
        let mut rest = Some(cell.clone());
        for (k, (plane, tag)) in hole.iter().enumerate() {
            let Some(left) = rest.take() else { break };
            // The part outside this plane stays. Only the part of its new face
            // that the whole hole covers is a cut; the rest meets other cells.
            if let Some(kept) = left.clipped(plane.flipped(), inner) {
                out.extend(faced(&kept, hole, k, (*tag, inner)));
            }
            rest = left.clipped(*plane, inner);
        }
    }
    out
}

/// Split a kept cell along the later planes of the hole, so that its face on
/// plane `k` is either all cut or all inner.
fn faced<T: Copy + PartialEq>(cell: &Cell<T>, hole: &[(Plane, T)], k: usize, (tag, inner): (T, T)) -> Vec<Cell<T>> {
    let on = |c: &Cell<T>| {
        c.faces
            .iter()
            .position(|f| f.ring.iter().all(|i| hole[k].0.distance(c.points[*i as usize]).abs() <= crate::ON_PLANE))
    };
    let mut out = Vec::new();
    let mut rest = Some(cell.clone());
    for (plane, _) in &hole[k + 1..] {
        let Some(left) = rest.take() else { return out };
        let Some(face) = on(&left) else {
            out.push(left);
            return out;
        };
        let crosses = left.faces[face].ring.iter().any(|i| plane.distance(left.points[*i as usize]) > crate::ON_PLANE);
        if crosses {
            out.extend(left.clipped(plane.flipped(), inner));
            rest = left.clipped(*plane, inner);
        } else {
            rest = Some(left);
        }
    }
    if let Some(mut cut) = rest {
        if let Some(face) = on(&cut) {
            cut.faces[face].tag = tag;
        }
        out.push(cut);
    }
    out
}
