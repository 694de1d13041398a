//! Reads every file of `cases/` and compares its faults with the comments in
//! it. A line `#! code: words` says that the next line that is not such a
//! comment has a fault of this code whose text holds these words. The comments
//! are taken out before the file is read.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// A fault that a case tells to expect.
#[derive(Debug)]
struct Expected {
    line: usize,
    code: String,
    words: String,
}

/// Parts the text of a job from what is expected of it.
fn part(case: &str) -> (String, Vec<Expected>) {
    let mut text = String::new();
    let mut expected = Vec::new();
    let mut line = 1;
    for row in case.lines() {
        match row.trim_start().strip_prefix("#! ") {
            Some(fault) => {
                let (code, words) = fault.split_once(": ").unwrap_or_else(|| panic!("`{fault}` has no colon"));
                expected.push(Expected { line, code: code.to_owned(), words: words.to_owned() });
            }
            None => {
                text.push_str(row);
                text.push('\n');
                line += 1;
            }
        }
    }
    (text, expected)
}

fn cases() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let mut cases: Vec<PathBuf> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    cases.sort();
    cases
}

/// What is wrong with a case: faults not expected, and expected ones missing.
fn differences(case: &str) -> Vec<String> {
    let (text, expected) = part(case);
    let mut found: Vec<job::Fault> = job::read(&text).err().into_iter().flatten().collect();
    let mut differences = Vec::new();
    for wanted in expected {
        let is_it = |fault: &job::Fault| {
            fault.line == wanted.line && fault.code == wanted.code && fault.to_string().contains(&wanted.words)
        };
        match found.iter().position(is_it) {
            Some(place) => {
                found.remove(place);
            }
            None => differences.push(format!("missing: {wanted:?}")),
        }
    }
    differences.extend(found.iter().map(|fault| format!("not expected: {} {fault}", fault.code)));
    differences
}

#[test]
fn faults_of_cases_are_as_written_in_them() {
    let mut bad = Vec::new();
    for path in cases() {
        let case = std::fs::read_to_string(&path).unwrap();
        let name = path.file_name().unwrap().to_string_lossy();
        bad.extend(differences(&case).into_iter().map(|difference| format!("{name}: {difference}")));
    }
    assert!(bad.is_empty(), "\n{}", bad.join("\n"));
}

#[test]
fn good_cases_expect_nothing_and_the_others_something() {
    for path in cases() {
        let case = std::fs::read_to_string(&path).unwrap();
        let good = path.file_name().unwrap().to_string_lossy().starts_with("good-");
        assert_eq!(part(&case).1.is_empty(), good, "{}", path.display());
    }
}

#[test]
fn the_runner_sees_differences() {
    assert_eq!(differences("#! missing-key: none\nformat = 1\n").len(), 4);
}

/// Codes that the cases leave to other tests: those of whole files and of
/// plans, and of files too long to be cases.
const ELSEWHERE: [&str; 6] =
    ["file-empty", "file-too-large", "not-text", "too-many-corners", "too-many-named", "wall-shorter-than-plate"];

#[test]
fn every_code_that_the_guide_lists_has_a_case() {
    let mut in_cases = BTreeSet::from(ELSEWHERE.map(str::to_owned));
    for path in cases() {
        in_cases.extend(part(&std::fs::read_to_string(&path).unwrap()).1.into_iter().map(|fault| fault.code));
    }
    let guide = include_str!("../src/lib.rs");
    let row = |line: &str| Some(line.strip_prefix("//! | `")?.split_once('`')?.0.to_owned());
    let in_guide: BTreeSet<String> = guide.lines().filter_map(row).filter(|code| !code.starts_with("plan-")).collect();
    assert_eq!(in_cases, in_guide);
}
