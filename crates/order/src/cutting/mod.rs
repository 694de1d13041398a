//! How to cut all pieces of one section and class from lengths of stock, for the least money or waste, and how far that
//! is from the best there can be.
//!
//! Neighbours are parted by one flat cut of the saw: a plane of one of their ends, or of both, or a square one. Where
//! two slanting ends fit each other the one cut makes both, and the boxes around the pieces lie into each other. A
//! bound shows below which value no plan can be ([`CuttingPlan::at_least`]); a plan that meets it is proven the best.

mod arrange;
mod bound;
mod closing;
mod ends;
mod fault;
mod greedy;
mod input;
mod lay;
mod model;
mod need;
mod patterns;
mod plan;
mod rows;
mod solve;
mod tree;
mod turning;
mod units;
mod verify;

pub use fault::CuttingFault;
pub use need::{Aim, Need, Piece, Sawing, StockLength, Turns};
pub use plan::{Bar, CutFor, CuttingPlan, Laid, SawCut, Turn};
pub use verify::verify;

use crate::money::Money;
use model::Model;
use patterns::Searcher;

/// The best plan that is found, with the bound that shows how good it is. It was checked by [`verify`].
///
/// # Errors
/// A [`CuttingFault`] says which figure or piece is wrong, and what to do.
pub fn plan(need: &Need) -> Result<CuttingPlan, CuttingFault> {
    input::check(need)?;
    let model = Model::of(need)?;
    let mut searcher = Searcher::new(&model);
    let Some((best, at_least)) = solve::solve(&mut searcher) else {
        let left = need.pieces.iter().flat_map(|piece| piece.marks.clone());
        return Err(CuttingFault::NotEnoughStock { marks: left.collect() });
    };
    let broken = |what: &str| CuttingFault::NotAPlan { what: what.into() };
    let bars = lay::bars(&mut searcher, need, &best).ok_or_else(|| broken("its bars cannot be laid out"))?;
    let cost = bars.iter().filter_map(|bar| need.stock.get(bar.stock)).map(|stock| stock.cost).sum();
    let finished = match need.aim {
        Aim::Cost => 0,
        Aim::Waste => finished(need),
    };
    let of_model = |piece: &usize| need.pieces.get(*piece).map(|piece| piece.marks.clone());
    let plan = CuttingPlan {
        bars,
        value: best.value - finished,
        at_least: at_least.min(best.value) - finished,
        cost,
        without_clean: model.without_clean.iter().filter_map(of_model).flatten().collect(),
    };
    verify(need, &plan)?;
    Ok(plan)
}

/// The best plan when no two pieces share a cut: every piece is the box around it, one square kerf from the next.
/// What it counts more than [`plan`] is what shared and slanting cuts save.
///
/// # Errors
/// As [`plan`].
pub fn plan_without_sharing(need: &Need) -> Result<CuttingPlan, CuttingFault> {
    input::check(need)?;
    let mut boxes = need.clone();
    let [thickness, depth] = need.section;
    for piece in &mut boxes.pieces {
        let length = input::box_length(piece);
        let corner = |n: usize| {
            let of = |bit: usize, most: f64| if n & bit == 0 { 0.0 } else { most };
            [of(1, length), of(2, depth), of(4, thickness) - thickness / 2.0]
        };
        piece.points = (0..8).map(corner).collect();
    }
    plan(&boxes)
}

/// Length of the boxes of all pieces, in the unit of waste.
fn finished(need: &Need) -> i64 {
    let count = |piece: &Piece| i64::try_from(piece.marks.len()).unwrap_or(0);
    need.pieces.iter().map(|piece| count(piece) * Money::of(input::box_length(piece)).0).sum()
}
