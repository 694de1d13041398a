//! Beams that can tip over and twist: 6.3.3.

use super::column::{Axis, buckling};
use super::say::say;
use super::{Design, Forces, Section, Use, at_most};
use crate::annex::timber::Timber;
use crate::working::Working;
use std::f64::consts::PI;

/// Clause of lateral-torsional stability.
const CLAUSE: &str = "EN 1995-1-1 6.3.3";
/// `σ_m,crit = 0.78 b² E_0,05 / (h l_ef)` for solid softwood, (6.32).
const SOFTWOOD: f64 = 0.78;
/// Bounds of `λ_rel,m` between which the straight line of (6.34) stands.
const BOUNDS: [f64; 2] = [0.75, 1.4];
/// The straight line `1.56 - 0.75 λ_rel,m` of (6.34).
const LINE: [f64; 2] = [1.56, 0.75];
/// `G_0,05 = E_0,05 / 16`, the relation of EN 384 for the means.
const SHEAR_MODULUS: f64 = 16.0;

/// How the edge in compression is kept from moving sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edge {
    /// Held all along, by battens or boards that are nailed to it; ends kept upright.
    Held,
    /// Free over a span, ends kept upright.
    Free {
        /// The span, or the length of an overhang, mm.
        span: f64,
        /// How it is loaded.
        load: SpanLoad,
        /// Where on the depth.
        at: SpanLoadAt,
    },
}

/// The loads of table 6.1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpanLoad {
    /// The same moment all along.
    Moment,
    /// Spread on a single span.
    Udl,
    /// One load in the middle of a single span.
    MidPoint,
    /// Spread on an overhang.
    CantileverUdl,
    /// One load at the end of an overhang.
    CantileverEnd,
}

/// Where on the depth a load acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpanLoadAt {
    /// On the edge in compression: rafters on a purlin.
    CompressionEdge,
    /// At half the depth.
    Middle,
    /// Hung from the edge in tension.
    TensionEdge,
}

/// What twisting leaves of the strength of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lateral {
    /// `l_ef`, mm.
    pub length: f64,
    /// `σ_m,crit`, N/mm².
    pub critical: f64,
    /// `λ_rel,m`.
    pub relative: f64,
    /// `k_crit`.
    pub factor: f64,
}

/// `l_ef` by table 6.1, mm; at least 0.
fn effective_length(timber: &Timber, depth: f64, span: f64, load: SpanLoad, at: SpanLoadAt) -> f64 {
    let by = &timber.factors.effective_length;
    let share = match load {
        SpanLoad::Moment => &by.moment,
        SpanLoad::Udl => &by.udl,
        SpanLoad::MidPoint => &by.mid_point,
        SpanLoad::CantileverUdl => &by.cantilever_udl,
        SpanLoad::CantileverEnd => &by.cantilever_end,
    };
    let depths = match at {
        SpanLoadAt::CompressionEdge => by.compression_edge.value,
        SpanLoadAt::Middle => 0.0,
        SpanLoadAt::TensionEdge => by.tension_edge.value,
    };
    let length = share.value * span + depths * depth;
    if length < 0.0 { 0.0 } else { length }
}

/// `l_ef`, `σ_m,crit`, `λ_rel,m` and `k_crit`: (6.30) to (6.34). Softwood by the short formula, hardwood by the full one
/// with `G_0,05 = E_0,05 / 16`.
///
/// `k_crit` jumps by a quarter of a per cent at the ends of the straight line of the code, less than a millimetre of
/// depth makes.
#[must_use]
pub fn lateral_stability(design: &Design<'_>, section: Section, edge: Edge, working: &mut Working) -> Lateral {
    let Edge::Free { span, load, at } = edge else {
        working.line("what twisting leaves k_crit", 1.0, "", CLAUSE, || "the edge in compression is held".to_owned());
        return Lateral { length: 0.0, critical: f64::INFINITY, relative: 0.0, factor: 1.0 };
    };
    let (wood, Section { breadth, depth }) = (design.wood, section);
    let length = effective_length(design.timber, depth, span, load, at);
    working.line("effective length l_ef", length, "mm", "EN 1995-1-1 table 6.1", || {
        format!("span {}, depth {}", say(span), say(depth))
    });
    let critical = if wood.softwood {
        let critical = SOFTWOOD * breadth * breadth * wood.e0_05 / (depth * length);
        working.line("critical bending stress σ_m,crit", critical, "N/mm²", "EN 1995-1-1 6.3.3 (6.32)", || {
            let (b, h, e, l) = (say(breadth), say(depth), say(wood.e0_05), say(length));
            format!("{SOFTWOOD} × {b}² × {e} / ({h} × {l})")
        })
    } else {
        let stiff = wood.e0_05 * (section.i_z() * section.i_torsion() / SHEAR_MODULUS).sqrt();
        working.line(
            "critical bending stress σ_m,crit",
            PI * stiff / (length * section.w_y()),
            "N/mm²",
            "EN 1995-1-1 6.3.3 (6.31)",
            || {
                let (e, iz, it) = (say(wood.e0_05), say(section.i_z()), say(section.i_torsion()));
                format!("π × √({e} × {iz} × {e} / 16 × {it}) / ({} × {})", say(length), say(section.w_y()))
            },
        )
    };
    let relative = (wood.fm_k / critical).sqrt();
    working.line("relative slenderness λ_rel,m", relative, "", "EN 1995-1-1 6.3.3 (6.30)", || {
        format!("√({} / {})", say(wood.fm_k), say(critical))
    });
    let factor = if relative <= BOUNDS[0] {
        1.0
    } else if relative <= BOUNDS[1] {
        LINE[0] - LINE[1] * relative
    } else {
        1.0 / (relative * relative)
    };
    working.line("what twisting leaves k_crit", factor, "", "EN 1995-1-1 6.3.3 (6.34)", String::new);
    Lateral { length, critical, relative, factor }
}

/// Bending up and down of a beam that can twist, (6.33), and with compression (6.35). `sideways` is the length (mm) over
/// which a compressed member can buckle sideways, 0 when it is held. Tension is left out: it only steadies the beam.
#[must_use]
pub fn lateral_torsional(
    design: &Design<'_>,
    section: Section,
    edge: Edge,
    sideways: f64,
    forces: Forces,
    working: &mut Working,
) -> Use {
    design.basics(working);
    let (moment, modulus) = (forces.moment_y.abs(), section.w_y());
    let stress = working.line("bending stress σ_m,y,d", moment / modulus, "N/mm²", "M / W", || {
        format!("{} / {}", say(moment), say(modulus))
    });
    let strength = design.bending("bending strength f_m,y,d", section.depth, working);
    let kcrit = at_most(lateral_stability(design, section, edge, working).factor, 1.0);
    let share = stress / (kcrit * strength);
    let name = "twisting sideways";
    if forces.axial >= 0.0 {
        let clause = "EN 1995-1-1 6.3.3 (6.33)";
        let how = || format!("{} / ({} × {})", say(stress), say(kcrit), say(strength));
        return Use::of(working.line(name, share, "", clause, how), clause, name);
    }
    let force = forces.axial.abs();
    let pressed = working.line("compression stress σ_c,0,d", force / section.area(), "N/mm²", "N / A", || {
        format!("{} / {}", say(force), say(section.area()))
    });
    let kc = buckling(design, section, Axis::Z, sideways, working).factor;
    let pressed = pressed / (kc * design.compression(working));
    let clause = "EN 1995-1-1 6.3.3 (6.35)";
    let how = || format!("{}² + {}", say(share), say(pressed));
    Use::of(working.line(name, share * share + pressed, "", clause, how), clause, name)
}
