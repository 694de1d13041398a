//! The slopes of a roof as a carpenter knows them: a line on the plan that each
//! starts from, its height there, its pitch.

use geometry::{Angle, DVec2};
use job::Job;
use roof::solution::Solution;

/// Pitches nearer than this are one, degrees: a wall's two slopes differ by more.
const SAME_PITCH: f64 = 1e-6;

/// Slopes whose plate lines turn by less than this from one another (as a sine)
/// are parallel.
const PARALLEL: f64 = 1e-6;

/// Where a slope starts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Start {
    /// On the plate.
    Plate,
    /// On masonry carried up to this height above the plate, mm.
    Raised(f64),
    /// Where the lower of two slopes ends: this high above the plate, mm, and
    /// that slope's pitch, degrees.
    Break(f64, f64),
}

/// A slope of the roof.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Slope {
    /// Letter of its wall.
    pub letter: String,
    /// Unit plan direction up the slope.
    pub inward: DVec2,
    /// Where the line that it starts from lies, along `inward`, mm.
    pub offset: f64,
    /// Height of that line, mm.
    pub base: f64,
    /// Pitch, degrees.
    pub pitch: f64,
    /// Where it starts.
    pub start: Start,
}

impl Slope {
    pub(crate) fn tan(&self) -> f64 {
        Angle::deg(self.pitch).tan()
    }

    /// Plan distance inwards from the line that it starts from, mm.
    pub(crate) fn inside(&self, p: DVec2) -> f64 {
        self.inward.dot(p) - self.offset
    }

    /// Height of the pitch plane over a plan point, mm.
    pub(crate) fn height(&self, p: DVec2) -> f64 {
        self.base + self.inside(p) * self.tan()
    }

    pub(crate) fn faces(&self, other: &Self) -> bool {
        self.inward.perp_dot(other.inward).abs() < PARALLEL && self.inward.dot(other.inward) < 0.0
    }

    /// What it is called: `wall A`, or `the upper slope of wall A`.
    pub(crate) fn name(&self) -> String {
        match self.start {
            Start::Break(..) => format!("the upper slope of wall {}", self.letter),
            _ => format!("wall {}", self.letter),
        }
    }

    /// What it starts from: `plate A`.
    pub(crate) fn line_name(&self) -> String {
        match self.start {
            Start::Plate => format!("plate {}", self.letter),
            Start::Raised(_) => format!("the top of wall {}", self.letter),
            Start::Break(..) => format!("the change of pitch over wall {}", self.letter),
        }
    }
}

/// Every slope of the roof.
pub(crate) fn of(job: &Job, solution: &Solution) -> Vec<Slope> {
    let mut out: Vec<Slope> = Vec::new();
    for face in &solution.faces {
        let Some(wall) = job.walls.iter().find(|w| w.letter == face.id) else { continue };
        let Some(line) = solution.plan.walls.iter().find(|w| w.id == face.id) else { continue };
        let from = DVec2::from_array(line.from);
        let inward = (DVec2::from_array(line.to) - from).normalize_or_zero().perp();
        let at_wall = inward.dot(from);
        let upper = wall.upper.filter(|u| (u.pitch_deg - face.pitch_deg).abs() < SAME_PITCH);
        let (start, offset, height) = match (upper, wall.half_hip) {
            (Some(u), _) => (
                Start::Break(u.from, wall.pitch_deg),
                at_wall + u.from / Angle::deg(wall.pitch_deg).tan(),
                wall.plate + u.from,
            ),
            (None, Some(up)) => (Start::Raised(up), at_wall, wall.plate + up),
            (None, None) => (Start::Plate, at_wall, wall.plate),
        };
        out.push(Slope { letter: face.id.clone(), inward, offset, base: height, pitch: face.pitch_deg, start });
    }
    out
}

/// Where two slopes that are not parallel meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Corner {
    /// Plan point where both slopes have the height `level`.
    pub at: DVec2,
    /// The higher of the two lines that they start from, mm.
    pub level: f64,
    /// Unit plan direction in which the line where they meet rises.
    pub dir: DVec2,
    /// Plan angle between that line and the plate of the first slope, degrees.
    pub delta: f64,
    /// Plan angle between the two plates, inside the roof, degrees.
    pub kappa: f64,
}

/// The line where two slopes meet, seen from the first.
pub(crate) fn corner(a: &Slope, b: &Slope, level: f64) -> Option<Corner> {
    let turn = a.inward.perp_dot(b.inward);
    if turn.abs() < PARALLEL {
        return None;
    }
    let (ta, tb) = (a.tan(), b.tan());
    // Contours at the level.
    let (ca, cb) = (a.offset + (level - a.base) / ta, b.offset + (level - b.base) / tb);
    let at = (b.inward.perp() * -ca + a.inward.perp() * cb) / turn;
    let across = a.inward * ta - b.inward * tb;
    let along = across.perp().normalize_or_zero();
    let dir = along * along.dot(a.inward).signum();
    let kappa = 180.0 - Angle::from_cos(a.inward.dot(b.inward)).to_deg();
    let k = Angle::deg(kappa);
    let delta = Angle::from_rise_run(k.sin() * tb, ta + k.cos() * tb).to_deg();
    Some(Corner { at, level, dir, delta, kappa })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slope(inward: DVec2, pitch: f64) -> Slope {
        Slope { letter: "A".into(), inward, offset: 0.0, base: 0.0, pitch, start: Start::Plate }
    }

    #[test]
    fn unequal_pitches_turn_the_hip() {
        // reference/geometry.md 5.1 row 9: corner 90, pitches 30 and 45: plan angle 60° to the 30° eaves.
        let c = corner(&slope(DVec2::Y, 30.0), &slope(DVec2::X, 45.0), 0.0).expect("not parallel");
        assert!((c.delta - 60.0).abs() < 1e-9 && (c.kappa - 90.0).abs() < 1e-9);
        assert!(c.at.length() < 1e-9);
        assert!((c.dir.dot(DVec2::Y) - Angle::deg(60.0).sin()).abs() < 1e-9);
    }
}
