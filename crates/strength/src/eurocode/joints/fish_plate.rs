//! A splice with a fish-plate either side, bolted: statics of the bolt group, EN 1995-1-1 8.5 for the bolts and 6.1.6 for
//! the plates.

use super::Use;
use crate::working::Working;

/// One side of the splice: two pairs of bolts, and two plates of wood.
#[derive(Clone, Copy, Debug)]
pub struct FishPlate {
    /// Between the two pairs of bolts on one side of the joint, s, mm.
    pub between_pairs_mm: f64,
    /// From the joint to the middle of the bolts of one side, e, mm.
    pub joint_to_middle_mm: f64,
    /// Bolts in a pair: across the grain, one above the other.
    pub bolts_in_pair: u32,
    /// Thickness of one plate, mm.
    pub plate_mm: f64,
    /// Depth of the plates, mm.
    pub plate_depth_mm: f64,
    /// Hole of a bolt, mm.
    pub hole_mm: f64,
}

/// What a splice asks of bolts and plates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Splice {
    /// Force of the couple on one pair, `(M + V e) / s`, N.
    pub couple_n: f64,
    /// On the worse pair, N: the couple with its half of the shear.
    pub pair_n: f64,
    /// The bolts.
    pub bolts: Use,
    /// The plates in bending.
    pub plates: Use,
}

impl FishPlate {
    /// Force of the couple on one pair of bolts, N, from the moment (N·mm) and shear (N) at the joint: `(M + V e) / s`.
    pub fn couple_n(&self, moment_nmm: f64, shear_n: f64, w: &mut Working) -> f64 {
        let (m, v) = (moment_nmm.abs(), shear_n.abs());
        let value = (m + v * self.joint_to_middle_mm) / self.between_pairs_mm;
        w.line("force of the couple on one pair of bolts", value, "N", "statics", || {
            format!("({m:.0} + {v:.0} × {}) / {}", self.joint_to_middle_mm, self.between_pairs_mm)
        })
    }

    /// The check. `bolt_n`: design capacity of one bolt in one plane, for a force across the grain of the timber; every bolt
    /// has two planes. `fm_d`: design bending strength of the plates, N/mm².
    pub fn check(&self, moment_nmm: f64, shear_n: f64, bolt_n: f64, fm_d: f64, w: &mut Working) -> Splice {
        /// Planes of a bolt through a timber between two plates.
        const PLANES: f64 = 2.0;
        let couple_n = self.couple_n(moment_nmm, shear_n, w);
        let pair_n = couple_n + shear_n.abs() / 2.0;
        w.line("force on the worse pair", pair_n, "N", "statics", || {
            format!("{couple_n:.0} + {:.0} / 2", shear_n.abs())
        });
        let number = f64::from(self.bolts_in_pair);
        let bolts = Use::of(pair_n, PLANES * number * bolt_n, "EN 1995-1-1 8.2.2", "bolts of the splice");
        w.line("bolts of the splice", bolts.ratio, "", bolts.clause, || {
            format!("{pair_n:.0} / ({PLANES} × {number} × {bolt_n:.0})")
        });
        let moment =
            moment_nmm.abs() + shear_n.abs() * (self.joint_to_middle_mm - self.between_pairs_mm / 2.0).max(0.0);
        let section = PLANES * self.plate_mm * self.net_modulus_per_mm();
        let plates = Use::of(moment, section * fm_d, "EN 1995-1-1 6.1.6", "bending of the plates");
        w.line("bending of the plates", plates.ratio, "", plates.clause, || {
            format!("{moment:.0} / ({section:.0} × {fm_d:.2}), at the nearer bolts, holes taken out")
        });
        Splice { couple_n, pair_n, bolts, plates }
    }

    /// Section modulus of one mm of plate at a pair of bolts, mm²: bolts at the third points of the depth (one: in the
    /// middle), holes taken out.
    fn net_modulus_per_mm(&self) -> f64 {
        let h = self.plate_depth_mm;
        let n = f64::from(self.bolts_in_pair);
        let mut inertia = h * h * h / 12.0;
        for i in 1..=self.bolts_in_pair.min(super::MOST_FASTENERS) {
            let from_middle = h * (f64::from(i) / (n + 1.0) - 0.5);
            inertia -= self.hole_mm * (from_middle * from_middle + self.hole_mm * self.hole_mm / 12.0);
        }
        let modulus = inertia / (h / 2.0);
        if modulus.is_finite() { modulus.max(0.0) } else { 0.0 }
    }
}
