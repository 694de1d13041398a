//! The whole order of a roof: timber with its cutting plan, covering, fixings, weights and prices.

mod layouts;
pub mod out;
mod timber;
