//! Saving, merging, taking off: what two devices do to one job.

use crate::client::{ID, JOB, Shop};
use serde_json::{Value, json};

fn history(shop: &Shop) -> Vec<(i64, String)> {
    let rows = shop.ask("GET", &format!("/api/1/jobs/{ID}/history"), None).expect(200).json();
    let row = |row: &Value| (row["revision"].as_i64().unwrap(), row["kind"].as_str().unwrap().to_owned());
    rows.as_array().unwrap().iter().map(row).collect()
}

fn text_of(shop: &Shop, revision: i64) -> String {
    let answer = shop.ask("GET", &format!("/api/1/jobs/{ID}/history/{revision}"), None).expect(200);
    answer.json()["text"].as_str().unwrap().to_owned()
}

#[test]
fn a_first_run_has_the_example_on_its_shelf_and_later_ones_what_was_left() {
    let shop = Shop::open();
    let shelf = shop.ask("GET", "/api/1/jobs", None).expect(200).json();
    assert_eq!(shelf["jobs"].as_array().unwrap().len(), 1);
    assert_eq!((&shelf["jobs"][0]["title"], &shelf["jobs"][0]["revision"]), (&json!("Whole house"), &json!(1)));
    let id = shelf["jobs"][0]["id"].as_str().unwrap();
    let taken = shop.ask("DELETE", &format!("/api/1/jobs/{id}?revision=1"), None).expect(200).json();
    assert_eq!(taken["gone"], true);
    let shop = Shop::open_in(shop.close(), None);
    let shelf = shop.ask("GET", "/api/1/jobs", None).expect(200).json();
    assert_eq!(shelf["jobs"], json!([]));
    assert_eq!(shelf["gone"][0]["title"], "Whole house");
}

#[test]
fn different_figures_of_two_devices_are_merged() {
    let shop = Shop::open();
    assert_eq!(shop.save(0, JOB, 1).expect(200).json()["revision"], 1);
    let one = JOB.replace("pitch = 40\n", "pitch = 42.5\n");
    let other = JOB.replace("every = 3", "every = 2");
    assert_eq!(shop.save(1, &one, 2).expect(200).json(), json!({ "revision": 2, "text": one }));
    let both = one.replace("every = 3", "every = 2");
    assert_eq!(shop.save(1, &other, 3).expect(200).json(), json!({ "revision": 4, "text": both }));
    let kinds = [(4, "merged"), (3, "sent"), (2, "saved"), (1, "saved")];
    assert_eq!(history(&shop), kinds.map(|(number, kind)| (number, kind.to_owned())));
    assert_eq!(text_of(&shop, 3), other);
    // The first device hears of it with its next save, although it does not know it yet.
    let next = one.replace("title = \"Whole house\"", "title = \"Plot 4\"");
    let answer = shop.save(2, &next, 4).expect(200).json();
    assert_eq!(answer["text"], both.replace("title = \"Whole house\"", "title = \"Plot 4\""));
}

#[test]
fn one_figure_with_two_values_is_shown_side_by_side_and_nothing_is_lost() {
    let shop = Shop::open();
    shop.save(0, JOB, 1).expect(200);
    let one = JOB.replace("pitch = 40\n", "pitch = 42.5\n");
    let other = JOB.replace("pitch = 40\n", "pitch = 45\n").replace("every = 3", "every = 2");
    shop.save(1, &one, 2).expect(200);
    let clash = shop.save(1, &other, 3).expect(409).json();
    assert_eq!((&clash["revision"], &clash["theirs"]), (&json!(2), &json!(one)));
    assert_eq!(clash["merged_without"], json!(["roof.pitch"]));
    assert_eq!(clash["merged"], json!(one.replace("every = 3", "every = 2")));
    let expected =
        json!([{ "path": "roof.pitch", "words": "Roof, pitch", "base": "40", "ours": "45", "theirs": "42.5" }]);
    assert_eq!(clash["clashes"], expected);
    // The job stands, what was sent is kept, and the same question gets the same answer.
    assert_eq!(shop.ask("GET", &format!("/api/1/jobs/{ID}"), None).expect(200).json()["text"], one);
    assert_eq!(text_of(&shop, 3), other);
    assert_eq!(shop.save(1, &other, 3).expect(409).json(), clash);
    assert_eq!(history(&shop).len(), 3);
    // With the choice made it is an ordinary save.
    let chosen = clash["merged"].as_str().unwrap().replace("42.5", "45");
    assert_eq!(shop.save(2, &chosen, 4).expect(200).json()["revision"], 4);
}

#[test]
fn a_save_whose_answer_was_lost_is_not_kept_twice() {
    let shop = Shop::open();
    shop.save(0, JOB, 1).expect(200);
    let text = JOB.replace("every = 3", "every = 2");
    let first = shop.save(1, &text, 2).expect(200).json();
    shop.save(2, &JOB.replace("every = 3", "every = 4"), 3).expect(200);
    assert_eq!(shop.save(1, &text, 2).expect(200).json(), first);
    assert_eq!(history(&shop).len(), 3);
    // One name for two saves is a fault of the device.
    assert_eq!(shop.save(1, JOB, 2).expect(422).json()["code"], "save-reused");
    // Saving what is there already makes no revision.
    let there = JOB.replace("every = 3", "every = 4");
    assert_eq!(shop.save(3, &there, 4).expect(200).json()["revision"], 3);
}

#[test]
fn a_job_taken_off_here_and_changed_there_is_kept() {
    let shop = Shop::open();
    let (path, newer) = (format!("/api/1/jobs/{ID}"), JOB.replace("every = 3", "every = 2"));
    shop.ask("DELETE", &format!("{path}?revision=1"), None).expect(404);
    shop.save(0, JOB, 1).expect(200);
    shop.save(1, &newer, 2).expect(200);
    // Not what the device thinks it is.
    shop.ask("DELETE", &format!("{path}?revision=1"), None).expect(409);
    shop.ask("DELETE", &path, None).expect(400);
    assert_eq!(shop.ask("DELETE", &format!("{path}?revision=2"), None).expect(200).json()["revision"], 3);
    shop.ask("GET", &path, None).expect(410);
    // Who only has it, hears that it is gone; who changed it, brings it back.
    assert_eq!(shop.save(2, &newer, 3).expect(410).json()["gone"], true);
    let changed = JOB.replace("every = 3", "every = 4");
    assert_eq!(shop.save(2, &changed, 4).expect(200).json()["revision"], 4);
    assert_eq!(shop.ask("GET", &path, None).expect(200).json()["text"], changed);
    assert_eq!(text_of(&shop, 2), newer);
}

#[test]
fn half_finished_and_unreadable_work_is_kept() {
    let shop = Shop::open();
    assert_eq!(shop.save(0, "title = \"Barn\"\n[plan", 1).expect(200).json()["revision"], 1);
    // It can't be merged, so both are there to be looked at.
    shop.save(1, JOB, 2).expect(200);
    let clash = shop.save(1, "title = ", 3).expect(409).json();
    assert_eq!((&clash["merged"], &clash["clashes"][0]["path"]), (&json!(null), &json!("")));
    assert_eq!(text_of(&shop, 3), "title = ");
    // A base that the workshop has never seen is none.
    let unknown = shop.save(77, &JOB.replace("every = 3", "every = 2"), 4).expect(409).json();
    assert_eq!(unknown["merged_without"], json!(["timber.collar.every"]));
}

#[test]
fn what_is_no_save_is_refused_in_words() {
    let shop = Shop::open();
    let path = format!("/api/1/jobs/{ID}");
    let body = |text: &str, save: &str| json!({ "base": 0, "text": text, "device": "Phone", "save": save });
    let save = "f".repeat(32);
    for bad in [
        json!({}),
        body("", &save),
        body("a\0", &save),
        body(JOB, "1"),
        body(JOB, &"F".repeat(32)),
        json!({ "base": 0, "text": JOB, "device": "Phone", "save": save, "more": 1 }),
        json!({ "base": "0", "text": JOB, "device": "Phone", "save": save }),
    ] {
        let refusal = shop.ask("PUT", &path, Some(&bad)).expect(400).json();
        assert!(refusal["what"].is_string() && refusal["remedy"].is_string(), "{bad}");
    }
    for id in ["x", &"g".repeat(32), &ID.to_uppercase(), &format!("{ID}0"), "..%2f..%2fetc", "%00"] {
        shop.ask("PUT", &format!("/api/1/jobs/{id}"), Some(&body(JOB, &save))).expect(400);
        shop.ask("GET", &format!("/api/1/jobs/{id}"), None).expect(400);
    }
    shop.ask("GET", &path, None).expect(404);
    // At most a job file, however it is written.
    let longest = "#".repeat(1 << 20);
    shop.ask("PUT", &path, Some(&body(&format!("{longest}#"), &save))).expect(413);
    shop.ask("PUT", &path, Some(&body(&"#".repeat(5 << 20), &save))).expect(413);
    shop.ask("PUT", &path, Some(&body(&longest, &save))).expect(200);
}
