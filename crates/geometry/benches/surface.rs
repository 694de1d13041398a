//! How long a roof takes, check included. `cargo bench -p geometry`.

#[path = "../tests/common/plans.rs"]
mod plans;

use divan::Bencher;
use geometry::surface::{WallProfile, solve};
use geometry::{DVec2, plan};
use plans::Dice;

fn main() {
    divan::main();
}

fn slopes(loops: &[Vec<DVec2>]) -> Vec<WallProfile> {
    let mut dice = Dice::new(1);
    loops.iter().flatten().map(|_| WallProfile::slope(0.0, plans::pitch(&mut dice))).collect()
}

/// A ring of house-sized walls with as many corners as asked for.
fn ring(corners: usize) -> Vec<Vec<DVec2>> {
    (0u64..)
        .map(|seed| vec![plans::ragged_ring(&mut Dice::new(seed), corners)])
        .find(|l| plan::check(l).is_empty())
        .unwrap_or_default()
}

/// A long building with wings, four corners to each.
fn comb(corners: usize) -> Vec<Vec<DVec2>> {
    vec![plans::comb(&mut Dice::new(1), (corners - 4) / 4)]
}

#[divan::bench]
fn rectangle(bencher: Bencher) {
    let loops = vec![[[0.0, 0.0], [10_000.0, 0.0], [10_000.0, 6000.0], [0.0, 6000.0]].map(DVec2::from_array).to_vec()];
    let walls = slopes(&loops);
    bencher.bench(|| solve(&loops, &walls));
}

#[divan::bench(args = [12, 60, 200, 1000, 10_000], sample_count = 10)]
fn ragged_ring(bencher: Bencher, corners: usize) {
    let loops = ring(corners);
    let walls = vec![WallProfile::slope(0.0, 40.0); corners];
    bencher.bench(|| solve(&loops, &walls));
}

#[divan::bench(args = [12, 60, 200, 1000], sample_count = 10)]
fn ragged_ring_of_mixed_pitch(bencher: Bencher, corners: usize) {
    let loops = ring(corners);
    let walls = slopes(&loops);
    bencher.bench(|| solve(&loops, &walls));
}

#[divan::bench(args = [12, 60, 200, 1000, 10_000], sample_count = 10)]
fn comb_of_wings(bencher: Bencher, corners: usize) {
    let loops = comb(corners);
    let walls = vec![WallProfile::slope(0.0, 40.0); loops.iter().map(Vec::len).sum()];
    bencher.bench(|| solve(&loops, &walls));
}

/// Spikes as long as the plan is wide: the hardest for a search by place.
#[divan::bench(args = [60, 200, 1000, 10_000], sample_count = 5)]
fn spiky_star(bencher: Bencher, corners: usize) {
    let radius = corners as f64 * 100.0;
    let loops = (0u64..).map(|seed| vec![plans::star(&mut Dice::new(seed), corners, radius * 0.5, radius)]);
    let loops = loops.take(20).find(|l| plan::check(l).is_empty()).unwrap_or_default();
    let walls = vec![WallProfile::slope(0.0, 40.0); corners];
    bencher.bench(|| solve(&loops, &walls));
}
