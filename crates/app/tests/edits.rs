//! Edits and nudges: what they do, what they leave alone, and what they refuse.

use crate::common::{ask, desk_with, edit, example, examples, standing};
use proptest::prelude::*;
use serde_json::{Value, json};

#[test]
fn a_nudge_shows_what_the_edit_then_makes() {
    for (name, text) in examples() {
        let (mut desk, before, _) = desk_with(&text);
        let pitch = job::read(&text).unwrap().pitch_deg + 0.5;
        let mut asked = vec![json!({ "do": "pitch", "wall": null, "pitch_deg": pitch })];
        for ridge in before["overview"]["ridges"].as_array().unwrap() {
            let height = ridge["height_mm"].as_f64().unwrap() + 20.0;
            asked.push(json!({ "do": "ridge_height", "ridge": ridge["id"], "height_mm": height }));
        }
        let mut made = 0;
        for ask_for in asked {
            let nudged = ask(&mut desk, "nudge", ask_for.clone());
            let seen = desk.take_scene();
            assert_eq!(standing(&mut desk)["overview"], before["overview"], "{name}: the job stays as it was");
            let edited = ask(&mut desk, "edit", ask_for.clone());
            let (Ok(nudged), Ok(edited)) = (&nudged, &edited) else {
                assert_eq!(nudged.is_ok(), edited.is_ok(), "{name} {ask_for}: {nudged:?} {edited:?}");
                continue;
            };
            made += 1;
            assert!(seen.is_some() && seen == desk.take_scene(), "{name} {ask_for}");
            for part in ["figures", "notices", "walls", "ridges", "members", "scene"] {
                assert_eq!(nudged["overview"][part], edited["overview"][part], "{name} {part}");
            }
            assert!(!edited["said"].as_str().unwrap().is_empty());
            // Undo: the old text stands as it stood.
            ask(&mut desk, "open", json!({ "text": text })).unwrap();
            assert_eq!(standing(&mut desk)["overview"], before["overview"], "{name}");
        }
        assert!(made > 0, "{name}");
    }
}

#[test]
fn a_ridge_comes_to_the_height_that_was_asked_for() {
    for (name, text) in examples() {
        let (mut desk, before, _) = desk_with(&text);
        for ridge in before["overview"]["ridges"].as_array().unwrap() {
            let wanted = ridge["height_mm"].as_f64().unwrap() - 25.0;
            let reply =
                ask(&mut desk, "nudge", json!({ "do": "ridge_height", "ridge": ridge["id"], "height_mm": wanted }));
            let Ok(reply) = reply else { continue };
            let after =
                reply["overview"]["ridges"].as_array().unwrap().iter().find(|r| r["id"] == ridge["id"]).cloned();
            let got = after.unwrap_or_else(|| panic!("{name}: {} is gone", ridge["id"]))["height_mm"].as_f64().unwrap();
            // A hundredth of a degree over the run of these slopes.
            assert!((got - wanted).abs() < 5.0, "{name} {}: {got} for {wanted}", ridge["id"]);
        }
    }
}

#[test]
fn a_wall_becomes_a_gable_and_a_hip_again() {
    let (mut desk, _, _) = desk_with(&example("boathouse"));
    let walls = standing(&mut desk)["overview"]["walls"].as_array().unwrap().clone();
    let mut turned = 0;
    for wall in walls {
        let form = |gable: bool| if gable { "gable" } else { "hip" };
        let was = wall["gable"].as_bool().unwrap();
        let ask_for = |gable| json!({ "do": "wall", "wall": wall["wall"], "form": form(gable) });
        assert!(ask(&mut desk, "edit", ask_for(was)).is_err(), "it is so already");
        let Ok(after) = ask(&mut desk, "edit", ask_for(!was)) else { continue };
        turned += 1;
        let now = after["overview"]["walls"].as_array().unwrap().iter().find(|w| w["wall"] == wall["wall"]).unwrap();
        assert_eq!(now["gable"], Value::from(!was));
        edit(&mut desk, ask_for(was));
    }
    assert!(turned >= 2);
}

#[test]
fn what_a_gable_has_no_use_for_is_taken_out_and_said() {
    let text = example("boathouse");
    let (mut desk, _, _) = desk_with(&text);
    let job = job::read(&text).unwrap();
    let wall = job.walls.iter().find(|wall| wall.gable).unwrap().letter.clone();
    edit(&mut desk, json!({ "do": "wall", "wall": wall, "form": "hip" }));
    edit(&mut desk, json!({ "do": "pitch", "wall": wall, "pitch_deg": 47.123456 }));
    let after = edit(&mut desk, json!({ "do": "wall", "wall": wall, "form": "gable" }));
    assert_eq!(after["said"], Value::from(format!("Wall {wall}: gable, without its own pitch")));
    assert!(!after["text"].as_str().unwrap().contains("47.12"));
}

#[test]
fn a_dragged_pitch_is_written_short() {
    let (mut desk, _, _) = desk_with(&example("boathouse"));
    let after = edit(&mut desk, json!({ "do": "pitch", "wall": null, "pitch_deg": 41.123_456_789 }));
    assert!(after["text"].as_str().unwrap().contains("pitch = 41.12"), "{}", after["text"]);
    assert_eq!(after["said"], "Pitch 41.12°");
}

#[test]
fn every_entry_takes_the_value_that_it_shows() {
    for name in ["whole-house", "dormers", "mansard"] {
        let (mut desk, before, _) = desk_with(&example(name));
        let entries = before["overview"]["entries"].as_array().unwrap().clone();
        assert!(entries.len() > 40);
        for entry in entries.iter().filter(|entry| entry["said"] == true) {
            let set = json!({ "do": "set", "path": entry["path"], "value": entry["value"] });
            let after = edit(&mut desk, set);
            assert_eq!(after["overview"]["figures"], before["overview"]["figures"], "{name} {}", entry["path"]);
        }
    }
}

#[test]
fn a_part_is_started_by_one_of_its_keys_and_goes_with_it() {
    let (mut desk, before, _) = desk_with(&example("boathouse"));
    let after = edit(&mut desk, json!({ "do": "set", "path": "timber.collar.size", "value": "[47, 125]" }));
    let collars =
        |s: &Value| s["overview"]["members"].as_array().unwrap().iter().filter(|m| m["kind"] == "Collar").count();
    assert!(collars(&before) == 0 && collars(&after) > 0);
    let gone = edit(&mut desk, json!({ "do": "remove", "path": "timber.collar.height" }));
    assert_eq!(gone["overview"]["members"], before["overview"]["members"]);
}

#[test]
fn ticks_are_counted() {
    let (mut desk, before, _) = desk_with(&example("boathouse"));
    let mark = before["overview"]["members"][0]["mark"].clone();
    let after = edit(&mut desk, json!({ "do": "tick", "marks": [mark], "done": "fixed" }));
    assert_eq!(after["overview"]["tally"]["cut"], 1);
    assert_eq!(after["overview"]["tally"]["fixed"], 1);
    let fixed: u64 = after["overview"]["pieces"].as_array().unwrap().iter().map(|p| p["fixed"].as_u64().unwrap()).sum();
    assert_eq!(fixed, 1);
    let back = edit(&mut desk, json!({ "do": "tick", "marks": [mark], "done": "no" }));
    assert_eq!(back["overview"]["tally"], before["overview"]["tally"]);
}

#[test]
fn what_is_refused_leaves_all_as_it_was() {
    let text = example("whole-house");
    let (mut desk, before, _) = desk_with(&text);
    for wrong in [
        json!({ "do": "pitch", "wall": "Q", "pitch_deg": 40 }),
        json!({ "do": "pitch", "wall": "D", "pitch_deg": 40 }),
        json!({ "do": "pitch", "wall": null, "pitch_deg": 95 }),
        json!({ "do": "ridge_height", "ridge": "nowhere", "height_mm": 3000 }),
        json!({ "do": "ridge_height", "ridge": "A-C", "height_mm": -3000 }),
        json!({ "do": "wall", "wall": "A", "form": "gable" }),
        json!({ "do": "wall", "wall": "Z", "form": "hip" }),
        json!({ "do": "set", "path": "timber.rafter.centres", "value": "wide" }),
        json!({ "do": "set", "path": "timber.nothing", "value": "1" }),
        json!({ "do": "set", "path": "", "value": "" }),
        json!({ "do": "set", "path": "timber.purlin.up", "value": "[20000]" }),
        json!({ "do": "remove", "path": "revision" }),
        json!({ "do": "remove", "path": "title" }),
        json!({ "do": "tick", "marks": ["Nobody-1"], "done": "cut" }),
    ] {
        let refusal = ask(&mut desk, "edit", wrong.clone()).expect_err(&wrong.to_string());
        assert!(!refusal.what.is_empty() && !refusal.remedy.is_empty(), "{wrong}: {refusal:?}");
        let now = standing(&mut desk);
        assert_eq!(now["text"], Value::from(text.as_str()), "{wrong}");
        assert_eq!(now["overview"], before["overview"], "{wrong}");
    }
}

#[test]
fn every_shape_makes_a_job_that_stands() {
    let mut desk = app::Desk::default();
    let shapes = ask(&mut desk, "shapes", Value::Null).unwrap();
    for shape in shapes.as_array().unwrap() {
        assert!(!shape["picture"]["parts"].as_array().unwrap().is_empty(), "{}", shape["name"]);
        let sizes: Vec<Value> = shape["sizes"]
            .as_array()
            .unwrap()
            .iter()
            .map(|size| json!({ "name": size["name"], "value": size["value"] }))
            .collect();
        let new = json!({ "shape": shape["name"], "title": "New", "sizes": sizes, "gables": shape["gables"] });
        let text = ask(&mut desk, "new_job", new).unwrap();
        let (_, standing, _) = desk_with(text.as_str().unwrap());
        assert!(!standing["overview"].is_null(), "{}", shape["name"]);
    }
    let wide = json!({ "shape": "rectangle", "title": "New", "sizes": [{ "name": "length", "value": "wide" }], "gables": false });
    assert!(ask(&mut desk, "new_job", wide).is_err_and(|refusal| refusal.what.contains("Length")));
}

fn any_json() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        any::<i32>().prop_map(Value::from),
        "[ -~]{0,12}".prop_map(Value::from),
        "(A|B|A-C|roof.pitch|timber.rafter.size|\\[\\]|gable|hip|fixed)".prop_map(Value::from),
    ];
    leaf.prop_recursive(2, 16, 4, |inner| {
        let keys = "(do|wall|pitch_deg|ridge|height_mm|path|value|form|marks|done|mark|check|values|width|figure|text|walls|tape)";
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Value::from),
            prop::collection::btree_map(keys, inner, 0..6).prop_map(|map| map.into_iter().collect()),
        ]
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_call_panics_whatever_it_is_given(
        name in "(open|edit|nudge|settle|card|why|strength|strength_working|strength_of|shapes|new_job|sketch|sketch_of_job|sketch_into_job|[a-z]{0,6})",
        takes in any_json(),
        raw in "[ -~]{0,20}",
        deed in "(set|remove|wall|pitch|ridge_height|tick|carries)",
    ) {
        let mut desk = app::Desk::default();
        ask(&mut desk, "open", json!({ "text": "format = 1\ntitle = \"t\"\n[plan]\ncorners = [[0, 0], [4000, 0], [4000, 3000], [0, 3000]]\n[roof]\npitch = 40\n" })).unwrap();
        let mut takes = takes;
        if let Value::Object(map) = &mut takes && (name == "edit" || name == "nudge") {
            map.insert("do".to_owned(), Value::from(deed));
        }
        // Whatever it says, it comes back.
        drop(desk.call(&name, &takes.to_string()));
        drop(desk.call(&name, &raw));
        let settled = ask(&mut desk, "settle", json!({ "lengths": "mm", "words": "us" }));
        prop_assert!(settled.is_ok());
    }
}
