//! Who carries whom: from the solids of a solved roof to plane frames and beams that stand on one another and, at last,
//! on walls. A load goes down the way that the timbers really touch.
//!
//! * [`run`]: lengths spliced together act as one timber;
//! * [`touch`]: where timbers lie on one another, from their solids;
//! * [`strips`]: which part of a slope each rafter carries;
//! * [`places`]: what a timber rests on, from where it touches;
//! * [`mod@unit`]: a frame or beam that is solved by itself;
//! * [`build`]: all units of a roof;
//! * [`own`]: what is on each unit by itself;
//! * [`flow`]: loads go from unit to unit until they stand still.

pub mod build;
pub mod flow;
pub mod own;
pub mod places;
pub mod run;
pub mod strips;
pub mod touch;
pub mod unit;

use geometry::DVec3;
use job::Job;
use roof::solution::{MemberKind, Solution};
use run::Run;
use strips::{Slope, Strip};

/// Where a run touches another.
#[derive(Clone, Copy, Debug)]
pub struct Contact {
    /// The other run.
    pub other: usize,
    /// The middle of all they share, mm.
    pub at: DVec3,
    /// Unit normal out of the run, of the largest of the faces.
    pub normal: DVec3,
    /// What they share, mm².
    pub area: f64,
}

/// A roof as it carries.
#[derive(Debug)]
pub struct Carrying<'a> {
    /// The job.
    pub job: &'a Job,
    /// The roof.
    pub solution: &'a Solution,
    /// Its timbers as they act.
    pub runs: Vec<Run>,
    /// For each run, whom it touches.
    pub contacts: Vec<Vec<Contact>>,
    /// Its slopes.
    pub slopes: Vec<Slope>,
    /// What each run carries of the slopes.
    pub strips: Vec<Vec<Strip>>,
}

/// Whether a timber lies up the slope and carries a strip of it.
#[must_use]
pub const fn is_rafter(kind: MemberKind) -> bool {
    matches!(
        kind,
        MemberKind::CommonRafter
            | MemberKind::CrownRafter
            | MemberKind::JackRafter
            | MemberKind::ValleyJack
            | MemberKind::CrippleRafter
            | MemberKind::TrimmingRafter
    )
}

/// Whether a timber carries others or spans by itself. Boards, fillets and the like only weigh.
#[must_use]
pub const fn carries(kind: MemberKind) -> bool {
    is_rafter(kind)
        || matches!(
            kind,
            MemberKind::HipRafter
                | MemberKind::ValleyRafter
                | MemberKind::RidgeBoard
                | MemberKind::WallPlate
                | MemberKind::Purlin
                | MemberKind::Strut
                | MemberKind::SolePlate
                | MemberKind::Collar
                | MemberKind::CeilingJoist
                | MemberKind::Binder
                | MemberKind::Hanger
                | MemberKind::Trimmer
                | MemberKind::Noggin
                | MemberKind::GableLadder
                | MemberKind::AngleTie
        )
}

impl<'a> Carrying<'a> {
    /// Find out who carries whom.
    #[must_use]
    pub fn of(job: &'a Job, solution: &'a Solution) -> Self {
        let (runs, of_member) = run::runs(&solution.members);
        let mut contacts: Vec<Vec<Contact>> = vec![Vec::new(); runs.len()];
        let touches = touch::touches(&solution.members, |m| carries(m.kind));
        for touch in &touches {
            let (Some(a), Some(b)) = (of_member[touch.a], of_member[touch.b]) else { continue };
            if a != b {
                add(&mut contacts[a], b, touch.at, touch.normal, touch.area);
                add(&mut contacts[b], a, touch.at, -touch.normal, touch.area);
            }
        }
        let slopes = strips::slopes(solution);
        let mut strips: Vec<Vec<Strip>> = vec![Vec::new(); runs.len()];
        for (number, slope) in slopes.iter().enumerate() {
            let mine: Vec<(usize, &Run)> = runs
                .iter()
                .enumerate()
                .filter(|(_, run)| is_rafter(run.kind) && run.wall.as_ref().is_some_and(|w| slope.walls.contains(w)))
                .collect();
            for strip in strips::strips(slope, number, &mine) {
                strips[strip.run].push(strip);
            }
        }
        Self { job, solution, runs, contacts, slopes, strips }
    }

    /// The width of ceiling that a joist carries: half way to the next on either side, mm.
    #[must_use]
    pub fn joist_width(&self, joist: usize) -> f64 {
        let me = &self.runs[joist];
        let middle = me.at(me.length / 2.0);
        let mut sides: [Option<f64>; 2] = [None, None];
        for (k, other) in self.runs.iter().enumerate() {
            if k == joist || other.kind != MemberKind::CeilingJoist || other.along.cross(me.along).length() > 0.01 {
                continue;
            }
            let along = other.along_of(middle);
            let off = me.across.dot(other.at(along) - middle);
            // One that is nailed to its side is the same joist to the ceiling.
            if (0.0..=other.length).contains(&along) && off.abs() > 1.5 * me.thickness {
                let side = &mut sides[usize::from(off < 0.0)];
                *side = Some(side.map_or(off.abs(), |best: f64| best.min(off.abs())));
            }
        }
        let centres = self.job.timber.rafter.centres;
        // No joist carries more of a ceiling than boards span, whatever gap a hatch or a hip leaves.
        const MOST: f64 = 1.5;
        sides.iter().map(|s| s.unwrap_or(centres).min(MOST * centres)).sum::<f64>() / 2.0
    }
}

/// Adds a contact to those of a run: faces shared with one and the same timber are one contact.
fn add(contacts: &mut Vec<Contact>, other: usize, at: DVec3, normal: DVec3, area: f64) {
    // A timber may touch a long one at two places, such as a trimmer both ends of a rafter: these stay apart.
    const APART: f64 = 400.0;
    match contacts.iter_mut().find(|c| c.other == other && c.at.distance(at) < APART) {
        Some(contact) => {
            let sum = contact.area + area;
            contact.at = (contact.at * contact.area + at * area) / sum;
            if area > contact.area {
                contact.normal = normal;
            }
            contact.area = sum;
        }
        None => contacts.push(Contact { other, at, normal, area }),
    }
}
