//! Writes a house as a job file.

use super::House;
use core::fmt::Write as _;

pub(super) fn file(house: &House, plan: &str) -> String {
    format!("format = 1\ntitle = \"{} {}\"\n\n{plan}\n{}", house.shape, house.number, house.rest)
}

fn places(ring: &[[f64; 2]]) -> String {
    let mut text = String::new();
    for [x, y] in ring {
        let _ = write!(text, "[{x}, {y}], ");
    }
    text
}

pub(super) fn corners(loops: &[Vec<[f64; 2]>]) -> String {
    let mut text = String::from("[plan]\n");
    if let Some((outer, holes)) = loops.split_first() {
        let _ = writeln!(text, "corners = [{}]", places(outer));
        if !holes.is_empty() {
            let holes: Vec<String> = holes.iter().map(|hole| format!("[{}]", places(hole))).collect();
            let _ = writeln!(text, "holes = [{}]", holes.join(", "));
        }
    }
    text
}

/// Most corners away that a diagonal is drawn to: near ones are what two people with a tape can reach.
const REACH: usize = 4;

/// The plan by its sides and diagonals, as a tape reads them.
pub(super) fn tapes(corners: &[[f64; 2]], mut read: impl FnMut(f64) -> f64) -> String {
    let count = corners.len();
    let between = |a: usize, b: usize| {
        let (a, b) = (corners[a % count], corners[b % count]);
        ((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1])).sqrt()
    };
    let turn = |k: usize| {
        let (a, b, c) = (corners[(k + count - 1) % count], corners[k], corners[(k + 1) % count]);
        (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
    };
    let sides: Vec<String> = (0..count).map(|k| read(between(k, k + 1)).to_string()).collect();
    let inward: Vec<String> =
        (0..count).filter(|k| turn(*k) < 0.0).map(|k| format!("\"{}\"", job::wall_letter(k))).collect();
    let mut text = format!("[plan]\nsides = [{}]\ntolerance = 12\n", sides.join(", "));
    if !inward.is_empty() {
        let _ = writeln!(text, "inward = [{}]", inward.join(", "));
    }
    text.push_str("\n[plan.diagonals]\n");
    for a in 0..count {
        for b in a + 2..count {
            let apart = (b - a).min(count - (b - a));
            if (2..=REACH).contains(&apart) {
                let _ = writeln!(text, "{}-{} = {}", job::wall_letter(a), job::wall_letter(b), read(between(a, b)));
            }
        }
    }
    text
}
