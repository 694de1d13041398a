//! The order in which faces are painted so that near ones cover far ones.
//!
//! Faces are sorted into a tree of half-spaces, and split where a plane runs
//! through them, which is right for any solids that do not share space
//! (Fuchs, Kedem and Naylor 1980, *On visible surface generation by a priori
//! tree structures*). Past [`MOST_EXACT`] faces they are sorted by the depth of
//! their middles instead, which can be wrong where long timbers cross.

use crate::facets::{Facet, half};
use crate::vec3::{V3, dot};

/// A point nearer to a plane than this lies in it, mm: under any pen's width,
/// and over the rounding of coordinates of some metres.
const ON_PLANE: f64 = 0.02;
/// The tree is built for up to this many faces: some 0.1 s.
const MOST_EXACT: usize = 12_000;
/// Splitting may multiply the faces by this before the tree is given up.
const MOST_SPLIT: usize = 8;
/// How many faces are tried as the dividing plane of a node.
const TRIES: usize = 7;
/// A split costs as much as this many faces of imbalance.
const SPLIT_COST: usize = 4;

struct Node {
    facets: Vec<Facet>,
    /// Children behind and in front.
    behind: Option<usize>,
    front: Option<usize>,
}

/// Faces from far to near, as seen from the direction `eye` points to, from
/// far away. All faces must look towards the eye.
pub fn far_to_near(facets: Vec<Facet>, eye: V3) -> Vec<Facet> {
    let most = facets.len().saturating_mul(MOST_SPLIT);
    if facets.len() > MOST_EXACT { by_middles(facets, eye) } else { by_tree(facets, most, eye) }
}

fn by_middles(facets: Vec<Facet>, eye: V3) -> Vec<Facet> {
    let depth = |f: &Facet| f.points.iter().map(|&p| dot(p, eye)).sum::<f64>() / f.points.len().max(1) as f64;
    let mut keyed: Vec<(f64, Facet)> = facets.into_iter().map(|f| (depth(&f), f)).collect();
    keyed.sort_by(|a, b| a.0.total_cmp(&b.0));
    keyed.into_iter().map(|(_, f)| f).collect()
}

fn by_tree(facets: Vec<Facet>, most: usize, eye: V3) -> Vec<Facet> {
    let spare = facets.clone();
    let mut nodes: Vec<Node> = Vec::new();
    let mut count = facets.len();
    // Faces still to place, and which child of which node they become.
    let mut waiting = vec![(facets, None::<(usize, bool)>)];
    while let Some((facets, place)) = waiting.pop() {
        let Some((chosen, normal, offset)) = divider(&facets) else { continue };
        let mut node = Node { facets: Vec::new(), behind: None, front: None };
        let (mut behind, mut front) = (Vec::new(), Vec::new());
        for (index, facet) in facets.into_iter().enumerate() {
            // A face that is not flat would not lie in its own plane; taking
            // it out here makes every step leave fewer faces to place.
            if index == chosen {
                node.facets.push(facet);
                continue;
            }
            let sides: Vec<f64> = facet.points.iter().map(|&p| dot(p, normal) - offset).collect();
            match (sides.iter().any(|&s| s < -ON_PLANE), sides.iter().any(|&s| s > ON_PLANE)) {
                (false, false) => node.facets.push(facet),
                (true, false) => behind.push(facet),
                (false, true) => front.push(facet),
                (true, true) => {
                    count += 1;
                    front.push(half(&facet, &sides, 1.0));
                    behind.push(half(&facet, &sides, -1.0));
                }
            }
        }
        if count > most {
            return by_middles(spare, eye);
        }
        let index = nodes.len();
        match place {
            Some((parent, true)) => nodes[parent].front = Some(index),
            Some((parent, false)) => nodes[parent].behind = Some(index),
            None => {}
        }
        nodes.push(node);
        waiting.push((behind, Some((index, false))));
        waiting.push((front, Some((index, true))));
    }
    walk(nodes)
}

/// Takes the faces out of the tree. Every dividing plane looks towards the
/// eye, so what is behind it comes first.
fn walk(mut nodes: Vec<Node>) -> Vec<Facet> {
    let mut out = Vec::new();
    let mut path: Vec<usize> = Vec::new();
    let mut next = (!nodes.is_empty()).then_some(0);
    loop {
        while let Some(index) = next {
            path.push(index);
            next = nodes[index].behind;
        }
        let Some(index) = path.pop() else { return out };
        out.append(&mut nodes[index].facets);
        next = nodes[index].front;
    }
}

/// The face that splits few others and halves them well: its number, and the
/// normal and offset of its plane.
fn divider(facets: &[Facet]) -> Option<(usize, V3, f64)> {
    let step = (facets.len() / TRIES).max(1);
    facets
        .iter()
        .enumerate()
        .step_by(step)
        .take(TRIES)
        .filter_map(|(index, candidate)| {
            let plane = (candidate.normal, dot(*candidate.points.first()?, candidate.normal));
            let (mut behind, mut front, mut split) = (0_usize, 0_usize, 0_usize);
            for facet in facets {
                let (mut low, mut high) = (false, false);
                for &p in &facet.points {
                    let side = dot(p, plane.0) - plane.1;
                    low |= side < -ON_PLANE;
                    high |= side > ON_PLANE;
                }
                behind += usize::from(low && !high);
                front += usize::from(high && !low);
                split += usize::from(low && high);
            }
            Some((behind.abs_diff(front) + SPLIT_COST * split, (index, plane.0, plane.1)))
        })
        .min_by_key(|(cost, _)| *cost)
        .map(|(_, chosen)| chosen)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(at: V3, a: V3, b: V3) -> Facet {
        let p = |s: f64, t: f64| [0, 1, 2].map(|k| at[k] + s * a[k] + t * b[k]);
        let normal = crate::vec3::unit(crate::vec3::cross(a, b)).unwrap_or([0.0, 0.0, 1.0]);
        Facet {
            points: vec![p(0., 0.), p(1., 0.), p(1., 1.), p(0., 1.)],
            drawn: vec![true; 4],
            normal,
            name: String::new(),
        }
    }

    /// Depth of a face along the eye's direction above a point of the picture.
    fn depth_at(facet: &Facet, x: f64, y: f64) -> Option<f64> {
        let p = &facet.points;
        let inside = p
            .iter()
            .zip(p.iter().cycle().skip(1))
            .all(|(a, b)| (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) >= 0.0);
        let n = facet.normal;
        inside.then(|| p[0][2] - ((x - p[0][0]) * n[0] + (y - p[0][1]) * n[1]) / n[2])
    }

    #[test]
    fn faces_that_are_not_flat_come_out_all_the_same() {
        let mut bent = square([0., 0., 0.], [2., 0., 0.], [0., 1., 0.]);
        bent.points[1][2] = 5.0;
        bent.points[2][2] = 9.0;
        assert_eq!(far_to_near(vec![bent.clone(), bent], [0.0, 0.0, 1.0]).len(), 2);
    }

    #[test]
    fn three_planks_that_lap_in_a_ring_are_painted_right() {
        // Each lies on the next, so no order of whole faces is right.
        let facets = vec![
            square([0., 0., 0.], [10., 0., 3.], [0., 1., 0.]),
            square([10., -1., 0.], [0., 10., 3.], [-1., 0., 0.]),
            square([10.5, 9.5, 0.], [-9.0, -9.5, 4.], [0.7, -0.7, 0.]),
        ];
        let eye = [0.0, 0.0, 1.0];
        let facets: Vec<Facet> = facets
            .into_iter()
            .map(|mut f| {
                if f.normal[2] < 0.0 {
                    f.points.reverse();
                    f.normal = f.normal.map(|v| -v);
                }
                f
            })
            .collect();
        let painted = far_to_near(facets.clone(), eye);
        let mut compared = 0;
        for xi in 0..40 {
            for yi in 0..44 {
                let (x, y) = (0.13 + 0.27 * f64::from(xi), -0.93 + 0.27 * f64::from(yi));
                let nearest = facets.iter().filter_map(|f| depth_at(f, x, y)).fold(f64::NEG_INFINITY, f64::max);
                let Some(shown) = painted.iter().rev().find_map(|f| depth_at(f, x, y)) else { continue };
                compared += 1;
                assert!((shown - nearest).abs() < 2.0 * ON_PLANE, "at {x} {y}: {shown} shown, {nearest} is nearest");
            }
        }
        assert!(compared > 50, "{compared}");
    }
}
