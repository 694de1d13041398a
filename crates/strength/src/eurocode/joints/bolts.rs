//! Bolts in shear: EN 1995-1-1 8.5.

use super::johansen::{Dowel, Modes};
use super::{Capacity, Part, Use, embedment};
use crate::annex::joints::Joints;
use crate::working::Working;
use serde::Serialize;

/// A bolt with a round washer at either end.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Bolt {
    /// Diameter d, mm.
    pub diameter_mm: f64,
    /// Tensile strength `f_u`, N/mm²: 400 for grade 4.6, 800 for 8.8.
    pub tensile_n_mm2: f64,
    /// Outer diameter of the washers, mm; 0 for none, then there is no rope effect.
    pub washer_mm: f64,
}

/// What one bolt carries in one plane.
#[derive(Clone, Debug, PartialEq)]
pub struct BoltInShear {
    /// The least mode.
    pub capacity: Capacity,
    /// All modes.
    pub modes: Modes,
    /// `F_ax,Rk` for the rope effect, N.
    pub axial_n: f64,
    /// Embedment of the first (outer) timber, N/mm².
    pub embedment_1: f64,
    /// Embedment of the second (inner) timber, N/mm².
    pub embedment_2: f64,
}

impl Bolt {
    /// Grade 4.6 with the usual washer, three times as wide as the bolt.
    #[must_use]
    pub fn black(diameter_mm: f64, annex: &Joints) -> Self {
        /// Washers of timber are at least this many times as wide as the bolt (EN 1995-1-1 10.4.3).
        const WASHER: f64 = 3.0;
        Self { diameter_mm, tensile_n_mm2: annex.bolts.tensile_4_6.value, washer_mm: WASHER * diameter_mm }
    }

    /// Hole for the bolt, mm.
    #[must_use]
    pub fn hole_mm(&self, annex: &Joints) -> f64 {
        self.diameter_mm + annex.bolts.hole_clearance_mm.value
    }

    /// Axial capacity `F_ax,Rk`, N: the bolt torn, or the washer pressed into the softest wood under one (8.5.2).
    pub fn axial_n(&self, softest_fc_90_k: f64, annex: &Joints, w: &mut Working) -> f64 {
        use core::f64::consts::FRAC_PI_4;
        let b = &annex.bolts;
        let hole = self.hole_mm(annex);
        let ring = FRAC_PI_4 * (self.washer_mm * self.washer_mm - hole * hole).max(0.0);
        let washer = b.washer_bearing.value * softest_fc_90_k * ring;
        let area = b.stress_area.value * FRAC_PI_4 * self.diameter_mm * self.diameter_mm;
        let torn = b.tension.value * self.tensile_n_mm2 * area;
        let value = washer.min(torn);
        w.line("axial capacity of the bolt F_ax,Rk", value, "N", "EN 1995-1-1 8.5.2", || {
            format!(
                "least of: washer {} × {softest_fc_90_k} × {ring:.1} = {washer:.1}, bolt {torn:.1}",
                b.washer_bearing.value
            )
        })
    }

    fn dowel(&self, axial_n: f64, annex: &Joints, w: &mut Working) -> Dowel {
        Dowel {
            diameter_mm: self.diameter_mm,
            yield_moment_nmm: embedment::yield_moment(self.diameter_mm, self.tensile_n_mm2, false, annex, w),
            rope_n: axial_n * annex.rope.share.value,
            rope_cap: annex.rope.cap_bolt.value,
        }
    }

    /// Two timbers, one plane.
    pub fn single_shear(&self, first: &Part<'_>, second: &Part<'_>, annex: &Joints, w: &mut Working) -> BoltInShear {
        let axial_n = self.axial_n(first.wood.fc_90_k.min(second.wood.fc_90_k), annex, w);
        self.timbers(first, second, axial_n, annex, w, Dowel::single_shear)
    }

    /// A timber between two others that are alike: per plane, of which there are two.
    pub fn double_shear(&self, outer: &Part<'_>, inner: &Part<'_>, annex: &Joints, w: &mut Working) -> BoltInShear {
        let axial_n = self.axial_n(outer.wood.fc_90_k, annex, w);
        self.timbers(outer, inner, axial_n, annex, w, Dowel::double_shear)
    }

    fn timbers(
        &self,
        first: &Part<'_>,
        second: &Part<'_>,
        axial_n: f64,
        annex: &Joints,
        w: &mut Working,
        modes: fn(&Dowel, f64, f64, f64, f64) -> Modes,
    ) -> BoltInShear {
        let embedment_1 = embedment::bolt(self.diameter_mm, first, annex, w);
        let embedment_2 = embedment::bolt(self.diameter_mm, second, annex, w);
        let dowel = self.dowel(axial_n, annex, w);
        let modes = modes(&dowel, first.thickness_mm, embedment_1, second.thickness_mm, embedment_2);
        let (capacity, _) = modes.least(w);
        BoltInShear { capacity, modes, axial_n, embedment_1, embedment_2 }
    }

    /// One timber under a steel plate of `plate_mm`. `rope`: whether the bolt is drawn tight on a washer.
    pub fn under_plate(
        &self,
        plate_mm: f64,
        timber: &Part<'_>,
        rope: bool,
        annex: &Joints,
        w: &mut Working,
    ) -> BoltInShear {
        let fh = embedment::bolt(self.diameter_mm, timber, annex, w);
        let axial_n = if rope { self.axial_n(timber.wood.fc_90_k, annex, w) } else { 0.0 };
        let (capacity, _, modes) = self.dowel(axial_n, annex, w).plate(plate_mm, timber.thickness_mm, fh, annex, w);
        BoltInShear { capacity, modes, axial_n, embedment_1: fh, embedment_2: 0.0 }
    }
}

impl Dowel {
    /// Under a plate of steel, thin, thick or between (8.2.3(1), interpolated). Gives capacity, the same without the rope
    /// effect, and the modes of the nearer of the two cases.
    pub fn plate(&self, plate_mm: f64, t1: f64, fh1: f64, annex: &Joints, w: &mut Working) -> (Capacity, f64, Modes) {
        let (thin_d, thick_d) = (annex.steel_plate.thin_d.value, annex.steel_plate.thick_d.value);
        let share = ((plate_mm / self.diameter_mm - thin_d) / (thick_d - thin_d)).clamp(0.0, 1.0);
        let (thin, thick) = (self.thin_plate(t1, fh1), self.thick_plate(t1, fh1));
        if share <= 0.0 || !share.is_finite() {
            let (capacity, bare) = thin.least(w);
            return (capacity, bare, thin);
        }
        if share >= 1.0 {
            let (capacity, bare) = thick.least(w);
            return (capacity, bare, thick);
        }
        let ((low, low_bare), (high, high_bare)) = (thin.least(w), thick.least(w));
        let between = |a: f64, b: f64| a + (b - a) * share;
        let value = between(low.characteristic_n, high.characteristic_n);
        w.line("between a thin and a thick plate F_v,Rk", value, "N", "EN 1995-1-1 8.2.3(1)", || {
            format!(
                "{:.1} + {share:.3} × ({:.1} − {:.1})",
                low.characteristic_n, high.characteristic_n, low.characteristic_n
            )
        });
        let (nearer, modes) = if share < 0.5 { (low, thin) } else { (high, thick) };
        (Capacity { characteristic_n: value, ..nearer }, between(low_bare, high_bare), modes)
    }
}

/// What is left of a timber across a row of bolts: `b (h − m · hole)`, mm². `across` bolts stand in one cross-section.
#[must_use]
pub fn net_area_mm2(breadth_mm: f64, depth_mm: f64, across: u32, bolt: &Bolt, annex: &Joints) -> f64 {
    breadth_mm.max(0.0) * (depth_mm - f64::from(across) * bolt.hole_mm(annex)).max(0.0)
}

/// Tension in what is left beside the bolts. `ft_0_d`: design tension strength along the grain, N/mm² (EN 1995-1-1 6.1.2).
pub fn net_tension(force_n: f64, net_area_mm2: f64, ft_0_d: f64, w: &mut Working) -> Use {
    let used = Use::of(force_n, net_area_mm2 * ft_0_d, "EN 1995-1-1 6.1.2", "tension beside the bolts");
    w.line("tension beside the bolts", used.ratio, "", used.clause, || {
        format!("{force_n:.0} / ({net_area_mm2:.0} × {ft_0_d:.2})")
    });
    used
}
