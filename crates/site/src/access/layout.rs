//! What stands round the roof: lifts and lengths from the real plates, eaves and gables.

use super::rules::{Needed, Rules};
use super::{AccessFault, layout_gables::gable_apex};
use geometry::Angle;
use job::{AccessKind, Job};
use roof::solution::{Solution, WallOut};
use serde::{Deserialize, Serialize};

/// The sharpest corner for which runs are lengthened, degrees of turn: past it the two runs pass one another long before
/// they meet, and who sets out the scaffold decides.
const SHARPEST_TURN: f64 = 150.0;
/// What a run may be longer than whole bays, mm: less is in the play of the couplers.
const BAY_PLAY: f64 = 1.0;

/// What stands round the roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Layout {
    /// `scaffold`, `tower` or `edge-protection`.
    pub kind: String,
    /// Whether the job says so; otherwise it is what the roof suggests.
    pub asked: bool,
    /// Height of the plates at the datum above the ground, mm.
    pub plate_height_mm: f64,
    /// Whether the job says so; otherwise it is taken.
    pub plate_height_said: bool,
    /// Width of the platform, mm.
    pub width_mm: f64,
    /// Length of a bay, mm.
    pub bay_mm: f64,
    /// One run along each wall, in lettering order.
    pub runs: Vec<Run>,
    /// Length of the working lift all round, mm.
    pub length_mm: f64,
    /// Bays of the working lift.
    pub bays: u32,
    /// Bays of all lifts together, gables included.
    pub bay_lifts: u32,
    /// Boards for the working lifts, 3.9 m each, and what is left over cut to waste.
    pub board_m: f64,
    /// The highest working platform, those up a gable too, mm above the ground.
    pub highest_mm: f64,
}

/// The run along one wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Run {
    /// Letter of the wall.
    pub wall: String,
    /// A gable.
    pub gable: bool,
    /// Of a courtyard: everything has to be carried through the building or lifted over it.
    pub courtyard: bool,
    /// Of the wall, mm.
    pub wall_mm: f64,
    /// Inside of the platform off the wall, mm: past the eaves or verge.
    pub off_wall_mm: f64,
    /// Outside length of the platform with its corners, mm.
    pub length_mm: f64,
    /// Edge of the roof above the ground, mm: the eaves, or the plate where that is lower.
    pub edge_mm: f64,
    /// Working platform above the ground, mm.
    pub platform_mm: f64,
    /// Lifts up to it.
    pub lifts: u32,
    /// Height of each of these, mm.
    pub lift_mm: f64,
    /// More lifts up the gable.
    pub gable_lifts: u32,
    /// Top of the gable above the ground, mm.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub apex_mm: Option<f64>,
    /// Bays.
    pub bays: u32,
}

impl Run {
    /// The highest platform of the run, mm above the ground: that of its last lift, up a gable no higher than somebody
    /// needs to reach the top from.
    fn top_platform(&self, lift: f64, reach: f64) -> f64 {
        let up = self.platform_mm + f64::from(self.gable_lifts) * lift;
        let needed = self.apex_mm.map_or(self.platform_mm, |apex| (apex - reach).max(self.platform_mm));
        up.min(needed)
    }
}

/// Lay out the access of a job.
///
/// # Errors
/// A region without figures.
pub fn layout(job: &Job, solution: &Solution) -> Result<Layout, AccessFault> {
    let rules = Rules::of(&job.region)?;
    let asked = &job.access;
    let plate = asked.plate_height.unwrap_or(rules.need(Needed::AssumedPlate)?.own());
    let width = f64::from(asked.boards) * rules.need(Needed::BoardWidth)?.own();
    let setting = Setting {
        job,
        solution,
        plate,
        width,
        below: rules.need(Needed::BelowEaves)?.own(),
        clear: rules.need(Needed::ClearOfEaves)?.own(),
        reach: rules.need(Needed::Reach)?.own(),
    };
    let walls = &solution.plan.walls;
    let runs: Vec<Run> = walls.iter().enumerate().map(|(number, wall)| setting.run(number, wall)).collect();
    let length: f64 = runs.iter().map(|run| run.length_mm).sum();
    let highest = runs.iter().map(|run| run.top_platform(asked.lift, setting.reach)).fold(0.0, f64::max);
    let tower = length <= rules.need(Needed::TowerRun)?.own() && highest <= rules.need(Needed::TowerPlatform)?.own();
    let kind = asked.kind.unwrap_or(if tower { AccessKind::Tower } else { AccessKind::Scaffold });
    let bays: u32 = runs.iter().map(|run| run.bays).sum();
    let all = runs.iter().map(|run| run.bays.saturating_mul(run.lifts) + gable_bays(run, asked.bay));
    let bay_lifts = match kind {
        AccessKind::Scaffold => all.fold(0, u32::saturating_add),
        AccessKind::Tower | AccessKind::EdgeProtection => bays,
    };
    Ok(Layout {
        kind: kind_word(kind).to_owned(),
        asked: asked.kind.is_some(),
        plate_height_mm: plate,
        plate_height_said: asked.plate_height.is_some(),
        width_mm: width,
        bay_mm: asked.bay,
        length_mm: length,
        bays,
        bay_lifts,
        board_m: length / 1000.0 * f64::from(asked.boards),
        highest_mm: highest,
        runs,
    })
}

/// The word of a sort of access.
#[must_use]
pub const fn kind_word(kind: AccessKind) -> &'static str {
    match kind {
        AccessKind::Scaffold => "scaffold",
        AccessKind::Tower => "tower",
        AccessKind::EdgeProtection => "edge-protection",
    }
}

/// What the runs are laid out with, mm.
struct Setting<'a> {
    job: &'a Job,
    solution: &'a Solution,
    plate: f64,
    width: f64,
    below: f64,
    clear: f64,
    reach: f64,
}

impl Setting<'_> {
    fn run(&self, number: usize, wall: &WallOut) -> Run {
        let own = self.job.walls.get(number);
        let plate = self.plate + own.map_or(0.0, |wall| wall.plate);
        let edge = match wall.pitch_deg {
            Some(pitch) => {
                let fall = wall.overhang_mm * Angle::deg(pitch).tan();
                (plate + self.solution.totals.upstand_mm - fall).min(plate)
            }
            None => plate,
        };
        let platform = (edge - self.below).max(0.0);
        let lifts = count(platform / self.job.access.lift.max(1.0));
        // A gablet stands back in the slope: nobody reaches it from the wall.
        let on_wall = own.is_none_or(|wall| wall.gablet.is_none());
        let apex = gable_apex(self.solution, &wall.id).filter(|_| on_wall).map(|top| top + self.plate);
        let up = apex.map_or(0.0, |apex| (apex - platform - self.reach).max(0.0));
        let off = wall.overhang_mm + self.clear;
        let length = wall.length_mm + (off + self.width) * self.corners(wall);
        let length = length.max(0.0);
        Run {
            wall: wall.id.clone(),
            gable: wall.gable,
            courtyard: number >= self.job.loops.first().map_or(usize::MAX, Vec::len),
            wall_mm: wall.length_mm,
            off_wall_mm: off,
            length_mm: length,
            edge_mm: edge,
            platform_mm: platform,
            lifts,
            lift_mm: if lifts == 0 { 0.0 } else { platform / f64::from(lifts) },
            gable_lifts: count(up / self.job.access.lift.max(1.0)),
            apex_mm: apex,
            bays: count((length - BAY_PLAY) / self.job.access.bay.max(1.0)),
        }
    }

    /// By how many times its distance off the wall a run is longer than the wall: half the turn at either end, outwards.
    fn corners(&self, wall: &WallOut) -> f64 {
        let walls = &self.solution.plan.walls;
        let before = walls.iter().find(|other| near(other.to, wall.from));
        let after = walls.iter().find(|other| near(other.from, wall.to));
        let half = |a: Option<&WallOut>, b: Option<&WallOut>| {
            a.zip(b).map_or(0.0, |(a, b)| {
                let turn = turn(a, b).clamp(-SHARPEST_TURN, SHARPEST_TURN);
                Angle::deg(turn / 2.0).tan()
            })
        };
        half(before, Some(wall)) + half(Some(wall), after)
    }
}

/// Bays of the lifts up a gable: each is narrower than the one below, so half of them on average.
fn gable_bays(run: &Run, bay: f64) -> u32 {
    let half = count(run.wall_mm / 2.0 / bay.max(1.0));
    half.saturating_mul(run.gable_lifts)
}

/// A whole number of what is needed; none for what is not a number or not there.
fn count(share: f64) -> u32 {
    // Lengths lie within kilometres and are divided by 1 mm at the least.
    if share > 0.0 { share.ceil() as u32 } else { 0 }
}

/// Corners are written once for the two walls that share them.
fn near(a: [f64; 2], b: [f64; 2]) -> bool {
    a == b
}

/// The turn from one wall to the next, degrees: above 0 to the left, which is outwards round a building.
fn turn(a: &WallOut, b: &WallOut) -> f64 {
    let direction = |wall: &WallOut| [wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]];
    let ([ax, ay], [bx, by]) = (direction(a), direction(b));
    let (sin, cos) = (ax * by - ay * bx, ax * bx + ay * by);
    libm::atan2(sin, cos).to_degrees()
}
