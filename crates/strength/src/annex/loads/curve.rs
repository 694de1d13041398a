//! Figures that depend on the pitch.

use crate::annex::Standing;
use serde::Deserialize;

/// Values at some pitches, degrees, with straight lines between.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(transparent)]
pub struct Sloped(Vec<[f64; 2]>);

impl Sloped {
    /// At least one point, all finite, each at a steeper pitch than the one before.
    pub(super) fn in_order(&self) -> bool {
        !self.0.is_empty()
            && self.0.iter().flatten().all(|v| v.is_finite())
            && self.0.windows(2).all(|pair| pair[0][0] < pair[1][0])
    }

    /// The first and last pitch, degrees.
    #[must_use]
    pub fn range(&self) -> Option<[f64; 2]> {
        Some([self.0.first()?[0], self.0.last()?[0]])
    }

    /// The value at a pitch between the first and the last; `None` beyond them.
    #[must_use]
    pub fn within(&self, pitch: f64) -> Option<f64> {
        let [first, last] = self.range()?;
        (first..=last).contains(&pitch).then(|| self.kept(pitch))
    }

    /// The value at a pitch; beyond the first and the last pitch that of the nearer. Not a number for a pitch that is
    /// none.
    #[must_use]
    pub fn kept(&self, pitch: f64) -> f64 {
        let after = self.0.partition_point(|point| point[0] < pitch);
        match (after.checked_sub(1).and_then(|k| self.0.get(k)), self.0.get(after)) {
            _ if pitch.is_nan() => f64::NAN,
            (Some(a), Some(b)) if pitch < b[0] => a[1] + (b[1] - a[1]) * (pitch - a[0]) / (b[0] - a[0]),
            (_, Some(only)) | (Some(only), None) => only[1],
            (None, None) => f64::NAN,
        }
    }
}

/// Values by pitch with where they are from.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Curve {
    /// Degrees and value.
    pub points: Sloped,
    /// Title and table or clause.
    pub source: String,
    /// How the figures were come by.
    pub standing: Standing,
}
