//! Checks of members against published figures, figures worked out apart, and laws that every check keeps.
//!
//! What rows are worth: `printed` figures were seen in a text and are independent; `program` figures are reference
//! values in the tests of a general finite-element program, whose inputs are a book's; all others are worked out from
//! the clauses as remembered, by another hand but not from another source, and would share a formula remembered wrong.

mod axial;
mod beams;
mod by_hand;
mod classes;
mod factors;
mod laws;
mod reading;
mod small_rules;
mod supports;
