//! The nearest place that takes an opening which does not fit where it is.

use super::hole::of_opening;
use super::{Hole, Place, Room};
use crate::SolveError;
use crate::frame::heights::Heights;
use geometry::surface::Surface;
use job::{Distance, Job, Opening};

/// Places are tried this far apart along the wall and up the slope, mm.
const STEP: f64 = 25.0;

/// So many places that look free are solved in full before giving up: each
/// costs a whole solve.
const MOST_SOLVED: usize = 40;

/// A place near one that failed in full fails too, mm.
const ALIKE: f64 = 100.0;

/// More places than this are not looked at: the wall is absurdly long.
const MOST_PLACES: usize = 1_000_000;

/// Complete a refusal with the nearest place that takes the opening. `solves`
/// says whether a job can be built.
pub fn advised(job: &Job, surface: &Surface, refusal: SolveError, solves: &dyn Fn(&Job) -> bool) -> SolveError {
    match refusal {
        SolveError::Opening { what, name, wall, misfit, nearest: None } => {
            let k = job.openings.iter().position(|o| o.name == name);
            let nearest = k.and_then(|k| of_opening_at(job, surface, k, solves));
            SolveError::Opening { what, name, wall, misfit, nearest }
        }
        other => other,
    }
}

/// The nearest place for opening `k`, those before it staying where they are.
fn of_opening_at(job: &Job, surface: &Surface, k: usize, solves: &dyn Fn(&Job) -> bool) -> Option<Place> {
    let heights = Heights::of(job).ok()?;
    let mut trial = job.clone();
    trial.openings.truncate(k + 1);
    let asked = trial.openings.get(k)?.clone();
    let before: Vec<Hole> =
        (0..k).filter_map(|i| of_opening(job, surface, &heights, i, trial.openings.get(i)?).ok()).collect();
    let room = Room { job, surface, lines: &[] };
    let first = of_opening(job, surface, &heights, k, &asked).ok()?;
    let reach = reach(surface, &first, &asked)?;
    let mut failed: Vec<Place> = Vec::new();
    for place in around(&asked, reach) {
        if failed.iter().any(|f| (f.along - place.along).abs().max((f.up - place.up).abs()) < ALIKE) {
            continue;
        }
        let moved = Opening { along: place.along, up: like(asked.up, place.up), ..asked.clone() };
        let Ok(hole) = of_opening(job, surface, &heights, k, &moved) else { continue };
        let all: Vec<Hole> = before.iter().cloned().chain([hole]).collect();
        if room.for_holes(&all).is_err() {
            continue;
        }
        if let Some(last) = trial.openings.last_mut() {
            *last = moved;
        }
        if solves(&trial) {
            return Some(place);
        }
        failed.push(place);
        if failed.len() >= MOST_SOLVED {
            break;
        }
    }
    None
}

/// A distance measured as another is.
const fn like(measure: Distance, mm: f64) -> Distance {
    match measure {
        Distance::Slope(_) => Distance::Slope(mm),
        Distance::Plan(_) => Distance::Plan(mm),
    }
}

const fn mm(distance: Distance) -> f64 {
    match distance {
        Distance::Slope(mm) | Distance::Plan(mm) => mm,
    }
}

/// Where an opening may lie at all: along its wall and up, `[low, high]` each.
fn reach(surface: &Surface, hole: &Hole, asked: &Opening) -> Option<[[f64; 2]; 2]> {
    let slope = &hole.slope;
    let outline = surface.face(hole.face).outline.iter().map(|n| surface.node(*n).truncate());
    let (mut x, mut y) = ([f64::INFINITY, f64::NEG_INFINITY], 0.0_f64);
    for p in outline {
        let at = slope.axis.dot(p);
        x = [x[0].min(at), x[1].max(at)];
        y = y.max(slope.plane.inward.dot(p) - slope.plane.offset);
    }
    let per_up = match asked.up {
        Distance::Slope(_) => 1.0 / slope.cos,
        Distance::Plan(_) => 1.0,
    };
    let start = hole.x[0] - asked.along;
    let along = [x[0] - start, x[1] - start - (hole.x[1] - hole.x[0])];
    let up = [0.0, y * per_up];
    (along[1] >= along[0]).then_some([along, up])
}

/// Places in a grid about the one that was asked for, the nearest first.
fn around(asked: &Opening, [along, up]: [[f64; 2]; 2]) -> Vec<Place> {
    let steps = |asked: f64, [low, high]: [f64; 2]| -> Vec<f64> {
        let middle = asked.clamp(low, high).round();
        let count = |room: f64| (room / STEP).floor().max(0.0) as i64;
        (-count(middle - low)..=count(high - middle)).map(|k| middle + STEP * k as f64).collect()
    };
    let (alongs, ups) = (steps(asked.along, along), steps(mm(asked.up), up));
    if alongs.len().saturating_mul(ups.len()) > MOST_PLACES {
        return Vec::new();
    }
    let mut out: Vec<Place> =
        alongs.iter().flat_map(|along| ups.iter().map(|up| Place { along: *along, up: *up })).collect();
    let off = |p: &Place| {
        let (a, u) = (p.along - asked.along, p.up - mm(asked.up));
        a * a + u * u
    };
    out.sort_by(|p, q| off(p).total_cmp(&off(q)).then(p.along.total_cmp(&q.along)));
    out
}
