//! Short cautions, each with who decides.

use super::graph::Graph;
use super::rules::PlateRules;
use super::types::{Caution, PropFoot, PuttingUp};
use roof::solution::MemberKind;
use std::collections::BTreeSet;

/// Adds the cautions of a sheet.
pub fn add(graph: &Graph<'_>, rules: &PlateRules, sheet: &mut PuttingUp, braces_stay: bool) {
    let out: BTreeSet<&String> = sheet.steps.iter().flat_map(|s| &s.props_out).collect();
    let staying: Vec<&str> = sheet.props.iter().filter(|p| !out.contains(&p.name)).map(|p| p.name.as_str()).collect();
    let mut told = Vec::new();
    let mut say = |text: String, decides: &str| told.push(Caution { text, decides: decides.into() });
    say(
        "The order was checked for what stands on what and for racking, not for the strength of props, nails and footings.".into(),
        "whoever is in charge of putting it up",
    );
    say(
        "Temporary braces stay until bracing, straps and battens hold; none is moved to make room.".into(),
        "whoever is in charge of putting it up",
    );
    if !staying.is_empty() {
        say(
            format!("Props stay in ({}): without them something has nothing to stand on.", staying.join(", ")),
            "a structural engineer",
        );
    }
    if braces_stay && !sheet.braces.is_empty() {
        say("Leave the temporary braces in until the covering is on: nothing else keeps part of this roof from racking.".into(), "a structural engineer");
    }
    let in_place: Vec<&str> =
        sheet.props.iter().filter(|p| p.from == PropFoot::InPlace).map(|p| p.under.as_str()).collect();
    let marks: BTreeSet<&str> = in_place.into_iter().collect();
    if !marks.is_empty() {
        let marks: Vec<&str> = marks.into_iter().collect();
        say(
            format!(
                "Nothing in the roof carries the foot of {}: a gable ladder or a bracket is wanted.",
                marks.join(", ")
            ),
            "the carpenter, before cutting",
        );
    }
    let short: Vec<&str> = graph
        .timbers
        .iter()
        .filter(|t| t.on_wall && t.kind() == MemberKind::WallPlate && t.length < rules.least_length_mm.value)
        .filter(|t| {
            let strip = graph.solution.setting_out.iter().find(|s| s.mark == t.mark());
            strip.is_some_and(|s| (s.stations.len() as f64) < rules.least_supports.value)
        })
        .map(|t| t.mark())
        .collect();
    if !short.is_empty() {
        say(
            format!(
                "Plates under 3 m that carry fewer than 3 rafters: {}. Run them on or lap them to the next.",
                short.join(", ")
            ),
            "building control",
        );
    }
    if !graph.solution.gables.is_empty() {
        say("Gables that purlins and ladders rest on must be built up and set first, and are not stable until they are strapped.".into(), "the bricklayer and whoever is in charge");
    }
    sheet.cautions = told;
}
