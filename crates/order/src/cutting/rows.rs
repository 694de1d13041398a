//! Rows of the program in whole numbers: what the patterns of a plan must satisfy, and further rows that follow from
//! them because nothing can be cut half a time (Gomory 1958, Chvátal 1973).

/// A multiplier of a row below this is left out.
const LEAST_PART: f64 = 1e-6;

/// Multipliers are taken this much smaller, so that sums that are whole but for rounding are not rounded up past it;
/// the row that follows is exact for the smaller multipliers.
const SMALLER: f64 = 1e-7;

/// Rounding of the sums, far below [`SMALLER`].
const SUMS: f64 = 1e-11;

/// A row must be missed by this much for its length to be worth adding.
const LEAST_MISS: f64 = 1e-3;

/// The largest coefficient of a row that is added.
const MOST: f64 = 1e6;

/// `sum of each[j] * x[j] >= least`, with a whole number for each pattern.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    /// By pattern.
    pub each: Vec<f64>,
    /// The least sum.
    pub least: f64,
    /// It is of the problem or of a branch, and does not follow from others.
    pub stays: bool,
}

impl Row {
    /// The sum for how often patterns are cut.
    pub fn sum(&self, times: &[f64]) -> f64 {
        self.each.iter().zip(times).map(|(each, x)| each * x).sum()
    }
}

/// The row that follows from rows with these multipliers (fractions of them are taken), when `times` misses it; with
/// how far it is missed, in its own length.
pub(super) fn rounded(rows: &[Row], multipliers: &[f64], sign: f64, times: &[f64]) -> Option<(f64, Row)> {
    let part = |m: &f64| {
        let m = m * sign;
        let part = m - m.floor();
        if part > LEAST_PART && part < 1.0 - LEAST_PART { part - SMALLER } else { 0.0 }
    };
    let parts: Vec<f64> = multipliers.iter().map(part).collect();
    let used = || rows.iter().zip(&parts).filter(|(_, part)| **part > 0.0);
    let least: f64 = used().map(|(row, part)| row.least * part).sum();
    let least = (least - 1e-6).ceil();
    let mut each = vec![0.0; times.len()];
    for (row, part) in used() {
        for (sum, a) in each.iter_mut().zip(&row.each) {
            *sum += a * part;
        }
    }
    each.iter_mut().for_each(|sum| *sum = if *sum == 0.0 { 0.0 } else { (*sum + SUMS).ceil() });
    let size = each.iter().map(|a| a * a).sum::<f64>().sqrt();
    let row = Row { each, least, stays: false };
    let miss = (row.least - row.sum(times)) / size;
    let fine = size.is_finite() && size > 0.0 && row.each.iter().all(|a| a.abs() < MOST);
    (fine && miss > LEAST_MISS).then_some((miss, row))
}

/// A basis of rows: for every row, what stands for it, and the inverse.
#[derive(Debug)]
pub(super) struct Basis {
    /// For each row of the inverse, the pattern that it gives, or none for the surplus of a row.
    pub pattern: Vec<Option<usize>>,
    /// The inverse.
    pub inverse: Vec<Vec<f64>>,
}

/// A pattern that is cut more than this, and not as often as it can be, is in the basis. The program that is solved has
/// every limit moved a little ([`moved`]), so that what is in its basis can be told from what is not.
const IN_BASIS: f64 = 2e-8;

/// How far the limit of this number is moved, so that no two limits are met at once by chance: numbers without pattern
/// (the mixing steps of SplitMix64).
pub(super) fn moved(number: usize) -> f64 {
    let mixed = (number as u64 + 1).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    let mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    MOVED * (0.5 + ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64)
}

/// Limits are moved by this on average: far more than the tolerance of the library, far less than a piece.
const MOVED: f64 = 5e-5;

/// A pivot below this is none.
const LEAST_PIVOT: f64 = 1e-7;

impl Basis {
    /// A basis that holds the patterns that are cut a part of the times they can be, then the surplus of rows that are
    /// more than met, then whatever is still wanting.
    ///
    /// `times` may have, after those of the patterns, what each row is met by at a price ([`Self::worths`]).
    pub fn of(rows: &[Row], times: &[f64], most: &[f64]) -> Self {
        let size = rows.len();
        let mut basis = Self {
            pattern: vec![None; size],
            inverse: (0..size).map(|r| (0..size).map(|c| f64::from(u8::from(r == c))).collect()).collect(),
        };
        let mut free = vec![true; size];
        let inside = |j: usize| {
            let (x, most) = (times.get(j).copied().unwrap_or(0.0), most.get(j).copied().unwrap_or(f64::INFINITY));
            x > IN_BASIS && (x - most).abs() > IN_BASIS
        };
        let mut order: Vec<usize> = (0..times.len()).filter(|&j| inside(j)).collect();
        order.sort_by(|a, b| times.get(*b).partial_cmp(&times.get(*a)).unwrap_or(std::cmp::Ordering::Equal));
        for pattern in order {
            let at_a_price = pattern.checked_sub(most.len());
            let own = |r: usize| if at_a_price == Some(r) { 1.0 } else { 0.0 };
            let entry = |(r, row): (usize, &Row)| row.each.get(pattern).copied().unwrap_or_else(|| own(r));
            let column: Vec<f64> = rows.iter().enumerate().map(entry).collect();
            basis.enter(Some(pattern), &column, &mut free);
        }
        let over = |(number, row): (usize, &Row)| row.sum(times) - row.least + moved(number);
        let mut surplus: Vec<(f64, usize)> = rows.iter().enumerate().map(over).zip(0..).collect();
        surplus.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for (_, row) in surplus {
            let column: Vec<f64> = (0..size).map(|r| if r == row { -1.0 } else { 0.0 }).collect();
            basis.enter(None, &column, &mut free);
        }
        basis
    }

    fn enter(&mut self, pattern: Option<usize>, column: &[f64], free: &mut [bool]) {
        let y: Vec<f64> = self.inverse.iter().map(|row| row.iter().zip(column).map(|(t, a)| t * a).sum()).collect();
        let open = y.iter().zip(free.iter()).enumerate().filter(|(_, (_, free))| **free);
        let Some((at, pivot)) = open.map(|(r, (y, _))| (r, *y)).max_by(|a, b| a.1.abs().total_cmp(&b.1.abs())) else {
            return;
        };
        if pivot.abs() < LEAST_PIVOT {
            return;
        }
        let Some(entering) = self.inverse.get_mut(at) else { return };
        entering.iter_mut().for_each(|t| *t /= pivot);
        let entering = entering.clone();
        for (r, (row, factor)) in self.inverse.iter_mut().zip(&y).enumerate() {
            if r != at && *factor != 0.0 {
                row.iter_mut().zip(&entering).for_each(|(t, e)| *t -= factor * e);
            }
        }
        if let (Some(slot), Some(free)) = (self.pattern.get_mut(at), free.get_mut(at)) {
            *slot = pattern;
            *free = false;
        }
    }

    /// How often each pattern is cut by this basis when no limit is moved; `full` are those that are cut as often as they
    /// can be.
    pub fn times(&self, rows: &[Row], most: &[f64], full: &[bool]) -> Vec<f64> {
        let fixed: Vec<f64> = most.iter().zip(full).map(|(most, full)| if *full { *most } else { 0.0 }).collect();
        let open: Vec<f64> = rows.iter().map(|row| row.least - row.sum(&fixed)).collect();
        let mut times = fixed;
        for (pattern, row) in self.pattern.iter().zip(&self.inverse) {
            if let Some(slot) = pattern.and_then(|j| times.get_mut(j)) {
                *slot = row.iter().zip(&open).map(|(t, b)| t * b).sum::<f64>().max(0.0);
            }
        }
        times
    }

    /// What a row is worth, by the costs of the patterns in the basis, and the price at which a row is met without
    /// one; nothing below 0.
    pub fn worths(&self, costs: &[f64], price: f64) -> Vec<f64> {
        let mut worths = vec![0.0; self.inverse.len()];
        for (pattern, row) in self.pattern.iter().zip(&self.inverse) {
            let cost = pattern.map_or(0.0, |j| costs.get(j).copied().unwrap_or(price));
            worths.iter_mut().zip(row).for_each(|(worth, t)| *worth += cost * t);
        }
        worths.iter_mut().for_each(|worth| *worth = worth.max(0.0));
        worths
    }
}
