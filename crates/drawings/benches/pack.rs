//! How long a whole pack takes.

#[path = "../tests/fixture/mod.rs"]
mod fixture;

fn main() {
    divan::main();
}

/// The fixture as a house: about 250 timbers and 60 pattern pieces.
fn house() -> roof::solution::Solution {
    let mut solution = fixture::hipped();
    let (members, pieces) = (solution.members.clone(), solution.pieces.clone());
    for copy in 1..4 {
        let shift = f64::from(copy) * 9000.0;
        for mut member in members.clone() {
            member.mark.push_str(&"x".repeat(copy as usize));
            member.count_as.push_str(&"x".repeat(copy as usize));
            member.solid.points.iter_mut().for_each(|p| p[0] += shift);
            solution.members.push(member);
        }
        for mut piece in pieces.clone() {
            piece.mark.push_str(&"x".repeat(copy as usize));
            solution.pieces.push(piece);
        }
    }
    solution
}

#[divan::bench]
fn pack(bencher: divan::Bencher<'_, '_>) {
    let solution = house();
    bencher.bench_local(|| drawings::pack(divan::black_box(&solution)));
}

#[divan::bench]
fn frame_picture(bencher: divan::Bencher<'_, '_>) {
    let solution = house();
    bencher.bench_local(|| drawings::frame_svg(divan::black_box(&solution)));
}
