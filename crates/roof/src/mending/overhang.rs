//! Eaves that would close the gap in front of them: less overhang.

use super::faults::notice;
use crate::SolveError;
use crate::solution::Notice;
use job::Job;

/// Overhangs are made this much smaller at a time.
const LESS: f64 = 0.5;

/// An overhang smaller than this is none, mm: no fascia is fixed to it.
const LEAST: f64 = 20.0;

/// The job with less overhang all round, and what there is to say; `None` if
/// it was refused for something else, or there is no less.
pub fn made(job: &Job, error: &SolveError) -> Option<(Job, Notice)> {
    let SolveError::OverhangCloses { wall, .. } = error else { return None };
    let widest = job.walls.iter().filter_map(|w| w.overhang).fold(job.eaves.overhang, f64::max);
    if widest == 0.0 {
        return None;
    }
    let mut one = job.clone();
    one.eaves.overhang = less(job.eaves.overhang);
    for wall in &mut one.walls {
        wall.overhang = wall.overhang.map(less);
    }
    let text = format!(
        "The eaves of wall {wall} would meet those in front of them: all overhangs are drawn smaller, {:.0} mm in place \
         of {:.0} mm. Write `roof.eaves.overhang` as it is to be.",
        one.eaves.overhang, job.eaves.overhang
    );
    Some((one, notice("overhang-smaller", format!("wall {wall}"), text)))
}

/// The next smaller overhang, mm.
fn less(mm: f64) -> f64 {
    if mm * LESS < LEAST { 0.0 } else { (mm * LESS).round() }
}
