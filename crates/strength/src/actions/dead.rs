//! Own weight of layers and timber.

use super::ActionsFault;
use super::fault::figure;
use crate::annex::loads::Loads;
use crate::working::Working;

/// Weight of layers, kN/m² on the slope: the sum of the named layers of the region.
///
/// # Errors
/// A layer that the region does not know.
pub fn layers(loads: &Loads, names: &[&str], working: &mut Working) -> Result<f64, ActionsFault> {
    let mut sum = 0.0;
    for name in names {
        let Some(layer) = loads.layers.get(*name) else {
            let known = loads.layers.keys().map(String::as_str).collect::<Vec<_>>().join(", ");
            return Err(ActionsFault::NoSuchLayer { name: (*name).to_owned(), known });
        };
        let what = format!("weight of {}", name.replace('-', " "));
        sum += working.line(&what, layer.value, "kN/m²", &layer.source, String::new);
    }
    Ok(working.line("weight of the layers on the slope g_k", sum, "kN/m²", "job", || "sum of the layers".to_owned()))
}

/// Own weight of a timber, N per mm of its length: ρ·g·b·h from the mean density (kg/m³) of its class, with b and h in
/// mm.
///
/// # Errors
/// A figure that is not above nought.
pub fn self_weight(
    loads: &Loads,
    mean_density: f64,
    [width, depth]: [f64; 2],
    working: &mut Working,
) -> Result<f64, ActionsFault> {
    let rho = figure("the mean density", mean_density, 0.0)?;
    let (b, h) = (figure("the width of the timber", width, 0.0)?, figure("the depth of the timber", depth, 0.0)?);
    // kg/m³ is 1e-9 kg/mm³; times m/s² gives N/mm³.
    let weight = rho * 1e-9 * loads.gravity.value * b * h;
    Ok(working.line("own weight of the timber", weight, "N/mm", &loads.gravity.source, || {
        format!("{rho} kg/m³ × {} m/s² × {b} × {h} mm²", loads.gravity.value)
    }))
}
