//! The access, worded.

use super::fields;
use super::records::section;
use super::words::{kilograms, people, verdict, verdict_word};
use crate::opening::Open;
use crate::views::{SiteAccess, SiteBay, SiteFigure, SiteForm, SiteWall};
use crate::wording::Writing;
use job::written::fixed;
use site::access::layout::{Layout, Run};
use site::access::{BayCheck, Stack, Verdict};
use site::whole::Site;
use std::collections::BTreeMap;

const ASKED: [fields::Asked; 13] = [
    ("access.kind", "What the roof is put up from", SiteForm::Choice),
    ("access.class", "Load class: 2 light work, 3 carpentry, 4 stacked tiles", SiteForm::Number),
    ("access.plate_height", "Height of the plates above the ground", SiteForm::Text),
    ("access.people", "People on one platform at once", SiteForm::Number),
    ("access.stack", "Timbers in one stack on the platform", SiteForm::Number),
    ("access.bay", "Length of a bay", SiteForm::Text),
    ("access.boards", "Boards side by side", SiteForm::Number),
    ("access.lift", "Greatest height of a lift", SiteForm::Text),
    ("access.ground", "The ground it stands on", SiteForm::Choice),
    ("access.passers_by", "People pass by below", SiteForm::Choice),
    ("access.on_pavement", "It stands on a pavement or road", SiteForm::Choice),
    ("access.overhead_lines", "Electric lines run overhead", SiteForm::Choice),
    ("access.sheeted", "It is sheeted, or under a roof of its own", SiteForm::Choice),
];

/// The access.
pub(super) fn of(open: &Open, site: &Site, writing: &Writing) -> SiteAccess {
    let access = &site.access;
    let [length, out] = access.ladder_mm;
    SiteAccess {
        kind: kind(&access.layout, writing),
        figures: whole(&access.layout, access.people, writing),
        walls: access.layout.runs.iter().map(|run| wall(run, writing)).collect(),
        bay: access.bay.as_ref().map(|check| bay(check, access.stack.as_ref(), writing)),
        ladder: vec![
            writing.figure("ladder, at least", writing.length(length)),
            writing.figure("its foot stands out", writing.length(out)),
        ],
        fields: fields::of(open, &ASKED, writing),
        sections: access.sections.iter().map(|one| section(one, &BTreeMap::new(), writing)).collect(),
        cautions: access.cautions.iter().map(|text| writing.sentence(text)).collect(),
    }
}

fn kind(layout: &Layout, writing: &Writing) -> String {
    let who = if layout.asked { "as the job says" } else { "as the roof suggests" };
    writing.say_first(&format!("{}, {who}", layout.kind.replace('-', " ")))
}

fn whole(layout: &Layout, on_it: u32, writing: &Writing) -> Vec<SiteFigure> {
    let plate = writing.length(layout.plate_height_mm);
    let plate = if layout.plate_height_said { plate } else { format!("{plate}, taken: measure it") };
    vec![
        writing.figure("plates above the ground", plate),
        writing.figure("highest platform", writing.length(layout.highest_mm)),
        writing.figure("length all round", writing.lengths.total(layout.length_mm)),
        writing.figure("width of the platform", writing.length(layout.width_mm)),
        writing.figure("bays of the working lift", layout.bays.to_string()),
        writing.figure("people on one platform", on_it.to_string()),
    ]
}

fn wall(run: &Run, writing: &Writing) -> SiteWall {
    let kind = match (run.gable, run.courtyard) {
        (true, true) => ", gable in a courtyard",
        (true, false) => ", gable",
        (false, true) => ", in a courtyard",
        (false, false) => "",
    };
    let mut figures = vec![
        writing.figure("platform above the ground", writing.length(run.platform_mm)),
        writing.figure("length with its corners", writing.length(run.length_mm)),
        writing.figure("bays", run.bays.to_string()),
        writing.figure("inside of the platform off the wall", writing.length(run.off_wall_mm)),
    ];
    if run.lifts > 0 {
        let lifts = format!("{} of {}", run.lifts, writing.length(run.lift_mm));
        figures.push(writing.figure("lifts", lifts));
    }
    if run.gable_lifts > 0 {
        figures.push(writing.figure("more lifts up the gable", run.gable_lifts.to_string()));
    }
    if let Some(apex) = run.apex_mm {
        figures.push(writing.figure("top of the gable above the ground", writing.length(apex)));
    }
    SiteWall { wall: writing.say_first(&format!("wall {}{kind}", run.wall)), figures }
}

fn bay(check: &BayCheck, stack: Option<&Stack>, writing: &Writing) -> SiteBay {
    let stack = stack.map_or_else(String::new, |stack| {
        format!(" and {} of {}, {} long", stack.pieces, stack.what, writing.length(stack.length_mm))
    });
    let overall = check.overall();
    let mut figures = vec![
        writing.figure("one bay carries, all over", kilograms(check.capacity_kg)),
        writing.figure("people with tools", kilograms(check.people_kg)),
        writing.figure("left for timber", kilograms(check.left_kg)),
        writing.figure("timber in that bay", outcome(&kilograms(check.share_kg), check.average, writing)),
        writing.figure("timbers that fit beside the people", check.pieces_fit.to_string()),
        writing.figure("people that fit with nothing else", check.people_fit.to_string()),
    ];
    let limit = check
        .patch_limit_kn
        .map_or_else(|| "no figure to hold it against".to_owned(), |limit| format!("of {} kN", fixed(limit, 2)));
    let patch = format!("{} kN {limit}", fixed(check.patch_kn, 2));
    figures.push(writing.figure("on half a metre square", outcome(&patch, check.patch, writing)));
    SiteBay {
        verdict: verdict(overall),
        word: writing.say_first(verdict_word(overall)),
        what: writing.say_first(&format!(
            "{}{stack}, on one bay of {} ({} kN/m²)",
            people(check.people),
            check.class,
            fixed(check.spread_kn_m2, 2)
        )),
        figures,
    }
}

fn outcome(figure: &str, of: Verdict, writing: &Writing) -> String {
    let word = match of {
        Verdict::Within => "within",
        Verdict::Ask => "ask",
        Verdict::Over => "over",
    };
    writing.say(&format!("{figure}: {word}"))
}
