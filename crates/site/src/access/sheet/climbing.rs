//! Getting up: ladders, towers, edge protection.

use super::super::AccessFault;
use super::super::rules::Needed;
use super::super::statement::{Basis, Blank, Row, Statement, Verdict};
use super::{Facts, M, of_figure};

pub(super) fn rows(facts: &Facts<'_>) -> Result<Vec<Row>, AccessFault> {
    let (angle, above) = (facts.need(Needed::LadderAngle)?, facts.need(Needed::LadderAbove)?);
    let [length, out] = facts.ladder;
    let text = format!(
        "Ladder to the highest platform at {}: at least {} long at {}, its foot {} out at the landing, {} above it, tied at the top.",
        facts.about(facts.layout.highest_mm),
        facts.at_least(length),
        angle.written(),
        facts.about(out),
        above.written()
    );
    let mut rows = vec![Row::Said(
        Statement::new("access-ladder", text, angle.source.clone(), angle.basis())
            .with("length", length / M, "m")
            .with("foot out", out / M, "m"),
    )];
    if let Some(rest) = facts.rules.get("ladder-rest-rise") {
        let rise = facts.layout.highest_mm;
        let words = if rise >= rest.own() { "this one needs them" } else { "this one is lower" };
        rows.push(of_figure(
            "access-ladder-rest",
            rest,
            format!(
                "Ladders that rise {} or more have platforms to rest on where it can be done: {words}.",
                rest.written()
            ),
        ));
    }
    if let (Some(task), Some(load)) = (facts.rules.get("ladder-task-max"), facts.rules.get("ladder-load-max")) {
        let text = format!(
            "Nobody works off a ladder for more than {} or with more than {} in hand.",
            task.written(),
            load.written()
        );
        rows.push(of_figure("access-ladder-work", task, text));
    }
    if let Some(factor) = facts.rules.get("ladder-load-factor") {
        let text = format!("A ladder holds {} times the greatest load meant for it.", factor.written());
        rows.push(of_figure("access-ladder-work", factor, text));
    }
    rows.push(Row::Blank(Blank::new(
        "access-way-up",
        "Where do people get up, with a gate or trap, and where are materials lifted?",
        "who is in charge of the site",
    )));
    match facts.layout.kind.as_str() {
        "tower" => tower(facts, &mut rows)?,
        "edge-protection" => edge(facts, &mut rows),
        _ => edge(facts, &mut rows),
    }
    Ok(rows)
}

fn tower(facts: &Facts<'_>, rows: &mut Vec<Row>) -> Result<(), AccessFault> {
    let ratio = facts.need(Needed::TowerRatio)?;
    let height = facts.layout.highest_mm;
    let base = height / ratio.own();
    let text = format!(
        "A free tower with its platform at {} has a least base of {} by the old {} to 1; the manual of its maker governs.",
        facts.about(height),
        facts.at_least(base),
        ratio.written()
    );
    rows.push(Row::Said(
        Statement::new("access-tower-base", text, ratio.source.clone(), ratio.basis())
            .with("base", base / M, "m")
            .checked(Verdict::Ask),
    ));
    if let Some(most) = facts.rules.get("tower-height-outdoor-max") {
        let verdict = Verdict::at_most(height, most.own(), most.basis());
        let text = format!("Mobile towers out of doors are made for platforms up to {}.", most.written());
        let row = Statement::new("access-tower-height", text, most.source.clone(), most.basis());
        rows.push(Row::Said(row.with("most", most.value, most.unit.written()).checked(verdict)));
    }
    if let Some(wind) = facts.rules.get("tower-wind-stop") {
        rows.push(of_figure("access-tower-wind", wind, format!("Off the tower at a mean wind of {}.", wind.written())));
    }
    Ok(())
}

fn edge(facts: &Facts<'_>, rows: &mut Vec<Row>) {
    let steepest = facts.solution.faces.iter().map(|face| face.pitch_deg).fold(0.0, f64::max);
    if facts.rules.edges.is_empty() {
        if let (Some(rise), Some(run)) = (facts.rules.get("steep-roof-rise"), facts.rules.get("steep-roof-run")) {
            let steep = geometry::Angle::from_rise_run(rise.value, run.value).to_deg();
            let words = if steepest > steep { "this roof is" } else { "this roof is not" };
            let text = format!("A roof over {} in {} is steep: {words}.", rise.written(), run.written());
            rows.push(of_figure("access-steep", rise, text));
        }
        return;
    }
    // Who slides falls from where he stands down to the rails at the eaves: how high the edge is above the ground is
    // another matter.
    let slopes = facts.solution.faces.iter().map(|face| {
        let heights = || face.outline.iter().map(|point| point[2]);
        let slide = heights().fold(f64::NEG_INFINITY, f64::max) - heights().fold(f64::INFINITY, f64::min);
        (face.pitch_deg, slide.max(0.0))
    });
    let strictness = |(slope, slide): &(f64, f64)| {
        let class = facts.rules.edge(*slope, *slide);
        facts.rules.edges.iter().position(|one| class.is_some_and(|class| class.name == one.name)).unwrap_or(usize::MAX)
    };
    let by_slope = |a: &(f64, f64), b: &(f64, f64)| {
        strictness(a).cmp(&strictness(b)).then(a.0.total_cmp(&b.0)).then(a.1.total_cmp(&b.1))
    };
    let Some((steepest, slide)) = slopes.max_by(by_slope) else { return };
    let pitch = job::written::degrees(steepest);
    let statement = match facts.rules.edge(steepest, slide) {
        Some(class) => {
            let text = format!(
                "Rails at the eaves of a slope of {pitch} down which somebody can fall {} are of class {} at least; a working lift close under the eaves can stand in for them if its designer says so.",
                facts.about(slide),
                class.name
            );
            Statement::new("access-edge-class", text, class.steepest.source.clone(), class.steepest.basis())
        }
        None => {
            let text = format!(
                "A slope of {pitch} down which somebody can fall {} is steeper than any class of edge protection is for: the scaffold designer says what stops a fall.",
                facts.about(slide)
            );
            Statement::new("access-edge-class", text, "EN 13374", Basis::Memory)
        }
    };
    rows.push(Row::Said(statement.with("slope", steepest, "°").checked(Verdict::Ask)));
}
