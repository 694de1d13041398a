//! What a carpenter does where a frame does not come out: the next best thing,
//! and he says so.
//!
//! A frame that passes its check is never touched. One that does not is framed
//! again: a timber in the way of a firmer one is trimmed to it, and left out if
//! that does not do; walls that are all but in line are roofed as one. The
//! roof is refused only when nothing helps.

mod faults;
mod in_line;
mod overhang;
mod roofed_alike;
mod words;

pub use faults::{Fault, settle_fitted};
pub use words::of_frame as remarks;

use crate::SolveError;
use crate::solution::Solution;
use crate::solve::{Failure, attempt};
use job::Job;

/// Most times that a frame is framed again: each round trims or leaves out one
/// timber at least, and a roof that needs more has something else wrong.
const MOST_ROUNDS: usize = 12;

/// What is done otherwise than the rules of framing ask. Timbers go by their
/// number in the frame, which no mend changes.
#[derive(Clone, Debug, Default)]
pub struct Mends {
    /// The second of each is trimmed to the first, whatever else parts them.
    pub apart: Vec<[usize; 2]>,
    /// Timbers left out.
    pub without: Vec<usize>,
    /// A long line whose timber finds no room goes without one.
    pub bare_lines: bool,
}

/// Frame a job whose frame failed; `failure` says how.
///
/// # Errors
/// The failure, when nothing helps.
pub fn mended(job: &Job, failure: Failure) -> Result<Solution, SolveError> {
    if !failure.can_be_mended() {
        return Err(failure.into_error());
    }
    // Each wall is roofed as a longer one and overhangs only shrink, so this ends.
    if let Failure::Refused(error) = &failure
        && let Some((one, told)) = roofed_alike::made(job, error).or_else(|| overhang::made(job, error))
    {
        let solved = attempt(&one, &Mends::default()).or_else(|next| mended(&one, next));
        return match solved {
            Ok(mut solution) => {
                solution.notices.push(told);
                solution.notices.sort_by_key(|n| n.level);
                Ok(solution)
            }
            Err(_) => Err(failure.into_error()),
        };
    }
    let straight = in_line::made(job);
    // An opening that fits nowhere near a line may fit where that line is none.
    if matches!(failure, Failure::Refused(SolveError::Opening { .. })) && straight.is_none() {
        return Err(failure.into_error());
    }
    // Walls are moved first when a line between their slopes is what fails.
    let lines_fail = matches!(failure, Failure::Refused(_));
    for bare_lines in [false, true] {
        let own = || rounds(job, bare_lines);
        let moved = || {
            straight.as_ref().and_then(|(moved, walls)| {
                let mut solution = rounds(moved, bare_lines)?;
                words::of_walls(job, walls, &mut solution);
                Some(solution)
            })
        };
        let found = if lines_fail { moved().or_else(own) } else { own().or_else(moved) };
        if let Some(solution) = found {
            return Ok(solution);
        }
    }
    Err(failure.into_error())
}

/// Frame a job again and again, each time mending what was found wrong.
fn rounds(job: &Job, bare_lines: bool) -> Option<Solution> {
    let mut mends = Mends { bare_lines, ..Mends::default() };
    for _ in 0..MOST_ROUNDS {
        match attempt(job, &mends) {
            Ok(solution) => return Some(solution),
            Err(Failure::Faulty(faults)) => {
                if !faults::mend(&faults, &mut mends) {
                    return None;
                }
            }
            Err(Failure::Refused(_)) => return None,
        }
    }
    None
}
