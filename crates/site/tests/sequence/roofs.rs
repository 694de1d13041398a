//! Every example and random roofs get an order of work that passes its check.

use super::help::{examples, random, read, sheet};
use roof::solution::{MemberKind, Solution};
use site::sequence::{PuttingUp, SequenceFault, check_sequence, putting_up};
use std::collections::BTreeSet;

/// How many random roofs.
const ROOFS: u64 = 40;
/// Of these, how many may be left without an order.
const WITHOUT: usize = 1;

/// What holds of every sheet, seen from outside.
fn plain_truths(name: &str, solution: &Solution, sheet: &PuttingUp) {
    let fixed: Vec<&String> = sheet.steps.iter().flat_map(|s| &s.members).collect();
    let once: BTreeSet<&String> = fixed.iter().copied().collect();
    assert_eq!((fixed.len(), once.len()), (solution.members.len(), solution.members.len()), "{name}");
    for (k, step) in sheet.steps.iter().enumerate() {
        assert_eq!(step.number as usize, k + 1, "{name}");
        assert!(!step.title.is_empty() && !step.why.is_empty() && !step.hazard.is_empty() && step.hands > 0, "{name}");
        assert_eq!(step.stands.len(), step.members.len(), "{name}");
        assert!(step.stands.iter().all(|s| !s.on.is_empty()), "{name}: {:?}", step.stands);
    }
    // Plates before what stands on them, by kinds alone.
    let first = |which: &dyn Fn(MemberKind) -> bool| {
        fixed.iter().position(|m| solution.members.iter().any(|x| x.mark == **m && which(x.kind)))
    };
    let (plate, rafter) = (first(&|k| k == MemberKind::WallPlate), first(&|k| k == MemberKind::CommonRafter));
    assert!(plate < rafter || rafter.is_none(), "{name}");
    let text = serde_json::to_string(sheet).unwrap();
    assert!(!text.to_lowercase().contains("safe"), "{name} says what no sheet can say");
    assert!(!text.contains("null"), "{name}: a figure is no number");
    let back: PuttingUp = serde_json::from_str(&text).unwrap();
    assert_eq!(back.steps, sheet.steps, "{name}");
}

#[test]
fn every_example_has_an_order() {
    let names = examples();
    assert!(names.len() >= 13, "{}", names.len());
    for name in names {
        let (job, solution, sheet) = sheet(&name);
        assert_eq!(check_sequence(&job, &solution, &sheet), Ok(()), "{name}");
        plain_truths(&name, &solution, &sheet);
        assert!(!sheet.props.iter().any(|p| !p.height_mm.is_finite() || p.height_mm <= 0.0), "{name}");
    }
}

#[test]
fn random_roofs_have_an_order() {
    let (mut done, mut timbers, mut without) = (0, 0, Vec::new());
    for seed in 1..=ROOFS {
        let Some((job, solution)) = random(seed) else { continue };
        match putting_up(&job, &solution) {
            Ok(sheet) => {
                plain_truths(&format!("seed {seed}"), &solution, &sheet);
                done += 1;
                timbers += solution.members.len();
            }
            Err(fault) => without.push((seed, fault.to_string())),
        }
    }
    assert!(without.len() <= WITHOUT, "{without:#?}");
    assert!(done >= 35 && timbers > 4000, "the generator has gone quiet: {done} roofs, {timbers} timbers");
}

#[test]
fn a_region_without_figures_is_named() {
    let (mut job, solution) = read("saltbox.toml");
    job.region = "nowhere".into();
    let fault = putting_up(&job, &solution).unwrap_err();
    assert!(matches!(fault, SequenceFault::Rules(_)) && fault.to_string().contains("nowhere"), "{fault}");
}
