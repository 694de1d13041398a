//! How the plates stand to the walls as measured.

use crate::solution::{BedOut, Notice, NoticeLevel};
use geometry::plan::wall_ends;
use job::{Job, places};

/// A plate that stands off the line of its wall by less is bedded on it, mm:
/// no tape reads it.
const ON_THE_LINE: f64 = 0.5;

/// How the plate of every wall stands to the wall as measured.
pub fn of_walls(job: &Job) -> Vec<Option<BedOut>> {
    let [lines, plates] = [places(&job.loops), places(job.plates())];
    let bed = |wall: usize| {
        let ([from, to], [start, end]) = (wall_ends(&lines, wall)?, wall_ends(&plates, wall)?);
        let out = -(to - from).normalize_or_zero().perp();
        let bed = BedOut { start_mm: out.dot(from - start), end_mm: out.dot(to - end) };
        (bed.start_mm.abs().max(bed.end_mm.abs()) >= ON_THE_LINE).then_some(bed)
    };
    (0..job.walls.len()).map(bed).collect()
}

/// What the carpenter must know of it before he beds a plate.
pub fn notice(job: &Job) -> Option<Notice> {
    let beds = job.walls.iter().zip(of_walls(job)).filter_map(|(wall, bed)| Some((&wall.letter, bed?)));
    let beds: Vec<String> =
        beds.map(|(letter, bed)| format!("{letter} {}, {}", told(bed.start_mm), told(bed.end_mm))).collect();
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
