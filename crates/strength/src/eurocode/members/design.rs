//! Design strengths: what a wood gives under loads of a duration, in a climate.

use super::say::say;
use crate::annex::timber::{Duration, ServiceClass, Timber};
use crate::eurocode::wood::Wood;
use crate::working::Working;

/// Clause of design strengths.
const STRENGTH: &str = "EN 1995-1-1 2.4.1 (2.14)";

/// The wood of a member, what it stands in and what it carries.
#[derive(Clone, Copy, Debug)]
pub struct Design<'a> {
    /// Strength class.
    pub wood: &'a Wood,
    /// Factors of the region.
    pub timber: &'a Timber,
    /// How damp it becomes.
    pub service: ServiceClass,
    /// The shortest of the loads of the combination.
    pub duration: Duration,
    /// Whether the load is shared with its neighbours ([`Timber::shares_load`]); never for a load on one member alone.
    pub shared: bool,
}

impl Design<'_> {
    /// `k_mod`.
    #[must_use]
    pub fn kmod(&self) -> f64 {
        self.timber.kmod(self.service, self.duration).value
    }

    /// `k_def`.
    #[must_use]
    pub fn kdef(&self) -> f64 {
        self.timber.kdef(self.service).value
    }

    /// `k_sys`: 1 when the load is not shared.
    #[must_use]
    pub fn ksys(&self) -> f64 {
        if self.shared { self.timber.factors.ksys.factor.value } else { 1.0 }
    }

    /// `k_h` for a depth (bending) or greatest side (tension) in mm: what shallow timber gains.
    #[must_use]
    pub fn kh(&self, depth: f64) -> f64 {
        let rule = &self.timber.factors.kh;
        if depth >= rule.depth.value || self.wood.rho_k > rule.density_most.value {
            return 1.0;
        }
        super::at_most(libm::pow(rule.depth.value / depth, rule.exponent.value), rule.most.value)
    }

    /// Write the factors that all strengths of a check have in common.
    pub(super) fn basics(&self, working: &mut Working) {
        let (kmod, gamma) = (self.timber.kmod(self.service, self.duration), &self.timber.factors.gamma_m);
        working.line("share of strength for the duration of load k_mod", kmod.value, "", &kmod.source, || {
            format!("service class {}, {}", self.service.number(), self.duration.word())
        });
        working.line("partial factor of the material γ_M", gamma.value, "", &gamma.source, String::new);
        if self.shared {
            let ksys = &self.timber.factors.ksys.factor;
            working.line("load shared with the neighbours k_sys", ksys.value, "", &ksys.source, String::new);
        }
    }

    /// `k_h`, written when something is gained.
    fn size(&self, depth: f64, working: &mut Working) -> f64 {
        let kh = self.kh(depth);
        if kh > 1.0 {
            let rule = &self.timber.factors.kh;
            working.line("shallow timber k_h", kh, "", &rule.depth.source, || {
                format!(
                    "({} / {})^{}, at most {}",
                    say(rule.depth.value),
                    say(depth),
                    say(rule.exponent.value),
                    say(rule.most.value)
                )
            });
        }
        kh
    }

    /// `f_k k_mod k_sys k_h / γ_M`, N/mm².
    fn strength(&self, what: &str, characteristic: f64, kh: f64, ksys: f64, working: &mut Working) -> f64 {
        let (kmod, gamma) = (self.kmod(), self.timber.factors.gamma_m.value);
        working.line(what, characteristic * kmod * ksys * kh / gamma, "N/mm²", STRENGTH, || {
            let mut how = format!("{} × {}", say(characteristic), say(kmod));
            for factor in [ksys, kh] {
                if factor != 1.0 {
                    how += &format!(" × {}", say(factor));
                }
            }
            format!("{how} / {}", say(gamma))
        })
    }

    /// Bending, for a section this deep in the direction of bending (mm).
    pub(super) fn bending(&self, what: &str, depth: f64, working: &mut Working) -> f64 {
        let kh = self.size(depth, working);
        self.strength(what, self.wood.fm_k, kh, self.ksys(), working)
    }

    /// Tension along the grain; `width` is the greater side, mm.
    pub(super) fn tension(&self, width: f64, working: &mut Working) -> f64 {
        let kh = self.size(width, working);
        self.strength("strength in tension f_t,0,d", self.wood.ft_0_k, kh, self.ksys(), working)
    }

    /// Compression along the grain.
    pub(super) fn compression(&self, working: &mut Working) -> f64 {
        self.strength("strength in compression f_c,0,d", self.wood.fc_0_k, 1.0, self.ksys(), working)
    }

    /// Shear.
    pub(super) fn shear(&self, working: &mut Working) -> f64 {
        self.strength("strength in shear f_v,d", self.wood.fv_k, 1.0, self.ksys(), working)
    }

    /// Compression along the grain where timber meets timber: nothing is shared there.
    pub(super) fn end_pressure(&self, working: &mut Working) -> f64 {
        self.strength("strength in compression f_c,0,d", self.wood.fc_0_k, 1.0, 1.0, working)
    }

    /// Compression across the grain: at a support nothing is shared.
    pub(super) fn side_pressure(&self, working: &mut Working) -> f64 {
        self.strength("strength across the grain f_c,90,d", self.wood.fc_90_k, 1.0, 1.0, working)
    }
}
