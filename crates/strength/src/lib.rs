//! Strength of a cut roof: what it carries, by which way the load goes down, and how far each timber and joint is used,
//! to which clause of which code.
//!
//! Units inside: mm, N, N/mm² and degrees; loads on areas are kN/m² (which is also N/mm² times 1000). Every capacity is
//! read from the annex of a region ([`annex`]), whose figures carry their source and how they were come by.

pub mod actions;
pub mod annex;
pub mod carrying;
pub mod eurocode;
pub mod nds;
pub mod span_table;
pub mod statics;
pub mod whole;
pub mod working;
