//! How wall plates meet at their corners.
//!
//! Both run over the corner and each loses half its height there, so that their
//! tops stay in one level (NHBC Standards 7.2.6, see `plate-half-lapped` of the
//! rules). Plates nearly in line are mitred; at corners too sharp to be halved
//! the second butts against the first.

use super::heights::Heights;
use super::plates;
use super::timber::{CutUse, EndOn, Face, Notch, Role, Timber, TimberId};
use crate::solution::CutPlace;
use geometry::surface::{Surface, WallId};
use geometry::{DVec2, DVec3, HalfPlan, Plane};
use job::Job;

/// Corners that turn by less than this, or that are sharper, are not halved:
/// the sine of 30°, where a halving is twice as long as the plate is wide.
const LEAST_TURN: f64 = 0.5;

/// Shortest wall whose plate is halved at its ends, in widths of the plate: two
/// halvings of the widest kind, and as much whole wood between them.
const SHORTEST_WALL: f64 = 6.0;

/// A corner between two level plates.
struct Corner {
    at: DVec2,
    /// Sine of the angle by which the walls turn; positive at an outer corner.
    turn: f64,
    /// Whether the walls turn by more than a right angle.
    sharp: bool,
    /// Length of the shorter wall, mm.
    shorter: f64,
}

/// Join plates at all corners where two of them meet; an end that has no mate
/// is cut off at its corner.
pub fn join(job: &Job, surface: &Surface, heights: &Heights, timbers: &mut [Timber]) {
    let width = job.timber.plate.depth;
    let mut first = 0;
    for roof_lines in &surface.loops {
        let ring = &plates::on_walls(heights, first, roof_lines);
        let n = ring.len();
        for k in 0..n {
            let before = (k + n - 1) % n;
            let ending = plate_of(timbers, first + before).filter(|p| timbers[*p].ends[1] == EndOn::Plate);
            let starting = plate_of(timbers, first + k).filter(|p| timbers[*p].ends[0] == EndOn::Plate);
            let (into, out) = (ring[k] - ring[before], ring[(k + 1) % n] - ring[k]);
            let (d, e) = (into.normalize_or_zero(), out.normalize_or_zero());
            let corner = Corner {
                at: ring[k],
                turn: d.perp_dot(e),
                sharp: d.dot(e) < 0.0,
                shorter: into.length().min(out.length()),
            };
            match (ending, starting) {
                (Some(ending), Some(starting)) => meet(timbers, &corner, ending, starting, width),
                (Some(alone), None) => {
                    timbers[alone].cut(HalfPlan::through(ring[k], d), CutUse::Trim, CutPlace::Head);
                }
                (None, Some(alone)) => {
                    timbers[alone].cut(HalfPlan::through(ring[k], -e), CutUse::Trim, CutPlace::Foot);
                }
                (None, None) => {}
            }
        }
        first += n;
    }
}

fn plate_of(timbers: &[Timber], wall: usize) -> Option<usize> {
    let wall = WallId(wall as u32);
    timbers.iter().position(|t| t.role == Role::Plate { wall } && !t.gone)
}

fn meet(timbers: &mut [Timber], corner: &Corner, ending: usize, starting: usize, width: f64) {
    let ids = [ending, starting].map(|k| TimberId(k as u32));
    if corner.turn.abs() < LEAST_TURN && !corner.sharp {
        let across = (timbers[ending].dir + timbers[starting].dir).normalize_or_zero();
        timbers[ending].cut(HalfPlan::through(corner.at, across), CutUse::Mitre(ids[1]), CutPlace::Head);
        timbers[starting].cut(HalfPlan::through(corner.at, -across), CutUse::Mitre(ids[0]), CutPlace::Foot);
        return;
    }
    // Either runs on to the far side of the other: its outer side at an outer
    // corner, its inner side at a re-entrant one.
    let far = |other: &Timber| other.side(corner.turn < 0.0);
    let near = |other: &Timber| other.side(corner.turn > 0.0).flipped();
    let (end, start) = (far(&timbers[starting]), far(&timbers[ending]));
    timbers[ending].cut(end, CutUse::Trim, CutPlace::Head);
    if corner.turn.abs() < LEAST_TURN || corner.shorter < SHORTEST_WALL * width {
        let side = near(&timbers[ending]);
        timbers[starting].cut(side, CutUse::Against(ids[0]), CutPlace::Foot);
        return;
    }
    timbers[starting].cut(start, CutUse::Trim, CutPlace::Foot);
    let shoulders = [near(&timbers[starting]), near(&timbers[ending])].map(|h| h.flipped());
    halve(&mut timbers[ending], CutUse::Halved(ids[1]), CutPlace::Head, shoulders[0]);
    halve(&mut timbers[starting], CutUse::Halved(ids[0]), CutPlace::Foot, shoulders[1]);
}

/// Take half the height out of a plate inside `shoulder`: the upper half at its
/// head, the lower half at its foot.
fn halve(plate: &mut Timber, purpose: CutUse, at: CutPlace, shoulder: HalfPlan) {
    let middle = plate.base + (plate.top_offset + plate.under_offset) / 2.0;
    let out = if at == CutPlace::Head { DVec3::NEG_Z } else { DVec3::Z };
    let planes = [
        Plane::through(DVec3::Z * middle, out),
        Plane { normal: shoulder.normal.extend(0.0), offset: shoulder.offset },
    ];
    plate.notches.push(Notch { faces: planes.map(|plane| Face { plane, purpose, at }).to_vec() });
}
