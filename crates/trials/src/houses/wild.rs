//! Plans and walls that are aimed at trouble.

use super::walls::Walls;
use crate::Seed;
use geometry::Angle;

type Ring = Vec<[f64; 2]>;

fn tenth(mm: f64) -> f64 {
    (mm * 10.0).round() / 10.0
}

pub(super) fn loops(seed: &mut Seed) -> (&'static str, Vec<Ring>) {
    let (shape, mut loops) = match seed.below(9) {
        0 => ("star", vec![star(seed, 0.6)]),
        1 => ("sharp star", vec![star(seed, 0.35)]),
        2 => ("jogs", vec![jogs(seed)]),
        3 => ("nearly in line", vec![nearly_in_line(seed)]),
        4 => ("courtyard", courtyard(seed)),
        5 => ("round", vec![round(seed)]),
        6 => ("skew", vec![skew(seed)]),
        7 => ("sharp corner", vec![sharp(seed)]),
        _ => ("blocks", vec![blocks(seed)]),
    };
    if seed.once_in(3) {
        let turn = Angle::deg(seed.between(0.0, 360.0));
        let (s, c) = (turn.sin(), turn.cos());
        for place in loops.iter_mut().flatten() {
            *place = [tenth(place[0] * c - place[1] * s), tenth(place[0] * s + place[1] * c)];
        }
    }
    (shape, loops)
}

/// Least side of a plan that is drawn, mm: walls are as long as plates are wide.
const SHORTEST: f64 = 600.0;

fn star(seed: &mut Seed, least: f64) -> Ring {
    loop {
        let n = 3 + seed.below(8);
        let radius = seed.between(4000.0, 9000.0);
        let ring: Ring = (0..n)
            .map(|k| {
                let part = (k as f64 + seed.between(-0.3, 0.3)) / n as f64;
                let (angle, r) = (Angle::deg(360.0 * part), radius * seed.between(least, 1.0));
                [tenth(r * angle.cos()), tenth(r * angle.sin())]
            })
            .collect();
        if shortest(&ring) > SHORTEST {
            return ring;
        }
    }
}

fn shortest(ring: &Ring) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter()
        .zip(next)
        .map(|(a, b)| ((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1])).sqrt())
        .fold(f64::INFINITY, f64::min)
}

/// A rectangle whose long walls step out and in by next to nothing.
fn jogs(seed: &mut Seed) -> Ring {
    let (l, w) = (seed.stepped(8000.0, 15000.0, 100.0), seed.stepped(4500.0, 8000.0, 100.0));
    let mut ring = vec![[0.0, 0.0]];
    let out = tenth(seed.between(0.6, 60.0));
    let (a, b) = (seed.between(1000.0, l / 2.0 - 500.0).round(), seed.between(l / 2.0 + 500.0, l - 1000.0).round());
    let deep = seed.of([1200.0, 2500.0, 4000.0]);
    ring.extend([[l, 0.0], [l, w + out], [b, w + out], [b, w + deep], [a, w + deep], [a, w], [0.0, w]]);
    if seed.once_in(2) {
        let south = tenth(seed.between(0.6, 60.0));
        let c = seed.between(1000.0, l - 3000.0).round();
        ring.splice(1..1, [[c, 0.0], [c, -1500.0], [c + 2000.0, -1500.0], [c + 2000.0, -south]]);
        if let Some(end) = ring.get_mut(5) {
            end[1] = -south;
        }
    }
    ring
}

/// A rectangle with corners in its sides that hardly bend.
fn nearly_in_line(seed: &mut Seed) -> Ring {
    let (l, w) = (seed.stepped(6000.0, 12000.0, 100.0), seed.stepped(4500.0, 8000.0, 100.0));
    let bend = |seed: &mut Seed| tenth(seed.between(-40.0, 40.0));
    let (p, q) = (seed.between(0.2, 0.8), seed.between(0.2, 0.8));
    let mut ring = vec![[0.0, 0.0], [(l * p).round(), bend(seed)], [l, 0.0], [l, w]];
    if seed.once_in(2) {
        ring.push([(l * q).round(), w + bend(seed)]);
    }
    ring.push([0.0, w]);
    if seed.once_in(2) {
        ring.push([bend(seed), (w * q).round()]);
    }
    ring
}

fn courtyard(seed: &mut Seed) -> Vec<Ring> {
    let (l, w) = (seed.stepped(11000.0, 18000.0, 50.0), seed.stepped(11000.0, 16000.0, 50.0));
    let mut side = |lo: f64| lo + seed.stepped(0.0, 1500.0, 10.0);
    let (west, south, east, north) = (side(3000.0), side(3000.0), l - side(3000.0), w - side(3000.0));
    let outer = vec![[0.0, 0.0], [l, 0.0], [l, w], [0.0, w]];
    vec![outer, vec![[west, south], [west, north], [east, north], [east, south]]]
}

/// Many short walls round a circle.
fn round(seed: &mut Seed) -> Ring {
    let n = 5 + seed.below(12);
    let radius = seed.between(2500.0, 5000.0);
    let turn = seed.between(0.0, 1.0);
    (0..n)
        .map(|k| Angle::deg(360.0 * (k as f64 + turn) / n as f64))
        .map(|a| [tenth(radius * a.cos()), tenth(radius * a.sin())])
        .collect()
}

/// A house on a plot that is nowhere square.
fn skew(seed: &mut Seed) -> Ring {
    let (l, w) = (seed.between(7000.0, 13000.0), seed.between(4500.0, 7500.0));
    let mut at =
        |x: f64, y: f64| [(x + seed.between(-900.0, 900.0)).round(), (y + seed.between(-900.0, 900.0)).round()];
    let mut ring = vec![at(0.0, 0.0), at(l, 0.0), at(l, w)];
    ring.extend([at(l * 0.5, w), at(l * 0.5, w + 3500.0), at(0.0, w + 3500.0)]);
    ring
}

/// A plan with one very sharp corner.
fn sharp(seed: &mut Seed) -> Ring {
    let (l, w) = (seed.stepped(7000.0, 14000.0, 100.0), seed.stepped(3500.0, 7000.0, 100.0));
    let x = seed.stepped(1000.0, l / 2.0, 50.0);
    match seed.below(3) {
        0 => vec![[0.0, 0.0], [l, 0.0], [x, w]],
        1 => vec![[0.0, 0.0], [l, 0.0], [x, (w / 3.0).round()], [0.0, w]],
        _ => vec![[0.0, 0.0], [l, 0.0], [l, w], [l - x, (w / 4.0).round()], [0.0, w]],
    }
}

/// Square blocks set against one another by any number of millimetres.
fn blocks(seed: &mut Seed) -> Ring {
    let mut low = Vec::new();
    let mut high = Vec::new();
    let mut x = 0.0;
    let (mut south, mut north) = (0.0, 6000.0);
    for _ in 0..2 + seed.below(3) {
        let end = x + seed.stepped(2200.0, 6000.0, 1.0);
        low.extend([[x, south], [end, south]]);
        high.extend([[x, north], [end, north]]);
        x = end;
        let step =
            |seed: &mut Seed| seed.of([170.0, 250.0, 400.0, 600.0, 900.0, 1500.0, 2400.0]) * seed.of([-1.0, 1.0]);
        south = tenth(south + step(seed));
        north = tenth((north + step(seed)).max(south + 2500.0));
    }
    high.reverse();
    low.extend(high);
    low
}

/// Unequal pitches, some by fractions of a degree, and a gable now and then.
pub(super) fn walls(seed: &mut Seed, loops: &[Ring], pitch: f64) -> Walls {
    let count = loops.iter().map(Vec::len).sum();
    let mut walls = Walls::plain(count, pitch);
    walls.edges(seed);
    let by = seed.of([0.0, 0.0, 0.1, 0.7, 6.0]);
    for own in &mut walls.own {
        if by > 0.0 && seed.once_in(3) {
            own.pitch = Some(((pitch + seed.between(-by, by)) * 100.0).round() / 100.0);
        }
    }
    if seed.once_in(4) {
        let k = seed.below(count as u64) as usize;
        if let Some(own) = walls.own.get_mut(k) {
            own.gable = true;
            own.pitch = None;
        }
    }
    if seed.once_in(8) {
        let k = seed.below(count as u64) as usize;
        if let Some(own) = walls.own.get_mut(k) {
            own.plate = Some(seed.stepped(-400.0, 400.0, 25.0));
        }
        walls.fixed = true;
    }
    walls
}
