//! The stiffness of one bar in its own axes, and what its loads do to its ends when these are held.
//!
//! Order everywhere: along, across, turn at the start; then the same at the end.

use super::frame::{Bar, Lie};

/// Places of the two turns.
const TURNS: [usize; 2] = [2, 5];

/// Stiffness of a bar, with its hinges taken out.
#[derive(Clone, Debug)]
pub(super) struct BarMatrix {
    /// Forces at the ends for movements of the ends.
    pub k: [[f64; 6]; 6],
    /// For each hinge, start before end, the share of its moment that goes to the other five.
    releases: [Option<[f64; 6]>; 2],
}

impl BarMatrix {
    /// Engineer's beam theory without shear: 12EI/L³, 6EI/L², 4EI/L, 2EI/L and EA/L; a hinge is condensed out.
    pub fn new(bar: &Bar, lie: Lie) -> Self {
        let l = lie.length;
        let (ea, ei) = (bar.ea / l, bar.ei / l);
        let (a, b) = (12.0 * ei / (l * l), 6.0 * ei / l);
        let mut k = [
            [ea, 0.0, 0.0, -ea, 0.0, 0.0],
            [0.0, a, b, 0.0, -a, b],
            [0.0, b, 4.0 * ei, 0.0, -b, 2.0 * ei],
            [-ea, 0.0, 0.0, ea, 0.0, 0.0],
            [0.0, -a, -b, 0.0, a, -b],
            [0.0, b, 2.0 * ei, 0.0, -b, 4.0 * ei],
        ];
        let mut releases = [None, None];
        for (end, hinged) in [bar.hinge_from, bar.hinge_to].into_iter().enumerate() {
            if hinged {
                releases[end] = Some(release(&mut k, TURNS[end]));
            }
        }
        if bar.hinge_from && bar.hinge_to {
            // What is left across is nought but for rounding.
            for i in [1, 2, 4, 5] {
                k[i] = [0.0; 6];
            }
        }
        Self { k, releases }
    }

    /// Loads on the held ends of the bar as with its hinges.
    pub fn through_hinges(&self, mut ends: [f64; 6]) -> [f64; 6] {
        for (end, share) in self.releases.iter().enumerate() {
            if let Some(share) = share {
                let moment = ends[TURNS[end]];
                for (v, s) in ends.iter_mut().zip(share) {
                    *v -= s * moment;
                }
                ends[TURNS[end]] = 0.0;
            }
        }
        ends
    }
}

/// Take a turn out of a stiffness by the moment there being nought.
fn release(k: &mut [[f64; 6]; 6], turn: usize) -> [f64; 6] {
    let row = k[turn];
    let share = row.map(|v| v / row[turn]);
    for (i, line) in k.iter_mut().enumerate() {
        for (v, r) in line.iter_mut().zip(row) {
            *v -= share[i] * r;
        }
        line[turn] = 0.0;
    }
    k[turn] = [0.0; 6];
    share
}

/// What a load that runs in a straight line from `[along, across]` at the start to that at the end puts on held ends:
/// qL/20 (7, 3), qL²/60 (3, 2) and the like.
pub(super) fn spread_on_ends(l: f64, along: [f64; 2], across: [f64; 2]) -> [f64; 6] {
    let ([p, r], [q, s]) = (along, across);
    [
        l * (2.0 * p + r) / 6.0,
        l * (7.0 * q + 3.0 * s) / 20.0,
        l * l * (3.0 * q + 2.0 * s) / 60.0,
        l * (p + 2.0 * r) / 6.0,
        l * (3.0 * q + 7.0 * s) / 20.0,
        -l * l * (2.0 * q + 3.0 * s) / 60.0,
    ]
}

/// What a load at one place puts on held ends: Pb²(3a+b)/L³, Pab²/L² and the like.
pub(super) fn point_on_ends(l: f64, at: f64, [along, across]: [f64; 2]) -> [f64; 6] {
    let (a, b) = (at / l, 1.0 - at / l);
    [
        along * b,
        across * b * b * (3.0 * a + b),
        across * a * b * b * l,
        along * a,
        across * a * a * (a + 3.0 * b),
        -across * a * a * b * l,
    ]
}

/// Places and weights of Gauss' rule with three points on 0..1: exact here, where a cubic meets a straight line.
const GAUSS: [(f64, f64); 3] =
    [(0.112_701_665_379_258_31, 5.0 / 18.0), (0.5, 8.0 / 18.0), (0.887_298_334_620_741_7, 5.0 / 18.0)];

/// What a load between two places puts on held ends: the sum of its parts.
pub(super) fn part_on_ends(l: f64, [from, to]: [f64; 2], start: [f64; 2], end: [f64; 2]) -> [f64; 6] {
    let mut ends = [0.0; 6];
    for (share, weight) in GAUSS {
        let force = [0, 1].map(|k| (start[k] + (end[k] - start[k]) * share) * weight * (to - from));
        for (v, p) in ends.iter_mut().zip(point_on_ends(l, from + share * (to - from), force)) {
            *v += p;
        }
    }
    ends
}
