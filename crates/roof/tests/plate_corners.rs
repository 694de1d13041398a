//! Wall plates are halved at their corners: both run over, and both tops stay
//! in one level (NHBC Standards 7.2.6 as given in reference/site.md). That the
//! halves touch and share no wood is checked by every solve.

use crate::common::{Seed, job_over, random_job};
use roof::solution::{Member, MemberKind, Solution};

fn plates(s: &Solution) -> Vec<&Member> {
    s.members.iter().filter(|m| m.kind == MemberKind::WallPlate).collect()
}

#[test]
fn the_plates_of_an_oblong_fill_its_rim_once() {
    let job = job_over(vec![vec![[0.0, 0.0], [9000.0, 0.0], [9000.0, 6000.0], [0.0, 6000.0]]], 35.0);
    let s = roof::solve(&job).expect("a hipped oblong");
    let plates = plates(&s);
    assert_eq!(plates.len(), 4);
    // Each runs from outer corner to outer corner: 75 × 100 plates.
    for (plate, length) in plates.iter().zip([9000.0, 6000.0, 9000.0, 6000.0]) {
        assert!((plate.stock_length_mm - length).abs() < 1e-6, "{} {}", plate.mark, plate.stock_length_mm);
    }
    let rim = (9.0 * 6.0 - 8.8 * 5.8) * 0.075;
    let wood: f64 = plates.iter().map(|p| p.volume_m3).sum();
    assert!((wood - rim).abs() < 1e-9, "{wood} m³ of plates, {rim} m³ of rim");
    // Two halvings of 100 × 100 × 37.5 mm are out of each.
    let expected = 0.1 * 0.075 * 9.0 - 2.0 * 0.1 * 0.1 * 0.0375;
    assert!((plates[0].volume_m3 - expected).abs() < 1e-9);
}

#[test]
fn halves_name_one_another_and_keep_their_tops_level() {
    let mut halved = 0;
    for seed in 1..=120 {
        let mut job = random_job(&mut Seed::new(seed));
        // Without firring on top of them.
        job.setting_out.ridge = job::RidgeRun::AsItFalls;
        let Ok(s) = roof::solve(&job) else { continue };
        let plates = plates(&s);
        for plate in &plates {
            let top = plate.solid.points.iter().map(|p| p[2]).fold(f64::NEG_INFINITY, f64::max);
            assert!(top.abs() < 1e-6, "seed {seed}: the top of {} is at {top}", plate.mark);
            for cut in plate.cuts.iter().filter(|c| c.name.contains("halving")) {
                let mate = cut.against.as_ref().unwrap_or_else(|| panic!("seed {seed}: {} has no mate", plate.mark));
                let mate = plates.iter().find(|p| p.mark == *mate).expect("the mate is a plate");
                let back =
                    |c: &roof::solution::Cut| c.name.contains("halving") && c.against.as_ref() == Some(&plate.mark);
                assert!(mate.cuts.iter().any(back), "seed {seed}: {} is not halved into {}", mate.mark, plate.mark);
                halved += 1;
            }
        }
    }
    assert!(halved > 1000, "only {halved} halvings seen");
}

#[test]
fn corners_in_a_notch_are_halved_too() {
    let l = [[0.0, 0.0], [9000.0, 0.0], [9000.0, 5000.0], [5000.0, 5000.0], [5000.0, 9000.0], [0.0, 9000.0]];
    let s = roof::solve(&job_over(vec![l.to_vec()], 40.0)).expect("an L");
    let plates = plates(&s);
    for plate in &plates {
        let halvings = plate.cuts.iter().filter(|c| c.name.ends_with("halving")).count();
        assert_eq!(halvings, 2, "{}", plate.mark);
    }
    // Plates C and D meet at the re-entrant corner and run on by a width.
    assert!((plates[2].stock_length_mm - 4100.0).abs() < 1e-6);
    assert!((plates[3].stock_length_mm - 4100.0).abs() < 1e-6);
}
