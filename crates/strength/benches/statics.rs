//! How long frames and beams take, balance check included. `cargo bench -p strength --bench statics`

use divan::{Bencher, black_box};
use strength::statics::{Bar, Beam, BeamLoad, Frame, Load, Node, Support};

fn main() {
    divan::main();
}

/// A pair of rafters with five bars each, a collar and a joist: 12 nodes.
fn rafter_pair() -> Frame {
    let (ea, ei) = (8.25e7, 1.55e11);
    let nodes = (0..=10)
        .map(|k| f64::from(k) * 480.0)
        .map(|x| Node { x, y: 0.7 * (2400.0 - (x - 2400.0).abs()) })
        .chain([Node { x: 2400.0, y: 0.0 }])
        .collect();
    let mut bars: Vec<Bar> = (0..10).map(|k| Bar { hinge_to: k == 4, ..Bar::stiff(k, k + 1, ea, ei) }).collect();
    bars.push(Bar::pinned(2, 8, ea, ei));
    bars.push(Bar { hinge_from: true, ..Bar::stiff(0, 11, ea, ei) });
    bars.push(Bar { hinge_to: true, ..Bar::stiff(11, 10, ea, ei) });
    Frame { nodes, bars, supports: vec![Support::pin(0), Support::roller(10)] }
}

fn eight_cases() -> Vec<Vec<Load>> {
    (0..8)
        .map(|case| {
            let w = -0.1 * f64::from(case + 1);
            (0..10).map(|bar| Load::Spread { bar, fx: [w, w], fy: [w, w] }).collect()
        })
        .collect()
}

#[divan::bench]
fn rafter_pair_of_12_nodes_8_cases(bencher: Bencher) {
    let (frame, cases) = (rafter_pair(), eight_cases());
    bencher.bench_local(|| black_box(&frame).solve(black_box(&cases)));
}

#[divan::bench]
fn rafter_pair_made_ready(bencher: Bencher) {
    let frame = rafter_pair();
    bencher.bench_local(|| black_box(&frame).prepare().map(drop));
}

#[divan::bench]
fn ten_combinations_with_extremes(bencher: Bencher) {
    let frame = rafter_pair();
    let solved = frame.solve(&eight_cases()).expect("the frame stands");
    bencher.bench_local(|| {
        (0..10)
            .map(|k| {
                let factors = [(0, 1.35), (k % 8, 1.5), ((k + 3) % 8, 0.75)];
                (0..13).filter_map(|bar| solved.bar(bar, &factors)).map(|b| b.extremes().m_most.value).sum::<f64>()
            })
            .sum::<f64>()
    });
}

#[divan::bench]
fn beam_on_3_supports_8_cases(bencher: Bencher) {
    let beam = Beam { length: 4800.0, ei: 1.55e11, supports: vec![0.0, 2400.0, 4800.0], hinges: vec![] };
    let cases: Vec<Vec<BeamLoad>> = (0..8)
        .map(|k| {
            let (at, w) = (600.0 * f64::from(k), 0.1 * f64::from(k));
            vec![BeamLoad::Spread { from: 0.0, to: 4800.0, w: [w, w] }, BeamLoad::At { at, force: 900.0 }]
        })
        .collect();
    bencher.bench_local(|| black_box(&beam).solve(black_box(&cases)));
}
