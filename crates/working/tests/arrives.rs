//! Every figure of every example has a working that arrives at it.

use crate::common;
use job::written::Lengths;
use std::collections::BTreeMap;
use working::{ANGLE_AGREES, Basis, Figure, LENGTH_AGREES, answer};

/// At most this share of all figures is read off the solid: boards, struts and
/// what two things shape at once.
const MOST_READ_OFF: f64 = 0.07;

#[test]
fn every_working_arrives_at_the_figure_of_the_card() {
    let mut count: BTreeMap<(String, Basis), usize> = BTreeMap::new();
    let mut wrong = Vec::new();
    for (name, job, solution) in common::examples() {
        for question in common::questions(&solution) {
            let Ok(found) = answer(&job, &solution, &question, Lengths::Millimetres, 360.0) else {
                wrong.push(format!("{name}: {question}: no answer"));
                continue;
            };
            let angle = matches!(
                question.figure,
                Figure::Pitch | Figure::Face | Figure::Edge | Figure::Mitre | Figure::Tilt | Figure::Backing
            );
            let within = if angle { ANGLE_AGREES } else { LENGTH_AGREES };
            let off = (found.comes_to - found.figure).abs();
            if off > within || off.is_nan() {
                wrong.push(format!("{name}: {question}: {} is not {}", found.comes_to, found.figure));
            }
            if found.working.lines.last().is_none_or(|l| l.result != found.working.value) {
                wrong.push(format!("{name}: {question} does not end at {}", found.working.value));
            }
            let key = question.to_string().split(' ').next().unwrap_or_default().to_owned();
            *count.entry((key, found.basis)).or_default() += 1;
        }
    }
    println!("{count:#?}");
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong[..wrong.len().min(30)].join("\n"));
    let all: usize = count.values().sum();
    let read: usize = count.iter().filter(|((_, basis), _)| *basis == Basis::Solid).map(|(_, n)| n).sum();
    println!("{read} of {all} are read off the solid");
    assert!((read as f64) < MOST_READ_OFF * all as f64, "{read} of {all} are read off the solid");
}
