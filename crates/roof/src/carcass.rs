//! The frame of rafters while other members are fitted to it.

use crate::SolveError;
use crate::fitted::Hatch;
use crate::frame::Frame;
use crate::frame::heights::Heights;
use crate::frame::timber::{Made, Notch, Timber, TimberId};
use crate::openings::{Trimmed, Void};
use crate::shape::{self, Shape};
use crate::solution::{MemberKind, Notice, NoticeLevel};
use geometry::surface::Surface;
use geometry::{Cell, DVec3, Plane};
use job::Job;
use smallvec::SmallVec;

/// Overlaps thinner than this are contact, mm: well over the rounding of
/// coordinates, well under what the check of the frame would call a clash.
pub const TOUCH: f64 = 1e-4;

/// The frame with the wood of every timber so far.
pub struct Carcass<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its surface.
    pub surface: &'a Surface,
    /// Heights that all timbers share.
    pub heights: Heights,
    timbers: Vec<Timber>,
    bodies: Vec<Vec<Cell<Made>>>,
    boxes: Vec<(DVec3, DVec3)>,
    remarks: Vec<Notice>,
    /// Holes in the slopes, as they were trimmed.
    pub trimmed: Vec<Trimmed>,
    /// Hatches in the ceiling, as they were trimmed.
    pub hatches: Vec<Hatch>,
    /// Joist hangers round chimneys in the ceiling.
    pub ceiling_hangers: u32,
    /// Space that openings want free of timber.
    pub voids: Vec<Void>,
}

impl<'a> Carcass<'a> {
    /// The wood of a frame.
    ///
    /// # Errors
    /// When a timber cannot be cut as asked.
    pub fn of(job: &'a Job, surface: &'a Surface, frame: Frame) -> Result<Self, SolveError> {
        let mut carcass = Self {
            job,
            surface,
            heights: frame.heights,
            timbers: Vec::with_capacity(frame.timbers.len()),
            bodies: Vec::with_capacity(frame.timbers.len()),
            boxes: Vec::with_capacity(frame.timbers.len()),
            remarks: Vec::new(),
            trimmed: Vec::new(),
            hatches: Vec::new(),
            ceiling_hangers: 0,
            voids: Vec::new(),
        };
        for mut timber in frame.timbers {
            let cells = if timber.gone { Vec::new() } else { shape::cells_of(job, &carcass.heights, &mut timber)? };
            carcass.take(timber, cells);
        }
        // What is fitted later must find the wood that is really there.
        carcass.settle();
        Ok(carcass)
    }

    /// Add a timber with its wood.
    pub fn take(&mut self, timber: Timber, cells: Vec<Cell<Made>>) -> TimberId {
        let id = TimberId(self.timbers.len() as u32);
        self.boxes.push(bounds_of(&cells));
        self.bodies.push(cells);
        self.timbers.push(timber);
        id
    }

    /// Timbers that are built, with their ids.
    pub fn built(&self) -> impl Iterator<Item = (TimberId, &Timber)> {
        self.timbers.iter().enumerate().filter(|(_, t)| !t.gone).map(|(k, t)| (TimberId(k as u32), t))
    }

    /// A timber.
    pub fn timber(&self, id: TimberId) -> &Timber {
        &self.timbers[id.index()]
    }

    /// The wood of a timber, before the notches that were asked for since.
    pub fn wood(&self, id: TimberId) -> &[Cell<Made>] {
        &self.bodies[id.index()]
    }

    /// The id that the next timber added will have.
    pub fn next_id(&self) -> TimberId {
        TimberId(self.timbers.len() as u32)
    }

    /// Add a fitted timber.
    pub fn add(&mut self, timber: Timber) -> TimberId {
        let cells = match &timber.body {
            crate::frame::timber::Body::Fitted { cells, .. } => cells.clone(),
            crate::frame::timber::Body::Upright => Vec::new(),
        };
        self.take(timber, cells)
    }

    /// Take a notch out of a timber.
    pub fn notch(&mut self, id: TimberId, notch: Notch) {
        self.timbers[id.index()].notches.push(notch);
    }

    /// Change a timber that is already there; its wood is the caller's care.
    pub fn timber_mut(&mut self, id: TimberId) -> &mut Timber {
        &mut self.timbers[id.index()]
    }

    /// Put other wood in place of a timber's.
    pub fn set_wood(&mut self, id: TimberId, cells: Vec<Cell<Made>>) {
        self.boxes[id.index()] = bounds_of(&cells);
        self.timbers[id.index()].gone = cells.is_empty();
        self.bodies[id.index()] = cells;
    }

    /// Timbers whose wood shares space with these cells, in rising order.
    /// Notches asked for since are not yet out of it.
    pub fn in_the_way(&self, cells: &[Cell<Made>]) -> Vec<TimberId> {
        let (low, high) = bounds_of(cells);
        let near = |k: &usize| {
            let (l, h) = self.boxes[*k];
            low.cmplt(h - TOUCH).all() && l.cmplt(high - TOUCH).all()
        };
        let solids: Vec<Convex<'_>> = cells.iter().map(Convex::of).collect();
        let overlaps = |k: &usize| {
            self.bodies[*k].iter().any(|b| {
                let around = bounds(&b.points);
                solids.iter().any(|c| c.overlaps(b, around))
            })
        };
        (0..self.timbers.len())
            .filter(|k| !self.timbers[*k].gone)
            .filter(near)
            .filter(overlaps)
            .map(|k| TimberId(k as u32))
            .collect()
    }

    /// The box around the wood of a timber: its lowest and highest corner.
    pub fn box_of(&self, id: TimberId) -> (DVec3, DVec3) {
        self.boxes[id.index()]
    }

    /// Timbers whose bounding boxes come within [`TOUCH`] of that of these
    /// cells, in rising order.
    pub fn beside(&self, cells: &[Cell<Made>]) -> Vec<TimberId> {
        let (low, high) = bounds_of(cells);
        (0..self.timbers.len())
            .filter(|k| !self.timbers[*k].gone)
            .filter(|k| low.cmple(self.boxes[*k].1 + TOUCH).all() && self.boxes[*k].0.cmple(high + TOUCH).all())
            .map(|k| TimberId(k as u32))
            .collect()
    }

    /// The space of openings that a timber of this kind keeps out of. Ceiling
    /// joists are cut and trimmed round chimneys and hatches when all are laid.
    pub fn voids_for(&self, kind: MemberKind) -> impl Iterator<Item = &Cell<Made>> {
        self.voids.iter().filter(move |v| !(v.plumb && kind == MemberKind::CeilingJoist)).map(|v| &v.cell)
    }

    /// Whether these cells reach into an opening.
    pub fn in_an_opening(&self, cells: &[Cell<Made>]) -> bool {
        self.voids.iter().any(|v| cells.iter().any(|c| share_space(&v.cell, c)))
    }

    /// Something the carpenter must know.
    pub fn remark(&mut self, level: NoticeLevel, code: &str, place: impl Into<String>, text: impl Into<String>) {
        self.remarks.push(Notice { code: code.into(), level, text: text.into(), place: place.into() });
    }

    /// Make all cuts and notches that were asked for so far.
    pub fn settle(&mut self) {
        for k in 0..self.timbers.len() {
            let cells = shape::cut(&mut self.timbers[k], core::mem::take(&mut self.bodies[k]));
            self.bodies[k] = cells;
        }
    }

    /// The frame with everything fitted, its solids, and what there is to say.
    pub fn finished(mut self) -> (Frame, Vec<Option<Shape>>, Vec<Notice>) {
        let bodies = core::mem::take(&mut self.bodies);
        let shapes = self
            .timbers
            .iter_mut()
            .zip(bodies)
            .map(|(timber, cells)| (!timber.gone).then(|| shape::joined(timber, cells)))
            .collect();
        (Frame { heights: self.heights, timbers: self.timbers, standing: None }, shapes, self.remarks)
    }
}

/// The box around points: its lowest and highest corner.
pub fn bounds(points: &[DVec3]) -> (DVec3, DVec3) {
    box_around(points.iter())
}

/// The box around some wood.
pub fn bounds_of(cells: &[Cell<Made>]) -> (DVec3, DVec3) {
    box_around(cells.iter().flat_map(|c| &c.points))
}

/// The box around points.
pub fn box_around<'a>(points: impl Iterator<Item = &'a DVec3>) -> (DVec3, DVec3) {
    points.fold((DVec3::INFINITY, DVec3::NEG_INFINITY), |(low, high), p| (low.min(*p), high.max(*p)))
}

/// Whether two convex cells overlap by more than [`TOUCH`].
pub fn share_space(a: &Cell<Made>, b: &Cell<Made>) -> bool {
    let (around, own) = (bounds(&a.points), bounds(&b.points));
    boxes_meet(around, own) && Convex::of(b).overlaps(a, around)
}

/// A cell with its box and the planes of its faces, to hold many others against.
struct Convex<'a> {
    cell: &'a Cell<Made>,
    around: (DVec3, DVec3),
    sides: SmallVec<[Plane; 12]>,
}

impl<'a> Convex<'a> {
    fn of(cell: &'a Cell<Made>) -> Self {
        Self { cell, around: bounds(&cell.points), sides: inset_faces(cell).collect() }
    }

    /// Whether another cell, with its box, overlaps this one by more than [`TOUCH`].
    fn overlaps(&self, other: &Cell<Made>, around: (DVec3, DVec3)) -> bool {
        // Most pairs are parted by their boxes, most others by a face of one of them.
        boxes_meet(around, self.around)
            && !self.sides.iter().any(|side| outside(other, *side))
            && !inset_faces(other).any(|side| outside(self.cell, side))
            && other.within(self.sides.iter().copied(), Made::Inner).is_some()
    }
}

/// Whether two boxes overlap by more than [`TOUCH`].
fn boxes_meet((low, high): (DVec3, DVec3), (l, h): (DVec3, DVec3)) -> bool {
    !(low.cmpge(h - TOUCH).any() || l.cmpge(high - TOUCH).any())
}

/// Whether all of a cell lies outside a plane.
fn outside(cell: &Cell<Made>, plane: Plane) -> bool {
    cell.points.iter().all(|p| plane.distance(*p) >= 0.0)
}

/// The planes of a cell's faces, moved inwards by [`TOUCH`].
fn inset_faces(cell: &Cell<Made>) -> impl Iterator<Item = Plane> + '_ {
    cell.faces.iter().map(|face| {
        let at = |k: usize| cell.points[face.ring[k] as usize];
        let normal = (1..face.ring.len() - 1)
            .map(|k| (at(k) - at(0)).cross(at(k + 1) - at(0)))
            .fold(DVec3::ZERO, |s, n| s + n)
            .normalize_or_zero();
        Plane { normal, offset: normal.dot(at(0)) - TOUCH }
    })
}
