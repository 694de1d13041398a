//! The figures that say most about a roof.

use super::{Shown, ridges};
use crate::views::Figure;
use crate::wording::say;
use job::written::{degrees, fixed};
use roof::solution::{Member, WallOut};

/// The figures.
pub(super) fn of(shown: &Shown<'_>) -> Vec<Figure> {
    let (solution, lengths) = (shown.solution, shown.lengths);
    let totals = &solution.totals;
    let figure = |label: &str, value: String, why: Option<String>| Figure {
        label: say(shown.words, label).into_owned(),
        value,
        why,
    };
    let mut out = Vec::new();
    if let Some((value, wall)) = pitches(&solution.plan.walls) {
        out.push(figure("Pitch", value, Some(format!("wall-pitch {wall}"))));
    }
    if let Some(span) = span(shown) {
        out.push(figure("Span", lengths.write_with_unit(span), None));
    }
    out.push(figure("Rise to the ridge", lengths.write_with_unit(totals.rise_mm), Some("rise".to_owned())));
    let seated = solution.members.iter().find(|member: &&Member| member.birdsmouth.is_some());
    let upstand = seated.map(|member| format!("upstand {}", member.mark));
    out.push(figure("Upstand", lengths.write_with_unit(totals.upstand_mm), upstand));
    if solution.plan.survey.is_some() {
        let closing = lengths.write_with_unit(solution.plan.closing_error_mm);
        out.push(figure("Closing error", closing, Some("closing".to_owned())));
    }
    out.push(figure("Plan area", format!("{} m²", fixed(totals.plan_area_m2, 1)), None));
    out.push(figure("Slope area", format!("{} m²", fixed(totals.slope_area_m2, 1)), None));
    out.push(figure("Timbers", totals.members.to_string(), None));
    out.push(figure("Pattern pieces", totals.pieces.to_string(), None));
    out.push(figure("Timber", format!("{} m³", fixed(totals.timber_m3, 2)), None));
    out
}

/// The pitch, or the least and the greatest, and the wall to ask about.
fn pitches(walls: &[WallOut]) -> Option<(String, &str)> {
    let sloping = || walls.iter().filter_map(|wall| Some((wall.pitch_deg?, wall.id.as_str())));
    let least = sloping().min_by(|a, b| a.0.total_cmp(&b.0))?;
    let most = sloping().max_by(|a, b| a.0.total_cmp(&b.0))?;
    let (low, high) = (degrees(least.0), degrees(most.0));
    let value = if low == high { low } else { format!("{low} to {high}") };
    Some((value, least.1))
}

/// From plate line to plate line under the only ridge, mm; nothing where there
/// are several ridges, or the plates under it are not parallel.
fn span(shown: &Shown<'_>) -> Option<f64> {
    /// Two plates are parallel when they part by less than this, mm: what a tape reads.
    const TAPE: f64 = 0.5;
    let all = ridges(shown.solution);
    let [only] = all.as_slice() else { return None };
    let wall = |id: &String| shown.solution.plan.walls.iter().find(|wall| wall.id == *id);
    let [one, other] = [only.walls[0].first().and_then(wall)?, only.walls[1].first().and_then(wall)?];
    let along = [one.to[0] - one.from[0], one.to[1] - one.from[1]];
    let length = one.length_mm;
    if length.is_nan() || length <= 0.0 {
        return None;
    }
    let off = |point: [f64; 2]| (along[0] * (point[1] - one.from[1]) - along[1] * (point[0] - one.from[0])) / length;
    let (near, far) = (off(other.from), off(other.to));
    ((near - far).abs() < TAPE).then(|| ((near + far) / 2.0).abs())
}
