//! Columns and struts: 6.3.2.

use super::say::say;
use super::stress::Bent;
use super::{Design, Forces, Section, Use, at_section, greater};
use crate::working::Working;
use std::f64::consts::PI;

/// Clause of columns.
const CLAUSE: &str = "EN 1995-1-1 6.3.2";
/// Relative slenderness up to which a column is stocky, (6.23) to (6.27).
const STOCKY: f64 = 0.3;

/// Lengths between the points where a compressed member cannot move aside, mm; 0 where it is held all along.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lengths {
    /// In the direction of the depth (bending about y).
    pub y: f64,
    /// In the direction of the breadth (bending about z).
    pub z: f64,
}

/// How slender a column is about one axis, and what is left of its strength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Buckling {
    /// `λ`, length over radius of gyration.
    pub slenderness: f64,
    /// `λ_rel`, (6.21) and (6.22).
    pub relative: f64,
    /// `k_c`, (6.25) to (6.29); 1 for stocky columns.
    pub factor: f64,
}

/// The way in which a column buckles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// In the direction of the depth.
    Y,
    /// In the direction of the breadth.
    Z,
}

impl Axis {
    /// What the lines of its working say.
    const fn words(self) -> [&'static str; 3] {
        match self {
            Self::Y => ["slenderness in the depth λ_y", "relative slenderness λ_rel,y", "what buckling leaves k_c,y"],
            Self::Z => ["slenderness in the breadth λ_z", "relative slenderness λ_rel,z", "what buckling leaves k_c,z"],
        }
    }
}

/// Buckling of a section over a length (mm) in one direction.
#[must_use]
pub fn buckling(design: &Design<'_>, section: Section, axis: Axis, length: f64, working: &mut Working) -> Buckling {
    let radius = match axis {
        Axis::Y => section.radius_y(),
        Axis::Z => section.radius_z(),
    };
    let wood = design.wood;
    let slenderness = length / radius;
    let relative = slenderness / PI * (wood.fc_0_k / wood.e0_05).sqrt();
    let beta = &design.timber.factors.beta_c;
    let factor = if relative <= STOCKY {
        1.0
    } else {
        let k = 0.5 * (1.0 + beta.value * (relative - STOCKY) + relative * relative);
        1.0 / (k + (k * k - relative * relative).sqrt())
    };
    let [lambda, rel, kc] = axis.words();
    working.line(lambda, slenderness, "", CLAUSE, || format!("{} / {}", say(length), say(radius)));
    working.line(rel, relative, "", "EN 1995-1-1 6.3.2 (6.21), (6.22)", || {
        format!("{} / π × √({} / {})", say(slenderness), say(wood.fc_0_k), say(wood.e0_05))
    });
    working.line(kc, factor, "", "EN 1995-1-1 6.3.2 (6.25)–(6.29)", || format!("with β_c = {}", say(beta.value)));
    Buckling { slenderness, relative, factor }
}

/// A column, strut or rafter in compression with bending: (6.23) and (6.24); where it is stocky both ways,
/// (6.19) and (6.20) of [`at_section`]. A member that is not compressed does not buckle and is checked by
/// [`at_section`] alone.
#[must_use]
pub fn column(design: &Design<'_>, section: Section, lengths: Lengths, forces: Forces, working: &mut Working) -> Use {
    if forces.axial >= 0.0 {
        return at_section(design, section, forces, working);
    }
    let y = buckling(design, section, Axis::Y, lengths.y, working);
    let z = buckling(design, section, Axis::Z, lengths.z, working);
    if y.relative <= STOCKY && z.relative <= STOCKY {
        return at_section(design, section, forces, working);
    }
    design.basics(working);
    let bent = Bent::of(design, section, section, forces, working);
    let force = forces.axial.abs();
    let stress = working.line("compression stress σ_c,0,d", force / section.area(), "N/mm²", "N / A", || {
        format!("{} / {}", say(force), say(section.area()))
    });
    let strength = design.compression(working);
    let km = design.timber.factors.km.value;
    let sum = |kc: f64, bent: f64| stress / (kc * strength) + bent;
    let how = |kc: f64, bent: f64| format!("{} / ({} × {}) + {}", say(stress), say(kc), say(strength), say(bent));
    let (in_depth, in_breadth) = (bent.y_full(km), bent.z_full(km));
    let in_depth =
        working.line("buckling in the depth", sum(y.factor, in_depth), "", "EN 1995-1-1 6.3.2 (6.23)", || {
            how(y.factor, in_depth)
        });
    let in_breadth =
        working.line("buckling in the breadth", sum(z.factor, in_breadth), "", "EN 1995-1-1 6.3.2 (6.24)", || {
            how(z.factor, in_breadth)
        });
    let (clause, name) = ("EN 1995-1-1 6.3.2 (6.23), (6.24)", "buckling");
    let how = || format!("the greater of {} and {}", say(in_depth), say(in_breadth));
    Use::of(working.line(name, greater(in_depth, in_breadth), "", clause, how), clause, name)
}
