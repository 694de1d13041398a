//! Random plans that aim at trouble: near ties, notches, shared lines.

// Each test and example uses the part that it needs.
#![allow(dead_code)]

use geometry::surface::{ProfileStep, Slope, WallProfile};
use geometry::{Angle, DVec2, plan};

/// A small seeded generator (splitmix64), so that a seed names a plan.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x5EA7_C075)
    }

    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number from `low` up to but not including `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * ((self.bits() >> 11) as f64 / (1u64 << 53) as f64)
    }

    /// A whole number from `low` to `high`, both included.
    pub fn whole(&mut self, low: usize, high: usize) -> usize {
        low + (self.bits() % (high - low + 1) as u64) as usize
    }

    pub fn chance(&mut self, of_one: f64) -> bool {
        self.between(0.0, 1.0) < of_one
    }
}

/// Loops of corners.
pub type Loops = Vec<Vec<DVec2>>;

/// A plan with its walls and what it is, for messages.
#[derive(Clone, Debug)]
pub struct Plan {
    pub kind: &'static str,
    pub loops: Loops,
    pub walls: Vec<WallProfile>,
}

/// Corners to the nearest 0.1 mm.
pub fn snapped(p: DVec2) -> DVec2 {
    DVec2::new((p.x / plan::GRID).round() * plan::GRID, (p.y / plan::GRID).round() * plan::GRID)
}

/// A star-shaped loop of `n` corners round the datum, with radii from
/// `inner` to `outer`.
pub fn star(dice: &mut Dice, n: usize, inner: f64, outer: f64) -> Vec<DVec2> {
    (0..n)
        .map(|k| {
            let turn = Angle::deg(360.0 * (k as f64 + dice.between(-0.35, 0.35)) / n as f64);
            let radius = dice.between(inner, outer);
            snapped(DVec2::new(turn.cos(), turn.sin()) * radius)
        })
        .collect()
}

/// A ragged ring: like a star, but with walls of one size whatever `n`: about
/// half a metre, so that ten thousand of them stay within 1 km.
pub fn ragged_ring(dice: &mut Dice, n: usize) -> Vec<DVec2> {
    let radius = n as f64 * 500.0 / core::f64::consts::TAU;
    star(dice, n, radius, radius + 500.0)
}

/// A comb: a long building with wings of random length and spacing on its
/// back, `4 * wings + 4` corners. Sizes are those of houses, smaller when
/// there are so many wings that they would not fit within 1 km otherwise.
pub fn comb(dice: &mut Dice, wings: usize) -> Vec<DVec2> {
    let unit = if wings > 200 { 10.0 } else { 100.0 };
    let tenth = |dice: &mut Dice, low: usize, high: usize| dice.whole(low, high) as f64 * unit;
    let depth = 70.0 * unit;
    let start = -(wings as f64) * 39.0 * unit;
    let mut corners = Vec::new();
    let mut x = start;
    let mut back = Vec::new();
    for _ in 0..wings {
        let gap = tenth(dice, 15, 60);
        let width = tenth(dice, 20, 60);
        let reach = tenth(dice, 10, 80);
        back.extend([
            DVec2::new(x + gap, depth),
            DVec2::new(x + gap, depth + reach),
            DVec2::new(x + gap + width, depth + reach),
            DVec2::new(x + gap + width, depth),
        ]);
        x += gap + width;
    }
    x += 30.0 * unit;
    corners.extend([DVec2::new(start, 0.0), DVec2::new(x, 0.0), DVec2::new(x, depth)]);
    corners.extend(back.into_iter().rev());
    corners.push(DVec2::new(start, depth));
    corners
}

/// The outline of a union of rectangles on a grid of 0.1 m, with courtyards.
/// `None` when it falls apart.
pub fn rectangles(dice: &mut Dice, count: usize) -> Option<Loops> {
    let boxes: Vec<[i64; 4]> = (0..count)
        .map(|_| {
            let (x, y) = (dice.whole(0, 120) as i64, dice.whole(0, 120) as i64);
            let (w, h) = (dice.whole(15, 120) as i64, dice.whole(15, 80) as i64);
            if dice.chance(0.5) { [x, y, x + w, y + h] } else { [x, y, x + h, y + w] }
        })
        .collect();
    let cuts = |low: usize| {
        let mut all: Vec<i64> = boxes.iter().flat_map(|b| [b[low], b[low + 2]]).collect();
        all.sort_unstable();
        all.dedup();
        all
    };
    let (xs, ys) = (cuts(0), cuts(1));
    let full = |i: i64, j: i64| {
        let inside = |k: i64, list: &[i64]| k >= 0 && (k as usize) < list.len() - 1;
        inside(i, &xs)
            && inside(j, &ys)
            && boxes.iter().any(|b| {
                let (x, y) = (xs[i as usize], ys[j as usize]);
                b[0] <= x && x < b[2] && b[1] <= y && y < b[3]
            })
    };
    // Sides of full cells next to empty ones, the full cell on the left.
    let mut sides: Vec<((i64, i64), (i64, i64))> = Vec::new();
    for i in 0..xs.len() as i64 - 1 {
        for j in 0..ys.len() as i64 - 1 {
            if full(i, j) {
                let around = [
                    ((i, j - 1), ((i, j), (i + 1, j))),
                    ((i + 1, j), ((i + 1, j), (i + 1, j + 1))),
                    ((i, j + 1), ((i + 1, j + 1), (i, j + 1))),
                    ((i - 1, j), ((i, j + 1), (i, j))),
                ];
                sides.extend(around.into_iter().filter(|((a, b), _)| !full(*a, *b)).map(|(_, side)| side));
            }
        }
    }
    let mut loops: Loops = Vec::new();
    while let Some(first) = sides.pop() {
        let mut chain = vec![first];
        loop {
            let end = chain.last()?.1;
            if end == first.0 {
                break;
            }
            let next = sides.iter().position(|s| s.0 == end)?;
            chain.push(sides.swap_remove(next));
        }
        let dir = |s: &((i64, i64), (i64, i64))| (s.1.0 - s.0.0, s.1.1 - s.0.1);
        let ring: Vec<DVec2> = (0..chain.len())
            .filter(|&k| dir(&chain[k]) != dir(&chain[(k + chain.len() - 1) % chain.len()]))
            .map(|k| {
                let (i, j) = chain[k].0;
                DVec2::new(xs[i as usize] as f64 * 100.0, ys[j as usize] as f64 * 100.0)
            })
            .collect();
        loops.push(ring);
    }
    let area =
        |ring: &[DVec2]| -> f64 { ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| a.perp_dot(*b)).sum() };
    loops.sort_by(|a, b| area(b).total_cmp(&area(a)));
    let one_piece = loops.iter().filter(|r| area(r) > 0.0).count() == 1;
    (one_piece && plan::check(&loops).is_empty()).then_some(loops)
}

/// How the walls of a plan slope.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walls {
    /// One pitch for all.
    Equal,
    /// Each its own pitch.
    Mixed,
    /// Mixed, with some gables.
    Gabled,
    /// Mixed or equal, with half hips, gablets, raised plates and mansards.
    Profiled,
}

/// A pitch in whole degrees, 20 to 70.
pub fn pitch(dice: &mut Dice) -> f64 {
    dice.whole(20, 70) as f64
}

/// Profiles for `count` walls.
pub fn walls(dice: &mut Dice, count: usize, kind: Walls) -> Vec<WallProfile> {
    let common = pitch(dice);
    let equal = kind == Walls::Equal || (kind == Walls::Profiled && dice.chance(0.5));
    (0..count)
        .map(|_| {
            let pitch = if equal { common } else { pitch(dice) };
            match kind {
                Walls::Gabled if dice.chance(0.2) => WallProfile::gable(0.0),
                Walls::Profiled if dice.chance(0.25) => profile(dice, pitch),
                _ => WallProfile::slope(0.0, pitch),
            }
        })
        .collect()
}

/// A half hip, gablet, raised plate or mansard.
fn profile(dice: &mut Dice, pitch_deg: f64) -> WallProfile {
    let height = dice.whole(2, 30) as f64 * 100.0;
    let step = |from_height: f64, slope: Slope| ProfileStep { from_height, slope };
    let steps = match dice.whole(0, 3) {
        0 => vec![step(0.0, Slope::Vertical), step(height, Slope::Pitch(pitch_deg))],
        1 => vec![step(0.0, Slope::Pitch(pitch_deg)), step(height, Slope::Vertical)],
        2 => return WallProfile::slope(height / 4.0, pitch_deg),
        _ => vec![step(0.0, Slope::Pitch(pitch_deg)), step(height, Slope::Pitch(pitch(dice)))],
    };
    WallProfile { plate_height: 0.0, steps }
}

/// Turns a plan round the datum and puts its corners on the grid again.
pub fn turned(loops: &Loops, degrees: f64) -> Loops {
    let turn = Angle::deg(degrees);
    let axis = DVec2::new(turn.cos(), turn.sin());
    loops.iter().map(|ring| ring.iter().map(|p| snapped(axis.rotate(*p))).collect()).collect()
}

/// The plan in a mirror, with its walls in their new order.
pub fn mirrored(loops: &Loops, walls: &[WallProfile]) -> (Loops, Vec<WallProfile>) {
    let mut base = 0;
    let (mut new_loops, mut new_walls) = (Vec::new(), Vec::new());
    for ring in loops {
        new_loops.push(ring.iter().rev().map(|p| DVec2::new(-p.x, p.y)).collect());
        // Wall k from corner k to k+1 becomes the one before the last k.
        let n = ring.len();
        new_walls.extend((0..n).map(|k| walls[base + (2 * n - 2 - k) % n].clone()));
        base += n;
    }
    (new_loops, new_walls)
}

/// Cuts a notch or a bay into one wall.
fn notched(dice: &mut Dice, loops: &mut Loops) {
    let ring = &mut loops[0];
    let k = dice.whole(0, ring.len() - 1);
    let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
    let (way, length) = ((b - a).normalize_or_zero(), a.distance(b));
    let depth = dice.between(-1500.0, 1500.0);
    let (from, to) = (dice.between(0.15, 0.45) * length, dice.between(0.55, 0.85) * length);
    let inward = way.perp() * depth;
    let bay = [a + way * from, a + way * from + inward, a + way * to + inward, a + way * to];
    let corners = if dice.chance(0.5) { bay.to_vec() } else { vec![bay[0], (bay[1] + bay[2]) * 0.5, bay[3]] };
    let corners: Vec<DVec2> = corners.into_iter().map(snapped).collect();
    ring.splice(k + 1..k + 1, corners);
}

/// Moves one corner by 0.1 to 5 mm, so that what met now nearly meets.
fn nudged(dice: &mut Dice, loops: &mut Loops) {
    let ring_number = dice.whole(0, loops.len() - 1);
    let ring = &mut loops[ring_number];
    let k = dice.whole(0, ring.len() - 1);
    let step = 0.1 * dice.whole(1, 50) as f64;
    let axis = [DVec2::X, -DVec2::X, DVec2::Y, -DVec2::Y][dice.whole(0, 3)];
    ring[k] = snapped(ring[k] + axis * step);
}

/// A plan of 4 to about 24 corners that passes the plan check.
pub fn house(dice: &mut Dice) -> Plan {
    loop {
        let (mut kind, mut loops) = if dice.chance(0.5) {
            let count = dice.whole(1, 5);
            match rectangles(dice, count) {
                Some(loops) => ("rectangles", loops),
                None => continue,
            }
        } else {
            let (n, outer) = (dice.whole(4, 20), dice.between(5000.0, 12_000.0));
            let inner = outer * dice.between(0.3, 0.9);
            let mut loops = vec![star(dice, n, inner, outer)];
            if dice.chance(0.15) {
                let corners = dice.whole(3, 8);
                let mut yard = star(dice, corners, inner * 0.2, inner * 0.6);
                yard.reverse();
                loops.push(yard);
            }
            ("star", loops)
        };
        match dice.whole(0, 5) {
            0 => {
                notched(dice, &mut loops);
                kind = if kind == "star" { "notched star" } else { "notched rectangles" };
            }
            1 => {
                nudged(dice, &mut loops);
                kind = if kind == "star" { "nudged star" } else { "nudged rectangles" };
            }
            2 => {
                loops = turned(&loops, dice.between(0.0, 360.0));
                kind = if kind == "star" { "turned star" } else { "turned rectangles" };
            }
            _ => {}
        }
        if plan::check(&loops).is_empty() {
            let count = loops.iter().map(Vec::len).sum();
            let how = [Walls::Equal, Walls::Mixed, Walls::Gabled, Walls::Profiled][dice.whole(0, 3)];
            let walls = walls(dice, count, how);
            return Plan { kind, loops, walls };
        }
    }
}
