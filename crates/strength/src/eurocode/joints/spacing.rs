//! How far apart, and how far from edges and ends: EN 1995-1-1 tables 8.2 and 8.4.

use super::nails::Nail;
use crate::annex::joints::{Distance, Distances, Joints};
use geometry::Angle;
use serde::Serialize;

/// Least distances of one fastener in one timber for one direction of force, mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Spacings {
    /// Along the grain `a_1`.
    pub along_mm: f64,
    /// Across the grain `a_2`.
    pub across_mm: f64,
    /// From an end that the force goes towards `a_3,t`.
    pub loaded_end_mm: f64,
    /// From any other end `a_3,c`.
    pub free_end_mm: f64,
    /// From an edge that the force goes towards `a_4,t`.
    pub loaded_edge_mm: f64,
    /// From any other edge `a_4,c`.
    pub free_edge_mm: f64,
}

/// The distance at |cos| or |sin| `turn` of the angle.
fn at(distance: &Distance, turn: f64, diameter_mm: f64) -> f64 {
    let times = (distance.fixed_d + distance.turning_d * turn).max(distance.least_d);
    (times * diameter_mm).max(distance.least_mm)
}

impl Spacings {
    /// From a row of the table, for a force at `angle_deg` to the grain.
    #[must_use]
    pub fn of(distances: &Distances, diameter_mm: f64, angle_deg: f64) -> Self {
        let angle = Angle::deg(angle_deg);
        let (sine, cosine) = (angle.sin().abs(), angle.cos().abs());
        Self {
            along_mm: at(&distances.a1, cosine, diameter_mm),
            across_mm: at(&distances.a2, sine, diameter_mm),
            loaded_end_mm: at(&distances.a3_loaded, cosine, diameter_mm),
            free_end_mm: at(&distances.a3_free, sine, diameter_mm),
            loaded_edge_mm: at(&distances.a4_loaded, sine, diameter_mm),
            free_edge_mm: at(&distances.a4_free, sine, diameter_mm),
        }
    }

    /// Of a nail in wood of characteristic density `rho_k`, kg/m³.
    #[must_use]
    pub fn nail(nail: &Nail, rho_k: f64, angle_deg: f64, annex: &Joints) -> Self {
        let table = &annex.spacing;
        let thick = nail.diameter_mm >= annex.nails.thick_from_mm.value;
        let dense = rho_k > annex.nails.dense_from.value;
        let row = match (nail.bored, dense, thick) {
            (true, _, false) => &table.nail_bored_thin,
            (true, _, true) => &table.nail_bored_thick,
            (false, false, false) => &table.nail_light_thin,
            (false, false, true) => &table.nail_light_thick,
            (false, true, false) => &table.nail_dense_thin,
            (false, true, true) => &table.nail_dense_thick,
        };
        Self::of(row, nail.diameter_mm, angle_deg)
    }

    /// Of a bolt.
    #[must_use]
    pub fn bolt(diameter_mm: f64, angle_deg: f64, annex: &Joints) -> Self {
        Self::of(&annex.spacing.bolt, diameter_mm, angle_deg)
    }

    /// The same for nails under a steel plate: nearer to each other, no nearer to edges and ends (8.3.1.4(1)).
    #[must_use]
    pub fn under_steel(self, annex: &Joints) -> Self {
        let share = annex.steel_plate.spacing.value;
        Self { along_mm: self.along_mm * share, across_mm: self.across_mm * share, ..self }
    }
}
