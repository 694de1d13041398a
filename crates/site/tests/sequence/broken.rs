//! What the check must catch: a sheet that is spoilt in one place.

use super::help::sheet;
use roof::solution::MemberKind;
use site::sequence::{CheckFault, PuttingUp, check_sequence};

fn without_prop(sheet: &PuttingUp, name: &str) -> PuttingUp {
    let mut spoilt = sheet.clone();
    for step in &mut spoilt.steps {
        step.props_set.retain(|p| p != name);
        step.props_out.retain(|p| p != name);
    }
    spoilt
}

fn without_braces(sheet: &PuttingUp, gone: impl Fn(&str) -> bool) -> PuttingUp {
    let mut spoilt = sheet.clone();
    for step in &mut spoilt.steps {
        step.braces_set.retain(|p| !gone(p));
        step.braces_out.retain(|p| !gone(p));
    }
    spoilt
}

const GABLED: [&str; 4] = ["saltbox.toml", "dormers.toml", "raised-plates.toml", "whole-house.toml"];

#[test]
fn a_prop_that_is_left_out_lets_something_fall() {
    let mut tried = 0;
    for name in ["saltbox.toml", "boathouse.toml", "whole-house.toml", "mansard.toml", "half-hip.toml"] {
        let (job, solution, sheet) = sheet(name);
        for prop in &sheet.props {
            let found = check_sequence(&job, &solution, &without_prop(&sheet, &prop.name));
            assert!(
                matches!(&found, Err(CheckFault::Falls { mark, .. }) if *mark == prop.under),
                "{name} {}: {found:?}",
                prop.name
            );
            tried += 1;
        }
    }
    assert!(tried >= 15, "{tried}");
}

#[test]
fn without_braces_the_first_pairs_rack() {
    for name in GABLED {
        let (job, solution, sheet) = sheet(name);
        let found = check_sequence(&job, &solution, &without_braces(&sheet, |_| true));
        assert!(matches!(found, Err(CheckFault::Racks { .. })), "{name}: {found:?}");
    }
    // The one brace of this ridge.
    let (job, solution, sheet) = sheet("saltbox.toml");
    assert_eq!(sheet.braces.len(), 1);
    let found = check_sequence(&job, &solution, &without_braces(&sheet, |b| b == "Brace-1"));
    assert!(matches!(found, Err(CheckFault::Racks { step: 3, .. })), "{found:?}");
}

#[test]
fn braces_taken_out_before_the_diagonals_are_in_are_caught() {
    let (job, solution, sheet) = sheet("saltbox.toml");
    let mut spoilt = sheet.clone();
    for step in &mut spoilt.steps {
        step.permanent_set.clear();
    }
    let found = check_sequence(&job, &solution, &spoilt);
    assert!(matches!(found, Err(CheckFault::Racks { .. })), "{found:?}");
    // One diagonal left is enough along a ridge, as long as it is there.
    let mut one = sheet.clone();
    for step in &mut one.steps {
        step.permanent_set.truncate(1);
    }
    assert_eq!(check_sequence(&job, &solution, &one), Ok(()));
}

#[test]
fn steps_that_change_places_are_caught() {
    for name in GABLED {
        let (job, solution, sheet) = sheet(name);
        let ridge = |s: &site::sequence::Step| {
            s.members.iter().any(|m| solution.members.iter().any(|x| x.mark == *m && x.kind == MemberKind::RidgeBoard))
        };
        let (first, next) = {
            let k = sheet.steps.iter().position(ridge).unwrap();
            (k, k + 1)
        };
        for (a, b) in [(1, first), (first, next)] {
            let mut spoilt = sheet.clone();
            spoilt.steps.swap(a, b);
            assert!(check_sequence(&job, &solution, &spoilt).is_err(), "{name}: {a} and {b}");
        }
        // Plates after all.
        let mut spoilt = sheet.clone();
        let plates = spoilt.steps.remove(1);
        spoilt.steps.push(plates);
        assert!(matches!(check_sequence(&job, &solution, &spoilt), Err(CheckFault::Falls { .. })), "{name}");
    }
}

#[test]
fn timbers_are_fixed_once() {
    let (job, solution, sheet) = sheet("half-hip.toml");
    let last = sheet.steps.iter().rposition(|s| !s.members.is_empty()).unwrap();
    let mut gone = sheet.clone();
    let mark = gone.steps[last].members.pop().unwrap();
    assert_eq!(check_sequence(&job, &solution, &gone), Err(CheckFault::NeverFixed { mark: mark.clone() }));
    let mut twice = sheet.clone();
    twice.steps[last].members.push(mark);
    assert!(matches!(check_sequence(&job, &solution, &twice), Err(CheckFault::OutOfTurn { .. })));
    let mut unknown = sheet;
    unknown.steps[last].members.push("Nothing-1".into());
    assert!(matches!(check_sequence(&job, &solution, &unknown), Err(CheckFault::Unknown { .. })));
}

#[test]
fn props_and_braces_are_where_they_say() {
    let (job, solution, sheet) = sheet("boathouse.toml");
    let mut moved = sheet.clone();
    moved.props[0].head[2] += 10.0;
    assert!(matches!(check_sequence(&job, &solution, &moved), Err(CheckFault::Misplaced { .. })));
    let mut short = sheet.clone();
    short.braces[0].length_mm -= 5.0;
    assert!(matches!(check_sequence(&job, &solution, &short), Err(CheckFault::Misplaced { .. })));
    let mut early = sheet;
    // A brace to a timber that is not there yet.
    early.braces[0].to_mark = early.steps.iter().rev().find_map(|s| s.members.last().cloned()).unwrap();
    assert!(matches!(check_sequence(&job, &solution, &early), Err(CheckFault::Misplaced { .. })));
}
