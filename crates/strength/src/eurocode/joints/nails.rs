//! Nails in shear and their rules: EN 1995-1-1 8.3.

use super::johansen::{Dowel, Modes};
use super::{Capacity, Part, embedment};
use crate::annex::joints::Joints;
use crate::working::Working;
use serde::Serialize;

/// Shank of a nail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shank {
    /// Round and smooth, the ordinary wire nail.
    Round,
    /// Square, or with grooves along it; the side of the square is its diameter.
    Square,
    /// Round with rings. Its hold along the shank is taken as that of a smooth one: more must be declared by the maker.
    Ring,
}

/// A nail.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Nail {
    /// Diameter d, mm.
    pub diameter_mm: f64,
    /// Length, mm.
    pub length_mm: f64,
    /// Diameter of the head, mm.
    pub head_mm: f64,
    /// Shank.
    pub shank: Shank,
    /// Tensile strength of the wire `f_u`, N/mm²; at least 600 for nails to EN 14592.
    pub tensile_n_mm2: f64,
    /// In a bored hole.
    pub bored: bool,
}

/// What one nail between two timbers carries.
#[derive(Clone, Debug, PartialEq)]
pub struct NailInShear {
    /// The least mode with the rope effect.
    pub capacity: Capacity,
    /// The governing mode without the rope effect, N.
    pub no_rope_n: f64,
    /// All modes.
    pub modes: Modes,
    /// `F_ax,Rk` for the rope effect, N.
    pub axial_n: f64,
    /// Depth of the point, mm.
    pub pointside_mm: f64,
    /// Whether the point goes in as deep as the code asks. If not, the nail must not be counted.
    pub pointside_ok: bool,
}

impl Nail {
    /// Least depth of the point, mm: 8d smooth, 6d ringed (8.3.1.2).
    #[must_use]
    pub fn least_pointside_mm(&self, annex: &Joints) -> f64 {
        let times = match self.shank {
            Shank::Ring => annex.nails.pointside_ring_d.value,
            Shank::Round | Shank::Square => annex.nails.pointside_smooth_d.value,
        };
        times * self.diameter_mm
    }

    /// Shortest nail of this kind through `head_side_mm` of timber, mm.
    #[must_use]
    pub fn least_length_mm(&self, head_side_mm: f64, annex: &Joints) -> f64 {
        head_side_mm + self.least_pointside_mm(annex)
    }

    /// Depth of the point in the second timber: what is left of the nail, no more than that timber, mm.
    #[must_use]
    pub fn pointside_mm(&self, head_side_mm: f64, point_side_mm: f64) -> f64 {
        (self.length_mm - head_side_mm).min(point_side_mm).max(0.0)
    }

    /// Axial capacity `F_ax,Rk`, N: the shank drawn out of the point side, or the head drawn through the other (8.24). The
    /// shank holds nothing at 8d (ringed 6d), and fully from 12d (8d) on. Bored holes hold nothing.
    pub fn axial_n(
        &self,
        head_side: &Part<'_>,
        pointside_mm: f64,
        point_wood_rho: f64,
        annex: &Joints,
        w: &mut Working,
    ) -> f64 {
        let a = &annex.withdrawal;
        let d = self.diameter_mm;
        let (full, least) = match self.shank {
            Shank::Ring => (a.full_ring_d.value, a.least_ring_d.value),
            Shank::Round | Shank::Square => (a.full_smooth_d.value, a.least_smooth_d.value),
        };
        let deep = ((pointside_mm / d - least) / (full - least)).clamp(0.0, 1.0);
        let deep = if self.bored || !deep.is_finite() { 0.0 } else { deep };
        let shank = a.shank.value * point_wood_rho * point_wood_rho * deep * d * pointside_mm;
        let rho = head_side.wood.rho_k;
        let head = a.head.value * rho * rho * self.head_mm * self.head_mm
            + a.shank.value * rho * rho * d * head_side.thickness_mm.min(self.length_mm);
        let value = shank.min(head).max(0.0);
        w.line("hold of the nail along its shank F_ax,Rk", value, "N", "EN 1995-1-1 8.24 to 8.26", || {
            format!("least of: point {shank:.1} ({pointside_mm:.0} mm deep, share {deep:.2}), head {head:.1}")
        })
    }

    /// Capacity in shear between two timbers, per nail.
    pub fn in_shear(
        &self,
        head_side: &Part<'_>,
        point_side: &Part<'_>,
        annex: &Joints,
        w: &mut Working,
    ) -> NailInShear {
        let pointside_mm = self.pointside_mm(head_side.thickness_mm, point_side.thickness_mm);
        let least = self.least_pointside_mm(annex);
        w.line("depth of the point", pointside_mm, "mm", "EN 1995-1-1 8.3.1.2", || {
            format!("{} − {}, at least {least:.1}", self.length_mm, head_side.thickness_mm)
        });
        let fh1 = embedment::nail(self.diameter_mm, self.bored, head_side, annex, w);
        let fh2 = embedment::nail(self.diameter_mm, self.bored, point_side, annex, w);
        let axial_n = self.axial_n(head_side, pointside_mm, point_side.wood.rho_k, annex, w);
        let modes = self.dowel(axial_n, annex, w).single_shear(head_side.thickness_mm, fh1, pointside_mm, fh2);
        let (capacity, no_rope_n) = modes.least(w);
        NailInShear { capacity, no_rope_n, modes, axial_n, pointside_mm, pointside_ok: pointside_mm >= least }
    }

    /// Capacity in shear under a steel plate, per nail. Between thin and thick plates it is interpolated (8.2.3(1)).
    pub fn under_plate(&self, plate_mm: f64, timber: &Part<'_>, annex: &Joints, w: &mut Working) -> NailInShear {
        let pointside_mm = self.pointside_mm(plate_mm, timber.thickness_mm);
        let fh = embedment::nail(self.diameter_mm, self.bored, timber, annex, w);
        let plate = Part { wood: timber.wood, thickness_mm: 0.0, angle_deg: 0.0 };
        // A head does not go through steel: only the shank counts.
        let as_if_headed = Self { head_mm: self.length_mm, ..*self };
        let axial_n = as_if_headed.axial_n(&plate, pointside_mm, timber.wood.rho_k, annex, w);
        let dowel = self.dowel(axial_n, annex, w);
        let (capacity, no_rope_n, modes) = dowel.plate(plate_mm, pointside_mm, fh, annex, w);
        let pointside_ok = pointside_mm >= self.least_pointside_mm(annex);
        NailInShear { capacity, no_rope_n, modes, axial_n, pointside_mm, pointside_ok }
    }

    fn dowel(&self, axial_n: f64, annex: &Joints, w: &mut Working) -> Dowel {
        let r = &annex.rope;
        let rope_cap = match self.shank {
            Shank::Round => r.cap_round.value,
            Shank::Square => r.cap_square.value,
            Shank::Ring => r.cap_ring.value,
        };
        let square = self.shank == Shank::Square;
        Dowel {
            diameter_mm: self.diameter_mm,
            yield_moment_nmm: embedment::yield_moment(self.diameter_mm, self.tensile_n_mm2, square, annex, w),
            rope_n: axial_n * r.share.value,
            rope_cap,
        }
    }
}

/// Why a hole must be bored first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum BoreFirst {
    /// The wood is dense.
    DenseWood,
    /// The nail is thick.
    ThickNail,
    /// The timber is thin for the nail.
    ThinTimber,
    /// The timber is thin for a wood that splits easily; or its edges must be wider.
    SplitsEasily,
}

/// Whether a nail without a hole would split this timber (8.3.1.1(2), 8.18, 8.19). `splits_easily`: spruce, fir, Douglas
/// fir, with edge distances below 10d.
pub fn bore_first(
    nail: &Nail,
    timber: &Part<'_>,
    splits_easily: bool,
    annex: &Joints,
    w: &mut Working,
) -> Option<BoreFirst> {
    let n = &annex.nails;
    let (d, rho) = (nail.diameter_mm, timber.wood.rho_k);
    let thin = (n.thin_d.value * d).max((n.thin_slope.value * d - n.thin_less_mm.value) * rho / n.thin_density.value);
    w.line("thinnest timber without boring", thin, "mm", "EN 1995-1-1 8.18", || {
        format!(
            "{} × {d}, or ({} × {d} − {}) × {rho} / {}",
            n.thin_d.value, n.thin_slope.value, n.thin_less_mm.value, n.thin_density.value
        )
    });
    if nail.bored {
        None
    } else if rho > n.bored_from_density.value {
        Some(BoreFirst::DenseWood)
    } else if d > n.bored_from_mm.value {
        Some(BoreFirst::ThickNail)
    } else if timber.thickness_mm < thin {
        Some(BoreFirst::ThinTimber)
    } else if splits_easily && timber.thickness_mm < n.splitting_thickness.value * thin {
        Some(BoreFirst::SplitsEasily)
    } else {
        None
    }
}
