//! Columns, and members bent and pressed at once: NDS 3.7 and 3.9.

use super::{Use, blend};
use crate::annex::nds::Nds;
use crate::working::Working;

/// Stability of a column.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Column {
    /// Slenderness `l_e / d`.
    pub slenderness: f64,
    /// `F_cE = 0.822 E'_min / (l_e / d)²`, psi.
    pub euler_psi: f64,
    /// `C_P`; 0 beyond the slenderest column allowed.
    pub c_p: f64,
    /// `F_c' = F_c* C_P`, psi.
    pub allowed_psi: f64,
}

/// A column of effective length `effective_in` that buckles over its side `depth_in`, with `F_c*` (all factors but C_P)
/// and `E'_min`, psi (3.7.1.5).
pub fn column(
    depth_in: f64,
    effective_in: f64,
    star_psi: f64,
    modulus_least_psi: f64,
    nds: &Nds,
    w: &mut Working,
) -> Column {
    let m = &nds.members;
    let slenderness = w.line("slenderness l_e / d", effective_in / depth_in, "", "NDS 3.7.1.3", || {
        format!("{effective_in} / {depth_in}")
    });
    let euler_psi = m.column_euler.value * modulus_least_psi / (slenderness * slenderness);
    w.line("buckling stress F_cE", euler_psi, "psi", "NDS 3.7.1.5", || {
        format!("{} × {modulus_least_psi} / {slenderness:.2}²", m.column_euler.value)
    });
    let c = m.column_c.value;
    let c_p = match () {
        () if slenderness == 0.0 => 1.0,
        () if slenderness > m.column_slenderest.value => 0.0,
        () => blend(euler_psi / star_psi, 2.0 * c, c),
    };
    w.line("stability of the column C_P", c_p, "", "NDS 3.7-1", || {
        format!("F_cE / F_c* = {:.4}", euler_psi / star_psi)
    });
    let allowed_psi =
        w.line("allowed compression F_c'", star_psi * c_p, "psi", "NDS 3.7.1", || format!("{star_psi:.0} × {c_p:.4}"));
    Column { slenderness, euler_psi, c_p, allowed_psi }
}

impl Column {
    /// Compression alone, `f_c / F_c'`.
    pub fn compression(&self, stress_psi: f64, w: &mut Working) -> Use {
        let used = Use::new(stress_psi / self.allowed_psi, "NDS 3.6.3", "compression");
        w.line("compression", used.ratio, "", used.clause, || format!("{stress_psi:.1} / {:.1}", self.allowed_psi));
        used
    }

    /// Compression with bending about the axis over which this column buckles (3.9-3):
    /// `(f_c / F_c')² + f_b / (F_b' (1 − f_c / F_cE))`. A compression at or beyond `F_cE` has no capacity left.
    pub fn with_bending(
        &self,
        compression_psi: f64,
        bending_psi: f64,
        allowed_bending_psi: f64,
        w: &mut Working,
    ) -> Use {
        let pressed = compression_psi / self.allowed_psi;
        let left = 1.0 - compression_psi / self.euler_psi;
        let bent = if left > 0.0 { bending_psi / (allowed_bending_psi * left) } else { f64::INFINITY };
        let used = Use::new(pressed * pressed + bent, "NDS 3.9-3", "compression with bending");
        w.line("compression with bending", used.ratio, "", used.clause, || {
            format!("{pressed:.4}² + {bending_psi:.1} / ({allowed_bending_psi:.0} × {left:.4})")
        });
        used
    }
}
