//! Offcuts: those in the yard of the job, those that a plan leaves, those that a device keeps from job to job.

use crate::views::{Offcut, YardRow};
use crate::wording::Writing;
use job::{Job, StrengthClass};
use order::stock::same_section;
use order::whole::{Order, TimberOut};

/// Offcuts whose lengths differ by less are alike, mm.
const SAME_LENGTH: f64 = 0.5;

/// Whether offcuts lie on one stack.
fn alike(a: &Offcut, b: &Offcut) -> bool {
    same_section([a.thickness_mm, a.depth_mm], [b.thickness_mm, b.depth_mm])
        && a.class == b.class
        && (a.length_mm - b.length_mm).abs() < SAME_LENGTH
}

/// Offcuts with those that are alike put together, deep sections and long ones first. What is no timber is left out.
pub(crate) fn joined(offcuts: &[Offcut]) -> Vec<Offcut> {
    let mut out: Vec<Offcut> = Vec::new();
    let sound = |o: &&Offcut| {
        o.count > 0 && [o.thickness_mm, o.depth_mm, o.length_mm].iter().all(|mm| mm.is_finite() && *mm > 0.0)
    };
    for offcut in offcuts.iter().filter(sound) {
        match out.iter_mut().find(|known| alike(known, offcut)) {
            Some(known) => known.count = known.count.saturating_add(offcut.count),
            None => out.push(offcut.clone()),
        }
    }
    let by = |a: f64, b: f64| b.total_cmp(&a);
    out.sort_by(|a, b| {
        by(a.depth_mm, b.depth_mm)
            .then(by(a.thickness_mm, b.thickness_mm))
            .then_with(|| a.class.cmp(&b.class))
            .then(by(a.length_mm, b.length_mm))
    });
    out
}

/// What a plan leaves of a group that is worth keeping. Lengths are whole mm, rounded down.
pub(super) fn left(timber: &TimberOut) -> Vec<Offcut> {
    let each = |mm: &f64| Offcut {
        thickness_mm: timber.size.thickness_mm,
        depth_mm: timber.size.depth_mm,
        class: timber.class.clone(),
        length_mm: mm.floor(),
        count: 1,
    };
    joined(&timber.offcuts.iter().map(each).collect::<Vec<_>>())
}

/// Lengths of what is left: `2 of 1240 mm, 1 of 980 mm`.
pub(super) fn left_words(left: &[Offcut], writing: &Writing) -> String {
    let one = |offcut: &Offcut| format!("{} of {}", offcut.count, writing.length(offcut.length_mm));
    left.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// The yard of a job.
pub(super) fn of_job(job: &Job, order: &Order, writing: &Writing) -> Vec<YardRow> {
    let offcut = |yard: &job::YardTimber| Offcut {
        thickness_mm: yard.size.thickness,
        depth_mm: yard.size.depth,
        class: yard.class.map(|class| StrengthClass::name(class).to_owned()),
        length_mm: yard.length,
        count: yard.count,
    };
    job.yard.iter().map(|yard| row(yard.name.clone(), offcut(yard), Some(order), writing)).collect()
}

/// Offcuts as rows.
pub(super) fn rows(offcuts: &[Offcut], order: Option<&Order>, writing: &Writing) -> Vec<YardRow> {
    joined(offcuts).into_iter().map(|offcut| row(String::new(), offcut, order, writing)).collect()
}

fn row(name: String, offcut: Offcut, order: Option<&Order>, writing: &Writing) -> YardRow {
    let section = writing.section(offcut.thickness_mm, offcut.depth_mm);
    let class = offcut.class.as_ref().map_or_else(String::new, |class| format!(", {class}"));
    YardRow {
        name,
        words: format!("{section}{class}, {} long", writing.length(offcut.length_mm)),
        count: offcut.count.to_string(),
        fits: order.is_some_and(|order| order.timber.iter().any(|timber| fits(&offcut, timber))),
        offcut,
    }
}

/// Whether a timber of a group could be cut from an offcut: of what carries only when its class is known.
fn fits(offcut: &Offcut, timber: &TimberOut) -> bool {
    let size = timber.size;
    let shortest = timber
        .layouts
        .iter()
        .flat_map(|layout| &layout.pieces)
        .map(|p| p.to_mm - p.from_mm)
        .fold(f64::INFINITY, f64::min);
    same_section([offcut.thickness_mm, offcut.depth_mm], [size.thickness_mm, size.depth_mm])
        && (timber.class.is_none() || timber.class == offcut.class)
        && offcut.length_mm >= shortest
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn offcuts_that_are_alike_lie_together_and_nonsense_is_left_out() {
        let of = |length_mm: f64, count: u32| Offcut {
            thickness_mm: 47.0,
            depth_mm: 150.0,
            class: Some("C24".to_owned()),
            length_mm,
            count,
        };
        let all = [of(900.0, 1), of(1240.2, 2), of(1240.0, u32::MAX), of(f64::NAN, 3), of(700.0, 0), of(-5.0, 1)];
        let lying: Vec<(f64, u32)> = joined(&all).iter().map(|o| (o.length_mm, o.count)).collect();
        assert_eq!(lying, [(1240.2, u32::MAX), (900.0, 1)]);
    }
}
