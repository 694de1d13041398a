//! What to measure next when the readings leave a plan loose.

use super::SurveyFault;
use super::assembly::{Assembly, Step};
use super::placing::{Pieces, close, lay, runs_round, spot};
use std::rc::Rc;

/// The fault of a plan that is left loose, with the distances that fix it.
///
/// Two pieces that hang together at one corner open and shut like scissors. A
/// distance between them tells their opening by the more, the longer both
/// arms are, so the longest arms are taken first.
pub(super) fn fault(mut assembly: Assembly) -> SurveyFault {
    let mut pieces: Pieces = assembly.pieces.iter().map(|piece| Rc::new(piece.clone())).collect();
    let mut next = Vec::new();
    let mut done = 0;
    loop {
        for step in assembly.steps.iter().skip(done) {
            match *step {
                Step::Lay { base, other } => {
                    lay(&mut pieces, base, other);
                }
                Step::Close { base, second, third, corners } => {
                    // Some lengths are guesses here: a triangle that they do not close is laid flat.
                    let of = [base, second, third];
                    if let Err(fault) = close(&mut pieces, of, corners, runs_round(corners), f64::INFINITY) {
                        return fault;
                    }
                }
            }
        }
        done = assembly.steps.len();
        let Some(hinge) = best_hinge(&assembly, &pieces) else { return SurveyFault::UnderMeasured { next } };
        next.push(hinge.between);
        assembly.add_length(hinge.between.0, hinge.between.1, hinge.square);
        pieces.extend(assembly.pieces.last().map(|piece| Rc::new(piece.clone())));
        assembly.put_together();
    }
}

/// Two pieces that hang together at a corner.
struct Hinge {
    between: (usize, usize),
    /// How far the ends of the arms are apart when they stand square, mm.
    square: f64,
    /// How the distance changes with the opening there, mm a radian.
    lever: f64,
}

fn best_hinge(assembly: &Assembly, pieces: &Pieces) -> Option<Hinge> {
    let left: Vec<usize> = assembly.left().collect();
    let mut best: Option<Hinge> = None;
    for (n, &one) in left.iter().enumerate() {
        for &other in left.iter().skip(n + 1) {
            let Some(at) = pieces[one].iter().map(|(k, _)| *k).find(|k| pieces[other].iter().any(|(c, _)| c == k))
            else {
                continue;
            };
            let arms = |piece: usize| {
                let centre = spot(&pieces[piece], at);
                pieces[piece]
                    .iter()
                    .filter(|(k, _)| *k != at)
                    .map(|(k, p)| (*k, p.distance(centre)))
                    .collect::<Vec<_>>()
            };
            let (arms, others) = (arms(one), arms(other));
            for (a, b) in arms.iter().flat_map(|a| others.iter().map(move |b| (a, b))) {
                let square = (a.1 * a.1 + b.1 * b.1).sqrt();
                let lever = a.1 * b.1 / square;
                if best.as_ref().is_none_or(|known| lever > known.lever) {
                    best = Some(Hinge { between: (a.0.min(b.0), a.0.max(b.0)), square, lever });
                }
            }
        }
    }
    best
}
