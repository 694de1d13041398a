//! A strut against a purlin, a rafter against a strut: bearing at an angle (EN 1995-1-1 6.2.2) and nails against sliding.

use super::{Use, whole_number};
use crate::annex::joints::Joints;
use crate::eurocode::wood::Wood;
use crate::working::Working;
use geometry::Angle;

/// A timber that bears with its end on another.
#[derive(Clone, Copy, Debug)]
pub struct EndBearing<'a> {
    /// Wood of the timber that is borne upon.
    pub wood: &'a Wood,
    /// Area in contact, mm².
    pub area_mm2: f64,
    /// Angle between the force and the grain of the timber borne upon, degrees 0 to 90.
    pub force_to_grain_deg: f64,
    /// Angle between the force and the normal of the faces in contact, degrees 0 to 90: 0 where the cut is square to the
    /// force, so that nothing slides.
    pub force_to_normal_deg: f64,
    /// `k_c,90` of the bearing.
    pub kc90: f64,
}

/// What a bearing asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bearing {
    /// The wood under the end.
    pub bearing: Use,
    /// Force along the faces, N.
    pub sliding_n: f64,
    /// Nails in side grain (a cleat, or a lapped side) against it; 0 when nothing slides; `None` when nails carry nothing.
    /// Friction is not counted.
    pub nails: Option<u32>,
}

impl EndBearing<'_> {
    /// `f_c,α,d = f_c,0,d / (f_c,0,d / (k_c,90 f_c,90,d) sin² α + cos² α)`, N/mm² (6.16).
    pub fn strength(&self, kmod: f64, gamma_m_timber: f64, w: &mut Working) -> f64 {
        let along = kmod * self.wood.fc_0_k / gamma_m_timber;
        let across = self.kc90 * kmod * self.wood.fc_90_k / gamma_m_timber;
        let angle = Angle::deg(self.force_to_grain_deg);
        let (sine, cosine) = (angle.sin(), angle.cos());
        let value = along / (along / across * sine * sine + cosine * cosine);
        w.line("bearing strength at the angle f_c,α,d", value, "N/mm²", "EN 1995-1-1 6.16", || {
            format!("{along:.2} / ({along:.2} / {across:.2} × sin² {a}° + cos² {a}°)", a = self.force_to_grain_deg)
        })
    }

    /// Check for a force of `force_n` (design). `nail_n`: design capacity of one nail in side grain.
    pub fn check(
        &self,
        force_n: f64,
        nail_n: f64,
        kmod: f64,
        gamma_m_timber: f64,
        annex: &Joints,
        w: &mut Working,
    ) -> Bearing {
        let tilt = Angle::deg(self.force_to_normal_deg);
        let (pressing, sliding_n) = (force_n * tilt.cos(), (force_n * tilt.sin()).abs());
        let strength = self.strength(kmod, gamma_m_timber, w);
        let bearing =
            Use::of(pressing, strength * self.area_mm2, "EN 1995-1-1 6.2.2", "bearing at an angle to the grain");
        w.line("bearing at an angle to the grain", bearing.ratio, "", bearing.clause, || {
            format!("{pressing:.0} / ({strength:.2} × {:.0})", self.area_mm2)
        });
        /// Less than this is rounding of an angle, N.
        const NOTHING: f64 = 1e-6;
        let nails = if sliding_n < NOTHING {
            Some(0)
        } else {
            whole_number(sliding_n, nail_n, annex.nails.least_in_joint.value)
        };
        w.line("nails against sliding", nails.map_or(0.0, f64::from), "", "EN 1995-1-1 8.3.1", || {
            format!("{sliding_n:.0} N / {nail_n:.0} N each, friction not counted")
        });
        Bearing { bearing, sliding_n, nails }
    }
}
