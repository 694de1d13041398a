//! Lengths that are cut alike, told in a row each.

use super::{buy, drawing, yard};
use crate::views::{CuttingGroup, Done, LayoutRow};
use crate::wording::Writing;
use job::{Job, TickState};
use order::whole::{Layout, Order};

/// All groups with their layouts.
pub(super) fn groups(job: &Job, order: &Order, writing: &Writing, width: f64) -> Vec<CuttingGroup> {
    let group = |(number, timber): (usize, &order::whole::TimberOut)| {
        let left = yard::left(timber);
        let rows = timber.layouts.iter().enumerate();
        CuttingGroup {
            id: buy::id(timber),
            title: writing.title(timber),
            layouts: rows
                .map(|(k, layout)| {
                    let picture = drawing::row(writing, layout, timber.size.depth_mm, width);
                    row(job, writing, id(number, k), layout, picture)
                })
                .collect(),
            left_words: yard::left_words(&left, writing),
            left,
        }
    };
    order.timber.iter().enumerate().filter(|(_, timber)| !timber.layouts.is_empty()).map(group).collect()
}

/// The name of a layout: the number of its group, and its own, from 1.
fn id(group: usize, layout: usize) -> String {
    format!("{}-{}", group + 1, layout + 1)
}

/// The layout of a name, with its group.
pub(super) fn named<'o>(order: &'o Order, id: &str) -> Option<(&'o order::whole::TimberOut, &'o Layout)> {
    let (group, layout) = id.split_once('-')?;
    let number = |text: &str| text.parse::<usize>().ok()?.checked_sub(1);
    let timber = order.timber.get(number(group)?)?;
    Some((timber, timber.layouts.get(number(layout)?)?))
}

/// A layout in a row.
pub(super) fn row(job: &Job, writing: &Writing, id: String, layout: &Layout, picture: picture::Picture) -> LayoutRow {
    let marks = layout.pieces.iter().flat_map(|piece| &piece.marks);
    let left = writing.length(layout.left_mm.max(0.0).floor());
    LayoutRow {
        id,
        times: format!("{} off", layout.count),
        length: writing.length(layout.length_mm),
        yard: layout.yard.is_some(),
        left: if layout.kept { format!("{left} left, to keep") } else { format!("{left} left") },
        done: marks.map(|mark| done(job, mark)).min().unwrap_or(Done::No),
        picture,
    }
}

/// How far a timber is.
pub(super) fn done(job: &Job, mark: &str) -> Done {
    match job.done.get(mark).map(|tick| tick.state) {
        None => Done::No,
        Some(TickState::Cut) => Done::Cut,
        Some(TickState::Fixed) => Done::Fixed,
    }
}
