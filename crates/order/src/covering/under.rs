//! The underlay: runs up each slope, with their laps.

use super::figures::Coverings;
use super::out::Underlay;
use super::ring;
use super::slope::{EdgeKind, Slope};
use super::sums;

/// More runs than a slope has: a roll as narrow as its lap would never end.
const MOST_RUNS: u64 = 10_000;

/// Underlay of one slope.
#[derive(Clone, Copy, Debug)]
pub struct Laid {
    /// Head lap, mm.
    pub lap: f64,
    /// Metres of roll, mm.
    pub length: f64,
    /// The pitch is below the table, which ends with this lap.
    pub too_flat: bool,
}

/// The underlay of a slope: runs from the eaves to over the ridge, each as long as the slope is wide in it.
pub fn of_slope(slope: &Slope, figures: &Coverings, supported: bool) -> Laid {
    let rule = &figures.underlay;
    let first = rule.laps.first();
    let at = figures.underlay_lap(slope.pitch_deg, supported).map(|(lap, _)| lap);
    let lap = at.or(first.map(|f| if supported { f.supported } else { f.open })).unwrap_or(0.0);
    let [low, high] = slope.heights();
    let step = rule.width.value - lap;
    let with_ridge = high - low + rule.over_ridge.value;
    let runs = if step > 0.0 { sums::whole_up((with_ridge - lap) / step).clamp(1, MOST_RUNS) } else { 0 };
    let slanted = slope.edges.iter().any(|e| matches!(e.kind, EdgeKind::Hip | EdgeKind::Valley));
    let mut length = 0.0;
    for k in 0..runs {
        let from = low + k as f64 * step;
        // The last run may lie wholly beyond the ridge: it is as long as the ridge there.
        let (wide, parts) = ring::widest(&slope.ring, from.min(high - 1.0), (from + rule.width.value).min(high));
        let ends = if slanted { 2.0 * parts as f64 * rule.over_hip.value } else { 0.0 };
        let joints = ((wide + ends) / rule.length.value).floor();
        length += wide + ends + joints * rule.side_lap.value;
    }
    Laid { lap, length, too_flat: at.is_none() }
}

/// The underlay of the roof.
pub fn of_roof(laid: &[Laid], figures: &Coverings) -> Underlay {
    let rule = &figures.underlay;
    let length: f64 = laid.iter().map(|l| l.length).sum();
    Underlay {
        head_lap_mm: laid.iter().map(|l| l.lap).fold(0.0, f64::max),
        side_lap_mm: rule.side_lap.value,
        area_m2: length * rule.width.value / 1e6,
        rolls: sums::pieces_along(length, rule.length.value),
    }
}
