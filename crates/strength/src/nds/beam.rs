//! Bending and lateral stability of beams: NDS 3.3.

use super::{Use, blend};
use crate::annex::nds::Nds;
use crate::working::Working;

/// Stability of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stability {
    /// Slenderness `R_B = √(l_e d / b²)`.
    pub slenderness: f64,
    /// `F_bE = 1.20 E'_min / R_B²`, psi.
    pub euler_psi: f64,
    /// `C_L`; 0 beyond the slenderest beam allowed.
    pub c_l: f64,
}

/// `C_L` of a beam of `breadth_in` × `depth_in` whose compression edge is free over the effective length `effective_in`,
/// with `F_b*` (all factors but C_L) and `E'_min`, psi (3.3.3.8).
pub fn stability(
    breadth_in: f64,
    depth_in: f64,
    effective_in: f64,
    star_psi: f64,
    modulus_least_psi: f64,
    nds: &Nds,
    w: &mut Working,
) -> Stability {
    let m = &nds.members;
    let square = effective_in * depth_in / (breadth_in * breadth_in);
    let slenderness = w.line("slenderness R_B", super::root(square), "", "NDS 3.3-5", || {
        format!("√({effective_in} × {depth_in} / {breadth_in}²)")
    });
    let euler_psi = m.beam_euler.value * modulus_least_psi / square;
    w.line("buckling stress F_bE", euler_psi, "psi", "NDS 3.3.3.8", || {
        format!("{} × {modulus_least_psi} / {slenderness:.2}²", m.beam_euler.value)
    });
    let braced = square == 0.0;
    let c_l = match () {
        () if braced => 1.0,
        () if slenderness > m.beam_slenderest.value => 0.0,
        () => blend(euler_psi / star_psi, m.beam_blend.value, m.beam_round.value),
    };
    w.line("stability of the beam C_L", c_l, "", "NDS 3.3-6", || format!("F_bE / F_b* = {:.4}", euler_psi / star_psi));
    Stability { slenderness, euler_psi, c_l }
}

/// A beam on two supports under an even load square to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beam {
    /// Span along the beam, in.
    pub span_in: f64,
    /// Load square to the beam, lb per in.
    pub load_lb_per_in: f64,
    /// Section modulus, in³.
    pub modulus_in3: f64,
    /// Second moment of area, in⁴.
    pub inertia_in4: f64,
}

impl Beam {
    /// Bending stress against `allowed_psi` (`F_b'`).
    pub fn bending(&self, allowed_psi: f64, w: &mut Working) -> Use {
        let moment = self.load_lb_per_in * self.span_in * self.span_in / 8.0;
        let stress = w.line("bending stress f_b", moment / self.modulus_in3, "psi", "NDS 3.3.2", || {
            format!("{} × {}² / 8 / {:.3}", self.load_lb_per_in, self.span_in, self.modulus_in3)
        });
        let used = Use::new(stress / allowed_psi, "NDS 3.3.1", "bending");
        w.line("bending", used.ratio, "", used.clause, || format!("{stress:.0} / {allowed_psi:.0}"));
        used
    }

    /// Deflection in the middle, in: `5 w l⁴ / (384 E I)`.
    pub fn deflection_in(&self, modulus_psi: f64, w: &mut Working) -> f64 {
        let square = self.span_in * self.span_in;
        let value = 5.0 * self.load_lb_per_in * square * square / (384.0 * modulus_psi * self.inertia_in4);
        w.line("deflection", value, "in", "NDS 3.5.1", || {
            format!("5 × {} × {}⁴ / (384 × {modulus_psi} × {:.2})", self.load_lb_per_in, self.span_in, self.inertia_in4)
        })
    }
}
