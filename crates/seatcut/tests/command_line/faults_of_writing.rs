//! Results that can't be written: exit code 3, and nothing left half done.

use crate::bench::Bench;

#[test]
fn a_folder_that_is_not_there_is_told() {
    let bench = Bench::with_job("no-folder");
    let message = bench.run(&["pack", "good.toml", "-o", "nowhere/pack.pdf"]).refused(3);
    assert!(message.contains("nowhere/pack.pdf can't be written"), "{message}");
    assert_eq!(bench.files(), ["good.toml"]);
}

#[test]
fn a_folder_in_the_place_of_the_file_is_told() {
    let bench = Bench::with_job("folder-there");
    std::fs::create_dir(bench.path("pack.pdf")).unwrap();
    bench.run(&["pack", "good.toml", "-o", "pack.pdf"]).refused(3);
    assert_eq!(bench.files(), ["good.toml", "pack.pdf"]);
}

#[test]
fn when_the_list_cannot_be_written_the_old_sheets_stay() {
    let bench = Bench::with_job("half-written");
    bench.put("pack.pdf", b"the sheets of yesterday");
    bench.run(&["pack", "good.toml", "-o", "pack.pdf", "--csv", "nowhere/list.csv"]).refused(3);
    assert_eq!(bench.text("pack.pdf"), "the sheets of yesterday");
    assert_eq!(bench.files(), ["good.toml", "pack.pdf"]);
}

#[test]
fn a_new_job_does_not_replace_one_that_is_there() {
    let bench = Bench::with_job("job-there");
    let before = bench.text("good.toml");
    let message = bench.run(&["new", "rectangle", "-o", "good.toml"]).refused(3);
    assert!(message.contains("good.toml"), "{message}");
    assert_eq!(bench.text("good.toml"), before);
}
