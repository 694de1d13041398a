//! The points of the scene are those of the solution.

use crate::common::{desk_with, examples};
use serde_json::Value;

/// Coordinates are single precision: at 20 m from the datum a step is 0.002 mm.
const STEP: f64 = 0.004;

type P = [f64; 3];

fn point(numbers: &[f32], n: usize) -> P {
    [0, 1, 2].map(|k| f64::from(numbers[3 * n + k]))
}

fn sub(a: P, b: P) -> P {
    [0, 1, 2].map(|k| a[k] - b[k])
}

fn cross(a: P, b: P) -> P {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn dot(a: P, b: P) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn area(t: &[P; 3]) -> f64 {
    let twice = cross(sub(t[1], t[0]), sub(t[2], t[0]));
    dot(twice, twice).sqrt() / 2.0
}

fn run(value: &Value) -> std::ops::Range<usize> {
    let number = |key: &str| value[key].as_u64().unwrap() as usize;
    number("first")..number("first") + number("count")
}

fn triangles(numbers: &[f32], range: std::ops::Range<usize>) -> Vec<[P; 3]> {
    let points: Vec<P> = range.map(|n| point(numbers, n)).collect();
    assert_eq!(points.len() % 3, 0);
    points.chunks_exact(3).map(|three| [three[0], three[1], three[2]]).collect()
}

/// Area of a flat loop.
fn loop_area(points: &[P]) -> f64 {
    let mut sum = [0.0; 3];
    for pair in points[1..].windows(2) {
        let part = cross(sub(pair[0], points[0]), sub(pair[1], points[0]));
        sum = [0, 1, 2].map(|k| sum[k] + part[k]);
    }
    dot(sum, sum).sqrt() / 2.0
}

#[test]
fn triangles_cover_every_face_and_close_round_the_volume() {
    for (name, text) in examples() {
        let (_, standing, scene) = desk_with(&text);
        let (scene, solution) = (scene.unwrap(), roof::solve(&job::read(&text).unwrap()).unwrap());
        let members = standing["overview"]["scene"]["members"].as_array().unwrap();
        assert_eq!(members.len(), solution.members.len());
        let mut next = 0;
        for (drawn, member) in members.iter().zip(&solution.members) {
            let what = format!("{name} {}", member.mark);
            assert_eq!(drawn["mark"], Value::from(member.mark.as_str()));
            let range = run(&drawn["triangles"]);
            assert_eq!(range.start, next, "{what}");
            next = range.end;
            let triangles = triangles(&scene.timbers, range);
            let origin = triangles[0][0];
            let volume: f64 = triangles
                .iter()
                .map(|t| dot(sub(t[0], origin), cross(sub(t[1], origin), sub(t[2], origin))) / 6.0)
                .sum();
            let drawn_area: f64 = triangles.iter().map(area).sum();
            let real_area: f64 = member
                .solid
                .faces
                .iter()
                .map(|face| loop_area(&face.iter().map(|&n| member.solid.points[n as usize]).collect::<Vec<_>>()))
                .sum();
            // A step of every coordinate moves area and volume by at most so much.
            let length = member.stock_length_mm + member.size.depth_mm;
            assert!((drawn_area - real_area).abs() < 20.0 * STEP * length, "{what}: {drawn_area} {real_area}");
            assert!(
                (volume - member.volume_m3 * 1e9).abs() < STEP * real_area,
                "{what}: {volume} {}",
                member.volume_m3
            );
        }
        assert_eq!(3 * next, scene.timbers.len());
    }
}

#[test]
fn arrises_are_edges_of_their_solids_and_each_is_drawn_once() {
    for (name, text) in examples() {
        let (_, standing, scene) = desk_with(&text);
        let (scene, solution) = (scene.unwrap(), roof::solve(&job::read(&text).unwrap()).unwrap());
        for (drawn, member) in
            standing["overview"]["scene"]["members"].as_array().unwrap().iter().zip(&solution.members)
        {
            let bits = |p: &P| p.map(|v| (v as f32).to_bits());
            let mut edges: Vec<_> = Vec::new();
            for face in &member.solid.faces {
                for k in 0..face.len() {
                    let ends = [face[k], face[(k + 1) % face.len()]].map(|n| bits(&member.solid.points[n as usize]));
                    edges.push([ends[0].min(ends[1]), ends[0].max(ends[1])]);
                }
            }
            edges.sort_unstable();
            edges.dedup();
            let range = run(&drawn["arrises"]);
            let count = range.len() / 2;
            assert!(count >= 9 && count <= edges.len(), "{name} {}: {count} of {}", member.mark, edges.len());
            let mut seen = std::collections::HashSet::new();
            for n in range.step_by(2) {
                let ends = [n, n + 1].map(|n| [0, 1, 2].map(|k| scene.arrises[3 * n + k].to_bits()));
                let edge = [ends[0].min(ends[1]), ends[0].max(ends[1])];
                assert!(edges.binary_search(&edge).is_ok() && seen.insert(edge), "{name} {}", member.mark);
            }
        }
    }
}

#[test]
fn slopes_are_the_faces_raised_by_the_upstand_with_a_handle_on_each() {
    for (name, text) in examples() {
        let (_, standing, scene) = desk_with(&text);
        let (scene, solution) = (scene.unwrap(), roof::solve(&job::read(&text).unwrap()).unwrap());
        let slopes = standing["overview"]["scene"]["slopes"].as_array().unwrap();
        assert_eq!(slopes.len(), solution.faces.len());
        for (slope, face) in slopes.iter().zip(&solution.faces) {
            assert_eq!(slope["wall"], Value::from(face.id.as_str()));
            assert_eq!(slope["walls"], Value::from(face.walls.clone()));
            let triangles = triangles(&scene.slopes, run(&slope["triangles"]));
            let covered: f64 = triangles.iter().map(area).sum::<f64>() / 1e6;
            assert!((covered - face.slope_area_m2).abs() < 1e-3, "{name} {}: {covered}", face.id);
            let normal = cross(sub(triangles[0][1], triangles[0][0]), sub(triangles[0][2], triangles[0][0]));
            assert!(normal[2] > 0.0, "{name} {}: seen from above", face.id);
            let upstand = solution.totals.upstand_mm;
            let handle = [0, 1, 2].map(|k| slope["handle"][k].as_f64().unwrap());
            let corner = face.outline[0];
            let off =
                dot(normal, sub(handle, [corner[0], corner[1], corner[2] + upstand])) / dot(normal, normal).sqrt();
            assert!(off.abs() < 0.1, "{name} {}: {off}", face.id);
        }
    }
}

#[test]
fn neighbours_know_of_one_another() {
    for (name, text) in examples() {
        let (_, standing, _) = desk_with(&text);
        let members = standing["overview"]["scene"]["members"].as_array().unwrap();
        let of = |mark: &Value| members.iter().find(|m| m["mark"] == *mark).unwrap()["neighbours"].as_array().unwrap();
        let mut alone = Vec::new();
        for member in members {
            if of(&member["mark"]).is_empty() {
                alone.push(member["mark"].clone());
            }
            for other in of(&member["mark"]) {
                assert!(of(other).contains(&member["mark"]), "{name} {other}");
            }
        }
        assert!(alone.len() * 2 < members.len(), "{name}: {alone:?}");
    }
}
