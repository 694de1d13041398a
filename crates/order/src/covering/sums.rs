//! The formulas of covering: each a pure sum, used by the count and checked against published rows.

use super::figures::Way;

/// Added to a share before it is rounded up, so that 20.000000001 pieces are 20: no unit. Far below what a tape reads
/// of a piece, far above what sums of mm lose.
const ROUNDING: f64 = 1e-6;

/// Gauge, the distance of battens and what shows of a piece, mm: (L − lap) / k, where each piece laps over the k-th
/// course below it. Sheets lap singly.
#[must_use]
pub fn gauge(way: Way, length: f64, lap: f64) -> f64 {
    (length - lap) / f64::from(times(way))
}

/// The head lap that a gauge leaves, mm: L − k g.
#[must_use]
pub fn lap(way: Way, length: f64, gauge: f64) -> f64 {
    length - f64::from(times(way)) * gauge
}

/// k of [`gauge`].
#[must_use]
pub const fn times(way: Way) -> u32 {
    match way {
        Way::Single | Way::Sheet => 1,
        Way::Double => 2,
        Way::Triple => 3,
    }
}

/// Gauge of slates nailed at the head, mm: (L − hole from head − lap) / 2.
#[must_use]
pub fn head_nailed_gauge(length: f64, hole_from_head: f64, lap: f64) -> f64 {
    gauge(Way::Double, length - hole_from_head, lap)
}

/// Hole of a centre-nailed slate from its tail, mm: gauge + lap + what the nail clears the slate below by.
#[must_use]
pub fn holing_from_tail(gauge: f64, lap: f64, extra: f64) -> f64 {
    gauge + lap + extra
}

/// Pieces in an area: area / (cover width × gauge), all in one unit of length.
#[must_use]
pub fn pieces_in(area: f64, cover_width: f64, gauge: f64) -> f64 {
    area / (cover_width * gauge)
}

/// Metres of batten for a square metre: 1000 / gauge in mm.
#[must_use]
pub fn battens_per_area(gauge: f64) -> f64 {
    1000.0 / gauge
}

/// Steps of one equal gauge in a distance: n = ⌈D / most⌉, g = D / n, mm. No step in no distance.
#[must_use]
pub fn courses(distance: f64, most_gauge: f64) -> (u64, f64) {
    if !(distance > 0.0 && most_gauge > 0.0) {
        return (0, 0.0);
    }
    let n = whole_up(distance / most_gauge).max(1);
    (n, distance / n as f64)
}

/// Pieces along a line: ⌈L / what one covers⌉.
#[must_use]
pub fn pieces_along(length: f64, covers: f64) -> u64 {
    if covers > 0.0 { whole_up(length / covers) } else { 0 }
}

/// The next whole number, nothing for less than nothing.
#[must_use]
pub fn whole_up(count: f64) -> u64 {
    (count - ROUNDING).ceil().max(0.0) as u64
}

/// Free area of a slot, mm²: length × height, mm.
#[must_use]
pub fn slot_area(length: f64, slot: f64) -> f64 {
    length * slot
}

/// What is ordered of so many with a share for breakage.
#[must_use]
pub fn with_breakage(count: u64, share: f64) -> u64 {
    count.saturating_add(whole_up(count as f64 * share))
}
