//! The bench: the card of a piece for the screen, and what is ticked.

mod piece;
mod progress;

pub use piece::piece_mark;
pub use progress::{Progress, progress, tick, ticked_and_gone};
