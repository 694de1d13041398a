//! Every figure of every example has a working that arrives at it.

mod common;

use std::collections::BTreeMap;
use working::{Basis, answer};

#[test]
fn every_working_arrives_at_the_figure_of_the_card() {
    let mut count: BTreeMap<(String, Basis), usize> = BTreeMap::new();
    let mut wrong = Vec::new();
    let mut read = BTreeMap::<String, usize>::new();
    for (name, job, solution) in common::examples() {
        for question in common::questions(&solution) {
            let found = answer(&job, &solution, &question, job::written::Lengths::Millimetres, 360.0);
            let Ok(found) = found else {
                wrong.push(format!("{name}: {question}: no answer"));
                continue;
            };
            if (found.comes_to - found.figure).abs() > working::LENGTH_AGREES {
                wrong.push(format!("{name}: {question}: {} is not {}", found.comes_to, found.figure));
            }
            let key = question.to_string().split(' ').next().unwrap_or_default().to_owned();
            *count.entry((key.clone(), found.basis)).or_default() += 1;
            if found.basis == Basis::Solid {
                let kind = solution.members.iter().find(|m| m.mark == question.of).map_or("roof", |m| m.kind.name());
                *read.entry(format!("{key:12} {kind}  {name}")).or_default() += 1;
            }
        }
    }
    eprintln!("{count:#?}\n{read:#?}");
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong[..wrong.len().min(30)].join("\n"));
}
