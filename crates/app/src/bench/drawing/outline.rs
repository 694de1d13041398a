//! The faces of a timber on the bench, whole: what lies in one plane under one
//! name is one face, whatever pieces the solid is made of.

use roof::solution::Member;
use std::collections::BTreeMap;

/// A place in bench axes: along, up, across to the left, mm.
pub type Place = [f64; 3];

/// Normals whose product is nearer to 1 lie in one plane to the eye.
const SAME_WAY: f64 = 1e-5;

/// A face of the timber.
#[derive(Clone, Debug)]
pub struct Face {
    /// What made it: `top`, `left`, or the name of a cut.
    pub name: String,
    /// Direction outwards, in bench axes.
    pub normal: Place,
    /// Its outlines; holes run the other way.
    pub loops: Vec<Vec<Place>>,
}

impl Face {
    /// Whether the saw made it.
    pub fn is_sawn(&self) -> bool {
        !matches!(self.name.as_str(), "top" | "underside" | "left" | "right")
    }

    /// The middle of its corners.
    pub fn middle(&self) -> Place {
        let points = || self.loops.iter().flatten();
        let count = points().count().max(1) as f64;
        let sum = |axis: usize| points().filter_map(|p| p.get(axis)).sum::<f64>() / count;
        [sum(0), sum(1), sum(2)]
    }
}

/// A directed edge between two points of the solid.
type Edge = (u32, u32);

/// The faces of a timber as it lies on the bench.
pub fn faces(member: &Member) -> Vec<Face> {
    let point = |index: u32| member.bench.points.get(index as usize).copied();
    let mut groups: Vec<(String, Place, Vec<Edge>)> = Vec::new();
    for (number, face) in member.solid.faces.iter().enumerate() {
        let points: Option<Vec<Place>> = face.iter().map(|index| point(*index)).collect();
        let Some(normal) = points.as_deref().and_then(normal_of) else { continue };
        let name = member.solid.names.get(number).map_or("", String::as_str);
        let edges = face.iter().copied().zip(face.iter().copied().cycle().skip(1));
        let is_same = |group: &(String, Place, Vec<Edge>)| {
            group.0 == name && dot(group.1, normal) > 1.0 - SAME_WAY && same_plane(&group.2, face, normal, &point)
        };
        match groups.iter_mut().find(|group| is_same(group)) {
            Some(group) => group.2.extend(edges),
            None => groups.push((name.to_owned(), normal, edges.collect())),
        }
    }
    let whole = |(name, normal, edges): (String, Place, Vec<Edge>)| Face {
        name,
        normal,
        loops: loops(edges).iter().map(|ring| ring.iter().filter_map(|index| point(*index)).collect()).collect(),
    };
    groups.into_iter().map(whole).collect()
}

/// Whether a face lies in the plane of a group's first edge.
fn same_plane(group: &[Edge], face: &[u32], normal: Place, point: &impl Fn(u32) -> Option<Place>) -> bool {
    /// Planes that are no further apart are one, mm.
    const APART: f64 = 0.05;
    let first = group.first().and_then(|edge| point(edge.0));
    let other = face.first().and_then(|index| point(*index));
    first.zip(other).is_some_and(|(a, b)| (dot(a, normal) - dot(b, normal)).abs() < APART)
}

/// The outlines of faces that lie together: edges that two of them share are
/// none of theirs.
fn loops(edges: Vec<Edge>) -> Vec<Vec<u32>> {
    let mut next: BTreeMap<u32, Vec<u32>> = BTreeMap::new();
    for (from, to) in edges {
        // An edge run the other way before cancels this one.
        let back =
            next.get_mut(&to).and_then(|ends| ends.iter().position(|end| *end == from).map(|at| ends.remove(at)));
        if back.is_none() {
            next.entry(from).or_default().push(to);
        }
    }
    let mut loops = Vec::new();
    while let Some((&start, _)) = next.iter().find(|(_, ends)| !ends.is_empty()) {
        let mut ring = Vec::new();
        let mut at = start;
        while let Some(to) = next.get_mut(&at).and_then(Vec::pop) {
            ring.push(at);
            at = to;
        }
        if ring.len() > 2 {
            loops.push(ring);
        }
    }
    loops
}

fn dot(a: Place, b: Place) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Outward direction of a loop seen from outside, by summing over its edges.
fn normal_of(points: &[Place]) -> Option<Place> {
    let first = *points.first()?;
    let less = |a: Place| [a[0] - first[0], a[1] - first[1], a[2] - first[2]];
    let mut sum = [0.0; 3];
    for (a, b) in points.iter().zip(points.iter().cycle().skip(1)) {
        let (a, b) = (less(*a), less(*b));
        sum[0] += a[1] * b[2] - a[2] * b[1];
        sum[1] += a[2] * b[0] - a[0] * b[2];
        sum[2] += a[0] * b[1] - a[1] * b[0];
    }
    let length = dot(sum, sum).sqrt();
    // Along, up and across to the left are left-handed axes: outwards is the other way.
    if length.is_finite() && length > 0.0 { Some(sum.map(|v| -v / length)) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shared_edges_are_no_outline() {
        // Two squares side by side.
        let edges = vec![(0, 1), (1, 4), (4, 3), (3, 0), (1, 2), (2, 5), (5, 4), (4, 1)];
        let rings = loops(edges);
        assert_eq!(rings.len(), 1);
        assert_eq!(rings[0].len(), 6);
    }
}
