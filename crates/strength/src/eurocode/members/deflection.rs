//! Deflection: 2.2.3 and 7.2.

use super::say::say;
use super::{Design, Section, Use};
use crate::annex::Figure;
use crate::annex::timber::Timber;
use crate::eurocode::wood::Wood;
use crate::working::Working;

/// Form factor of a rectangle for deflection by shear.
const SHEAR_FORM: f64 = 1.2;

/// How far a beam sags in the middle, mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sag {
    /// By bending.
    pub bending: f64,
    /// By shear: three per cent or so in a joist.
    pub shear: f64,
}

impl Sag {
    /// Both.
    #[must_use]
    pub const fn total(self) -> f64 {
        self.bending + self.shear
    }
}

/// Sag of a single span (mm) under a spread load in N/mm (which is kN/m): `5 q l⁴ / (384 E I)` and `1.2 q l² / (8 G A)`.
#[must_use]
pub const fn sag_of_udl(wood: &Wood, section: Section, span: f64, load: f64) -> Sag {
    let square = span * span;
    Sag {
        bending: 5.0 * load * square * square / (384.0 * wood.e0_mean * section.i_y()),
        shear: SHEAR_FORM * load * square / (8.0 * wood.g_mean * section.area()),
    }
}

/// Sag of a single span (mm) under a load in N in its middle: `F l³ / (48 E I)` and `1.2 F l / (4 G A)`.
#[must_use]
pub const fn sag_of_point(wood: &Wood, section: Section, span: f64, load: f64) -> Sag {
    Sag {
        bending: load * span * span * span / (48.0 * wood.e0_mean * section.i_y()),
        shear: SHEAR_FORM * load * span / (4.0 * wood.g_mean * section.area()),
    }
}

/// How far a load that comes and goes bends a member, and how much of it counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Variable {
    /// First deflection under the whole of it, mm, in the direction of that under permanent load; 0 when it goes the
    /// other way.
    pub first: f64,
    /// `ψ_0`: share that comes with another.
    pub psi0: f64,
    /// `ψ_2`: share that is there for good.
    pub psi2: f64,
}

/// Deflection when the loads come, and in the end, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movement {
    /// `w_inst`.
    pub first: f64,
    /// `w_fin`.
    pub last: f64,
}

/// First and final deflection from the first deflections under permanent loads (mm) and under each load that comes and
/// goes: `w_fin = w_G (1 + k_def) + w_Q1 (1 + ψ_2 k_def) + w_Qi (ψ_0 + ψ_2 k_def)`, led by whichever makes it greatest.
#[must_use]
pub fn movement(design: &Design<'_>, permanent: f64, variable: &[Variable], working: &mut Working) -> Movement {
    let kdef = design.timber.kdef(design.service);
    working.line("creep k_def", kdef.value, "", &kdef.source, || format!("service class {}", design.service.number()));
    let (mut others, mut lasting, mut leads) = (0.0, 0.0, 0.0);
    for load in variable {
        others += load.psi0 * load.first;
        lasting += load.psi2 * load.first;
        let more = (1.0 - load.psi0) * load.first;
        leads = super::greater(leads, more);
    }
    let first = working.line("first deflection w_inst", permanent + others + leads, "mm", "EN 1995-1-1 2.2.3", || {
        format!("{} + {}", say(permanent), say(others + leads))
    });
    let creep = (permanent + lasting) * kdef.value;
    let last = working.line("final deflection w_fin", first + creep, "mm", "EN 1995-1-1 2.2.3 (2.3)–(2.5)", || {
        format!("{} + {} × ({} + {})", say(first), say(kdef.value), say(permanent), say(lasting))
    });
    Movement { first, last }
}

/// What a deflection is measured against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Span {
    /// Between two supports, mm along the member.
    Between(f64),
    /// Beyond the last support, mm along the member.
    Overhang(f64),
}

impl Span {
    /// Its length, mm.
    #[must_use]
    pub const fn length(self) -> f64 {
        match self {
            Self::Between(length) | Self::Overhang(length) => length,
        }
    }
}

/// What is fixed below a member.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Finish {
    /// Plaster or boards, which crack.
    Ceiling,
    /// Nothing that cracks.
    Open,
}

/// The greatest net final deflection, mm, and the figure that it is the span divided by.
#[must_use]
pub const fn deflection_limit(timber: &Timber, span: Span, finish: Finish) -> (f64, &Figure) {
    let by = &timber.factors.deflection;
    let figure = match (span, finish) {
        (Span::Between(_), Finish::Ceiling) => &by.ceiling,
        (Span::Between(_), Finish::Open) => &by.open,
        (Span::Overhang(_), Finish::Ceiling) => &by.cantilever_ceiling,
        (Span::Overhang(_), Finish::Open) => &by.cantilever_open,
    };
    (span.length() / figure.value, figure)
}

/// Final deflection (mm, its sign does not matter) against the limit of the region, 7.2.
#[must_use]
pub fn deflection(timber: &Timber, span: Span, finish: Finish, last: f64, working: &mut Working) -> Use {
    let (limit, figure) = deflection_limit(timber, span, finish);
    working.line("greatest deflection", limit, "mm", &figure.source, || {
        format!("{} / {}", say(span.length()), say(figure.value))
    });
    let (clause, name) = ("EN 1995-1-1 7.2", "deflection");
    let how = || format!("{} / {}", say(last.abs()), say(limit));
    Use::of(working.line(name, last.abs() / limit, "", clause, how), clause, name)
}
