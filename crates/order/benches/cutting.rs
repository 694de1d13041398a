//! How long a cutting plan takes. `cargo bench -p order --bench cutting`

use divan::{Bencher, black_box};
use order::cutting::{plan, plan_without_sharing};

#[path = "../tests/cutting_roofs/mod.rs"]
mod cutting_roofs;

fn main() {
    divan::main();
}

/// A roof of up to so many pieces of one section: rafters and jacks.
#[divan::bench(args = [40, 120, 500], sample_count = 20)]
fn roof(bencher: Bencher, pieces: u64) {
    let need = cutting_roofs::roof(300_004, pieces);
    bencher.bench(|| plan(black_box(&need)));
}

/// The same with a box around every piece.
#[divan::bench(args = [40, 120, 500], sample_count = 20)]
fn without_sharing(bencher: Bencher, pieces: u64) {
    let need = cutting_roofs::roof(300_004, pieces);
    bencher.bench(|| plan_without_sharing(black_box(&need)));
}
