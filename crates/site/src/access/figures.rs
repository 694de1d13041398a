//! Sums of access: ladders, towers, pieces that fall.

use super::loading::GRAVITY;
use geometry::Angle;

/// A ladder to a landing: its length, and how far out its foot stands at the landing, both in the unit of the heights.
/// It stands at `angle` degrees from level and rises `above` past the landing.
#[must_use]
pub fn ladder(landing: f64, above: f64, angle: f64) -> (f64, f64) {
    let slope = Angle::deg(angle);
    ((landing + above) / slope.sin(), landing / slope.tan())
}

/// The slope of a ladder that stands `out` for a rise of `up`, degrees.
#[must_use]
pub fn ladder_slope(up: f64, out: f64) -> f64 {
    Angle::from_rise_run(up, out).to_deg()
}

/// The highest a free tower may be by its least base.
#[must_use]
pub fn tower_height(base: f64, ratio: f64) -> f64 {
    base * ratio
}

/// How far a piece flies that is knocked sideways, m: from a height in m at a speed in m/s, without drag. Wind, bounce
/// and long pieces go further: a least, never a zone.
#[must_use]
pub fn throw(height: f64, speed: f64) -> f64 {
    speed * (2.0 * height.max(0.0) / GRAVITY).sqrt()
}
