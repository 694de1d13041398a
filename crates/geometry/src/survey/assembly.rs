//! Which rigid pieces of the plan can be put together in which order, from
//! which corners they share alone.
//!
//! Every reading is a rigid piece of two or three corners. Two pieces that
//! share two corners are one piece; three pieces of which each two share one
//! corner close to a triangle, in two ways that mirror each other
//! (decomposition into triangles, as geometric constraint solvers do it).

use super::triangle::{excess, shape};
use super::{Survey, Turn};
use crate::{Angle, DVec2};

/// A corner in the axes of a piece.
pub(super) type Spot = (usize, DVec2);

/// A triangle none of whose sides is measured directly comes after measured
/// ones of a better shape than this, and before flatter ones.
const UNKNOWN_SHAPE: f64 = 0.1;

/// What is done with pieces; what comes of it is piece `base`.
#[derive(Clone, Copy, Debug)]
pub(super) enum Step {
    /// A piece is laid on another that it shares two corners with.
    Lay { base: usize, other: usize },
    /// Three pieces close to a triangle.
    Close {
        /// Holds `p` and `q`.
        base: usize,
        /// Holds `p` and `r`.
        second: usize,
        /// Holds `q` and `r`.
        third: usize,
        /// The corners of the triangle.
        corners: [usize; 3],
    },
}

/// Pieces, and the steps that put them together.
pub(super) struct Assembly {
    count: usize,
    /// The pieces as measured.
    pub pieces: Vec<Vec<Spot>>,
    /// What to do, in order.
    pub steps: Vec<Step>,
    /// The corners of each piece after all steps, as bits; 0 for those that
    /// became part of another.
    holds: Vec<u64>,
    /// Measured distances.
    lengths: Vec<Option<f64>>,
}

impl Assembly {
    /// The pieces of a survey, put together as far as they go.
    pub fn of(survey: &Survey) -> Self {
        let count = survey.sides.len();
        let mut assembly = Self {
            count,
            pieces: Vec::new(),
            steps: Vec::new(),
            holds: Vec::new(),
            lengths: vec![None; count * count],
        };
        for turn in &survey.turns {
            assembly.add(turn_piece(survey, turn));
        }
        for d in &survey.diagonals {
            assembly.add_length(d.from, d.to, d.length);
        }
        for (k, side) in survey.sides.iter().enumerate() {
            assembly.add_length(k, (k + 1) % count, *side);
        }
        assembly.put_together();
        assembly
    }

    fn add(&mut self, piece: Vec<Spot>) {
        self.holds.push(piece.iter().fold(0, |bits, (k, _)| bits | (1 << k)));
        self.pieces.push(piece);
    }

    /// One more measured distance.
    pub fn add_length(&mut self, from: usize, to: usize, length: f64) {
        for at in [from * self.count + to, to * self.count + from] {
            self.lengths[at] = Some(length);
        }
        self.add(vec![(from, DVec2::ZERO), (to, DVec2::new(length, 0.0))]);
    }

    /// Whether all corners are in one piece.
    pub fn is_whole(&self) -> bool {
        self.holds.iter().filter(|bits| **bits != 0).count() == 1
    }

    /// The pieces that are left, by number.
    pub fn left(&self) -> impl Iterator<Item = usize> {
        self.holds.iter().enumerate().filter(|(_, bits)| **bits != 0).map(|(k, _)| k)
    }

    /// Puts together what can be put together.
    pub fn put_together(&mut self) {
        loop {
            self.lay_all();
            let Some(step) = self.best_triangle() else { return };
            if let Step::Close { base, second, third, .. } = step {
                self.steps.push(step);
                self.merge(base, second);
                self.merge(base, third);
            }
        }
    }

    fn merge(&mut self, base: usize, other: usize) {
        self.holds[base] |= self.holds[other];
        self.holds[other] = 0;
    }

    fn lay_all(&mut self) {
        let mut base = 0;
        while base < self.holds.len() {
            let partner =
                (0..self.holds.len()).find(|k| *k != base && (self.holds[base] & self.holds[*k]).count_ones() >= 2);
            match partner {
                Some(other) => {
                    self.steps.push(Step::Lay { base, other });
                    self.merge(base, other);
                    // It has grown: pieces before it may now share two corners with it, so look from it again.
                }
                None => base += 1,
            }
        }
    }

    /// The triangle of the best shape. Any two pieces share one corner at most
    /// by now, so two corners are in one piece at most.
    fn best_triangle(&self) -> Option<Step> {
        let n = self.count;
        let mut owner: Vec<Option<usize>> = vec![None; n * n];
        let corners: Vec<Vec<usize>> =
            self.holds.iter().map(|bits| (0..n).filter(|k| bits & (1 << k) != 0).collect()).collect();
        for (piece, list) in corners.iter().enumerate() {
            for (a, b) in list.iter().flat_map(|a| list.iter().map(move |b| (a, b))).filter(|(a, b)| a != b) {
                owner[a * n + b] = Some(piece);
            }
        }
        let mut best: Option<(f64, Step)> = None;
        for p in 0..n {
            let at_p: Vec<usize> = self.left().filter(|piece| self.holds[*piece] & (1 << p) != 0).collect();
            for (k, &base) in at_p.iter().enumerate() {
                for &second in at_p.iter().skip(k + 1) {
                    for &q in corners[base].iter().filter(|q| **q != p) {
                        for &r in corners[second].iter().filter(|r| **r != p) {
                            let Some(third) = owner[q * n + r] else { continue };
                            let score = self.score(p, q, r);
                            if best.as_ref().is_none_or(|(most, _)| score > *most) {
                                best = Some((score, Step::Close { base, second, third, corners: [p, q, r] }));
                            }
                        }
                    }
                }
            }
        }
        best.map(|(_, step)| step)
    }

    fn score(&self, p: usize, q: usize, r: usize) -> f64 {
        let length = |a: usize, b: usize| self.lengths[a * self.count + b];
        match (length(p, q), length(q, r), length(r, p)) {
            (Some(a), Some(b), Some(c)) if excess([a, b, c]) > 0.0 => -excess([a, b, c]),
            (Some(a), Some(b), Some(c)) => shape([a, b, c]),
            _ => UNKNOWN_SHAPE,
        }
    }
}

/// The two sides at a measured turn, in their axes: the corner at the origin,
/// the side after it along +x.
fn turn_piece(survey: &Survey, turn: &Turn) -> Vec<Spot> {
    let count = survey.sides.len();
    let (k, before) = (turn.corner, (turn.corner + count - 1) % count);
    let angle = Angle::deg(turn.inside_deg);
    vec![
        (k, DVec2::ZERO),
        ((k + 1) % count, DVec2::new(survey.sides[k], 0.0)),
        (before, DVec2::new(angle.cos(), angle.sin()) * survey.sides[before]),
    ]
}
