//! Chance with a fixed seed: the same bits everywhere, and no source of chance from outside.

/// A generator of 64-bit numbers, splitmix64 (G. L. Steele, D. Lea and C. H. Flood, "Fast splittable pseudorandom number
/// generators", OOPSLA 2014). Whole-number arithmetic only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chance(u64);

impl Chance {
    /// From a seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// The next number.
    #[must_use = "it moves the generator on"]
    pub const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// The next number from 0 to below 1.
    #[must_use = "it moves the generator on"]
    pub fn share(&mut self) -> f64 {
        /// Bits of the mantissa of a double.
        const BITS: u32 = 53;
        (self.next() >> (64 - BITS)) as f64 / (1_u64 << BITS) as f64
    }
}

/// The value below which a triangular distribution has the share `u`, from the inverse of its distribution function.
/// Degenerate triangles give their one value.
#[must_use]
pub fn triangular([low, likely, high]: [f64; 3], u: f64) -> f64 {
    let width = high - low;
    if width.is_nan() || width <= 0.0 {
        return likely;
    }
    let turn = (likely - low) / width;
    if u < turn {
        low + (u * width * (likely - low)).sqrt()
    } else {
        high - ((1.0 - u) * width * (high - likely)).sqrt()
    }
}

/// The value below which a share of sorted values lies, with straight lines between neighbours (type 7 of R. J. Hyndman
/// and Y. Fan, "Sample quantiles in statistical packages", 1996). Nothing for no values.
#[must_use]
pub fn quantile(sorted: &[f64], share: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let place = share.clamp(0.0, 1.0) * last as f64;
    let below = place.floor();
    let (a, b) = (sorted.get(below as usize)?, sorted.get((below as usize + 1).min(last))?);
    Some(a + (b - a) * (place - below))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_numbers_are_those_that_were_published() {
        // First five for the seed 1234567, as many implementations print them.
        let mut chance = Chance::new(1_234_567);
        let numbers: Vec<u64> = (0..5).map(|_| chance.next()).collect();
        let published: [u64; 5] = [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
            4_593_380_528_125_082_431,
            16_408_922_859_458_223_821,
        ];
        assert_eq!(numbers, published);
    }

    #[test]
    fn triangles_have_their_ends_turn_and_mean() {
        let t = [1.0, 2.0, 4.0];
        assert_eq!((triangular(t, 0.0), triangular(t, 1.0)), (1.0, 4.0));
        assert!((triangular(t, 1.0 / 3.0) - 2.0).abs() < 1e-12);
        let mean: f64 = (0..10_000).map(|k| triangular(t, (f64::from(k) + 0.5) / 10_000.0)).sum::<f64>() / 10_000.0;
        // (1 + 2 + 4) / 3.
        assert!((mean - 7.0 / 3.0).abs() < 1e-4, "{mean}");
        assert_eq!(triangular([2.0; 3], 0.7), 2.0);
        assert!(triangular([f64::NAN, 2.0, 3.0], 0.5) == 2.0);
    }

    #[test]
    fn quantiles_lie_between_neighbours() {
        let sorted = [1.0, 2.0, 4.0, 8.0];
        // numpy.percentile([1, 2, 4, 8], [0, 10, 50, 90, 100]).
        let wanted = [1.0, 1.3, 3.0, 6.8, 8.0];
        for (share, wanted) in [0.0, 0.1, 0.5, 0.9, 1.0].into_iter().zip(wanted) {
            assert!((quantile(&sorted, share).unwrap() - wanted).abs() < 1e-12);
        }
        assert_eq!(quantile(&[], 0.5), None);
    }
}
