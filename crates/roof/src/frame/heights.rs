//! Upstand, birdsmouths and overhangs: the heights that all timbers share.

use super::PARALLEL;
use crate::SolveError;
use crate::level_ridge::PlateLine;
use geometry::surface::{Surface, WallId};
use geometry::{Angle, DVec2};
use job::{Fascia, Job, Wall};

/// Deepest birdsmouth that is framed at all, as a share of the rafter's depth:
/// past half, what is left no longer carries the tail.
pub const DEEPEST_NOTCH: f64 = 0.5;

/// Heights that all timbers share.
#[derive(Clone, Debug)]
pub struct Heights {
    /// Plumb height of the rafters' top faces above the pitch planes, mm.
    pub upstand: f64,
    /// Overhang of every wall in plan, mm: of the eaves, or of a gable's verge.
    pub overhang: Vec<f64>,
    /// For every wall whose slope was turned off its plate to keep a ridge
    /// level: the line of the plate.
    pub plates: Vec<Option<PlateLine>>,
    /// The corners of the plates, one for the start of every wall.
    pub corners: Vec<DVec2>,
}

impl Heights {
    /// Work them out for a job.
    ///
    /// The upstand comes from the flattest pitch, whose rafters get the
    /// birdsmouth that the job asks for; steeper ones get a deeper one.
    ///
    /// # Errors
    /// When a birdsmouth would cut through a rafter.
    pub fn of(job: &Job) -> Result<Self, SolveError> {
        let rafter = &job.timber.rafter;
        let sloped = || job.walls.iter().filter(|w| !w.gable);
        let flattest = sloped().map(|w| w.pitch_deg).fold(90.0, f64::min);
        let upstand = (rafter.size.depth - rafter.birdsmouth) / Angle::deg(flattest).cos();
        for wall in sloped() {
            let notch = notch(job, upstand, wall.pitch_deg);
            if notch > DEEPEST_NOTCH * rafter.size.depth {
                return Err(SolveError::RafterTooSmall {
                    wall: wall.letter.clone(),
                    pitch: wall.pitch_deg,
                    notch,
                    depth: rafter.size.depth,
                });
            }
        }
        let overhang = overhangs(job);
        Ok(Self { upstand, overhang, plates: Vec::new(), corners: Vec::new() })
    }

    /// The plate line of a wall whose slope was turned off it.
    pub fn plate_line(&self, wall: WallId) -> Option<PlateLine> {
        self.plates.get(wall.index()).copied().flatten()
    }

    /// Overhang of a wall, mm.
    pub fn overhang(&self, wall: WallId) -> f64 {
        self.overhang.get(wall.index()).copied().unwrap_or(0.0)
    }
}

/// Overhang of every wall in plan, mm.
///
/// A level fascia is one line along all sloping walls that follow one another
/// without a gable between: it hangs as far below the lowest of their plates
/// as the main pitch falls over the overhang that the job asks for.
fn overhangs(job: &Job) -> Vec<f64> {
    let main = Angle::deg(job.pitch_deg).tan();
    let mut out = Vec::with_capacity(job.walls.len());
    let mut first = 0;
    for ring in &job.loops {
        let walls = job.walls.get(first..first + ring.len()).unwrap_or_default();
        for (k, wall) in walls.iter().enumerate() {
            out.push(match job.eaves.fascia {
                _ if starts_upright(wall) => job.verge.overhang,
                Fascia::Level => {
                    let fall = wall.plate - lowest_in_line(walls, k) + job.eaves.overhang * main;
                    fall / Angle::deg(wall.pitch_deg).tan()
                }
                Fascia::Fixed => wall.overhang.unwrap_or(job.eaves.overhang),
            });
        }
        first += ring.len();
    }
    out
}

/// Whether a wall is carried up from its plate: a gable, or one below a half hip.
pub fn starts_upright(wall: &Wall) -> bool {
    wall.gable || wall.half_hip.is_some()
}

/// The lowest plate among the sloping walls that follow one another without a
/// gable, wall `k` among them, mm.
fn lowest_in_line(walls: &[Wall], k: usize) -> f64 {
    let n = walls.len();
    let onward = (0..n).map(|i| &walls[(k + i) % n]).take_while(|w| !starts_upright(w));
    let back = (1..n).map(|i| &walls[(k + n - i) % n]).take_while(|w| !starts_upright(w));
    onward.chain(back).map(|w| w.plate).fold(f64::INFINITY, f64::min)
}

/// Depth of the birdsmouth square to a rafter at this pitch, mm.
pub fn notch(job: &Job, upstand: f64, pitch_deg: f64) -> f64 {
    job.timber.rafter.size.depth - upstand * Angle::deg(pitch_deg).cos()
}

/// Eaves that would meet further from a corner of the plan than this many
/// overhangs end square at it: the walls hardly bend there, and the fascia
/// steps from one to the other.
const FURTHEST_MITRE: f64 = 4.0;

/// Refuse eaves that close a courtyard or a notch: every eaves line must keep
/// the direction of its wall, and the outline must not cross itself.
pub fn check_eaves(job: &Job, surface: &Surface, heights: &Heights) -> Result<(), SolveError> {
    let mut first = 0;
    let mut outlines = Vec::with_capacity(surface.loops.len());
    let mut owners: Vec<(usize, usize, WallId)> = Vec::new();
    let mut longest = 0.0_f64;
    for ring in &surface.loops {
        let n = ring.len();
        let wall = |k: usize| WallId((first + k % n) as u32);
        let dir = |k: usize| (ring[(k + 1) % n] - ring[k % n]).normalize_or_zero();
        // Where the eaves of the wall before a corner end, and those of the wall after it start.
        let corner = |k: usize| {
            let (before, after) = ((k + n - 1) % n, k % n);
            let (dirs, overhangs) =
                ([dir(before), dir(after)], [wall(before), wall(after)].map(|w| heights.overhang(w)));
            let meet = outset_corner(ring[k % n], dirs, overhangs);
            let furthest = FURTHEST_MITRE * overhangs[0].max(overhangs[1]);
            if dirs[0].dot(dirs[1]) > 0.0 && (meet - ring[k % n]).length() > furthest {
                [0, 1].map(|side| ring[k % n] - dirs[side].perp() * overhangs[side])
            } else {
                [meet; 2]
            }
        };
        let corners: Vec<[DVec2; 2]> = (0..n).map(corner).collect();
        let mut outline = Vec::with_capacity(n);
        for k in 0..n {
            let overhang = heights.overhang(wall(k));
            longest = longest.max(overhang);
            if (corners[(k + 1) % n][0] - corners[k][1]).dot(dir(k)) <= 0.0 {
                return Err(closes(job, wall(k), overhang));
            }
            if corners[k][0] != corners[k][1] {
                outline.push(corners[k][0]);
                owners.push((outlines.len(), outline.len() - 1, wall(k)));
            }
            outline.push(corners[k][1]);
            owners.push((outlines.len(), outline.len() - 1, wall(k)));
        }
        outlines.push(outline);
        first += n;
    }
    if longest > 0.0 {
        let crossing = geometry::plan::check(&outlines).into_iter().find_map(|fault| match fault {
            geometry::PlanFault::WallsCross { first, .. } => Some((first.ring, first.corner)),
            geometry::PlanFault::CourtyardOutside { ring } | geometry::PlanFault::WrongWayRound { ring } => {
                Some((ring, 0))
            }
            _ => None,
        });
        if let Some((ring, corner)) = crossing {
            let owner = owners.iter().find(|(r, c, _)| (*r, *c) == (ring, corner));
            let wall = owner.map_or(WallId(0), |(_, _, wall)| *wall);
            return Err(closes(job, wall, heights.overhang(wall)));
        }
    }
    Ok(())
}

fn closes(job: &Job, wall: WallId, overhang: f64) -> SolveError {
    let letter = job.walls.get(wall.index()).map_or_else(String::new, |w| w.letter.clone());
    SolveError::OverhangCloses { wall: letter, overhang }
}

/// Where the eaves lines of two walls meet outside their corner. `dirs` are
/// the walls' unit directions with the building on their left.
pub fn outset_corner(corner: DVec2, dirs: [DVec2; 2], overhangs: [f64; 2]) -> DVec2 {
    let out = [-dirs[0].perp(), -dirs[1].perp()];
    let turn = out[0].perp_dot(out[1]);
    if turn.abs() < PARALLEL {
        return corner + out[0] * overhangs[0].max(overhangs[1]);
    }
    // Solve out0·v = o0, out1·v = o1.
    let v = (out[1].perp() * -overhangs[0] + out[0].perp() * overhangs[1]) / turn;
    corner + v
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outset_of_a_square_corner() {
        let v = outset_corner(DVec2::ZERO, [DVec2::X, DVec2::Y], [300.0, 200.0]);
        assert!((v - DVec2::new(200.0, -300.0)).length() < 1e-9);
    }
}
