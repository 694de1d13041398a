//! The bench: the card of a piece for the screen, and what is ticked.

mod card;
mod drawing;
mod piece;
mod progress;
mod steps;
mod ways;
mod writing;

pub use card::card;
pub use piece::piece_mark;
pub use progress::{Progress, progress, tick, ticked_and_gone};
pub(crate) use ways::through_stock;
pub(crate) use writing::Writing;

#[cfg(test)]
mod tests;
