//! A hole in a slope: what an opening or a dormer needs cut out of the rafters.

use super::{Misfit, Slope, rule};
use crate::SolveError;
use crate::dormers::Layout;
use crate::frame::heights::Heights;
use geometry::surface::{FaceId, Surface, WallId};
use geometry::{DVec2, DVec3};
use job::{Distance, Dormer, Job, Opening, OpeningKind};

/// An opening is at least this wide and high, mm: a smaller one is a hole to
/// drill, not to trim.
pub const LEAST_SIZE: f64 = 50.0;

/// What a dormer is called in refusals.
pub const DORMER: &str = "dormer";

/// Trimming rafters lie under at least this much of a dormer's cheeks, mm
/// (rule of the trade: a stud bears on at least half a rafter).
const LEAST_UNDER_CHEEK: f64 = 25.0;

/// A dormer's hole is at least this long up the slope, mm: less lets no light in.
const LEAST_HOLE: f64 = 200.0;

/// Whose hole it is: an index into the job's lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Owner {
    /// [`Job::openings`].
    Opening(usize),
    /// [`Job::dormers`].
    Dormer(usize),
}

/// A rectangle in a slope that must be clear of rafters and trimmers.
#[derive(Clone, Debug, PartialEq)]
pub struct Hole {
    /// Whose it is.
    pub owner: Owner,
    /// Its name in the job.
    pub name: String,
    /// What it is for.
    pub what: &'static str,
    /// The wall that it is measured from.
    pub wall: WallId,
    /// Letter of that wall.
    pub letter: String,
    /// The face that it lies in.
    pub face: FaceId,
    /// The slope of that face.
    pub slope: Slope,
    /// Its sides, along the axis of the slope, mm.
    pub x: [f64; 2],
    /// Its lower and upper edge, up the slope on the tops of the rafters, mm.
    pub s: [f64; 2],
    /// How far its trimming rafters may stand outside its sides, mm.
    pub slack: f64,
    /// What lies on the slope round it, in plan along the axis and inwards
    /// from the plate line, anticlockwise; nothing but the hole if empty.
    pub cover: Vec<DVec2>,
}

/// A hole is made wider than asked by at most this many rafter thicknesses, to
/// let its trimming rafters pass two fixed rafters that touch.
const WIDEST_SHIFT: f64 = 2.5;

impl Hole {
    /// Refuse it.
    pub fn refused(&self, misfit: Misfit) -> SolveError {
        SolveError::Opening {
            what: self.what,
            name: self.name.clone(),
            wall: self.letter.clone(),
            misfit: Box::new(misfit),
            nearest: None,
        }
    }

    /// Its reach inwards on the tops of the rafters, as the plane's offset, mm.
    pub fn inward(&self) -> [f64; 2] {
        self.s.map(|s| self.slope.plane.offset + self.slope.inward(s, 0.0))
    }

    /// Its corners on the tops of the rafters, anticlockwise from the lower
    /// corner at the start of the wall.
    pub fn corners(&self) -> [DVec3; 4] {
        let ([a, b], [low, high]) = (self.x, self.s);
        [(a, low), (b, low), (b, high), (a, high)].map(|(x, s)| self.slope.point(x, s))
    }
}

/// The trade's word for an opening.
pub const fn word(kind: OpeningKind) -> &'static str {
    match kind {
        OpeningKind::RoofWindow => "roof window",
        OpeningKind::Chimney => "chimney",
        OpeningKind::Hatch => "hatch",
    }
}

/// The hole that an opening in a slope needs.
///
/// # Errors
/// When its wall carries no slope, or its sizes are none.
pub fn of_opening(
    job: &Job,
    surface: &Surface,
    heights: &Heights,
    k: usize,
    opening: &Opening,
) -> Result<Hole, SolveError> {
    let what = word(opening.kind);
    let letter = job.walls.get(opening.wall).map_or_else(String::new, |w| w.letter.clone());
    let refused = |misfit: Misfit| SolveError::Opening {
        what,
        name: opening.name.clone(),
        wall: letter.clone(),
        misfit: Box::new(misfit),
        nearest: None,
    };
    let face = surface.face_of_wall.get(opening.wall).copied().flatten();
    let (Some(face), Some(start)) = (face, start_of(surface, opening.wall)) else {
        return Err(refused(Misfit::NoSlope));
    };
    let sound = |size: f64| size >= LEAST_SIZE && size.is_finite();
    if !(sound(opening.width) && sound(opening.height) && opening.along.is_finite()) {
        return Err(refused(Misfit::NoSize));
    }
    let slope = Slope::new(surface.face(face).plane, heights.upstand);
    let start = slope.axis.dot(start);
    let per_plan = 1.0 / slope.cos;
    let (up, on_slope) = match opening.up {
        Distance::Slope(up) => (up, opening.height),
        Distance::Plan(up) => (up * per_plan, opening.height * per_plan),
    };
    let (x, s) = if opening.kind == OpeningKind::Chimney {
        let clear = rule::from_face(job, opening.flue_wall);
        let depth = job.timber.rafter.size.depth;
        let from = up * slope.cos - clear;
        let to = up * slope.cos + opening.height + clear;
        // The stack is upright, the trimmers are square to the slope: below it
        // the lower trimmer's underside is nearest to it, above it the upper
        // trimmer's top.
        let s = [(from - depth * slope.sin) * per_plan, to * per_plan];
        ([opening.along - clear, opening.along + opening.width + clear], s)
    } else {
        ([opening.along, opening.along + opening.width], [up, up + on_slope])
    };
    if !s.iter().all(|s| s.is_finite()) {
        return Err(refused(Misfit::NoSize));
    }
    Ok(Hole {
        owner: Owner::Opening(k),
        name: opening.name.clone(),
        what,
        wall: WallId(opening.wall as u32),
        letter,
        face,
        slope,
        x: x.map(|x| start + x),
        s,
        slack: WIDEST_SHIFT * job.timber.rafter.size.thickness,
        cover: Vec::new(),
    })
}

/// The hole that a dormer needs.
///
/// # Errors
/// When its sizes do not make a dormer on its slope.
pub fn of_dormer(
    job: &Job,
    surface: &Surface,
    heights: &Heights,
    k: usize,
    dormer: &Dormer,
) -> Result<Hole, SolveError> {
    let letter = job.walls.get(dormer.wall).map_or_else(String::new, |w| w.letter.clone());
    let layout = Layout::of(job, surface, heights, dormer).map_err(|misfit| SolveError::Opening {
        what: DORMER,
        name: dormer.name.clone(),
        wall: letter.clone(),
        misfit: Box::new(misfit),
        nearest: None,
    })?;
    let [x, s] = layout.hole();
    let hole = Hole {
        owner: Owner::Dormer(k),
        name: dormer.name.clone(),
        what: DORMER,
        wall: layout.wall,
        letter,
        face: layout.face,
        slope: layout.slope,
        x,
        s,
        slack: layout.plate.depth - LEAST_UNDER_CHEEK,
        cover: layout.cover(),
    };
    if s[1] - s[0] < LEAST_HOLE {
        return Err(hole.refused(Misfit::PlateLow { higher: (LEAST_HOLE - (s[1] - s[0])) * layout.slope.sin }));
    }
    Ok(hole)
}

/// The corner at which a wall starts.
pub fn start_of(surface: &Surface, wall: usize) -> Option<DVec2> {
    surface.wall_ends(WallId(wall as u32)).map(|[start, _]| start)
}
