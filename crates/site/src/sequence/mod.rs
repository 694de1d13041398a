//! Putting the roof up: the order of work, worked out from the real timbers and what each touches.
//!
//! [`putting_up`] makes the sheet; [`check_sequence`] checks it and shares no code with what made it. The check runs
//! on every sheet that is handed out.
//!
//! What is not said: whether props, nails and timbers carry whoever climbs on them, and what the weather does.

mod assembly;
mod cautions;
mod check;
mod fault;
mod graph;
mod hands;
mod holds;
mod order;
mod permanent;
mod rules;
mod stacking;
mod straps;
mod types;
mod words;

pub use check::{CheckFault, check_sequence};
pub use fault::SequenceFault;
pub(crate) use rules::figures;
pub use rules::{BraceRules, PlateRules, PropRules, RackingRules, Rules, RulesError, StrapRules, ToleranceRules};
pub use straps::count as strap_count;
pub use types::{
    Brace, BraceCut, BraceWay, Caution, End, Hold, Joined, Nailed, NoStack, Prop, PropFoot, PuttingUp, Racking,
    Standing, Stands, Step, StrapKind, StrapPlace,
};

use graph::Graph;
use job::Job;
use order::schedule::schedule;
use roof::solution::Solution;

/// The order of work of a roof with its props, braces, holds and straps, checked.
///
/// # Errors
/// When the region has no figures, when a timber has nothing to stand on, or when the order does not pass its check.
pub fn putting_up(job: &Job, solution: &Solution) -> Result<PuttingUp, SequenceFault> {
    let rules = Rules::of(&job.region)?;
    if solution.members.is_empty() {
        return Err(SequenceFault::NothingToPutUp);
    }
    let graph = Graph::of(job, solution);
    let schedule = schedule(&graph, rules)?;
    Ok(assembly::sheet(&graph, rules, schedule)?)
}
