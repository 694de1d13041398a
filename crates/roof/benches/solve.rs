//! How long a whole solve takes, with its own checks.

#![allow(missing_docs, reason = "a bench")]

fn main() {
    divan::main();
}

fn boathouse() -> job::Job {
    let text = include_str!("../../../examples/boathouse.toml");
    job::read(text).expect("the example is sound")
}

/// From a checked job to the whole document, the example house.
#[divan::bench]
fn whole_solve(bencher: divan::Bencher) {
    let job = boathouse();
    bencher.bench(|| roof::solve(&job).expect("the example can be built"));
}

/// The same of a house with everything fitted that a roof can have.
#[divan::bench]
fn whole_house(bencher: divan::Bencher) {
    let text = include_str!("../../../examples/whole-house.toml");
    let job = job::read(text).expect("the example is sound");
    bencher.bench(|| roof::solve(&job).expect("the example can be built"));
}

/// From the text of the job file to a checked job.
#[divan::bench]
fn read_the_job() -> job::Job {
    boathouse()
}
