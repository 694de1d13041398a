//! Pressure where timbers sit on one another: across the grain (6.1.5) and at an angle to it (6.2.2).

use super::say::say;
use super::{Design, Use, at_most};
use crate::annex::Figure;
use crate::annex::timber::Timber;
use crate::working::Working;
use geometry::Angle;

/// What a timber sits on, for `k_c,90`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Support {
    /// Nothing is known of it: no increase.
    Plain,
    /// A plate or beam all along below it.
    Continuous,
    /// Single supports, such as a purlin on its struts.
    Discrete,
}

/// Where a force goes through the side of a timber.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// Across the grain, mm.
    pub breadth: f64,
    /// Along the grain, mm.
    pub length: f64,
    /// Wood beyond the contact on each side up to the end of the timber, mm.
    pub beyond: [f64; 2],
    /// Clear distance to the next force on the timber `l_1`, mm; infinite when there is none.
    pub gap: f64,
    /// What the timber sits on.
    pub support: Support,
}

/// Effective length of a contact along the grain, mm: the wood beside it helps, on each side no more than there is, than
/// the contact is long, than half the way to the next force, and than 30 mm (6.4).
#[must_use]
pub fn effective_contact(timber: &Timber, contact: &Contact, working: &mut Working) -> f64 {
    let spread = &timber.factors.kc90.spread;
    let most = at_most(contact.gap / 2.0, at_most(contact.length, spread.value));
    let [left, right] = contact.beyond.map(|beyond| at_most(beyond, most));
    working.line("effective contact length", contact.length + left + right, "mm", &spread.source, || {
        format!("{} + {} + {}", say(contact.length), say(left), say(right))
    })
}

/// `k_c,90` of a timber this deep (mm). Only softwood gains, and only when the forces are far enough apart.
fn kc90<'a>(design: &Design<'a>, depth: f64, contact: &Contact) -> &'a Figure {
    let by = &design.timber.factors.kc90;
    let far_enough = contact.gap >= by.gap_least.value * depth;
    if !(design.wood.softwood && far_enough) {
        return &by.plain;
    }
    match contact.support {
        Support::Plain => &by.plain,
        Support::Continuous => &by.continuous,
        Support::Discrete => &by.discrete,
    }
}

/// Pressure across the grain of a timber this deep (mm) under a force in N: (6.3) and (6.4). `k_sys` is not used: each
/// seat takes its own load.
#[must_use]
pub fn bearing(design: &Design<'_>, depth: f64, contact: &Contact, force: f64, working: &mut Working) -> Use {
    let design = &Design { shared: false, ..*design };
    design.basics(working);
    let length = effective_contact(design.timber, contact, working);
    let force = force.abs();
    let stress = working.line("pressure σ_c,90,d", force / (contact.breadth * length), "N/mm²", "F / A_ef", || {
        format!("{} / ({} × {})", say(force), say(contact.breadth), say(length))
    });
    let factor = kc90(design, depth, contact);
    working.line("how the timber is supported k_c,90", factor.value, "", &factor.source, String::new);
    let strength = design.side_pressure(working);
    let (clause, name) = ("EN 1995-1-1 6.1.5 (6.3)", "bearing");
    let how = || format!("{} / ({} × {})", say(stress), say(factor.value), say(strength));
    Use::of(working.line(name, stress / (factor.value * strength), "", clause, how), clause, name)
}

/// Strength in compression at an angle to the grain, N/mm², with `k_c,90` of a plain support: the limit of (6.16).
#[must_use]
pub fn angle_strength(design: &Design<'_>, to_grain: Angle, working: &mut Working) -> f64 {
    let (along, across) = (design.end_pressure(working), design.side_pressure(working));
    let kc90 = design.timber.factors.kc90.plain.value;
    let (sin, cos) = (to_grain.sin(), to_grain.cos());
    let strength = along / (along / (kc90 * across) * sin * sin + cos * cos);
    working.line("strength at an angle to the grain f_c,α,d", strength, "N/mm²", "EN 1995-1-1 6.2.2 (6.16)", || {
        let (f0, f90, a) = (say(along), say(across), say(to_grain.to_deg()));
        format!("{f0} / ({f0} / ({} × {f90}) × sin² {a}° + cos² {a}°)", say(kc90))
    })
}

/// Pressure at an angle to the grain (0° along it) on a contact of `area` mm² under a force in N: (6.16).
#[must_use]
pub fn bearing_at_angle(design: &Design<'_>, to_grain: Angle, area: f64, force: f64, working: &mut Working) -> Use {
    let design = &Design { shared: false, ..*design };
    design.basics(working);
    let strength = angle_strength(design, to_grain, working);
    let stress = working.line("pressure σ_c,α,d", force.abs() / area, "N/mm²", "F / A", || {
        format!("{} / {}", say(force.abs()), say(area))
    });
    let (clause, name) = ("EN 1995-1-1 6.2.2 (6.16)", "bearing at an angle to the grain");
    let how = || format!("{} / {}", say(stress), say(strength));
    Use::of(working.line(name, stress / strength, "", clause, how), clause, name)
}
