//! Board feet, where timber is sold by them.

use roof::rules::Standing;
use serde::Deserialize;
use std::sync::OnceLock;

/// The United States.
const US: &str = include_str!("../../../../regions/us/buying.toml");

/// mm in an inch.
const INCH: f64 = 25.4;
/// Inches in a foot.
const FOOT: f64 = 12.0;
/// A side is one of the table's to within this, mm: sizes are often written as whole millimetres.
const SAME_SIDE: f64 = 0.8;

/// How dressed timber is sold.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
struct Sold {
    dressed: Dressed,
}

/// Sides of dressed timber.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dressed {
    /// Each side.
    pub sides: Vec<Side>,
    /// Where they are from.
    pub source: String,
    /// How they were come by.
    pub standing: Standing,
}

/// A side of dressed timber, inches.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Side {
    /// By which it is sold.
    pub sold: f64,
    /// What it measures.
    pub dressed: f64,
}

/// The table of dressed sides.
///
/// # Panics
/// Never with the file as it is: it is compiled in, and a test reads it.
#[must_use]
pub fn dressed() -> &'static Dressed {
    static SOLD: OnceLock<Sold> = OnceLock::new();
    &SOLD.get_or_init(|| toml::from_str(US).expect("the sides compiled in can be read")).dressed
}

/// The inches that a dressed side is sold by; mm. `None` when it is no dressed side.
#[must_use]
pub fn sold_inches(side_mm: f64) -> Option<f64> {
    let side = dressed().sides.iter().find(|side| (side.dressed * INCH - side_mm).abs() < SAME_SIDE);
    side.map(|side| side.sold)
}

/// Board feet of timber: thickness and width that it is sold by in inches, length in feet: `t·w·l / 12`.
#[must_use]
pub fn board_feet(thickness_in: f64, width_in: f64, length_ft: f64) -> f64 {
    thickness_in * width_in * length_ft / FOOT
}

/// Board feet of dressed timber, mm. `None` when its sides are not dressed ones.
#[must_use]
pub fn board_feet_of(thickness_mm: f64, depth_mm: f64, length_mm: f64) -> Option<f64> {
    Some(board_feet(sold_inches(thickness_mm)?, sold_inches(depth_mm)?, length_mm / (FOOT * INCH)))
}
