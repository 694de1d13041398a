//! Figures of trimming, read from reference/site_checks.json.

use crate::common::job_over;
use job::{Distance, Job, Opening, OpeningKind};
use roof::solution::{MemberKind, Solution};
use roof::{Misfit, SolveError};
use serde_json::Value;

fn entries() -> Vec<Value> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/site_checks.json");
    let text = std::fs::read_to_string(path).expect("the reference file is there");
    serde_json::from_str(&text).expect("it is JSON")
}

fn entry(id: &str) -> Value {
    entries().into_iter().find(|e| e["id"] == id).unwrap_or_else(|| panic!("{id} is in the reference"))
}

fn number(v: &Value) -> f64 {
    v.as_f64().unwrap_or_else(|| panic!("{v} is a number"))
}

/// A gabled house with plenty of slope.
fn house(centres: f64, thickness: f64) -> Job {
    let mut job = job_over(vec![vec![[0.0, 0.0], [14000.0, 0.0], [14000.0, 9000.0], [0.0, 9000.0]]], 35.0);
    job.walls[1].gable = true;
    job.walls[3].gable = true;
    job.timber.rafter.centres = centres;
    job.timber.rafter.size.thickness = thickness;
    job
}

fn window(width: f64) -> Opening {
    Opening {
        name: "w".into(),
        kind: OpeningKind::RoofWindow,
        wall: 0,
        along: 5000.0,
        up: Distance::Slope(1500.0),
        width,
        height: 1000.0,
        flue_wall: None,
    }
}

fn with(mut job: Job, opening: Opening) -> Solution {
    job.openings.push(opening);
    roof::solve(&job).expect("it fits")
}

#[test]
fn rafters_cut_and_added_are_those_of_the_rule() {
    let cases: Vec<Value> = entries()
        .into_iter()
        .filter(|e| e["id"].as_str().is_some_and(|id| id.starts_with("op.cut_rafters_")))
        .collect();
    assert!(cases.len() >= 6);
    for case in cases {
        let (i, want) = (&case["inputs"], &case["expected"]);
        let job = house(number(&i["s"]), number(&i["t"]));
        let (s, t) = (number(&i["s"]), number(&i["t"]));
        let out = with(job, window(number(&i["clear_mm"])));
        let o = &out.openings[0];
        let cut = o.cut.len() / 2;
        assert_eq!(cut as f64, number(&want["cut"]), "{}", case["id"]);
        // Clear between rafters with so many cut (derived): (k + 1) s - t.
        assert!(((cut + 1) as f64 * s - t - number(&want["clear_available_mm"])).abs() < 1e-9);
        // Where none is cut the rafters beside the window only stand where it needs them.
        let added = if cut == 0 { 0 } else { o.trimming_rafters.len() };
        assert_eq!(added as f64, number(&want["add_trimmers"]), "{}", case["id"]);
    }
}

#[test]
fn rafters_are_added_by_the_textbook_rule() {
    for (id, width) in [("op.trim.cut1", 600.0), ("op.trim.cut2", 1000.0), ("op.trim.cut4", 1700.0)] {
        let case = entry(id);
        let out = with(house(400.0, 47.0), window(width));
        assert_eq!((out.openings[0].cut.len() / 2) as f64, number(&case["inputs"]["cut"]), "{id}");
        assert_eq!(out.openings[0].trimming_rafters.len() as f64, number(&case["expected"]), "{id}");
        let doubled = if number(&case["expected"]) > 2.0 { 4 } else { 2 };
        assert_eq!(out.members.iter().filter(|m| m.kind == MemberKind::Trimmer).count(), doubled, "{id}");
    }
}

#[test]
fn more_than_four_cut_rafters_need_an_engineer() {
    let mut job = house(400.0, 47.0);
    job.openings.push(window(2000.0));
    match roof::solve(&job) {
        Err(e @ SolveError::Opening { .. }) => {
            assert!(e.to_string().contains("needs an engineer"), "{e}");
            let SolveError::Opening { misfit, .. } = e else { return };
            assert_eq!(*misfit, Misfit::TooManyCut { cut: 5, most: 4, widest: 1953.0 });
        }
        other => panic!("{other:?}"),
    }
}

/// Clear sizes in plan of the hole for a stack of 665 × 440 mm.
fn hole_of_stack(flue_wall: Option<f64>) -> [f64; 2] {
    let chimney = Opening {
        kind: OpeningKind::Chimney,
        up: Distance::Plan(1500.0),
        width: 665.0,
        height: 440.0,
        flue_wall,
        ..window(0.0)
    };
    let out = with(house(400.0, 47.0), chimney);
    let [a, b, c, _] = out.openings[0].outline;
    // The hole is cut square to the slope through rafters 150 mm deep, so in
    // plan its underside lies 150·sin(pitch) further in.
    let spread = 150.0 * geometry::Angle::deg(35.0).sin();
    [b[0] - a[0], c[1] - b[1] - spread]
}

#[test]
fn the_hole_round_a_chimney_keeps_its_distance() {
    let near = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).abs() < 1e-6 && (a[1] - b[1]).abs() < 1e-6;
    // site.md section 4: a stack of 665 × 440 needs an opening of 745 × 520.
    let face = number(&entry("op.chim.one_brick_wall_ok")["expected"]);
    assert_eq!(face, number(&entry("op.chim.uk_from_face_mm")["expected"]));
    assert!(near(hole_of_stack(Some(102.5)), [665.0 + 2.0 * face, 440.0 + 2.0 * face]));
    assert!(near(hole_of_stack(None), [745.0, 520.0]));
    // 180 mm of masonry: 200 mm from the flue ask for 20 mm (derived).
    let flue = number(&entry("op.chim.uk_from_flue_mm")["expected"]);
    assert!(near(hole_of_stack(Some(180.0)), [665.0 + 2.0 * (flue - 180.0), 440.0 + 2.0 * (flue - 180.0)]));
    let thick = entry("op.chim.215_wall");
    assert_eq!(number(&thick["expected"]), 0.0);
    assert!(near(hole_of_stack(Some(215.0)), [665.0, 440.0]));
}

#[test]
fn a_trimmed_window_has_hangers_and_plain_square_cuts() {
    let out = with(house(400.0, 47.0), window(780.0));
    let o = &out.openings[0];
    // Two trimmers with two hangers each, and four cut ends.
    assert_eq!(o.hangers, 8);
    assert_eq!(out.totals.hangers, 8);
    for mark in &o.cut {
        let m = out.members.iter().find(|m| m.mark == *mark).expect("it is a member");
        let cut = m.cuts.iter().find(|c| c.against.as_ref().is_some_and(|a| o.trimmers.contains(a)));
        let cut = cut.unwrap_or_else(|| panic!("{mark} lies against a trimmer: {:?}", m.cuts));
        assert!(cut.face_angle_deg.abs() < 1e-6 && cut.edge_angle_deg.abs() < 1e-6);
    }
    for mark in &o.trimmers {
        let m = out.members.iter().find(|m| m.mark == *mark).expect("it is a member");
        assert!((m.stock_length_mm - 780.0).abs() < 1e-6);
    }
}
