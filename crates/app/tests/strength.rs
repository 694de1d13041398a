//! Strength on the desk: what is asked for first, what is shown, its working, and when it is worked out.

use crate::common;
use crate::common::{ask, edit, example, side_desk_with};
use serde_json::{Value, json};

fn given(values: &[(&str, &str)]) -> Value {
    let values: Vec<Value> = values.iter().map(|(path, value)| json!({ "path": path, "value": value })).collect();
    json!({ "do": "carries", "values": values })
}

const ALL: [(&str, &str); 5] = [
    ("loads.covering", "slate"),
    ("loads.snow_zone", "2"),
    ("loads.altitude", "80"),
    ("loads.wind", "0.9"),
    ("strength.class", "C24"),
];

/// Every text of a reply.
fn texts(value: &Value, out: &mut Vec<String>) {
    match value {
        Value::String(text) => out.push(text.clone()),
        Value::Array(all) => all.iter().for_each(|one| texts(one, out)),
        Value::Object(all) => all.values().for_each(|one| texts(one, out)),
        _ => {}
    }
}

#[test]
fn a_job_without_loads_is_told_what_to_write() {
    let (mut desk, _) = side_desk_with(&example("boathouse"));
    let view = ask(&mut desk, "strength", Value::Null).unwrap();
    assert_eq!(view["state"], "not_asked");
    let paths: Vec<&str> =
        view["fields"].as_array().unwrap().iter().map(|field| field["path"].as_str().unwrap()).collect();
    assert_eq!(paths, ALL.map(|(path, _)| path));
    assert!(view["fields"][0]["choices"].as_array().unwrap().contains(&json!(["plain-tile", "Plain tile"])));
    assert_eq!(view["fields"][3]["value"], "", "no figure of a site is guessed");
    assert_eq!(view["fields"][4]["value"], "C16");
    assert_eq!(ask(&mut desk, "strength_of", json!({ "mark": "A1" })).unwrap(), Value::Null);
    let refusal = ask(&mut desk, "strength_working", json!({ "mark": "A1", "check": null })).unwrap_err();
    assert_eq!(refusal.code, "no-loads");
}

#[test]
fn the_whole_house_has_its_timbers_most_used_first() {
    let (mut desk, standing) = side_desk_with(&example("whole-house"));
    let view = ask(&mut desk, "strength", Value::Null).unwrap();
    assert_eq!(view["state"], "checked");
    let timbers = view["timbers"].as_array().unwrap();
    assert!(timbers.len() > 200, "{}", timbers.len());
    let used = |row: &Value| row["used"].as_str().unwrap().split(' ').next().unwrap().parse::<f64>().unwrap();
    assert!(timbers.windows(2).all(|two| used(&two[0]) >= used(&two[1])));
    let members = standing["overview"]["members"].as_array().unwrap();
    for row in timbers {
        for part in ["kind", "size", "check", "clause", "combination", "left", "word"] {
            assert!(!row[part].as_str().unwrap().is_empty(), "{part} of {row}");
        }
        assert_eq!(row["verdict"] == "over", row["tag"].is_string(), "{row}");
        for mark in row["lengths"].as_array().unwrap() {
            assert!(members.iter().any(|member| member["mark"] == *mark), "{mark} is in the roof");
        }
    }
    let summary = view["summary"].to_string();
    assert!(summary.contains(timbers[0]["mark"].as_str().unwrap()), "{summary}");
    assert!(summary.contains("Matters for an engineer"), "{summary}");
    assert!(view["joints"].as_array().unwrap().iter().any(|joint| joint["lines"].as_array().unwrap().len() > 3));
    assert!(!view["cautions"].as_array().unwrap().is_empty() && !view["assumed"].as_array().unwrap().is_empty());
}

#[test]
fn every_working_ends_with_the_figure_of_its_check() {
    let (mut desk, _) = side_desk_with(&example("whole-house"));
    let view = ask(&mut desk, "strength", Value::Null).unwrap();
    for row in view["timbers"].as_array().unwrap().iter().take(12) {
        let first = ask(&mut desk, "strength_working", json!({ "mark": row["lengths"][0], "check": null })).unwrap();
        assert_eq!(first["value"], row["used"]);
        assert_eq!(first["check"], row["check"]);
        for check in first["checks"].as_array().unwrap() {
            let working =
                ask(&mut desk, "strength_working", json!({ "mark": row["mark"], "check": check[0] })).unwrap();
            assert_eq!(working["check"], check[0]);
            let lines = working["lines"].as_array().unwrap();
            let last = lines.last().unwrap()["value"].as_str().unwrap().parse::<f64>().unwrap();
            let shown = check[1].as_str().unwrap().trim_end_matches(" %").parse::<f64>().unwrap();
            assert!((last * 100.0 - shown).abs() <= 1.0, "{row} {check}: {last}");
        }
    }
    for wrong in [json!({ "mark": "Nobody", "check": null }), json!({ "mark": "C20", "check": "luck" })] {
        assert_eq!(ask(&mut desk, "strength_working", wrong).unwrap_err().code, "no-such-check");
    }
}

#[test]
fn a_piece_says_the_most_used_of_its_timbers() {
    let (mut desk, standing) = side_desk_with(&example("whole-house"));
    let view = ask(&mut desk, "strength", Value::Null).unwrap();
    let most = &view["timbers"][0];
    let line = ask(&mut desk, "strength_of", json!({ "mark": most["mark"] })).unwrap();
    let words = line["words"].as_str().unwrap();
    assert!(words.starts_with(most["used"].as_str().unwrap()) && words.contains(most["check"].as_str().unwrap()));
    assert_eq!(line["verdict"], most["verdict"]);
    let fascia =
        standing["overview"]["members"].as_array().unwrap().iter().find(|m| m["kind"] == "Fascia board").unwrap();
    assert_eq!(ask(&mut desk, "strength_of", json!({ "mark": fascia["mark"] })).unwrap(), Value::Null);
}

#[test]
fn loads_are_written_all_at_once_and_undone_as_one() {
    let text = example("boathouse");
    let (mut desk, _) = side_desk_with(&text);
    let after = edit(&mut desk, given(&ALL));
    assert_eq!(after["said"], "Loads and strength");
    assert_eq!(ask(&mut desk, "strength", Value::Null).unwrap()["state"], "checked");
    let one = edit(&mut desk, given(&[("loads.wind", "1.1")]));
    assert_eq!(one["said"], "Loads: wind 1.1");
    let lighter = edit(&mut desk, given(&[("loads.covering_weight", "0.3"), ("loads.lining", "")]));
    assert!(lighter["text"].as_str().unwrap().contains("covering_weight = 0.3"));
    let usual = edit(&mut desk, given(&[("loads.covering_weight", "")]));
    assert!(!usual["text"].as_str().unwrap().contains("covering_weight"));
    ask(&mut desk, "open", json!({ "text": text })).unwrap();
    assert_eq!(ask(&mut desk, "strength", Value::Null).unwrap()["state"], "not_asked");
}

#[test]
fn a_faulty_load_is_named_by_its_key_and_nothing_is_changed() {
    let text = example("boathouse");
    let (mut desk, _) = side_desk_with(&text);
    for (path, value, code) in [
        ("loads.snow_zone", "9", None),
        ("loads.wind", "strong", None),
        ("loads.covering", "thatch", None),
        ("strength.class", "C99", None),
        ("loads.altitude", "", Some("load-missing")),
        ("loads.wind", "", Some("load-missing")),
    ] {
        let values: Vec<(&str, &str)> =
            ALL.iter().map(|one| if one.0 == path { (path, value) } else { *one }).collect();
        let refusal = ask(&mut desk, "edit", given(&values)).unwrap_err();
        assert_eq!(refusal.key.as_deref(), Some(path), "{refusal:?}");
        assert!(!refusal.what.is_empty() && !refusal.remedy.is_empty());
        assert!(code.is_none_or(|code| code == refusal.code), "{refusal:?}");
        assert_eq!(common::standing(&mut desk)["text"], Value::from(text.as_str()));
    }
    // One key by itself does not bring examples of the others with it.
    let alone = ask(&mut desk, "edit", json!({ "do": "set", "path": "loads.covering", "value": "slate" }));
    assert_eq!(alone.unwrap_err().key.as_deref(), Some("loads.snow_zone"));
    let other = ask(&mut desk, "edit", given(&[("roof.pitch", "40")])).unwrap_err();
    assert_eq!(other.code, "no-such-key");
}

#[test]
fn a_tick_keeps_what_was_worked_out() {
    let (mut desk, _) = side_desk_with(&example("whole-house"));
    let before = ask(&mut desk, "strength", Value::Null).unwrap();
    edit(&mut desk, json!({ "do": "tick", "marks": ["A5"], "done": "cut" }));
    assert_eq!(ask(&mut desk, "strength", Value::Null).unwrap(), before);
    edit(&mut desk, given(&[("strength.class", "C16")]));
    assert_ne!(ask(&mut desk, "strength", Value::Null).unwrap()["timbers"], before["timbers"]);
}

#[test]
fn feet_and_inches_and_american_words_are_kept_to() {
    let (mut desk, _) = side_desk_with(&example("whole-house"));
    ask(&mut desk, "settle", json!({ "lengths": "feet-inches", "words": "us" })).unwrap();
    let view = ask(&mut desk, "strength", Value::Null).unwrap();
    let first = &view["timbers"][0];
    assert!(first["size"].as_str().unwrap().ends_with('"'), "{first}");
    let working = ask(&mut desk, "strength_working", json!({ "mark": first["mark"], "check": null })).unwrap();
    assert!(working["idea"].as_str().unwrap().contains('\''), "{working}");
    assert!(working["cautions"][0].as_str().unwrap().contains("mm and N"));
}

#[test]
fn the_word_that_promises_too_much_is_never_shown() {
    for (name, loads) in [("whole-house", false), ("boathouse", false), ("boathouse", true), ("dormers", true)] {
        let (mut desk, _) = side_desk_with(&example(name));
        if loads {
            edit(&mut desk, given(&ALL));
        }
        let view = ask(&mut desk, "strength", Value::Null).unwrap();
        let mut shown = Vec::new();
        texts(&view, &mut shown);
        for row in view["timbers"].as_array().into_iter().flatten().take(5) {
            let why = ask(&mut desk, "strength_working", json!({ "mark": row["mark"], "check": null })).unwrap();
            texts(&why, &mut shown);
        }
        assert!(!shown.is_empty());
        for text in shown {
            assert!(!text.to_lowercase().contains("safe"), "{text}");
        }
    }
}

#[test]
fn papers_get_the_strength_that_was_asked_for() {
    let of = |name: &str| -> document::Document {
        let mut side = app::SideDesk::default();
        ask(&mut side, "open", json!({ "text": example(name) })).unwrap();
        serde_json::from_str(&side.for_papers().unwrap()).unwrap()
    };
    let asked = of("whole-house").strength.expect("the job has loads");
    let most = &asked.strength.members[0];
    assert_eq!(asked.working.last().map(|line| line.value.to_bits()), Some(most.left.used.to_bits()));
    assert!(of("boathouse").strength.is_none());
}
