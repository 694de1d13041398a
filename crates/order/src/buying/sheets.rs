//! What goes by the metre and the square metre: bedding under plates, lining and insulation; and brackets for struts.

use super::joints::Found;
use super::line::{Line, LineKind};
use super::protection::area;
use geometry::DVec3;
use job::{Job, Per};
use roof::rules::Standing;
use roof::solution::{MemberKind, Solution};
use std::collections::BTreeSet;

/// mm² in a m².
const MM2_IN_M2: f64 = 1e6;

/// Lines for bedding, lining, insulation and brackets.
pub(super) fn lines(job: &Job, solution: &Solution, found: &Found<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    let line = |item: &str, what: &str, quantity: f64, unit: Per, kind: LineKind, counted: String| Line {
        item: item.to_owned(),
        what: what.to_owned(),
        size: String::new(),
        quantity,
        unit,
        kg: 0.0,
        counted,
        source: "the roof as it is solved".to_owned(),
        standing: Standing::Derived.to_string(),
        kind,
    };
    let bedded = bedded(solution);
    if bedded > 0.0 {
        let words = "walls that carry a plate, along their plate lines".to_owned();
        lines.push(line("plate-bedding", "mortar bed under wall plates", bedded, Per::Metre, LineKind::Counted, words));
    }
    let struts = found.joints.iter().filter(|joint| {
        joint.of.iter().filter_map(|k| found.members.get(*k)).any(|member| member.kind == MemberKind::Strut)
    });
    let brackets = struts.count();
    if brackets > 0 {
        let words = format!("one at each of {brackets} ends of struts, instead of a cleat from an offcut");
        let what = "angle brackets for struts";
        lines.push(line("angle-bracket", what, brackets as f64, Per::Each, LineKind::ToChoose, words));
    }
    let Some(carried) = &job.carried else { return lines };
    let slopes: f64 = solution.faces.iter().map(|face| face.slope_area_m2).sum();
    let hole = |kind: fn(&str) -> bool| -> f64 {
        let mine = solution.openings.iter().filter(|o| kind(&o.kind));
        mine.map(|o| area(o.outline.iter().copied().map(DVec3::from_array)) / MM2_IN_M2)
            .fold(0.0, |sum, area| sum + area)
    };
    if carried.lining > 0.0 {
        let holes = hole(|kind| kind != "hatch");
        let net = (slopes - holes).max(0.0);
        let words = format!("slopes to the plate lines {slopes:.2} m² less openings {holes:.2} m², with no waste");
        for (item, what) in
            [("rafter-lining", "lining under the rafters"), ("rafter-insulation", "insulation at the rafters")]
        {
            lines.push(line(item, what, net, Per::SquareMetre, LineKind::ToChoose, words.clone()));
        }
    }
    if carried.ceiling > 0.0 && job.timber.parts.ceiling_joist.is_some() {
        let (plan, holes) = (solution.totals.plan_area_m2, hole(|kind| kind == "hatch"));
        let net = (plan - holes).max(0.0);
        let words = format!(
            "plan to the plate lines {plan:.2} m² less hatches {holes:.2} m²; the walls are in it, and no waste"
        );
        for (item, what) in [("ceiling-lining", "ceiling boards"), ("ceiling-insulation", "insulation at the ceiling")]
        {
            lines.push(line(item, what, net, Per::SquareMetre, LineKind::ToChoose, words.clone()));
        }
    }
    lines
}

/// Length of the walls that carry a plate, m.
fn bedded(solution: &Solution) -> f64 {
    let plates = solution.members.iter().filter(|m| m.kind == MemberKind::WallPlate);
    let letters: BTreeSet<&str> = plates.filter_map(|m| m.wall.as_deref()).collect();
    let walls = solution.plan.walls.iter().filter(|w| letters.contains(w.id.as_str()));
    walls.map(|w| w.length_mm).sum::<f64>() / 1000.0
}
