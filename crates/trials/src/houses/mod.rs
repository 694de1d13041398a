//! Houses by number: the same number is the same house on every machine.
//!
//! A house is the text of a job file, so that everything goes the way that a
//! user's file goes. [`ordinary`] ones are those that get built: rectangles,
//! wings, porches and bays, with the sections, members and openings that a
//! builder chooses. [`wild`] ones are aimed at trouble.

mod extras;
mod outlines;
mod text;
mod timbers;
mod walls;
mod wild;

use crate::Seed;

/// A house, to be written as a job file in several ways.
#[derive(Clone, Debug)]
pub struct House {
    /// Its number.
    pub number: u64,
    /// What its plan is called.
    pub shape: &'static str,
    /// Outer plate lines and courtyards as they were drawn, mm.
    pub loops: Vec<Vec<[f64; 2]>>,
    /// How far corners of the real walls are out, mm; 0 for some.
    pub out: f64,
    /// All groups of the file but the plan.
    rest: String,
}

/// Mixed into the number, so that plans, errors of walls and errors of tapes are drawn apart.
const OF_WALLS: u64 = 0x5EED_0001;
const OF_TAPES: u64 = 0x5EED_0002;

/// A house as they are built.
#[must_use]
pub fn ordinary(number: u64) -> House {
    let mut seed = Seed::new(number);
    let outline = outlines::ordinary(&mut seed);
    let pitch = seed.of([22.5, 25.0, 27.5, 30.0, 32.5, 35.0, 37.5, 40.0, 42.5, 45.0, 47.5, 50.0, 52.5, 55.0]);
    let pitch = if seed.once_in(6) { seed.stepped(22.0, 55.0, 0.5) } else { pitch };
    let frame = timbers::frame(&mut seed);
    let walls = walls::ordinary(&mut seed, &outline, pitch);
    let extras = extras::extras(&mut seed, &outline, &walls, &frame);
    let out = match seed.below(12) {
        0 | 1 => 0.0,
        2..=5 => seed.between(1.0, 3.0),
        6..=8 => seed.between(3.0, 12.0),
        _ => seed.between(12.0, 30.0),
    };
    let rest = format!("{}{}{}{}", walls.text(), frame.text(), extras.timber, extras.placed);
    House { number, shape: outline.shape, loops: vec![outline.corners], out, rest }
}

/// A house aimed at trouble: stars, turned plans, walls nearly in line, tiny
/// jogs, pitches that differ by next to nothing, sharp corners, courtyards.
#[must_use]
pub fn wild(number: u64) -> House {
    let mut seed = Seed::new(number ^ 0x0BAD_5EED);
    let (shape, loops) = wild::loops(&mut seed);
    let pitch = seed.stepped(22.0, 55.0, 0.5);
    let frame = timbers::frame(&mut seed);
    let walls = wild::walls(&mut seed, &loops, pitch);
    let out = if seed.once_in(2) { 0.0 } else { seed.between(0.0, 30.0) };
    let rest = format!("{}{}", walls.text(), frame.text());
    House { number, shape, loops, out, rest }
}

impl House {
    /// The job file of the house as drawn.
    #[must_use]
    pub fn as_drawn(&self) -> String {
        text::file(self, &text::corners(&self.loops))
    }

    /// The job file of the house as its walls really stand: its corners out by up to [`House::out`].
    #[must_use]
    pub fn as_built(&self) -> String {
        text::file(self, &text::corners(&self.walls_out_by(self.out)))
    }

    /// The job file of the house drawn, its plates measured by tape: every side, and diagonals that fix it, each with
    /// an error of a normal spread of `sigma` mm.
    #[must_use]
    pub fn by_tape(&self, sigma: f64) -> String {
        let mut seed = Seed::new(self.number ^ OF_TAPES);
        let corners = self.loops.first().map_or(&[][..], Vec::as_slice);
        text::file(self, &text::tapes(corners, |length| (length + sigma * seed.normal()).round()))
    }

    /// Its loops with every corner out by up to `most` mm, whole millimetres for half of all houses and tenths for the
    /// others.
    #[must_use]
    pub fn walls_out_by(&self, most: f64) -> Vec<Vec<[f64; 2]>> {
        let mut seed = Seed::new(self.number ^ OF_WALLS);
        let step = seed.of([1.0, 10.0]);
        // A square of this half side lies within the circle.
        let most = most * core::f64::consts::FRAC_1_SQRT_2;
        let mut one = |mm: f64| ((mm + seed.between(-most, most)) * step).round() / step;
        let corners = |ring: &Vec<[f64; 2]>| ring.iter().map(|[x, y]| [one(*x), one(*y)]).collect();
        if most > 0.0 { self.loops.iter().map(corners).collect() } else { self.loops.clone() }
    }
}
