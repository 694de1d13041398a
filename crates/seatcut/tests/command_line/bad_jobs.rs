//! Bad jobs: each is refused with exit code 2 and a message that names the
//! place and the remedy, and nothing is written.

use crate::bench::Bench;

const MEGABYTE: usize = 1 << 20;

/// The jobs in `bad/`, each with the words that its first line expects.
fn bad_jobs() -> Vec<(String, String)> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/command_line/bad");
    let mut jobs: Vec<(String, String)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .map(|path| (path.file_name().unwrap().to_str().unwrap().to_owned(), std::fs::read_to_string(path).unwrap()))
        .collect();
    jobs.sort();
    jobs
}

/// Message text on one line, without the line drawing of snippets.
fn words(message: &str) -> String {
    let plain = message.replace(['│', '╰', '╭', '─', '▶', '·', '|', '`'], " ");
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn every_bad_job_is_refused_by_every_command_and_nothing_is_written() {
    let jobs = bad_jobs();
    assert!(jobs.len() >= 15, "the bad jobs are in the repository");
    let bench = Bench::new("bad-jobs");
    for (name, text) in jobs {
        let expected = text.lines().next().and_then(|line| line.strip_prefix("# expect: ")).unwrap_or("");
        bench.put(&name, text.as_bytes());
        let commands: [&[&str]; 4] = [
            &["check", &name],
            &["solve", &name],
            &["solve", &name, "--json"],
            &["pack", &name, "-o", "pack.pdf", "--csv", "list.csv"],
        ];
        for args in commands {
            let message = words(&bench.run(args).refused(2));
            assert!(message.contains(expected), "{args:?} says:\n{message}\nwithout: {expected}");
            assert!(message.contains(&name), "{args:?} does not name the file:\n{message}");
        }
        assert_eq!(bench.files(), std::slice::from_ref(&name), "{name} left something behind");
        assert_eq!(bench.text(&name), text, "{name} was changed");
        std::fs::remove_file(bench.path(&name)).unwrap();
    }
}

#[test]
fn all_faults_of_a_file_are_told_at_once_with_line_and_remedy() {
    let bench = Bench::new("all-faults");
    let text =
        std::fs::read(std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/command_line/bad/many_faults.toml"))
            .unwrap();
    bench.put("many.toml", &text);
    let message = bench.run(&["check", "many.toml"]).refused(2);
    assert!(message.contains("many.toml:7:"), "the pitch is on line 7:\n{message}");
    assert!(message.contains("many.toml:8:"), "the overhang is on line 8:\n{message}");
    assert!(message.contains("many.toml:10:"), "the centres are on line 10:\n{message}");
    assert!(words(&message).contains("Did you mean overhang ?"), "{message}");
    assert!(message.contains("3 faults"), "{message}");
}

#[test]
fn a_huge_file_is_refused_at_once() {
    let bench = Bench::new("huge-file");
    let huge = std::fs::File::create(bench.path("huge.toml")).unwrap();
    huge.set_len(50 * MEGABYTE as u64).unwrap();
    let message = bench.run(&["pack", "huge.toml", "-o", "pack.pdf"]).refused(2);
    assert!(message.contains("huge.toml is longer than a job file can be"), "{message}");
    assert_eq!(bench.files(), ["huge.toml"]);
}

#[test]
fn a_huge_standard_input_is_refused() {
    let bench = Bench::new("huge-input");
    let input = vec![b'#'; 2 * MEGABYTE];
    let message = bench.run_with(&["solve", "-"], &input).refused(2);
    assert!(message.contains("standard input is longer"), "{message}");
}

#[test]
fn a_binary_file_is_refused_without_being_printed() {
    let bench = Bench::new("binary-file");
    let bytes: Vec<u8> = (0..=255).cycle().take(4000).collect();
    bench.put("picture.toml", &bytes);
    let message = bench.run(&["solve", "picture.toml"]).refused(2);
    assert!(message.contains("picture.toml"), "{message}");
    assert!(!message.contains('\0') && message.len() < 1000, "{message}");
}

#[test]
fn one_endless_line_is_not_printed_whole() {
    let bench = Bench::new("endless-line");
    bench.put("long.toml", format!("title = \"{}\"\n", "long ".repeat(50_000)).as_bytes());
    let message = bench.run(&["check", "long.toml"]).refused(2);
    assert!(message.len() < 4000, "{} bytes of message", message.len());
}

#[test]
fn a_missing_file_and_a_folder_are_refused() {
    let bench = Bench::new("missing-file");
    let message = bench.run(&["check", "nowhere.toml"]).refused(2);
    assert!(message.contains("nowhere.toml can't be read") && message.contains("seatcut new"), "{message}");
    bench.run(&["check", "."]).refused(2);
}
