//! Borders drawn in by the distances of the code.

use super::{Border, BorderKind, Lap, Limit};
use crate::eurocode::joints::spacing::Spacings;
use geometry::Angle;

/// A half-plane that fasteners stand in: `normal · place ≤ reach`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Side {
    /// Unit normal, outwards.
    pub normal: [f64; 2],
    /// mm.
    pub reach: f64,
}

/// Unit vector of a direction in degrees.
pub(super) fn unit(degrees: f64) -> [f64; 2] {
    let angle = Angle::deg(degrees);
    [angle.cos(), angle.sin()]
}

fn dot(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

/// The half-planes of a lap. `eased`: one kind of distance taken at a share of itself.
pub(super) fn of(lap: &Lap, spacings: &[Spacings; 2], eased: Option<(Limit, f64)>) -> Vec<Side> {
    lap.borders.iter().map(|border| side(lap, border, spacings, eased)).collect()
}

/// Whether the force goes towards a border.
pub(super) fn is_loaded(lap: &Lap, border: &Border) -> bool {
    /// Sine of an angle that is rounding only: a force along an edge does not load it.
    const ALONG: f64 = 1e-9;
    let sense = if border.timber == 0 { 1.0 } else { -1.0 };
    let towards = dot(unit(lap.force_deg), unit(border.faces_deg)) * sense;
    towards > ALONG || (lap.turns_round && towards < -ALONG)
}

fn side(lap: &Lap, border: &Border, spacings: &[Spacings; 2], eased: Option<(Limit, f64)>) -> Side {
    let timber = border.timber.min(1);
    let normal = unit(border.faces_deg);
    let loaded = is_loaded(lap, border);
    let spacing = &spacings[timber];
    let (distance, limit) = match border.kind {
        BorderKind::Edge => {
            let distance = if loaded { spacing.loaded_edge_mm } else { spacing.free_edge_mm };
            (distance, [Limit::EdgeOfFirst, Limit::EdgeOfSecond][timber])
        }
        BorderKind::End => {
            let distance = if loaded { spacing.loaded_end_mm.max(spacing.free_end_mm) } else { spacing.free_end_mm };
            // Ends are measured along the grain; a slanting cut is that much nearer square to itself.
            let slant = dot(unit(lap.grain_deg[timber]), normal).abs();
            (distance * slant, [Limit::EndOfFirst, Limit::EndOfSecond][timber])
        }
    };
    let share = match eased {
        Some((eased, share)) if eased == limit => share,
        _ => 1.0,
    };
    Side { normal, reach: border.at_mm - distance * share }
}
