//! Spans of rafters and ceiling joists by the rule that the tables of the IRC and IBC follow: the least of bending under
//! the whole load and deflection under the live load, to the nearest inch, no more than a cap. Rafters are measured level.

use crate::annex::nds::{Nds, Stick};
use crate::working::Working;

/// What a span is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// Centre to centre, in.
    pub spacing_in: f64,
    /// Live (or snow) load, psf.
    pub live_psf: f64,
    /// Dead load, psf.
    pub dead_psf: f64,
    /// Deflection under the live load: span divided by this.
    pub deflection_limit: f64,
    /// `C_D` of the shortest load.
    pub duration: f64,
}

/// A span and why it is no longer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Nearest inch, no more than the cap; 0 when nothing spans.
    pub inches: u32,
    /// Span by bending, in.
    pub bending_in: f64,
    /// Span by deflection, in.
    pub deflection_in: f64,
}

/// The longest span of a repetitive member.
pub fn longest(stick: &Stick<'_>, asked: &Asked, nds: &Nds, w: &mut Working) -> Span {
    /// Square inches in a square foot.
    const SQUARE_INCHES: f64 = 144.0;
    let load = |psf: f64| psf * asked.spacing_in / SQUARE_INCHES;
    let repetitive = nds.members.repetitive.value;
    let allowed =
        w.line("allowed bending F_b'", stick.bending() * asked.duration * repetitive, "psi", "NDS 4.3", || {
            format!("{} × C_D {} × C_r {repetitive}", stick.bending(), asked.duration)
        });
    let whole = load(asked.live_psf + asked.dead_psf);
    let bending_in = (8.0 * allowed * stick.modulus_in3() / whole).sqrt();
    w.line("span by bending", bending_in, "in", "NDS 3.3", || {
        format!("√(8 × {allowed:.0} × {:.3} / {whole:.3})", stick.modulus_in3())
    });
    let stiff =
        384.0 * stick.lumber.modulus * stick.inertia_in4() / (5.0 * asked.deflection_limit * load(asked.live_psf));
    let deflection_in = libm::cbrt(stiff);
    w.line("span by deflection", deflection_in, "in", "NDS 3.5", || {
        format!(
            "∛(384 × {} × {:.2} / (5 × {} × {:.3}))",
            stick.lumber.modulus,
            stick.inertia_in4(),
            asked.deflection_limit,
            load(asked.live_psf)
        )
    });
    let cap = nds.spans.longest_in.value;
    let least = bending_in.min(deflection_in).min(cap);
    let inches = if least.is_finite() && least > 0.0 { least.round() } else { 0.0 };
    w.line("longest span", inches, "in", "span rule of the IRC and IBC", || format!("the least, no more than {cap}"));
    Span { inches: inches as u32, bending_in, deflection_in }
}
