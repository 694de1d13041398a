//! Pictures of workings, to scale where it helps. What is asked about is drawn
//! in [`picture::Ink::Chosen`] and named in the first row.

mod angles;
mod canvas;
mod heel;
mod plans;
mod triangle;

use crate::ground::{Ground, plan_run};
use crate::lengths;
use crate::question::{Figure, Question};
use crate::sawn::Follows;
use geometry::Angle;
use job::written::Lengths;
use picture::Picture;
use roof::solution::{CutPlace, Member};
use triangle::Side;

/// Pictures are made for windows from this to this wide, px.
const WIDTHS: [f64; 2] = [300.0, 900.0];

/// A timber with less run than this is drawn in plan, mm.
const NO_SLOPE: f64 = 1.0;

/// What a picture says in its first row.
pub(crate) struct Asked<'a> {
    pub value: &'a str,
    pub words: &'a str,
}

/// The picture of a figure.
pub(crate) fn of(
    ground: &Ground<'_>,
    member: Option<&Member>,
    q: &Question,
    value: &str,
    lengths: Lengths,
    width: f64,
) -> Picture {
    let width = if width.is_finite() { width.clamp(WIDTHS[0], WIDTHS[1]) } else { WIDTHS[0] };
    let asked = Asked { value, words: words(q) };
    match (q.figure, member) {
        (Figure::Ridge, Some(m)) => plans::walls(ground, Some(m), "", &asked, width),
        (_, Some(m)) => of_member(ground, m, q, &asked, lengths, width),
        (Figure::Overhang | Figure::WallPitch, None) => slope(ground, q, &asked, lengths, width),
        (_, None) => plans::walls(ground, None, &q.of, &asked, width),
    }
}

/// What is asked about, in words short enough for a narrow picture.
const fn words(q: &Question) -> &'static str {
    match q.figure {
        Figure::TrueLength => "true length",
        Figure::CutLength => "cut length",
        Figure::Stock => "stock",
        Figure::Pitch | Figure::WallPitch => "pitch",
        Figure::Face => "on the wide side",
        Figure::Edge => "on the top edge",
        Figure::Mitre => "mitre scale",
        Figure::Tilt => "tilt of the blade",
        Figure::Seat => "seat",
        Figure::Heel => "plumb cut",
        Figure::Notch => "depth",
        Figure::Upstand => "above the plate",
        Figure::Backing => "backing",
        Figure::Drop => "drop",
        Figure::Less => "off, level",
        Figure::Tape => "on the tape",
        Figure::Rise | Figure::Ridge => "above the plates",
        Figure::Overhang => "overhang",
        Figure::Closing => "fails to close",
        Figure::Volume => "of timber",
    }
}

fn of_member(
    ground: &Ground<'_>,
    m: &Member,
    q: &Question,
    asked: &Asked<'_>,
    lengths: Lengths,
    width: f64,
) -> Picture {
    let cut = m.cuts.get(q.number);
    let stock = |deg: Option<f64>, seen| angles::on_stock(deg.unwrap_or_default(), seen, asked, width);
    match q.figure {
        Figure::Face => stock(cut.map(|c| c.face_angle_deg), "The wide side"),
        Figure::Mitre => stock(cut.map(|c| c.saw.mitre_deg), "On the saw, from above"),
        Figure::Edge => stock(cut.map(|c| c.edge_angle_deg), "The top edge"),
        Figure::Tilt => stock(cut.map(|c| c.saw.tilt_deg), "On the saw, along the cut"),
        Figure::Less => less(ground, m, q.number, asked, width),
        Figure::Backing => angles::end_view(m, Some(q.number), asked, width),
        Figure::Drop => angles::end_view(m, None, asked, width),
        Figure::Seat | Figure::Heel | Figure::Notch | Figure::Upstand => match &m.birdsmouth {
            Some(mouth) => heel::side(m, mouth, q.figure, asked, width),
            None => plans::walls(ground, Some(m), "", asked, width),
        },
        _ => {
            let rise = m.axis.to[2] - m.axis.from[2];
            let run = plan_run(&m.axis);
            if rise.abs() < NO_SLOPE || run < NO_SLOPE {
                return plans::walls(ground, Some(m), "", asked, width);
            }
            let side = if q.figure == Figure::Pitch { Side::Pitch } else { Side::Long };
            triangle::elevation([run, rise], side, asked, lengths, width)
        }
    }
}

/// The fall of a slope over the overhang of its wall.
fn slope(ground: &Ground<'_>, q: &Question, asked: &Asked<'_>, lengths: Lengths, width: f64) -> Picture {
    let wall = ground.solution.plan.walls.iter().find(|w| w.id == q.of);
    match wall.and_then(|w| w.pitch_deg.map(|p| (w, p))).filter(|(w, _)| w.overhang_mm > NO_SLOPE) {
        Some((w, pitch)) => {
            let side = if q.figure == Figure::Overhang { Side::Run } else { Side::Pitch };
            triangle::elevation([w.overhang_mm, w.overhang_mm * Angle::deg(pitch).tan()], side, asked, lengths, width)
        }
        None => plans::walls(ground, None, &q.of, asked, width),
    }
}

/// What a timber stops at, from above.
fn less(ground: &Ground<'_>, m: &Member, number: usize, asked: &Asked<'_>, width: f64) -> Picture {
    let found = m.deductions.get(number).and_then(|less| match lengths::cut_of_deduction(ground, m, less)?.2 {
        Follows::Side(other, _) if less.mm > 0.0 => Some((less, other)),
        _ => None,
    });
    match found {
        Some((less, other)) => plans::joint(m, other, less.mm, less.at == CutPlace::Head, asked, width),
        None => plans::walls(ground, Some(m), "", asked, width),
    }
}
