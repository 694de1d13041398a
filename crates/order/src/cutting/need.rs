//! What is to be cut, and from what.

use crate::money::Money;

/// Everything about one cutting problem: pieces of one section and class, and the stock they can be cut from.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// Thickness and depth of the stock, mm.
    pub section: [f64; 2],
    /// Pieces that are cut alike, each a number of times.
    pub pieces: Vec<Piece>,
    /// Lengths that can be had.
    pub stock: Vec<StockLength>,
    /// The saw.
    pub sawing: Sawing,
    /// What is to be least.
    pub aim: Aim,
}

/// Pieces that are cut alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Marks of the timbers, in the order in which they are taken.
    pub marks: Vec<String>,
    /// Corners of the finished timber on the bench, `[along, up, across]`, mm: `up` from 0 to the depth, `across` from
    /// minus to plus half the thickness.
    pub points: Vec<[f64; 3]>,
    /// How it may be laid in the stock.
    pub turns: Turns,
    /// It is to be cut from long clean stock, where there is any.
    pub wants_clean: bool,
}

/// How a piece may be laid in stock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turns {
    /// Sawn alike on all sides: any of the four ways in which a bar fits its own outline.
    All,
    /// With a side that is to be seen: turned end for end about that side's normal, and no other.
    KeepSide,
    /// As it lies.
    AsItLies,
}

/// A length of stock.
#[derive(Clone, Debug, PartialEq)]
pub struct StockLength {
    /// mm.
    pub length: f64,
    /// What one costs; 0 for what is in the yard.
    pub cost: Money,
    /// How many there are; as many as are wanted when none is said.
    pub have: Option<u32>,
    /// Long and clean: kept for pieces that want it. A bar of it has at least one such piece.
    pub clean: bool,
    /// Name of the offcut in the yard, when it is one.
    pub yard: Option<String>,
}

/// The saw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sawing {
    /// What the blade takes, square to the cut, mm.
    pub kerf: f64,
    /// What is cut off each end of a length to square it, mm; 0 when ends are used as they come.
    pub trim: f64,
    /// Offcuts of this length are kept, mm.
    pub keep: f64,
}

/// What is to be least.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// Money.
    Cost,
    /// Length that is taken and does not become a piece, mm. Offcuts that are kept count as well: were they free, the
    /// best plan would cut one piece from each of many long lengths and keep the rest.
    Waste,
}
