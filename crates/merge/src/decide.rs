//! Which side each figure is taken from.

use crate::clash::Side;
use crate::figures::{Figures, Path};
use std::cmp::Ordering;
use std::collections::{BTreeMap, BTreeSet};

/// What was decided for every figure.
#[derive(Debug, Default)]
pub(crate) struct Decision {
    /// The figures that the merged job has.
    pub(crate) wanted: BTreeMap<Path, String>,
    /// Figures of ours that become as theirs, in the order of theirs; those to take out come first.
    pub(crate) from_theirs: Vec<Path>,
    /// Figures of theirs that become as ours, likewise.
    pub(crate) from_ours: Vec<Path>,
    /// Figures that both changed, to different values, and for which nobody chose.
    pub(crate) clashes: Vec<Path>,
}

impl Decision {
    pub(crate) fn make(base: &Figures, ours: &Figures, theirs: &Figures, choices: &BTreeMap<String, Side>) -> Self {
        let mut decision = Self::default();
        let all: BTreeSet<&Path> = ours.paths().chain(theirs.paths()).collect();
        for path in all {
            let (was, our, their) = (base.is(path), ours.is(path), theirs.is(path));
            let side = if our == their || their == was {
                Side::Ours
            } else if our == was {
                Side::Theirs
            } else if path.is_tick() {
                further(our, their)
            } else {
                let choice = choices.get(&path.to_string()).copied();
                if choice.is_none() {
                    decision.clashes.push(path.clone());
                }
                choice.unwrap_or(Side::Theirs)
            };
            let is = if side == Side::Ours { our } else { their };
            if let Some(is) = is {
                decision.wanted.insert(path.clone(), is.to_owned());
            }
            if our != their {
                let list = if side == Side::Ours { &mut decision.from_ours } else { &mut decision.from_theirs };
                list.push(path.clone());
            }
        }
        in_order(&mut decision.from_theirs, theirs);
        in_order(&mut decision.from_ours, ours);
        decision
    }
}

/// The further one of two ticks of one timber: fixed before cut before none.
/// Of two that are as far, either will do, as long as both devices take the same.
fn further(our: Option<&str>, their: Option<&str>) -> Side {
    let far = |tick: Option<&str>| tick.map_or(0, |tick| if tick.contains("\"fixed\"") { 2 } else { 1 });
    match far(our).cmp(&far(their)).then_with(|| our.cmp(&their)) {
        Ordering::Less => Side::Theirs,
        _ => Side::Ours,
    }
}

/// What is to be taken out first, so that nothing stands in the way of what comes in.
fn in_order(paths: &mut [Path], from: &Figures) {
    paths.sort_by_key(|path| (from.is(path).is_some(), from.order(path)));
}
