//! The fixed plans of `reference/surface_checks.json`, whose meta section
//! says how each value was derived (most by hand, all compared there with a
//! general-purpose straight-skeleton library).

use crate::common::fixed::{FixedPlan, plans};
use geometry::surface::{ArcKind, Surface, solve};
use serde_json::Value;

/// Lengths and heights in the file are rounded to 0.1 mm; P17 and P18 carry
/// corners rounded to 0.1 mm and contracted nodes as well.
const LENGTH_TOLERANCE: f64 = 0.3;

/// Areas in the file are rounded to 1e-6 m2.
const AREA_TOLERANCE: f64 = 3e-5;

fn roof(plan: &FixedPlan) -> Surface {
    solve(&plan.loops, &plan.walls).unwrap_or_else(|error| panic!("{}: {error}", plan.name))
}

fn number(v: &Value) -> f64 {
    v.as_f64().expect("a number")
}

fn lengths(roof: &Surface, kind: ArcKind) -> Vec<f64> {
    let arcs = roof.arcs.iter().filter(|a| a.kind == kind);
    let mut lengths: Vec<f64> = arcs.map(|a| roof.node(a.to).distance(roof.node(a.from))).collect();
    lengths.sort_by(f64::total_cmp);
    lengths
}

const KINDS: [(&str, ArcKind); 6] = [
    ("ridge", ArcKind::Ridge),
    ("hip", ArcKind::Hip),
    ("valley", ArcKind::Valley),
    ("sloping_ridge_or_broken_hip", ArcKind::BrokenHip),
    ("verge", ArcKind::Verge),
    ("pitch_break", ArcKind::PitchBreak),
];

#[test]
fn counts_of_lines_and_faces() {
    for plan in plans() {
        let roof = roof(&plan);
        for (name, kind) in KINDS {
            let expected = plan.expected["counts"][name].as_u64().expect("a count") as usize;
            assert_eq!(lengths(&roof, kind).len(), expected, "{}: {name}", plan.name);
        }
        assert_eq!(roof.faces.len() as u64, plan.expected["faces"].as_u64().expect("faces"), "{}", plan.name);
    }
}

#[test]
fn true_lengths() {
    for plan in plans() {
        let roof = roof(&plan);
        let others = plan.expected["other_true_lengths_mm"].as_object().expect("lengths");
        for (name, expected) in others {
            let kind = KINDS.iter().find(|(n, _)| n == name).expect("a known kind").1;
            let expected: Vec<f64> = expected.as_array().expect("a list").iter().map(number).collect();
            let found = lengths(&roof, kind);
            assert_eq!(found.len(), expected.len(), "{}: {name}", plan.name);
            for (f, e) in found.iter().zip(&expected) {
                assert!((f - e).abs() < LENGTH_TOLERANCE, "{}: {name} {f} for {e}", plan.name);
            }
        }
    }
}

#[test]
fn ridges_lie_where_they_should() {
    for plan in plans() {
        let roof = roof(&plan);
        for ridge in plan.expected["ridges"].as_array().expect("ridges") {
            let z = number(&ridge["z_mm"]);
            let end = |key: &str| geometry::DVec3::new(number(&ridge[key][0]), number(&ridge[key][1]), z);
            let (a, b) = (end("frm"), end("to"));
            let found = roof.arcs.iter().filter(|arc| arc.kind == ArcKind::Ridge).any(|arc| {
                let (p, q) = (roof.node(arc.from), roof.node(arc.to));
                let off = (p.distance(a) + q.distance(b)).min(p.distance(b) + q.distance(a));
                off < LENGTH_TOLERANCE
            });
            assert!(found, "{}: no ridge from {a} to {b}", plan.name);
        }
    }
}

#[test]
fn apex_and_areas() {
    for plan in plans() {
        let roof = roof(&plan);
        let apex = roof.nodes.iter().map(|n| n.z).fold(f64::NEG_INFINITY, f64::max);
        assert!((apex - number(&plan.expected["apex_z_mm"])).abs() < LENGTH_TOLERANCE, "{}: {apex}", plan.name);
        let (mut flat, mut sloping) = (0.0, 0.0);
        for face in &roof.faces {
            let next = face.outline.iter().cycle().skip(1);
            let twice: f64 = face
                .outline
                .iter()
                .zip(next)
                .map(|(a, b)| roof.node(*a).truncate().perp_dot(roof.node(*b).truncate()))
                .sum();
            flat += twice / 2e6;
            sloping += twice / 2e6 * (1.0 + face.plane.tan_pitch * face.plane.tan_pitch).sqrt();
        }
        let expected = (number(&plan.expected["plan_area_m2"]), number(&plan.expected["slope_area_m2"]));
        assert!((flat - expected.0).abs() < AREA_TOLERANCE, "{}: plan area {flat}", plan.name);
        assert!((sloping - expected.1).abs() < AREA_TOLERANCE, "{}: slope area {sloping}", plan.name);
    }
}
