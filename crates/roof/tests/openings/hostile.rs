//! Sizes that no file would hold, straight into the solver: refused, never a
//! panic.

use crate::common::job_over;
use job::{Distance, Dormer, DormerKind, Opening, OpeningKind, Section, ValleyAs};
use roof::SolveError;

const WILD: [f64; 9] = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1e9, -1.0, 0.0, 1e-9, 1e9, 1e300];

fn refused(job: &job::Job, what: &str) {
    match roof::solve(job) {
        Ok(_) | Err(SolveError::Opening { .. }) => {}
        Err(e) => panic!("{what}: {e}"),
    }
}

#[test]
fn wild_sizes_are_refused() {
    let mut house = job_over(vec![vec![[0.0, 0.0], [9000.0, 0.0], [9000.0, 6000.0], [0.0, 6000.0]]], 40.0);
    house.timber.parts.ceiling_joist = Some(Section { thickness: 47.0, depth: 125.0 });
    for kind in [OpeningKind::RoofWindow, OpeningKind::Chimney, OpeningKind::Hatch] {
        for wild in WILD {
            for field in 0..6 {
                let pick = |k: usize, tame: f64| if k == field { wild } else { tame };
                let opening = Opening {
                    name: "o".into(),
                    kind,
                    wall: if field == 5 { 99 } else { 0 },
                    along: pick(0, 4000.0),
                    up: Distance::Plan(pick(1, 1500.0)),
                    width: pick(2, 700.0),
                    height: pick(3, 700.0),
                    flue_wall: (field == 4).then_some(wild),
                };
                let mut job = house.clone();
                job.openings.push(opening);
                refused(&job, &format!("{kind:?} {field} {wild}"));
            }
        }
    }
    for kind in [DormerKind::Gable, DormerKind::LeanTo] {
        for wild in WILD {
            for field in 0..6 {
                let pick = |k: usize, tame: f64| if k == field { wild } else { tame };
                let dormer = Dormer {
                    name: "d".into(),
                    kind,
                    wall: if field == 5 { 99 } else { 0 },
                    along: pick(0, 4000.0),
                    back: pick(1, 600.0),
                    width: pick(2, 1200.0),
                    plate: pick(3, 1500.0),
                    pitch_deg: pick(4, 15.0),
                    valley: ValleyAs::LayBoard,
                };
                let mut job = house.clone();
                job.dormers.push(dormer);
                refused(&job, &format!("{kind:?} {field} {wild}"));
            }
        }
    }
}
