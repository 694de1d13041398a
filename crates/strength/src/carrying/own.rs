//! What is on each unit by itself: its strip of the slopes or the ceiling, and its own weight.

use super::Carrying;
use super::build::Units;
use super::flow::Own;
use super::run::Run;
use super::strips::{Slope, Strip};
use super::unit::{Kind, Piece, Role, Unit};
use crate::statics::Load;
use roof::solution::MemberKind;

/// What the slopes and ceilings carry, for each case.
#[derive(Clone, Debug, Default)]
pub struct Areas {
    /// For each case, for each slope: inward and down, N/mm² of plan.
    pub slopes: Vec<Vec<[f64; 2]>>,
    /// For each case: down on ceilings, N/mm².
    pub ceiling: Vec<f64>,
    /// For each case: weight of timber, N/mm³ (0 but in the one of permanent loads).
    pub timber: Vec<f64>,
}

impl Areas {
    /// Number of cases.
    #[must_use]
    pub fn cases(&self) -> usize {
        self.slopes.len()
    }
}

/// The loads of all units.
#[must_use]
pub fn own(roof: &Carrying<'_>, units: &Units, areas: &Areas) -> Vec<Own> {
    units.units.iter().map(|unit| of_unit(roof, unit, areas)).collect()
}

fn of_unit(roof: &Carrying<'_>, unit: &Unit, areas: &Areas) -> Own {
    let cases = areas.cases();
    let mut own = Own { loads: vec![Vec::new(); cases], post: vec![0.0; cases] };
    if let Kind::Post(run) = unit.kind {
        for (case, n) in own.post.iter_mut().enumerate() {
            *n = weight(&roof.runs[run], areas, case);
        }
        return own;
    }
    for (bar, piece) in unit.pieces.iter().enumerate().filter(|(_, p)| p.role == Role::Timber) {
        let run = &roof.runs[piece.run];
        let length = unit.bar_length(bar);
        let bars_of_run: f64 =
            (0..unit.pieces.len()).filter(|k| unit.pieces[*k].run == piece.run).map(|k| unit.bar_length(k)).sum();
        for (case, loads) in own.loads.iter_mut().enumerate() {
            let w = weight(run, areas, case) / bars_of_run;
            if w != 0.0 {
                loads.push(Load::Spread { bar, fx: [0.0; 2], fy: [-w, -w] });
            }
        }
        for strip in &roof.strips[piece.run] {
            let slope = &roof.slopes[strip.slope];
            on_bar(roof, unit, bar, piece, strip, slope, length, areas, &mut own);
        }
        if run.kind == MemberKind::CeilingJoist {
            let width = roof.joist_width(piece.run);
            for (case, loads) in own.loads.iter_mut().enumerate() {
                let w = areas.ceiling[case] * width;
                if w != 0.0 {
                    loads.push(Load::Spread { bar, fx: [0.0; 2], fy: [-w, -w] });
                }
            }
        }
    }
    own
}

/// Weight of a run in a case, N.
fn weight(run: &Run, areas: &Areas, case: usize) -> f64 {
    const MM3_IN_M3: f64 = 1e9;
    run.volume * MM3_IN_M3 * areas.timber.get(case).copied().unwrap_or(0.0)
}

/// The part of a strip that lies on one bar; what lies beyond a run's ends is put on these ends.
#[expect(clippy::too_many_arguments, reason = "the parts of one loop, named")]
fn on_bar(
    roof: &Carrying<'_>,
    unit: &Unit,
    bar: usize,
    piece: &Piece,
    strip: &Strip,
    slope: &Slope,
    length: f64,
    areas: &Areas,
    own: &mut Own,
) {
    let run = &roof.runs[piece.run];
    // Level distances from the plate line, of places along the run.
    let [foot, head] = run.pitch_line;
    let [low, high] = run.ends.map(|p| slope.of(p).y);
    let v = |along: f64| low + (along - foot) / (head - foot) * (high - low);
    let (low, high) = (v(piece.from), v(piece.to));
    let ends = ends_of(unit, piece.run);
    // The frame's x grows along the run or against it.
    let part = unit.frame.bars[bar];
    let runs_right = unit.frame.nodes[part.to].x > unit.frame.nodes[part.from].x;
    let inward = if runs_right { 1.0 } else { -1.0 };
    if let Some((area, middle)) = strip.between(low, high) {
        // In a straight line along the bar, with the area and the middle of the strip.
        let mean = 2.0 * area / length;
        let at = ((middle - low) / (high - low)).clamp(0.0, 1.0);
        let w = [mean * (2.0 - 3.0 * at), mean * (3.0 * at - 1.0)];
        for (loads, slopes) in own.loads.iter_mut().zip(&areas.slopes) {
            let [level, down] = slopes[strip.slope];
            if level != 0.0 || down != 0.0 {
                let fx = w.map(|w| w * level * inward);
                loads.push(Load::Spread { bar, fx, fy: w.map(|w| -w * down) });
            }
        }
    }
    let mut beyond = |node: usize, low: f64, high: f64| {
        let Some((area, _)) = strip.between(low, high) else { return };
        for (loads, slopes) in own.loads.iter_mut().zip(&areas.slopes) {
            let [level, down] = slopes[strip.slope];
            if level != 0.0 || down != 0.0 {
                loads.push(Load::Node { node, fx: area * level * inward, fy: -area * down, m: 0.0 });
            }
        }
    };
    if bar == ends[0] {
        beyond(part.from, f64::NEG_INFINITY, low);
    }
    if bar == ends[1] {
        beyond(part.to, high, f64::INFINITY);
    }
}

/// The first and last bar of a run in a unit.
fn ends_of(unit: &Unit, run: usize) -> [usize; 2] {
    let mine =
        || unit.pieces.iter().enumerate().filter(|(_, p)| p.run == run && p.role == Role::Timber).map(|(k, _)| k);
    [mine().next().unwrap_or(0), mine().next_back().unwrap_or(0)]
}
