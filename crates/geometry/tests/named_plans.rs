//! Plans with a lesson: refusals, rules that choose for the user, and plans
//! that random tests once found wrong.

use crate::common::plans;
use geometry::surface::{
    ArcKind, ProfileFault, ProfileStep, Slope, Surface, SurfaceError, SurfaceWarning, WallId, WallProfile, check, solve,
};
use geometry::{Angle, CornerRef, DVec2, PlanFault};

fn ring(corners: &[[f64; 2]]) -> Vec<DVec2> {
    corners.iter().map(|&c| DVec2::from_array(c)).collect()
}

/// 90 is a gable.
fn walls(pitches: &[f64]) -> Vec<WallProfile> {
    let wall = |&p: &f64| if p == 90.0 { WallProfile::gable(0.0) } else { WallProfile::slope(0.0, p) };
    pitches.iter().map(wall).collect()
}

fn stepped(steps: &[(f64, Slope)]) -> WallProfile {
    let steps = steps.iter().map(|&(from_height, slope)| ProfileStep { from_height, slope }).collect();
    WallProfile { plate_height: 0.0, steps }
}

fn count(roof: &Surface, kind: ArcKind) -> usize {
    roof.arcs.iter().filter(|a| a.kind == kind).count()
}

const HOUSE: [[f64; 2]; 4] = [[0.0, 0.0], [10_000.0, 0.0], [10_000.0, 6000.0], [0.0, 6000.0]];

#[test]
fn refusals_say_what_where_and_what_to_do() {
    let house = ring(&HOUSE);
    let loops = std::slice::from_ref(&house);
    assert_eq!(solve(loops, &walls(&[90.0; 4])), Err(SurfaceError::AllGables));
    assert_eq!(solve(loops, &walls(&[40.0; 3])), Err(SurfaceError::ProfileCount { walls: 4, profiles: 3 }));
    let fault = ProfileFault::Pitch { pitch_deg: 85.0 };
    assert_eq!(solve(loops, &walls(&[40.0, 85.0, 40.0, 40.0])), Err(SurfaceError::Profile { wall: WallId(1), fault }));
    let nan = vec![WallProfile::slope(f64::NAN, 40.0); 4];
    assert_eq!(solve(loops, &nan), Err(SurfaceError::Profile { wall: WallId(0), fault: ProfileFault::Height }));
    let mut turned = house.clone();
    turned.reverse();
    assert_eq!(
        solve(&[turned], &walls(&[40.0; 4])),
        Err(SurfaceError::Plan(vec![PlanFault::WrongWayRound { ring: 0 }]))
    );
}

#[test]
fn unlike_walls_in_line_name_the_corner_and_two_ways_out() {
    let split = ring(&[[0.0, 0.0], [4000.0, 0.0], [10_000.0, 0.0], [10_000.0, 6000.0], [0.0, 6000.0]]);
    let error =
        solve(std::slice::from_ref(&split), &walls(&[45.0, 30.0, 45.0, 45.0, 45.0])).expect_err("unlike in line");
    assert_eq!(
        error,
        SurfaceError::UnlikeInLine {
            at: CornerRef { ring: 0, corner: 1 },
            place: split[1],
            before: WallId(0),
            after: WallId(1)
        }
    );
    let text = error.to_string();
    assert!(text.contains("corner 1") && text.contains("make them the same") && text.contains("gable wall or a step"));
    let roof = solve(&[split], &walls(&[45.0; 5])).expect("alike in line");
    assert_eq!(roof.faces.len(), 4);
    assert_eq!(roof.faces[0].walls, vec![WallId(0), WallId(1)]);
    assert_eq!(roof.loops[0].len(), 5);
}

#[test]
fn a_flat_top_left_open_is_refused_with_its_height() {
    let gablet = stepped(&[(0.0, Slope::Pitch(45.0)), (2000.0, Slope::Vertical)]);
    let error = solve(&[ring(&HOUSE)], &vec![gablet; 4]).expect_err("all stop at 2 m");
    assert!(matches!(&error, SurfaceError::NeverCloses { walls, height, .. } if walls.len() == 4 && *height == 2000.0));
    // One slope closes it, up to the far upright.
    let mut three = vec![stepped(&[(0.0, Slope::Pitch(45.0)), (2000.0, Slope::Vertical)]); 4];
    three[0] = WallProfile::slope(0.0, 45.0);
    assert!(solve(&[ring(&HOUSE)], &three).is_ok());
}

#[test]
fn a_slope_around_an_upright_shaft_is_refused() {
    let shaft = ring(&[[4000.0, 1000.0], [4000.0, 2000.0], [5000.0, 2000.0], [5000.0, 1000.0]]);
    let all = walls(&[45.0, 45.0, 45.0, 45.0, 90.0, 90.0, 90.0, 90.0]);
    let error = solve(&[ring(&HOUSE), shaft], &all).expect_err("a face with a hole");
    assert!(matches!(error, SurfaceError::SlopeAroundShaft { .. }), "{error}");
}

#[test]
fn a_lean_to_rises_to_the_far_wall() {
    let roof = solve(&[ring(&HOUSE)], &walls(&[30.0, 90.0, 90.0, 90.0])).expect("a lean-to");
    assert_eq!(roof.faces.len(), 1);
    assert_eq!((count(&roof, ArcKind::Eaves), count(&roof, ArcKind::Verge)), (1, 3));
    let top = roof.nodes.iter().map(|n| n.z).fold(0.0, f64::max);
    assert!((top - 6000.0 / 3.0f64.sqrt()).abs() < 1e-6, "{top}");
    assert_eq!(roof.face_of_wall[1], None);
}

#[test]
fn the_flatter_front_takes_over_and_the_user_is_told() {
    // P38 of reference/surface_checks.json.
    let step =
        ring(&[[0.0, 0.0], [5000.0, 0.0], [5000.0, 1000.0], [10_000.0, 1000.0], [10_000.0, 7000.0], [0.0, 7000.0]]);
    let roof = solve(&[step], &walls(&[30.0, 40.0, 50.0, 45.0, 45.0, 45.0])).expect("a wall step");
    let told = roof.warnings.iter().find_map(|w| match w {
        SurfaceWarning::FlatterTookOver { steeper, flatter, at, height } => Some((*steeper, *flatter, *at, *height)),
        _ => None,
    });
    let (steeper, flatter, at, height) = told.expect("a warning");
    assert_eq!((steeper, flatter), (WallId(2), WallId(0)));
    assert!((height - 1119.9).abs() < 0.1 && (at.y - 1939.7).abs() < 0.1, "{at} {height}");
}

#[test]
fn a_gable_beside_a_re_entrant_corner_is_carried_up() {
    // An ell whose inner corner has a gable on one side.
    let ell =
        ring(&[[0.0, 0.0], [12_000.0, 0.0], [12_000.0, 4000.0], [6000.0, 4000.0], [6000.0, 10_000.0], [0.0, 10_000.0]]);
    let roof = solve(&[ell], &walls(&[45.0, 45.0, 45.0, 90.0, 45.0, 45.0])).expect("a cheek");
    assert!(roof.warnings.iter().any(|w| matches!(w, SurfaceWarning::UprightCheek { wall: WallId(3), .. })));
    assert!(count(&roof, ArcKind::Abutment) >= 1);
}

#[test]
fn two_pitches_on_every_wall_make_a_level_break() {
    let mansard = stepped(&[(0.0, Slope::Pitch(70.0)), (2000.0, Slope::Pitch(30.0))]);
    let roof = solve(&[ring(&HOUSE)], &vec![mansard; 4]).expect("a mansard");
    assert_eq!(roof.faces.len(), 8);
    assert_eq!(count(&roof, ArcKind::PitchBreak), 4);
    // Each wall's first face is the steep one.
    assert!(roof.face_of_wall.iter().all(|f| f.is_some_and(|f| roof.face(f).plane.pitch_deg == 70.0)));
    let inset = 2000.0 / Angle::deg(70.0).tan();
    let top = 2000.0 + (3000.0 - inset) * Angle::deg(30.0).tan();
    let found = roof.nodes.iter().map(|n| n.z).fold(0.0, f64::max);
    assert!((found - top).abs() < 1e-6, "{found} for {top}");
}

#[test]
fn a_raised_plate_starts_its_eaves_higher() {
    let mut all = walls(&[45.0; 4]);
    all[1] = WallProfile::slope(500.0, 45.0);
    let roof = solve(&[ring(&HOUSE)], &all).expect("a raised plate");
    let face = roof.face(roof.face_of_wall[1].expect("a face"));
    let lowest = face.outline.iter().map(|&n| roof.node(n).z).fold(f64::INFINITY, f64::min);
    assert_eq!(lowest, 500.0);
    assert_eq!(count(&roof, ArcKind::Verge), 2);
}

/// Solves a plan that once failed; being returned means that it is sound.
fn once_wrong(corners: &[[f64; 2]], profiles: &[WallProfile]) -> Surface {
    let roof = solve(&[ring(corners)], profiles).expect("a roof");
    assert_eq!(check(&roof, profiles), Ok(()));
    roof
}

#[test]
fn a_part_cut_off_by_a_sliver_keeps_its_wall() {
    // A front took over a steeper one 0.2 mm before the rest of it closed.
    let corners = [
        [14_600.0, 9900.0],
        [12_000.0, 9900.0],
        [12_000.0, 10_700.0],
        [8400.0, 10_700.0],
        [8400.0, 9300.0],
        [7600.0, 9300.0],
        [7600.0, 3600.0],
        [7000.0, 3600.0],
        [7000.0, 11_000.0],
        [3000.0, 11_000.0],
        [3000.0, 3400.0],
        [4500.0, 3400.0],
        [4500.0, 600.0],
        [10_400.0, 600.0],
        [10_400.0, 3600.0],
        [9100.0, 3600.0],
        [9100.0, 8100.0],
        [10_000.0, 8100.0],
        [10_000.0, 6300.0],
        [14_600.0, 6300.0],
    ];
    let pitches = [
        46.0, 49.0, 61.0, 52.0, 23.0, 22.0, 67.0, 68.0, 59.0, 58.0, 63.0, 32.0, 69.0, 59.0, 50.0, 55.0, 41.0, 34.0,
        54.0, 54.0,
    ];
    let roof = once_wrong(&corners, &walls(&pitches));
    let parts = roof.faces.iter().filter(|f| f.walls == [WallId(5)]).count();
    assert_eq!(parts, 2);
}

#[test]
fn a_bend_of_a_millimetre_beside_a_gable_keeps_its_strip() {
    // Walls 6 (a gable) and 7 bend by 1.8 mm: the face of 7 is as thin.
    let corners = [
        [2902.5, -643.5],
        [3515.1, 2449.2],
        [3185.9, 6279.3],
        [-2060.1, 4475.6],
        [-5359.0, 4467.4],
        [-3423.7, -719.7],
        [-4929.3, -2584.1],
        [-1197.8, -3134.7],
        [1508.5, -3535.8],
        [4952.7, -3235.2],
    ];
    let roof = once_wrong(&corners, &walls(&[61.0, 23.0, 90.0, 41.0, 90.0, 63.0, 90.0, 27.0, 27.0, 90.0]));
    assert!(roof.face_of_wall[7].is_some());
}

#[test]
fn walls_on_one_plane_may_part_higher_up() {
    // Walls 6 and 10 share a plane up to 1.5 m, where 6 gets steeper.
    let corners = [
        [14_200.0, 16_900.0],
        [4200.0, 16_900.0],
        [4200.0, 14_900.0],
        [3600.0, 14_900.0],
        [3600.0, 10_503.8],
        [4200.0, 10_500.0],
        [4200.0, 9300.0],
        [9700.0, 9300.0],
        [9700.0, 6700.0],
        [13_400.0, 6700.0],
        [13_400.0, 9300.0],
        [14_200.0, 9300.0],
    ];
    let mut all = walls(&[38.0; 12]);
    all[6] = stepped(&[(0.0, Slope::Pitch(38.0)), (1500.0, Slope::Pitch(57.0))]);
    once_wrong(&corners, &all);
}

#[test]
fn a_change_of_profile_at_the_height_where_fronts_meet() {
    // Wall 1 starts to slope at 700 mm, where the front of wall 5 arrives.
    let corners = [
        [5400.0, 14_300.0],
        [5400.0, 6600.0],
        [3300.0, 6600.0],
        [3300.0, 3700.0],
        [5400.0, 3700.0],
        [5400.0, 5900.0],
        [11_400.0, 5900.0],
        [11_400.0, 14_300.0],
    ];
    let mut all = walls(&[45.0; 8]);
    all[0] = stepped(&[(0.0, Slope::Pitch(45.0)), (600.0, Slope::Vertical)]);
    all[1] = WallProfile::slope(700.0, 45.0);
    all[2] = stepped(&[(0.0, Slope::Pitch(45.0)), (1100.0, Slope::Vertical)]);
    all[3] = stepped(&[(0.0, Slope::Vertical), (1900.0, Slope::Pitch(45.0))]);
    once_wrong(&corners, &all);
}

#[test]
fn a_raised_plate_on_the_plane_of_a_lower_one() {
    // Wall 5 stands 200 mm inside wall 7 and its plate 200 mm above, at 45
    // degrees: both are one plane, which starts at the lower plate.
    let corners = [
        [2200.0, 10_000.0],
        [2200.0, 6600.0],
        [2000.0, 6600.0],
        [2000.0, 3400.0],
        [9000.0, 3400.0],
        [9000.0, 10_000.0],
    ];
    let mut all = walls(&[45.0; 6]);
    all[0] = WallProfile::slope(200.0, 45.0);
    let roof = once_wrong(&corners, &all);
    assert_eq!(roof.face_of_wall[0], roof.face_of_wall[2]);
}

#[test]
fn large_plans_are_solved_in_rounds() {
    let comb = plans::comb(&mut plans::Dice::new(3), 100);
    let count = comb.len();
    let roof = solve(&[comb], &vec![WallProfile::slope(0.0, 40.0); count]).expect("a comb");
    assert!(roof.faces.len() > 300);
    let spikes = plans::star(&mut plans::Dice::new(5), 300, 15_000.0, 30_000.0);
    let profiles: Vec<WallProfile> = (0..300).map(|k| WallProfile::slope(0.0, 30.0 + f64::from(k % 7) * 5.0)).collect();
    assert!(solve(&[spikes], &profiles).is_ok());
}
