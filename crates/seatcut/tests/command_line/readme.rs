//! The example in the README is true.

use assert_cmd::Command;

#[test]
fn the_example_in_the_readme_prints_what_it_says() {
    let readme = include_str!("../../../../README.md");
    let (_, after) = readme.split_once("$ seatcut card ").expect("the README shows a card");
    let (call, rest) = after.split_once('\n').expect("a command line");
    let (shown, _) = rest.split_once("\n```").expect("the end of the block");
    let output =
        Command::new(env!("CARGO_BIN_EXE_seatcut")).arg("card").args(call.split(' ')).output().expect("it runs");
    assert_eq!(String::from_utf8_lossy(&output.stdout).trim_end(), shown.trim_end());
}
