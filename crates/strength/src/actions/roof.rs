//! All loads of one slope at once.

use super::{ActionsFault, Site, layers, loft, people, pressures, slope_snow};
use crate::annex::loads::{CaseKind, Loads};
use crate::working::Working;

/// The form of a roof, as far as loads go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoofForm {
    /// Pitch of the slope, degrees.
    pub pitch: f64,
    /// Hipped, not gabled.
    pub hipped: bool,
}

/// All loads of one slope, kN/m² as [`super::Pressing::of`] each says, and persons in kN.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlopeLoads {
    /// Layers, on the slope; the timber's own weight comes on top.
    pub layers: f64,
    /// Maintenance, on plan.
    pub imposed: f64,
    /// One person, kN.
    pub person: f64,
    /// Even snow, on plan.
    pub snow: f64,
    /// Snow on this slope and none on the other, on plan.
    pub snow_one_side: f64,
    /// Wind pressing, square to the slope.
    pub wind_down: f64,
    /// Wind lifting, square to the slope; below nought.
    pub wind_up: f64,
    /// Wind lifting at edges and corners, for what ties them down; below nought.
    pub wind_up_edge: f64,
    /// In the loft, on plan.
    pub loft: f64,
    /// One person in the loft, kN.
    pub loft_person: f64,
}

/// All loads of one slope.
///
/// # Errors
/// Unknown layers; figures that are no numbers; a pitch for which wind is not tabled.
pub fn slope_loads(
    loads: &Loads,
    site: &Site,
    form: RoofForm,
    layer_names: &[&str],
    working: &mut Working,
) -> Result<SlopeLoads, ActionsFault> {
    let layers = layers(loads, layer_names, working)?;
    let on_roof = people(loads, form.pitch, working)?;
    let snow = slope_snow(loads, site.ground_snow, form.pitch, site.snow_held, working)?;
    let wind = pressures(loads, form.hipped, form.pitch, site.peak_pressure, working)?;
    let in_loft = loft(loads, working);
    Ok(SlopeLoads {
        layers,
        imposed: on_roof.spread,
        person: on_roof.person,
        snow: snow.even,
        snow_one_side: snow.one_side,
        wind_down: wind.down,
        wind_up: wind.up,
        wind_up_edge: wind.edge_up,
        loft: in_loft.spread,
        loft_person: in_loft.person,
    })
}

impl SlopeLoads {
    /// The load on an area of the slope in one case, kN/m²; nought for persons and for what lies in the loft. `left`
    /// tells the left slope from the right one.
    #[must_use]
    pub const fn on_area(&self, kind: CaseKind, left: bool) -> f64 {
        match kind {
            CaseKind::Permanent => self.layers,
            CaseKind::Imposed => self.imposed,
            CaseKind::Snow => self.snow,
            CaseKind::SnowLeft if left => self.snow_one_side,
            CaseKind::SnowRight if !left => self.snow_one_side,
            CaseKind::WindDown => self.wind_down,
            CaseKind::WindUp => self.wind_up,
            CaseKind::SnowLeft | CaseKind::SnowRight => 0.0,
            CaseKind::Person | CaseKind::Loft | CaseKind::LoftPerson => 0.0,
        }
    }
}
