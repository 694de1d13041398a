//! What goes on in each timber under each case: axial force, shear and bending at stations along it.

use crate::carrying::flow::Flow;
use crate::carrying::unit::{Role, Unit};
use crate::statics::Load;

/// The same place along a run, mm.
const SAME: f64 = 0.5;

/// Stations along a bar without point loads: its ends and quarters.
const QUARTERS: usize = 4;

/// A place of a run with what goes on there under each case.
#[derive(Clone, Debug)]
pub struct Station {
    /// mm from the foot of the run.
    pub at: f64,
    /// Axial force, N, tension positive.
    pub n: Vec<f64>,
    /// Shear, N.
    pub v: Vec<f64>,
    /// Bending in the plane of the unit, N mm, sagging positive on level timbers.
    pub m: Vec<f64>,
    /// How far it moves square to itself, mm.
    pub moved: Vec<f64>,
}

/// A part of a run between two places where something holds it or meets it.
#[derive(Clone, Debug)]
pub struct Span {
    /// Its bar in the unit.
    pub bar: usize,
    /// From and to, mm along the run.
    pub reach: [f64; 2],
    /// The span that it is part of, between the nearest holds, mm along the run; open at an end that overhangs.
    pub between: [Option<f64>; 2],
    /// Stations from end to end.
    pub stations: Vec<Station>,
    /// The stations stand at even distances with nothing between, so that a parabola lies through any three.
    pub even: bool,
}

/// The spans of a run in its unit.
#[must_use]
pub fn spans(unit: &Unit, flow: &Flow, number: usize, run: usize, cases: usize) -> Vec<Span> {
    let Some(answers) = &flow.answers[number] else { return Vec::new() };
    let held_node = |node: usize| unit.frame.supports.iter().any(|s| s.node == node) || unit.apex == Some(node);
    let holds: Vec<f64> = unit
        .pieces
        .iter()
        .enumerate()
        .filter(|(_, piece)| piece.run == run && piece.role == Role::Timber)
        .flat_map(|(bar, piece)| {
            let part = unit.frame.bars[bar];
            [(part.from, piece.from), (part.to, piece.to)].into_iter().filter(|(node, _)| held_node(*node))
        })
        .map(|(_, at)| at)
        .collect();
    unit.pieces
        .iter()
        .enumerate()
        .filter(|(_, piece)| piece.run == run && piece.role == Role::Timber)
        .map(|(bar, piece)| {
            let length = unit.bar_length(bar);
            let mut places: Vec<f64> = (0..=QUARTERS).map(|k| length * k as f64 / QUARTERS as f64).collect();
            let before = places.len();
            for load in flow.loads[number].iter().flatten() {
                match *load {
                    Load::At { bar: on, at_mm, .. } if on == bar => places.push(at_mm),
                    _ => {}
                }
            }
            places.sort_by(f64::total_cmp);
            places.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
            let even = places.len() == before;
            let stations = places
                .iter()
                .map(|at| {
                    let mut station = Station {
                        at: piece.from + at,
                        n: Vec::with_capacity(cases),
                        v: Vec::with_capacity(cases),
                        m: Vec::with_capacity(cases),
                        moved: Vec::with_capacity(cases),
                    };
                    for case in 0..cases {
                        let forces = answers.get(case).map(|a| &a.bars[bar]);
                        station.n.push(forces.map_or(0.0, |f| f.n(*at)));
                        station.v.push(forces.map_or(0.0, |f| f.v(*at)));
                        station.m.push(forces.map_or(0.0, |f| f.m(*at)));
                        station.moved.push(forces.map_or(0.0, |f| f.deflection(*at)));
                    }
                    station
                })
                .collect();
            let before = holds
                .iter()
                .copied()
                .filter(|h| *h <= piece.from + SAME)
                .fold(None, |a: Option<f64>, h| Some(a.map_or(h, |a| a.max(h))));
            let after = holds
                .iter()
                .copied()
                .filter(|h| *h >= piece.to - SAME)
                .fold(None, |a: Option<f64>, h| Some(a.map_or(h, |a| a.min(h))));
            Span { bar, reach: [piece.from, piece.to], between: [before, after], stations, even }
        })
        .collect()
}

/// A sum of cases with factors.
#[must_use]
pub fn sum(values: &[f64], factors: &[(usize, f64)]) -> f64 {
    factors.iter().map(|(case, factor)| values.get(*case).copied().unwrap_or(0.0) * factor).sum()
}

/// Axial force, shear and bending at one place under a combination.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Acting {
    /// mm from the foot of the run.
    pub at: f64,
    /// N.
    pub n: f64,
    /// N.
    pub v: f64,
    /// N mm.
    pub m: f64,
}

impl Span {
    /// Length between the holds on either side; of an overhang, its own, mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        let [from, to] = [self.between[0].unwrap_or(self.reach[0]), self.between[1].unwrap_or(self.reach[1])];
        to - from
    }

    /// What acts at each station under a combination, and where bending is greatest between.
    pub fn acting<'a>(&'a self, factors: &'a [(usize, f64)]) -> impl Iterator<Item = Acting> + 'a {
        let at =
            move |s: &Station| Acting { at: s.at, n: sum(&s.n, factors), v: sum(&s.v, factors), m: sum(&s.m, factors) };
        let peaks = if self.even { self.stations.windows(3).collect() } else { Vec::new() };
        self.stations.iter().map(at).chain(peaks.into_iter().filter_map(move |w| {
            let [a, b, c] = [at(&w[0]), at(&w[1]), at(&w[2])];
            let bend = a.m - 2.0 * b.m + c.m;
            let t = 0.5 * (a.m - c.m) / bend;
            (t.abs() < 1.0 && bend != 0.0).then_some(Acting {
                at: b.at + t * (c.at - b.at),
                n: b.n + t * (if t > 0.0 { c.n - b.n } else { b.n - a.n }),
                v: 0.0,
                m: b.m - 0.25 * (a.m - c.m) * t,
            })
        }))
    }
}
