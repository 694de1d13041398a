//! How many fasteners really fit where two timbers lap: the commonest thing that a sum of nails forgets.
//!
//! Both timbers lie flat against each other in the plane of the lap; x runs along the first timber, y is square to it. The
//! fasteners stand in rows along the grain of one of the two, on a grid that keeps the distances of the code in both: two
//! fasteners are either `a_1` apart along the grain or `a_2` apart across it, in each timber.

mod grid;
mod sides;

use super::spacing::Spacings;
use crate::working::Working;
use geometry::Angle;
use grid::Grids;
use serde::Serialize;

/// What keeps more fasteners out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Limit {
    /// Distances from the edges of the first timber.
    EdgeOfFirst,
    /// Distance from the end of the first timber.
    EndOfFirst,
    /// Distances from the edges of the second timber.
    EdgeOfSecond,
    /// Distance from the end of the second timber.
    EndOfSecond,
    /// Distances between fasteners.
    Apart,
    /// Nothing in particular: the lap is empty or its sizes are no numbers.
    Room,
}

impl Limit {
    /// All that can be eased; of several that let in as many, the last is named.
    const EASED: [Self; 5] = [Self::Apart, Self::EdgeOfSecond, Self::EdgeOfFirst, Self::EndOfSecond, Self::EndOfFirst];

    /// In words: what limits the number is …
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::EdgeOfFirst => "the distance from the edges of the first timber",
            Self::EndOfFirst => "the distance from the end of the first timber",
            Self::EdgeOfSecond => "the distance from the edges of the second timber",
            Self::EndOfSecond => "the distance from the end of the second timber",
            Self::Apart => "the distance between fasteners",
            Self::Room => "the room on the lap",
        }
    }
}

/// Whether a border runs along the grain or cuts it off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BorderKind {
    /// Along the grain.
    Edge,
    /// A cut end.
    End,
}

/// A straight border of a timber at the lap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Border {
    /// Of the first (0) or the second timber (1).
    pub timber: usize,
    /// Edge or end.
    pub kind: BorderKind,
    /// Where it faces, out of the timber: degrees anticlockwise from x. 180 faces along −x.
    pub faces_deg: f64,
    /// Its distance from the origin in that direction, mm.
    pub at_mm: f64,
}

impl Border {
    /// An edge.
    #[must_use]
    pub const fn edge(timber: usize, faces_deg: f64, at_mm: f64) -> Self {
        Self { timber, kind: BorderKind::Edge, faces_deg, at_mm }
    }

    /// A cut end.
    #[must_use]
    pub const fn end(timber: usize, faces_deg: f64, at_mm: f64) -> Self {
        Self { timber, kind: BorderKind::End, faces_deg, at_mm }
    }
}

/// Where two timbers lap: the wood inside all borders.
#[derive(Clone, Debug, PartialEq)]
pub struct Lap {
    /// Directions of the grain of the first timber and of the second, degrees anticlockwise from x.
    pub grain_deg: [f64; 2],
    /// Direction of the force that the fasteners put on the first timber, degrees; on the second it is opposite.
    pub force_deg: f64,
    /// Whether the force may also turn round, as under wind: then every edge and end is a loaded one.
    pub turns_round: bool,
    /// Edges and ends of both timbers.
    pub borders: Vec<Border>,
}

/// Fasteners on a lap.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fit {
    /// Where each stands, mm from the origin of the lap.
    pub places: Vec<[f64; 2]>,
    /// How many in each row.
    pub in_rows: Vec<u32>,
    /// The timber, 0 or 1, along whose grain the rows run.
    pub along: usize,
    /// Apart in a row, mm.
    pub apart_mm: f64,
    /// Between rows, mm.
    pub between_rows_mm: f64,
    /// What keeps more out.
    pub limited_by: Limit,
}

impl Fit {
    /// Number of fasteners.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.in_rows.iter().sum()
    }

    /// Number of rows.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.in_rows.len()
    }

    /// Most in one row.
    #[must_use]
    pub fn columns(&self) -> u32 {
        self.in_rows.iter().copied().max().unwrap_or(0)
    }

    /// `count` fasteners spread over the rows as evenly as they go: how many in each row. No more than fit.
    #[must_use]
    pub fn spread(&self, count: u32) -> Vec<u32> {
        let mut rows = vec![0; self.in_rows.len()];
        let mut left = count.min(self.count());
        while left > 0 {
            for (row, most) in rows.iter_mut().zip(&self.in_rows) {
                if left > 0 && *row < *most {
                    *row += 1;
                    left -= 1;
                }
            }
        }
        rows
    }
}

impl Lap {
    /// A plain rectangle, `width_mm` along the first timber and `height_mm` across it, with the force at `first_deg` to the
    /// grain of the first timber and `second_deg` to that of the second. The force on the first timber goes towards x = 0;
    /// `cut_off`: the first timber ends there. A second timber that is steeper than 45° runs on upwards, with the upright
    /// sides as its edges; a flatter one ends at the far side, as where two timbers lap end by end.
    #[must_use]
    pub fn rectangle(width_mm: f64, height_mm: f64, first_deg: f64, second_deg: f64, cut_off: bool) -> Self {
        const STEEP: f64 = 45.0;
        let mut borders = vec![Border::edge(0, 90.0, height_mm), Border::edge(0, 270.0, 0.0)];
        if cut_off {
            borders.push(Border::end(0, 180.0, 0.0));
        }
        let second = first_deg + second_deg;
        if second < STEEP {
            borders.extend([Border::edge(1, 90.0, height_mm), Border::edge(1, 270.0, 0.0)]);
            borders.extend([Border::end(1, 0.0, width_mm), Border::end(0, 180.0, 0.0)]);
        } else {
            borders.extend([Border::edge(1, 0.0, width_mm), Border::edge(1, 180.0, 0.0)]);
        }
        Self { grain_deg: [0.0, second], force_deg: 180.0 + first_deg, turns_round: false, borders }
    }

    /// Angle between force and grain in the first or second timber, degrees 0 to 90.
    #[must_use]
    pub fn angle_deg(&self, timber: usize) -> f64 {
        let between = Angle::deg(self.force_deg - self.grain_deg[timber.min(1)]);
        Angle::from_sin(between.sin().abs().min(1.0)).to_deg()
    }

    /// Distance `h_e` from the edge that the force goes towards to the furthest of `places`, mm; of two loaded edges the one
    /// for which it is less. `None` when no edge is loaded.
    #[must_use]
    pub fn furthest_from_loaded_edge_mm(&self, timber: usize, places: &[[f64; 2]]) -> Option<f64> {
        let loaded = |border: &&Border| {
            border.timber == timber && border.kind == BorderKind::Edge && sides::is_loaded(self, border)
        };
        let furthest = |border: &Border| {
            let [x, y] = sides::unit(border.faces_deg);
            places.iter().map(|p| border.at_mm - x * p[0] - y * p[1]).fold(0.0, f64::max)
        };
        self.borders.iter().filter(loaded).map(furthest).min_by(f64::total_cmp)
    }

    /// The most fasteners that fit, up to `most`. `spacings` are those of either timber.
    pub fn fit(&self, spacings: &[Spacings; 2], most: u32, w: &mut Working) -> Fit {
        let grids = self.grids(spacings, 1.0);
        let mut best = self.filled(spacings, &grids, most, None);
        if best.count() < most {
            best.limited_by = self.limit(spacings, &grids, best.count());
        }
        let count = f64::from(best.count());
        w.line("fasteners that fit on the lap", count, "", "EN 1995-1-1 tables 8.2, 8.4", || {
            let (rows, columns, limit) = (best.rows(), best.columns(), best.limited_by.words());
            format!("{rows} rows of up to {columns}, {:.0} mm apart; limited by {limit}", best.apart_mm)
        });
        best
    }

    /// What, eased a little, would let more in.
    fn limit(&self, spacings: &[Spacings; 2], grids: &[Grids; 2], count: u32) -> Limit {
        /// Shares of the distance that is eased, one after the other until one lets more in.
        const EASED_TO: [f64; 3] = [0.75, 0.5, 0.2];
        let most = count * 2 + 1;
        for share in EASED_TO {
            let more = |limit: &Limit| match limit {
                Limit::Apart => self.filled(spacings, &self.grids(spacings, share), most, None).count(),
                _ => self.filled(spacings, grids, most, Some((*limit, share))).count(),
            };
            let most_let_in = Limit::EASED.iter().map(|limit| (*limit, more(limit))).max_by_key(|(_, eased)| *eased);
            match most_let_in {
                Some((limit, eased)) if eased > count => return limit,
                _ => {}
            }
        }
        Limit::Room
    }

    fn grids(&self, spacings: &[Spacings; 2], apart: f64) -> [Grids; 2] {
        [0, 1].map(|along| Grids::new(spacings, self.grain_deg, along, apart))
    }

    fn filled(&self, spacings: &[Spacings; 2], grids: &[Grids; 2], most: u32, eased: Option<(Limit, f64)>) -> Fit {
        let sides = sides::of(self, spacings, eased);
        let [first, second] = [0, 1].map(|along: usize| grids[along].fill(&sides, most));
        if second.count() > first.count() { second } else { first }
    }
}
