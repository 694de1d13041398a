//! Several openings in one roof: they keep out of one another's way.

use super::clear::assert_clear;
use super::random::{move_to, random_opening};
use crate::common::{Seed, job_over, random_job};
use job::{Distance, Job, Opening, OpeningKind, PurlinSet, PurlinTimber, Section};
use roof::solution::MemberKind;
use roof::{Misfit, SolveError};

fn house() -> Job {
    job_over(vec![vec![[0.0, 0.0], [12000.0, 0.0], [12000.0, 8000.0], [0.0, 8000.0]]], 40.0)
}

fn window(name: &str, along: f64, up: f64, width: f64) -> Opening {
    Opening {
        name: name.into(),
        kind: OpeningKind::RoofWindow,
        wall: 0,
        along,
        up: Distance::Slope(up),
        width,
        height: 900.0,
        flue_wall: None,
    }
}

fn misfit(job: &Job) -> Misfit {
    match roof::solve(job) {
        Err(SolveError::Opening { misfit, .. }) => *misfit,
        other => panic!("{other:?}"),
    }
}

#[test]
fn windows_side_by_side_share_a_trimming_rafter() {
    let mut job = house();
    job.openings = vec![window("west", 5000.0, 1500.0, 700.0), window("east", 5747.0, 1500.0, 700.0)];
    let s = roof::solve(&job).expect("they fit");
    let trimming: Vec<&str> =
        s.members.iter().filter(|m| m.kind == MemberKind::TrimmingRafter).map(|m| m.mark.as_str()).collect();
    assert_eq!(trimming.len(), 3, "{trimming:?}");
    assert_eq!(s.openings[0].trimming_rafters[1], s.openings[1].trimming_rafters[0]);
    job.openings.iter().for_each(|o| assert_clear(&job, &s, o));
}

#[test]
fn windows_above_one_another_share_both() {
    let mut job = house();
    job.openings = vec![window("low", 5000.0, 900.0, 780.0), window("high", 5000.0, 2300.0, 780.0)];
    let s = roof::solve(&job).expect("they fit");
    assert_eq!(s.openings[0].trimming_rafters, s.openings[1].trimming_rafters);
    assert_eq!(s.openings[0].cut[1], s.openings[1].cut[0], "the piece between the windows is one timber");
    job.openings.iter().for_each(|o| assert_clear(&job, &s, o));
}

#[test]
fn a_window_that_would_cut_anothers_trimming_rafter_is_refused() {
    let mut job = house();
    job.openings = vec![window("low", 5000.0, 900.0, 780.0), window("high", 5400.0, 2300.0, 780.0)];
    assert_eq!(misfit(&job), Misfit::TrimmingRafters { of: "low".into() });
}

#[test]
fn windows_in_one_place_are_refused() {
    let mut job = house();
    job.openings = vec![window("one", 5000.0, 1500.0, 780.0), window("two", 5500.0, 1700.0, 780.0)];
    assert_eq!(misfit(&job), Misfit::Taken { by: "one".into() });
}

#[test]
fn openings_on_both_slopes_leave_pairs_at_the_ridge() {
    let mut job = house();
    job.openings = vec![window("south", 5000.0, 1500.0, 780.0)];
    let north = Opening { wall: 2, along: 5900.0, ..window("north", 0.0, 1500.0, 780.0) };
    job.openings.push(north);
    let s = roof::solve(&job).expect("they fit");
    job.openings.iter().for_each(|o| assert_clear(&job, &s, o));
    let centres = job.timber.rafter.centres;
    for wall in ["A", "C"] {
        let mut at: Vec<f64> = s
            .members
            .iter()
            .filter(|m| m.wall.as_deref() == Some(wall) && m.birdsmouth.is_some())
            .map(|m| m.axis.from[0])
            .collect();
        at.sort_by(f64::total_cmp);
        assert!(at.windows(2).all(|w| w[1] - w[0] < centres + 0.01), "{wall}: {at:?}");
    }
}

#[test]
fn random_openings_never_spoil_a_frame() {
    let (mut kept, mut dropped) = (0, 0);
    for seed in 1000..1080 {
        let mut random = Seed::new(seed);
        let mut job = random_job(&mut random);
        if seed % 2 == 0 {
            let set = if seed % 4 == 0 { PurlinSet::Square } else { PurlinSet::Plumb };
            let size = Section { thickness: 75.0, depth: 175.0 };
            job.timber.parts.purlin = Some(PurlinTimber { size, set, up: Vec::new() });
        }
        if roof::solve(&job).is_err() {
            continue;
        }
        for name in ["one", "two", "three", "four"] {
            let opening = random_opening(&mut random, &job, name);
            job.openings.push(opening);
            match roof::solve(&job) {
                Ok(_) => kept += 1,
                Err(SolveError::Opening { name: refused, nearest, .. }) => {
                    assert_eq!(refused, name, "seed {seed}: the last one gives way");
                    let last = job.openings.len() - 1;
                    if let Some(place) = nearest {
                        move_to(&mut job.openings[last], place);
                        assert!(roof::solve(&job).is_ok(), "seed {seed}: {name} was said to fit");
                        kept += 1;
                    } else {
                        job.openings.pop();
                        dropped += 1;
                    }
                }
                Err(e) => panic!("seed {seed}, {name}: {e}"),
            }
        }
        if let Ok(s) = roof::solve(&job) {
            job.openings.iter().for_each(|o| assert_clear(&job, &s, o));
        }
    }
    assert!(kept > 150 && dropped > 10, "{kept} kept, {dropped} dropped");
}
