//! Shear (6.1.7) and notches at supports (6.5.2).

use super::say::say;
use super::{Design, Section, Use, at_most};
use crate::annex::timber::Timber;
use crate::working::Working;

/// Greatest over mean shear stress of a rectangle.
const RECTANGLE: f64 = 1.5;
/// `1 + 1.1 i^1.5 / √h` of (6.62).
const TAPER: [f64; 2] = [1.1, 1.5];
/// `0.8 x / h` of (6.62).
const REACH: f64 = 0.8;

/// A notch near a support.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Notch {
    /// Depth of wood left `h_ef`, mm.
    pub left: f64,
    /// From the line of the support force to the corner of the notch `x`, mm along the timber.
    pub reach: f64,
    /// How gently the notch ends `i`: mm along the timber for each mm of depth; 0 for a square corner.
    pub taper: f64,
    /// Which edge is cut.
    pub face: NotchFace,
}

/// The edge that a notch is cut into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotchFace {
    /// The edge that sits on the support, as a birdsmouth: the wood can split from its corner.
    Support,
    /// The edge away from it.
    Opposite,
}

/// Shear of an unnotched member; `force` in N, its sign does not matter: (6.13) with `b_ef = k_cr b`. Loads within the
/// depth of the member from the face of a support may be left out of `force`.
#[must_use]
pub fn shear(design: &Design<'_>, section: Section, force: f64, working: &mut Working) -> Use {
    design.basics(working);
    let stress = shear_stress(design, section, force, working);
    let strength = design.shear(working);
    let (clause, name) = ("EN 1995-1-1 6.1.7 (6.13)", "shear");
    let how = || format!("{} / {}", say(stress), say(strength));
    Use::of(working.line(name, stress / strength, "", clause, how), clause, name)
}

fn shear_stress(design: &Design<'_>, section: Section, force: f64, working: &mut Working) -> f64 {
    let kcr = &design.timber.factors.kcr;
    let breadth = working.line("breadth between cracks b_ef", kcr.value * section.breadth, "mm", &kcr.source, || {
        format!("{} × {}", say(kcr.value), say(section.breadth))
    });
    let (force, depth) = (force.abs(), section.depth);
    working.line("shear stress τ_d", RECTANGLE * force / (breadth * depth), "N/mm²", "1.5 V / (b_ef h)", || {
        format!("1.5 × {} / ({} × {})", say(force), say(breadth), say(depth))
    })
}

/// `k_v`, what a notch in a timber this deep (mm) leaves of its strength in shear: (6.61) to (6.63).
#[must_use]
pub fn notch_factor(timber: &Timber, depth: f64, notch: &Notch, working: &mut Working) -> f64 {
    let what = "what the notch leaves k_v";
    if notch.face == NotchFace::Opposite {
        return working
            .line(what, 1.0, "", "EN 1995-1-1 6.5.2 (6.61)", || "cut into the edge away from the support".to_owned());
    }
    let share = at_most(notch.left / depth, 1.0);
    let taper = 1.0 + TAPER[0] * libm::pow(notch.taper, TAPER[1]) / depth.sqrt();
    let reach = REACH * notch.reach / depth * (1.0 / share - share * share).sqrt();
    let whole = depth.sqrt() * ((share * (1.0 - share)).sqrt() + reach);
    let kn = timber.factors.kn.value;
    working.line(what, at_most(kn * taper / whole, 1.0), "", "EN 1995-1-1 6.5.2 (6.62)", || {
        let (h, a, x, i) = (say(depth), say(share), say(notch.reach), say(notch.taper));
        let top = format!("{} × (1 + 1.1 × {i}^1.5 / √{h})", say(kn));
        format!("{top} / (√{h} × (√({a} × (1 − {a})) + 0.8 × {x} / {h} × √(1 / {a} − {a}²))), at most 1")
    })
}

/// Shear where a notch is cut at a support, such as the birdsmouth of a rafter on its plate: (6.60).
#[must_use]
pub fn shear_at_notch(design: &Design<'_>, section: Section, notch: &Notch, force: f64, working: &mut Working) -> Use {
    design.basics(working);
    let kv = notch_factor(design.timber, section.depth, notch, working);
    let stress = shear_stress(design, section.left(notch.left), force, working);
    let strength = design.shear(working);
    let (clause, name) = ("EN 1995-1-1 6.5.2 (6.60)", "shear at the notch");
    let how = || format!("{} / ({} × {})", say(stress), say(kv), say(strength));
    Use::of(working.line(name, stress / (kv * strength), "", clause, how), clause, name)
}
