//! What cannot be built is refused with its place and a way out.

use crate::common::job_over;
use job::{Fascia, HipEdge, Job, Section};

fn rectangle() -> Vec<[f64; 2]> {
    vec![[0.0, 0.0], [8400.0, 0.0], [8400.0, 5200.0], [0.0, 5200.0]]
}

fn refused(job: &Job, words: &[&str]) {
    let text = roof::solve(job).expect_err("this can't be built").to_string();
    for word in words {
        assert!(text.contains(word), "`{word}` is not in: {text}");
    }
}

#[test]
fn walls_in_line_with_unlike_pitches_are_roofed_alike_and_told() {
    let plan = vec![[0.0, 0.0], [4000.0, 0.0], [8400.0, 0.0], [8400.0, 5200.0], [0.0, 5200.0]];
    let mut job = job_over(vec![plan], 40.0);
    job.walls[0].pitch_deg = 30.0;
    let out = roof::solve(&job).expect("it is roofed");
    let told = out.notices.iter().find(|n| n.code == "one-slope-in-line").expect("it is told");
    // Wall B is the longer of the two: 4400 mm beside 4000 mm.
    assert!(told.text.contains("wall A is roofed as wall B, at 40.0°"), "{}", told.text);
    assert!(out.faces.iter().all(|face| (face.pitch_deg - 40.0).abs() < 1e-9));
}

#[test]
fn an_overhang_that_closes_a_courtyard_is_drawn_smaller_and_told() {
    let court = vec![[4000.0, 2400.0], [4000.0, 2900.0], [4600.0, 2900.0], [4600.0, 2400.0]];
    let job = job_over(vec![rectangle(), court], 40.0);
    let out = roof::solve(&job).expect("it is roofed with less overhang");
    let told = out.notices.iter().find(|n| n.code == "overhang-smaller").expect("it is told");
    // The court is 500 mm wide one way: two overhangs of 150 mm leave daylight, two of 300 mm do not.
    assert!(told.place.starts_with("wall ") && told.text.contains("150 mm in place of 300 mm"), "{}", told.text);
    assert!(out.plan.walls.iter().all(|w| (w.overhang_mm - 150.0).abs() < 1e-6));
}

#[test]
fn a_rafter_too_small_for_its_birdsmouth_says_how_deep_it_would_be() {
    let mut job = job_over(vec![rectangle()], 25.0);
    job.walls[1].pitch_deg = 70.0;
    refused(&job, &["wall B", "70.0°", "rafter of 150 mm", "deeper rafters"]);
}

#[test]
fn a_hip_that_hangs_above_its_plate_says_how_deep_it_must_be() {
    let mut job = job_over(vec![rectangle()], 40.0);
    job.timber.hip.size = Section { thickness: 47.0, depth: 100.0 };
    refused(&job, &["hip rafter", "walls", "100 mm deep", "at least"]);
}

#[test]
fn warnings_say_what_was_chosen_or_what_to_look_at() {
    let mut job = job_over(vec![rectangle()], 40.0);
    job.walls[1].pitch_deg = 50.0;
    job.eaves.fascia = Fascia::Fixed;
    job.timber.hip.edge = HipEdge::Dropped;
    let codes = |job: &Job| {
        let s = roof::solve(job).expect("this can be built");
        s.notices.iter().map(|n| n.code.clone()).collect::<Vec<_>>()
    };
    assert!(codes(&job).contains(&"fascia-step".to_string()));
    // Two slopes that run the same way at different pitches and meet (reference/surface.md, plan P38).
    let step = vec![[0.0, 0.0], [5000.0, 0.0], [5000.0, 1000.0], [10000.0, 1000.0], [10000.0, 7000.0], [0.0, 7000.0]];
    let mut job = job_over(vec![step], 40.0);
    job.walls[0].pitch_deg = 30.0;
    job.walls[2].pitch_deg = 50.0;
    let found = codes(&job);
    assert!(found.contains(&"pitch-break".to_string()), "{found:?}");
    assert!(found.contains(&"break-needs-support".to_string()), "{found:?}");
}
