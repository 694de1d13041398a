//! Seeded random cutting problems like those of real roofs, for tests, benches and the comparison with an outside
//! solver.

use geometry::Angle;
use order::cutting::{Aim, Need, Piece, Sawing, StockLength, Turns};
use order::money::Money;

/// Numbers that look random and are the same everywhere (a linear congruential generator of 64 bits).
pub struct Dice(u64);

impl Dice {
    /// From a seed.
    pub fn new(seed: u64) -> Self {
        let mut dice = Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0xD1B5_4A32_D192_ED03);
        for _ in 0..4 {
            dice.below(2);
        }
        dice
    }

    /// A whole number below this one.
    pub fn below(&mut self, most: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % most.max(1)
    }

    /// A number between two.
    pub fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.below(1_000_001) as f64 / 1e6
    }
}

/// Corners of a bar of a section between two planes `x = at + up * y + across * z`.
pub fn cut_bar(section: [f64; 2], ends: [[f64; 3]; 2]) -> Vec<[f64; 3]> {
    let [thickness, depth] = section;
    let mut points = Vec::new();
    for [at, up, across] in ends {
        for y in [0.0, depth] {
            for z in [-thickness / 2.0, thickness / 2.0] {
                points.push([at + up * y + across * z, y, z]);
            }
        }
    }
    points
}

/// A bar with a plumb and a level cut at the left end, and a plane at the right end.
pub fn with_level_tail(section: [f64; 2], slope: f64, length: f64, right: [f64; 2]) -> Vec<[f64; 3]> {
    let [thickness, depth] = section;
    let mut points = cut_bar(section, [[0.0, slope, 0.0], [length, right[0], right[1]]]);
    // The lower third of the plumb cut is taken off by a level cut: x = c - y / slope, through that corner.
    let y = depth / 3.0;
    let x = slope * y + y / slope;
    for (point, z) in points.iter_mut().take(2).zip([-thickness / 2.0, thickness / 2.0]) {
        *point = [x, 0.0, z];
    }
    points.extend([[slope * y, y, -thickness / 2.0], [slope * y, y, thickness / 2.0]]);
    points
}

fn piece(name: &str, count: u64, points: Vec<[f64; 3]>, turns: Turns) -> Piece {
    let marks = (1..=count).map(|n| format!("{name}.{n}")).collect();
    Piece { marks, points, turns, wants_clean: false }
}

/// Lengths of stock from 1.8 m in steps of 300 mm, `kinds` of them up to at least `longest` mm.
pub fn stock(dice: &mut Dice, kinds: usize, longest: f64) -> Vec<StockLength> {
    let per_metre = dice.between(1.8, 9.5);
    // Half of the price lists go by the metre; in the others every length has its own price, to the penny.
    let by_metre = dice.below(2) == 0;
    let mut lengths: Vec<f64> = (6..=24).map(|n| f64::from(n) * 300.0).collect();
    while lengths.len() > kinds {
        let at = dice.below(lengths.len() as u64) as usize;
        if lengths.iter().enumerate().any(|(n, length)| n != at && *length >= longest) {
            lengths.remove(at);
        }
    }
    let price = |dice: &mut Dice, length: f64| {
        let metres = length / 1000.0;
        let pounds = if by_metre { per_metre * metres } else { per_metre * metres * dice.between(0.94, 1.06) };
        Money((pounds * 100.0).round() as i64 * 100)
    };
    lengths
        .into_iter()
        .map(|length| {
            let cost = price(dice, length);
            StockLength { length, cost, have: None, clean: false, yard: None }
        })
        .collect()
}

/// Rafters and jacks of a hipped roof, or joists and noggins, up to so many pieces.
pub fn roof(seed: u64, most: u64) -> Need {
    let mut dice = Dice::new(seed);
    let depth = [100.0, 125.0, 150.0, 175.0, 200.0][dice.below(5) as usize];
    let section = [47.0, depth];
    let kinds = 6 + dice.below(10) as usize;
    let pieces = match dice.below(4) {
        0 => joists(&mut dice, section, most),
        _ => rafters(&mut dice, section, most),
    };
    let longest =
        pieces.iter().map(|p| p.points.iter().map(|p| p[0]).fold(f64::NEG_INFINITY, f64::max)).fold(0.0, f64::max);
    Need {
        section,
        pieces,
        stock: stock(&mut dice, kinds, longest + 250.0),
        sawing: Sawing { kerf: 3.0, trim: [0.0, 5.0, 10.0][dice.below(3) as usize], keep: 600.0 },
        aim: if dice.below(3) == 0 { Aim::Waste } else { Aim::Cost },
    }
}

fn rafters(dice: &mut Dice, section: [f64; 2], most: u64) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut left = most;
    let slopes = 1 + dice.below(2);
    for side in 0..slopes {
        let pitch = Angle::deg(dice.between(22.0, 52.0));
        let slope = pitch.sin() / pitch.cos();
        let cheek = 1.0 / pitch.cos();
        let length = dice.between(1900.0, 5200.0);
        let level = dice.below(2) == 0;
        let tail = |length: f64, right: [f64; 2]| {
            if level {
                with_level_tail(section, slope, length, right)
            } else {
                cut_bar(section, [[0.0, slope, 0.0], [length, right[0], right[1]]])
            }
        };
        let commons = (left / 3 + dice.below(left / 3 + 1)).min(left);
        left -= commons;
        pieces.push(piece(&format!("R{side}"), commons, tail(length, [slope, 0.0]), Turns::All));
        // Jacks run down by one step each; a pair, two pairs or four pairs of each.
        let step = dice.between(300.0, 560.0);
        let pairs = [1, 2, 4][dice.below(3) as usize];
        let mut jack = length - step * dice.between(0.3, 1.0);
        let mut number = 0;
        while jack > 350.0 && left >= 2 * pairs {
            for (hand, sign) in [("L", 1.0), ("R", -1.0)] {
                let points = tail(jack, [slope, sign * cheek]);
                pieces.push(piece(&format!("J{side}{hand}{number}"), pairs, points, Turns::All));
                left -= pairs;
            }
            jack -= step;
            number += 1;
        }
    }
    pieces
}

fn joists(dice: &mut Dice, section: [f64; 2], most: u64) -> Vec<Piece> {
    let square = |length: f64| cut_bar(section, [[0.0; 3], [length, 0.0, 0.0]]);
    let kinds = 2 + dice.below(5);
    let mut pieces = Vec::new();
    for kind in 0..kinds {
        let count = 1 + dice.below(most / (kinds + 1));
        pieces.push(piece(&format!("C{kind}"), count, square(dice.between(900.0, 5800.0)), Turns::KeepSide));
    }
    let taken: u64 = pieces.iter().map(|p| p.marks.len() as u64).sum();
    let noggins = dice.below(most - taken.min(most - 1)).max(1);
    pieces.push(piece("N", noggins, square(dice.between(330.0, 560.0)), Turns::All));
    pieces
}
