//! What there is to say about the splices of a roof.

use super::planning::Plan;
use crate::carcass::Carcass;
use crate::frame::timber::{Role, Timber, TimberId};
use crate::rules::{self, Id};
use crate::solution::{MemberKind, NoticeLevel};
use job::Job;

/// A beam that bends more than this share of its most at a splice is worth a
/// warning.
const BENDS: f64 = 0.75;

/// A rafter that bends more than this share of its most at a splice is not
/// joined over a support.
const OFF_SUPPORT: f64 = 0.25;

/// Timbers of some kinds, and where the first of them is.
#[derive(Default)]
struct Group {
    kinds: Vec<(MemberKind, usize)>,
    place: String,
}

impl Group {
    fn add(&mut self, job: &Job, timber: &Timber) {
        if self.kinds.is_empty() {
            self.place = place_of(job, timber);
        }
        match self.kinds.iter_mut().find(|(kind, _)| *kind == timber.kind) {
            Some((_, count)) => *count += 1,
            None => self.kinds.push((timber.kind, 1)),
        }
    }

    fn list(&self) -> String {
        let all: Vec<String> = self.kinds.iter().map(|(kind, count)| format!("{count} × {}", kind.name())).collect();
        all.join(", ")
    }
}

/// The wall of a timber, or a point of the plan.
fn place_of(job: &Job, timber: &Timber) -> String {
    let wall = match timber.role {
        Role::Plate { wall } => Some(wall),
        Role::Fitted { wall } => wall,
        Role::Rafter { .. } => timber.tails.first().map(|t| t.wall),
        Role::Spine { .. } => None,
    };
    let letter = wall.and_then(|w| job.walls.get(w.index())).map(|w| format!("wall {}", w.letter));
    letter.unwrap_or_else(|| format!("({:.0}, {:.0})", timber.foot.x, timber.foot.y))
}

/// Remarks to make when all splices are planned.
#[derive(Default)]
pub struct Told {
    all: Group,
    instead: Group,
    rafters: Group,
    beams: Group,
    beside: Group,
}

impl Told {
    /// Note the splices of a timber.
    pub fn note(&mut self, carcass: &Carcass<'_>, id: TimberId, plan: &Plan) {
        let (job, timber) = (carcass.job, carcass.timber(id));
        self.all.add(job, timber);
        if plan.instead {
            self.instead.add(job, timber);
        }
        if plan.beside {
            self.beside.add(job, timber);
        }
        let sloping = timber.is_rafter() || matches!(timber.kind, MemberKind::HipRafter | MemberKind::ValleyRafter);
        if sloping && plan.bends > OFF_SUPPORT {
            self.rafters.add(job, timber);
        } else if plan.bends > BENDS {
            self.beams.add(job, timber);
        }
    }

    /// Say it.
    pub fn remark(self, carcass: &mut Carcass<'_>) {
        let rules = rules::of(&carcass.job.region);
        let longest = carcass.job.timber.joint.longest;
        carcass.remark(
            NoticeLevel::Note,
            "made-of-lengths",
            "whole roof",
            format!(
                "Longer than the stock of {longest:.0} mm, and so made of lengths: {}. {}",
                self.all.list(),
                rules.get(Id::SpliceNotFullStrength).quote()
            ),
        );
        let mut tell = |group: &Group, level, code: &str, text: String| {
            if !group.kinds.is_empty() {
                carcass.remark(level, code, group.place.clone(), text);
            }
        };
        tell(
            &self.instead,
            NoticeLevel::Note,
            "splayed-instead",
            format!(
                "No room for the splice that the job asks for, or too thin for it, and so splayed instead: {}.",
                self.instead.list()
            ),
        );
        tell(
            &self.beside,
            NoticeLevel::Warn,
            "splices-side-by-side",
            format!(
                "The stock of {longest:.0} mm leaves no place for these clear of the splices beside them: {}. Use \
                 longer stock there, or prop them {}.",
                self.beside.list(),
                rules.get(Id::SplicesNotSideBySide).quote()
            ),
        );
        let span = |group: &Group, rule| {
            format!(
                "With stock of {longest:.0} mm these have a splice away from their supports: {}. Put a purlin or a \
                 prop under it, or use longer stock {}.",
                group.list(),
                rules.get(rule).quote()
            )
        };
        let rafters = span(&self.rafters, Id::RafterJoinedOverSupport);
        tell(&self.rafters, NoticeLevel::Warn, "splice-off-support", rafters);
        let beams = span(&self.beams, Id::PurlinScarfFromSupport);
        tell(&self.beams, NoticeLevel::Warn, "splice-off-support", beams);
    }
}
