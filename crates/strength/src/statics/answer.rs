//! What comes out of a frame, and sums of it.

use super::BarForces;

/// One case of load, or a sum of cases with factors.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// For each node: to the right mm, up mm, anticlockwise rad.
    pub nodes: Vec<[f64; 3]>,
    /// For each support, in the order of [`super::Frame::supports`], what it gives to the frame: to the right N, up N,
    /// anticlockwise N mm.
    pub reactions: Vec<[f64; 3]>,
    /// For each bar.
    pub bars: Vec<BarForces>,
}

/// The answers for the cases of load that were solved together.
#[derive(Clone, Debug, PartialEq)]
pub struct Cases {
    pub(super) answers: Vec<Answer>,
}

impl Cases {
    /// The answers, in the order of the cases.
    #[must_use]
    pub fn all(&self) -> &[Answer] {
        &self.answers
    }

    /// The answer for one case.
    #[must_use]
    pub fn get(&self, case: usize) -> Option<&Answer> {
        self.answers.get(case)
    }

    /// The sum of cases times factors, all of it. Cases that are not there count for nothing. `None` when there are no
    /// cases at all.
    #[must_use]
    pub fn combine(&self, factors: &[(usize, f64)]) -> Option<Answer> {
        let mut sum = self.answers.first()?.clone();
        sum.nodes.iter_mut().chain(&mut sum.reactions).for_each(|v| *v = [0.0; 3]);
        sum.bars.iter_mut().for_each(BarForces::unload);
        for (answer, factor) in self.factored(factors) {
            let into = sum.nodes.iter_mut().chain(&mut sum.reactions);
            for (to, from) in into.zip(answer.nodes.iter().chain(&answer.reactions)) {
                for (v, f) in to.iter_mut().zip(from) {
                    *v += factor * f;
                }
            }
            for (to, from) in sum.bars.iter_mut().zip(&answer.bars) {
                to.add(from, factor);
            }
        }
        Some(sum)
    }

    /// One bar in a sum of cases times factors: no more work than the bar needs.
    #[must_use]
    pub fn bar(&self, bar: usize, factors: &[(usize, f64)]) -> Option<BarForces> {
        let mut sum = self.answers.first()?.bars.get(bar)?.clone();
        sum.unload();
        for (answer, factor) in self.factored(factors) {
            sum.add(answer.bars.get(bar)?, factor);
        }
        Some(sum)
    }

    /// The reaction of one support in a sum of cases times factors: to the right N, up N, anticlockwise N mm.
    #[must_use]
    pub fn reaction(&self, support: usize, factors: &[(usize, f64)]) -> Option<[f64; 3]> {
        self.sum(factors, |answer| answer.reactions.get(support))
    }

    /// The movement of one node in a sum of cases times factors: to the right mm, up mm, anticlockwise rad.
    #[must_use]
    pub fn node(&self, node: usize, factors: &[(usize, f64)]) -> Option<[f64; 3]> {
        self.sum(factors, |answer| answer.nodes.get(node))
    }

    fn sum<'a>(
        &'a self,
        factors: &'a [(usize, f64)],
        of: impl Fn(&'a Answer) -> Option<&'a [f64; 3]>,
    ) -> Option<[f64; 3]> {
        let mut sum = [0.0; 3];
        for (answer, factor) in self.factored(factors) {
            for (v, f) in sum.iter_mut().zip(of(answer)?) {
                *v += factor * f;
            }
        }
        Some(sum)
    }

    fn factored<'a>(&'a self, factors: &'a [(usize, f64)]) -> impl Iterator<Item = (&'a Answer, f64)> {
        factors.iter().filter_map(|&(case, factor)| Some((self.answers.get(case)?, factor)))
    }
}
