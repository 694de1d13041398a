//! One group of timbers: its cutting plan, and what that buys.

use super::layouts::layouts;
use super::out::{Best, Buy, TimberOut, Unshared};
use crate::cutting::{Aim, CuttingPlan, Need, Sawing, plan, plan_without_sharing};
use crate::money::Money;
use crate::stock::{Group, Offer, Offers, Region, offers};
use job::{Job, OrderAim};
use roof::solution::{Member, Size, Solution};

/// A metre, mm.
const METRE: f64 = 1000.0;

/// Cubic millimetres in a cubic metre.
const CUBIC: f64 = 1e9;

/// What to buy for one group, and how to cut it.
pub fn timber(job: &Job, solution: &Solution, region: &Region, group: &Group, density: f64) -> TimberOut {
    let offers = offers(job, region, group);
    let order = &job.ordering;
    let need = Need {
        section: group.section,
        pieces: group.pieces.clone(),
        stock: offers.stock.clone(),
        sawing: Sawing { kerf: order.kerf, trim: order.trim, keep: order.keep },
        aim: if order.aim == OrderAim::Cost { Aim::Cost } else { Aim::Waste },
    };
    let mut out = TimberOut {
        size: Size { thickness_mm: group.section[0], depth_mm: group.section[1] },
        class: group.class.map(|c| c.name().to_owned()),
        timbers: u32::try_from(group.count()).unwrap_or(u32::MAX),
        buy: Vec::new(),
        bought_m: 0.0,
        used_m: 0.0,
        waste_percent: 0.0,
        kg: 0.0,
        cost: None,
        dated: offers.dated.clone(),
        best: Best::default(),
        unshared: None,
        layouts: Vec::new(),
        offcuts: Vec::new(),
        refused: None,
    };
    match plan(&need) {
        Ok(found) => fill(&mut out, solution, &need, &offers, group, &found, density),
        Err(fault) => out.refused = Some(fault.to_string()),
    }
    if out.refused.is_none() {
        out.unshared = plan_without_sharing(&need).ok().map(|plain| Unshared {
            bought_m: bought(&need, &plain) / METRE,
            cost: offers.priced.then(|| plain.cost.amount()),
        });
    }
    out
}

fn fill(
    out: &mut TimberOut,
    solution: &Solution,
    need: &Need,
    offers: &Offers,
    group: &Group,
    plan: &CuttingPlan,
    density: f64,
) {
    let faces: Vec<_> = group.pieces.iter().map(|p| faces_of(solution, p.marks.first())).collect();
    out.layouts = layouts(need, plan, group, &faces);
    out.buy = buys(need, offers, plan);
    out.bought_m = bought(need, plan) / METRE;
    let used: f64 = plan.bars.iter().filter_map(|b| need.stock.get(b.stock)).map(|s| s.length).sum();
    out.used_m = used / METRE;
    out.kg = bought(need, plan) * need.section[0] * need.section[1] / CUBIC * density;
    out.cost = offers.priced.then(|| plan.cost.amount());
    out.offcuts = plan.bars.iter().map(|b| b.left).filter(|left| *left >= need.sawing.keep).collect();
    out.offcuts.sort_by(|a, b| b.total_cmp(a));
    let kept: f64 = out.offcuts.iter().sum();
    let area = need.section[0] * need.section[1];
    if used * area > 0.0 {
        out.waste_percent = ((used - kept) * area - group.volume_m3 * CUBIC) / (used * area) * 100.0;
    }
    let unit = |value: i64| Money(value).amount();
    let (of, scale) = match (need.aim, offers.priced) {
        (Aim::Waste, _) => ("waste", 1.0 / METRE),
        (Aim::Cost, true) => ("money", 1.0),
        (Aim::Cost, false) => ("length", 1.0),
    };
    out.best = Best {
        of: of.to_owned(),
        value: unit(plan.value) * scale,
        at_least: unit(plan.at_least) * scale,
        proven: plan.value <= plan.at_least,
    };
}

/// Length that is bought, mm.
fn bought(need: &Need, plan: &CuttingPlan) -> f64 {
    let stock = plan.bars.iter().filter_map(|b| need.stock.get(b.stock));
    stock.filter(|s| s.yard.is_none()).map(|s| s.length).sum()
}

fn buys(need: &Need, offers: &Offers, plan: &CuttingPlan) -> Vec<Buy> {
    let mut counts = vec![0_u32; need.stock.len()];
    for bar in &plan.bars {
        if let Some(count) = counts.get_mut(bar.stock) {
            *count += 1;
        }
    }
    let lines = need.stock.iter().zip(&offers.from).zip(counts).filter(|(_, count)| *count > 0);
    let mut out: Vec<Buy> = lines
        .map(|((stock, from), count)| Buy {
            length_mm: stock.length,
            count,
            stock: if let Offer::Merchant(name) = from { Some(name.clone()) } else { None },
            yard: stock.yard.clone(),
            each: (offers.priced && stock.yard.is_none()).then(|| price(stock.cost)),
        })
        .collect();
    out.sort_by(|a, b| a.yard.is_some().cmp(&b.yard.is_some()).then(b.length_mm.total_cmp(&a.length_mm)));
    out
}

fn price(cost: Money) -> f64 {
    cost.amount()
}

/// The faces of a timber on the bench, the wide side of its section across `up`.
fn faces_of(solution: &Solution, mark: Option<&String>) -> Vec<Vec<[f64; 3]>> {
    let member: Option<&Member> = mark.and_then(|mark| solution.members.iter().find(|m| m.mark == *mark));
    let Some(member) = member else { return Vec::new() };
    let points = crate::stock::bench_points(member);
    let ring = |ring: &Vec<u32>| ring.iter().filter_map(|k| points.get(*k as usize).copied()).collect();
    member.solid.faces.iter().map(ring).collect()
}
