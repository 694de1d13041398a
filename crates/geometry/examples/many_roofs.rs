//! Solves many random plans and counts what goes wrong.
//!
//! `cargo run --release -p geometry --example many_roofs -- [count] [seed]`

#[path = "../tests/common/plans.rs"]
mod plans;

use std::collections::BTreeMap;
use std::time::Instant;

use geometry::surface::{SurfaceError, solve};

/// Failures that are printed, with what names the plan again: its number and
/// the seed. A count of one and the seed `seed + number * 1000003` give it back.
const SHOWN: usize = 60;

fn main() {
    let mut arguments = std::env::args().skip(1).map(|a| a.parse::<u64>().unwrap_or_default());
    let (count, seed) = (arguments.next().unwrap_or(10_000), arguments.next().unwrap_or(1));
    let mut answers: BTreeMap<String, u64> = BTreeMap::new();
    let (mut shown, mut solving) = (0, std::time::Duration::ZERO);
    for k in 0..count {
        let mut dice = plans::Dice::new(seed.wrapping_add(k.wrapping_mul(1_000_003)));
        let plan = plans::house(&mut dice);
        let before = Instant::now();
        let answer = solve(&plan.loops, &plan.walls);
        solving += before.elapsed();
        let name = match &answer {
            Ok(_) => "solved".to_owned(),
            Err(SurfaceError::UnlikeInLine { .. }) => "refused: unlike walls in line".to_owned(),
            Err(SurfaceError::NeverCloses { .. }) => "refused: never closes".to_owned(),
            Err(SurfaceError::GableNeverMet { .. }) => "refused: gable never met".to_owned(),
            Err(SurfaceError::AllGables) => "refused: all gables".to_owned(),
            Err(SurfaceError::SlopeAroundShaft { .. }) if plan.loops.len() > 1 => {
                "refused: slope around a shaft".to_owned()
            }
            Err(SurfaceError::SlopeAroundShaft { .. }) => "SHAFT without a courtyard".to_owned(),
            Err(SurfaceError::Lost { what, .. }) => format!("LOST: {what}"),
            Err(SurfaceError::Unsound(failures)) => {
                format!(
                    "UNSOUND: {}",
                    failures.first().map_or_else(String::new, |f| format!("{f:?}").chars().take(12).collect())
                )
            }
            Err(other) => format!("OTHER: {other}"),
        };
        if name.starts_with(|c: char| c.is_uppercase()) && shown < SHOWN {
            shown += 1;
            println!("plan {k} of seed {seed}, {}: {answer:?}", plan.kind);
            if count == 1 {
                println!("{:?}\n{:?}", plan.loops, plan.walls);
            }
        }
        *answers.entry(name).or_default() += 1;
    }
    let each = solving.as_secs_f64() * 1e6 / count.max(1) as f64;
    println!("{count} plans, {each:.1} microseconds each");
    for (name, count) in answers {
        println!("{count:8} {name}");
    }
}
