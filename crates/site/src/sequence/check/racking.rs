//! What stands cannot move: timbers as bars that turn freely at their pins.
//!
//! Each bar's motion is that of its two ends, three unknowns each, that keep their distance. A pin makes two bars move
//! together at a place; a prop holds its timber up at its head; a brace keeps the distance of its ends. Walls do not
//! move. What may be other than 0 then racks or swings. That a bar turns about its own line is left out: the cuts at
//! its ends and what it carries see to that.

use super::bars::{Bar, STUB, one_pin};
use super::elimination::Equations;
use super::{Check, CheckFault};
use geometry::DVec3;
use std::collections::BTreeSet;

/// Unknowns of one bar.
const EACH: usize = 6;

/// Whether nothing that stands after a step can move; gives the timbers that were found not to.
pub fn holds(check: &Check<'_>, step: u32) -> Result<BTreeSet<usize>, CheckFault> {
    let firm = firm(check);
    let hanging = hanging(check);
    let still = |k: &usize| firm.contains(k) || hanging.contains(k);
    let loose: Vec<usize> = (0..check.fixed.len()).filter(|k| check.fixed[*k] && !still(k)).collect();
    if loose.is_empty() {
        return Ok(firm);
    }
    let timbers = check.bars.0.len();
    let mut equations = Equations::default();
    let moves = |k: usize| !still(&k);
    let mut columns: Vec<usize> = Vec::new();
    for k in &loose {
        columns.extend(EACH * k..EACH * (k + 1));
        let bar = &check.bars.0[*k];
        keep_length(&mut equations, *k, bar.along);
        for pin in &bar.pins {
            match pin.other {
                Some(o) if check.fixed.get(o).copied().unwrap_or(false) && !hanging.contains(&o) => {
                    // Each pin once, from the bar with the lower number; those to firm bars from the loose one.
                    if moves(o) && o < *k {
                        continue;
                    }
                    let to = check.bars.0.get(o).filter(|_| moves(o));
                    for axis in 0..3 {
                        let mut terms = end_terms(*k, bar, pin.at, axis, 1.0).to_vec();
                        if let Some(to) = to {
                            terms.extend(end_terms(o, to, pin.other_at, axis, -1.0));
                        }
                        equations.add(terms);
                    }
                }
                Some(_) => {}
                None => (0..3).for_each(|axis| equations.add(end_terms(*k, bar, pin.at, axis, 1.0))),
            }
        }
    }
    bolted(check, &loose, &moves, &mut equations);
    let at = |mark: &str, p: [f64; 3]| {
        let k =
            check.by_mark.get(mark).copied().filter(|k| moves(*k) && check.fixed.get(*k).copied().unwrap_or(false))?;
        let bar = check.bars.0.get(k)?;
        Some((k, bar, bar.station(DVec3::from_array(p))))
    };
    for prop in check.props.iter().filter_map(|k| check.sheet.props.get(*k)) {
        if let Some((k, bar, s)) = at(&prop.under, prop.head) {
            // A stayed one does not go sideways either.
            let axes = if prop.stayed { 0..3 } else { 2..3 };
            axes.for_each(|axis| equations.add(end_terms(k, bar, s, axis, 1.0)));
        }
    }
    for brace in check.braces.iter().filter_map(|k| check.sheet.braces.get(*k)) {
        let along = (DVec3::from_array(brace.to) - DVec3::from_array(brace.from)).normalize_or_zero().to_array();
        let mut terms = Vec::new();
        for (mark, p, sign) in [(&brace.from_mark, brace.from, 1.0), (&brace.to_mark, brace.to, -1.0)] {
            if let Some((k, bar, s)) = at(mark, p) {
                (0..3).for_each(|axis| terms.extend(end_terms(k, bar, s, axis, sign * along[axis])));
            }
        }
        equations.add(terms);
    }
    for (n, piece) in check.permanent.iter().filter_map(|k| Some((*k, check.sheet.permanent.get(*k)?))) {
        // A diagonal is one more bar, pinned wherever it is nailed.
        let number = timbers + n;
        let (from, to) = (DVec3::from_array(piece.from), DVec3::from_array(piece.to));
        let along = (to - from).normalize_or_zero();
        let length = to.distance(from).max(1.0);
        columns.extend(EACH * number..EACH * (number + 1));
        keep_length(&mut equations, number, along);
        for nailed in &piece.nailed {
            let p = DVec3::from_array(nailed.at);
            let share = ((p - from).dot(along) / length).clamp(0.0, 1.0);
            for axis in 0..3 {
                let mut terms = share_terms(number, share, axis, 1.0).to_vec();
                if let Some((k, bar, s)) = at(&nailed.mark, nailed.at) {
                    terms.extend(end_terms(k, bar, s, axis, -1.0));
                }
                equations.add(terms);
            }
        }
    }
    match equations.first_free(&columns) {
        None => Ok(firm.iter().chain(&loose).copied().collect()),
        Some(column) => {
            let k = column / EACH;
            let mark = if k < timbers { check.bars.mark(k) } else { check.sheet.permanent[k - timbers].name.clone() };
            Err(CheckFault::Racks { step, mark })
        }
    }
}

/// Short bars that hang on the nails at one place until a board holds their other end: they hold nothing else.
fn hanging(check: &Check<'_>) -> BTreeSet<usize> {
    let hangs = |k: &usize| {
        let Some(bar) = check.bars.0.get(*k).filter(|b| b.length <= STUB && !b.upright && !b.lies_on_wall) else {
            return false;
        };
        let on = |other: Option<usize>| other.is_none_or(|o| check.fixed.get(o).copied().unwrap_or(false));
        let pins = bar.pins.iter().filter(|p| on(p.other)).map(|p| p.at);
        let (low, high) = pins.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), s| (l.min(s), h.max(s)));
        low <= high && high - low <= one_pin(bar) / 2.0
    };
    (0..check.fixed.len()).filter(|k| check.fixed[*k]).filter(hangs).collect()
}

/// Bars that need no sums: on walls, or pinned at two places apart to what is firm, or bolted in line to what is.
fn firm(check: &Check<'_>) -> BTreeSet<usize> {
    let standing: Vec<usize> = (0..check.fixed.len()).filter(|k| check.fixed[*k]).collect();
    let mut firm: BTreeSet<usize> =
        standing.iter().copied().filter(|k| check.bars.0[*k].lies_on_wall || check.settled.contains(k)).collect();
    loop {
        let before = firm.len();
        for k in &standing {
            if firm.contains(k) {
                continue;
            }
            let bar = &check.bars.0[*k];
            let pins = bar.pins.iter().filter(|p| p.other.is_none_or(|o| firm.contains(&o)));
            let (low, high) = pins.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), p| (l.min(p.at), h.max(p.at)));
            // Pins that were drawn together share a place: any difference is a real distance.
            let stiff = bar.bolted.iter().any(|(o, _)| firm.contains(o));
            if stiff || high - low > one_pin(bar) / 2.0 {
                firm.insert(*k);
            }
        }
        if firm.len() == before {
            return firm;
        }
    }
}

/// Bolted lengths stay in one line: they move together at the splice, and as far beyond it as a carpenter's arm.
fn bolted(check: &Check<'_>, loose: &[usize], moves: &impl Fn(usize) -> bool, equations: &mut Equations) {
    const BEYOND: f64 = 1000.0;
    for k in loose {
        let bar = &check.bars.0[*k];
        for (o, at) in bar.bolted.iter().filter(|(o, _)| *o > *k && check.fixed.get(*o).copied().unwrap_or(false)) {
            let Some(other) = check.bars.0.get(*o).filter(|_| moves(*o)) else { continue };
            let there = (bar.start + bar.along * *at - other.start).dot(other.along);
            for (s, t) in [(*at, there), (at + BEYOND, there + BEYOND)] {
                for axis in 0..3 {
                    let mut terms = end_terms(*k, bar, s, axis, 1.0).to_vec();
                    terms.extend(end_terms(*o, other, t, axis, -1.0));
                    equations.add(terms);
                }
            }
        }
    }
}

/// The ends of a bar keep their distance.
fn keep_length(equations: &mut Equations, k: usize, along: DVec3) {
    let d = along.to_array();
    equations.add((0..3).flat_map(|axis| [(EACH * k + axis, -d[axis]), (EACH * k + 3 + axis, d[axis])]));
}

/// How a bar moves in one axis at a place along it, times a factor.
fn end_terms(k: usize, bar: &Bar, at: f64, axis: usize, factor: f64) -> [(usize, f64); 2] {
    let share = if bar.length > 0.0 { at / bar.length } else { 0.0 };
    share_terms(k, share, axis, factor)
}

fn share_terms(k: usize, share: f64, axis: usize, factor: f64) -> [(usize, f64); 2] {
    [(EACH * k + axis, factor * (1.0 - share)), (EACH * k + 3 + axis, factor * share)]
}
