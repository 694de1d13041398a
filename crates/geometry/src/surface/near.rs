//! A grid over the plan that finds which fronts a corner may run into.
//!
//! Every front segment is entered in the cells that it sweeps over before it
//! vanishes, every re-entrant corner in the cells that it runs through. A
//! corner can only hit a segment in a cell that both are in.

use crate::DVec2;

/// Segments for each cell when the grid is made. Small plans get one cell,
/// which is a plain list.
const PER_CELL: f64 = 4.0;

/// Plans with fewer segments than this are searched without a grid: walking
/// its cells would take longer than the list.
const WORTHWHILE: usize = 48;

/// Most cells along one side, which bounds the cost of a segment that sweeps
/// over the whole plan.
const MOST_CELLS: f64 = 160.0;

/// Two lists of numbers for every cell.
#[derive(Clone, Debug)]
pub(super) struct Grid {
    low: DVec2,
    high: DVec2,
    per_length: f64,
    columns: usize,
    rows: usize,
    pub segments: Vec<Vec<u32>>,
    pub corners: Vec<Vec<u32>>,
}

impl Grid {
    /// A grid over the box from `low` to `high` for so many segments.
    pub fn new(low: DVec2, high: DVec2, count: usize) -> Self {
        let size = high - low;
        let longest = size.x.max(size.y).max(1.0);
        let cells = (count as f64 / PER_CELL).max(1.0);
        let area = (size.x.max(longest / MOST_CELLS)) * (size.y.max(longest / MOST_CELLS));
        let cell = if count < WORTHWHILE { longest * 2.0 } else { (area / cells).sqrt().max(longest / MOST_CELLS) };
        let along = |length: f64| (length / cell) as usize + 1;
        let (columns, rows) = (along(size.x), along(size.y));
        Self {
            low,
            high,
            per_length: 1.0 / cell,
            columns,
            rows,
            segments: vec![Vec::new(); columns * rows],
            corners: vec![Vec::new(); columns * rows],
        }
    }

    /// The box that the grid was made for.
    pub const fn corners_of_plan(&self) -> (DVec2, DVec2) {
        (self.low, self.high)
    }

    /// Whether there is one cell only.
    pub fn is_list(&self) -> bool {
        self.segments.len() == 1
    }

    fn column(&self, x: f64) -> usize {
        ((x - self.low.x) * self.per_length).clamp(0.0, (self.columns - 1) as f64) as usize
    }

    fn row(&self, y: f64) -> usize {
        ((y - self.low.y) * self.per_length).clamp(0.0, (self.rows - 1) as f64) as usize
    }

    /// The cells that the convex hull of some points touches, and perhaps a
    /// few more. Places off the grid count to its outermost cells.
    pub fn cells(&self, hull: &[DVec2], into: &mut Vec<usize>) {
        into.clear();
        if self.is_list() {
            into.push(0);
            return;
        }
        let (mut bottom, mut top) = (f64::INFINITY, f64::NEG_INFINITY);
        for p in hull {
            bottom = bottom.min(p.y);
            top = top.max(p.y);
        }
        let (first, last) = (self.row(bottom), self.row(top));
        for row in first..=last {
            let floor = if row == 0 { f64::NEG_INFINITY } else { self.low.y + row as f64 / self.per_length };
            let ceiling =
                if row + 1 == self.rows { f64::INFINITY } else { self.low.y + (row + 1) as f64 / self.per_length };
            let (mut left, mut right) = (f64::INFINITY, f64::NEG_INFINITY);
            for (k, a) in hull.iter().enumerate() {
                for b in hull.iter().skip(k + 1).chain(core::iter::once(a)) {
                    if let Some((l, r)) = span_in_band(*a, *b, floor, ceiling) {
                        left = left.min(l);
                        right = right.max(r);
                    }
                }
            }
            if left <= right {
                let cells = self.column(left)..=self.column(right);
                into.extend(cells.map(|column| row * self.columns + column));
            }
        }
    }
}

/// Reach in x of the part of `ab` with y from `floor` to `ceiling`, widened
/// by a hair so that rounding never leaves a cell out.
fn span_in_band(a: DVec2, b: DVec2, floor: f64, ceiling: f64) -> Option<(f64, f64)> {
    const HAIR: f64 = 1e-3; // mm, the size of the event cluster
    let (low, high) = if a.y <= b.y { (a, b) } else { (b, a) };
    if high.y < floor - HAIR || low.y > ceiling + HAIR {
        return None;
    }
    let rise = high.y - low.y;
    let x_at = |y: f64| {
        let part = if rise > 0.0 { ((y - low.y) / rise).clamp(0.0, 1.0) } else { 0.0 };
        low.x + (high.x - low.x) * part
    };
    let (from, to) = if rise > 0.0 { (x_at(floor - HAIR), x_at(ceiling + HAIR)) } else { (low.x, high.x) };
    Some((from.min(to) - HAIR, from.max(to) + HAIR))
}

#[cfg(test)]
mod tests {
    use super::Grid;
    use crate::DVec2;

    #[test]
    fn a_slanting_strip_is_found_in_every_cell_it_crosses() {
        let grid = Grid::new(DVec2::ZERO, DVec2::splat(100.0), 400);
        let (a, b) = (DVec2::new(3.0, 7.0), DVec2::new(96.0, 81.0));
        let mut cells = Vec::new();
        grid.cells(&[a, b], &mut cells);
        assert!(cells.len() < grid.segments.len() / 3);
        for k in 0..=1000 {
            let p = a + (b - a) * (f64::from(k) / 1000.0);
            assert!(cells.contains(&(grid.row(p.y) * grid.columns + grid.column(p.x))));
        }
    }
}
