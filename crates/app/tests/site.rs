//! Putting up on the desk: steps and their pictures, lifts, the programme, access, papers, and the edits of the place.

use crate::common::{ask, edit, example, side_desk_with};
use serde_json::{Value, json};

fn set(path: &str, value: &str) -> Value {
    json!({ "do": "set", "path": path, "value": value })
}

fn list<'v>(of: &'v Value, name: &str) -> &'v Vec<Value> {
    of[name].as_array().unwrap_or_else(|| panic!("{name} of {of}"))
}

/// Every text of a reply.
fn texts(value: &Value, out: &mut Vec<String>) {
    match value {
        Value::String(text) => out.push(text.clone()),
        Value::Array(all) => all.iter().for_each(|one| texts(one, out)),
        Value::Object(all) => all.values().for_each(|one| texts(one, out)),
        _ => {}
    }
}

const ALL: [(&str, Value); 4] = [
    ("site_steps", Value::Null),
    ("site_lifts", Value::Null),
    ("site_access", Value::Null),
    ("site_records", Value::Null),
];

#[test]
fn every_timber_is_fixed_in_one_step_and_every_bar_that_is_set_is_told() {
    let (mut desk, standing) = side_desk_with(&example("whole-house"));
    let view = ask(&mut desk, "site_steps", Value::Null).unwrap();
    assert_eq!(view["refused"], Value::Null);
    let steps = list(&view, "steps");
    assert!(steps.len() > 10, "{}", steps.len());
    let mut fixed: Vec<&str> = steps.iter().flat_map(|step| list(step, "order")).map(|m| m.as_str().unwrap()).collect();
    let count = fixed.len();
    fixed.sort_unstable();
    fixed.dedup();
    assert_eq!(fixed.len(), count, "none is fixed twice");
    let members = list(&standing["overview"], "members");
    assert!(fixed.iter().all(|mark| members.iter().any(|member| member["mark"] == **mark)));
    assert!(count * 10 > members.len() * 9, "{count} of {}", members.len());
    let (mut bars, mut holds) = (0, 0);
    for (k, step) in steps.iter().enumerate() {
        assert_eq!(step["number"], k + 1);
        for part in ["title", "hands", "why", "hazard"] {
            assert!(!step[part].as_str().unwrap().is_empty(), "{part} of {step}");
        }
        for bar in list(step, "set") {
            bars += 1;
            assert!(list(bar, "figures").len() >= 3, "{bar}");
        }
        holds += list(step, "holds").len();
        for hold in list(step, "holds") {
            let tolerance = hold["tolerance"].as_str().unwrap();
            assert!(tolerance.starts_with('±') || tolerance == "by eye", "{hold}");
        }
    }
    assert!(bars > 2 && holds > 2, "{bars} bars, {holds} holds");
    assert!(!list(&view, "cautions").is_empty());
}

#[test]
fn the_picture_of_a_step_has_its_timbers_bold_and_stays_on_the_sheet() {
    let (mut desk, _) = side_desk_with(&example("boathouse"));
    let view = ask(&mut desk, "site_steps", Value::Null).unwrap();
    let mut before = 0;
    for (k, step) in list(&view, "steps").iter().enumerate() {
        let ask_for = json!({ "step": step["number"], "width": 360.0, "turn": k });
        let picture = ask(&mut desk, "site_picture", ask_for).unwrap();
        let lines = |ink: &str| {
            list(&picture, "parts").iter().filter(|part| part["ink"] == ink && part["shape"]["is"] == "line").count()
        };
        let (now, set) = (list(step, "order").len(), list(step, "set").len());
        assert_eq!((lines("chosen"), lines("edge")), (now + set, before), "step {}", step["number"]);
        before += now;
        for part in list(&picture, "parts") {
            for point in part["shape"]["points"].as_array().into_iter().flatten() {
                for (side, most) in [(0, &picture["width"]), (1, &picture["height"])] {
                    let at = point[side].as_f64().unwrap();
                    assert!(at >= 0.0 && at <= most.as_f64().unwrap(), "{part}");
                }
            }
        }
    }
    let none = ask(&mut desk, "site_picture", json!({ "step": 999, "width": 360.0, "turn": 0 })).unwrap_err();
    assert_eq!(none.code, "no-such-step");
}

#[test]
fn a_larger_crew_is_done_sooner_and_the_roof_stays() {
    let (mut desk, before) = side_desk_with(&example("whole-house"));
    edit(&mut desk, set("programme.start", "2027-03-01"));
    let programme = |desk: &mut app::SideDesk| ask(desk, "site_programme", json!({ "width": 360.0 })).unwrap();
    let days = |view: &Value| view["days"].as_str().unwrap().split(' ').next().unwrap().parse::<u32>().unwrap();
    let two = programme(&mut desk);
    let after = edit(&mut desk, set("programme.crew", "4"));
    assert_eq!(after["said"], "Programme: crew 4");
    assert_eq!(after["overview"]["members"], before["overview"]["members"]);
    let four = programme(&mut desk);
    assert!(days(&four) < days(&two), "{} {}", four["days"], two["days"]);
    assert_ne!(four["last"], two["last"]);
    assert!(four["last"].as_str().unwrap().ends_with("2027"), "{}", four["last"]);
    assert_eq!(list(&four, "spread").len(), 3);
    assert_eq!(list(&four, "hire").len(), 3);
    assert!(!list(&four, "inspections").is_empty());
    let crew = &list(&four, "fields")[0];
    assert_eq!((&crew["path"], &crew["value"], &crew["said"]), (&json!("programme.crew"), &json!("4"), &json!(true)));
    // Every hour that is shown can be typed as it is shown.
    let hours = list(&four, "hours").clone();
    assert!(hours.len() > 5);
    for one in &hours {
        assert!(one["hint"].as_str().unwrap().to_lowercase().contains("estimate"), "{one}");
        edit(&mut desk, set(one["path"].as_str().unwrap(), one["value"].as_str().unwrap()));
    }
    let refusal = ask(&mut desk, "edit", set("programme.crew", "none")).unwrap_err();
    assert!(!refusal.faults.is_empty());
    assert_eq!(programme(&mut desk)["fields"][0]["value"], "4", "nothing was changed");
}

#[test]
fn the_calendar_file_wants_a_start() {
    let (mut desk, _) = side_desk_with(&example("boathouse"));
    let text = job::edit::remove(&example("boathouse"), "programme.start").unwrap_or_else(|_| example("boathouse"));
    ask(&mut desk, "open", json!({ "text": text })).unwrap();
    assert_eq!(ask(&mut desk, "site_calendar", Value::Null).unwrap_err().code, "no-calendar");
    edit(&mut desk, set("programme.start", "2027-03-01"));
    let file = ask(&mut desk, "site_calendar", Value::Null).unwrap();
    assert!(file.as_str().unwrap().starts_with("BEGIN:VCALENDAR\r\n"), "{file}");
    // RFC 5545 section 3.4: as many ends as beginnings, one of the whole.
    let count = |what: &str| file.as_str().unwrap().matches(what).count();
    assert_eq!(count("BEGIN:VEVENT"), count("END:VEVENT"));
    assert_eq!(count("END:VCALENDAR"), 1);
}

#[test]
fn a_question_is_answered_a_statement_put_in_other_words_and_both_taken_back() {
    let text = example("boathouse");
    let (mut desk, _) = side_desk_with(&text);
    let rows = |desk: &mut app::SideDesk| -> Vec<Value> {
        let view = ask(desk, "site_records", Value::Null).unwrap();
        assert_eq!(list(&view, "papers").len(), 3);
        let papers = list(&view, "papers").iter();
        papers.flat_map(|paper| list(paper, "sections")).flat_map(|section| list(section, "rows")).cloned().collect()
    };
    let before = rows(&mut desk);
    let blank = before.iter().find(|row| row["said"].is_null()).unwrap()["name"].clone();
    let said = before.iter().find(|row| row["said"].is_string()).unwrap()["name"].clone();
    // What would end a text in the file, a number and a line break come back as they were written.
    for words in ["12", "Mill \"Lane\" \\ back, 'gate'\nat the ford", "true"] {
        for name in [&blank, &said] {
            edit(&mut desk, json!({ "do": "record", "name": name, "text": words }));
        }
        let now = rows(&mut desk);
        assert_eq!(now.len(), before.len());
        for name in [&blank, &said] {
            let (was, is) = (row(&before, name), row(&now, name));
            assert_eq!(is["written"], words);
            assert_eq!((&was["said"], &was["question"]), (&is["said"], &is["question"]), "it can be taken back");
        }
    }
    for name in [&blank, &said] {
        edit(&mut desk, json!({ "do": "record", "name": name, "text": " " }));
    }
    assert_eq!(rows(&mut desk), before);
    for (name, code) in [("a.b", "no-such-record"), ("", "no-such-record"), ("nothing-there", "not-said")] {
        let refusal = ask(&mut desk, "edit", json!({ "do": "record", "name": name, "text": "" })).unwrap_err();
        assert_eq!(refusal.code, code);
    }
    let after = edit(&mut desk, json!({ "do": "record", "name": "of-nothing", "text": "x" }));
    assert!(after["text"].as_str().unwrap().contains("of-nothing"));
    assert_eq!(ask(&mut desk, "site_records", Value::Null).unwrap()["unused"], json!(["[record.of-nothing]: x"]));
}

fn row<'r>(rows: &'r [Value], name: &Value) -> &'r Value {
    rows.iter().find(|row| row["name"] == *name).expect("the row is there")
}

#[test]
fn what_is_known_of_the_site_is_asked_and_told() {
    let (mut desk, _) = side_desk_with(&example("whole-house"));
    edit(&mut desk, set("access.plate_height", "5200"));
    edit(&mut desk, set("access.people", "9"));
    edit(&mut desk, set("access.stack", "60"));
    let view = ask(&mut desk, "site_access", Value::Null).unwrap();
    assert_eq!(view["figures"][0]["value"], "5200 mm");
    assert_eq!(view["bay"]["verdict"], "over", "nine people and sixty rafters are too much for a bay");
    let count = |path: &str| list(&view, "fields").iter().filter(|field| field["path"] == path).count();
    for path in ["access.kind", "access.class", "access.ground", "access.passers_by", "access.overhead_lines"] {
        assert_eq!(count(path), 1, "{path}");
    }
    for field in list(&view, "fields").iter().filter(|field| field["form"] == "choice") {
        let word = field["choices"][0][0].as_str().unwrap();
        edit(&mut desk, set(field["path"].as_str().unwrap(), word));
    }
}

#[test]
fn the_heaviest_kind_is_first_and_ticks_are_counted() {
    let (mut desk, _) = side_desk_with(&example("whole-house"));
    let lifts = ask(&mut desk, "site_lifts", Value::Null).unwrap();
    let kg = |one: &Value| one["heaviest"].as_str().unwrap().split(' ').next().unwrap().parse::<f64>().unwrap();
    let kinds = list(&lifts, "kinds");
    assert!(kinds.len() > 5 && kinds.windows(2).all(|two| kg(&two[0]) >= kg(&two[1])));
    let steps = ask(&mut desk, "site_steps", Value::Null).unwrap();
    let first = list(&steps, "steps").iter().find(|step| !list(step, "order").is_empty()).unwrap().clone();
    edit(&mut desk, json!({ "do": "tick", "marks": first["order"], "done": "fixed" }));
    let after = ask(&mut desk, "site_steps", Value::Null).unwrap();
    let number = usize::try_from(first["number"].as_u64().unwrap()).unwrap();
    assert_eq!(after["steps"][number - 1]["all_ticked"], true);
}

#[test]
fn every_example_has_its_site_in_words_of_the_job_and_no_promise() {
    for name in ["boathouse", "dormers", "mansard", "whole-house"] {
        let (mut desk, _) = side_desk_with(&example(name));
        for words in ["uk", "us"] {
            ask(&mut desk, "settle", json!({ "lengths": "feet-inches", "words": words })).unwrap();
            let mut all = Vec::new();
            for (call, takes) in ALL {
                texts(&ask(&mut desk, call, takes).unwrap_or_else(|why| panic!("{name} {call}: {why:?}")), &mut all);
            }
            texts(&ask(&mut desk, "site_programme", json!({ "width": 1000.0 })).unwrap(), &mut all);
            assert!(all.len() > 300, "{name}: {}", all.len());
            for text in &all {
                let text = text.to_lowercase();
                assert!(!text.split(|c: char| !c.is_alphabetic()).any(|word| word == "safe"), "{text}");
                assert!(!text.contains("nan mm") && !text.contains("inf mm"), "{text}");
            }
        }
    }
}
