//! What the platform carries: class, a bay with people and a stack on it, patches, loaded lifts.

use super::super::AccessFault;
use super::super::loading::whole_pieces;
use super::super::rules::Needed;
use super::super::statement::{Basis, Row, Statement, Verdict};
use super::{Facts, M, of_figure, of_habit, of_job, people as counted};
use job::Covering;
use job::written::{fixed, tenth};

pub(super) fn rows(facts: &Facts<'_>) -> Result<Vec<Row>, AccessFault> {
    let mut rows = Vec::new();
    if let Some(class) = facts.rules.class(facts.job.access.class) {
        let text = format!("Load class {}: {}, {} all over.", class.name, class.purpose, class.spread.written());
        rows.push(of_figure("access-class", &class.spread, text));
        if let (Some(part), Some(area)) = (&class.part, &class.part_area) {
            let text = format!("Or {} on {} of the platform.", part.written(), area.written());
            rows.push(of_figure("access-class-part", part, text));
        }
    }
    let people = facts.people;
    let source = if facts.job.access.people.is_some() { "access.people" } else { "programme.crew" };
    rows.push(of_job("access-people", source, format!("At most {} on one platform at once.", counted(people))));
    if let (Some(bay), Some(stack)) = (facts.bay, facts.stack) {
        rows.push(average(facts, bay, stack)?);
        rows.push(patch(bay, stack));
        if facts.job.carried.as_ref().is_none_or(|carried| carried.covering == Covering::PlainTile) {
            rows.push(tiles(facts, bay)?);
        }
    }
    if let (Some(lift), Some(other)) = (facts.rules.get("loaded-lift"), facts.rules.get("loaded-neighbour")) {
        let per_cent = |share: f64| fixed(share * 100.0, 0);
        let text = format!(
            "One lift carries {} % of its class while one beside it carries {} %; the rest carry nothing.",
            per_cent(lift.own()),
            per_cent(other.own())
        );
        rows.push(of_figure("access-lifts-loaded", lift, text));
    }
    if let Some(factor) = facts.rules.get("scaffold-load-factor") {
        let text = format!("The scaffold holds {} times what is meant to stand on it.", factor.written());
        rows.push(of_figure("access-load-factor", factor, text));
    }
    let walkway = facts.need(Needed::Walkway)?;
    rows.push(of_figure(
        "access-walkway",
        walkway,
        format!("Leave {} clear to walk past what is stacked.", walkway.written()),
    ));
    rows.push(of_habit(
        "access-stacks",
        "Stacks stand over transoms near the standards, along the platform, and never higher than the toe board holds back. The handover certificate is the limit.",
    ));
    Ok(rows)
}

fn average(facts: &Facts<'_>, bay: &super::super::BayCheck, stack: &super::super::Stack) -> Result<Row, AccessFault> {
    let person = facts.need(Needed::Person)?;
    let words = match bay.average {
        Verdict::Within => "within the average, which is only half of the question",
        Verdict::Ask => "by a figure that nothing is passed by: ask the designer",
        Verdict::Over => "too much: fewer people, a smaller stack, or another class",
    };
    let text = format!(
        "A bay of {} carries {} kg by class {}. {} at {} each leave {} kg. {} {} weigh {} kg, of which {} kg lie in the bay: {words}. {} of them fit.",
        facts.length(facts.layout.bay_mm),
        fixed(bay.capacity_kg, 0),
        bay.class,
        capital(&counted(bay.people)),
        person.written(),
        fixed(bay.left_kg, 0),
        stack.pieces,
        stack.what,
        fixed(stack.kg, 0),
        fixed(bay.share_kg, 0),
        bay.pieces_fit,
    );
    let source = format!("{}; people and damp timber by habit", spread_source(facts));
    Ok(Row::Said(
        Statement::new("access-bay", text, source, bay.spread_basis)
            .with("bay carries", bay.capacity_kg, "kg")
            .with("left for material", bay.left_kg, "kg")
            .with("in the bay", bay.share_kg, "kg")
            .with("pieces that fit", f64::from(bay.pieces_fit), "")
            .checked(bay.average),
    ))
}

/// With a capital first letter.
fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

fn spread_source(facts: &Facts<'_>) -> String {
    facts.rules.class(facts.job.access.class).map_or_else(String::new, |class| class.spread.source.clone())
}

fn patch(bay: &super::super::BayCheck, stack: &super::super::Stack) -> Row {
    let kn = fixed(bay.patch_kn, 2);
    let length = tenth(stack.length_mm / M);
    let words = match (bay.patch, bay.patch_limit_kn) {
        (Verdict::Over, Some(limit)) => {
            format!("over the {} kN that a patch of that size may carry: spread the stack", fixed(limit, 1))
        }
        (_, Some(limit)) => format!("beside {} kN, a figure from memory: ask the designer", fixed(limit, 1)),
        (_, None) => "and the region has no figure for a patch: ask the designer".to_owned(),
    };
    let text =
        format!("Half a metre of that stack, {length} m long, weighs {kn} kN on a patch half a metre square, {words}.");
    Row::Said(
        Statement::new("access-patch", text, "EN 12811-1 table 3, patch of 500 mm", Basis::Memory)
            .with("on the patch", bay.patch_kn, "kN")
            .checked(bay.patch),
    )
}

fn tiles(facts: &Facts<'_>, bay: &super::super::BayCheck) -> Result<Row, AccessFault> {
    let tile = facts.need(Needed::Tile)?;
    let count = whole_pieces(bay.left_kg, tile.own());
    let text = format!(
        "Without timber, {count} plain tiles of {} fit in a bay by the average. Weigh one: makes differ. Load both slopes evenly.",
        tile.written()
    );
    Ok(of_figure("access-tiles", tile, text))
}
