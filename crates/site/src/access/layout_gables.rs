//! How high gables go.

use roof::solution::Solution;

/// The top of the gable on a wall above the plates at the datum, mm; nothing without one.
pub(super) fn gable_apex(solution: &Solution, wall: &str) -> Option<f64> {
    let of_wall = solution.gables.iter().filter(|gable| gable.wall == wall);
    let tops = of_wall.flat_map(|gable| gable.outline.iter().map(|point| point[2]));
    tops.fold(None, |highest: Option<f64>, top| Some(highest.map_or(top, |highest| highest.max(top))))
}
