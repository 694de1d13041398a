//! From a plan and its wall profiles to a checked roof surface.

use super::error::SurfaceError;
use super::faces::assemble;
use super::fronts::{Fronts, kinds};
use super::raw::Raw;
use super::soundness::check;
use super::sweep::{CLUSTER, sweep};
use super::tidy::{FRAMING, tidy};
use super::types::{Surface, SurfaceWarning, WallId, WallProfile};
use crate::plan::{self, Regular, regularise};
use crate::{CornerRef, DVec2};

/// Moves of corners that are worth telling, mm: more than the rounding of
/// corners to the grid can cause.
const WORTH_TELLING: f64 = 0.25;

/// What to try in turn: the size of the event cluster in units of
/// [`CLUSTER`], and how far apart nodes must be in units of [`FRAMING`].
///
/// Where two readings of a near tie contradict each other, a wider cluster
/// sees one. Where a whole face is thinner than can be framed (beside a bend
/// of a few millimetres between unlike pitches), only finer tidying keeps it.
const LADDER: [(f64, f64); 5] = [(1.0, 1.0), (1.0, 0.1), (10.0, 1.0), (1.0, 0.01), (0.1, 0.01)];

/// The roof surface over a plan of plate lines.
///
/// `loops` holds corners in mm: the outer plates anticlockwise, then each
/// courtyard clockwise. `walls` gives every wall its profile, in the order of
/// [`WallId`]. The plan is trued up first (see [`Surface::loops`] and
/// [`SurfaceWarning::Regularised`]).
///
/// Every surface has passed [`check`] before it is returned.
///
/// # Errors
/// [`SurfaceError`] says what is wrong, where, and what to do about it.
///
/// ```
/// use geometry::{DVec2, surface::{ArcKind, WallProfile, solve}};
/// let plan = [[0.0, 0.0], [10_000.0, 0.0], [10_000.0, 6000.0], [0.0, 6000.0]].map(DVec2::from_array).to_vec();
/// let walls = vec![WallProfile::slope(0.0, 45.0); 4];
/// let roof = solve(&[plan], &walls)?;
/// assert_eq!(roof.faces.len(), 4);
/// let ridge = roof.arcs.iter().find(|arc| arc.kind == ArcKind::Ridge).expect("a hipped roof has a ridge");
/// assert!((roof.node(ridge.from).z - 3000.0).abs() < 1e-6);
/// # Ok::<(), geometry::surface::SurfaceError>(())
/// ```
pub fn solve(loops: &[Vec<DVec2>], walls: &[WallProfile]) -> Result<Surface, SurfaceError> {
    let faults = plan::check(loops);
    if !faults.is_empty() {
        return Err(SurfaceError::Plan(faults));
    }
    let count = loops.iter().map(Vec::len).sum();
    if count != walls.len() {
        return Err(SurfaceError::ProfileCount { walls: count, profiles: walls.len() });
    }
    let kinds = kinds(walls)?;
    let trued = regularise(loops, &kinds).map_err(|wall| {
        let (at, place) = corner_of(loops, wall);
        SurfaceError::UnsureCorner { at, place }
    })?;
    if let Some(&after) = trued.unlike_neighbours.first() {
        let (at, place) = corner_of(loops, after);
        let ring_start = after - at.corner;
        let ring_length = loops.get(at.ring).map_or(1, Vec::len);
        let before = ring_start + (at.corner + ring_length - 1) % ring_length;
        return Err(SurfaceError::UnlikeInLine { at, place, before: wall_id(before), after: wall_id(after) });
    }
    let profiles = one_of_each(&kinds, walls);
    let fronts = Fronts::new(&trued.lines, &profiles);
    if fronts.planes.iter().all(Option::is_none) {
        return Err(SurfaceError::AllGables);
    }
    let mut failure = None;
    for (reach, apart) in LADDER {
        match attempt(&trued, &fronts, walls, CLUSTER * reach, FRAMING * apart) {
            Err(error @ (SurfaceError::Lost { .. } | SurfaceError::Unsound(_))) => {
                failure.get_or_insert(error);
            }
            answer => return answer,
        }
    }
    Err(failure.unwrap_or(SurfaceError::AllGables))
}

/// One sweep, tidied and checked.
fn attempt(
    trued: &Regular,
    fronts: &Fronts,
    walls: &[WallProfile],
    reach: f64,
    apart: f64,
) -> Result<Surface, SurfaceError> {
    let mut raw = sweep(trued, fronts, reach)?;
    tidy(&mut raw, apart);
    let mut surface = assemble(&raw, fronts, walls.len())?;
    surface.loops.clone_from(&trued.loops);
    surface.warnings = warnings(trued, &raw);
    check(&surface, walls).map_err(SurfaceError::Unsound)?;
    Ok(surface)
}

fn warnings(trued: &Regular, raw: &Raw) -> Vec<SurfaceWarning> {
    let first_wall = |set: u32| wall_id(raw.wall_sets[set as usize].first().copied().unwrap_or_default() as usize);
    let mut warnings: Vec<SurfaceWarning> = trued
        .moved
        .iter()
        .enumerate()
        .filter(|&(_, &moved)| moved > WORTH_TELLING)
        .map(|(wall, &moved)| SurfaceWarning::Regularised { wall: wall_id(wall), moved })
        .collect();
    let mut seen: Vec<WallId> = Vec::new();
    for &(set, at) in &raw.cheeks {
        let wall = first_wall(set);
        if !seen.contains(&wall) {
            seen.push(wall);
            warnings.push(SurfaceWarning::UprightCheek { wall, at });
        }
    }
    warnings.extend(raw.takeovers.iter().map(|t| SurfaceWarning::FlatterTookOver {
        steeper: first_wall(t.steeper),
        flatter: first_wall(t.flatter),
        at: t.at,
        height: t.height,
    }));
    warnings
}

fn wall_id(wall: usize) -> WallId {
    WallId(u32::try_from(wall).unwrap_or(u32::MAX))
}

/// The corner where a wall starts, and its place.
fn corner_of(loops: &[Vec<DVec2>], wall: usize) -> (CornerRef, DVec2) {
    let mut corner = wall;
    for (ring, corners) in loops.iter().enumerate() {
        if let Some(&place) = corners.get(corner) {
            return (CornerRef { ring, corner }, place);
        }
        corner -= corners.len();
    }
    (CornerRef { ring: 0, corner: 0 }, DVec2::ZERO)
}

/// A profile of each kind, in the order of the kinds.
fn one_of_each<'a>(kinds: &[usize], walls: &'a [WallProfile]) -> Vec<&'a WallProfile> {
    let mut profiles = Vec::new();
    for (kind, wall) in kinds.iter().zip(walls) {
        if *kind == profiles.len() {
            profiles.push(wall);
        }
    }
    profiles
}
