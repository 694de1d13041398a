//! Putting the roof up: the order of work, worked out from the real timbers and what each touches.
//!
//! [`putting_up`] makes the sheet; [`check_sequence`] checks it and shares no code with what made it. The check runs
//! on every sheet that is handed out.
//!
//! What is not said: whether props, nails and timbers carry whoever climbs on them, and what the weather does.

mod check;
mod fault;
mod graph;
mod order;
mod permanent;
mod rules;
mod types;
mod words;

pub use check::{CheckFault, check_sequence};
pub use fault::SequenceFault;
pub use rules::{BraceRules, PlateRules, PropRules, RackingRules, Rules, RulesError, StrapRules, ToleranceRules};
pub use types::{
    Brace, BraceCut, BraceWay, Caution, End, Hold, Nailed, NoStack, Prop, PropFoot, PuttingUp, Racking, Standing,
    Stands, Step, StrapKind, StrapPlace,
};

use graph::Graph;
use job::Job;
use order::schedule::{Draft, schedule};
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
    let permanent = permanent::permanent(&graph, &rules.racking, &schedule.systems);
    let mut sheet = PuttingUp {
        steps: Vec::new(),
        props: schedule.temporary.props,
        braces: schedule.temporary.braces,
        permanent,
        holds: Vec::new(),
        straps: Vec::new(),
        no_stack: Vec::new(),
        cautions: Vec::new(),
    };
    assemble(&graph, &mut sheet, &schedule.drafts);
    check_sequence(job, solution, &sheet).map_err(|f| {
        if std::env::var("LOUD").is_ok() {
            for st in &sheet.steps {
                eprintln!(
                    "  {:2} {} | {} | props {:?} braces {:?}",
                    st.number,
                    st.title,
                    st.members.join(" "),
                    st.props_set,
                    st.braces_set
                );
            }
            for b in &sheet.braces {
                eprintln!("   {b:?}");
            }
            for b in &sheet.props {
                eprintln!("   {b:?}");
            }
        }
        f
    })?;
    Ok(sheet)
}

fn assemble(graph: &Graph<'_>, sheet: &mut PuttingUp, drafts: &[Draft]) {
    for d in drafts {
        sheet.steps.push(Step {
            number: sheet.steps.len() as u32 + 1,
            title: format!("{:?} {}", d.rank, d.stood),
            members: d.members.iter().map(|k| graph.timbers[*k].mark().to_owned()).collect(),
            props_set: d.props.clone(),
            braces_set: d.braces.clone(),
            stands: d.stands.clone(),
            ..Step::default()
        });
    }
}
