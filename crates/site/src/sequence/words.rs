//! What each step is called, why it comes now, and what may hurt.

use super::order::rank::{Rank, Turn};
/// Title, reason and hazard of a step.
pub fn of(rank: Rank, _stood: bool) -> [&'static str; 3] {
    match rank.turn {
        Turn::Plates => ["Bed the plates", "", ""],
        _ => ["x", "", ""],
    }
}
