//! Opening jobs: whole ones, faulty ones, and what is no job at all.

use crate::common::{ask, desk_with, edit, example, examples, standing};
use serde_json::{Value, json};

#[test]
fn every_example_opens_with_the_figures_of_its_solution() {
    for (name, text) in examples() {
        let (_, standing, scene) = desk_with(&text);
        let solution = roof::solve(&job::read(&text).unwrap()).unwrap();
        assert_eq!(standing["text"], Value::from(text.as_str()), "{name}");
        assert_eq!(standing["title"], Value::from(solution.title.as_str()));
        assert!(standing["refusal"].is_null() && scene.is_some(), "{name}");
        let roof = &standing["overview"];
        assert_eq!(roof["members"].as_array().unwrap().len(), solution.members.len());
        let counts: u64 = roof["pieces"].as_array().unwrap().iter().map(|piece| piece["count"].as_u64().unwrap()).sum();
        assert_eq!(counts, solution.members.len() as u64, "{name}");
        assert_eq!(roof["tally"]["timbers"], Value::from(solution.members.len()));
        assert_eq!(roof["notices"].as_array().unwrap().len(), solution.notices.len());
        assert_eq!(roof["walls"].as_array().unwrap().len(), solution.plan.walls.len());
        let figure = |label: &str| {
            let all = roof["figures"].as_array().unwrap();
            all.iter().find(|f| f["label"] == label).unwrap_or_else(|| panic!("{name}: {label}"))["value"].clone()
        };
        let lengths = job::written::Lengths::from_show(&solution.show);
        assert_eq!(figure("Rise to the ridge"), Value::from(lengths.write_with_unit(solution.totals.rise_mm)));
        assert_eq!(figure("Upstand"), Value::from(lengths.write_with_unit(solution.totals.upstand_mm)));
        assert_eq!(figure("Timbers"), Value::from(solution.totals.members.to_string()));
    }
}

#[test]
fn opening_again_stands_the_same() {
    for (name, text) in examples() {
        let (mut desk, first, scene) = desk_with(&text);
        let (_, again, same) = desk_with(&text);
        assert_eq!(first, again, "{name}");
        assert!(scene == same, "{name}");
        assert_eq!(standing(&mut desk)["overview"], first["overview"], "{name}");
    }
}

#[test]
fn a_text_with_faults_is_kept_and_its_faults_have_places() {
    let text = example("boathouse").replace("[roof]\npitch", "[roof]\npich");
    let (mut desk, standing, scene) = desk_with(&text);
    assert_eq!(standing["text"], Value::from(text.as_str()));
    assert!(standing["overview"].is_null() && scene.is_none());
    let faults = standing["refusal"]["faults"].as_array().unwrap();
    assert!(!faults.is_empty());
    for fault in faults {
        let line = fault["line"].as_u64().unwrap() as usize;
        assert!(text.lines().nth(line - 1).is_some());
        for part in ["what", "why", "remedy"] {
            assert!(!fault[part].as_str().unwrap().is_empty());
        }
    }
    // What has no roof answers no question about one, and says why.
    assert!(ask(&mut desk, "nudge", json!({ "do": "pitch", "wall": null, "pitch_deg": 41 })).is_err());
}

#[test]
fn faults_that_are_there_already_do_not_hinder_an_edit() {
    let text = example("boathouse").replace("pitch = 40", "pitch = 40\npich = 3");
    let (mut desk, _, _) = desk_with(&text);
    let after = edit(&mut desk, json!({ "do": "set", "path": "title", "value": "Another" }));
    assert_eq!(after["title"], "Another");
    assert!(after["refusal"]["faults"].as_array().is_some_and(|faults| faults.len() == 1));
}

#[test]
fn a_roof_that_cannot_be_built_says_what_and_what_to_do() {
    let text = example("boathouse")
        .replace("centres = 400", "centres = 400, birdsmouth = 149")
        .replace("size = [47, 150]", "size = [47, 151]");
    let text = format!("{text}\n[timber.purlin]\nsize = [75, 225]\nup = [90000]\n");
    let (_, standing, _) = desk_with(&text);
    assert!(standing["overview"].is_null());
    let refusal = &standing["refusal"];
    assert!(!refusal["what"].as_str().unwrap().is_empty() && !refusal["remedy"].as_str().unwrap().is_empty());
}

#[test]
fn what_is_no_job_is_refused_kindly_or_kept() {
    let mut desk = app::Desk::default();
    let huge = "#".repeat(job::LARGEST_FILE + 1);
    let refusal = ask(&mut desk, "open", json!({ "text": huge })).unwrap_err();
    assert_eq!(refusal.code, "file-too-large");
    assert!(ask(&mut desk, "edit", json!({ "do": "remove", "path": "date" })).is_err_and(|r| r.code == "nothing-open"));
    for text in ["", "PK\u{3}\u{4}", "{\"json\": true}", "<html>", "\0\0", "[[[[[[[["] {
        let reply = ask(&mut desk, "open", json!({ "text": text })).unwrap();
        assert_eq!(reply["text"], Value::from(text));
        assert!(!reply["refusal"].is_null(), "{text:?}");
    }
}

#[test]
fn lengths_follow_the_settings() {
    let (mut desk, _, _) = desk_with(&example("boathouse"));
    let inches = ask(&mut desk, "settle", json!({ "lengths": "feet-inches", "words": "uk" })).unwrap();
    let wall = inches["overview"]["walls"][0]["length"].as_str().unwrap();
    assert!(wall.contains('\'') && wall.contains('"'), "{wall}");
    let mm = ask(&mut desk, "settle", json!({ "lengths": "mm", "words": "uk" })).unwrap();
    assert!(mm["overview"]["walls"][0]["length"].as_str().unwrap().ends_with(" mm"));
    let mut empty = app::Desk::default();
    assert!(ask(&mut empty, "settle", json!({ "lengths": "mm", "words": "us" })).unwrap().is_null());
}
