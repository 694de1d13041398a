//! Areas, edges and straps of a roof as an estimate of hours wants them; what is ordered is counted elsewhere.

use geometry::Angle;
use roof::solution::{FaceOut, LineKind, LineOut, Solution};

/// Millimetres in a metre.
const M: f64 = 1000.0;

/// What is covered, m² on the slope: the faces, with the strips past the plates at eaves and verges. The corners of
/// these strips are left out.
pub(super) fn covered_m2(solution: &Solution) -> f64 {
    let faces: f64 = solution.faces.iter().map(|face| face.slope_area_m2).sum();
    let walls = solution.plan.walls.iter();
    let eaves: f64 = walls
        .filter_map(|wall| {
            let cos = Angle::deg(wall.pitch_deg?).cos();
            Some(wall.length_mm / M * wall.overhang_mm / M / cos)
        })
        .sum();
    let past_gables = solution.plan.walls.iter().filter(|wall| wall.gable).map(|wall| wall.overhang_mm);
    let verge = past_gables.fold(0.0, f64::max);
    let verges = length(solution, |line| line.kind == LineKind::Verge) * verge / M;
    let all = faces + eaves + verges;
    if all.is_finite() { all } else { 0.0 }
}

/// Edges with lead, cappings or gutters, m: every line of the roof but breaks of pitch.
pub(super) fn edges_m(solution: &Solution) -> f64 {
    length(solution, |line| line.kind != LineKind::PitchBreak)
}

fn length(solution: &Solution, which: impl Fn(&LineOut) -> bool) -> f64 {
    solution.lines.iter().filter(|line| which(line)).map(|line| line.length_mm / M).sum()
}

/// Straps at most so far apart, m: along the plates under slopes, and up both sides of gables.
pub(super) fn straps(solution: &Solution, apart: f64) -> f64 {
    let along = |length: f64| (length / apart).ceil() + 1.0;
    let sloping = |face: &FaceOut, wall: &str| face.walls.iter().any(|one| one == wall);
    let plates = solution.plan.walls.iter().filter(|wall| !wall.gable);
    let plates = plates.filter(|wall| solution.faces.iter().any(|face| sloping(face, &wall.id)));
    let plates: f64 = plates.map(|wall| along(wall.length_mm / M)).sum();
    let verges = solution.lines.iter().filter(|line| line.kind == LineKind::Verge);
    let verges: f64 = verges.map(|line| along(line.length_mm / M)).sum();
    plates + verges
}
