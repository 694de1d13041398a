//! Which of the mirrored ways to close triangles make a plan.
//!
//! Placings are followed best first: by how far readings lie from them, and
//! on a tie the one further on, with corners pointing outwards. A placing is
//! given up when sides cross or a corner points the wrong way.

use super::assembly::{Assembly, Spot, Step};
use super::placing::{Pieces, close, lay, runs_round};
use super::{Survey, SurveyFault};
use crate::{Angle, DVec2};
use std::cmp::Ordering;
use std::collections::BinaryHeap;
use std::rc::Rc;

/// Most placings that are followed: twelve free triangles both ways; past
/// that the hint of inward corners is asked for.
const MOST_FOLLOWED: usize = 5000;

/// Most whole placings that are fitted.
const MOST_KEPT: usize = 32;

/// Readings may lie off a placing by this many tolerances before it counts
/// against it: readings before adjustment add up along the plan.
const FREE_MISFIT: f64 = 10.0;

/// Placings that are worse than twice the best by more than this many
/// tolerances are not followed.
const MARGIN: f64 = 20.0;

/// A corner that turns by less than this is straight and points neither way.
const STRAIGHT_DEG: f64 = 5.0;

/// Placings of all corners in which no sides cross, anticlockwise.
pub(super) struct Found {
    /// The best first.
    pub placings: Vec<Vec<DVec2>>,
    /// Whether there are no others.
    pub complete: bool,
}

struct Node {
    cost: f64,
    step: usize,
    number: usize,
    pieces: Pieces,
}

impl Ord for Node {
    fn cmp(&self, other: &Self) -> Ordering {
        let cost = other.cost.total_cmp(&self.cost);
        cost.then(self.step.cmp(&other.step)).then(self.number.cmp(&other.number))
    }
}

impl PartialOrd for Node {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Node {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Node {}

/// Why placings were given up.
#[derive(Default)]
struct GivenUp {
    crossing: Option<SurveyFault>,
    open: Option<SurveyFault>,
    against_hint: bool,
    clockwise: bool,
}

struct Search<'a> {
    survey: &'a Survey,
    assembly: &'a Assembly,
    heap: BinaryHeap<Node>,
    numbered: usize,
    given_up: GivenUp,
}

/// All placings of the corners that may be the plan.
///
/// # Errors
/// When there is none.
pub(super) fn placings(survey: &Survey, assembly: &Assembly) -> Result<Found, SurveyFault> {
    let pieces: Pieces = assembly.pieces.iter().map(|piece| Rc::new(piece.clone())).collect();
    let mut search = Search { survey, assembly, heap: BinaryHeap::new(), numbered: 0, given_up: GivenUp::default() };
    search.push(0.0, 0, pieces);
    let mut found = Found { placings: Vec::new(), complete: true };
    let mut limit = f64::INFINITY;
    let mut followed = 0;
    while let Some(node) = search.heap.pop() {
        if node.cost > limit {
            break;
        }
        followed += 1;
        if followed > MOST_FOLLOWED || found.placings.len() == MOST_KEPT {
            found.complete = false;
            break;
        }
        let cost = node.cost;
        if let Some(plan) = search.follow(node) {
            limit = limit.min(2.0 * cost + MARGIN * survey.tolerance);
            found.placings.push(plan);
        }
    }
    if found.placings.is_empty() { Err(search.why_none(found.complete)) } else { Ok(found) }
}

impl Search<'_> {
    fn push(&mut self, cost: f64, step: usize, pieces: Pieces) {
        self.numbered += 1;
        self.heap.push(Node { cost, step, number: self.numbered, pieces });
    }

    /// Goes on to the next triangle, or to the whole plan.
    fn follow(&mut self, node: Node) -> Option<Vec<DVec2>> {
        let Node { mut cost, mut step, mut pieces, .. } = node;
        while let Some(&at) = self.assembly.steps.get(step) {
            step += 1;
            match at {
                Step::Lay { base, other } => {
                    cost += (lay(&mut pieces, base, other) - FREE_MISFIT * self.survey.tolerance).max(0.0);
                    if !self.stands(&pieces[base]) {
                        return None;
                    }
                }
                Step::Close { base, second, third, corners } => {
                    // What is pushed last is followed first: corners pointing outwards.
                    let outward = runs_round(corners);
                    for left in [!outward, outward] {
                        let mut pieces = pieces.clone();
                        match close(&mut pieces, [base, second, third], corners, left, self.survey.tolerance) {
                            Err(fault) => self.given_up.open = self.given_up.open.take().or(Some(fault)),
                            Ok(()) if self.stands(&pieces[base]) => self.push(cost, step, pieces),
                            Ok(()) => {}
                        }
                    }
                    return None;
                }
            }
        }
        let whole = self.assembly.left().next().map(|k| whole(&pieces[k]))?;
        self.given_up.clockwise |= area(&whole) <= 0.0;
        (area(&whole) > 0.0).then_some(whole)
    }

    /// Whether a piece can be part of the plan.
    fn stands(&mut self, piece: &[Spot]) -> bool {
        let count = self.survey.sides.len();
        let mut places: Vec<Option<DVec2>> = vec![None; count];
        for (k, at) in piece {
            places[*k] = Some(*at);
        }
        for k in 0..count {
            let around = [(k + count - 1) % count, k, (k + 1) % count].map(|c| places[c]);
            let [Some(a), Some(b), Some(c)] = around else { continue };
            if let (Some(inward), Some(told)) = (points_inward(a, b, c), self.hint(k))
                && inward != told
            {
                self.given_up.against_hint = true;
                return false;
            }
        }
        if let Some((first, second)) = crossing(&places) {
            self.given_up.crossing.get_or_insert(SurveyFault::Crossing { first, second });
            return false;
        }
        true
    }

    /// Whether a corner is known to point inwards or outwards. Measured turns
    /// are part of the pieces and need no hint.
    fn hint(&self, corner: usize) -> Option<bool> {
        self.survey.inward.as_ref().map(|inward| inward.contains(&corner))
    }

    fn why_none(self, complete: bool) -> SurveyFault {
        let GivenUp { crossing, open, against_hint, clockwise } = self.given_up;
        if !complete {
            SurveyFault::TooManyPlacings
        } else if against_hint {
            SurveyFault::InwardDisagrees
        } else if let Some(fault) = open.or(if clockwise { None } else { crossing }) {
            fault
        } else {
            SurveyFault::WrongWayRound
        }
    }
}

fn whole(piece: &[Spot]) -> Vec<DVec2> {
    let mut spots = piece.to_vec();
    spots.sort_by_key(|(k, _)| *k);
    spots.into_iter().map(|(_, at)| at).collect()
}

/// Area of a plan, mm²; positive if it runs anticlockwise.
pub(super) fn area(plan: &[DVec2]) -> f64 {
    let next = plan.iter().cycle().skip(1);
    plan.iter().zip(next).map(|(a, b)| a.perp_dot(*b)).sum::<f64>() / 2.0
}

/// Whether the corner `b` between `a` and `c` of an anticlockwise plan points
/// into the building; `None` if it is straight.
fn points_inward(a: DVec2, b: DVec2, c: DVec2) -> Option<bool> {
    let (before, after) = (b - a, c - b);
    let turn = before.perp_dot(after);
    let least = Angle::deg(STRAIGHT_DEG).sin() * before.length() * after.length();
    (turn.abs() > least).then_some(turn < 0.0)
}

/// The corners of a plan that point into the building.
pub(super) fn inward_corners(plan: &[DVec2]) -> Vec<usize> {
    let count = plan.len();
    let around = |k: usize| [(k + count - 1) % count, k, (k + 1) % count].map(|c| plan[c]);
    (0..count)
        .filter(|k| {
            let [a, b, c] = around(*k);
            points_inward(a, b, c) == Some(true)
        })
        .collect()
}

/// Two sides of a plan that cross.
pub(super) fn walls_crossing(plan: &[DVec2]) -> Option<(usize, usize)> {
    crossing(&plan.iter().copied().map(Some).collect::<Vec<_>>())
}

/// Two sides that cross, of those whose corners are placed. Sides that only
/// touch are left to the check of the plan.
fn crossing(places: &[Option<DVec2>]) -> Option<(usize, usize)> {
    let count = places.len();
    let sides: Vec<(usize, DVec2, DVec2)> =
        (0..count).filter_map(|k| Some((k, places[k]?, places[(k + 1) % count]?))).collect();
    let across = |a: DVec2, b: DVec2, p: DVec2, q: DVec2| {
        let (left, right) = ((b - a).perp_dot(p - a), (b - a).perp_dot(q - a));
        (left > 0.0 && right < 0.0) || (left < 0.0 && right > 0.0)
    };
    for (n, &(first, a, b)) in sides.iter().enumerate() {
        for &(second, p, q) in sides.iter().skip(n + 1) {
            if across(a, b, p, q) && across(p, q, a, b) {
                return Some((first, second));
            }
        }
    }
    None
}
