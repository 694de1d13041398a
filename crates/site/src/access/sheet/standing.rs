//! What stands round the roof: its sort, heights, lengths, boards and rails.

use super::super::AccessFault;
use super::super::rules::Needed;
use super::super::statement::{Basis, Blank, Row, Statement, Verdict};
use super::{Facts, M, of_figure, of_job};

pub(super) fn rows(facts: &Facts<'_>) -> Result<Vec<Row>, AccessFault> {
    let layout = facts.layout;
    let mut rows = vec![kind(facts), height(facts)?];
    let runs: Vec<String> = layout.runs.iter().map(|run| run_words(facts, run)).collect();
    let text = format!(
        "{} bays of {} round the building, {} of platform on the outside: {}.",
        layout.bays,
        facts.length(layout.bay_mm),
        facts.about(layout.length_mm),
        runs.join("; ")
    );
    rows.push(Row::Said(
        Statement::new("access-length", text, "walls, eaves and verges of the roof", Basis::Roof)
            .with("length", layout.length_mm / M, "m")
            .with("bays", f64::from(layout.bays), ""),
    ));
    let lifts: Vec<String> = layout.runs.iter().map(|run| lift_words(facts, run)).collect();
    let below = facts.need(Needed::BelowEaves)?;
    let text = format!(
        "Working lift {} below the plate or the eaves, whichever is lower, in lifts of at most {}: {}.",
        facts.length(below.own()),
        facts.length(facts.job.access.lift),
        lifts.join("; ")
    );
    rows.push(Row::Said(
        Statement::new("access-lifts", text, "heights of the roof; lifts by the job, the rest habit", Basis::Roof)
            .with("highest platform", layout.highest_mm / M, "m"),
    ));
    if layout.runs.iter().any(|run| run.courtyard) {
        let text = "Walls of a courtyard are counted: everything for them goes through the building or over it.";
        rows.push(Row::Said(Statement::new("access-courtyard", text, "plan of the roof", Basis::Roof)));
    }
    platform(facts, &mut rows)?;
    rails(facts, &mut rows)?;
    rows.push(Row::Blank(Blank::new(
        "access-ties",
        "How is it tied, and may it be tied through windows? Where may it not touch the building?",
        "scaffold designer",
    )));
    Ok(rows)
}

fn kind(facts: &Facts<'_>) -> Row {
    let words = match facts.layout.kind.as_str() {
        "tower" => "A mobile tower, moved along the wall",
        "edge-protection" => "Edge protection at the eaves and verges, with access by other means",
        _ => "A scaffold round the building with a working lift under the eaves",
    };
    if facts.layout.asked {
        return of_job("access-kind", "access.kind", format!("{words}."));
    }
    let text = format!("{words}, as the lengths and heights of the roof suggest. Write `access.kind` to decide it.");
    Row::Said(Statement::new("access-kind", text, "lengths and heights of the roof; habit", Basis::CommonPractice))
}

fn height(facts: &Facts<'_>) -> Result<Row, AccessFault> {
    let mm = facts.layout.plate_height_mm;
    if facts.layout.plate_height_said {
        let text = format!("Plates are {} above the ground.", facts.length(mm));
        return Ok(of_job("access-plate-height", "access.plate_height", text));
    }
    let figure = facts.need(Needed::AssumedPlate)?;
    let text = format!(
        "The job does not say how high the plates are: {} is taken. Measure it, and write `access.plate_height`.",
        facts.length(mm)
    );
    Ok(of_figure("access-plate-height", figure, text))
}

fn run_words(facts: &Facts<'_>, run: &super::super::layout::Run) -> String {
    let kind = if run.gable { "gable" } else { "eaves" };
    format!(
        "{} ({kind}) {} in {}, {} off the wall",
        run.wall,
        facts.about(run.length_mm),
        if run.bays == 1 { "1 bay".to_owned() } else { format!("{} bays", run.bays) },
        facts.about(run.off_wall_mm)
    )
}

fn lift_words(facts: &Facts<'_>, run: &super::super::layout::Run) -> String {
    let up = if run.gable_lifts == 0 {
        String::new()
    } else {
        let top = run.apex_mm.map_or_else(String::new, |apex| format!(", top at {}", facts.about(apex)));
        format!(", and {} more up the gable{top}", run.gable_lifts)
    };
    format!("{} platform at {} in {} lifts{up}", run.wall, facts.about(run.platform_mm), run.lifts)
}

fn platform(facts: &Facts<'_>, rows: &mut Vec<Row>) -> Result<(), AccessFault> {
    let width = facts.layout.width_mm;
    let class = facts.rules.width(width);
    let named = class.map_or_else(String::new, |class| format!(", width class {}", class.name));
    let text = format!(
        "{} boards of {} make a platform of {}{named}; some {:.0} m of boards for the working lift.",
        facts.job.access.boards,
        facts.length(facts.need(Needed::BoardWidth)?.own()),
        facts.length(width),
        facts.layout.board_m
    );
    let basis = class.map_or(Basis::CommonPractice, |class| class.least.basis());
    let source = class.map_or("habit of the trade".to_owned(), |class| class.least.source.clone());
    rows.push(Row::Said(Statement::new("access-platform", text, source, basis).with("width", width / M, "m")));
    rows.push(gap(facts)?);
    if let (Some(span), Some(least), Some(most)) = (
        facts.rules.get("board-span-graded"),
        facts.rules.get("board-overhang-min"),
        facts.rules.get("board-overhang-max"),
    ) {
        let text = format!(
            "Boards are held at most every {}, and run past the last transom by {} to {}.",
            span.written(),
            least.written(),
            most.written()
        );
        rows.push(of_figure("access-boards", span, text));
    }
    if let Some(lap) = facts.rules.get("board-lap-min") {
        let text = format!("Planks that lap do so by {} at least, over a bearer.", lap.written());
        rows.push(of_figure("access-boards", lap, text));
    }
    Ok(())
}

/// The gap that the eaves leave between the platform and the wall.
fn gap(facts: &Facts<'_>) -> Result<Row, AccessFault> {
    let most = facts.need(Needed::WallGap)?;
    let widest = facts.layout.runs.iter().map(|run| run.off_wall_mm).fold(0.0, f64::max);
    let verdict = Verdict::at_most(widest, most.own(), most.basis());
    let words = match verdict {
        Verdict::Over => "inside boards under the eaves, or a rail on the inside too",
        Verdict::Within | Verdict::Ask => "measure it when it stands",
    };
    let text = format!(
        "At most {} between the platform and the building. To clear the eaves and verges it stands up to {} off: {words}.",
        most.written(),
        facts.about(widest)
    );
    Ok(Row::Said(
        Statement::new("access-gap", text, most.source.clone(), most.basis())
            .with("off the wall", widest, "mm")
            .checked(verdict),
    ))
}

fn rails(facts: &Facts<'_>, rows: &mut Vec<Row>) -> Result<(), AccessFault> {
    let top = facts.need(Needed::GuardrailTop)?;
    let between = match (facts.rules.get("guardrail-top-max"), facts.rules.get("guardrail-gap-max")) {
        (Some(most), _) => format!("Top guard rail {} to {} above the platform", top.written(), most.written()),
        (None, Some(gap)) => format!(
            "Top guard rail at least {} above the platform, and no gap over {} below it",
            top.written(),
            gap.written()
        ),
        (None, None) => format!("Top guard rail at least {} above the platform", top.written()),
    };
    rows.push(of_figure("access-rails", top, format!("{between}, at every open edge and end.")));
    let toe = facts.need(Needed::ToeBoard)?;
    rows.push(of_figure("access-toe-boards", toe, format!("Toe boards at least {} high.", toe.written())));
    if let Some(fall) = facts.rules.get("fall-scaffold") {
        let text = format!("On a scaffold, protection against falls from {} up.", fall.written());
        rows.push(of_figure("access-fall-scaffold", fall, text));
    }
    if let Some(fall) = facts.rules.get("fall-residential") {
        let text = format!("In residential work, protection against falls from {} up.", fall.written());
        rows.push(of_figure("access-fall-residential", fall, text));
    }
    if let Some(force) = facts.rules.get("guardrail-force") {
        let text = format!("Guard rails hold {} pushed out or down.", force.written());
        rows.push(of_figure("access-rail-force", force, text));
    }
    Ok(())
}
