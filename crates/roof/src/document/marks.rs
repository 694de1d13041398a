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

/// Name the timbers of a frame.
pub fn of_timbers(job: &Job, surface: &Surface, timbers: &[Timber]) -> Marks {
    let mut names = vec![String::new(); timbers.len()];
    let mut walls = vec![None; timbers.len()];
    let letter = |k: usize| job.walls.get(k).map(|w| w.letter.clone());
    let mut order = Vec::with_capacity(timbers.len());
    let spines = [
        (MemberKind::WallPlate, "Plate"),
        (MemberKind::RidgeBoard, "Ridge"),
        (MemberKind::HipRafter, "Hip"),
        (MemberKind::ValleyRafter, "Valley"),
        (MemberKind::Purlin, "Purlin"),
    ];
    for (kind, word) in spines {
        let mut count = 0;
        for (k, t) in timbers.iter().enumerate().filter(|(_, t)| t.kind == kind && !t.gone) {
            count += 1;
            names[k] = match t.role {
                Role::Plate { wall } => {
                    walls[k] = letter(wall.index());
                    format!("{word}-{}", walls[k].clone().unwrap_or_default())
                }
                _ => format!("{word}-{count}"),
            };
            order.push(k);
        }
    }
    // Rafters by wall, along the wall, from the plate up.
    let mut rafters: Vec<(usize, f64, f64, usize)> = timbers
        .iter()
        .enumerate()
        .filter(|(_, t)| !t.gone)
        .filter_map(|(k, t)| {
            let Role::Rafter { face } = t.role else { return None };
            let axis = -t.dir.perp();
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
        walls[k] = letter(wall);
        names[k] = format!("{}{count}", walls[k].clone().unwrap_or_default());
        order.push(k);
    }
    Marks { names, walls, order }
}
