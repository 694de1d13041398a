//! The sheet from the order of work: steps in words, with diagonals, straps and the striking of props in their place.

use super::check::{CheckFault, check_sequence};
use super::graph::{Graph, Timber};
use super::hands::Lifted;
use super::order::rank::Turn;
use super::order::schedule::{Draft, Schedule};
use super::order::standing;
use super::rules::Rules;
use super::types::{PuttingUp, Step};
use super::{cautions, holds, permanent, stacking, straps, words};
use roof::solution::MemberKind;
use std::collections::BTreeSet;

/// Most timbers that are stayed because the check found them moving, and that often it is asked again.
const MOST_STAYS: usize = 60;

/// Put the sheet together and take down props and braces as far as the roof then stands by itself.
///
/// # Errors
/// When the order does not pass its check.
pub fn sheet(graph: &Graph<'_>, rules: &Rules, schedule: Schedule) -> Result<PuttingUp, CheckFault> {
    let diagonals = permanent::permanent(graph, &rules.racking, &schedule.systems);
    let mut sheet = PuttingUp {
        steps: steps(graph, &schedule.drafts, &schedule.as_one),
        props: schedule.temporary.props,
        braces: schedule.temporary.braces,
        permanent: diagonals,
        holds: Vec::new(),
        straps: straps::straps(graph, &rules.strap),
        no_stack: Vec::new(),
        cautions: Vec::new(),
    };
    holds::add(graph, rules, &mut sheet);
    let at = before_boards(graph, &sheet);
    let mut last = None;
    for _ in 0..MOST_STAYS {
        let fault = match struck(graph, &sheet, at) {
            Ok((mut done, braces_stay)) => {
                stacking::add(graph, &mut done);
                cautions::add(graph, &rules.plate, &mut done, braces_stay);
                return Ok(done);
            }
            Err(fault) => fault,
        };
        let stayed = stay(graph, rules, &mut sheet, at, &fault);
        last = Some(fault);
        if !stayed {
            break;
        }
    }
    Err(last.unwrap_or(CheckFault::NeverFixed { mark: String::new() }))
}

/// A sheet with its temporary props and braces taken out as far as the roof then stands, and whether braces stay.
fn struck(graph: &Graph<'_>, sheet: &PuttingUp, at: usize) -> Result<(PuttingUp, bool), CheckFault> {
    let mut first = None;
    // Everything out; then what is not stayed; then nothing: what the roof needs to stand stays in.
    for (out, braces) in
        [(Out::All, true), (Out::All, false), (Out::NotStayed, true), (Out::NotStayed, false), (Out::None, false)]
    {
        let mut tried = sheet.clone();
        let props: Vec<String> = tried
            .props
            .iter()
            .filter(|p| out == Out::All || (out == Out::NotStayed && !p.stayed))
            .map(|p| p.name.clone())
            .collect();
        insert_strike(&mut tried, at, props, braces);
        renumber(&mut tried);
        match check_sequence(graph.job, graph.solution, &tried) {
            Ok(()) => return Ok((tried, !braces)),
            Err(fault) => {
                let before = matches!(fault, CheckFault::Racks { step, .. } if step as usize <= at);
                first.get_or_insert(fault);
                // Taking out less does not help what moves before anything is taken out.
                if before {
                    break;
                }
            }
        }
    }
    Err(first.unwrap_or(CheckFault::NeverFixed { mark: String::new() }))
}

/// Stays a timber that the check found moving before anything is taken out; `false` when that is not the fault, or it
/// is stayed already.
fn stay(graph: &Graph<'_>, rules: &Rules, sheet: &mut PuttingUp, at: usize, fault: &CheckFault) -> bool {
    let CheckFault::Racks { step, mark } = fault else { return false };
    let Some(index) = (*step as usize).checked_sub(1).filter(|k| *k < at) else { return false };
    let Some(k) = graph.timbers.iter().position(|t| t.mark() == mark) else { return false };
    let done: BTreeSet<&String> = sheet.steps.iter().take(index + 1).flat_map(|s| &s.members).collect();
    let fixed: Vec<bool> = graph.timbers.iter().map(|t| done.contains(&t.member.mark)).collect();
    let (Some(prop), Some(step)) = (standing::stay(graph, rules, &fixed, k, &sheet.props), sheet.steps.get_mut(index))
    else {
        return false;
    };
    step.props_set.push(prop.name.clone());
    if let Some(stands) = step.stands.iter_mut().find(|s| s.mark == *mark) {
        stands.on.push(prop.name.clone());
    }
    sheet.props.push(prop);
    true
}

/// Which props come out.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Out {
    All,
    NotStayed,
    None,
}

fn steps(graph: &Graph<'_>, drafts: &[Draft], as_one: &[Vec<usize>]) -> Vec<Step> {
    let lifted = Lifted::of(graph);
    let mut begun: BTreeSet<usize> = BTreeSet::new();
    let mut steps = vec![Step {
        title: "Check the walls: lengths, diagonals, level".into(),
        hands: 2,
        why: "what is out here is out all the way up".into(),
        hazard: "edges of the wall".into(),
        ..Step::default()
    }];
    for draft in drafts {
        let first = draft.rank.turn == Turn::Spine && begun.insert(draft.rank.part);
        let [title, why, hazard] = words::of(
            draft,
            first,
            led_by(graph, draft, |t| t.kind() == MemberKind::Purlin),
            led_by(graph, draft, |t| t.on_wall),
        );
        let team = lifted.team(&draft.members, draft.stood, as_one);
        steps.push(Step {
            number: 0,
            title: title.into(),
            members: draft.members.iter().map(|k| graph.timbers[*k].mark().to_owned()).collect(),
            props_set: draft.props.clone(),
            braces_set: draft.braces.clone(),
            hands: team.people,
            hoist: team.hoist,
            as_one: team.as_one,
            why: why.into(),
            hazard: hazard.into(),
            stands: draft.stands.clone(),
            strips: strips(graph, draft),
            ..Step::default()
        });
    }
    steps
}

/// Whether the first timber of a step is such a one.
fn led_by(graph: &Graph<'_>, draft: &Draft, which: impl Fn(&Timber<'_>) -> bool) -> bool {
    draft.members.first().and_then(|k| graph.timbers.get(*k)).is_some_and(which)
}

/// Setting-out strips of plates and ridges that go up in a step.
fn strips(graph: &Graph<'_>, draft: &Draft) -> Vec<String> {
    let marks: BTreeSet<&str> = draft.members.iter().map(|k| graph.timbers[*k].mark()).collect();
    let strips = graph.solution.setting_out.iter().filter(|s| marks.contains(s.mark.as_str()));
    strips.map(|s| s.name.clone()).collect()
}

/// Where the bracing that stays goes in: before sprockets and boards, after all that carries.
fn before_boards(graph: &Graph<'_>, sheet: &PuttingUp) -> usize {
    let board = |mark: &String| {
        let kind = graph.timbers.iter().find(|t| t.mark() == mark).map(|t| t.kind());
        matches!(
            kind,
            Some(
                MemberKind::Sprocket
                    | MemberKind::TiltingFillet
                    | MemberKind::Fascia
                    | MemberKind::Soffit
                    | MemberKind::BargeBoard
            )
        )
    };
    let carries = |s: &Step| !s.members.is_empty() && !s.members.iter().all(board);
    sheet.steps.iter().rposition(carries).map_or(sheet.steps.len(), |k| k + 1)
}

fn insert_strike(sheet: &mut PuttingUp, at: usize, props_out: Vec<String>, braces: bool) {
    let brace = Step {
        title: "Fix the bracing that stays and the straps of the gables".into(),
        permanent_set: sheet.permanent.iter().map(|d| d.name.clone()).collect(),
        hands: 2,
        why: "only then may props come out".into(),
        hazard: "reaching between open rafters".into(),
        ..Step::default()
    };
    let strike = Step {
        title: "Look it all over, then take out the props".into(),
        props_out,
        hands: 2,
        why: "the roof carries itself now".into(),
        hazard: "a prop that is still tight carries something: find out what before it is knocked out".into(),
        ..Step::default()
    };
    let at = at.min(sheet.steps.len());
    if !strike.props_out.is_empty() {
        sheet.steps.insert(at, strike);
    }
    if !brace.permanent_set.is_empty() || sheet.straps.iter().any(|s| s.kind != super::StrapKind::HoldingDown) {
        sheet.steps.insert(at, brace);
    }
    sheet.steps.push(Step {
        title: "Felt and battens, both slopes evenly".into(),
        hands: 2,
        why: "battens hold the rafters to each other".into(),
        hazard: "sheets in the wind; open rafters underfoot".into(),
        ..Step::default()
    });
    let braces_out: Vec<String> =
        if braces { sheet.braces.iter().map(|b| b.name.clone()).collect() } else { Vec::new() };
    if !braces_out.is_empty() {
        sheet.steps.push(Step {
            title: "Take out the temporary braces".into(),
            braces_out,
            hands: 2,
            why: "bracing that stays, straps and battens hold now".into(),
            hazard: "a brace that binds holds something: find out what before it is cut".into(),
            ..Step::default()
        });
    }
    sheet.steps.push(Step {
        title: "Covering, both slopes evenly".into(),
        hands: 2,
        why: "an uneven load pushes the ridge over".into(),
        hazard: "one slope loaded alone; whoever is below".into(),
        ..Step::default()
    });
}

fn renumber(sheet: &mut PuttingUp) {
    for (n, step) in sheet.steps.iter_mut().enumerate() {
        step.number = u32::try_from(n + 1).unwrap_or(u32::MAX);
    }
}
