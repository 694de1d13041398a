//! Money as a whole number, so that sums are exact and the same everywhere.

use serde::{Deserialize, Serialize};

/// Hundredths of the smallest coin: 1.00 in the currency is 10 000 of them. A price a metre in whole coins times a
/// length in whole millimetres is rounded to it once. In a document it is a number of the currency.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(from = "f64", into = "f64")]
pub struct Money(pub i64);

impl From<f64> for Money {
    fn from(amount: f64) -> Self {
        Self::of(amount)
    }
}

impl From<Money> for f64 {
    fn from(money: Money) -> Self {
        money.amount()
    }
}

impl Money {
    /// How many make 1.00 in the currency.
    pub const ONE: i64 = 10_000;

    /// The nearest amount to a number of the currency.
    #[must_use]
    pub fn of(amount: f64) -> Self {
        Self((amount * Self::ONE as f64).round() as i64)
    }

    /// As a number of the currency.
    #[must_use]
    pub fn amount(self) -> f64 {
        self.0 as f64 / Self::ONE as f64
    }
}

impl std::ops::Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl std::ops::AddAssign for Money {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl std::ops::Mul<u32> for Money {
    type Output = Self;
    fn mul(self, times: u32) -> Self {
        Self(self.0.saturating_mul(i64::from(times)))
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::default(), std::ops::Add::add)
    }
}
