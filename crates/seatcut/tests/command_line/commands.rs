//! Every command on a good day.

use crate::bench::{Bench, GOOD_JOB};

/// What a PDF file starts with (ISO 32000-1, 7.5.2).
const PDF_HEADER: &[u8] = b"%PDF-";

#[test]
fn check_says_that_a_job_is_good() {
    let bench = Bench::with_job("check");
    let text = bench.run(&["check", "good.toml"]).good();
    assert!(text.starts_with("good.toml: good."), "{text}");
    assert_eq!(bench.files(), ["good.toml"]);
}

#[test]
fn solve_prints_key_figures() {
    let bench = Bench::with_job("solve");
    let text = bench.run(&["solve", "good.toml"]).good();
    assert!(text.starts_with("Boathouse workshop\n"), "{text}");
    // 8.4 m by 5.2 m.
    assert!(text.contains("43.68 m²"), "{text}");
    // One pitch all round: the slope area is the plan area over cos 40°.
    assert!(text.contains("57.02 m²"), "{text}");
    for timber in ["common rafter", "jack rafter", "hip rafter", "ridge board", "wall plate"] {
        assert!(text.contains(timber), "no {timber} in:\n{text}");
    }
}

#[test]
fn solve_reads_standard_input_and_prints_the_same_document() {
    let bench = Bench::with_job("solve-json");
    let from_file = bench.run(&["solve", "good.toml", "--json"]).good();
    let from_input = bench.run_with(&["solve", "-", "--json"], GOOD_JOB.as_bytes()).good();
    assert_eq!(from_file, from_input);
    let document: serde_json::Value = serde_json::from_str(&from_file).unwrap();
    assert_eq!(document["format"], 1);
    assert_eq!(document["plan"]["corners"].as_array().unwrap().len(), 4);
    assert_eq!(document["faces"].as_array().unwrap().len(), 3, "one wall is a gable");
}

#[test]
fn pack_writes_the_sheets_and_the_list() {
    let bench = Bench::with_job("pack");
    let text = bench.run(&["pack", "good.toml", "-o", "sheets.pdf", "--csv", "list.csv"]).good();
    assert!(text.starts_with("sheets.pdf\nlist.csv\n"), "{text}");
    assert!(bench.bytes("sheets.pdf").starts_with(PDF_HEADER));
    let document = bench.run(&["solve", "good.toml", "--json"]).good();
    let document: serde_json::Value = serde_json::from_str(&document).unwrap();
    let list = bench.text("list.csv");
    for member in document["members"].as_array().unwrap() {
        let mark = member["mark"].as_str().unwrap();
        assert!(list.contains(mark), "{mark} is not in the list");
    }
    assert_eq!(bench.files(), ["good.toml", "list.csv", "sheets.pdf"]);
}

#[test]
fn pack_puts_the_sheets_beside_the_job_and_replaces_older_ones() {
    let bench = Bench::with_job("pack-beside");
    bench.put("good.pdf", b"older");
    bench.run(&["pack", "good.toml"]).good();
    assert!(bench.bytes("good.pdf").starts_with(PDF_HEADER));
    assert_eq!(bench.files(), ["good.pdf", "good.toml"]);
}

#[test]
fn a_rafter_card_gives_the_true_length() {
    let bench = Bench::new("card-rafter");
    let args = ["card", "rafter", "--span", "5200", "--pitch", "40", "--size", "47x150", "-o", "card.pdf"];
    let text = bench.run(&args).good();
    // Half the span over cos 40°: 2600 / 0.76604 = 3394.1 mm.
    assert!(text.contains("3394.1 mm"), "{text}");
    assert!(text.contains("40.0°"), "{text}");
    assert!(bench.bytes("card.pdf").starts_with(PDF_HEADER));
}

#[test]
fn a_hip_card_gives_the_true_length_and_pitch() {
    let bench = Bench::new("card-hip");
    let text = bench.run(&["card", "hip", "--span", "5.2 m", "--pitch", "40", "--size", "47x150"]).good();
    // Run 2600·√2 = 3676.96 mm, rise 2600·tan 40° = 2181.66 mm: length 4275.5 mm, pitch 30.7°.
    assert!(text.contains("4275.5 mm"), "{text}");
    assert!(text.contains("30.7°"), "{text}");
    assert!(bench.files().is_empty(), "no card was asked for");
}

#[test]
fn a_card_takes_feet_and_inches_and_a_rise_in_a_run() {
    let bench = Bench::new("card-feet");
    let text = bench.run(&["card", "rafter", "--span", "24'", "--pitch", "12 in 12", "--size", "2\"x6\""]).good();
    // 12' run at 45°: 12·√2 feet = 5172.6 mm.
    assert!(text.contains("5172.6 mm"), "{text}");
}

#[test]
fn set_changes_one_key_and_keeps_the_comments() {
    let bench = Bench::with_job("set");
    bench.run(&["set", "good.toml", "roof.pitch", "42.5"]).good();
    let text = bench.text("good.toml");
    assert_eq!(text, GOOD_JOB.replace("pitch = 40  #", "pitch = 42.5  #"));
    assert_eq!(bench.files(), ["good.toml"]);
}

#[test]
fn set_on_standard_input_prints_the_changed_job() {
    let bench = Bench::new("set-input");
    let text = bench.run_with(&["set", "-", "roof.walls.D.gable", "true"], GOOD_JOB.as_bytes()).good();
    assert!(text.contains("# as the house"), "{text}");
    bench.run_with(&["check", "-"], text.as_bytes()).good();
    assert!(bench.files().is_empty());
}

#[test]
fn defaults_are_a_job_that_is_good() {
    let bench = Bench::new("defaults");
    let text = bench.run(&["defaults"]).good();
    bench.run_with(&["check", "-"], text.as_bytes()).good();
}

#[test]
fn the_schema_is_json_and_knows_the_keys() {
    let bench = Bench::new("schema");
    let schema: serde_json::Value = serde_json::from_str(&bench.run(&["schema"]).good()).unwrap();
    let keys = schema["properties"].as_object().unwrap();
    for key in ["format", "title", "plan", "roof", "timber"] {
        assert!(keys.contains_key(key), "no {key} in the schema");
    }
}

#[test]
fn completions_know_the_commands() {
    let bench = Bench::new("completions");
    for shell in ["bash", "zsh", "fish"] {
        let script = bench.run(&["completions", shell]).good();
        assert!(script.contains("seatcut") && script.contains("pack"), "{shell}");
    }
}

#[test]
fn every_listed_shape_starts_a_job_that_packs() {
    let bench = Bench::new("shapes");
    let list = bench.run(&["new", "--list"]).good();
    let shapes: Vec<&str> =
        list.lines().filter(|line| !line.starts_with(' ')).filter_map(|line| line.split_whitespace().next()).collect();
    assert!(shapes.contains(&"rectangle"), "{list}");
    for shape in shapes {
        let file = format!("{shape}.toml");
        bench.run(&["new", shape, "--title", "A \"first\" roof", "-o", &file]).good();
        assert!(bench.text(&file).contains("first"), "{shape}");
        bench.run(&["check", &file]).good();
    }
}

#[test]
fn a_new_job_takes_its_sizes_and_is_printed_without_o() {
    let bench = Bench::new("new-sizes");
    let text = bench.run(&["new", "rectangle", "--length", "9.6 m", "--width", "4800", "--gables"]).good();
    let solved = bench.run_with(&["solve", "-"], text.as_bytes()).good();
    // 9.6 m by 4.8 m.
    assert!(solved.contains("46.08 m²"), "{solved}");
    assert!(solved.contains("gable"), "{solved}");
    assert!(bench.files().is_empty());
}

#[test]
fn every_command_has_help_with_an_example() {
    let bench = Bench::new("help");
    for command in
        ["new", "check", "solve", "pack", "card", "strength", "spans", "set", "defaults", "schema", "completions"]
    {
        let help = bench.run(&[command, "--help"]).good();
        assert!(help.contains("Example") && help.contains(&format!("seatcut {command}")), "{help}");
    }
    let help = bench.run(&["--help"]).good();
    assert!(help.contains("Exit codes:"), "{help}");
}
