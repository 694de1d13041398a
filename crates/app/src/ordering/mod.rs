//! The order on the screen: worked out when it is asked for, worded here.

mod buy;
mod cover;
mod drawing;
mod figures;
mod layouts;
mod lines;
mod pricing;
mod saw;
mod yard;

pub(crate) use pricing::{Stocked, section_of, stocked};
pub(crate) use yard::joined;

use crate::desk::Desk;
use crate::refusal::Refusal;
use crate::side_desk::{SideDesk, without_ticks};
use crate::views::{CuttingAsk, CuttingGroup, Figure, LayoutAsk, LayoutView, OrderNotice, OrderView, YardAsk, YardRow};
use crate::wording::Writing;
use crate::wording::capital;
use figures::kilograms;
use job::Job;
use order::buying::{Notice, NoticeLevel};
use order::whole::{Order, Plans, order_after};
use roof::solution::Solution;
use strength::whole::Strength;

/// The order of a job as it was worked out last, so that going back and forth between screens costs nothing.
#[derive(Debug)]
pub(crate) struct Ordered {
    /// The job, without its ticks: they change nothing that is bought or cut.
    job: Job,
    found: Result<Order, Refusal>,
    plans: Plans,
}

impl Ordered {
    /// Works it out, with what is still good of the one before.
    pub(crate) fn of(job: &Job, solution: &Solution, strength: Option<&Strength>, before: Option<Self>) -> Self {
        let mut plans = before.map(|before| before.plans).unwrap_or_default();
        let found = order_after(job, solution, strength, &mut plans).map_err(|fault| {
            Refusal::new(
                "no-order",
                capital(&fault.to_string()),
                "Change what is named here; without it nothing can be ordered",
            )
        });
        Self { job: without_ticks(job), found, plans }
    }

    /// Whether it is that of a job.
    pub(crate) fn is_of(&self, job: &Job) -> bool {
        self.job == without_ticks(job)
    }

    /// What was found.
    pub(crate) fn found(&self) -> Result<&Order, Refusal> {
        self.found.as_ref().map_err(Clone::clone)
    }
}

/// What to buy.
pub(crate) fn view(side: &mut SideDesk) -> Result<OrderView, Refusal> {
    side.work_out_order()?;
    let desk = &side.desk;
    let (job, solution, order) = (desk.job()?, desk.solution()?, side.order()?);
    let writing = writing(desk, order);
    let covering_lines = usize::try_from(order.covering_lines).unwrap_or(usize::MAX).min(order.lines.len());
    let (of_covering, others) = order.lines.split_at(covering_lines);
    Ok(OrderView {
        currency: order.currency.clone(),
        figures: totals(order, &writing),
        notes: order.quote.notes.iter().map(|note| writing.sentence(note)).collect(),
        timber: order.timber.iter().map(|timber| buy::timber(job, solution, timber, &writing)).collect(),
        covering: cover::covering(job, order, of_covering, desk.open()?.said.value("loads.covering"), &writing),
        lines: others.iter().map(|line| lines::line(job, line, &writing)).collect(),
        yard: yard::of_job(job, order, &writing),
        lifts: order.lifts.iter().map(|load| lines::lift(load, order.lift_kg, &writing)).collect(),
        notices: order.notices.iter().map(|one| notice(one, &writing)).collect(),
        cautions: order.cautions.iter().map(|text| writing.sentence(text)).collect(),
        oldest: order.quote.oldest.clone(),
    })
}

/// How to cut it.
pub(crate) fn cutting(side: &mut SideDesk, ask: &CuttingAsk) -> Result<Vec<CuttingGroup>, Refusal> {
    side.work_out_order()?;
    let (job, order) = (side.desk.job()?, side.order()?);
    Ok(layouts::groups(job, order, &writing(&side.desk, order), ask.width))
}

/// How some lengths are cut.
pub(crate) fn layout(side: &mut SideDesk, ask: &LayoutAsk) -> Result<LayoutView, Refusal> {
    side.work_out_order()?;
    let (job, order) = (side.desk.job()?, side.order()?);
    saw::layout(job, order, &writing(&side.desk, order), ask)
}

/// Offcuts that are kept on the device.
pub(crate) fn offcuts(side: &SideDesk, ask: &YardAsk) -> Vec<YardRow> {
    let order = side.order().ok();
    let writing = Writing::new(side.desk.lengths(), side.desk.dialect());
    yard::rows(&ask.offcuts, order, &writing)
}

/// The prices of the job as a list.
pub(crate) fn price_list(desk: &Desk) -> Result<String, Refusal> {
    Ok(order::prices::write_csv(desk.job()?))
}

fn writing(desk: &Desk, order: &Order) -> Writing {
    Writing { lengths: desk.lengths(), words: desk.dialect(), currency: order.currency.clone() }
}

fn totals(order: &Order, writing: &Writing) -> Vec<Figure> {
    let figure = |label: &str, value: String| Figure { label: writing.say(label), value, why: None };
    let quote = &order.quote;
    let priced: u32 = quote.groups.iter().map(|group| group.priced).sum();
    let cost = if priced == 0 { "no price yet".to_owned() } else { writing.money(quote.total.amount()) };
    let bought: f64 = order.timber.iter().map(|timber| timber.bought_m).sum();
    let kg: f64 = order.timber.iter().map(|timber| timber.kg).sum();
    let mut out = vec![figure("Cost", cost)];
    if priced > 0 && !quote.not_priced.is_empty() {
        out.push(figure("Without a price", quote.not_priced.len().to_string()));
    }
    out.push(figure("Timber to buy", writing.metres(bought)));
    out.push(figure("Its weight", kilograms(kg)));
    out
}

fn notice(notice: &Notice, writing: &Writing) -> OrderNotice {
    let level = match notice.level {
        NoticeLevel::Warn => "warn",
        NoticeLevel::Note => "note",
    };
    OrderNotice { level: level.to_owned(), text: writing.sentence(&notice.text), place: notice.place.clone() }
}
