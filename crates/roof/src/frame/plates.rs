//! Wall plates: one along every sloping wall, butted at the corners.

use super::PARALLEL;
use super::heights::Heights;
use super::timber::{Body, CutUse, EndOn, Made, Role, Timber, Top};
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::{Surface, WallId};
use geometry::{ConvexPlan, HalfPlan};
use job::Job;

/// Plates are drawn past their corners by this many widths before they are
/// cut, enough for corners down to about 3°.
const DRAWN_PAST: f64 = 24.0;

/// Frame the plates. The plate of each wall runs through at its end, and the
/// next one butts against its inner side.
pub fn place(job: &Job, surface: &Surface, heights: &Heights) -> Vec<Timber> {
    let size = job.timber.plate;
    let width = size.depth;
    let mut out = Vec::new();
    let mut first = 0;
    for ring in &surface.loops {
        let n = ring.len();
        let dir = |k: usize| (ring[(k + 1) % n] - ring[k % n]).normalize_or_zero();
        let gable = |k: usize| surface.face_of_wall.get(first + k % n).copied().flatten().is_none();
        for k in 0..n {
            if gable(k) {
                continue;
            }
            let wall = WallId((first + k) as u32);
            let d = dir(k);
            let length = (ring[(k + 1) % n] - ring[k]).length();
            let before = (k + n - 1) % n;
            let after = (k + 1) % n;
            let convex = |a: usize, b: usize| dir(a).perp_dot(dir(b)) > PARALLEL;
            let straight = |a: usize, b: usize| dir(a).perp_dot(dir(b)).abs() <= PARALLEL;
            // Drawn well past both corners, then cut back by the rules below.
            let margin = DRAWN_PAST * width;
            let verge =
                |g: usize, ok: bool| if gable(g) && ok { heights.overhang(WallId((first + g) as u32)) } else { 0.0 };
            let past = [
                if gable(before) || straight(before, k) { verge(before, convex(before, k)) } else { margin },
                if gable(after) || straight(k, after) { verge(after, convex(k, after)) } else { margin },
            ];
            let mut timber = Timber {
                kind: MemberKind::WallPlate,
                role: Role::Plate { wall },
                section: job::Section { thickness: width, depth: size.thickness },
                foot: ring[k],
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
                    ring[k],
                    d,
                    [-past[0], length + past[1]],
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
            };
            timber.base = surface_height(surface, wall);
            if !gable(before) && !straight(before, k) {
                let other = dir(before).perp();
                // Against the inner side of the plate before it at an outer
                // corner, against its outer side at a re-entrant one.
                let reach = if convex(before, k) { width } else { 0.0 };
                let keep = if convex(before, k) { -other } else { other };
                timber.cut(HalfPlan::through(ring[k] + other * reach, keep), CutUse::Trim, CutPlace::Foot);
            }
            if !gable(after) && !straight(k, after) {
                let other = dir(after).perp();
                let reach = if convex(k, after) { 0.0 } else { width };
                let keep = if convex(k, after) { -other } else { other };
                timber.cut(HalfPlan::through(ring[after] + other * reach, keep), CutUse::Trim, CutPlace::Head);
            }
            out.push(timber);
        }
        first += n;
    }
    out
}

fn surface_height(surface: &Surface, wall: WallId) -> f64 {
    surface.face_of_wall.get(wall.index()).copied().flatten().map_or(0.0, |f| surface.face(f).plane.base_height)
}
