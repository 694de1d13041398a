//! The app as a folder, and the jobs as a backup.

use crate::bench::Bench;

#[test]
fn a_folder_with_other_files_is_left_alone() {
    let bench = Bench::with_job("folder-of-others");
    let refusal = bench.run(&["folder", "."]).refused(2);
    assert!(refusal.contains("name a new or an empty one"), "{refusal}");
    assert_eq!(bench.files(), ["good.toml"]);
}

#[test]
fn a_backup_of_nothing_says_where_it_looked() {
    let bench = Bench::new("backup-of-nothing");
    let refusal = bench.run(&["backup", "b.sqlite", "--data", "nowhere"]).refused(2);
    assert!(refusal.contains("nowhere") && refusal.contains("--data"), "{refusal}");
    assert!(bench.files().is_empty());
}

#[test]
fn ports_and_addresses_that_cannot_be_are_refused() {
    let bench = Bench::new("serve-refused");
    bench.run(&["serve", "--port", "0"]).refused(2);
    bench.run(&["serve", "--port", "65535"]).refused(2);
    bench.run(&["serve", "--network", "everywhere"]).refused(2);
    assert!(bench.files().is_empty());
}
