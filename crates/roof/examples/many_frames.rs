//! Frame many random roofs and count what comes back:
//! `cargo run --release -p roof --example many_frames [COUNT] [SEED]`.

#[path = "../tests/common/mod.rs"]
mod common;

use std::collections::BTreeMap;

fn main() {
    let mut args = std::env::args().skip(1).filter_map(|a| a.parse::<u64>().ok());
    let (count, first) = (args.next().unwrap_or(1000), args.next().unwrap_or(1));
    let mut causes: BTreeMap<String, (u32, u64)> = BTreeMap::new();
    let mut notices: BTreeMap<String, (u32, u64)> = BTreeMap::new();
    let mut members = 0;
    for k in first..first + count {
        let job = common::random_job(&mut common::Seed::new(k));
        match roof::solve(&job) {
            Ok(solution) => {
                members += solution.members.len();
                for n in &solution.notices {
                    notices.entry(format!("{:?} {}", n.level, n.code)).or_insert((0, k)).0 += 1;
                }
            }
            Err(e) => {
                let name = format!("{e:?}");
                let name: String = name.chars().take_while(|c| c.is_alphanumeric()).collect();
                let entry = causes.entry(name).or_insert((0, k));
                entry.0 += 1;
                if entry.0 <= 3 {
                    println!("seed {k}: {e}");
                }
            }
        }
    }
    let failed: u32 = causes.values().map(|c| c.0).sum();
    println!("{count} roofs, {members} timbers, {failed} refused");
    for (cause, (n, seed)) in causes {
        println!("  {cause}: {n} (first at seed {seed})");
    }
    for (notice, (n, seed)) in notices {
        println!("  notice {notice}: {n} (first at seed {seed})");
    }
}
