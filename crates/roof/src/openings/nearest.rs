//! The nearest place that takes an opening which does not fit where it is.

use super::hole::{DORMER, of_dormer, of_opening};
use super::patch::Patch;
use super::{Hole, Misfit, Owner, Place, Room, Slope, holes};
use crate::SolveError;
use crate::frame::heights::Heights;
use geometry::surface::{Surface, WallId};
use job::{Distance, Job, OpeningKind};

/// Places are tried this far apart along the wall and up the slope, mm.
const STEP: f64 = 25.0;

/// So many places that look free are solved in full before giving up: each
/// costs a whole solve.
const MOST_SOLVED: usize = 24;

/// A place near one that failed in full fails too, mm.
const ALIKE: f64 = 100.0;

/// The same for hatches, whose joists stand further apart than that, mm.
const ALIKE_HATCH: f64 = 250.0;

/// A hatch keeps further than this from the plate lines, mm: its joists need
/// their feet.
const FROM_WALLS: f64 = 250.0;

/// No wall is looked at further than so many steps from the place asked for.
const MOST_STEPS: f64 = 100_000.0;

/// More places than this are not looked at: the wall is absurdly long.
const MOST_PLACES: usize = 1_000_000;

/// Complete a refusal with the nearest place that takes the opening. `solves`
/// says whether a job can be built.
pub fn advised(job: &Job, surface: &Surface, refusal: SolveError, solves: &dyn Fn(&Job) -> bool) -> SolveError {
    let SolveError::Opening { what, name, wall, misfit, nearest: None } = refusal else { return refusal };
    let owner = if what == DORMER {
        job.dormers.iter().position(|d| d.name == name).map(Owner::Dormer)
    } else {
        job.openings.iter().position(|o| o.name == name).map(Owner::Opening)
    };
    let placed = !matches!(*misfit, Misfit::NoSize | Misfit::NoSlope);
    let nearest = owner.filter(|_| placed).and_then(|owner| search(job, surface, owner, solves));
    SolveError::Opening { what, name, wall, misfit, nearest }
}

/// The nearest place for an opening, those before it staying where they are.
fn search(job: &Job, surface: &Surface, owner: Owner, solves: &dyn Fn(&Job) -> bool) -> Option<Place> {
    let heights = Heights::of(job).ok()?;
    let mut trial = alone(job, owner);
    let mut before = trial.clone();
    match owner {
        Owner::Opening(_) => drop(before.openings.pop()),
        Owner::Dormer(_) => drop(before.dormers.pop()),
    }
    let mut holes = holes(&before, surface, &heights).ok()?;
    let room = Room { job, surface, lines: &[] };
    let asked = place_of(&trial, owner)?;
    // A hatch lies in no slope: only the joists can say where it fits.
    let hatch = matches!(owner, Owner::Opening(k) if job.openings.get(k)?.kind == OpeningKind::Hatch);
    let alike = if hatch { ALIKE_HATCH } else { ALIKE };
    let mut failed: Vec<Place> = Vec::new();
    for place in around(asked, reach(&trial, surface, owner, hatch)?) {
        if failed.iter().any(|f| (f.along - place.along).abs().max((f.up - place.up).abs()) < alike) {
            continue;
        }
        move_to(&mut trial, owner, place);
        if hatch {
            if !in_plan(&trial, surface, owner) {
                continue;
            }
        } else {
            let Some(hole) = hole_of(&trial, surface, &heights, owner) else { continue };
            holes.push(hole);
            let free = room.for_holes(&holes).is_ok();
            holes.pop();
            if !free {
                continue;
            }
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

/// The job with nothing that comes after an opening.
fn alone(job: &Job, owner: Owner) -> Job {
    let mut job = job.clone();
    match owner {
        Owner::Opening(k) => job.openings.truncate(k + 1),
        Owner::Dormer(k) => {
            job.dormers.truncate(k + 1);
            job.openings.clear();
        }
    }
    job
}

fn hole_of(job: &Job, surface: &Surface, heights: &Heights, owner: Owner) -> Option<Hole> {
    match owner {
        Owner::Opening(k) => of_opening(job, surface, heights, k, job.openings.get(k)?).ok(),
        Owner::Dormer(k) => of_dormer(job, surface, heights, k, job.dormers.get(k)?).ok(),
    }
}

fn place_of(job: &Job, owner: Owner) -> Option<Place> {
    Some(match owner {
        Owner::Opening(k) => job.openings.get(k).map(|o| Place { along: o.along, up: mm(o.up) })?,
        Owner::Dormer(k) => job.dormers.get(k).map(|d| Place { along: d.along, up: d.back })?,
    })
}

fn move_to(job: &mut Job, owner: Owner, place: Place) {
    match owner {
        Owner::Opening(k) => {
            if let Some(o) = job.openings.get_mut(k) {
                o.along = place.along;
                o.up = match o.up {
                    Distance::Slope(_) => Distance::Slope(place.up),
                    Distance::Plan(_) => Distance::Plan(place.up),
                };
            }
        }
        Owner::Dormer(k) => {
            if let Some(d) = job.dormers.get_mut(k) {
                d.along = place.along;
                d.back = place.up;
            }
        }
    }
}

const fn mm(distance: Distance) -> f64 {
    match distance {
        Distance::Slope(mm) | Distance::Plan(mm) => mm,
    }
}

/// Whether a hatch lies inside the walls.
fn in_plan(job: &Job, surface: &Surface, owner: Owner) -> bool {
    let Owner::Opening(k) = owner else { return false };
    let Some(o) = job.openings.get(k) else { return false };
    let Some([a, b]) = surface.wall_ends(WallId(o.wall as u32)) else { return false };
    let dir = (b - a).normalize_or_zero();
    let corner = |x: f64, y: f64| a + dir * (o.along + x) + dir.perp() * (mm(o.up) + y);
    let patch =
        Patch::new(vec![corner(0.0, 0.0), corner(o.width, 0.0), corner(o.width, o.height), corner(0.0, o.height)]);
    let middle = patch.middle();
    let mut inside = false;
    for ring in &surface.loops {
        for (p, q) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            if patch.off(*p, *q) < FROM_WALLS {
                return false;
            }
            let across = (p.y > middle.y) != (q.y > middle.y);
            if across && middle.x < p.x + (middle.y - p.y) * (q.x - p.x) / (q.y - p.y) {
                inside = !inside;
            }
        }
    }
    inside
}

/// Where an opening may lie at all: along its wall and up, `[low, high]` each.
fn reach(job: &Job, surface: &Surface, owner: Owner, hatch: bool) -> Option<[[f64; 2]; 2]> {
    let (wall, width, on_slope) = match owner {
        Owner::Opening(k) => {
            let o = job.openings.get(k)?;
            (o.wall, o.width, matches!(o.up, Distance::Slope(_)))
        }
        Owner::Dormer(k) => {
            let d = job.dormers.get(k)?;
            (d.wall, d.width, false)
        }
    };
    let id = WallId(wall as u32);
    if hatch {
        let [a, b] = surface.wall_ends(id)?;
        let dir = (b - a).normalize_or_zero();
        let far = surface.loops.iter().flatten().map(|p| dir.perp().dot(*p - a)).fold(0.0, f64::max);
        return Some([[0.0, (b - a).length() - width], [0.0, far]]).filter(|[along, _]| along[1] >= 0.0);
    }
    let face = surface.face(surface.face_of_wall.get(wall).copied().flatten()?);
    let slope = Slope::new(face.plane, 0.0);
    let start = slope.axis.dot(surface.wall_ends(id)?[0]);
    let (mut along, mut up) = ([f64::INFINITY, f64::NEG_INFINITY], 0.0_f64);
    for p in face.outline.iter().map(|n| surface.node(*n).truncate()) {
        let at = slope.axis.dot(p) - start;
        along = [along[0].min(at), along[1].max(at - width)];
        up = up.max(slope.plane.inward.dot(p) - slope.plane.offset);
    }
    let top = if on_slope { up / slope.cos } else { up };
    (along[1] >= along[0]).then_some([along, [0.0, top]])
}

/// Places in a grid about the one that was asked for, the nearest first.
fn around(asked: Place, [along, up]: [[f64; 2]; 2]) -> Vec<Place> {
    let steps = |asked: f64, [low, high]: [f64; 2]| -> Vec<f64> {
        let middle = asked.clamp(low, high).round();
        let count = |room: f64| (room / STEP).floor().clamp(0.0, MOST_STEPS) as i64;
        (-count(middle - low)..=count(high - middle)).map(|k| middle + STEP * k as f64).collect()
    };
    let (alongs, ups) = (steps(asked.along, along), steps(asked.up, up));
    if alongs.len().saturating_mul(ups.len()) > MOST_PLACES {
        return Vec::new();
    }
    let mut out: Vec<Place> =
        alongs.iter().flat_map(|along| ups.iter().map(|up| Place { along: *along, up: *up })).collect();
    let off = |p: &Place| {
        let (a, u) = (p.along - asked.along, p.up - asked.up);
        a * a + u * u
    };
    out.sort_by(|p, q| off(p).total_cmp(&off(q)).then(p.along.total_cmp(&q.along)));
    out
}
