//! The check of an order of work. It shares no code with what made the order: it reads the sheet, the solids and the
//! job, and asks of every step
//!
//! * that each timber is fixed once, and each prop, brace and diagonal set once before it is taken out;
//! * that props and braces are where they say, and stand on what is fixed ([`places`]);
//! * that each timber, when it is fixed, lies on what is fixed before it ([`laying`]);
//! * that at the end of the step nothing of what stands can rack or swing ([`racking`]): timbers are bars that turn
//!   freely at every joint, so that only triangles, walls, props and braces hold them.
//!
//! What it does not say: whether nails, props and timbers are strong enough for whoever climbs on them.

mod bars;
mod elimination;
mod laying;
mod places;
mod racking;

use super::types::PuttingUp;
use bars::Bars;
use job::Job;
use roof::solution::Solution;
use std::collections::{BTreeMap, BTreeSet};

/// What is wrong with an order of work.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum CheckFault {
    /// A name that is not in the roof or on the sheet.
    #[error("step {step}: there is no `{name}`")]
    Unknown {
        /// Number of the step.
        step: u32,
        /// The name.
        name: String,
    },
    /// Fixed or set a second time, or taken out when it is not there.
    #[error("step {step}: {name} is fixed, set or taken out out of turn")]
    OutOfTurn {
        /// Number of the step.
        step: u32,
        /// The name.
        name: String,
    },
    /// Never fixed.
    #[error("{mark} is never fixed")]
    NeverFixed {
        /// Its mark.
        mark: String,
    },
    /// A prop or brace that is not where it must be.
    #[error("step {step}: {name} does not reach from {from} to what is fixed at its other end")]
    Misplaced {
        /// Number of the step.
        step: u32,
        /// Its name.
        name: String,
        /// What it holds.
        from: String,
    },
    /// A timber that would fall when it is let go.
    #[error("step {step}: {mark} does not lie on what is fixed before it")]
    Falls {
        /// Number of the step.
        step: u32,
        /// Its mark.
        mark: String,
    },
    /// What stands can move.
    #[error("after step {step}, {mark} can still move: what stands racks or swings")]
    Racks {
        /// Number of the step.
        step: u32,
        /// A timber that moves.
        mark: String,
    },
}

/// Check an order of work against the roof.
///
/// # Errors
/// At the first thing that is wrong.
pub fn check_sequence(job: &Job, solution: &Solution, sheet: &PuttingUp) -> Result<(), CheckFault> {
    Check::of(job, solution, sheet).all()
}

pub(super) struct Check<'a> {
    sheet: &'a PuttingUp,
    bars: Bars,
    by_mark: BTreeMap<&'a str, usize>,
    fixed: Vec<bool>,
    /// Timbers that were found not to move, as long as nothing is taken out: what is added never loosens them.
    settled: BTreeSet<usize>,
    props: BTreeSet<usize>,
    braces: BTreeSet<usize>,
    permanent: BTreeSet<usize>,
}

impl<'a> Check<'a> {
    /// Ready to check.
    fn of(job: &'a Job, solution: &'a Solution, sheet: &'a PuttingUp) -> Self {
        let bars = Bars::of(job, solution);
        let by_mark = solution.members.iter().enumerate().map(|(k, m)| (m.mark.as_str(), k)).collect();
        let fixed = vec![false; solution.members.len()];
        let (props, braces, permanent) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
        Self { sheet, bars, by_mark, fixed, settled: BTreeSet::new(), props, braces, permanent }
    }

    fn all(mut self) -> Result<(), CheckFault> {
        let mut ever = [BTreeSet::new(), BTreeSet::new(), BTreeSet::new()];
        for step in &self.sheet.steps {
            let n = step.number;
            let unknown = |name: &str| CheckFault::Unknown { step: n, name: name.to_owned() };
            let wrong = |name: &str| CheckFault::OutOfTurn { step: n, name: name.to_owned() };
            for name in &step.props_set {
                let k = self.sheet.props.iter().position(|p| p.name == *name).ok_or_else(|| unknown(name))?;
                if !ever[0].insert(k) {
                    return Err(wrong(name));
                }
                places::prop(&self, n, k)?;
                self.props.insert(k);
            }
            let mut members = Vec::new();
            for mark in &step.members {
                let k = *self.by_mark.get(mark.as_str()).ok_or_else(|| unknown(mark))?;
                if self.fixed.get(k).copied().unwrap_or(true) || members.contains(&k) {
                    return Err(wrong(mark));
                }
                members.push(k);
            }
            let mut rest = &members[..];
            while let Some((first, _)) = rest.split_first() {
                // Lengths that follow one another are spliced before they are lifted; on a wall, one by one.
                let one = self.bars.0.get(*first).is_some_and(|b| b.lies_on_wall);
                let spliced = |w: &[usize]| self.bars.0.get(w[0]).is_some_and(|b| b.spliced.contains(&w[1]));
                let n_lengths = if one { 1 } else { 1 + rest.windows(2).take_while(|w| spliced(w)).count() };
                let (lengths, others) = rest.split_at(n_lengths);
                laying::lies(&self, n, lengths)?;
                for k in lengths {
                    self.fixed[*k] = true;
                }
                rest = others;
            }
            for name in &step.braces_set {
                let k = self.sheet.braces.iter().position(|b| b.name == *name).ok_or_else(|| unknown(name))?;
                if !ever[1].insert(k) {
                    return Err(wrong(name));
                }
                places::brace(&self, n, k)?;
                self.braces.insert(k);
            }
            for name in &step.permanent_set {
                let k = self.sheet.permanent.iter().position(|b| b.name == *name).ok_or_else(|| unknown(name))?;
                if !ever[2].insert(k) {
                    return Err(wrong(name));
                }
                places::racking(&self, n, k)?;
                self.permanent.insert(k);
            }
            for name in &step.props_out {
                let k = self.sheet.props.iter().position(|p| p.name == *name).ok_or_else(|| unknown(name))?;
                if !self.props.remove(&k) {
                    return Err(wrong(name));
                }
            }
            for name in &step.braces_out {
                let k = self.sheet.braces.iter().position(|b| b.name == *name).ok_or_else(|| unknown(name))?;
                if !self.braces.remove(&k) {
                    return Err(wrong(name));
                }
            }
            if !step.props_out.is_empty() || !step.braces_out.is_empty() {
                self.settled.clear();
            }
            self.settled = racking::holds(&self, n)?;
        }
        match self.fixed.iter().position(|f| !f) {
            Some(k) => Err(CheckFault::NeverFixed { mark: self.bars.mark(k) }),
            None => Ok(()),
        }
    }
}
