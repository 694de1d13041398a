//! Holding-down straps: EN 1993-1-1 6.2.3 for the steel, EN 1995-1-1 8.2.3 for the nails.

use super::nails::Nail;
use super::{Part, Use, in_a_row, whole_number};
use crate::annex::joints::Joints;
use crate::working::Working;
use serde::Serialize;

/// A strap nailed to a timber.
#[derive(Clone, Copy, Debug)]
pub struct Strap<'a> {
    /// The nails through it.
    pub nail: Nail,
    /// How many in the timber that is held.
    pub nails: u32,
    /// Apart along the strap, mm.
    pub apart_mm: f64,
    /// The timber: the strap lies along or across it.
    pub timber: Part<'a>,
}

/// What a strap holds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Held {
    /// The steel, design value, N.
    pub steel_n: f64,
    /// The nails, design value, N.
    pub nails_n: f64,
    /// The lesser, N.
    pub design_n: f64,
}

impl Strap<'_> {
    /// What one strap holds.
    pub fn holds(&self, kmod: f64, annex: &Joints, w: &mut Working) -> Held {
        let steel_n = steel_n(annex, w);
        let nail = self.nail.under_plate(annex.strap.thickness_mm.value, &self.timber, annex, w);
        let each = if nail.pointside_ok { nail.capacity.design_n(kmod, annex, w) } else { 0.0 };
        let spacing_d = self.apart_mm / self.nail.diameter_mm;
        // Nails follow each other along the strap; that is along the grain only where the strap lies along the timber.
        const ALONG: f64 = 45.0;
        let staggered = self.timber.angle_deg > ALONG;
        let counting = in_a_row::nails(self.nails, spacing_d, self.nail.bored, staggered, annex, w);
        let nails_n = w.line("nails of the strap", each * counting, "N", "EN 1995-1-1 8.2.3", || {
            format!("{counting:.2} × {each:.1}")
        });
        Held { steel_n, nails_n, design_n: steel_n.min(nails_n) }
    }
}

/// Design tension of the strap itself, N: the whole section yields, or it tears at a hole.
pub fn steel_n(annex: &Joints, w: &mut Working) -> f64 {
    let s = &annex.strap;
    let (width, thick) = (s.width_mm.value, s.thickness_mm.value);
    let whole = width * thick * s.yield_n_mm2.value / annex.partial.steel_yield.value;
    let net = (width - s.hole_mm.value).max(0.0) * thick;
    let torn = s.net_share.value * net * s.tensile_n_mm2.value / annex.partial.steel_tension.value;
    w.line("tension of the strap", whole.min(torn), "N", "EN 1993-1-1 6.6, 6.7", || {
        format!("least of: {width} × {thick} × {} = {whole:.0}, at a hole {torn:.0}", s.yield_n_mm2.value)
    })
}

/// Straps for a wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Straps {
    /// How many.
    pub count: u32,
    /// Apart, mm: no more than the practice, or what the uplift asks.
    pub apart_mm: f64,
    /// How far each is used.
    pub used: Use,
}

/// Straps along a wall of `length_mm` against an uplift of `uplift_n_per_m` (design, N/m); `None` when a strap holds
/// nothing or lengths are no numbers. With no uplift they stand as far apart as practice has them.
pub fn along_wall(
    uplift_n_per_m: f64,
    length_mm: f64,
    strap: &Held,
    annex: &Joints,
    w: &mut Working,
) -> Option<Straps> {
    let furthest = annex.strap.furthest_mm.value;
    let by_practice = (length_mm / furthest).ceil();
    let force = uplift_n_per_m.max(0.0) * length_mm / 1000.0;
    if !(force.is_finite() && length_mm > 0.0) {
        return None;
    }
    let count = whole_number(force, strap.design_n, by_practice)?;
    let apart_mm = length_mm / f64::from(count);
    let used = Use::of(force / f64::from(count), strap.design_n, "EN 1995-1-1 8.2.3", "holding-down strap");
    w.line("straps along the wall", f64::from(count), "", "NHBC Standards 7.2.6", || {
        format!("{force:.0} N / {:.0} N, no more than {furthest:.0} mm apart", strap.design_n)
    });
    Some(Straps { count, apart_mm, used })
}
