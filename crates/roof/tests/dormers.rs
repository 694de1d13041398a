//! Dormers.

#![allow(missing_docs, reason = "a test")]

mod common;

use common::job_over;
use job::{Dormer, DormerKind, Job, ValleyAs};
use roof::solution::{MemberKind, Solution};

fn house() -> Job {
    job_over(vec![vec![[0.0, 0.0], [12000.0, 0.0], [12000.0, 9000.0], [0.0, 9000.0]]], 40.0)
}

fn gable() -> Dormer {
    Dormer {
        name: "d".into(),
        kind: DormerKind::Gable,
        wall: 0,
        along: 5000.0,
        back: 700.0,
        width: 1500.0,
        plate: 1900.0,
        pitch_deg: 35.0,
        valley: ValleyAs::LayBoard,
    }
}

fn lean_to() -> Dormer {
    Dormer { kind: DormerKind::LeanTo, pitch_deg: 12.0, ..gable() }
}

#[test]
fn a_gable_dormer_stands() {
    let mut job = house();
    job.dormers.push(gable());
    let s = roof::solve(&job).unwrap_or_else(|e| panic!("{e}"));
    dump(&s);
    let mut job = house();
    job.dormers.push(lean_to());
    let s = roof::solve(&job).unwrap_or_else(|e| panic!("{e}"));
    dump(&s);
}

fn dump(s: &Solution) {
    for m in &s.members {
        if matches!(
            m.kind,
            MemberKind::Stud
                | MemberKind::LayBoard
                | MemberKind::SolePlate
                | MemberKind::Trimmer
                | MemberKind::TrimmingRafter
        ) || m.mark.starts_with("Jack")
            || m.mark.starts_with("Rafter")
            || m.mark.starts_with("Ridge")
            || m.mark.starts_with("Plate-")
        {
            println!(
                "{} {:?} {:.0} {:?}",
                m.mark,
                m.kind,
                m.stock_length_mm,
                m.cuts
                    .iter()
                    .map(|c| format!("{} {:.1}/{:.1} {:?}", c.name, c.face_angle_deg, c.edge_angle_deg, c.against))
                    .collect::<Vec<_>>()
            );
        }
    }
    for n in &s.notices {
        println!("{:?} {} {}: {}", n.level, n.code, n.place, n.text);
    }
}
