//! What to buy for a cut roof, and how to cut it with the least waste.
//!
//! Units: mm, kg, m², degrees; money is a whole number of hundredths of a penny or cent ([`money::Money`]).

pub mod buying;
pub mod covering;
pub mod cutting;
pub mod money;
pub mod prices;
pub mod stock;
pub mod whole;
