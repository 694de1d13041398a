//! Where a load begins on a bar: Macaulay's brackets, of which every straight-line load is a sum.

/// A load that begins at a place and goes on to the end of the bar; one that ends is this and its opposite further on.
/// Each pair is (along, across).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Onset {
    /// From the start of the bar, mm.
    pub at: f64,
    /// At the place itself, N.
    pub force: [f64; 2],
    /// Spread from there on, N/mm.
    pub spread: [f64; 2],
    /// Growing from there on, N/mm for each mm.
    pub rise: [f64; 2],
}

impl Onset {
    /// No load.
    pub const NONE: Self = Self { at: 0.0, force: [0.0; 2], spread: [0.0; 2], rise: [0.0; 2] };

    /// Add another that begins at the same place, times a factor.
    pub fn add(&mut self, other: &Self, factor: f64) {
        for k in 0..2 {
            self.force[k] += factor * other.force[k];
            self.spread[k] += factor * other.spread[k];
            self.rise[k] += factor * other.rise[k];
        }
    }
}
