//! What is lifted, worded: kind by kind, by the heaviest of each.

use super::words::{counted, hands, kilograms};
use crate::views::{SiteLift, SiteLifts};
use crate::wording::Writing;
use crate::wording::kind;
use job::Job;
use site::lifts::{Hands, Lift, Pack, Stage};
use site::whole::Site;

/// What is said when hands are not enough to carry it.
const CARRIED_BY_AID: &str = "a hoist";
/// What is said when hands are not enough above the shoulder.
const RAISED_BY_AID: &str = "not by hand: in stages, or with a hoist";

/// All kinds, the heaviest first.
pub(super) fn of(job: &Job, site: &Site, writing: &Writing) -> SiteLifts {
    let mut packs: Vec<&Pack> = site.packs.iter().collect();
    packs.sort_by(|a, b| b.heaviest_kg.total_cmp(&a.heaviest_kg));
    let one = |pack: &&Pack| {
        let of_kind = site.lifts.iter().filter(|lift| lift.kind == pack.kind);
        let heaviest = of_kind.max_by(|a, b| a.damp_kg.total_cmp(&b.damp_kg))?;
        Some(lift(pack, heaviest, job.ordering.lift, writing))
    };
    let cautions = [
        "Weights are of damp timber. The people are those of a published filter, held close or above the shoulder: no limit of the law, and nothing of wind, ladders or footing.",
        "Who is in charge of the lift decides: people, footing, wind, hoist.",
    ];
    SiteLifts {
        kinds: packs.iter().filter_map(one).collect(),
        cautions: cautions.iter().map(|text| writing.say(text)).collect(),
    }
}

fn lift(pack: &Pack, heaviest: &Lift, hoist_kg: f64, writing: &Writing) -> SiteLift {
    let trestles: Vec<String> = heaviest.trestles_mm.iter().map(|mm| writing.length(*mm)).collect();
    let mut trestle = trestles.iter();
    let stage = |of: &Stage| match of {
        Stage::ToPlates => "up to the level of the plates".to_owned(),
        Stage::Trestle => match trestle.next() {
            Some(high) => format!("one end, then the other, onto a trestle {high} above the plates"),
            None => "one end, then the other, onto a trestle".to_owned(),
        },
        Stage::Prop => "one end, then the other, onto its prop".to_owned(),
        Stage::PlaceByEnds => "one end, then the other, into its place".to_owned(),
        Stage::Place => "into its place by hand".to_owned(),
        Stage::Hoist => "with a hoist all the way".to_owned(),
    };
    let stages = heaviest.stages.iter().map(stage).map(|text| writing.say_first(&text)).collect();
    let hoist = match pack.lifts {
        Some(lifts) => format!("{}, {} at once", counted(lifts, "lift", "lifts"), pack.each_lift),
        None => "none: the heaviest is more than it lifts".to_owned(),
    };
    let figures = vec![
        writing.figure("the heaviest, dry", kilograms(heaviest.kg)),
        writing.figure("it balances, from its foot end", writing.length(heaviest.balance_mm)),
        writing.figure("the longest", writing.length(pack.longest_mm)),
        writing.figure("all of them, damp", kilograms(pack.damp_kg)),
        writing.figure(&format!("with a hoist for {}", kilograms(hoist_kg)), writing.say(&hoist)),
    ];
    let overhead = if heaviest.above_shoulder { hands(heaviest.overhead, RAISED_BY_AID) } else { String::new() };
    SiteLift {
        kind: kind(writing.words, pack.kind),
        pieces: pack.pieces,
        heaviest: kilograms(heaviest.damp_kg),
        mark: heaviest.mark.clone(),
        carried: writing.say(&hands(heaviest.carried, CARRIED_BY_AID)),
        aid: heaviest.carried == Hands::Aid || (heaviest.above_shoulder && heaviest.overhead == Hands::Aid),
        overhead: writing.say(&overhead),
        stages,
        figures,
    }
}
