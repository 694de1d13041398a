//! Holes in solids: convex cells with a convex hole taken out of them.

use crate::{Cell, Plane};

/// Take a convex hole out of cells: what lies inside all planes of the hole
/// goes. The planes' normals point out of the hole; a face that one of them
/// leaves carries its tag. Faces between cells that used to be one are tagged
/// `inner`, as are those between the cells given; every `inner` face stays
/// covered by its neighbours.
#[must_use]
pub fn carve<T: Copy + PartialEq>(cells: &[Cell<T>], hole: &[(Plane, T)], inner: T) -> Vec<Cell<T>> {
    let mut out = Vec::with_capacity(cells.len() + hole.len());
    for cell in cells {
        // Clear of the hole: nothing is cut off it and none of its faces is laid bare.
        if cell.shut_out(hole.iter().map(|(plane, _)| *plane)) {
            out.push(cell.clone());
            continue;
        }
        if cell.within(hole.iter().map(|(plane, _)| *plane), inner).is_none() {
            bared(cell, hole, inner, &mut out);
            continue;
        }
        let mut rest = Some(cell.clone());
        for (k, (plane, tag)) in hole.iter().enumerate() {
            let Some(left) = rest.take() else { break };
            // The part outside this plane stays. Only the part of its new face
            // that the whole hole covers is a cut; the rest meets other cells.
            if let Some(kept) = left.clipped(plane.flipped(), inner) {
                let later: Vec<Plane> = hole[k + 1..].iter().map(|(p, _)| *p).collect();
                faced(&kept, *plane, &later, (*tag, inner), &mut out);
            }
            rest = left.clipped(*plane, inner);
        }
    }
    out
}

/// Cut cells off at a plane: what lies outside it goes. Faces between cells
/// that come to lie on the plane are laid bare and carry its tag.
#[must_use]
pub fn trim<T: Copy + PartialEq>(cells: &[Cell<T>], plane: Plane, tag: T, inner: T) -> Vec<Cell<T>> {
    let mut left: Vec<Cell<T>> = cells.iter().filter_map(|c| c.clipped(plane, tag)).collect();
    for cell in &mut left {
        if let Some(face) = face_on(cell, plane)
            && cell.faces[face].tag == inner
        {
            cell.faces[face].tag = tag;
        }
    }
    left
}

/// The face of a cell that lies on a plane.
fn face_on<T>(cell: &Cell<T>, plane: Plane) -> Option<usize> {
    cell.faces
        .iter()
        .position(|f| f.ring.iter().all(|i| plane.distance(cell.points[*i as usize]).abs() <= crate::ON_PLANE))
}

/// Keep a cell that the hole only touches. Where the hole ends at a face that
/// this cell shares with another, it lays part of it bare.
fn bared<T: Copy + PartialEq>(cell: &Cell<T>, hole: &[(Plane, T)], inner: T, out: &mut Vec<Cell<T>>) {
    let touched = hole.iter().enumerate().find(|(_, (plane, _))| {
        face_on(cell, *plane).is_some_and(|f| cell.faces[f].tag == inner)
            && cell.points.iter().all(|p| plane.distance(*p) >= -crate::ON_PLANE)
    });
    match touched {
        Some((k, (plane, tag))) => {
            let others: Vec<Plane> = hole.iter().enumerate().filter(|(j, _)| *j != k).map(|(_, (p, _))| *p).collect();
            faced(cell, *plane, &others, (*tag, inner), out);
        }
        None => out.push(cell.clone()),
    }
}

/// Split a cell along the other planes of the hole, so that its face on `plane`
/// is either all cut or all inner.
fn faced<T: Copy + PartialEq>(
    cell: &Cell<T>,
    plane: Plane,
    others: &[Plane],
    (tag, inner): (T, T),
    out: &mut Vec<Cell<T>>,
) {
    // A face that lies beside the hole is left alone.
    let beside = |face: usize, c: &Cell<T>, p: &Plane| {
        c.faces[face].ring.iter().all(|i| p.distance(c.points[*i as usize]) >= -crate::ON_PLANE)
    };
    let mut left = cell.clone();
    if face_on(&left, plane).is_some_and(|face| others.iter().any(|p| beside(face, &left, p))) {
        out.push(left);
        return;
    }
    for other in others {
        let Some(face) = face_on(&left, plane) else { break };
        if beside(face, &left, other) {
            out.push(left);
            return;
        }
        let crosses = left.faces[face].ring.iter().any(|i| other.distance(left.points[*i as usize]) > crate::ON_PLANE);
        if crosses {
            out.extend(left.clipped(other.flipped(), inner));
            let Some(within) = left.clipped(*other, inner) else { return };
            left = within;
        }
    }
    if let Some(face) = face_on(&left, plane) {
        left.faces[face].tag = tag;
    }
    out.push(left);
}
