//! The whole order of a roof: timber with its cutting plan, covering, fixings, weights and prices.

mod layouts;
pub mod out;
mod plans;
mod timber;
mod unused;

pub use out::{Best, Buy, CutOut, LaidOut, Layout, Order, TimberOut, Unshared};
pub use plans::Plans;

use crate::buying::{
    Entry, LiftGroup, Line, LineKind, Notice, NoticeLevel, lines, loads_up, priced, quote, small_goods,
};
use crate::covering::{Chosen, Covered, Coverings, cover};
use crate::money::Money;
use crate::stock::{Group, Region, UnknownRegion, groups};
use job::{Covering, Job, OrderAim, Per};
use roof::solution::Solution;
use strength::annex::timber::Timber;
use strength::whole::Strength;

/// What to buy for a roof, and how to cut it.
///
/// # Errors
/// A region whose stock is not known. What cannot be cut or covered is said in its own place, and the rest stands.
pub fn order(job: &Job, solution: &Solution, strength: Option<&Strength>) -> Result<Order, UnknownRegion> {
    order_after(job, solution, strength, &mut Plans::default())
}

/// The same, with the plans of an order before: what is asked for as it was then is not planned again.
///
/// # Errors
/// As [`order`].
pub fn order_after(
    job: &Job,
    solution: &Solution,
    strength: Option<&Strength>,
    plans: &mut Plans,
) -> Result<Order, UnknownRegion> {
    let region = Region::of(&job.region)?;
    let groups: Vec<(Group, f64)> = groups(job, solution)
        .into_iter()
        .map(|group| {
            let density = density(job, region, &group);
            (group, density)
        })
        .collect();
    let timber = plans.of(job, solution, region, &groups);
    let (covering, covering_refused) = match covered(job, solution) {
        None => (None, None),
        Some(Ok(covered)) => (Some(covered), None),
        Some(Err(why)) => (None, Some(why)),
    };
    let mut all: Vec<Line> = covering.as_ref().map(covering_lines).unwrap_or_default();
    let covering_count = all.len();
    all.extend(lines(job, solution, strength));
    let (lines, mut notices) = priced(all, &job.prices);
    notices.extend(timber.iter().filter_map(refusal));
    notices.extend(unused::notices(job, &groups.iter().map(|(group, _)| group).collect::<Vec<_>>()));
    let entries = timber.iter().map(entry).chain(lines.iter().enumerate().map(|(k, line)| {
        let group = if k < covering_count { "covering" } else { "fixings and the rest" };
        Entry::of(group, line)
    }));
    let quote = quote(&entries.collect::<Vec<_>>());
    let tiles = covering.iter().flat_map(|covered| &covered.lines);
    let each_kg: Vec<Option<f64>> = tiles.map(|line| line.each_kg).collect();
    let others = lines.iter().enumerate().filter_map(|(k, line)| {
        let each = each_kg.get(k).copied().flatten();
        LiftGroup::of(&line.line, each)
    });
    let up: Vec<LiftGroup> = timber.iter().flat_map(|t| going_up(t, region.damp_density.value)).chain(others).collect();
    Ok(Order {
        currency: region.currency.clone(),
        aim: if job.ordering.aim == OrderAim::Cost { "cost" } else { "waste" }.to_owned(),
        kerf_mm: job.ordering.kerf,
        trim_mm: job.ordering.trim,
        keep_mm: job.ordering.keep,
        lift_kg: job.ordering.lift,
        treated: job.ordering.treated,
        timber,
        covering,
        covering_refused,
        covering_lines: u32::try_from(covering_count).unwrap_or(u32::MAX),
        lines,
        lifts: loads_up(&small_goods(up), job.ordering.lift),
        quote,
        notices,
        cautions: CAUTIONS.iter().map(|c| (*c).to_owned()).collect(),
    })
}

/// Cautions for every sheet with what to buy.
const CAUTIONS: [&str; 3] = [
    "Sections, strength classes and treatment are those written in the job: have them approved before ordering.",
    "Counts are of the roof as it is drawn. Order nothing from them before the plates are measured as built.",
    "The maker's fixing specification, the code of practice for the covering and whoever approves the roof decide.",
];

/// Mean density of a group, kg/m³.
fn density(job: &Job, region: &Region, group: &Group) -> f64 {
    let graded = group.class.and_then(|class| Timber::of(&job.region).ok()?.class(class.name()).ok());
    graded.map_or(region.board_density.value, |wood| wood.rho_mean)
}

/// What covers the slopes: what `[covering]` says, or else what the roof is said to carry.
fn covered(job: &Job, solution: &Solution) -> Option<Result<Covered, String>> {
    let chosen = match (&job.covering, &job.carried) {
        (Some(c), _) => Chosen {
            length: c.length,
            width: c.width,
            cover_width: c.cover_width,
            head_lap: c.head_lap,
            most_gauge: c.most_gauge,
            least_pitch: c.least_pitch,
            weight: c.weight,
            batten: c.batten.map(|b| [b.thickness, b.depth]),
            supported: c.boarded,
            breakage: c.breakage.map(|percent| percent / 100.0),
            ..Chosen::named(&c.of)
        },
        (None, Some(carried)) => Chosen::named(name_of(carried.covering)),
        (None, None) => return None,
    };
    let figures = match Coverings::of(&job.region) {
        Ok(figures) => figures,
        Err(why) => return Some(Err(why.to_string())),
    };
    Some(cover(solution, &chosen, job.timber.rafter.centres, figures).map_err(|why| why.to_string()))
}

/// The covering of the region that goes by a word of `[loads]`.
const fn name_of(covering: Covering) -> &'static str {
    match covering {
        Covering::PlainTile => "plain-tile",
        Covering::HandmadePlainTile => "handmade-plain-tile",
        Covering::InterlockingTile => "interlocking-tile",
        Covering::Pantile => "pantile",
        Covering::Slate => "slate",
        Covering::HeavySlate => "heavy-slate",
        Covering::FibreCementSlate => "fibre-cement-slate",
    }
}

/// Lines of the covering as lines to buy.
fn covering_lines(covered: &Covered) -> Vec<Line> {
    use crate::covering::CoverUnit;
    let line = |c: &crate::covering::CoverLine| Line {
        item: c.item.clone(),
        what: c.what.clone(),
        size: String::new(),
        quantity: c.quantity,
        unit: match c.unit {
            CoverUnit::Each => Per::Each,
            CoverUnit::M => Per::Metre,
            CoverUnit::M2 => Per::SquareMetre,
            CoverUnit::Roll => Per::Roll,
            CoverUnit::Kg => Per::Kilogram,
        },
        kg: c.kg.unwrap_or(0.0),
        counted: c.from.clone(),
        source: String::new(),
        standing: String::new(),
        kind: LineKind::Counted,
    };
    covered.lines.iter().map(line).collect()
}

/// Why a group cannot be cut, as a notice.
fn refusal(timber: &TimberOut) -> Option<Notice> {
    let text = timber.refused.clone()?;
    let (t, d) = (timber.size.thickness_mm, timber.size.depth_mm);
    Some(Notice { code: "cannot-cut".to_owned(), level: NoticeLevel::Warn, text, place: format!("{t:.0} x {d:.0}") })
}

fn entry(timber: &TimberOut) -> Entry {
    let (t, d) = (timber.size.thickness_mm, timber.size.depth_mm);
    let class = timber.class.as_ref().map_or_else(String::new, |c| format!(" {c}"));
    Entry {
        group: "timber".to_owned(),
        what: format!("{t:.0} x {d:.0}{class}"),
        cost: timber.cost.map(Money::of),
        dated: timber.dated.first().cloned(),
        to_choose: false,
    }
}

/// Bought lengths as what goes up, as wet as they come off the lorry, kg/m³.
fn going_up(timber: &TimberOut, density: f64) -> Vec<LiftGroup> {
    /// Cubic millimetres in a cubic metre.
    const CUBIC: f64 = 1e9;
    let (t, d) = (timber.size.thickness_mm, timber.size.depth_mm);
    let group = |buy: &Buy| LiftGroup {
        what: format!("{t:.0} x {d:.0}, {:.0} long", buy.length_mm),
        pieces: buy.count,
        each_kg: t * d * buy.length_mm / CUBIC * density,
    };
    timber.buy.iter().map(group).collect()
}
