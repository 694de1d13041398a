//! How to cut all pieces of one section and class from lengths of stock, for the least money or waste, and how far that
//! is from the best there can be.

mod need;
mod plan;

pub use need::{Aim, Need, Piece, Sawing, StockLength, Turns};
pub use plan::{Bar, CutFor, CuttingPlan, Laid, SawCut, Turn};
