//! An independent check of a plan: it turns the pieces by itself and looks at points, planes and sums, and at nothing
//! that the plan was made with.

use super::{Aim, Bar, CutFor, CuttingFault, CuttingPlan, Need, SawCut, Turn, Turns};
use crate::money::Money;
use std::collections::BTreeMap;

/// What a saw never shows and rounding always may, mm.
const TOLERANCE: f64 = 0.02;

/// Checks that a plan cuts every piece of a need once, from stock that there is, with every two pieces parted by a cut
/// of the full kerf, and that its sums are right.
///
/// # Errors
/// [`CuttingFault::NotAPlan`] with the first thing that does not hold.
pub fn verify(need: &Need, plan: &CuttingPlan) -> Result<(), CuttingFault> {
    checked(need, plan).map_err(|what| CuttingFault::NotAPlan { what })
}

type Checked = Result<(), String>;

fn ensure(holds: bool, what: impl FnOnce() -> String) -> Checked {
    if holds { Ok(()) } else { Err(what()) }
}

fn checked(need: &Need, plan: &CuttingPlan) -> Checked {
    let mut wanted: BTreeMap<(usize, &str), i64> = BTreeMap::new();
    for (number, piece) in need.pieces.iter().enumerate() {
        for mark in &piece.marks {
            *wanted.entry((number, mark)).or_default() += 1;
        }
    }
    let mut used: BTreeMap<usize, u32> = BTreeMap::new();
    let (mut cost, mut bought) = (0_i64, 0_i64);
    for bar in &plan.bars {
        let stock = need.stock.get(bar.stock).ok_or("a bar of a stock that there is not")?;
        *used.entry(bar.stock).or_default() += 1;
        cost += stock.cost.0;
        bought += Money::of(stock.length).0;
        for laid in &bar.pieces {
            *wanted.entry((laid.piece, &laid.mark)).or_default() -= 1;
        }
        bar_stands(need, bar)?;
    }
    if let Some(((_, mark), n)) = wanted.iter().find(|(_, n)| **n != 0) {
        return Err(format!("{mark} is cut {} too few times", n));
    }
    for (number, n) in &used {
        let have = need.stock.get(*number).and_then(|stock| stock.have);
        ensure(have.is_none_or(|have| *n <= have), || format!("{n} lengths of stock {number} where there are fewer"))?;
    }
    ensure(plan.cost.0 == cost, || format!("the cost is {cost}, not {}", plan.cost.0))?;
    let value = match need.aim {
        Aim::Cost => cost,
        Aim::Waste => bought - finished(need),
    };
    ensure(plan.value == value, || format!("the value is {value}, not {}", plan.value))?;
    ensure(plan.at_least <= plan.value, || format!("a bound of {} above {}", plan.at_least, plan.value))
}

/// Length of all pieces, in the unit of waste.
fn finished(need: &Need) -> i64 {
    let one = |piece: &super::Piece| {
        let (least, most) = extent(piece.points.iter().map(|p| p[0]));
        i64::try_from(piece.marks.len()).unwrap_or(0) * Money::of(most - least).0
    };
    need.pieces.iter().map(one).sum()
}

fn extent(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), v| (least.min(v), most.max(v)))
}

/// Corners of a piece where it lies in the bar; `y` from the underside of the stock.
pub(super) fn in_stock(need: &Need, piece: usize, turn: Turn, at: f64) -> Option<Vec<[f64; 3]>> {
    let depth = need.section[1];
    let piece = need.pieces.get(piece)?;
    // A proper turn changes two of the three signs, or none.
    let signs = match turn {
        Turn::AsItLies => [1.0, 1.0, 1.0],
        Turn::EndForEnd => [-1.0, 1.0, -1.0],
        Turn::EndForEndOver => [-1.0, -1.0, 1.0],
        Turn::Over => [1.0, -1.0, -1.0],
    };
    let (least, _) = extent(piece.points.iter().map(|p| p[0] * signs[0]));
    let move_to = |p: &[f64; 3]| {
        let y = if signs[1] < 0.0 { depth - p[1] } else { p[1] };
        [p[0] * signs[0] - least + at, y, p[2] * signs[2]]
    };
    Some(piece.points.iter().map(move_to).collect())
}

/// How far points are to the right of the plane of a cut, least and most, mm.
fn right_of(cut: &SawCut, depth: f64, points: &[[f64; 3]]) -> (f64, f64) {
    let [a, b, c] = cut.normal;
    extent(points.iter().map(|p| (p[0] - cut.at) * a + (p[1] - depth / 2.0) * b + p[2] * c))
}

fn bar_stands(need: &Need, bar: &Bar) -> Checked {
    let (kerf, trim, depth) = (need.sawing.kerf, need.sawing.trim, need.section[1]);
    let stock = need.stock.get(bar.stock).ok_or("a bar of a stock that there is not")?;
    ensure(!bar.pieces.is_empty(), || "a bar without a piece".into())?;
    let mut laid = Vec::new();
    for piece in &bar.pieces {
        let turns = need.pieces.get(piece.piece).map(|piece| piece.turns).ok_or("a piece that there is not")?;
        let may = match turns {
            Turns::All => true,
            Turns::KeepSide => matches!(piece.turn, Turn::AsItLies | Turn::EndForEndOver),
            Turns::AsItLies => piece.turn == Turn::AsItLies,
        };
        ensure(may, || format!("{} may not be turned so", piece.mark))?;
        let points = in_stock(need, piece.piece, piece.turn, piece.at).ok_or("a piece that there is not")?;
        let (least, most) = extent(points.iter().map(|p| p[0]));
        let inside = least >= trim - TOLERANCE && most <= stock.length - trim + TOLERANCE;
        ensure(inside, || format!("{} lies from {least} to {most}, outside its length", piece.mark))?;
        laid.push(points);
    }
    clean(need, bar)?;
    let (_, end) = extent(laid.iter().flatten().map(|p| p[0]));
    let left = (stock.length - end - kerf).max(0.0);
    ensure((bar.left - left).abs() <= TOLERANCE, || format!("what is left is {left}, not {}", bar.left))?;
    let length = |cut: &SawCut| cut.normal.iter().map(|v| v * v).sum::<f64>();
    for cut in &bar.cuts {
        let whole = (length(cut) - 1.0).abs() < 1e-9 && cut.normal[0] > 0.0;
        ensure(whole, || "a cut whose normal does not point along the bar".into())?;
        spares(bar, cut, &laid, depth)?;
    }
    for number in 1..laid.len() {
        let (before, after) = laid.split_at(number);
        let parts = |cut: &SawCut| {
            let blade = if cut.kerf_right { [0.0, kerf] } else { [-kerf, 0.0] };
            matches!(cut.what, CutFor::Parting | CutFor::Shared)
                && before.iter().all(|points| right_of(cut, depth, points).1 <= blade[0] + TOLERANCE)
                && after.iter().all(|points| right_of(cut, depth, points).0 >= blade[1] - TOLERANCE)
        };
        ensure(bar.cuts.iter().any(parts), || {
            let mark = |n: usize| bar.pieces.get(n).map_or("", |piece| piece.mark.as_str());
            format!("no cut parts {} from {}", mark(number - 1), mark(number))
        })?;
    }
    Ok(())
}

/// A cut touches the ends that it makes, and takes nothing of a piece that is still in the bar.
fn spares(bar: &Bar, cut: &SawCut, laid: &[Vec<[f64; 3]>], depth: f64) -> Checked {
    for (number, points) in laid.iter().enumerate() {
        let (least, most) = right_of(cut, depth, points);
        let makes = cut.ends.contains(&number);
        let left_of_it = most <= TOLERANCE;
        let right_of_it = least >= -TOLERANCE;
        // What was parted before is gone: a trimming cut of a right end meets that piece and no other.
        let gone = cut.what == CutFor::Trimming && !makes;
        ensure(gone || left_of_it || right_of_it, || {
            format!("a cut at {} goes through {}", cut.at, bar.pieces.get(number).map_or("", |p| p.mark.as_str()))
        })?;
        // The blade takes its kerf between two ends that it makes both: the far one is a kerf away.
        let touches = most.abs().min(least.abs()) <= TOLERANCE || cut.what == CutFor::Shared;
        ensure(!makes || touches, || format!("a cut at {} does not make the end it is for", cut.at))?;
    }
    ensure(cut.ends.iter().all(|&n| n < laid.len()), || "a cut makes an end of a piece that is not there".into())
}

/// Clean stock is for what wants it, or for what nothing else is long enough for.
fn clean(need: &Need, bar: &Bar) -> Checked {
    if !need.stock.get(bar.stock).is_some_and(|stock| stock.clean) {
        return Ok(());
    }
    let plain = need.stock.iter().filter(|stock| !stock.clean && stock.have != Some(0));
    let longest = plain.map(|stock| stock.length - 2.0 * need.sawing.trim).fold(0.0, f64::max);
    let wants = bar.pieces.iter().filter_map(|laid| need.pieces.get(laid.piece)).any(|piece| {
        let (least, most) = extent(piece.points.iter().map(|p| p[0]));
        piece.wants_clean || most - least > longest - TOLERANCE
    });
    ensure(wants, || "a clean length without a piece that wants it".into())
}
