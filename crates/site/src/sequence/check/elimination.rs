//! Rank of sparse equations, with what they leave free.

use std::collections::{BTreeMap, BTreeSet};

/// A coefficient smaller than this beside the others of its row is nothing: rows are scaled to a greatest coefficient
/// of 1, and a hold at less than a thousandth of its lever is none.
const NOTHING: f64 = 1e-3;
/// Below this a coefficient is dust of the arithmetic.
const DUST: f64 = 1e-9;

/// Sparse homogeneous equations.
#[derive(Debug, Default)]
pub struct Equations {
    rows: Vec<BTreeMap<usize, f64>>,
}

impl Equations {
    /// Adds the equation that the sum of its terms is 0.
    pub fn add(&mut self, terms: impl IntoIterator<Item = (usize, f64)>) {
        let mut row: BTreeMap<usize, f64> = BTreeMap::new();
        for (column, value) in terms {
            *row.entry(column).or_default() += value;
        }
        row.retain(|_, v| v.abs() > DUST);
        let most = row.values().fold(0.0, |m: f64, v| m.max(v.abs()));
        if most > 0.0 {
            row.values_mut().for_each(|v| *v /= most);
            self.rows.push(row);
        }
    }

    /// The first of these unknowns that may be other than 0; `None` when all must be 0.
    ///
    /// Gaussian elimination, the columns of fewest rows first, the largest coefficient of a column as its pivot.
    pub fn first_free(self, columns: &[usize]) -> Option<usize> {
        let mut rows = self.rows;
        let mut with: BTreeMap<usize, BTreeSet<usize>> = BTreeMap::new();
        for (r, row) in rows.iter().enumerate() {
            for column in row.keys() {
                with.entry(*column).or_default().insert(r);
            }
        }
        // Columns by how many rows they are in; one that has grown since goes back in its place.
        let size_of = |with: &BTreeMap<usize, BTreeSet<usize>>, c: usize| with.get(&c).map_or(0, BTreeSet::len);
        let mut left: BTreeSet<(usize, usize)> = columns.iter().map(|c| (size_of(&with, *c), *c)).collect();
        let mut free = None;
        while let Some((size, column)) = left.pop_first() {
            let now = size_of(&with, column);
            if now > size {
                left.insert((now, column));
                continue;
            }
            let holders: Vec<usize> = with.remove(&column).unwrap_or_default().into_iter().collect();
            let size = |r: usize| rows[r].get(&column).map_or(0.0, |v| v.abs());
            let Some(pivot) = holders.iter().copied().max_by(|a, b| size(*a).total_cmp(&size(*b))) else {
                free.get_or_insert(column);
                continue;
            };
            if size(pivot) < NOTHING {
                free.get_or_insert(column);
                for r in holders {
                    rows[r].remove(&column);
                }
                continue;
            }
            let pivot_row = std::mem::take(&mut rows[pivot]);
            for other in pivot_row.keys() {
                if let Some(set) = with.get_mut(other) {
                    set.remove(&pivot);
                }
            }
            let lead = pivot_row.get(&column).copied().unwrap_or(1.0);
            for r in holders.into_iter().filter(|r| *r != pivot) {
                let factor = rows[r].remove(&column).unwrap_or(0.0) / lead;
                for (c, v) in pivot_row.iter().filter(|(c, _)| **c != column) {
                    let value = rows[r].get(c).copied().unwrap_or(0.0) - factor * v;
                    let set = with.entry(*c).or_default();
                    if value.abs() > DUST {
                        rows[r].insert(*c, value);
                        set.insert(r);
                    } else {
                        rows[r].remove(c);
                        set.remove(&r);
                    }
                }
            }
        }
        free
    }
}

#[cfg(test)]
mod tests {
    use super::Equations;

    #[test]
    fn what_is_not_held_is_free() {
        let mut held = Equations::default();
        held.add([(0, 1.0), (1, 1.0)]);
        held.add([(0, 1.0), (1, -1.0)]);
        assert_eq!(held.first_free(&[0, 1]), None);
        let mut loose = Equations::default();
        loose.add([(0, 1.0), (1, 1.0)]);
        loose.add([(0, 2.0), (1, 2.0)]);
        assert_eq!(loose.first_free(&[0, 1]), Some(1));
    }
}
