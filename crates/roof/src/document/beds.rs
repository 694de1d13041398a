//! How the plates stand to the walls as measured.

use crate::solution::{BedOut, Notice, NoticeLevel};
use geometry::DVec2;
use geometry::surface::WallId;
use job::Job;

/// A plate that stands off the line of its wall by less is bedded on it, mm:
/// no tape reads it.
const ON_THE_LINE: f64 = 0.5;

/// How the plate of a wall stands to the wall as measured.
pub fn of_wall(job: &Job, wall: WallId) -> Option<BedOut> {
    let [from, to] = ends(&job.loops, wall)?;
    let [start, end] = ends(job.plates(), wall)?;
    let out = -(to - from).normalize_or_zero().perp();
    let bed = BedOut { start_mm: out.dot(from - start), end_mm: out.dot(to - end) };
    (bed.start_mm.abs().max(bed.end_mm.abs()) >= ON_THE_LINE).then_some(bed)
}

/// Both ends of a wall, mm.
fn ends(loops: &[Vec<[f64; 2]>], wall: WallId) -> Option<[DVec2; 2]> {
    let mut k = wall.index();
    for ring in loops {
        if k < ring.len() {
            return Some([ring[k], ring[(k + 1) % ring.len()]].map(DVec2::from_array));
        }
        k -= ring.len();
    }
    None
}

/// What the carpenter must know of it before he beds a plate.
pub fn notice(job: &Job) -> Option<Notice> {
    let beds = job.walls.iter().enumerate().filter_map(|(k, wall)| {
        let bed = of_wall(job, WallId(k as u32))?;
        Some(format!("{} {}, {}", wall.letter, told(bed.start_mm), told(bed.end_mm)))
    });
    let beds: Vec<String> = beds.collect();
    (!beds.is_empty()).then(|| Notice {
        code: "plates-bedded-true".into(),
        level: NoticeLevel::Note,
        text: format!(
            "The plates are bedded true, off the faces of the walls as measured by so much where each wall starts and \
             where it ends: {}.",
            beds.join("; ")
        ),
        place: "plan".into(),
    })
}

fn told(mm: f64) -> String {
    match mm.round() {
        off if off > 0.0 => format!("{off:.0} mm out"),
        off if off < 0.0 => format!("{:.0} mm in", -off),
        _ => "on it".into(),
    }
}
