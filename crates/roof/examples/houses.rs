//! Roof many houses and count what comes back:
//! `cargo run --release -p roof --example houses ordinary|wild|random COUNT FIRST_SEED [as-built|as-drawn|by-tape]`.
//!
//! Ends with 1 if a house makes the solver panic. Set `SHOW=CODE` to see every house refused or notice given
//! with that code, and `TEXT=SEED` to print the job file of one.

#[path = "../tests/common/mod.rs"]
mod common;

use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;
use std::time::Instant;
use trials::houses::{self, House};

/// Error of a tape, mm: what two people and a good tape come to.
const TAPE_SIGMA: f64 = 3.0;

fn text_of(house: &House, how: &str) -> String {
    match how {
        "as-drawn" => house.as_drawn(),
        "by-tape" => house.by_tape(TAPE_SIGMA),
        _ => house.as_built(),
    }
}

enum Outcome {
    Roofed(Box<roof::solution::Solution>),
    /// Code and words of a refusal.
    Refused(String, String),
    Panicked(String),
}

fn outcome(kind: &str, number: u64, how: &str) -> Outcome {
    let tried = catch_unwind(AssertUnwindSafe(|| {
        let job = match kind {
            "random" => common::random_job(&mut common::Seed::new(number)),
            _ => {
                let house = if kind == "wild" { houses::wild(number) } else { houses::ordinary(number) };
                match job::read(text_of(&house, how)) {
                    Ok(job) => job,
                    Err(faults) => {
                        let first = faults.as_slice().first();
                        let code = first.map_or("?", |fault| fault.code);
                        return Outcome::Refused(
                            format!("read: {code}"),
                            first.map_or(String::new(), |f| f.what.clone()),
                        );
                    }
                }
            }
        };
        match roof::solve(&job) {
            Ok(solution) => Outcome::Roofed(Box::new(solution)),
            Err(e) => Outcome::Refused(e.code().to_owned(), e.to_string()),
        }
    }));
    tried.unwrap_or_else(|cause| {
        let text = cause.downcast_ref::<String>().cloned();
        Outcome::Panicked(text.or(cause.downcast_ref::<&str>().map(|s| (*s).to_owned())).unwrap_or_default())
    })
}

/// How many of one kind, and the seeds of the first.
#[derive(Default)]
struct Seen {
    count: u32,
    first: Vec<u64>,
}

impl Seen {
    fn at(&mut self, seed: u64) {
        self.count += 1;
        if self.first.len() < 8 {
            self.first.push(seed);
        }
    }
}

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let word = |k: usize, or: &str| args.get(k).cloned().unwrap_or_else(|| or.to_owned());
    let number = |k: usize, or: u64| args.get(k).and_then(|a| a.parse().ok()).unwrap_or(or);
    let (kind, count, first, how) = (word(0, "ordinary"), number(1, 1000), number(2, 1), word(3, "as-built"));
    if let Some(seed) = std::env::var("TEXT").ok().and_then(|s| s.parse().ok()) {
        let house = if kind == "wild" { houses::wild(seed) } else { houses::ordinary(seed) };
        print!("{}", text_of(&house, &how));
        return ExitCode::SUCCESS;
    }
    let show = std::env::var("SHOW").unwrap_or_default();
    // A panic is told once, in the table.
    std::panic::set_hook(Box::new(|_| {}));
    let mut refused: BTreeMap<String, Seen> = BTreeMap::new();
    let mut notices: BTreeMap<String, Seen> = BTreeMap::new();
    let (mut members, mut panics, mut slowest) = (0, 0, (0.0, 0));
    for seed in first..first + count {
        let start = Instant::now();
        let outcome = outcome(&kind, seed, &how);
        let took = start.elapsed().as_secs_f64() * 1000.0;
        if took > slowest.0 {
            slowest = (took, seed);
        }
        match outcome {
            Outcome::Roofed(solution) => {
                members += solution.members.len();
                for n in &solution.notices {
                    notices.entry(format!("{:?} {}", n.level, n.code)).or_default().at(seed);
                    if show == n.code {
                        println!("seed {seed}: {}: {}", n.place, n.text);
                    }
                }
            }
            Outcome::Refused(code, words) => {
                let seen = refused.entry(code.clone()).or_default();
                seen.at(seed);
                if seen.count <= 3 || show == code {
                    println!("seed {seed}: {code}: {words}");
                }
            }
            Outcome::Panicked(words) => {
                panics += 1;
                println!("seed {seed}: PANIC: {words}");
                refused.entry("panic".to_owned()).or_default().at(seed);
            }
        }
    }
    let failed: u32 = refused.values().map(|seen| seen.count).sum();
    println!("{count} {kind} houses {how} from seed {first}: {members} timbers, {failed} refused, {panics} panics");
    println!("slowest: {:.0} ms at seed {}", slowest.0, slowest.1);
    for (code, seen) in refused {
        println!("  {code}: {} (seeds {:?})", seen.count, seen.first);
    }
    for (notice, seen) in notices {
        println!("  notice {notice}: {} (seeds {:?})", seen.count, seen.first);
    }
    if panics > 0 { ExitCode::FAILURE } else { ExitCode::SUCCESS }
}
