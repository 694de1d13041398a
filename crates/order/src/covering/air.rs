//! Openings that air the roof.

use super::along::edges_on;
use super::figures::{Coverings, Ventilation};
use super::out::Vent;
use super::slope::{EdgeKind, Slope};
use super::{SAME, SAME_PITCH, sums};
use std::collections::BTreeSet;

/// Slots at eaves, ridges and the tops of lean-tos, or a share of the floor, as the region has it.
///
/// `floor`: plan area under the roof, mm².
pub fn vents(slopes: &[Slope], figures: &Coverings, floor: f64) -> Vec<Vent> {
    let mut out = Vec::new();
    if let Some(rule) = &figures.ventilation {
        for slope in slopes {
            at_eaves(slope, rule, &mut out);
            at_top(slope, rule, &mut out);
        }
        at_ridges(slopes, rule, &mut out);
    }
    if let Some(rule) = &figures.ventilation_share {
        let area_mm2 = share_of_floor(floor, rule.whole.value);
        let place = "floor under the roof".to_owned();
        out.push(Vent { item: "roof-vent-area".to_owned(), place, slot_mm: 0.0, length_mm: 0.0, area_mm2 });
    }
    out
}

/// Free area as a share of the floor, mm².
#[must_use]
pub fn share_of_floor(floor: f64, share: f64) -> f64 {
    floor * share
}

/// The slot that eaves of a pitch want, mm.
#[must_use]
pub fn eaves_slot(rule: &Ventilation, pitch_deg: f64) -> f64 {
    if pitch_deg <= rule.flat_up_to.value + SAME_PITCH { rule.eaves_flat.value } else { rule.eaves.value }
}

/// The slot that a ridge wants over a slope of a pitch and a span, mm; none on low, narrow roofs.
#[must_use]
pub fn ridge_slot(rule: &Ventilation, pitch_deg: f64, span: f64) -> f64 {
    let steep = pitch_deg >= rule.ridge_from_pitch.value - SAME_PITCH;
    let wide = span >= rule.ridge_from_span.value - SAME;
    if steep || wide { rule.ridge.value } else { 0.0 }
}

fn vent(item: &str, place: String, slot: f64, length: f64) -> Vent {
    let area_mm2 = sums::slot_area(length, slot);
    Vent { item: item.to_owned(), place, slot_mm: slot, length_mm: length, area_mm2 }
}

fn at_eaves(slope: &Slope, rule: &Ventilation, out: &mut Vec<Vent>) {
    let length = edges_on(slope, EdgeKind::Eaves);
    if length > 0.0 {
        let place = format!("eaves of wall {}", slope.walls.join(" and "));
        out.push(vent("eaves-vent", place, eaves_slot(rule, slope.pitch_deg), length));
    }
}

fn at_top(slope: &Slope, rule: &Ventilation, out: &mut Vec<Vent>) {
    let length = edges_on(slope, EdgeKind::TopWall);
    if length > 0.0 {
        let place = format!("top of the {}", slope.place());
        out.push(vent("top-vent", place, rule.lean_to_top.value, length));
    }
}

fn at_ridges(slopes: &[Slope], rule: &Ventilation, out: &mut Vec<Vent>) {
    let mut done = BTreeSet::new();
    for (k, slope) in slopes.iter().enumerate() {
        for edge in slope.edges.iter().filter(|e| e.kind == EdgeKind::Ridge) {
            let Some(line) = edge.line else { continue };
            let other =
                slopes.iter().enumerate().find(|(j, s)| *j != k && s.edges.iter().any(|e| e.line == Some(line)));
            let (run, pitch) = other.map_or((slope.run, slope.pitch_deg), |(_, s)| (s.run, s.pitch_deg));
            let slot = ridge_slot(rule, slope.pitch_deg.max(pitch), slope.run + run);
            if slot > 0.0 && done.insert(line) {
                let walls = other.map_or(String::new(), |(_, s)| format!(" and {}", s.walls.join(" and ")));
                let place = format!("ridge over wall {}{walls}", slope.walls.join(" and "));
                out.push(vent("ridge-vent", place, slot, edge.length()));
            }
        }
    }
}
