//! Angles: the stock on the saw table, and a hip's end.

use super::Asked;
use super::canvas::{Canvas, Fit, MARGIN, ROW};
use geometry::Angle;
use picture::{Ink, Picture, Pt};
use roof::solution::Member;

/// The stock is drawn this high, as a part of the picture's width.
const STOCK: f64 = 0.3;

/// Steeper than this a cut is drawn as if at this, degrees: it would leave the stock.
const STEEPEST: f64 = 68.0;

/// A line across the stock at an angle from square across, as asked.
pub(crate) fn on_stock(deg: f64, seen: &str, asked: &Asked<'_>, width: f64) -> Picture {
    let (left, right, top, high) = (MARGIN, width - MARGIN, ROW + 4.0, width * STOCK);
    let shown = Angle::deg(deg.abs().min(STEEPEST));
    let lean = (high * shown.tan()).min(right - left - 8.0);
    let middle = (left + right) / 2.0;
    let (head, foot): (Pt, Pt) = ([middle - lean / 2.0, top], [middle + lean / 2.0, top + high]);
    let mut canvas = Canvas::new(width, top + high + ROW + 8.0);
    canvas.area(Ink::Wood, vec![[left, top], [right, top], [right, top + high], [left, top + high]]);
    canvas.line(Ink::Edge, vec![[left, top], [right, top]]);
    canvas.line(Ink::Edge, vec![[left, top + high], [right, top + high]]);
    canvas.line(Ink::Hidden, vec![[head[0], top], [head[0], top + high]]);
    canvas.line(Ink::Chosen, vec![head, foot]);
    canvas.row(Ink::Chosen, 0.0, asked.value, asked.words);
    canvas.text(Ink::Dimension, [MARGIN, top + high + 24.0], super::canvas::WORDS, picture::Anchor::Start, seen);
    canvas.done(format!("{seen}. A line crosses it, {} from square. {}.", asked.value, asked.words))
}

/// The end of a hip: its top with the two slopes, to scale.
pub(crate) fn end_view(m: &Member, chosen: Option<usize>, asked: &Asked<'_>, width: f64) -> Picture {
    let half = m.size.thickness_mm / 2.0;
    let depth = m.size.thickness_mm * 1.5;
    let [left, right] = m.backing_deg.unwrap_or_default().map(|b| -half * Angle::deg(b).tan());
    let drop = m.drop_mm.unwrap_or(0.0);
    let wood: Vec<Pt> = vec![[-half, left], [0.0, 0.0], [half, right], [half, -depth], [-half, -depth]];
    let low = left.min(right).min(0.0);
    let high = left.max(right).max(drop).max(1.0);
    let (fit, drawn) =
        Fit::new([[-half, -depth.max(-low)], [half, high]], [MARGIN, ROW + 4.0], width - 2.0 * MARGIN, width * 0.7);
    let mut canvas = Canvas::new(width, ROW + drawn + MARGIN + 4.0);
    canvas.area(Ink::Wood, fit.all(&wood));
    canvas.line(Ink::Centre, fit.all(&[[0.0, -depth], [0.0, 0.0]]));
    match chosen {
        Some(side) => {
            let [near, far] = if side == 0 { [[-half, left], [half, right]] } else { [[half, right], [-half, left]] };
            canvas.line(Ink::Edge, fit.all(&[far, [0.0, 0.0]]));
            canvas.line(Ink::Chosen, fit.all(&[[0.0, 0.0], near]));
        }
        None => {
            canvas.line(Ink::Faint, fit.all(&[[-half, 0.0], [0.0, drop], [half, 0.0]]));
            canvas.line(Ink::Chosen, fit.all(&[[0.0, 0.0], [0.0, drop]]));
        }
    }
    canvas.row(Ink::Chosen, 0.0, asked.value, asked.words);
    canvas.done(format!(
        "The end of {} {}, seen along it, with its top and the slopes on either side. {}: {}.",
        m.kind.name(),
        m.mark,
        asked.words,
        asked.value
    ))
}
