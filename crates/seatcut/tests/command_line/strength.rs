//! Strength on the command line: in a line, in full, in JSON, and span tables.

use crate::bench::{Bench, GOOD_JOB};
use roof::solution::Solution;
use strength::whole::Strength;

const LOADS: &str = "
[loads]
covering = \"plain-tile\"
snow_zone = 3
altitude = 120
wind = 0.85

[strength]
class = \"C24\"
";

fn loaded(name: &str) -> Bench {
    let bench = Bench::with_job(name);
    bench.put("loaded.toml", format!("{GOOD_JOB}{LOADS}").as_bytes());
    bench
}

fn json(text: &str) -> serde_json::Value {
    serde_json::from_str(text).unwrap()
}

#[test]
fn solve_and_check_say_the_strength_in_a_line() {
    let bench = loaded("strength-line");
    for command in ["solve", "check"] {
        let text = bench.run(&[command, "loaded.toml"]).good();
        let lines: Vec<&str> = text.lines().filter(|l| l.starts_with("Strength (members only): ")).collect();
        assert_eq!(lines.len(), 1, "{text}");
        assert!(lines[0].contains(" over and ") && lines[0].contains("the most used is"), "{text}");
        assert!(lines[0].contains("for an engineer") && !text.to_lowercase().contains("safe "), "{text}");
        let without = bench.run(&[command, "good.toml"]).good();
        assert!(without.contains("the job has no [loads]") && !without.contains("Strength (members"), "{without}");
    }
}

#[test]
fn the_document_has_strength_only_with_loads_and_is_still_a_solution() {
    let bench = loaded("strength-json");
    let with = bench.run(&["solve", "loaded.toml", "--json"]).good();
    let without = bench.run(&["solve", "good.toml", "--json"]).good();
    let solution: Solution = serde_json::from_str(&with).unwrap();
    assert_eq!(solution.members.len(), json(&with)["members"].as_array().unwrap().len());
    serde_json::from_str::<Solution>(&without).unwrap();
    assert!(json(&without).get("strength").is_none());
    let strength: Strength = serde_json::from_value(json(&with)["strength"].clone()).unwrap();
    assert!(!strength.members.is_empty() && !strength.loads.is_empty());
}

#[test]
fn strength_shows_timbers_joints_and_walls() {
    let bench = loaded("strength-report");
    let text = bench.run(&["strength", "loaded.toml"]).good();
    for wanted in ["common rafter", "hip rafter", "Used", "Walls and bearings", "ENGINEER", "All timber C24", "note  "]
    {
        assert!(text.contains(wanted), "no {wanted} in\n{text}");
    }
    let document = json(&bench.run(&["strength", "loaded.toml", "--json"]).good());
    let whole = json(&bench.run(&["solve", "loaded.toml", "--json"]).good());
    assert_eq!(document, whole["strength"]);
}

#[test]
fn a_timber_has_its_checks_and_the_working_of_one() {
    let bench = loaded("strength-mark");
    let document = json(&bench.run(&["strength", "loaded.toml", "--json"]).good());
    let member = &document["members"][0];
    let mark = member["mark"].as_str().unwrap();
    let text = bench.run(&["strength", "loaded.toml", mark]).good();
    let checks = member["checks"].as_array().unwrap();
    for check in checks {
        assert!(text.contains(check["name"].as_str().unwrap()), "{text}");
    }
    let governing = checks[0]["name"].as_str().unwrap();
    assert!(text.contains(&format!("Working: {governing}\n")) && text.contains("k_mod"), "{text}");
    let other = checks.last().unwrap();
    let name = other["name"].as_str().unwrap();
    let worked = json(&bench.run(&["strength", "loaded.toml", mark, "--check", name, "--json"]).good());
    assert_eq!(worked["check"], other["name"]);
    // The last line of a working is the figure of the check.
    let last = worked["working"].as_array().unwrap().last().unwrap();
    let (got, wanted) = (last["value"].as_f64().unwrap(), other["used"].as_f64().unwrap());
    assert!((got - wanted).abs() < 1e-9, "{got} and {wanted}");
}

#[test]
fn what_cannot_be_asked_is_refused_with_what_can() {
    let bench = loaded("strength-refused");
    assert!(bench.run(&["strength", "good.toml"]).refused(2).contains("[loads]"));
    assert!(bench.run(&["strength", "loaded.toml", "Z99"]).refused(2).contains("Z99"));
    let refusal = bench.run(&["strength", "loaded.toml", "A7", "--check", "luck"]).refused(2);
    assert!(refusal.contains("luck") && refusal.contains("it has: "), "{refusal}");
}

#[test]
fn the_pack_has_sheets_of_strength_when_it_was_checked() {
    let bench = loaded("strength-pack");
    let text = bench.run(&["pack", "loaded.toml", "-o", "with.pdf"]).good();
    assert!(text.contains("Strength (members only)"), "{text}");
    bench.run(&["pack", "good.toml", "-o", "without.pdf"]).good();
    assert!(bench.bytes("with.pdf").len() > bench.bytes("without.pdf").len());
}

#[test]
fn a_region_without_codes_is_a_warning_and_no_failed_solve() {
    let bench = loaded("strength-region");
    let job = format!("{GOOD_JOB}{LOADS}").replace("format = 1\n", "format = 1\nregion = \"us\"\n");
    let ran = bench.run_with(&["solve", "-"], job.as_bytes());
    // Where job files know no other region there is nothing to warn of.
    if ran.code == Some(0) {
        assert!(ran.out.contains("LOOK  strength"), "{}", ran.out);
    }
}

const RAFTERS: [&str; 10] =
    ["--pitch", "40", "--covering", "plain-tile", "--snow-zone", "3", "--altitude", "120", "--wind", "0.85"];

#[test]
fn span_tables_are_printed_listed_and_drawn() {
    let bench = Bench::new("spans");
    let mut args = vec!["spans", "--class", "C24", "--centres", "400,600", "-o", "spans.pdf", "--csv", "spans.csv"];
    args.extend(RAFTERS);
    let text = bench.run(&args).good();
    for wanted in ["Rafters of C24", "Ceiling joists of C24", "at 400", "at 600", "47 x 147", "member check only"] {
        assert!(text.contains(wanted), "no {wanted} in\n{text}");
    }
    assert!(!text.to_lowercase().contains("safe"));
    assert!(bench.bytes("spans.pdf").starts_with(b"%PDF-"));
    assert_eq!(bench.text("spans.csv").lines().count(), 1 + 2 * 2 * 11);
    assert_eq!(bench.files(), ["spans.csv", "spans.pdf"]);
}

#[test]
fn spans_without_their_loads_say_what_is_missing() {
    let bench = Bench::new("spans-missing");
    bench.run(&["spans", "--class", "C24", "--for", "joists"]).good();
    let refusal = bench.run(&["spans", "--class", "C24"]).refused(2);
    assert!(refusal.contains("--covering") && refusal.contains("--for joists"), "{refusal}");
    assert!(bench.run(&["spans", "--class", "C99", "--for", "joists"]).refused(2).contains("C99"));
    for [name, value] in [["--pitch", "5"], ["--snow-zone", "9"], ["--wind", "NaN"], ["--altitude", "inf"]] {
        let mut args = vec!["spans", "--class", "C24", "-o", "spans.pdf"];
        let mut rafters = RAFTERS;
        let at = rafters.iter().position(|a| *a == name).unwrap();
        rafters[at + 1] = value;
        args.extend(rafters);
        bench.run(&args).refused(2);
    }
    bench.run(&["spans", "--class", "C24", "--for", "joists", "--centres", "0"]).refused(2);
    assert!(bench.files().is_empty());
}
