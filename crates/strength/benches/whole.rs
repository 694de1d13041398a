//! The strength of the example house, all of it.

use divan::Bencher;

fn main() {
    divan::main();
}

#[divan::bench]
fn whole_house(bencher: Bencher<'_, '_>) {
    let text = include_str!("../../../examples/whole-house.toml");
    let job = job::read(text).expect("the example is sound");
    let solution = roof::solve(&job).expect("the example is solved");
    bencher.bench(|| strength::whole::check(&job, &solution));
}
