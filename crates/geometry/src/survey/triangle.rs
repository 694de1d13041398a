//! A triangle from its three sides.

/// The third corner of a triangle, from the first along the second: how far
/// along and how far to the side, mm. `first` is the distance of the third
/// corner from the first one, `second` from the second one, `base` that of the
/// two. To the side 0 if the lengths make no triangle.
pub(super) fn apex(base: f64, first: f64, second: f64) -> (f64, f64) {
    let along = (base * base + first * first - second * second) / (2.0 * base);
    (along, (first * first - along * along).max(0.0).sqrt())
}

/// How much the longest of three lengths is too long for a triangle, mm;
/// negative if they make one.
pub(super) fn excess(lengths: [f64; 3]) -> f64 {
    let sum: f64 = lengths.iter().sum();
    let longest = lengths.into_iter().fold(0.0, f64::max);
    2.0 * longest - sum
}

/// How well three lengths fix a triangle: its least height as a part of its
/// longest side; 0.87 for three equal ones, 0 for none.
pub(super) fn shape(lengths: [f64; 3]) -> f64 {
    let [a, b, c] = lengths;
    let longest = a.max(b).max(c);
    let half = f64::midpoint(a + b, c);
    let area_squared = (half * (half - a) * (half - b) * (half - c)).max(0.0);
    2.0 * area_squared.sqrt() / (longest * longest)
}

#[cfg(test)]
mod tests {
    use super::{apex, excess, shape};

    #[test]
    fn three_four_five() {
        let (along, aside) = apex(4.0, 5.0, 3.0);
        assert!((along - 4.0).abs() < 1e-12 && (aside - 3.0).abs() < 1e-12);
        assert_eq!(excess([3.0, 4.0, 5.0]), -2.0);
        assert_eq!(excess([3.0, 9.0, 5.0]), 1.0);
        assert!((shape([1.0, 1.0, 1.0]) - 0.75_f64.sqrt()).abs() < 1e-12);
        assert_eq!(shape([3.0, 9.0, 5.0]), 0.0);
    }
}
