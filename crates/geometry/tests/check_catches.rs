//! The check of a surface finds what is broken on purpose.

use crate::common::fixed::plans;
use geometry::DVec3;
use geometry::surface::{ArcKind, CheckFailure, NodeId, Surface, WallProfile, check, solve};

fn house() -> (Surface, Vec<WallProfile>) {
    let plan = plans().into_iter().find(|p| p.name.starts_with("P07")).expect("the unequal ell");
    (solve(&plan.loops, &plan.walls).expect("a roof"), plan.walls)
}

fn failures(surface: &Surface, walls: &[WallProfile]) -> Vec<CheckFailure> {
    check(surface, walls).expect_err("it is broken")
}

/// The number of a node at the upper end of a ridge.
fn ridge_node(surface: &Surface) -> usize {
    surface.arcs.iter().find(|a| a.kind == ArcKind::Ridge).expect("a ridge").to.index()
}

#[test]
fn every_fixed_roof_passes() {
    for plan in plans() {
        let roof = solve(&plan.loops, &plan.walls).expect("a roof");
        assert_eq!(check(&roof, &plan.walls), Ok(()), "{}", plan.name);
    }
}

#[test]
fn a_node_out_of_place() {
    let (mut roof, walls) = house();
    let node = ridge_node(&roof);
    roof.nodes[node] += DVec3::new(0.0, 0.0, 10.0);
    assert!(failures(&roof, &walls).iter().any(|f| matches!(f, CheckFailure::OffPlane { .. })));
}

#[test]
fn a_ridge_taken_for_a_valley() {
    let (mut roof, walls) = house();
    let arc = roof.arcs.iter().position(|a| a.kind == ArcKind::Ridge).expect("a ridge");
    roof.arcs[arc].kind = ArcKind::Valley;
    assert!(matches!(failures(&roof, &walls)[..], [CheckFailure::WrongKind { .. }]));
}

#[test]
fn a_wrong_pitch() {
    let (roof, mut walls) = house();
    walls[2] = WallProfile::slope(0.0, 44.0);
    assert!(matches!(failures(&roof, &walls)[..], [CheckFailure::NotOnItsWall { .. }]));
}

#[test]
fn a_face_left_out() {
    let (mut roof, walls) = house();
    let last = roof.faces.len() - 1;
    roof.faces.pop();
    for arc in &mut roof.arcs {
        for side in [&mut arc.left, &mut arc.right] {
            if side.is_some_and(|f| f.index() == last) {
                *side = None;
            }
        }
    }
    for face in &mut roof.face_of_wall {
        *face = face.filter(|f| f.index() != last);
    }
    let found = failures(&roof, &walls);
    assert!(found.iter().any(|f| matches!(f, CheckFailure::NoFace { .. })));
    assert!(found.iter().any(|f| matches!(f, CheckFailure::Partition { .. })));
}

#[test]
fn an_outline_out_of_order() {
    let (mut roof, walls) = house();
    roof.faces[0].outline.swap(0, 1);
    assert!(failures(&roof, &walls).iter().any(|f| matches!(f, CheckFailure::Outline { .. })));
}

#[test]
fn an_index_that_points_nowhere() {
    let (mut roof, walls) = house();
    roof.arcs[0].from = NodeId(10_000);
    assert_eq!(failures(&roof, &walls), vec![CheckFailure::Lists]);
}

#[test]
fn a_plan_of_another_size() {
    let (mut roof, walls) = house();
    for corner in roof.loops.iter_mut().flatten() {
        *corner *= 1.01;
    }
    let found = failures(&roof, &walls);
    assert!(found.iter().any(|f| matches!(f, CheckFailure::Partition { .. })));
    assert!(found.iter().any(|f| matches!(f, CheckFailure::NotOnItsWall { .. })));
}
