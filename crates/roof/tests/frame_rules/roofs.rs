//! The roofs that the rules are tried on.

use crate::reading::solve;
use job::{HipEdge, HipHead, HipLine, Job, Spread, TailCut};
use roof::solution::Solution;
use std::sync::LazyLock;

/// A roof with its name.
pub struct Roof {
    pub name: String,
    pub job: Job,
    pub solution: Solution,
}

/// One way to frame.
struct Choice {
    name: &'static str,
    hip: HipEdge,
    line: HipLine,
    head: HipHead,
    valley: HipEdge,
    tail: TailCut,
    spread: Spread,
}

const CHOICES: [Choice; 3] = [
    Choice {
        name: "backed hips between commons, plumb tails",
        hip: HipEdge::Backed,
        line: HipLine::Centred,
        head: HipHead::Crown,
        valley: HipEdge::Dropped,
        tail: TailCut::Plumb,
        spread: Spread::FromStart,
    },
    Choice {
        name: "dropped hips on the ridge, square tails",
        hip: HipEdge::Dropped,
        line: HipLine::Centred,
        head: HipHead::Ridge,
        valley: HipEdge::Backed,
        tail: TailCut::Square,
        spread: Spread::Equal,
    },
    Choice {
        name: "dropped hips set over, level tails",
        hip: HipEdge::Dropped,
        line: HipLine::SetOver,
        head: HipHead::Crown,
        valley: HipEdge::Dropped,
        tail: TailCut::Level,
        spread: Spread::FromEnd,
    },
];

/// A shape with its default sizes.
pub fn shape(name: &str, gables: bool) -> Job {
    sized(name, &[], gables)
}

/// A shape with some of its sizes given, mm.
pub fn sized(name: &str, sizes: &[(&str, f64)], gables: bool) -> Job {
    let text = job::shapes::new_job(name, name, sizes, gables).unwrap_or_else(|e| panic!("{name}: {e}"));
    let mut job = job::read(&text).unwrap_or_else(|e| panic!("{name}: {e}"));
    job.timber.hip.size.depth = 250.0;
    job.timber.valley.size.depth = 250.0;
    job.timber.ridge.size.depth = 250.0;
    // The rules are those of whole timbers; see the tests of lengthening.
    job.timber.joint = job::JointRules::NONE_NEEDED;
    job
}

fn choose(job: &mut Job, choice: &Choice) {
    job.timber.hip.edge = choice.hip;
    job.timber.hip.line = choice.line;
    job.timber.hip.head = choice.head;
    job.timber.valley.edge = choice.valley;
    job.eaves.tail = choice.tail;
    job.timber.rafter.spread = choice.spread;
}

/// Whether slopes meet each other and rise in one pitch from plates at one
/// height, as these rules take it; roofs of other forms are held to theirs in
/// `tests/forms.rs`.
fn is_plain(job: &Job) -> bool {
    let plain = |wall: &job::Wall| {
        wall.plate == 0.0 && wall.half_hip.is_none() && wall.gablet.is_none() && wall.upper.is_none()
    };
    let slopes = job.walls.iter().filter(|wall| !wall.gable).count();
    slopes > 1 && job.walls.iter().all(plain) && job.eaves.sprocket.is_none()
}

static ALL: LazyLock<Vec<Roof>> = LazyLock::new(every_roof);

/// Every shape, with and without gables, in every way; solved once.
pub fn all() -> &'static [Roof] {
    &ALL
}

fn every_roof() -> Vec<Roof> {
    let mut out = Vec::new();
    for info in job::shapes::shapes() {
        for gables in [false, true] {
            if (gables && !info.gables) || !is_plain(&shape(info.name, false)) {
                continue;
            }
            for choice in &CHOICES {
                let mut job = shape(info.name, gables);
                choose(&mut job, choice);
                let name = format!("{}{}, {}", info.name, if gables { " with gables" } else { "" }, choice.name);
                out.push(Roof { solution: solve(&job, &name), name, job });
            }
        }
    }
    // Two pitches: hips and valleys off the bisectors, ridges off the middle.
    for (name, steep) in [("rectangle", 1), ("L", 0), ("bay", 7)] {
        for choice in &CHOICES {
            let mut job = shape(name, false);
            choose(&mut job, choice);
            job.walls[steep].pitch_deg += 7.0;
            let name = format!("{name} of two pitches, {}", choice.name);
            out.push(Roof { solution: solve(&job, &name), name, job });
        }
    }
    out
}

/// Collects what breaks a rule, so that all of it is seen at once.
#[derive(Default)]
pub struct Broken {
    tried: usize,
    list: Vec<String>,
}

impl Broken {
    /// `what` says, only when it breaks, what broke.
    pub fn unless(&mut self, holds: bool, what: impl FnOnce() -> String) {
        self.tried += 1;
        if !holds {
            self.list.push(what());
        }
    }

    /// Nothing broke, and the rule was tried at least so often.
    pub fn finish(self, least: usize) {
        let shown = self.list.iter().take(40).cloned().collect::<Vec<_>>().join("\n");
        assert!(self.list.is_empty(), "{} of {} break the rule:\n{shown}", self.list.len(), self.tried);
        assert!(self.tried >= least, "the rule was tried only {} times", self.tried);
    }
}
