//! Level ridges over plates that are out of parallel.
//!
//! Two slopes that face one another over plates out of parallel meet in a line
//! that falls. A ridge is kept level instead by turning the slope of one wall
//! until its level lines run with the other's: the plane stays flat, and rises
//! over its own plate towards one end. There its rafters stand on firring.
//!
//! `pairs` finds slopes that meet so, `turning` puts one of them on another
//! line; here it is done pair by pair.

mod pairs;
mod turning;

use crate::SolveError;
use crate::profiles;
use crate::surface_words;
use geometry::DVec2;
use geometry::plan::wall_ends;
use geometry::surface::{self, Surface, WallId, WallProfile};
use job::{Job, RidgeRun, places};
use turning::Turn;

/// Slopes turned from one another by less than this (as a sine) are parallel:
/// truing up leaves no smaller turn.
const PARALLEL: f64 = 1e-9;

/// Two plates are told to be out of parallel from this on, mm over a wall:
/// less is not worth a word.
const WORTH_A_WORD: f64 = 1.0;

/// Rounds of levelling, a pair of slopes in each: a wing's ridge may be seen
/// only when the main one is level.
const ROUNDS: usize = 12;

/// What was done about plates out of parallel, in the order in which it was.
#[derive(Clone, Debug, PartialEq)]
pub struct OutOfParallel {
    /// The wall that is packed, or would be.
    pub wall: WallId,
    /// The wall across the ridge.
    pub across: WallId,
    /// How far the two plates run together over the length of the first, mm.
    pub by: f64,
    /// Most firring under its rafters, mm.
    pub firring: f64,
    /// The pitch at which the firring would be as much as the job allows, degrees.
    pub pitch_deg: f64,
    /// How much the ridge falls over its length if nothing is packed, mm.
    pub falls: f64,
    /// The two slopes face the same way and are to be one.
    pub one: bool,
    /// Whether the wall is packed.
    pub packed: bool,
}

impl OutOfParallel {
    /// Whether it is worth a word.
    pub fn is_told(&self) -> bool {
        self.by >= WORTH_A_WORD
    }
}

/// A roof surface with its ridges level where the job wants them so.
#[derive(Clone, Debug)]
pub struct Levelled {
    /// The surface.
    pub surface: Surface,
    /// For every wall whose slope was turned: its plate line.
    pub plates: Vec<Option<PlateLine>>,
    /// The corners of the plates, one for the start of every wall.
    pub corners: Vec<DVec2>,
    /// What there is to say.
    pub told: Vec<OutOfParallel>,
}

/// The line that a plate is bedded on, where its slope was turned off it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateLine {
    /// Where it starts, mm.
    pub from: DVec2,
    /// Unit vector along it, the building on its left.
    pub dir: DVec2,
}

impl PlateLine {
    /// Where a line through `p` along `dir` crosses the plate line, as a
    /// distance from `p`; `None` if it runs along the plate.
    pub fn crossing(&self, p: DVec2, dir: DVec2) -> Option<f64> {
        let square = self.dir.perp();
        let toward = square.dot(dir);
        (toward.abs() > PARALLEL).then(|| square.dot(self.from - p) / toward)
    }
}

/// The roof surface of a job.
///
/// # Errors
/// When there is no roof over its plan.
pub fn surface_of(job: &Job) -> Result<Levelled, SolveError> {
    let profiles: Vec<WallProfile> = job.walls.iter().map(profiles::of_wall).collect();
    let surface = surface::solve(&places(&job.loops), &profiles)
        .map_err(|source| SolveError::Surface { words: surface_words::of(job, &source), source })?;
    // As the surface has trued them.
    let plates = surface.loops.clone();
    let corners = plates.iter().flatten().copied().collect();
    let mut levelled = Levelled { surface, plates: vec![None; job.walls.len()], corners, told: Vec::new() };
    if job.setting_out.ridge == RidgeRun::AsItFalls {
        return Ok(levelled);
    }
    let mut loops = plates.clone();
    for _ in 0..ROUNDS {
        let Some(Turn { told, faces, loops: turned }) = turning::next(job, &levelled, &plates, &loops) else { break };
        let trial =
            turned.filter(|_| told.packed).and_then(|loops| Some((surface::solve(&loops, &profiles).ok()?, loops)));
        levelled.told.retain(|known| known.wall != told.wall || known.across != told.across);
        let Some((surface, turned)) = trial else {
            levelled.told.push(OutOfParallel { packed: false, ..told });
            continue;
        };
        let walls: Vec<WallId> = faces.iter().flat_map(|f| levelled.surface.face(*f).walls.clone()).collect();
        for wall in walls {
            let line = |[from, to]: [DVec2; 2]| PlateLine { from, dir: (to - from).normalize_or_zero() };
            levelled.plates[wall.index()] = wall_ends(&plates, wall.index()).map(line);
        }
        loops = turned;
        levelled.surface = surface;
        levelled.told.push(told);
    }
    Ok(levelled)
}
