//! What to buy, price lists and putting up on the command line.

use crate::bench::{Bench, GOOD_JOB};
use order::whole::Order;
use site::whole::Site;

const PRICED: &str = "
[stock.rafters]
size = [47, 150]
lengths = [3600, 4200, 4800, 5400]
price = 3.4
dated = \"2026-11-02\"

[covering]
of = \"plain-tile\"

[programme]
start = 2027-03-01
";

fn priced(name: &str) -> Bench {
    let bench = Bench::with_job(name);
    bench.put("priced.toml", format!("{GOOD_JOB}{PRICED}").as_bytes());
    bench
}

#[test]
fn an_order_says_what_to_buy_and_how_near_that_is_to_the_best() {
    let bench = priced("order-report");
    let text = bench.run(&["order", "priced.toml"]).good();
    for wanted in
        ["47 x 150", " of ", "no plan can be better", "plain tiles", "[plain-tile]", "Priced so far: £", "note  "]
    {
        assert!(text.contains(wanted), "no {wanted} in\n{text}");
    }
    let cuts = bench.run(&["order", "priced.toml", "--cuts"]).good();
    for wanted in ["cut 1: ", "mitre", "tilt", "shared at", "left: "] {
        assert!(cuts.contains(wanted), "no {wanted} in\n{cuts}");
    }
}

#[test]
fn the_document_has_order_and_site() {
    let bench = priced("order-json");
    let whole: serde_json::Value =
        serde_json::from_str(&bench.run(&["solve", "priced.toml", "--json"]).good()).expect("it is JSON");
    let order: Order = serde_json::from_value(whole["order"].clone()).expect("an order");
    let site: Site = serde_json::from_value(whole["site"].clone()).expect("a site");
    assert!(order.timber.iter().all(|t| t.refused.is_none() && !t.layouts.is_empty()));
    assert!(site.putting_up.is_some_and(|up| !up.steps.is_empty()));
    // Every timber but folding wedges is in one layout.
    let laid: usize = order.timber.iter().flat_map(|t| &t.layouts).flat_map(|l| &l.pieces).map(|p| p.marks.len()).sum();
    assert_eq!(laid, whole["members"].as_array().expect("members").len());
    let alone: serde_json::Value =
        serde_json::from_str(&bench.run(&["order", "priced.toml", "--json"]).good()).expect("it is JSON");
    assert_eq!(alone, whole["order"]);
}

#[test]
fn files_of_the_order_are_written() {
    let bench = priced("order-files");
    bench
        .run(&["order", "priced.toml", "--sheet", "o.xlsx", "--csv", "o.csv", "--pdf", "o.pdf", "--labels", "l.pdf"])
        .good();
    assert!(bench.bytes("o.xlsx").starts_with(b"PK"));
    assert!(bench.bytes("o.pdf").starts_with(b"%PDF") && bench.bytes("l.pdf").starts_with(b"%PDF"));
    assert!(String::from_utf8(bench.bytes("o.csv")).expect("text").lines().count() > 5);
}

#[test]
fn a_price_list_goes_out_and_comes_back() {
    let bench = priced("prices");
    let list = bench.run(&["prices", "priced.toml"]).good();
    assert!(list.lines().count() > 1 && list.contains("47") && list.contains("3.4"), "{list}");
    bench.put("list.csv", list.replace("3.4", "3.9").as_bytes());
    let job = bench.run(&["prices", "priced.toml", "--from", "list.csv"]).good();
    assert!(job.contains("3.9") && job.contains("Boathouse") == GOOD_JOB.contains("Boathouse"), "{job}");
    bench.put("bad.csv", b"what,price,per\ntimber,-3,m\nbatten,dear,m\n");
    let told = bench.run(&["prices", "priced.toml", "--from", "bad.csv"]).refused(2);
    assert!(told.contains('2') && told.contains('3'), "{told}");
}

#[test]
fn a_piece_longer_than_any_stock_is_told_with_the_splice() {
    let bench = Bench::with_job("order-long");
    let short = "\n[stock.rafters]\nsize = [47, 150]\nlengths = [1200]\n";
    bench.put("short.toml", format!("{GOOD_JOB}{short}").as_bytes());
    let text = bench.run(&["order", "short.toml"]).good();
    assert!(text.contains("splice it") && text.contains("[timber.joint] longest"), "{text}");
}

#[test]
fn a_covering_below_its_least_pitch_is_refused() {
    let bench = Bench::with_job("order-flat");
    let job = GOOD_JOB.replace("pitch = 40", "pitch = 20");
    assert_ne!(job, GOOD_JOB);
    bench.put("flat.toml", format!("{job}\n[covering]\nof = \"plain-tile\"\n").as_bytes());
    let text = bench.run(&["order", "flat.toml"]).good();
    assert!(text.contains("LOOK") && text.contains("least"), "{text}");
}

#[test]
fn putting_up_has_steps_holds_programme_and_access() {
    let bench = priced("site-report");
    let text = bench.run(&["site", "priced.toml", "--pdf", "s.pdf", "--calendar", "s.ics"]).good();
    for wanted in ["\n1. ", "HOLD", "Props", "hazard: ", "Programme, estimated", "Access: ", "Lifts, damp", "2027-03-"]
    {
        assert!(text.contains(wanted), "no {wanted} in\n{text}");
    }
    assert!(!text.to_lowercase().contains("safe "), "{text}");
    assert!(bench.bytes("s.pdf").starts_with(b"%PDF"));
    assert!(bench.bytes("s.ics").starts_with(b"BEGIN:VCALENDAR"));
    // Without a first day there are no dates.
    let told = bench.run(&["site", "good.toml", "--calendar", "x.ics"]).refused(2);
    assert!(told.contains("[programme]"), "{told}");
}
