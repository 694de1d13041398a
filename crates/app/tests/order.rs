//! The order on the desk: what to buy, how to cut it, prices, offcuts and the covering.

use crate::common::{ask, edit, example, side_desk_with};
use serde_json::{Value, json};

/// A job with few timbers, so that its plan is soon found.
fn shed() -> String {
    example("lean-to")
}

fn order(desk: &mut app::SideDesk) -> Value {
    ask(desk, "order", Value::Null).unwrap()
}

fn list<'v>(value: &'v Value, key: &str) -> &'v Vec<Value> {
    value[key].as_array().unwrap_or_else(|| panic!("{key} of {value}"))
}

fn number(text: &Value) -> f64 {
    let text = text.as_str().unwrap();
    let plain: String = text.chars().filter(|c| c.is_ascii_digit() || *c == '.').collect();
    plain.parse().unwrap_or_else(|_| panic!("{text}"))
}

#[test]
fn what_is_bought_is_what_is_cut() {
    let (mut desk, standing) = side_desk_with(&shed());
    let view = order(&mut desk);
    let groups = ask(&mut desk, "cutting", json!({ "width": 360.0 })).unwrap();
    let timber = list(&view, "timber");
    let groups = groups.as_array().unwrap();
    assert!(!timber.is_empty() && timber.len() == groups.len());
    let mut marks: Vec<String> = Vec::new();
    for (of, group) in timber.iter().zip(groups) {
        assert_eq!(of["id"], group["id"]);
        let bought: f64 = list(of, "buy").iter().map(|buy| number(&buy["count"])).sum();
        let cut: f64 = list(group, "layouts").iter().map(|row| number(&row["times"])).sum();
        assert_eq!(bought, cut, "{}", of["title"]);
        let best = of["best"].as_str().unwrap();
        assert_eq!(of["proven"].as_bool().unwrap(), best.contains("proven"), "{best}");
        assert_eq!(of["priced"], false);
        assert!(list(of, "figures").iter().any(|figure| figure["value"] == "no price yet"));
        for row in list(group, "layouts") {
            let layout = ask(&mut desk, "layout", json!({ "id": row["id"], "width": 360.0 })).unwrap();
            let steps = list(&layout, "steps");
            assert!(!steps.is_empty());
            for step in steps {
                assert!(!step["tape"]["value"].as_str().unwrap().is_empty());
                assert!(step["words"].as_str().unwrap().contains("of the line"), "{step}");
                assert!(layout["row"]["picture"].to_string().contains(step["name"].as_str().unwrap()));
            }
            for piece in list(&layout, "pieces") {
                assert_eq!(list(piece, "marks").len(), number(&row["times"]) as usize);
                marks.extend(list(piece, "marks").iter().map(|mark| mark.as_str().unwrap().to_owned()));
            }
        }
    }
    // Every timber of the roof is cut once; wedges come from what is left.
    let members = list(&standing["overview"], "members");
    marks.sort();
    let before = marks.len();
    marks.dedup();
    assert_eq!(marks.len(), before);
    assert!(before <= members.len() && before > 10, "{before} of {}", members.len());
    let refusal = ask(&mut desk, "layout", json!({ "id": "9-9", "width": 360.0 })).unwrap_err();
    assert_eq!(refusal.code, "no-such-layout");
}

#[test]
fn a_price_that_is_written_makes_a_cost_and_leaves_the_text_alone() {
    let text = format!("# Ours\n{}", shed());
    let (mut desk, _) = side_desk_with(&text);
    let view = order(&mut desk);
    let of = &view["timber"][0]["prices"][0];
    let given = |of: &Value, metre: &str, dated: &str| json!({ "do": "stock_price", "of": of["of"], "by_length": false, "metre": metre, "lengths": [], "dated": dated });
    let written = edit(&mut desk, given(of, "£3,20", "2026-11-02"));
    let new = written["text"].as_str().unwrap();
    assert!(
        new.starts_with("# Ours") && new.contains("price = 3.20") && new.contains("dated = \"2026-11-02\""),
        "{new}"
    );
    let view = order(&mut desk);
    let first = &view["timber"][0];
    let metres = number(&list(first, "figures")[0]["value"]);
    // Metres are written to a tenth, and lengths over 4800 mm are a tenth dearer.
    let cost = number(&list(first, "figures")[2]["value"]);
    assert!(cost > (metres - 0.05) * 3.2 && cost < (metres + 0.05) * 3.2 * 1.1, "{cost} for {metres} m");
    assert_eq!(first["priced"], true);
    assert_eq!(first["prices"][0]["metre"], "3.2");
    assert_eq!(view["oldest"], "2026-11-02");
    // By the length instead: what has no price can't be had.
    let of = &first["prices"][0];
    let shown = list(of, "lengths");
    let lengths: Vec<&str> = shown.iter().map(|pair| if pair[0] == "4800 mm" { "16.20" } else { "" }).collect();
    let by_length =
        json!({ "do": "stock_price", "of": of["of"], "by_length": true, "metre": "", "lengths": lengths, "dated": "" });
    let written = edit(&mut desk, by_length);
    let new = written["text"].as_str().unwrap();
    assert!(new.contains("prices = [16.20]") && !new.contains("price = 3.20"), "{new}");
    let view = order(&mut desk);
    assert!(
        list(&view["timber"][0], "buy").iter().all(|buy| buy["length"] == "4800 mm" && buy["each"] == "£16.20 each")
    );
    for wrong in ["free", "-3", "0", "NaN"] {
        let refusal = ask(&mut desk, "edit", given(&view["timber"][0]["prices"][0], wrong, "")).unwrap_err();
        assert_eq!(refusal.code, "no-price", "{wrong}");
    }
    // Emptied, it has no price any more.
    edit(&mut desk, given(&view["timber"][0]["prices"][0], "", ""));
    assert_eq!(order(&mut desk)["timber"][0]["priced"], false);
}

#[test]
fn the_price_of_anything_else_is_written_and_taken_out() {
    let (mut desk, _) = side_desk_with(&shed());
    let view = order(&mut desk);
    let line = list(&view, "lines").iter().find(|line| line["per"] == "each" && line["remark"] != "if you choose it");
    let line = line.or(list(&view, "lines").first()).expect("something is bought").clone();
    let given = |price: &str| json!({ "do": "item_price", "item": line["item"], "price": price, "per": line["per"], "dated": "2026-11-02" });
    edit(&mut desk, given("0.62"));
    let find = |view: &Value| list(view, "lines").iter().find(|one| one["item"] == line["item"]).unwrap().clone();
    let priced = find(&order(&mut desk));
    assert_eq!((&priced["price"], &priced["dated"]), (&json!("0.62"), &json!("2026-11-02")));
    assert!(priced["cost"].as_str().unwrap().starts_with('£'));
    edit(&mut desk, given("0.7"));
    assert_eq!(find(&order(&mut desk))["price"], "0.7");
    edit(&mut desk, given(""));
    assert_eq!(find(&order(&mut desk))["cost"], Value::Null);
}

#[test]
fn a_price_list_goes_out_and_comes_in_and_a_faulty_one_changes_nothing() {
    let (mut desk, standing) = side_desk_with(&shed());
    let before = standing["text"].as_str().unwrap().to_owned();
    let bad = "what,thickness_mm,depth_mm,length_mm,class,price,per,dated\ntimber,47,150,4800,C24,cheap,each,\n";
    let refusal = ask(&mut desk, "edit", json!({ "do": "price_list", "text": bad })).unwrap_err();
    assert_eq!((refusal.code.as_str(), refusal.faults[0].line), ("price-list", 2));
    assert!(!refusal.faults[0].remedy.is_empty() && refusal.faults[0].what.contains("cheap"));
    let good = bad.replace("cheap", "15.36");
    let read = edit(&mut desk, json!({ "do": "price_list", "text": good }));
    assert_eq!(read["said"], "1 price read in");
    let new = read["text"].as_str().unwrap();
    assert!(new.starts_with(before.lines().next().unwrap()) && new.contains("15.36"));
    let out = ask(&mut desk, "price_list", Value::Null).unwrap();
    assert!(out.as_str().unwrap().contains("15.36"), "{out}");
}

#[test]
fn what_is_left_can_be_kept_and_used_in_the_next_job() {
    let (mut desk, _) = side_desk_with(&shed());
    let groups = ask(&mut desk, "cutting", json!({ "width": 360.0 })).unwrap();
    let left: Vec<Value> = groups.as_array().unwrap().iter().flat_map(|group| list(group, "left").clone()).collect();
    let first = json!({ "thickness_mm": 47.0, "depth_mm": 150.0, "class": "C16", "length_mm": 2350.0, "count": 2 });
    let rows = ask(&mut desk, "offcuts", json!({ "offcuts": [first, first, { "thickness_mm": -1.0, "depth_mm": 0.0, "class": null, "length_mm": 1.0, "count": 1 }] })).unwrap();
    let rows = rows.as_array().unwrap();
    assert_eq!((rows.len(), &rows[0]["count"]), (1, &json!("4")));
    let all: Vec<Value> = left.into_iter().chain([first.clone()]).collect();
    let count: f64 = all.iter().map(|one| one["count"].as_f64().unwrap()).sum();
    edit(&mut desk, json!({ "do": "yard", "offcuts": all }));
    edit(&mut desk, json!({ "do": "yard", "offcuts": [first] }));
    let view = order(&mut desk);
    let lying: f64 = list(&view, "yard").iter().map(|row| number(&row["count"])).sum();
    assert_eq!(lying, count + 2.0);
    let one =
        json!({ "do": "yard_one", "thickness": "47", "depth": "150", "length": "1.2 m", "count": "", "class": "C16" });
    edit(&mut desk, one);
    let view = order(&mut desk);
    assert!(list(&view, "yard").iter().any(|row| row["words"] == "47 × 150 mm, C16, 1200 mm long"), "{}", view["yard"]);
    let wrong =
        json!({ "do": "yard_one", "thickness": "47", "depth": "long", "length": "", "count": "x", "class": "" });
    let refusal = ask(&mut desk, "edit", wrong).unwrap_err();
    assert!(!refusal.what.is_empty() && !refusal.remedy.is_empty() && refusal.faults.is_empty());
}

#[test]
fn a_covering_is_chosen_and_refused_below_its_least_pitch() {
    let (mut desk, _) = side_desk_with(&example("boathouse"));
    let pitch = json!({ "do": "set", "path": "roof.pitch", "value": "20" });
    edit(&mut desk, json!({ "do": "covering", "of": "plain-tile" }));
    let view = order(&mut desk);
    let covering = &view["covering"];
    assert_eq!((&covering["chosen"], &covering["refused"]), (&json!("plain-tile"), &Value::Null));
    assert!(!list(covering, "slopes").is_empty() && !list(covering, "lines").is_empty());
    assert!(list(covering, "choices").iter().any(|pair| pair[0] == "slate"));
    edit(&mut desk, pitch);
    let view = order(&mut desk);
    let refused = view["covering"]["refused"].as_str().expect("it is too flat");
    assert!(refused.contains("20.0 degrees"), "{refused}");
    edit(&mut desk, json!({ "do": "covering", "of": "" }));
    assert_eq!(order(&mut desk)["covering"]["chosen"], "");
}

#[test]
fn ticks_leave_the_order_as_it_was_worked_out() {
    let (mut desk, _) = side_desk_with(&shed());
    let groups = ask(&mut desk, "cutting", json!({ "width": 360.0 })).unwrap();
    let row = groups[0]["layouts"][0].clone();
    let layout = ask(&mut desk, "layout", json!({ "id": row["id"], "width": 360.0 })).unwrap();
    let marks: Vec<Value> = list(&layout, "pieces").iter().flat_map(|piece| list(piece, "marks").clone()).collect();
    edit(&mut desk, json!({ "do": "tick", "marks": marks, "done": "cut" }));
    let after = ask(&mut desk, "layout", json!({ "id": row["id"], "width": 360.0 })).unwrap();
    assert_eq!((&row["done"], &after["row"]["done"]), (&json!("no"), &json!("cut")));
    assert_eq!(layout["steps"], after["steps"]);
}
