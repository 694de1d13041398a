//! Prints the timbers of solved houses as JSON lines for `scripts/oracle_solids.py`, which builds them with an outside
//! solid library and looks whether they are closed and apart.
//!
//! Ordinary houses, a line each: two of three with their walls as they really stand, every third measured by tape. A
//! house that gets no roof is a line that says why.
//!
//! `cargo run --release -p roof --example solids_for_oracle -- COUNT FIRST_SEED`

use serde_json::{Value, json};
use trials::houses;

/// Error of a tape, mm: what two people and a good tape come to.
const TAPE_SIGMA: f64 = 3.0;

/// Every how many houses one is by tape.
const TAPE_EVERY: u64 = 3;

fn main() {
    let mut arguments = std::env::args().skip(1).map(|a| a.parse::<u64>().unwrap_or_default());
    let (count, first) = (arguments.next().unwrap_or(300), arguments.next().unwrap_or(1));
    for seed in first..first + count {
        println!("{}", line_of(seed));
    }
}

fn line_of(seed: u64) -> Value {
    let house = houses::ordinary(seed);
    let by_tape = seed.is_multiple_of(TAPE_EVERY);
    let (how, text) = if by_tape { ("by tape", house.by_tape(TAPE_SIGMA)) } else { ("as built", house.as_built()) };
    match roofed(text) {
        Ok(members) => json!({ "seed": seed, "how": how, "members": members }),
        Err(why) => json!({ "seed": seed, "how": how, "fault": why }),
    }
}

/// Mark, net volume and solid of every timber.
fn roofed(text: String) -> Result<Vec<Value>, String> {
    let job = job::read(text).map_err(|faults| {
        let what: Vec<&str> = faults.as_slice().iter().map(|f| f.what.as_str()).collect();
        what.join("; ")
    })?;
    let solution = roof::solve(&job).map_err(|error| format!("{}: {error}", error.code()))?;
    let members = solution.members.iter();
    Ok(members
        .map(|m| json!({ "mark": m.mark, "m3": m.volume_m3, "points": m.solid.points, "faces": m.solid.faces }))
        .collect())
}
