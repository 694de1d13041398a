//! Plans: a hip or jack between the plates, and the walls of the roof.

use super::Asked;
use super::canvas::{Canvas, Fit, MARGIN, ROW};
use crate::ground::{Ground, flat, plan_dir};
use geometry::DVec2;
use picture::{Ink, Picture, Pt};
use roof::solution::Member;

/// The highest drawing, as a part of the picture's width.
const HIGHEST: f64 = 0.8;

/// The plan of the walls, with what is asked about in it.
pub(crate) fn walls(
    ground: &Ground<'_>,
    member: Option<&Member>,
    wall: &str,
    asked: &Asked<'_>,
    width: f64,
) -> Picture {
    let plan = &ground.solution.plan;
    let mut bounds = [[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]];
    for c in &plan.corners {
        for k in 0..2 {
            bounds[0][k] = bounds[0][k].min(c[k]);
            bounds[1][k] = bounds[1][k].max(c[k]);
        }
    }
    if let Some(m) = member {
        for p in [m.axis.from, m.axis.to] {
            for k in 0..2 {
                bounds[0][k] = bounds[0][k].min(p[k]);
                bounds[1][k] = bounds[1][k].max(p[k]);
            }
        }
    }
    let (fit, drawn) = Fit::new(bounds, [MARGIN, ROW + 4.0], width - 2.0 * MARGIN, width * HIGHEST);
    let mut canvas = Canvas::new(width, ROW + drawn + MARGIN + 4.0);
    for line in &ground.solution.lines {
        canvas.line(Ink::Faint, vec![fit.at([line.from[0], line.from[1]]), fit.at([line.to[0], line.to[1]])]);
    }
    for w in &plan.walls {
        let ink = if w.id == wall { Ink::Chosen } else { Ink::Edge };
        canvas.line(ink, fit.all(&[w.from, w.to]));
    }
    if let Some(m) = member {
        let ends: [Pt; 2] = [flat(m.axis.from).to_array(), flat(m.axis.to).to_array()];
        canvas.line(Ink::Chosen, fit.all(&ends));
    }
    canvas.row(Ink::Chosen, 0.0, asked.value, asked.words);
    let what = match member {
        Some(m) => format!("{} {} marked", m.kind.name(), m.mark),
        None if wall.is_empty() => "its plates and the lines of its slopes".to_owned(),
        None => format!("wall {wall} marked"),
    };
    canvas.done(format!("The plan of the roof, {what}. {}: {}.", asked.words, asked.value))
}

/// How much of two timbers is drawn about their joint, as a part of the greater thickness.
const ABOUT: f64 = 2.5;

/// Where a timber stops at the side of another, from above: the end of its line
/// is in the middle, and what comes off is marked.
pub(crate) fn joint(m: &Member, other: &Member, short: f64, at_head: bool, asked: &Asked<'_>, width: f64) -> Picture {
    let away = if at_head { -plan_dir(&m.axis) } else { plan_dir(&m.axis) };
    let along = plan_dir(&other.axis);
    let reach = ABOUT * m.size.thickness_mm.max(other.size.thickness_mm) + short;
    let strip = |from: DVec2, to: DVec2, half: f64| -> Vec<Pt> {
        let side = (to - from).normalize_or_zero().perp() * half;
        [from + side, to + side, to - side, from - side].map(|p| p.to_array()).to_vec()
    };
    let (half, theirs) = (m.size.thickness_mm / 2.0, other.size.thickness_mm / 2.0);
    let bounds = [[-reach - half; 2], [reach + half; 2]];
    let (fit, drawn) = Fit::new(bounds, [MARGIN, ROW + 4.0], width - 2.0 * MARGIN, width * HIGHEST);
    let mut canvas = Canvas::new(width, ROW + drawn + MARGIN + 4.0);
    canvas.area(Ink::Wood, fit.all(&strip(DVec2::ZERO, away * reach, half)));
    canvas.area(Ink::Ground, fit.all(&strip(along * -reach, along * reach, theirs)));
    canvas.line(Ink::Centre, fit.all(&[(along * -reach).to_array(), (along * reach).to_array()]));
    canvas.line(Ink::Centre, fit.all(&[(away * short).to_array(), (away * reach).to_array()]));
    canvas.line(Ink::Chosen, fit.all(&[[0.0, 0.0], (away * short).to_array()]));
    canvas.row(Ink::Chosen, 0.0, asked.value, asked.words);
    canvas.done(format!(
        "{} {} from above, where it stops at the side of {} {}. Along its middle line, from the other's middle line to \
         its side: {}.",
        m.kind.name(),
        m.mark,
        other.kind.name(),
        other.mark,
        asked.value
    ))
}
