//! Hazards of pitching a roof, and the steps of the work with where to stop and look.

use crate::access::{Access, Basis, Row, Section, Statement};
use crate::programme::{Phase, Programme};

/// Where what everybody in the trade knows is from.
const TRADE: &str = "knowledge of the trade";

/// What can hurt people, what is done about it, and who may be hurt.
const HAZARDS: [(&str, &str); 9] = [
    (
        "risk-fall-edge",
        "Falls over the eaves, verges and gables, of carpenters and roofers: rails and toe boards stand before anybody goes up; nobody leans out past them.",
    ),
    (
        "risk-fall-inside",
        "Falls between joists and rafters: joists are boarded out before the frame goes up; nobody walks on bare joists, laths or battens that carry nothing yet.",
    ),
    (
        "risk-collapse",
        "The frame falls over before it is tied: ridge propped, end pairs braced both ways before anybody lets go; braces stay until permanent bracing, straps and battens hold.",
    ),
    (
        "risk-lift",
        "Ridge, hips and purlins lifted overhead: lifted in stages from plate to trestle to prop, by enough people or a hoist; nobody stands below.",
    ),
    (
        "risk-stacks",
        "Too much on one bay or one slope: stacks are spread, both slopes are loaded evenly, and joists are nailed to rafters before any load.",
    ),
    (
        "risk-falling",
        "Offcuts, tools and tiles that fall on people below: toe boards and guards, ground kept clear, pieces lowered and not thrown.",
    ),
    (
        "risk-wind",
        "Wind takes boards, sheets and people: work stops by the figures of this sheet or before, and what is loose is tied down each evening.",
    ),
    (
        "risk-saws",
        "Saws, nail guns and dust: cut at the bench or on the platform with a guard, eyes, ears and lungs covered, power tools tied off.",
    ),
    (
        "risk-openings",
        "Cutting rafters at an opening: braced and trimmed first, then cut; the hole is covered or railed at once.",
    ),
];

/// The part on hazards, with the figures of the access that bear on them.
pub(super) fn hazards(access: &Access) -> Section {
    let said = HAZARDS.iter().map(|(id, text)| said(id, text));
    let figures = [
        "access-wind-care",
        "access-wind-stop",
        "access-wet",
        "access-offcuts",
        "access-bay",
        "access-patch",
        "access-overhead",
        "access-passers-by",
        "access-rescue",
        "access-rescue-plan",
    ];
    let rows = said.chain(figures.iter().filter_map(|id| access.row(id).cloned()));
    Section::new("What can hurt people, and what is done about it", rows.collect())
}

fn said(id: &str, text: &str) -> Row {
    Row::Said(Statement::new(id, text, TRADE, Basis::CommonPractice))
}

/// The steps in order, each with where to stop and look.
pub(super) fn method(programme: &Programme) -> Section {
    let rows = programme.activities.iter().map(|activity| {
        let day = |when: &crate::programme::When| when.date.clone().unwrap_or_else(|| format!("day {}", when.day));
        let (id, look) = look(activity.phase);
        let text = format!(
            "{}: {} to {}, {}. Stop and look: {look}",
            activity.name,
            day(&activity.first),
            day(&activity.last),
            people(activity.people)
        );
        Row::Said(Statement::new(
            id,
            text,
            "programme, by estimated hours; knowledge of the trade",
            Basis::CommonPractice,
        ))
    });
    Section::new("How the work is done", rows.collect())
}

fn people(count: u32) -> String {
    if count == 1 { "one person".to_owned() } else { format!("{count} people") }
}

/// Name of the step, and what must be so before the next begins.
const fn look(phase: Phase) -> (&'static str, &'static str) {
    match phase {
        Phase::AccessUp => ("method-access-up", "handed over with its certificate, inspected, the tag says so."),
        Phase::Plates => ("method-plates", "diagonals agree, plates straight to a line, bed set, straps on."),
        Phase::Joists => ("method-joists", "joists tie the plates, corners tied, a deck is boarded out."),
        Phase::Cutting => ("method-cutting", "the pattern pair was tried at both ends before the set is cut."),
        Phase::MainFrame => {
            ("method-main-frame", "gable plumb, ridge level and straight, braced both ways, joists nailed to rafters.")
        }
        Phase::HipsValleys => {
            ("method-hips-valleys", "hips straight to a line, jacks in opposing pairs, diagonals again.")
        }
        Phase::Purlins => {
            ("method-purlins", "rafters straight, struts on a wall or beam that carries, scarfs near a strut.")
        }
        Phase::Openings => ("method-openings", "trimmed before it is cut, clear of the flue, the hole covered."),
        Phase::EavesVerges => {
            ("method-eaves-verges", "fascia to one line, straps and bracing inspected before covering.")
        }
        Phase::Inside => ("method-inside", "permanent bracing and noggins nailed at every crossing."),
        Phase::UnderlayBattens => {
            ("method-underlay-battens", "wind within the figures, battens span as their size allows.")
        }
        Phase::Covering => ("method-covering", "both slopes loaded evenly, platform stacks within their bay."),
        Phase::Edges => ("method-edges", "nothing left to do from the platform: gutters, lead, vents, paint."),
        Phase::AccessDown => ("method-access-down", "notice given, ground kept clear, no part left without its ties."),
    }
}
