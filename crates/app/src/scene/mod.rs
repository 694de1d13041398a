//! What the 3-D view draws of a roof: triangles, arrises and slopes.

mod arrises;
mod layers;
mod neighbours;
mod slopes;
mod triangles;
mod vec3;

use crate::views::{Run, Scene, SceneMember};
use arrises::Arrises;
use roof::solution::{Member, Solution};
use triangles::Triangles;

/// The points of a scene: three numbers each, mm, x east, y north, z up.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Buffers {
    /// Triangles of all timbers, anticlockwise from outside.
    pub timbers: Vec<f32>,
    /// Arrises of all timbers, two points each.
    pub arrises: Vec<f32>,
    /// Triangles of the slopes, anticlockwise from above.
    pub slopes: Vec<f32>,
}

/// Numbers that a point takes in a buffer.
const NUMBERS: usize = 3;

/// The scene of a roof, and its points.
pub(crate) fn of(solution: &Solution) -> (Scene, Buffers) {
    let mut buffers = Buffers::default();
    let mut triangles = Triangles::default();
    let mut arrises = Arrises::default();
    let mut neighbours = neighbours::of(solution);
    let (mut low, mut high) = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
    let mut members = Vec::with_capacity(solution.members.len());
    for (member, touching) in solution.members.iter().zip(&mut neighbours) {
        for point in &member.solid.points {
            for k in 0..3 {
                low[k] = low[k].min(point[k]);
                high[k] = high[k].max(point[k]);
            }
        }
        let (first_triangle, first_arris) = (buffers.timbers.len(), buffers.arrises.len());
        let normals = triangles.solid(&member.solid, &mut buffers.timbers);
        arrises.solid(&member.solid, normals, &mut buffers.arrises);
        members.push(SceneMember {
            mark: member.mark.clone(),
            layer: layers::of(member.kind).to_owned(),
            triangles: run(first_triangle, &buffers.timbers),
            arrises: run(first_arris, &buffers.arrises),
            label: label(member),
            neighbours: core::mem::take(touching),
        });
    }
    if solution.members.is_empty() {
        (low, high) = ([0.0; 3], [0.0; 3]);
    }
    let slopes = slopes::of(solution, &mut triangles, &mut buffers.slopes);
    (Scene { low, high, members, slopes }, buffers)
}

/// The points of a buffer from a length of it on.
fn run(first: usize, buffer: &[f32]) -> Run {
    let points = |numbers: usize| u32::try_from(numbers / NUMBERS).unwrap_or(u32::MAX);
    Run { first: points(first), count: points(buffer.len().saturating_sub(first)) }
}

/// Where a timber's mark is written: the middle of its back.
fn label(member: &Member) -> [f64; 3] {
    let bench = &member.bench;
    let ends = |k: usize| {
        let all = bench.points.iter().map(|point| point[k]);
        let (least, most) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, m), v| (l.min(v), m.max(v)));
        if least <= most { (least, most) } else { (0.0, 0.0) }
    };
    let ((foot, head), (_, back), (right, left)) = (ends(0), ends(1), ends(2));
    let (along, across) = ((foot + head) / 2.0, (right + left) / 2.0);
    core::array::from_fn(|k| bench.origin[k] + along * bench.along[k] + back * bench.up[k] + across * bench.across[k])
}

/// A point as the buffers hold it.
fn push(point: [f64; 3], buffer: &mut Vec<f32>) {
    buffer.extend(point.map(|number| number as f32));
}
