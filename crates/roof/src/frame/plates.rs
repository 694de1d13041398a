//! Wall plates: one along every sloping wall.

use super::PARALLEL;
use super::gable_ends::{RunOut, run_out};
use super::heights::{Heights, starts_upright};
use super::timber::{Body, CutUse, EndOn, Made, Role, Timber, Top};
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::{ArcKind, FaceId, Surface, WallId};
use geometry::{Angle, ConvexPlan, DVec2, HalfPlan};
use job::Job;

/// Plates are drawn past their corners by this many widths before they are
/// cut, enough for corners down to about 3°.
const DRAWN_PAST: f64 = 24.0;

/// An end of an eaves line is at the corner of the plan when it misses it by
/// less, mm: the framing tidy of a surface moves no node further.
const AT_CORNER: f64 = 0.5;

/// Plates whose heights differ by less are level with one another, mm: the
/// contact gap of the contract.
const LEVEL: f64 = 0.05;

/// What a plate does at one of its ends.
enum End {
    /// It meets the plate of the next wall at the corner.
    Corner,
    /// It runs on to the outside of the next wall, whose plate is higher or lower.
    Outside,
    /// It runs past the corner by this much, mm (0: it stops there).
    Past(f64),
    /// It stops short of the corner, at this distance along the wall, mm.
    Short(f64),
}

/// Frame the plates. Where two of them meet, both are drawn well past their
/// corner: [`super::plate_corners`] joins them. On a half hip, or where plates lie at
/// different heights, the upper plate stops where the rafters of the lower
/// slope pass over it.
pub fn place(job: &Job, surface: &Surface, heights: &Heights) -> Vec<Timber> {
    let width = job.timber.plate.depth;
    let mut out = Vec::new();
    let mut first = 0;
    for roof_lines in &surface.loops {
        // Where a slope was turned off its plate, the plates keep to their walls.
        let ring = &on_walls(heights, first, roof_lines);
        let n = ring.len();
        let slid = |k: usize| ring[k % n].distance(roof_lines[k % n]);
        let dir = |k: usize| (ring[(k + 1) % n] - ring[k % n]).normalize_or_zero();
        for k in 0..n {
            let wall = WallId((first + k) as u32);
            let Some(face) = surface.face_of_wall.get(wall.index()).copied().flatten() else { continue };
            let d = dir(k);
            let length = (ring[(k + 1) % n] - ring[k]).length();
            let Some([from, to]) = eaves_reach(surface, face, ring[k], d, length) else { continue };
            let (before, after) = ((k + n - 1) % n, (k + 1) % n);
            let neighbour = |g: usize, turn: f64| {
                let other = WallId((first + g) as u32);
                let upright = job.walls.get(other.index()).is_some_and(starts_upright);
                if upright && turn > PARALLEL {
                    End::Past(heights.overhang(other))
                } else if upright || turn <= PARALLEL && !level_with(surface, wall, other) || turn.abs() <= PARALLEL {
                    End::Past(0.0)
                } else if !level_with(surface, wall, other) {
                    End::Outside
                } else {
                    End::Corner
                }
            };
            let ends = [
                if from > AT_CORNER + slid(k) {
                    End::Short(from + clearance(job, surface, heights, face, ring[k] + d * from, d))
                } else {
                    neighbour(before, dir(before).perp_dot(d))
                },
                if to < length - AT_CORNER - slid(k + 1) {
                    End::Short(to - clearance(job, surface, heights, face, ring[k] + d * to, -d))
                } else {
                    neighbour(after, d.perp_dot(dir(after)))
                },
            ];
            // Drawn well past a corner with another plate, then cut back there.
            let margin = DRAWN_PAST * width;
            // Over a gable out of square it ends along the verge.
            let over = |end: &End, corner: DVec2| match end {
                End::Past(by) if *by > 0.0 => run_out(job, surface, corner, d, width),
                _ => None,
            };
            let verges: [Option<RunOut>; 2] = [over(&ends[0], ring[k]), over(&ends[1], ring[after])];
            let start = match ends[0] {
                End::Corner | End::Outside => -margin,
                End::Past(by) => -verges[0].as_ref().map_or(by, |v| v.past),
                End::Short(at) => at,
            };
            let stop = match ends[1] {
                End::Corner | End::Outside => length + margin,
                End::Past(by) => length + verges[1].as_ref().map_or(by, |v| v.past),
                End::Short(at) => at,
            };
            if stop - start < width {
                continue;
            }
            let mut timber = plate(job, wall, ring[k], d, length, [start, stop]);
            timber.base = surface.face(face).plane.base_height;
            timber.plate_level = timber.base;
            for (over, at) in verges.into_iter().zip([CutPlace::Foot, CutPlace::Head]) {
                if let Some(over) = over {
                    timber.cut(over.verge, CutUse::Trim, at);
                }
            }
            // A raised plate that stops short keeps clear of a plate that is not
            // wholly below it.
            let base = timber.base;
            let beside = |g: usize| {
                let gap = plate_level(surface, WallId((first + g) as u32)).map(|h| base - h);
                gap.is_some_and(|gap| gap.abs() < job.timber.plate.thickness)
            };
            if matches!(ends[0], End::Short(_)) && beside(before) {
                let other = dir(before).perp();
                timber.cut(HalfPlan::through(ring[k] + other * width, -other), CutUse::Trim, CutPlace::Foot);
            }
            if matches!(ends[1], End::Short(_)) && beside(after) {
                let other = dir(after).perp();
                timber.cut(HalfPlan::through(ring[after] + other * width, -other), CutUse::Trim, CutPlace::Head);
            }
            if matches!(ends[0], End::Outside) {
                let out = -dir(before).perp();
                timber.cut(HalfPlan::through(ring[k], out), CutUse::Trim, CutPlace::Foot);
            }
            if matches!(ends[1], End::Outside) {
                let out = -dir(after).perp();
                timber.cut(HalfPlan::through(ring[after], out), CutUse::Trim, CutPlace::Head);
            }
            timber.ends = ends.map(|e| if matches!(e, End::Corner) { EndOn::Plate } else { EndOn::Bare });
            out.push(timber);
        }
        first += n;
    }
    out
}

/// The corners of the plates of a loop: the roof lines, but the plate lines as
/// given at the ends of walls whose slope was turned.
pub fn on_walls(heights: &Heights, first: usize, roof_lines: &[DVec2]) -> Vec<DVec2> {
    let n = roof_lines.len();
    let turned = |k: usize| heights.plate_line(WallId((first + k % n) as u32)).is_some();
    let given = |k: usize| heights.corners.get(first + k).copied().filter(|_| turned(k) || turned(k + n - 1));
    let corner = |k: usize| given(k).unwrap_or(roof_lines[k]);
    (0..n).map(corner).collect()
}

/// From where to where the eaves of a face lie along one of its walls, as
/// distances from the wall's start, mm.
fn eaves_reach(surface: &Surface, face: FaceId, start: DVec2, d: DVec2, length: f64) -> Option<[f64; 2]> {
    let f = surface.face(face);
    let n = f.outline.len();
    let on_eaves = (0..n).filter(|k| {
        let level = (surface.node(f.outline[*k]).z - f.plane.base_height).abs() < AT_CORNER;
        level && surface.arc(f.arcs[*k]).kind == ArcKind::Eaves
    });
    let along = |k: usize| (surface.node(f.outline[k % n]).truncate() - start).dot(d);
    let reach = on_eaves.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], k| {
        let (a, b) = (along(k).min(along(k + 1)), along(k).max(along(k + 1)));
        // Walls in one line share a face: only what lies on this wall.
        if b < AT_CORNER || a > length - AT_CORNER { [lo, hi] } else { [lo.min(a), hi.max(b)] }
    });
    (reach[0] < reach[1]).then(|| [reach[0].max(0.0), reach[1].min(length)])
}

/// Whether the plates of two walls are at one height.
fn level_with(surface: &Surface, a: WallId, b: WallId) -> bool {
    plate_level(surface, a).zip(plate_level(surface, b)).is_some_and(|(a, b)| (a - b).abs() < LEVEL)
}

/// Height of the plate of a wall, if a slope rises from it, mm.
fn plate_level(surface: &Surface, wall: WallId) -> Option<f64> {
    surface.face_of_wall.get(wall.index()).copied().flatten().map(|f| surface.face(f).plane.base_height)
}

/// How far a raised plate keeps back from the end of its eaves line at `at`,
/// mm: the rafters of the slope beside it pass over its end, and their
/// undersides clear it when the slope has risen by the depth of their notch.
fn clearance(job: &Job, surface: &Surface, heights: &Heights, own: FaceId, at: DVec2, into: DVec2) -> f64 {
    let depth = job.timber.rafter.size.depth;
    surface
        .faces
        .iter()
        .enumerate()
        .filter(|(f, face)| {
            *f != own.index() && face.outline.iter().any(|n| (surface.node(*n).truncate() - at).length() < AT_CORNER)
        })
        .filter_map(|(_, face)| {
            let rise = face.plane.tan_pitch * face.plane.inward.dot(into);
            let below = depth / Angle::deg(face.plane.pitch_deg).cos() - heights.upstand;
            (rise > PARALLEL).then(|| (below / rise).max(0.0))
        })
        .fold(0.0, f64::max)
}

fn plate(job: &Job, wall: WallId, corner: DVec2, d: DVec2, length: f64, reach: [f64; 2]) -> Timber {
    let size = job.timber.plate;
    let width = size.depth;
    Timber {
        kind: MemberKind::WallPlate,
        role: Role::Plate { wall },
        section: job::Section { thickness: width, depth: size.thickness },
        foot: corner,
        dir: d,
        run: length,
        base: 0.0,
        slope: 0.0,
        half: [0.0, width],
        top_offset: 0.0,
        under_offset: -size.thickness,
        top: Top::Flat,
        drop: None,
        ends: [EndOn::Bare; 2],
        over_verge: [false; 2],
        plate_level: 0.0,
        seat: None,
        tails: Vec::new(),
        footprint: ConvexPlan::strip(
            corner,
            d,
            reach,
            [0.0, width],
            [Made::Right, Made::End(true), Made::Left, Made::End(false)],
        ),
        cuts: Vec::new(),
        at_joint: None,
        through: Vec::new(),
        gone: false,
        body: Body::Upright,
        ends_cut: Vec::new(),
        notches: Vec::new(),
        rests: Vec::new(),
        firring: Vec::new(),
        lengthened: None,
        slot: 0,
    }
}
