//! Where nothing may be stacked, and until when.

use super::graph::Graph;
use super::types::{NoStack, PuttingUp};
use roof::solution::MemberKind;

/// Adds where nothing may be stacked.
pub fn add(graph: &Graph<'_>, sheet: &mut PuttingUp) {
    let last = sheet.steps.last().map_or(1, |s| s.number);
    let first_with = |which: &dyn Fn(&super::Step) -> bool| sheet.steps.iter().find(|s| which(s)).map(|s| s.number);
    let joisted =
        |mark: &String| graph.timbers.iter().any(|t| t.mark() == mark && t.kind() == MemberKind::CeilingJoist);
    let mut out = Vec::new();
    if let Some(step) = first_with(&|s| s.members.iter().any(&joisted)) {
        out.push(NoStack {
            at: "middle of the ceiling joists".into(),
            why: "they are sized for a ceiling: stack only over the walls, spread over several joists".into(),
            span_mm: joist_span(graph),
            steps: [step, last],
        });
    }
    if let Some(step) = first_with(&|s| !s.props_set.is_empty() || !s.braces_set.is_empty()) {
        let out_again = first_with(&|s| !s.props_out.is_empty() || !s.braces_out.is_empty()).unwrap_or(last);
        out.push(NoStack {
            at: "rafters and ridge before the bracing that stays is in".into(),
            why: "they lean on props and braces: stack nothing on them, and stand no pack against them".into(),
            span_mm: None,
            steps: [step, out_again],
        });
    }
    out.push(NoStack {
        at: "one slope alone".into(),
        why: "load both slopes evenly, spread along the rafters over the purlins".into(),
        span_mm: None,
        steps: [last, last],
    });
    sheet.no_stack = out;
}

/// The widest clear span of a ceiling joist between what holds it, mm.
fn joist_span(graph: &Graph<'_>) -> Option<f64> {
    let all = vec![true; graph.timbers.len()];
    let carried = |k: usize| {
        let t = &graph.timbers[k];
        let below = |m: MemberKind| matches!(m, MemberKind::WallPlate | MemberKind::SolePlate | MemberKind::AngleTie);
        let mut spots: Vec<f64> = t.ground.clone();
        let on = t.contacts.iter().filter(|c| all[c.other] && below(graph.timbers[c.other].kind()));
        spots.extend(on.map(|c| (c.reach[0] + c.reach[1]) / 2.0));
        spots.sort_by(f64::total_cmp);
        spots.windows(2).map(|w| w[1] - w[0]).fold(0.0, f64::max)
    };
    let joists = (0..graph.timbers.len()).filter(|k| graph.timbers[*k].kind() == MemberKind::CeilingJoist);
    joists.map(carried).fold(None, |best: Option<f64>, s| Some(best.map_or(s, |b| b.max(s)))).filter(|s| *s > 0.0)
}
