//! Bars with their pieces, and the cuts in the order of the saw.

use super::arrange::Placed;
use super::greedy::Cutting;
use super::model::Model;
use super::patterns::Searcher;
use super::turning::{Lying, Slope};
use super::units::{UNITS, up};
use super::{Bar, CutFor, Laid, Need, SawCut};
use geometry::DVec3;

/// A square end this near the end of the stock is that end and is not cut, mm.
const FLUSH: f64 = 0.05;

/// A piece on its bar.
struct On<'a> {
    laid: Laid,
    lying: &'a Lying,
    kinds: [usize; 2],
}

/// The bars of a cutting: pieces of an item are taken in the order in which the need names them.
pub(super) fn bars(searcher: &mut Searcher<'_>, need: &Need, cutting: &Cutting) -> Option<Vec<Bar>> {
    let model = searcher.model;
    let mut next: Vec<std::vec::IntoIter<(usize, String)>> = model
        .items
        .iter()
        .map(|item| {
            let marks =
                |&piece: &usize| need.pieces.get(piece).map(|p| p.marks.iter().map(move |m| (piece, m.clone())));
            item.pieces.iter().filter_map(marks).flatten().collect::<Vec<_>>().into_iter()
        })
        .collect();
    let mut bars = Vec::new();
    for (pattern, often) in &cutting.patterns {
        let mut set = vec![0_u16; model.shapes.len()];
        for &(item, n) in &pattern.take {
            *set.get_mut(model.items.get(item)?.shape)? += n;
        }
        let order = searcher.arranger.order(model, &set)?;
        let items = assign(model, &pattern.take, &order)?;
        let stock = model.stores.get(pattern.store)?.stock;
        for _ in 0..*often {
            let mut on = Vec::new();
            let mut at = up(need.sawing.trim);
            let mut before: Option<usize> = None;
            for (&item, &(_, kinds)) in items.iter().zip(&order) {
                let (piece, mark) = next.get_mut(item)?.next()?;
                let turn = model.kinds.get(piece)?.iter().position(|known| *known == kinds)?;
                let lying = model.lyings.get(piece)?.get(turn)?;
                if let Some(right) = before {
                    at += model.ends.between(right, kinds[0]).gap;
                }
                let laid = Laid { piece, mark, turn: lying.turn, at: at as f64 / UNITS };
                on.push(On { laid, lying, kinds });
                at += model.items.get(item)?.length;
                before = Some(kinds[1]);
            }
            let cuts = cuts(model, need, stock, &on);
            let end = on.iter().map(|on| on.laid.at + on.lying.length()).fold(0.0, f64::max);
            let left = (need.stock.get(stock)?.length - end - need.sawing.kerf).max(0.0);
            bars.push(Bar { stock, pieces: on.into_iter().map(|on| on.laid).collect(), cuts, left });
        }
    }
    Some(bars)
}

/// Which item stands at each place: those of one shape are all alike to their neighbours, so the longest goes first.
fn assign(model: &Model, take: &[(usize, u16)], order: &[Placed]) -> Option<Vec<usize>> {
    let mut left: Vec<(usize, u16)> = take.to_vec();
    left.sort_by_key(|&(item, _)| (std::cmp::Reverse(model.items.get(item).map_or(0, |item| item.length)), item));
    order
        .iter()
        .map(|&(shape, _)| {
            let slot =
                left.iter_mut().find(|(i, n)| *n > 0 && model.items.get(*i).is_some_and(|it| it.shape == shape))?;
            slot.1 -= 1;
            Some(slot.0)
        })
        .collect()
}

/// Which end of a piece.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    Left,
    Right,
}

/// The cut of this slope that touches an end of a piece.
fn touching(what: CutFor, ends: Vec<usize>, on: &On<'_>, side: Side, slope: Slope) -> SawCut {
    let values = on.lying.points.iter().map(|&p| slope.beyond(p));
    let touch = match side {
        Side::Left => values.fold(f64::INFINITY, f64::min),
        Side::Right => values.fold(f64::NEG_INFINITY, f64::max),
    };
    cut(what, ends, on.laid.at + touch, side == Side::Right, slope)
}

fn cut(what: CutFor, ends: Vec<usize>, at: f64, kerf_right: bool, slope: Slope) -> SawCut {
    let normal = DVec3::new(1.0, -slope.up, -slope.across) / slope.stretch();
    SawCut { what, ends, at, kerf_right, normal: normal.to_array(), marking: roof::mark(normal) }
}

/// All cuts of a bar, from the left: what can be trimmed of a left end while the piece is part of the bar, then the cut
/// that parts it, then the rest of both its ends.
fn cuts(model: &Model, need: &Need, stock: usize, on: &[On<'_>]) -> Vec<SawCut> {
    let mut cuts = Vec::new();
    let squared = need.sawing.trim > 0.0;
    // What made the left end of the piece so far.
    let mut made = Some(Slope::SQUARE);
    if let Some(first) = on.first() {
        let [own, _] = &first.lying.ends;
        let square = own.iter().any(|slope| slope.is(Slope::SQUARE));
        if squared {
            let ends = if square { vec![0] } else { Vec::new() };
            cuts.push(cut(CutFor::Squaring, ends, need.sawing.trim, false, Slope::SQUARE));
        }
        made = square.then_some(Slope::SQUARE);
    }
    for (number, piece) in on.iter().enumerate() {
        let clear = |slope: &Slope, end: usize| piece.lying.is_clear(*slope, end, need.section);
        let [own_left, own_right] = &piece.lying.ends;
        let left = || own_left.iter().filter(|slope| !made.is_some_and(|made| made.is(**slope)));
        let mut what = if made.is_none() { CutFor::Parting } else { CutFor::Trimming };
        for slope in left().filter(|slope| clear(slope, 0)) {
            cuts.push(touching(what, vec![number], piece, Side::Left, *slope));
            what = CutFor::Trimming;
        }
        let (parting, slope) = match on.get(number + 1) {
            Some(next) => between(model, number, piece, next),
            None => from_the_rest(need, stock, number, piece),
        };
        cuts.extend(parting);
        for other in own_right.iter().filter(|own| !own.is(slope)) {
            cuts.push(touching(CutFor::Trimming, vec![number], piece, Side::Right, *other));
        }
        // A plane that runs far along the piece would run into the next one; now it is by itself.
        for other in left().filter(|slope| !clear(slope, 0)) {
            cuts.push(touching(CutFor::Trimming, vec![number], piece, Side::Left, *other));
        }
        made = Some(slope);
    }
    cuts
}

/// The cut between a piece and the next, and its slope.
fn between(model: &Model, number: usize, left: &On<'_>, right: &On<'_>) -> (Option<SawCut>, Slope) {
    let join = model.ends.between(left.kinds[1], right.kinds[0]);
    let slope = model.ends.slopes.get(join.slope).copied().unwrap_or(Slope::SQUARE);
    let cut = match join.makes {
        [true, true] => touching(CutFor::Shared, vec![number, number + 1], left, Side::Right, slope),
        [false, true] => touching(CutFor::Parting, vec![number + 1], right, Side::Left, slope),
        [true, false] => touching(CutFor::Parting, vec![number], left, Side::Right, slope),
        [false, false] => touching(CutFor::Parting, Vec::new(), left, Side::Right, slope),
    };
    (Some(cut), slope)
}

/// The cut that parts the last piece from what is left, and its slope; none when its end is that of the stock.
fn from_the_rest(need: &Need, stock: usize, number: usize, last: &On<'_>) -> (Option<SawCut>, Slope) {
    let [_, own] = &last.lying.ends;
    let end = last.laid.at + last.lying.length();
    let flush = need.stock.get(stock).is_some_and(|stock| stock.length - end <= FLUSH);
    let square = own.iter().any(|slope| slope.is(Slope::SQUARE));
    if flush && (square || own.is_empty()) {
        return (None, Slope::SQUARE);
    }
    match own.iter().find(|slope| last.lying.is_clear(**slope, 1, need.section)) {
        Some(slope) => (Some(touching(CutFor::Parting, vec![number], last, Side::Right, *slope)), *slope),
        None => (Some(touching(CutFor::Parting, Vec::new(), last, Side::Right, Slope::SQUARE)), Slope::SQUARE),
    }
}
