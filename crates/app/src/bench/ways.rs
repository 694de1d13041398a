//! The settings of a cut, four ways. Angles are from square across.

use super::writing::Writing;
use crate::views::{Figure, Ways};
use geometry::Angle;
use job::written::{degrees, tenth};
use roof::solution::{Cut, Member, SawSetting, SquareSetting};

/// An angle nearer to square is not worth setting, degrees.
const SQUARE: f64 = 0.05;
/// What is held on the blade of a square in inches, mm: 12 inches.
const INCH_RUN: f64 = 12.0 * 25.4;
/// The longest reading on the tongue of such a square, mm: 16 inches.
const INCH_TONGUE: f64 = 16.0 * 25.4;
/// A reading past this is steeper than any gauge can be set, mm in 100.
const ALONG: f64 = 10_000.0;
/// A gauge is read against this, mm.
const GAUGE_RUN: f64 = 100.0;

/// Whether a cut is square across on side and edge, so that a try square marks it.
pub fn is_square(cut: &Cut) -> bool {
    cut.face_angle_deg.abs() < SQUARE && cut.edge_angle_deg.abs() < SQUARE
}

/// The settings of a timber's cut, given by its number.
pub fn ways(writing: &Writing, member: &Member, number: usize, cut: &Cut) -> Ways {
    let mark = &member.mark;
    let why = |figure: &str| Some(format!("{figure} {mark} {number}"));
    let edge = cut.edge_angle_deg.abs() > SQUARE;
    let figure = |label: &str, value: String, why: Option<String>| Figure { label: writing.say(label), value, why };
    let mut ways = Ways {
        degrees: vec![figure("On the side", degrees(cut.face_angle_deg), why("face"))],
        square: on_square(writing, "side", cut.square, cut.bevel_mm_in_100, &why("face")),
        gauge: vec![figure("On the side", gauge(writing, cut.bevel_mm_in_100), why("face"))],
        saw: vec![
            figure("Mitre", degrees(cut.saw.mitre_deg), why("mitre")),
            figure("Tilt of the blade", degrees(cut.saw.tilt_deg), why("tilt")),
        ],
    };
    if edge {
        ways.degrees.push(figure("On the top edge", degrees(cut.edge_angle_deg), why("edge")));
        ways.square.extend(on_square(writing, "edge", cut.edge_square, cut.edge_bevel_mm_in_100, &why("edge")));
        ways.gauge.push(figure("On the top edge", gauge(writing, cut.edge_bevel_mm_in_100), why("edge")));
    }
    ways
}

/// The settings of a cut through a length of stock, which no card has: nothing to ask why with.
pub fn through_stock(
    writing: &Writing,
    [face_deg, edge_deg]: [f64; 2],
    saw: SawSetting,
    square: SquareSetting,
) -> Ways {
    let figure = |label: &str, value: String| Figure { label: writing.say(label), value, why: None };
    // How much the line gains over 100 mm of depth.
    let in_100 = if square.run > 0.0 { square.rise / square.run * GAUGE_RUN } else { ALONG };
    let mut ways = Ways {
        degrees: vec![figure("On the side", degrees(face_deg))],
        square: on_square(writing, "side", square, in_100, &None),
        gauge: vec![figure("On the side", gauge(writing, in_100))],
        saw: vec![figure("Mitre", degrees(saw.mitre_deg)), figure("Tilt of the blade", degrees(saw.tilt_deg))],
    };
    if edge_deg.abs() > SQUARE {
        let tan = Angle::deg(edge_deg).tan();
        let slope = if tan.is_finite() { (tan * GAUGE_RUN).min(ALONG) } else { ALONG };
        ways.degrees.push(figure("On the edge", degrees(edge_deg)));
        ways.gauge.push(figure("On the edge", gauge(writing, slope)));
        ways.square.push(figure("On the edge", degrees(edge_deg)));
    }
    ways
}

/// What to hold on blade and tongue. In mm as the pack says it; in inches on a
/// blade of 12, or a full tongue where that is too steep.
fn on_square(writing: &Writing, on: &str, set: SquareSetting, in_100: f64, why: &Option<String>) -> Vec<Figure> {
    let slope = in_100 / GAUGE_RUN;
    let set = if writing.is_metric() {
        set
    } else if slope * INCH_RUN <= INCH_TONGUE {
        SquareSetting { run: INCH_RUN, rise: slope * INCH_RUN }
    } else {
        SquareSetting { run: INCH_TONGUE / slope, rise: INCH_TONGUE }
    };
    let hold = |part: &str, mm: f64| Figure {
        label: writing.say(&format!("Hold on the {part}, for the {on}")),
        value: writing.on_rule(mm),
        why: why.clone(),
    };
    vec![hold("blade", set.run), hold("tongue, and mark along it", set.rise)]
}

/// The slope on a bevel gauge: mm in 100, or inches in 12.
fn gauge(writing: &Writing, in_100: f64) -> String {
    if in_100 >= ALONG {
        return "along the timber".to_owned();
    }
    if writing.is_metric() {
        format!("{} in 100", tenth(in_100))
    } else {
        format!("{} in {}", writing.on_rule(in_100 / GAUGE_RUN * INCH_RUN), writing.on_rule(INCH_RUN))
    }
}
