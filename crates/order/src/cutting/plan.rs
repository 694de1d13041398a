//! A cutting plan.

use crate::money::Money;
use roof::Marking;

/// How the pieces of one section and class are cut.
#[derive(Clone, Debug, PartialEq)]
pub struct CuttingPlan {
    /// The lengths, those cut alike one after another.
    pub bars: Vec<Bar>,
    /// What is least in it, in the unit of the aim: money, or mm of waste times [`Money::ONE`].
    pub value: i64,
    /// No plan can have less, in the same unit.
    pub at_least: i64,
    /// Cost of what is bought.
    pub cost: Money,
    /// Marks of pieces that want clean stock and are longer than any of it: they are cut from what there is.
    pub without_clean: Vec<String>,
}

impl CuttingPlan {
    /// Whether it is shown that no plan is better.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.at_least >= self.value
    }
}

/// One length of stock with the pieces that are cut from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// Its number in [`super::Need::stock`].
    pub stock: usize,
    /// The pieces, from the left.
    pub pieces: Vec<Laid>,
    /// The cuts in the order in which they are made.
    pub cuts: Vec<SawCut>,
    /// What is left at the right end, mm; the box around it, so that a square end can be cut from it.
    pub left: f64,
}

/// A piece in its length of stock.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// Its number in [`super::Need::pieces`].
    pub piece: usize,
    /// Mark of the timber.
    pub mark: String,
    /// How it lies.
    pub turn: Turn,
    /// From the left end of the stock to the nearest point of the piece, mm.
    pub at: f64,
}

/// How a piece lies in its stock, from how it lies on the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// As on the bench: foot to the left, top edge up.
    AsItLies,
    /// End for end, top edge up: half a turn about the depth.
    EndForEnd,
    /// End for end, top edge down: half a turn about the thickness.
    EndForEndOver,
    /// Foot to the left, top edge down: half a turn about the length.
    Over,
}

/// What a cut is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutFor {
    /// It squares the end of the stock.
    Squaring,
    /// It is the end of one piece, or parts it from what is left.
    Parting,
    /// One cut makes the ends of two pieces.
    Shared,
    /// It takes the rest off an end that has more than one side, or that the parting cut left square.
    Trimming,
}

/// One cut of the saw.
#[derive(Clone, Debug, PartialEq)]
pub struct SawCut {
    /// What it is for.
    pub what: CutFor,
    /// Numbers in [`Bar::pieces`] of those whose end it makes.
    pub ends: Vec<usize>,
    /// The side of the blade that is kept: a point of the plane on the middle of the section, from the left end of the
    /// stock, mm. The blade takes its kerf to the right of it when `kerf_right`.
    pub at: f64,
    /// Whether the blade stands to the right of that plane.
    pub kerf_right: bool,
    /// Unit normal of the plane in the axes of the stock, `[along, up, across]`, pointing right.
    pub normal: [f64; 3],
    /// What the carpenter sets.
    pub marking: Marking,
}
