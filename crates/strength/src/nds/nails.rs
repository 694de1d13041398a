//! Nails: NDS 12.2 and 12.3.

use super::root;
use crate::annex::nds::Nds;
use crate::working::Working;

/// A nail through a side member into a main member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nail {
    /// Diameter D, in.
    pub diameter_in: f64,
    /// Bending yield strength `F_yb`, psi.
    pub yield_psi: f64,
    /// Length in the side member `l_s`, in.
    pub side_in: f64,
    /// Length in the main member `l_m`, in.
    pub main_in: f64,
    /// Specific gravity of the side member.
    pub side_gravity: f64,
    /// Specific gravity of the main member.
    pub main_gravity: f64,
}

/// What a nail carries across its shank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lateral {
    /// Reference value Z of one nail in one plane, lb, before C_D and other factors.
    pub z_lb: f64,
    /// How it yields: `Im`, `Is`, `II`, `IIIm`, `IIIs` or `IV`.
    pub mode: &'static str,
    /// All modes, lb.
    pub modes: [(&'static str, f64); 6],
    /// Whether the nail goes in at least 6 D, without which it must not be counted.
    pub deep_enough: bool,
}

impl Nail {
    /// Dowel bearing strength of wood, psi: `16600 G^1.84`.
    #[must_use]
    pub fn bearing_psi(gravity: f64, nds: &Nds) -> f64 {
        nds.nails.bearing.value * libm::pow(gravity, nds.nails.bearing_power.value)
    }

    /// Reference value in single shear, the least of the yield modes (12.3.1). 0 for figures that are no sizes, and for
    /// nails thicker than these formulas allow.
    pub fn lateral(&self, nds: &Nds, w: &mut Working) -> Lateral {
        let n = &nds.nails;
        let (d, ls, lm) = (self.diameter_in, self.side_in, self.main_in);
        let kd = if d <= n.small_in.value {
            n.reduction_small.value
        } else {
            n.reduction_slope.value * d + n.reduction_fixed.value
        };
        let (fs, fm) = (Self::bearing_psi(self.side_gravity, nds), Self::bearing_psi(self.main_gravity, nds));
        let (re, rt) = (fm / fs, lm / ls);
        let bends = 2.0 * self.yield_psi * d * d / 3.0;
        let k1 =
            (root(re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re * re * re) - re * (1.0 + rt)) / (1.0 + re);
        let k2 = -1.0 + root(2.0 * (1.0 + re) + bends * (1.0 + 2.0 * re) / (fm * lm * lm));
        let k3 = -1.0 + root(2.0 * (1.0 + re) / re + bends * (2.0 + re) / (fm * ls * ls));
        let modes = [
            ("Im", d * lm * fm / kd),
            ("Is", d * ls * fs / kd),
            ("II", k1 * d * ls * fs / kd),
            ("IIIm", k2 * d * lm * fm / ((1.0 + 2.0 * re) * kd)),
            ("IIIs", k3 * d * ls * fm / ((2.0 + re) * kd)),
            ("IV", d * d / kd * root(2.0 * fm * self.yield_psi / (3.0 * (1.0 + re)))),
        ]
        .map(|(mode, value)| (mode, if value.is_finite() && d <= n.thickest_in.value { value.max(0.0) } else { 0.0 }));
        let mut least = modes[0];
        for mode in modes {
            w.line(&format!("yield mode {}", mode.0), mode.1, "lb", "NDS table 12.3.1A", || {
                format!("F_es {fs:.0}, F_em {fm:.0} psi, K_D {kd}")
            });
            if mode.1 < least.1 {
                least = mode;
            }
        }
        w.line("lateral value of one nail Z", least.1, "lb", "NDS 12.3.1", || format!("the least: mode {}", least.0));
        Lateral { z_lb: least.1, mode: least.0, modes, deep_enough: lm >= n.least_penetration_d.value * d }
    }
}

/// Reference withdrawal value of a smooth nail from side grain, lb per inch of depth: `1380 G^2.5 D` (12.2.3). Nails do not
/// count in withdrawal from end grain.
pub fn withdrawal_lb_per_in(diameter_in: f64, gravity: f64, nds: &Nds, w: &mut Working) -> f64 {
    let n = &nds.nails;
    let value = n.withdrawal.value * libm::pow(gravity, n.withdrawal_power.value) * diameter_in;
    w.line("withdrawal of one nail W", value, "lb/in", "NDS 12.2-3", || {
        format!("{} × {gravity}^{} × {diameter_in}", n.withdrawal.value, n.withdrawal_power.value)
    })
}
