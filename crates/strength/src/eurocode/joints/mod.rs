//! Joints: EN 1995-1-1 section 8.
//!
//! Every function takes plain figures and the annex of the region ([`crate::annex::joints::Joints`]), and writes its
//! steps into a [`Working`]. Units: mm, N, N/mm², kg/m³, degrees; forces are never negative.
//!
//! Not covered, and said so where it matters ([`declared`]): nails in end grain, skew nails, hangers and other
//! connectors with a declared strength, screws, split rings.

pub mod bearing;
pub mod bolts;
pub mod collar;
pub mod crossing;
pub mod declared;
pub mod embedment;
pub mod fish_plate;
pub mod in_a_row;
pub mod johansen;
pub mod lap;
pub mod lapped;
pub mod nails;
pub mod rafter_foot;
pub mod slip;
pub mod spacing;
pub mod splitting;
pub mod strap;

use super::wood::Wood;
use crate::annex::joints::Joints;
use crate::working::Working;
use serde::Serialize;

/// How far something is used where it has no capacity at all, or where a figure is no number.
pub const BEYOND: f64 = 1000.0;

/// How far a joint is used: 1 is all of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Use {
    /// What is asked divided by what there is; [`BEYOND`] when there is nothing.
    pub ratio: f64,
    /// Clause of the code.
    pub clause: &'static str,
    /// What is checked, in words of the trade.
    pub name: &'static str,
}

impl Use {
    /// `asked` of `there`, both in the same unit.
    #[must_use]
    pub fn of(asked: f64, there: f64, clause: &'static str, name: &'static str) -> Self {
        Self { ratio: ratio(asked, there), clause, name }
    }

    /// The one of the two that is used further.
    #[must_use]
    pub fn worse(self, other: Self) -> Self {
        if other.ratio > self.ratio { other } else { self }
    }
}

/// What is asked divided by what there is. Nothing asked is 0; no capacity, or no number, is [`BEYOND`].
fn ratio(asked: f64, there: f64) -> f64 {
    if asked == 0.0 {
        return 0.0;
    }
    let ratio = asked.abs() / there;
    if there > 0.0 && ratio.is_finite() { ratio.min(BEYOND) } else { BEYOND }
}

/// Characteristic capacity of one fastener in one shear plane.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Capacity {
    /// `F_v,Rk`, N.
    pub characteristic_n: f64,
    /// How it fails, by the letter of the code's figure.
    pub mode: char,
    /// Formula.
    pub clause: &'static str,
}

impl Capacity {
    /// `F_v,Rd = k_mod F_v,Rk / γ_M`, N per fastener and plane. `kmod` is that of the shortest load of the combination.
    pub fn design_n(&self, kmod: f64, annex: &Joints, w: &mut Working) -> f64 {
        let gamma = annex.partial.connection.value;
        let value = self.characteristic_n * kmod / gamma;
        w.line("design capacity of one fastener F_v,Rd", value, "N", "EN 1995-1-1 2.17", || {
            format!("{kmod:.2} × {:.1} / {gamma:.2}", self.characteristic_n)
        })
    }
}

/// One timber of a joint, as a fastener meets it.
#[derive(Clone, Copy, Debug)]
pub struct Part<'a> {
    /// Its strength class.
    pub wood: &'a Wood,
    /// Its thickness along the fastener, mm.
    pub thickness_mm: f64,
    /// Angle between force and grain, degrees 0 to 90.
    pub angle_deg: f64,
}

/// The number of whole fasteners that carry `force_n` at `each_n` apiece, none fewer than `least`; `None` when one
/// carries nothing.
fn whole_number(force_n: f64, each_n: f64, least: f64) -> Option<u32> {
    let exact = force_n / each_n;
    if !(each_n > 0.0 && exact.is_finite()) {
        return None;
    }
    // A hair over a whole number is rounding of the sum, not another nail.
    const HAIR: f64 = 1e-9;
    let count = (exact - HAIR).ceil().max(least).max(1.0);
    (count <= f64::from(MOST_FASTENERS)).then_some(count as u32)
}

/// More in one joint is no joint of a cut roof, mostly a fault of the input.
pub const MOST_FASTENERS: u32 = 200;
