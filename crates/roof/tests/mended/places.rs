//! Plans by name, each with the place that was refused.

use super::{file, roofed, warned};
use roof::solution::MemberKind;

const GABLES: &str = "B = { gable = true }\nD = { gable = true }";

#[test]
fn a_wing_between_walls_a_millimetre_out_of_line() {
    let plan = "[[0,0],[9000,0],[9000,6000],[6300,6000],[6300,9000],[2700,9000],[2700,6001],[0,6001]]";
    let roof = roofed(&file(plan, 40.0, "E = { gable = true }", ""));
    let square = roofed(&file(&plan.replace("6001", "6000"), 40.0, "E = { gable = true }", ""));
    assert_eq!(roof.members.len(), square.members.len(), "as many timbers as on the square plan");
    assert_eq!(warned(&roof, "plates-bedded-true"), 1, "walls C and G");
    assert_eq!(warned(&roof, "line-without-timber"), 0);
}

#[test]
fn a_porch_between_walls_two_millimetres_out_of_line() {
    let plan = "[[0,0],[3000,0],[3000,-1500],[5000,-1500],[5000,2],[9000,2],[9000,6000],[0,6000]]";
    let roof = roofed(&file(plan, 40.0, "C = { gable = true }", ""));
    let square = roofed(&file(&plan.replace(",2]", ",0]"), 40.0, "C = { gable = true }", ""));
    assert_eq!(roof.members.len(), square.members.len(), "as many timbers as on the square plan");
    assert_eq!(warned(&roof, "plates-bedded-true"), 1, "walls A and E");
}

#[test]
fn an_l_with_a_low_wing_wall() {
    let plan = "[[3000,5000],[3000,7000],[0,7000],[0,0],[13000,0],[13000,4500]]";
    let roof = roofed(&file(plan, 40.0, "A = { plate = -200 }", ""));
    assert!(roof.members.iter().any(|m| m.kind == MemberKind::WallPlate && m.wall.as_deref() == Some("A")));
}

#[test]
fn a_barge_board_on_a_gable_out_of_square() {
    let plan = "[[0,0],[10750,0],[10750,8347],[-3,8350]]";
    for gables in [GABLES, "B = { gable = true }", "A = { gable = true }"] {
        let roof = roofed(&file(plan, 30.0, gables, "barge = { size = [25, 200] }"));
        let boards = roof.members.iter().filter(|m| m.kind == MemberKind::BargeBoard).count();
        let told = warned(&roof, "no-barge-board") + warned(&roof, "member-left-out");
        assert!(boards + told >= 2, "{gables}: an edge without a board is told");
    }
}

#[test]
fn a_porch_of_thick_hips_with_hangers() {
    let plan = "[[0,0],[3000,0],[3000,-1500],[5000,-1500],[5000,0],[9000,0],[9000,6000],[0,6000]]";
    let timber = "rafter = { size = [50,200] }\nhip = { size = [100,200] }\nceiling_joist = { size = [50,200] }\n\
                  binder = { size = [50,200] }\nhanger = { size = [40,100] }";
    let roof = roofed(&file(plan, 40.0, "C = { gable = true }", timber));
    assert!(roof.members.iter().any(|m| m.kind == MemberKind::Hanger));
}

#[test]
fn a_plan_nearly_folded_on_itself() {
    let roof = roofed(&file("[[0,0],[8000,0],[1,1],[0,5600]]", 40.0, "", ""));
    assert!(!roof.members.is_empty());
}

#[test]
fn the_ridge_of_a_taper_is_a_board_with_commons_in_pairs() {
    // The wing of this L narrows by 12 mm, so that its ridge falls.
    let plan = "[[0,0],[7204,0],[7204,3897],[3606,3897],[3600,6899],[0,6905]]";
    let roof = roofed(&file(plan, 42.5, "", ""));
    let count = |kind| roof.members.iter().filter(|m| m.kind == kind).count();
    assert_eq!(count(MemberKind::RidgeBoard), 2);
    let square = "[[0,0],[7204,0],[7204,3900],[3600,3900],[3600,6900],[0,6900]]";
    let even = roofed(&file(square, 42.5, "", ""));
    let hips = |s: &roof::solution::Solution| s.members.iter().filter(|m| m.kind == MemberKind::HipRafter).count();
    assert_eq!(hips(&roof), hips(&even));
}
