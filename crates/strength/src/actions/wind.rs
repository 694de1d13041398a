//! Wind on slopes: coefficients by zone and pitch, how wide the zones are, and what presses and lifts.

use super::ActionsFault;
use super::fault::figure;
use crate::annex::loads::{Loads, WindTable, Zone};
use crate::working::Working;

/// Which roof the wind meets, and from where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindForm {
    /// Two slopes, wind across the ridge.
    Across,
    /// Two slopes, wind along the ridge.
    Along,
    /// A hipped roof, wind from any side.
    Hipped,
}

impl WindForm {
    fn table(self, loads: &Loads) -> &WindTable {
        match self {
            Self::Across => &loads.wind.across,
            Self::Along => &loads.wind.along,
            Self::Hipped => &loads.wind.hipped,
        }
    }
}

/// Coefficients c_pe,10 of a zone; a sign that is not tabled at the pitch is `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Coefficients {
    /// Lifting, at or below nought.
    pub suction: Option<f64>,
    /// Pressing, at or above nought.
    pub pressure: Option<f64>,
}

/// Coefficients of a zone at a pitch in degrees, on a straight line between tabled values of one sign
/// (EN 1991-1-4 7.2.5).
#[must_use]
pub fn coefficients(loads: &Loads, form: WindForm, zone: Zone, pitch: f64) -> Coefficients {
    let table = form.table(loads);
    Coefficients {
        suction: table.suction.get(&zone).and_then(|s| s.within(pitch)),
        pressure: table.pressure.get(&zone).and_then(|s| s.within(pitch)),
    }
}

/// How wide the zones are, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WindZones {
    /// e, the smaller of the breadth across the wind and twice the height.
    pub e: f64,
    /// Depth of the zones along edges, and behind the ridge.
    pub edge_depth: f64,
    /// Width of a corner.
    pub corner_width: f64,
    /// With wind along the ridge, how far the zone H goes from the gable.
    pub middle_depth: f64,
}

/// How wide the zones are from the breadth of the building across the wind and the height of its ridge, both mm.
///
/// # Errors
/// A size that is not above nought.
pub fn zones(loads: &Loads, breadth: f64, height: f64) -> Result<WindZones, ActionsFault> {
    let breadth = figure("the breadth of the building", breadth, 0.0)?;
    let e = breadth.min(2.0 * figure("the height of the ridge", height, 0.0)?);
    let wind = &loads.wind;
    Ok(WindZones {
        e,
        edge_depth: e * wind.edge_depth.value,
        corner_width: e * wind.corner_width.value,
        middle_depth: e * wind.middle_depth.value,
    })
}

/// Wind on a slope, kN/m² square to it: onto the roof positive. What is outside less what is inside, at its worst.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressures {
    /// Pressing, away from the edges; at or above nought.
    pub down: f64,
    /// Lifting, away from the edges; at or below nought.
    pub up: f64,
    /// Pressing at corners, eaves, verges, hips and behind the ridge.
    pub edge_down: f64,
    /// Lifting there.
    pub edge_up: f64,
}

/// Zones away from the edges for each form.
fn is_field(form: WindForm, zone: Zone) -> bool {
    match form {
        WindForm::Across | WindForm::Along => matches!(zone, Zone::H | Zone::I),
        WindForm::Hipped => matches!(zone, Zone::H | Zone::I | Zone::N),
    }
}

/// Wind on a slope from the peak pressure q_p (kN/m²): the worst of every zone, w = q_p (c_pe − c_pi), EN 1991-1-4 5.2.
/// A roof with two slopes is met across and along its ridge.
///
/// # Errors
/// A pressure below nought; a pitch that is not tabled.
pub fn pressures(
    loads: &Loads,
    hipped: bool,
    pitch: f64,
    peak: f64,
    working: &mut Working,
) -> Result<Pressures, ActionsFault> {
    let q_p = figure("the peak pressure of the wind", peak, 0.0)?;
    let forms: &[WindForm] = if hipped { &[WindForm::Hipped] } else { &[WindForm::Across, WindForm::Along] };
    // The least and largest coefficient outside, away from edges and at them.
    let mut worst = [[f64::INFINITY, f64::NEG_INFINITY]; 2];
    for &form in forms {
        let table = form.table(loads);
        for sloped in table.suction.iter().chain(&table.pressure).map(|(zone, sloped)| (*zone, sloped)) {
            let (zone, sloped) = sloped;
            if let Some(c) = sloped.within(pitch) {
                let [least, most] = &mut worst[usize::from(!is_field(form, zone))];
                (*least, *most) = (least.min(c), most.max(c));
            }
        }
    }
    let tabled = |form: &WindForm| {
        let ranges = form.table(loads).suction.values().filter_map(crate::annex::loads::Sloped::range);
        ranges.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], [c, d]| [a.min(c), b.max(d)])
    };
    let ranges: Vec<[f64; 2]> = forms.iter().map(tabled).collect();
    let from = ranges.iter().fold(f64::NEG_INFINITY, |m, r| m.max(r[0]));
    let to = ranges.iter().fold(f64::INFINITY, |m, r| m.min(r[1]));
    if !(from..=to).contains(&pitch) {
        return Err(ActionsFault::PitchNotTabled { pitch, from, to });
    }
    let source = &forms[0].table(loads).source;
    let (inside_out, inside_in) = (loads.wind.inside_out.value, loads.wind.inside_in.value);
    let mut net = |what: &str, outside: f64, inside: f64, sign: f64| {
        // A sign that does not come about gives no load.
        let w = (q_p * (outside - inside) * sign).max(0.0) * sign;
        working.line(&format!("wind {what} w"), w, "kN/m²", source, || format!("{q_p} × ({outside:.3} − {inside})"))
    };
    let [[field_least, field_most], [edge_least, edge_most]] = worst;
    Ok(Pressures {
        down: net("pressing on the slope", field_most, inside_in, 1.0),
        up: net("lifting the slope", field_least, inside_out, -1.0),
        edge_down: net("pressing at the edges", edge_most.max(field_most), inside_in, 1.0),
        edge_up: net("lifting the edges", edge_least.min(field_least), inside_out, -1.0),
    })
}
