//! Marks: what every timber is called, and the order of the lists.
//!
//! Rafters are numbered along their wall (A1, A2 …); the rest by kind.

use crate::frame::station_wall;
use crate::frame::timber::{Role, Timber};
use crate::solution::MemberKind;
use geometry::surface::Surface;
use job::Job;

/// Marks, wall letters and list order of a frame's timbers.
pub struct Marks {
    /// A mark for every timber.
    pub names: Vec<String>,
    /// The wall letter of plates and rafters.
    pub walls: Vec<Option<String>>,
    /// Timbers that are built, in the order of the lists.
    pub order: Vec<usize>,
}

/// Words for the marks of the frame's own timbers.
const SPINES: &[(MemberKind, &str)] = &[
    (MemberKind::WallPlate, "Plate"),
    (MemberKind::RidgeBoard, "Ridge"),
    (MemberKind::HipRafter, "Hip"),
    (MemberKind::ValleyRafter, "Valley"),
    (MemberKind::Purlin, "Purlin"),
];

/// Words for the marks of what is fitted to the frame.
const PARTS: &[(MemberKind, &str)] = &[
    (MemberKind::Strut, "Strut"),
    (MemberKind::SolePlate, "Sole"),
    (MemberKind::Collar, "Collar"),
    (MemberKind::CeilingJoist, "Joist"),
    (MemberKind::Binder, "Binder"),
    (MemberKind::Hanger, "Hanger"),
    (MemberKind::AngleTie, "Tie"),
    (MemberKind::DragonTie, "Dragon"),
    (MemberKind::Trimmer, "Trimmer"),
    (MemberKind::CommonRafter, "Rafter"),
    (MemberKind::ValleyJack, "Jack"),
    (MemberKind::Stud, "Stud"),
    (MemberKind::GableLadder, "Rung"),
    (MemberKind::Noggin, "Noggin"),
    (MemberKind::Sprocket, "Sprocket"),
    (MemberKind::Fascia, "Fascia"),
    (MemberKind::Soffit, "Soffit"),
    (MemberKind::TiltingFillet, "Fillet"),
    (MemberKind::BargeBoard, "Barge"),
    (MemberKind::LayBoard, "Layboard"),
    (MemberKind::FishPlate, "Fish"),
    (MemberKind::Wedge, "Wedge"),
];

/// Name the timbers of a frame.
pub fn of_timbers(job: &Job, surface: &Surface, timbers: &[Timber]) -> Marks {
    let mut marks = Marks {
        names: vec![String::new(); timbers.len()],
        walls: vec![None; timbers.len()],
        order: Vec::with_capacity(timbers.len()),
    };
    number(job, timbers, SPINES, &mut marks);
    rafters(job, surface, timbers, &mut marks);
    number(job, timbers, PARTS, &mut marks);
    lengths(timbers, &mut marks);
    marks
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

/// Number the timbers of each kind in the order in which they were framed.
fn number(job: &Job, timbers: &[Timber], kinds: &[(MemberKind, &str)], marks: &mut Marks) {
    for &(kind, word) in kinds {
        let of_kind = timbers.iter().enumerate().filter(|(_, t)| t.kind == kind && t.is_numbered() && !t.is_rafter());
        for (count, (k, t)) in (1..).zip(of_kind) {
            let wall = match t.role {
                Role::Plate { wall } => Some(wall),
                Role::Fitted { wall } => wall,
                Role::Spine { .. } | Role::Rafter { .. } => None,
            };
            marks.walls[k] = wall.and_then(|w| job.walls.get(w.index())).map(|w| w.letter.clone());
            marks.names[k] = match (&marks.walls[k], t.role) {
                (Some(letter), Role::Plate { .. }) => format!("{word}-{letter}"),
                _ => format!("{word}-{count}"),
            };
            marks.order.push(k);
        }
    }
}

/// Rafters by wall, along the wall, from the plate up.
fn rafters(job: &Job, surface: &Surface, timbers: &[Timber], marks: &mut Marks) {
    let mut rafters: Vec<(usize, f64, f64, usize)> = timbers
        .iter()
        .enumerate()
        .filter(|(_, t)| t.is_numbered())
        .filter_map(|(k, t)| {
            let Role::Rafter { face } = t.role else { return None };
            // Square to the face: rafters along a gable may run out of square.
            let axis = -surface.face(face).plane.inward.perp();
            let at = axis.dot(t.foot);
            let wall = t.tails.first().map(|e| e.wall).or_else(|| station_wall(surface, face, axis, at))?;
            Some((wall.index(), at, t.dir.dot(t.foot), k))
        })
        .collect();
    rafters.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)).then(a.2.total_cmp(&b.2)));
    let mut last = usize::MAX;
    let mut count = 0;
    for (wall, _, _, k) in rafters {
        if wall != last {
            (last, count) = (wall, 0);
        }
        count += 1;
        marks.walls[k] = job.walls.get(wall).map(|w| w.letter.clone());
        marks.names[k] = format!("{}{count}", marks.walls[k].clone().unwrap_or_default());
        marks.order.push(k);
    }
}
