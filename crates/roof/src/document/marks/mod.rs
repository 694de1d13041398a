//! Marks: what every timber is called, and the order of the lists.
//!
//! A mark follows from where a timber is, never from how many others there
//! are: what comes or goes leaves the names of the rest alone. See
//! `docs/decisions/0021-marks.md`.

mod fitted;
mod grid;
mod rafters;
mod spines;

use crate::frame::Standing;
use crate::frame::timber::{Role, Timber};
use geometry::surface::{Surface, WallId};
use grid::Grid;
use job::Job;
use std::collections::BTreeSet;

/// Marks, wall letters and list order of a frame's timbers.
pub struct Marks {
    /// A mark for every timber.
    pub names: Vec<String>,
    /// The wall letter of plates and rafters.
    pub walls: Vec<Option<String>>,
    /// Timbers that are built, in the order of the lists.
    pub order: Vec<usize>,
    /// What goes by a rafter has this in its mark: the rafter's without the
    /// letters for its pieces up the slope, which an opening may add.
    stations: Vec<String>,
}

/// What rafters are numbered by: the places of a roof without openings, over
/// its own surface and over the same plan with one pitch all round. Where all
/// pitches are one, the two are the same.
pub struct Numbering {
    /// With the pitches of the job.
    pub plain: Vec<Standing>,
    /// With one pitch.
    pub even: Vec<Standing>,
}

/// The job with one pitch on all its walls; `None` if it has that already.
pub fn evened(job: &Job) -> Option<Job> {
    if job.walls.iter().all(|w| w.gable || w.pitch_deg == job.pitch_deg) {
        return None;
    }
    let mut even = job.clone();
    even.walls.iter_mut().for_each(|w| w.pitch_deg = even.pitch_deg);
    Some(even)
}

/// Names given so far: a second timber of one name gets a count behind it.
#[derive(Default)]
struct Given(BTreeSet<String>);

impl Given {
    /// A name that no other timber has; `count` is that of the timber in its
    /// row, from 1.
    fn unique(&mut self, name: &str, count: usize) -> String {
        let mut n = count;
        loop {
            let full = if n < 2 { name.to_owned() } else { format!("{name}x{n}") };
            if self.0.insert(full.clone()) {
                return full;
            }
            n += 1;
        }
    }
}

/// Name the timbers of a frame.
pub fn of_timbers(job: &Job, surface: &Surface, timbers: &[Timber], numbering: &Numbering) -> Marks {
    let mut marks = Marks {
        names: vec![String::new(); timbers.len()],
        walls: timbers.iter().map(|t| listed_under(t).and_then(|w| letter(job, w))).collect(),
        order: Vec::with_capacity(timbers.len()),
        stations: vec![String::new(); timbers.len()],
    };
    let mut given = Given::default();
    let grid = Grid::of(job, surface, numbering);
    spines::name(surface, timbers, &mut marks, &mut given);
    rafters::name(job, surface, timbers, &grid, &mut marks, &mut given);
    fitted::name(job, surface, timbers, &grid, &mut marks, &mut given);
    lengths(timbers, &mut marks);
    marks
}

fn listed_under(t: &Timber) -> Option<WallId> {
    match t.role {
        Role::Plate { wall } => Some(wall),
        Role::Fitted { wall } => wall,
        Role::Spine { .. } | Role::Rafter { .. } => None,
    }
}

fn letter(job: &Job, wall: WallId) -> Option<String> {
    job.walls.get(wall.index()).map(|w| w.letter.clone())
}

/// Letter the lengths of one timber, from the foot: `Ridge-1a`, `Ridge-1b`.
fn lengths(timbers: &[Timber], marks: &mut Marks) {
    let mut order = Vec::with_capacity(timbers.len());
    for k in core::mem::take(&mut marks.order) {
        order.push(k);
        if timbers[k].lengthened.as_ref().is_none_or(|l| l.parts == 1) {
            continue;
        }
        let (name, wall) = (marks.names[k].clone(), marks.walls[k].clone());
        for (id, t) in timbers.iter().enumerate() {
            if let Some(l) = t.lengthened.as_ref().filter(|l| l.first.index() == k) {
                let part = job::wall_letter(l.part).to_lowercase();
                marks.names[id] = format!("{name}{part}");
                marks.walls[id].clone_from(&wall);
                if l.part > 0 {
                    order.push(id);
                }
            }
        }
    }
    marks.order = order;
}
