//! Straight beams on several supports, as the carpenter sees them: loads and sag down, reactions up.

use super::frame::finite;
use super::{Bar, Cases, Extremes, Frame, FrameFault, Load, Node, Peak, Station, Support};

/// A straight level beam of one section; places are mm from its left end.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Beam {
    /// Its length, mm.
    pub length: f64,
    /// Stiffness in bending, N mm².
    pub ei: f64,
    /// Where it rests; at least two, or there is a mechanism.
    pub supports: Vec<f64>,
    /// Where it is joined without stiffness.
    pub hinges: Vec<f64>,
}

/// A load on a beam, down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BeamLoad {
    /// Spread in a straight line.
    Spread {
        /// Where it begins, mm.
        from: f64,
        /// Where it ends, mm.
        to: f64,
        /// N/mm down at its beginning and end.
        w: [f64; 2],
    },
    /// At one place.
    At {
        /// Where, mm.
        at: f64,
        /// N down.
        force: f64,
    },
}

impl BeamLoad {
    /// The same load all along a beam.
    #[must_use]
    pub const fn all_along(beam: &Beam, w: f64) -> Self {
        Self::Spread { from: 0.0, to: beam.length, w: [w, w] }
    }
}

/// The answers of a beam for the cases of load that were solved together.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamCases {
    /// Where its bars begin and the last one ends.
    places: Vec<f64>,
    supports: usize,
    cases: Cases,
}

/// A beam under one case of load, or a sum of cases with factors.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamAnswer {
    /// At each support, N up.
    pub reactions: Vec<f64>,
    places: Vec<f64>,
    bars: Vec<super::BarForces>,
}

impl Beam {
    /// Solve for some cases of load.
    ///
    /// # Errors
    /// Supports, hinges or loads off the beam; figures that are not finite; a mechanism; forces out of balance.
    pub fn solve(&self, cases: &[Vec<BeamLoad>]) -> Result<BeamCases, FrameFault> {
        let places = self.places()?;
        self.look_over(cases)?;
        let node_at = |x: f64| places.partition_point(|p| *p < x).min(places.len() - 1);
        let nodes = places.iter().map(|&x| Node { x, y: 0.0 }).collect();
        let hinged = |k: usize| self.hinges.contains(&places[k]);
        // Nothing pulls along a beam: any stiffness of the order of the others will do.
        let ea = self.ei / (self.length * self.length);
        let bars = (1..places.len())
            .map(|k| Bar { hinge_to: hinged(k) && k + 1 < places.len(), ..Bar::stiff(k - 1, k, ea, self.ei) })
            .collect();
        let supports =
            self.supports.iter().enumerate().map(|(k, &x)| Support::at(node_at(x), k == 0, true, false)).collect();
        let frame = Frame { nodes, bars, supports };
        let cases: Vec<Vec<Load>> = cases.iter().map(|loads| loads_on_bars(loads, &places)).collect();
        let cases = frame.solve(&cases)?;
        Ok(BeamCases { places, supports: self.supports.len(), cases })
    }

    /// Where the beam is cut into bars, in order.
    fn places(&self) -> Result<Vec<f64>, FrameFault> {
        finite("bar", 0, &[self.length, self.ei])?;
        if self.length <= 0.0 {
            return Err(FrameFault::NoLength { bar: 0 });
        }
        let mut places = vec![0.0, self.length];
        for (index, &at) in self.supports.iter().enumerate() {
            places.push(self.on("support", index, at)?);
        }
        for (index, &at) in self.hinges.iter().enumerate() {
            places.push(self.on("hinge", index, at)?);
        }
        places.sort_unstable_by(f64::total_cmp);
        places.dedup();
        Ok(places)
    }

    /// That all loads are on the beam.
    fn look_over(&self, cases: &[Vec<BeamLoad>]) -> Result<(), FrameFault> {
        for (index, load) in cases.iter().flat_map(|loads| loads.iter().enumerate()) {
            match *load {
                BeamLoad::At { at, .. } => {
                    self.on("load", index, at)?;
                }
                BeamLoad::Spread { from, to, .. } => {
                    let (from, to) = (self.on("load", index, from)?, self.on("load", index, to)?);
                    if from >= to {
                        return Err(FrameFault::OffTheBar { what: "load", index, at: to });
                    }
                }
            }
        }
        Ok(())
    }

    fn on(&self, what: &'static str, index: usize, at: f64) -> Result<f64, FrameFault> {
        finite(what, index, &[at])?;
        if (0.0..=self.length).contains(&at) { Ok(at) } else { Err(FrameFault::OffTheBar { what, index, at }) }
    }
}

/// Loads of a beam on the bars that it is cut into.
fn loads_on_bars(loads: &[BeamLoad], places: &[f64]) -> Vec<Load> {
    let mut out = Vec::with_capacity(loads.len() * places.len());
    for load in loads {
        match *load {
            BeamLoad::At { at, force } => {
                let bar = bar_at(places, at);
                out.push(Load::At { bar, at_mm: at - places[bar], fx: 0.0, fy: -force });
            }
            BeamLoad::Spread { from, to, w } => {
                let at = |x: f64| -(w[0] + (w[1] - w[0]) * (x - from) / (to - from));
                for (bar, ends) in places.windows(2).enumerate() {
                    let (start, end) = (ends[0].max(from), ends[1].min(to));
                    if start < end {
                        let (from_mm, to_mm) = (start - ends[0], end - ends[0]);
                        out.push(Load::Part { bar, from_mm, to_mm, fx: [0.0; 2], fy: [at(start), at(end)] });
                    }
                }
            }
        }
    }
    out
}

/// The bar at `x`: the one before, where two meet.
fn bar_at(places: &[f64], x: f64) -> usize {
    places.partition_point(|p| *p < x).clamp(1, places.len() - 1) - 1
}

impl BeamCases {
    /// A sum of cases times factors.
    #[must_use]
    pub fn combine(&self, factors: &[(usize, f64)]) -> Option<BeamAnswer> {
        let sum = self.cases.combine(factors)?;
        let reactions = sum.reactions.iter().map(|r| r[1]).collect();
        Some(BeamAnswer { reactions, places: self.places.clone(), bars: sum.bars })
    }

    /// One case.
    #[must_use]
    pub fn get(&self, case: usize) -> Option<BeamAnswer> {
        self.cases.get(case)?;
        self.combine(&[(case, 1.0)])
    }

    /// The reactions of a sum of cases times factors, N up.
    #[must_use]
    pub fn reactions(&self, factors: &[(usize, f64)]) -> Vec<f64> {
        (0..self.supports).map(|k| self.cases.reaction(k, factors).map_or(0.0, |r| r[1])).collect()
    }
}

impl BeamAnswer {
    /// Shear (up on the part after, N) and bending (sagging, N mm) at `x`; just before a load or support there.
    #[must_use]
    pub fn at(&self, x: f64) -> Station {
        let bar = bar_at(&self.places, x);
        Station { at: x, ..self.bars[bar].at(x - self.places[bar]) }
    }

    /// How far the beam goes down at `x`, mm.
    #[must_use]
    pub fn sag(&self, x: f64) -> f64 {
        let bar = bar_at(&self.places, x);
        -self.bars[bar].deflection(x - self.places[bar])
    }

    /// The largest sag between `from` and `to` by its size, down positive.
    #[must_use]
    pub fn sag_most(&self, from: f64, to: f64) -> Peak {
        let ends = [from, to].map(|at| Peak { at, value: self.sag(at) });
        let within = self.places.windows(2).zip(&self.bars).filter(|(ends, _)| ends[1] > from && ends[0] < to);
        within
            .map(|(ends, bar)| {
                let peak = bar.deflection_most();
                Peak { at: (peak.at + ends[0]).min(ends[1]), value: -peak.value }
            })
            .filter(|peak| peak.at >= from && peak.at <= to)
            .chain(ends)
            .fold(Peak::default(), |best, peak| if peak.value.abs() > best.value.abs() { peak } else { best })
    }

    /// The largest and smallest shear and bending of the whole beam.
    #[must_use]
    pub fn extremes(&self) -> Extremes {
        self.extremes_between(f64::NEG_INFINITY, f64::INFINITY)
    }

    /// The same for the bars that lie between two places.
    #[must_use]
    pub fn extremes_between(&self, from: f64, to: f64) -> Extremes {
        let moved = |peak: Peak, by: f64| Peak { at: peak.at + by, ..peak };
        let mut all: Option<Extremes> = None;
        for (bar, ends) in self.places.windows(2).enumerate() {
            if ends[0] < from || ends[1] > to {
                continue;
            }
            let e = self.bars[bar].extremes();
            let e = Extremes {
                n_most: moved(e.n_most, ends[0]),
                n_least: moved(e.n_least, ends[0]),
                v_most: moved(e.v_most, ends[0]),
                v_least: moved(e.v_least, ends[0]),
                m_most: moved(e.m_most, ends[0]),
                m_least: moved(e.m_least, ends[0]),
            };
            all = Some(all.map_or(e, |a| a.widened(&e)));
        }
        all.unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::{Beam, BeamLoad};

    #[test]
    fn a_load_that_ends_a_hair_before_the_beam_does() {
        // Cut into bars where loads end, this beam was out of balance: 12EI/L³ of a bar of 0.09 mm.
        let beam = Beam { length: 1000.0, ei: 1e10, supports: vec![0.0, 20.0], hinges: vec![] };
        let to = 999.914_160_967_316_3;
        let solved = beam.solve(&[vec![BeamLoad::Spread { from: 829.0, to, w: [1.0, 1.0] }]]);
        let answer = solved.ok().and_then(|cases| cases.get(0)).expect("the beam stands");
        let load = to - 829.0;
        let lever = (to + 829.0) / 2.0;
        assert!((answer.reactions[1] - load * lever / 20.0).abs() < 1e-6 * load * lever / 20.0);
        assert!((answer.reactions.iter().sum::<f64>() - load).abs() < 1e-6 * load);
    }
}
