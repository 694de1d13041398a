//! The whole order of a roof: timber with its cutting plan, covering, fixings, weights and prices.

pub mod out;
