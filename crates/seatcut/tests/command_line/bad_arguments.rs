//! Bad arguments: refused with exit code 2 before anything is done.

use crate::bench::Bench;

#[test]
fn sizes_that_are_no_sizes_are_refused_with_the_right_form() {
    let bench = Bench::new("card-sizes");
    let card = |span: &str, pitch: &str, size: &str| {
        bench.run(&["card", "rafter", "--span", span, "--pitch", pitch, "--size", size, "-o", "card.pdf"]).refused(2)
    };
    assert!(card("wide", "40", "47x150").contains("--span"));
    assert!(card("NaN", "40", "47x150").contains("is not a length"));
    assert!(card("5200", "NaN", "47x150").contains("--pitch"));
    assert!(card("5200", "40", "47").contains("thickness x depth"));
    assert!(card("5200", "40", "47x").contains("--size"));
    assert!(card("0", "40", "47x150").contains("not above zero"));
    assert!(card("-5200", "40", "47x150").contains("not above zero"));
    assert!(card("5200", "40", "0x150").contains("not above zero"));
    assert!(bench.files().is_empty());
}

#[test]
fn a_card_from_impossible_sizes_says_what_to_change() {
    let bench = Bench::new("card-impossible");
    for [span, pitch, size] in [
        ["5200", "0", "47x150"],
        ["5200", "90", "47x150"],
        ["5200", "-40", "47x150"],
        ["5", "40", "47x150"],
        ["1e300", "40", "47x150"],
        ["5200", "40", "47x1e300"],
    ] {
        let args = ["card", "rafter", "--span", span, "--pitch", pitch, "--size", size, "-o", "card.pdf"];
        let message = bench.run(&args).refused(2);
        assert!(message.contains("no roof can be made from these sizes"), "{args:?}: {message}");
        assert!(bench.files().is_empty(), "{args:?}");
    }
}

#[test]
fn an_unknown_shape_names_the_shapes() {
    let bench = Bench::new("unknown-shape");
    let message = bench.run(&["new", "igloo", "-o", "job.toml"]).refused(2);
    assert!(message.contains("igloo") && message.contains("--list"), "{message}");
    assert!(bench.files().is_empty());
}

#[test]
fn unknown_words_are_refused() {
    let bench = Bench::with_job("unknown-words");
    for args in [&["saw", "good.toml"][..], &["solve", "good.toml", "--xml"], &["solve"], &["completions", "abacus"]] {
        bench.run(args).refused(2);
    }
}

#[test]
fn setting_an_unknown_key_or_a_bad_value_leaves_the_file_as_it_was() {
    let bench = Bench::with_job("bad-set");
    let before = bench.text("good.toml");
    for [key, value] in [
        ["roof.ptich", "42"],
        ["roof.pitch", "0"],
        ["roof.pitch", "nan"],
        ["roof.pitch", "steep"],
        ["timber.rafter.centres", "0"],
        ["", "1"],
        ["roof..pitch", "42"],
        ["plan.corners", "[[0, 0], [8400, 0]"],
    ] {
        bench.run(&["set", "good.toml", key, value]).refused(2);
        assert_eq!(bench.text("good.toml"), before, "set {key} {value}");
    }
    assert_eq!(bench.files(), ["good.toml"]);
}
