//! Plans of ordinary houses, in the sizes that builders choose.

use crate::Seed;

/// Plate lines with what else is known of them.
pub(super) struct Outline {
    pub(super) shape: &'static str,
    /// Anticlockwise, mm.
    pub(super) corners: Vec<[f64; 2]>,
    /// Walls that make good gables, with the width that they close.
    pub(super) ends: Vec<(usize, f64)>,
    /// Walls of each wing, which may have plates of their own.
    pub(super) wings: Vec<Vec<usize>>,
    /// Walls long and open enough for roof windows and dormers, with how far up the slope goes in plan.
    pub(super) open: Vec<(usize, f64)>,
}

/// A size of a builder's: whole blocks mostly, and now and then any whole millimetre.
fn size(seed: &mut Seed, lo: f64, hi: f64) -> f64 {
    match seed.below(6) {
        0 => seed.stepped(lo, hi, 1.0),
        1 => seed.stepped(lo, hi, 5.0),
        2 => seed.stepped(lo, hi, 25.0),
        3 => seed.stepped(lo, hi, 75.0),
        _ => seed.stepped(lo, hi, 100.0),
    }
}

pub(super) fn ordinary(seed: &mut Seed) -> Outline {
    match seed.below(18) {
        0..=3 => rectangle(seed),
        4..=6 => l(seed),
        7..=9 => t(seed),
        10 | 11 => porch(seed),
        12 | 13 => bay(seed),
        14 => u(seed),
        15 => h(seed),
        16 => cross(seed),
        _ => two_wings(seed),
    }
}

fn rectangle(seed: &mut Seed) -> Outline {
    let (l, w) = (size(seed, 5000.0, 14000.0), size(seed, 3600.0, 9000.0));
    let ends = if l >= w { vec![(1, w), (3, w)] } else { vec![(0, l), (2, l)] };
    let open = if l > w + 3000.0 { vec![(0, w / 2.0), (2, w / 2.0)] } else { Vec::new() };
    Outline { shape: "rectangle", corners: vec![[0.0, 0.0], [l, 0.0], [l, w], [0.0, w]], ends, wings: Vec::new(), open }
}

fn l(seed: &mut Seed) -> Outline {
    let (l, w) = (size(seed, 6500.0, 13000.0), size(seed, 3800.0, 7000.0));
    let wing = size(seed, 2700.0, (l - 1500.0).min(7000.0));
    let out = size(seed, 1200.0, 6000.0);
    let corners = vec![[0.0, 0.0], [l, 0.0], [l, w], [wing, w], [wing, w + out], [0.0, w + out]];
    // Past a wing as wide as the house, the slope goes on up to another ridge.
    let open = if l > w + 3000.0 && wing + 300.0 < w { vec![(0, w / 2.0)] } else { Vec::new() };
    Outline { shape: "L", corners, ends: vec![(1, w), (4, wing)], wings: vec![vec![3, 4]], open }
}

/// A wing to the north of the main range; a porch is a small one to the south.
fn t(seed: &mut Seed) -> Outline {
    let (l, w) = (size(seed, 7000.0, 14000.0), size(seed, 4000.0, 8000.0));
    let wing = size(seed, 2400.0, (l - 1600.0).min(7000.0));
    let west = if seed.once_in(3) { (l - wing) / 2.0 } else { size(seed, 600.0, l - wing - 600.0) };
    let (west, out) = (west.floor(), size(seed, 900.0, 6000.0));
    let (east, north) = (west + wing, w + out);
    let corners = vec![[0.0, 0.0], [l, 0.0], [l, w], [east, w], [east, north], [west, north], [west, w], [0.0, w]];
    let open = if l > w + 3000.0 && wing + 300.0 < w { vec![(0, w / 2.0)] } else { Vec::new() };
    Outline { shape: "T", corners, ends: vec![(1, w), (4, wing), (7, w)], wings: vec![vec![3, 4, 5]], open }
}

fn porch(seed: &mut Seed) -> Outline {
    let (l, w) = (size(seed, 7000.0, 14000.0), size(seed, 4500.0, 8500.0));
    let wide = size(seed, 1500.0, 3200.0);
    let (west, out) = (size(seed, 600.0, l - wide - 600.0), size(seed, 900.0, 2400.0));
    let east = west + wide;
    let corners = vec![[0.0, 0.0], [west, 0.0], [west, -out], [east, -out], [east, 0.0], [l, 0.0], [l, w], [0.0, w]];
    let open = if l > w + 3000.0 { vec![(6, w / 2.0)] } else { Vec::new() };
    Outline { shape: "porch", corners, ends: vec![(2, wide), (5, w), (7, w)], wings: vec![vec![1, 2, 3]], open }
}

fn bay(seed: &mut Seed) -> Outline {
    let (l, w) = (size(seed, 7000.0, 12000.0), size(seed, 4500.0, 7500.0));
    let (front, splay) = (size(seed, 1200.0, 2400.0), size(seed, 450.0, 900.0));
    let out = if seed.once_in(2) { splay } else { size(seed, 450.0, 900.0) };
    let west = size(seed, 700.0, l - front - 2.0 * splay - 700.0);
    let corners = vec![
        [0.0, 0.0],
        [west, 0.0],
        [west + splay, -out],
        [west + splay + front, -out],
        [west + front + 2.0 * splay, 0.0],
        [l, 0.0],
        [l, w],
        [0.0, w],
    ];
    let open = if l > w + 3000.0 { vec![(6, w / 2.0)] } else { Vec::new() };
    Outline { shape: "bay", corners, ends: vec![(5, w), (7, w)], wings: Vec::new(), open }
}

fn u(seed: &mut Seed) -> Outline {
    let (l, back) = (size(seed, 9000.0, 16000.0), size(seed, 3800.0, 6000.0));
    let west = size(seed, 2700.0, l / 2.0 - 700.0);
    let wing = if seed.once_in(2) { west } else { size(seed, 2700.0, l / 2.0 - 700.0) };
    let (a, b) = (size(seed, 1200.0, 5000.0), size(seed, 1200.0, 5000.0));
    let b = if seed.once_in(2) { a } else { b };
    let east = l - wing;
    let corners = vec![
        [0.0, 0.0],
        [l, 0.0],
        [l, back + a],
        [east, back + a],
        [east, back],
        [west, back],
        [west, back + b],
        [0.0, back + b],
    ];
    let open = if l > back + 4000.0 && west.max(wing) + 300.0 < back { vec![(0, back / 2.0)] } else { Vec::new() };
    Outline { shape: "U", corners, ends: vec![(2, wing), (6, west)], wings: Vec::new(), open }
}

fn h(seed: &mut Seed) -> Outline {
    let l = size(seed, 10000.0, 16000.0);
    let wing = size(seed, 3000.0, l / 2.0 - 900.0);
    let bar = size(seed, 3000.0, 6000.0);
    let (south, north) = (size(seed, 900.0, 3000.0), size(seed, 900.0, 3000.0));
    let (east, depth) = (l - wing, south + bar + north);
    let corners = vec![
        [0.0, 0.0],
        [wing, 0.0],
        [wing, south],
        [east, south],
        [east, 0.0],
        [l, 0.0],
        [l, depth],
        [east, depth],
        [east, south + bar],
        [wing, south + bar],
        [wing, depth],
        [0.0, depth],
    ];
    let ends = vec![(0, wing), (4, wing), (6, wing), (10, wing)];
    Outline { shape: "H", corners, ends, wings: Vec::new(), open: Vec::new() }
}

fn cross(seed: &mut Seed) -> Outline {
    let (along, across) = (size(seed, 3000.0, 6000.0), size(seed, 3000.0, 6000.0));
    let across = if seed.once_in(2) { along } else { across };
    let [w, s, e, n] = [0; 4].map(|_| size(seed, 900.0, 4000.0));
    let (x0, x1, y0, y1) = (w, w + across, s, s + along);
    let (l, d) = (x1 + e, y1 + n);
    let corners = vec![
        [x0, 0.0],
        [x1, 0.0],
        [x1, y0],
        [l, y0],
        [l, y1],
        [x1, y1],
        [x1, d],
        [x0, d],
        [x0, y1],
        [0.0, y1],
        [0.0, y0],
        [x0, y0],
    ];
    let ends = vec![(0, across), (3, along), (6, across), (9, along)];
    let wings = vec![vec![11, 0, 1], vec![5, 6, 7]];
    Outline { shape: "cross", corners, ends, wings, open: Vec::new() }
}

/// A porch to the south and a wing to the north.
fn two_wings(seed: &mut Seed) -> Outline {
    let (l, w) = (size(seed, 8000.0, 15000.0), size(seed, 4500.0, 8000.0));
    let (porch, wing) = (size(seed, 1500.0, 3600.0), size(seed, 2700.0, 6000.0));
    let (p, q) = (size(seed, 600.0, l - porch - 600.0), size(seed, 600.0, l - wing - 600.0));
    let (south, north) = (size(seed, 900.0, 2400.0), size(seed, 1200.0, 5000.0));
    let corners = vec![
        [0.0, 0.0],
        [p, 0.0],
        [p, -south],
        [p + porch, -south],
        [p + porch, 0.0],
        [l, 0.0],
        [l, w],
        [q + wing, w],
        [q + wing, w + north],
        [q, w + north],
        [q, w],
        [0.0, w],
    ];
    let ends = vec![(2, porch), (5, w), (8, wing), (11, w)];
    let wings = vec![vec![1, 2, 3], vec![7, 8, 9]];
    Outline { shape: "two wings", corners, ends, wings, open: Vec::new() }
}
