//! Marks: unique, short, the same every time, and never changed because
//! something else came or went.

mod edits;

use crate::common::{Seed, random_job};
use roof::solution::Solution;
use std::collections::BTreeSet;

/// The longest mark: what is written on a timber of 38 mm with a thick pencil.
const LONGEST: usize = 14;

fn assert_good(s: &Solution, name: &str) {
    let mut seen = BTreeSet::new();
    for m in &s.members {
        assert!(seen.insert(&m.mark), "{name}: two timbers are called {}", m.mark);
        assert!(m.mark.len() <= LONGEST, "{name}: {} is too long to write", m.mark);
        // Ticks in the job file have them as plain keys.
        assert!(
            !m.mark.is_empty() && m.mark.chars().all(|c| c.is_ascii_alphanumeric() || c == '-'),
            "{name}: {}",
            m.mark
        );
    }
}

fn examples() -> Vec<(String, job::Job)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples");
    let mut files: Vec<_> = std::fs::read_dir(folder).expect("examples").map(|e| e.expect("a file").path()).collect();
    files.retain(|f| f.extension().is_some_and(|e| e == "toml"));
    files.sort();
    let read = |f: &std::path::PathBuf| {
        let text = std::fs::read_to_string(f).expect("text");
        (f.display().to_string(), job::read(&text).expect("a sound job"))
    };
    files.iter().map(read).collect()
}

#[test]
fn the_marks_of_the_examples_are_unique_short_and_the_same_every_time() {
    let examples = examples();
    assert!(examples.len() > 10);
    for (name, job) in examples {
        let s = roof::solve(&job).expect("it can be built");
        assert_good(&s, &name);
        let again = roof::solve(&job).expect("it can be built");
        assert!(s.members.iter().zip(&again.members).all(|(a, b)| a.mark == b.mark), "{name}");
    }
}

#[test]
fn marks_of_random_roofs_are_unique_and_short() {
    let mut solved = 0;
    for k in 0..300 {
        let mut seed = Seed::new(k);
        let job = if k % 2 == 0 { random_job(&mut seed) } else { edits::ordinary(&mut seed) };
        if let Ok(s) = roof::solve(&job) {
            assert_good(&s, &format!("seed {k}"));
            solved += 1;
        }
    }
    assert!(solved > 200, "{solved}");
}

#[test]
fn a_plain_roof_is_numbered_along_its_walls() {
    let rectangle = vec![vec![[0.0, 0.0], [8400.0, 0.0], [8400.0, 5200.0], [0.0, 5200.0]]];
    let s = roof::solve(&crate::common::job_over(rectangle, 40.0)).expect("it can be built");
    for letter in ["A", "B", "C", "D"] {
        let rafters = s.members.iter().filter(|m| m.wall.as_deref() == Some(letter) && m.birdsmouth.is_some());
        for (number, m) in (1..).zip(rafters) {
            assert_eq!(m.mark, format!("{letter}{number}"));
        }
    }
    for mark in ["Plate-A", "Ridge-1", "Hip-1", "Hip-2", "Hip-3", "Hip-4"] {
        assert!(s.members.iter().any(|m| m.mark == mark), "{mark}");
    }
}
