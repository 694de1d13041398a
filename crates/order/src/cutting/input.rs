//! What a cutting problem must be before it is planned.

use super::{CuttingFault, Need, Piece};

/// Longest stock that is taken, mm: longer than any lorry brings.
const LONGEST: f64 = 20_000.0;

/// Least and most of a side of the section, mm.
const SECTION: [f64; 2] = [1.0, 2_000.0];

/// Most that a blade takes, mm.
const MOST_KERF: f64 = 20.0;

/// Most that is cut off an end to square it, mm.
const MOST_TRIM: f64 = 500.0;

/// Most that one length may cost, in the currency: sums of all lengths stay exact.
const MOST_COST: f64 = 1e7;

/// Shortest piece, mm: a cut takes as much of the stock.
const SHORTEST: f64 = 20.0;

/// A corner may be this far outside the section, mm: sizes of timber are whole millimetres.
const OUTSIDE: f64 = 0.5;

/// Most pieces of one problem.
const MOST_PIECES: usize = 5_000;

/// Refuses a problem with figures that no stock, saw or piece has.
pub(super) fn check(need: &Need) -> Result<(), CuttingFault> {
    let pieces = need.pieces.iter().map(|piece| piece.marks.len()).sum();
    if pieces > MOST_PIECES {
        return Err(CuttingFault::TooMany { pieces, most: MOST_PIECES });
    }
    within("the thickness of the section", need.section[0], SECTION)?;
    within("the depth of the section", need.section[1], SECTION)?;
    within("the kerf of the saw", need.sawing.kerf, [0.0, MOST_KERF])?;
    within("the trim of an end", need.sawing.trim, [0.0, MOST_TRIM])?;
    within("the offcut that is kept", need.sawing.keep, [0.0, f64::MAX])?;
    for stock in &need.stock {
        within("a length of stock", stock.length, [1.0, LONGEST])?;
        let cost = stock.cost.amount();
        if !(0.0..=MOST_COST).contains(&cost) {
            return Err(CuttingFault::Price { length: stock.length, cost, most: MOST_COST });
        }
    }
    need.pieces.iter().try_for_each(|piece| sized(piece, need.section))?;
    if pieces > 0 && !need.stock.iter().any(|stock| stock.have != Some(0)) {
        return Err(CuttingFault::NoStock);
    }
    Ok(())
}

fn within(what: &'static str, value: f64, [least, most]: [f64; 2]) -> Result<(), CuttingFault> {
    if (least..=most).contains(&value) { Ok(()) } else { Err(CuttingFault::OutOfRange { what, value, least, most }) }
}

fn sized(piece: &Piece, [thickness, depth]: [f64; 2]) -> Result<(), CuttingFault> {
    let finite = piece.points.iter().flatten().all(|mm| mm.abs() < 10.0 * LONGEST);
    let length = box_length(piece);
    if !finite || length.is_nan() || length < SHORTEST {
        return Err(CuttingFault::NoSize { marks: piece.marks.clone() });
    }
    let over = piece
        .points
        .iter()
        .map(|&[_, y, z]| (-y).max(y - depth).max(z.abs() - thickness / 2.0))
        .fold(f64::NEG_INFINITY, f64::max);
    if over > OUTSIDE {
        return Err(CuttingFault::OutsideSection { marks: piece.marks.clone(), over, thickness, depth });
    }
    Ok(())
}

/// Length of the box around a piece, mm.
pub(super) fn box_length(piece: &Piece) -> f64 {
    let along = || piece.points.iter().map(|p| p[0]);
    along().fold(f64::NEG_INFINITY, f64::max) - along().fold(f64::INFINITY, f64::min)
}
