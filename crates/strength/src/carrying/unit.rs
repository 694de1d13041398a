//! A frame or beam that is solved by itself and stands on others.

use super::places::Under;
use crate::statics::{Frame, Load};

/// What a bar of a unit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// A part of a timber.
    Timber,
    /// The joists that tie the feet of a pair, taken together.
    Tie,
}

/// The part of a run that a bar stands for.
#[derive(Clone, Copy, Debug)]
pub struct Piece {
    /// The run; of a tie, the joist at the first foot.
    pub run: usize,
    /// From, mm along the run.
    pub from: f64,
    /// To, mm along the run.
    pub to: f64,
    /// What it is.
    pub role: Role,
}

/// What a unit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Two rafters that lean on one another, with their collar and tie.
    Pair {
        /// The rafter at the left.
        left: usize,
        /// The rafter at the right.
        right: usize,
    },
    /// One sloping timber.
    Sloping(usize),
    /// One level timber.
    Level(usize),
    /// A strut or hanger: what comes on it goes straight through.
    Post(usize),
}

/// A frame with what holds it up.
#[derive(Clone, Debug)]
pub struct Unit {
    /// What it is.
    pub kind: Kind,
    /// Its frame; of a post, empty.
    pub frame: Frame,
    /// For each bar, what it stands for.
    pub pieces: Vec<Piece>,
    /// For each support, what gives it.
    pub under: Vec<Under>,
    /// The node where two rafters meet.
    pub apex: Option<usize>,
    /// The second foot of a pair, by its support: it may be free to move out.
    pub far_foot: Option<usize>,
    /// The feet of a pair are tied to one another.
    pub tied: bool,
    /// It only stands while the walls hold both feet.
    pub needs_held: bool,
}

impl Unit {
    /// The bar of a run at a place along it, with the place along the bar, mm.
    #[must_use]
    pub fn bar_at(&self, run: usize, along: f64) -> Option<(usize, f64)> {
        let mine = || self.pieces.iter().enumerate().filter(|(_, p)| p.run == run && p.role == Role::Timber);
        let off = |p: &Piece| (p.from - along).max(along - p.to).max(0.0);
        let (bar, piece) = mine().min_by(|a, b| off(a.1).total_cmp(&off(b.1)))?;
        Some((bar, (along - piece.from).clamp(0.0, piece.to - piece.from)))
    }

    /// A load down at a place along one of its runs, N.
    #[must_use]
    pub fn load_at(&self, run: usize, along: f64, down: f64) -> Option<Load> {
        let (bar, at_mm) = self.bar_at(run, along)?;
        // The length of the bar in the frame may differ in its last digits.
        let most = self.bar_length(bar);
        Some(Load::At { bar, at_mm: at_mm.min(most), fx: 0.0, fy: -down })
    }

    /// Length of a bar, mm.
    #[must_use]
    pub fn bar_length(&self, bar: usize) -> f64 {
        let Some(b) = self.frame.bars.get(bar) else { return 0.0 };
        let (from, to) = (self.frame.nodes[b.from], self.frame.nodes[b.to]);
        let (x, y) = (to.x - from.x, to.y - from.y);
        (x * x + y * y).sqrt()
    }

    /// Whether any bar belongs to a run.
    #[must_use]
    pub fn has(&self, run: usize) -> bool {
        self.pieces.iter().any(|p| p.run == run && p.role == Role::Timber)
            || matches!(self.kind, Kind::Post(post) if post == run)
    }
}
