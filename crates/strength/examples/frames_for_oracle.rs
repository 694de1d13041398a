//! Prints solved random frames as JSON lines for `scripts/oracle_frames.py`, which compares them with an outside frame
//! analysis.
//!
//! Two kinds in turn: rafter pairs with collar, joist, purlins and struts; and frames of random points and bars. Those
//! that turn out to be mechanisms are left out and counted on the last line.
//!
//! `cargo run --release -p strength --example frames_for_oracle -- COUNT SEED`

use serde_json::{Value, json};
use strength::statics::{Answer, Bar, Frame, FrameFault, Hold, Load, Node, Support};

/// Seeded random numbers (splitmix64).
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * ((self.next() >> 11) as f64 / (1u64 << 53) as f64)
    }

    fn below(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }

    fn chance(&mut self, p: f64) -> bool {
        self.between(0.0, 1.0) < p
    }
}

fn main() {
    let mut arguments = std::env::args().skip(1).map(|a| a.parse::<u64>().unwrap_or_default());
    let (count, seed) = (arguments.next().unwrap_or(100), arguments.next().unwrap_or(1));
    let (mut printed, mut mechanisms, mut number) = (0, 0u64, 0u64);
    while printed < count {
        let mut dice = Dice(seed.wrapping_add(number.wrapping_mul(1_000_003)));
        let (kind, frame) =
            if number.is_multiple_of(2) { ("roof", roof(&mut dice)) } else { ("general", general(&mut dice)) };
        number += 1;
        let loads = loads(&mut dice, &frame);
        match frame.solve(std::slice::from_ref(&loads)) {
            Ok(cases) => {
                printed += 1;
                println!("{}", line(kind, &frame, &loads, &cases.all()[0]));
            }
            Err(FrameFault::Mechanism { .. }) => mechanisms += 1,
            Err(fault) => println!("{}", json!({ "fault": fault.to_string(), "kind": kind })),
        }
    }
    println!("{}", json!({ "mechanisms": mechanisms }));
}

/// Bending and axial stiffness of a softwood of some size.
fn timber(dice: &mut Dice) -> (f64, f64) {
    let (b, h, e) = (dice.between(38.0, 75.0), dice.between(75.0, 250.0), dice.between(8e3, 12e3));
    (e * b * h, e * b * h * h * h / 12.0)
}

/// A pair of rafters of unequal pitch with what else may be there.
fn roof(dice: &mut Dice) -> Frame {
    let (left, right, rise) =
        (dice.between(1500.0, 4000.0), dice.between(1500.0, 4000.0), dice.between(1000.0, 4000.0));
    let up = dice.between(0.15, 0.85);
    let node = |x, y| Node { x, y };
    let mut nodes = vec![
        node(0.0, 0.0),
        node(left * up, rise * up),
        node(left, rise),
        node(left + right * (1.0 - up), rise * up),
        node(left + right, 0.0),
    ];
    let (ea, ei) = timber(dice);
    let mut bars: Vec<Bar> = (0..4).map(|k| Bar::stiff(k, k + 1, ea, ei)).collect();
    bars[1].hinge_to = dice.chance(0.7);
    bars[3].hinge_from = dice.chance(0.1);
    let mut supports = vec![Support::pin(0), if dice.chance(0.5) { Support::pin(4) } else { Support::roller(4) }];
    if dice.chance(0.6) {
        let (ea, ei) = timber(dice);
        bars.push(Bar::pinned(1, 3, ea, ei));
    }
    if dice.chance(0.5) {
        let (ea, ei) = timber(dice);
        nodes.push(node(left, 0.0));
        bars.push(Bar { hinge_from: true, ..Bar::stiff(0, 5, ea, ei) });
        bars.push(Bar { hinge_to: true, ..Bar::stiff(5, 4, ea, ei) });
        if dice.chance(0.5) {
            bars.push(Bar::pinned(5, 1, ea, ei));
            bars.push(Bar::pinned(5, 3, ea, ei));
        } else {
            supports.push(Support::roller(5));
        }
    }
    if dice.chance(0.3) {
        let k = dice.between(100.0, 5000.0);
        supports.push(Support { node: 2, x: Hold::Free, y: Hold::Spring(k), turn: Hold::Free, axis: [1.0, 0.0] });
    }
    Frame { nodes, bars, supports }
}

/// Random points joined by a tree and some more bars.
fn general(dice: &mut Dice) -> Frame {
    let count = 3 + dice.below(6);
    let mut nodes: Vec<Node> = Vec::new();
    while nodes.len() < count {
        let new = Node { x: dice.between(0.0, 6000.0), y: dice.between(0.0, 6000.0) };
        let apart = |n: &Node| ((n.x - new.x).powi(2) + (n.y - new.y).powi(2)).sqrt() > 500.0;
        if nodes.iter().all(apart) {
            nodes.push(new);
        }
    }
    let mut bars: Vec<Bar> = Vec::new();
    let joined = |bars: &[Bar], a, b| bars.iter().any(|x| (x.from, x.to) == (a, b) || (x.from, x.to) == (b, a));
    let tree: Vec<(usize, usize)> = (1..count).map(|k| (dice.below(k), k)).collect();
    let more: Vec<(usize, usize)> = (0..dice.below(count)).map(|_| (dice.below(count), dice.below(count))).collect();
    for (a, b) in tree.into_iter().chain(more) {
        if a != b && !joined(&bars, a, b) {
            let (ea, ei) = timber(dice);
            let (from, to) = if dice.chance(0.5) { (a, b) } else { (b, a) };
            let (hinge_from, hinge_to) = (dice.chance(0.2), dice.chance(0.2));
            bars.push(Bar { from, to, ea, ei, hinge_from, hinge_to });
        }
    }
    let mut supports: Vec<Support> = Vec::new();
    for node in 0..count {
        if supports.is_empty() || dice.chance(0.4) {
            let hold = |dice: &mut Dice, k: f64| match dice.below(4) {
                0 => Hold::Free,
                1 => Hold::Spring(k * dice.between(0.1, 10.0)),
                _ => Hold::Held,
            };
            let (x, y, turn) = (hold(dice, 1e3), hold(dice, 1e3), hold(dice, 1e8));
            supports.push(Support { node, x, y, turn, axis: [1.0, 0.0] });
        }
    }
    Frame { nodes, bars, supports }
}

fn loads(dice: &mut Dice, frame: &Frame) -> Vec<Load> {
    let mut loads = Vec::new();
    for (bar, part) in frame.bars.iter().enumerate() {
        let (a, b) = (frame.nodes[part.from], frame.nodes[part.to]);
        let length = ((a.x - b.x).powi(2) + (a.y - b.y).powi(2)).sqrt();
        let pair = |dice: &mut Dice| [dice.between(-1.0, 1.0), dice.between(-2.0, 1.0)];
        match dice.below(4) {
            0 => loads.push(Load::Spread { bar, fx: pair(dice), fy: pair(dice) }),
            1 => {
                let (from, to) = (dice.between(0.0, 0.4), dice.between(0.5, 1.0));
                let (from_mm, to_mm) = (from * length, to * length);
                loads.push(Load::Part { bar, from_mm, to_mm, fx: pair(dice), fy: pair(dice) });
            }
            _ => {}
        }
        if dice.chance(0.4) {
            let at_mm = dice.between(0.05, 0.95) * length;
            loads.push(Load::At { bar, at_mm, fx: dice.between(-500.0, 500.0), fy: dice.between(-1500.0, 500.0) });
        }
    }
    let node = dice.below(frame.nodes.len());
    let turns = frame.bars.iter().any(|b| (b.from == node && !b.hinge_from) || (b.to == node && !b.hinge_to));
    let m = if turns { dice.between(-1e5, 1e5) } else { 0.0 };
    loads.push(Load::Node { node, fx: dice.between(-900.0, 900.0), fy: -900.0, m });
    loads
}

fn hold(hold: Hold) -> Value {
    match hold {
        Hold::Free => json!(false),
        Hold::Held => json!(true),
        Hold::Spring(k) => json!(k),
    }
}

/// Shares of a bar at which forces and movements between its ends are compared.
const BETWEEN: [f64; 3] = [0.21, 0.5, 0.83];

fn line(kind: &str, frame: &Frame, loads: &[Load], answer: &Answer) -> Value {
    let load = |load: &Load| match *load {
        Load::Node { node, fx, fy, m } => json!({ "node": node, "fx": fx, "fy": fy, "m": m }),
        Load::Spread { bar, fx, fy } => json!({ "bar": bar, "fx": fx, "fy": fy }),
        Load::Part { bar, from_mm, to_mm, fx, fy } => {
            json!({ "bar": bar, "from": from_mm, "to": to_mm, "fx": fx, "fy": fy })
        }
        Load::At { bar, at_mm, fx, fy } => json!({ "bar": bar, "at": at_mm, "fx": fx, "fy": fy }),
    };
    let between = |k: usize| {
        let bar = &answer.bars[k];
        BETWEEN
            .map(|share| share * bar.length)
            .map(|x| json!({ "at": x, "n": bar.n(x), "v": bar.v(x), "m": bar.m(x), "across": bar.deflection(x) }))
    };
    json!({
        "kind": kind,
        "nodes": frame.nodes.iter().map(|n| [n.x, n.y]).collect::<Vec<_>>(),
        "bars": frame.bars.iter().map(|b| json!({
            "from": b.from, "to": b.to, "ea": b.ea, "ei": b.ei, "hinges": [b.hinge_from, b.hinge_to],
        })).collect::<Vec<_>>(),
        "supports": frame.supports.iter().map(|s| json!({
            "node": s.node, "holds": [hold(s.x), hold(s.y), hold(s.turn)],
        })).collect::<Vec<_>>(),
        "loads": loads.iter().map(load).collect::<Vec<_>>(),
        "moved": answer.nodes,
        "reactions": answer.reactions,
        "ends": answer.bars.iter().map(|b| [b.start, b.end]).collect::<Vec<_>>(),
        "between": (0..answer.bars.len()).map(between).collect::<Vec<_>>(),
    })
}
