//! All sheets of an order.

pub mod buy;
#[cfg(test)]
mod checks;
pub mod cutting;
pub mod labels;
mod offcuts;
pub mod strip;
pub mod words;

use order::whole::Order;
use roof::solution::Solution;

use crate::page::Page;

/// What to buy, how to cut it, what is kept, what goes up.
pub fn order_sheets(solution: &Solution, order: &Order) -> Vec<Page> {
    let mut pages = buy::pages(solution, order);
    pages.extend(cutting::pages(solution, order));
    pages.extend(offcuts::offcuts(solution, order));
    pages.extend(offcuts::weights(order));
    pages
}
