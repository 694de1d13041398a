//! All sheets of an order.

use order::whole::Order;
use roof::solution::Solution;

use crate::page::Page;
use crate::{order_buy, order_cutting, order_offcuts};

/// What to buy, how to cut it, what is kept, what goes up.
pub fn order_sheets(solution: &Solution, order: &Order) -> Vec<Page> {
    let mut pages = order_buy::pages(solution, order);
    pages.extend(order_cutting::pages(solution, order));
    pages.extend(order_offcuts::offcuts(solution, order));
    pages.extend(order_offcuts::weights(order));
    pages
}
