//! Carries out the steps of an assembly: pieces laid on one another, triangles
//! closed one way or the other.

use super::SurveyFault;
use super::assembly::Spot;
use super::triangle::{apex, excess};
use crate::DVec2;
use std::rc::Rc;

/// Three readings of a flat triangle, and those behind pieces at its sides,
/// may leave it open by this many tolerances before it is called impossible.
const CLOSING_SLACK: f64 = 10.0;

/// Pieces while they are put together; those that became part of another are
/// empty. Placings share what they have in common.
pub(super) type Pieces = Vec<Rc<Vec<Spot>>>;

/// Where a corner lies in a piece that holds it.
pub(super) fn spot(piece: &[Spot], corner: usize) -> DVec2 {
    piece.iter().find(|(k, _)| *k == corner).map_or(DVec2::ZERO, |(_, at)| *at)
}

/// A piece moved so that the two places `from` come to lie on the line of
/// `to`, middle on middle.
fn carried(piece: &[Spot], from: [DVec2; 2], to: [DVec2; 2]) -> Vec<Spot> {
    let (a, b) = (from[1] - from[0], to[1] - to[0]);
    let both = a.length() * b.length();
    let turn = if both > 0.0 { DVec2::new(a.dot(b), a.perp_dot(b)) / both } else { DVec2::X };
    let (old, new) = (from[0].midpoint(from[1]), to[0].midpoint(to[1]));
    piece.iter().map(|(k, at)| (*k, new + turn.rotate(*at - old))).collect()
}

fn united(base: &[Spot], more: Vec<Spot>) -> Vec<Spot> {
    let mut all = base.to_vec();
    all.extend(more.into_iter().filter(|(k, _)| base.iter().all(|(known, _)| known != k)));
    all
}

/// Lays a piece on another by the two corners they share that are furthest
/// apart. Returns how far shared corners come to lie from one another, mm.
pub(super) fn lay(pieces: &mut Pieces, base: usize, other: usize) -> f64 {
    let (on, piece) = (Rc::clone(&pieces[base]), std::mem::take(&mut pieces[other]));
    let shared: Vec<usize> = piece.iter().map(|(k, _)| *k).filter(|k| on.iter().any(|(c, _)| c == k)).collect();
    let pairs = shared.iter().flat_map(|a| shared.iter().map(move |b| (*a, *b))).filter(|(a, b)| a < b);
    let apart = |(a, b): &(usize, usize)| spot(&on, *a).distance(spot(&on, *b));
    let Some((a, b)) = pairs.max_by(|x, y| apart(x).total_cmp(&apart(y))) else { return 0.0 };
    let laid = carried(&piece, [a, b].map(|k| spot(&piece, k)), [a, b].map(|k| spot(&on, k)));
    let off = shared.iter().map(|k| spot(&laid, *k).distance(spot(&on, *k))).sum();
    pieces[base] = Rc::new(united(&on, laid));
    off
}

/// Closes the triangle of corners `p`, `q`, `r` of three pieces: `of[0]` holds
/// `p` and `q`, `of[1]` `p` and `r`, `of[2]` `q` and `r`. `p`, `q`, `r` run
/// anticlockwise if `left`.
///
/// # Errors
/// When the three distances make no triangle.
pub(super) fn close(
    pieces: &mut Pieces,
    of: [usize; 3],
    corners: [usize; 3],
    left: bool,
    tolerance: f64,
) -> Result<(), SurveyFault> {
    let [p, q, r] = corners;
    let base = Rc::clone(&pieces[of[0]]);
    let (second, third) = (std::mem::take(&mut pieces[of[1]]), std::mem::take(&mut pieces[of[2]]));
    let (at_p, at_q) = (spot(&base, p), spot(&base, q));
    let lengths =
        [at_p.distance(at_q), spot(&third, q).distance(spot(&third, r)), spot(&second, r).distance(spot(&second, p))];
    if lengths[0] <= 0.0 || excess(lengths) > CLOSING_SLACK * tolerance {
        return Err(SurveyFault::NoTriangle { corners, lengths });
    }
    let (along, aside) = apex(lengths[0], lengths[2], lengths[1]);
    let unit = (at_q - at_p) / lengths[0];
    let side = if left { unit.perp() } else { -unit.perp() };
    let at_r = at_p + unit * along + side * aside;
    let second = carried(&second, [p, r].map(|k| spot(&second, k)), [at_p, at_r]);
    let third = carried(&third, [q, r].map(|k| spot(&third, k)), [at_q, at_r]);
    pieces[of[0]] = Rc::new(united(&united(&base, second), third));
    Ok(())
}

/// Whether corners in this order run anticlockwise round a plan without
/// corners that point inwards.
pub(super) fn runs_round(corners: [usize; 3]) -> bool {
    let [p, q, r] = corners;
    // Going round once, the numbers fall back just once.
    [p < q, q < r, r < p].into_iter().filter(|rises| *rises).count() == 2
}
