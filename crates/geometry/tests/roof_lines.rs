//! Roof lines over plans that are out by millimetres.

use geometry::roof_lines::{Bed, Plates, Relation, RoofLines, set_out};
use geometry::{Angle, DVec2};
use rmpfit::{MPFitter, MPResult};

const WITHIN: f64 = 12.0;
const BED: Bed = Bed { out: 25.0, inward: 25.0 };

fn unit(radians: f64) -> DVec2 {
    let angle = Angle::rad(radians);
    DVec2::new(angle.cos(), angle.sin())
}

fn ring(corners: &[[f64; 2]]) -> Vec<DVec2> {
    corners.iter().map(|c| DVec2::from_array(*c)).collect()
}

fn lines_of(ring: &[DVec2]) -> RoofLines {
    let kinds = vec![0; ring.len()];
    let loops = [ring.to_vec()];
    set_out(&Plates { loops: &loops, kinds: &kinds, deviations: None, within: WITHIN, bed: BED })
}

#[test]
fn a_true_plan_keeps_every_bit() {
    let plan = ring(&[[0.0, 0.0], [8400.0, 0.0], [8400.0, 5200.0], [4100.0, 5200.0], [4100.0, 9000.0], [0.0, 9000.0]]);
    let lines = lines_of(&plan);
    assert_eq!(lines.loops[0], plan);
    assert!(lines.let_go.is_empty());
}

#[test]
fn walls_either_side_of_a_wing_come_in_line() {
    let tee = ring(&[
        [0.0, 0.0],
        [9000.0, 0.0],
        [9000.0, 6000.0],
        [6300.0, 6000.0],
        [6300.0, 9000.0],
        [2700.0, 9000.0],
        [2700.0, 6001.0],
        [0.0, 6001.0],
    ]);
    let lines = lines_of(&tee);
    let at = &lines.loops[0];
    assert!(at[2].y == at[3].y && at[6].y == at[7].y && at[3].y == at[6].y, "{at:?}");
    assert!(lines.kept.contains(&Relation::InLine(2, 6)) || lines.kept.contains(&Relation::InLine(6, 2)));
}

#[test]
fn walls_that_are_far_from_true_are_left() {
    let skew = ring(&[[0.0, 0.0], [8400.0, 0.0], [8400.0, 5300.0], [0.0, 5200.0]]);
    let lines = lines_of(&skew);
    assert!(lines.loops[0].iter().zip(&skew).all(|(a, b)| a.distance(*b) <= WITHIN));
    let top = lines.loops[0][2] - lines.loops[0][3];
    assert!(top.y / top.x > 0.008, "the skew wall was turned: {top:?}");
    let (front, side) = (lines.loops[0][1] - lines.loops[0][0], lines.loops[0][0] - lines.loops[0][3]);
    assert!(front.normalize().dot(side.normalize()).abs() < 1e-6);
}

#[test]
fn a_turned_house_comes_true_in_its_own_direction() {
    let turn = DVec2::new(0.8, 0.6);
    let square = [[0.0, 0.0], [8400.0, 0.0], [8400.0, 5200.0], [0.0, 5200.0]];
    let out = [[2.0, -3.0], [-1.0, 4.0], [3.0, 2.0], [-4.0, 1.0]];
    let plan: Vec<DVec2> =
        square.iter().zip(out).map(|(p, o)| turn.rotate(DVec2::from_array(*p)) + DVec2::from_array(o)).collect();
    println!("{:?}", lines_of(&plan));
    let at = &lines_of(&plan).loops[0];
    for k in 0..4 {
        let (into, from) = (at[(k + 1) % 4] - at[k], at[(k + 2) % 4] - at[(k + 1) % 4]);
        assert!(into.normalize().dot(from.normalize()).abs() < 1e-6);
        assert!(at[k].distance(plan[k]) < WITHIN);
    }
}

/// The least squares are those of a general library: the best rectangle
/// through four corners, parameterised by hand (one corner, an angle, two
/// lengths) and fitted by rmpfit's Levenberg-Marquardt.
#[test]
fn moves_are_those_of_a_general_least_squares_library() {
    struct Rectangle([DVec2; 4]);
    impl MPFitter for Rectangle {
        fn eval(&mut self, x: &[f64], off: &mut [f64]) -> MPResult<()> {
            let along = unit(x[2]);
            let from = DVec2::new(x[0], x[1]);
            let corners =
                [from, from + along * x[3], from + along * x[3] + along.perp() * x[4], from + along.perp() * x[4]];
            for (k, (a, b)) in corners.iter().zip(&self.0).enumerate() {
                off[2 * k] = a.x - b.x;
                off[2 * k + 1] = a.y - b.y;
            }
            Ok(())
        }
        fn number_of_points(&self) -> usize {
            8
        }
    }
    let mut state = 7_u64;
    let mut noise = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((state >> 33) as f64 / f64::from(1_u32 << 31) - 0.5) * 12.0
    };
    for case in 0..200 {
        // Turned well off the axes, so that the direction is free.
        let turn = 0.3 + 0.002 * f64::from(case);
        let along = unit(turn);
        let square = [DVec2::ZERO, along * 8400.0, along * 8400.0 + along.perp() * 5200.0, along.perp() * 5200.0];
        let plates = square.map(|p| p + DVec2::new(noise(), noise()));
        let at = lines_of(&plates).loops[0].clone();
        let mut x = [plates[0].x, plates[0].y, turn, 8400.0, 5200.0];
        let mut fit = Rectangle(plates);
        fit.mpfit(&mut x).expect("it fits");
        let along = unit(x[2]);
        let from = DVec2::new(x[0], x[1]);
        let wanted = [from, from + along * x[3], from + along * x[3] + along.perp() * x[4], from + along.perp() * x[4]];
        for (a, b) in at.iter().zip(wanted) {
            assert!(a.distance(b) < 0.01, "case {case}: {a} instead of {b}");
        }
    }
}
