//! Strength classes of solid timber (EN 338:2016).

use serde::Deserialize;

/// Properties of a strength class. Strengths and moduli N/mm², densities kg/m³.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wood {
    /// Name, e.g. `C24`.
    pub class: String,
    /// Softwood (poplar counts with it), else hardwood.
    pub softwood: bool,
    /// Bending.
    pub fm_k: f64,
    /// Tension along the grain.
    pub ft_0_k: f64,
    /// Tension across the grain.
    pub ft_90_k: f64,
    /// Compression along the grain.
    pub fc_0_k: f64,
    /// Compression across the grain.
    pub fc_90_k: f64,
    /// Shear.
    pub fv_k: f64,
    /// Mean modulus along the grain.
    pub e0_mean: f64,
    /// Its fifth percentile.
    pub e0_05: f64,
    /// Mean modulus across the grain.
    pub e90_mean: f64,
    /// Mean shear modulus.
    pub g_mean: f64,
    /// Characteristic density.
    pub rho_k: f64,
    /// Mean density.
    pub rho_mean: f64,
}
