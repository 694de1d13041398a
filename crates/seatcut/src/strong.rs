//! The strength of a solved job, in plain lines for a terminal.

use std::fmt::Write as _;

use drawings::{by_kind, for_engineer, percent, verdict};
use job::Job;
use roof::solution::Solution;
use strength::whole::{CheckFault, Checks, JointUse, MemberUse, Strength, Verdict, WallLoad, check};
use strength::working::Line;

use crate::progress;

/// How a job asks for its strength.
pub const HOW_TO_ASK: &str = "Strength is not checked: the job has no [loads]. Write covering, snow_zone, altitude and \
                              wind there, and it is; `seatcut defaults` shows the keys.\n";

/// What came of a check.
#[derive(Debug)]
pub enum Outcome {
    /// The results.
    Checked(Box<Checks>),
    /// The job says nothing of what its roof carries.
    NotAsked,
    /// It could not be worked out, and why.
    CannotTell(CheckFault),
}

impl Outcome {
    /// Checks the strength of a job.
    pub fn of(job: &Job, solution: &Solution) -> Self {
        match progress::during("checking its strength", || check(job, solution)) {
            Ok(checks) => Self::Checked(Box::new(checks)),
            Err(fault) => Self::missing(fault),
        }
    }

    /// What it is when there are no results.
    pub fn missing(fault: CheckFault) -> Self {
        match fault {
            CheckFault::NoLoads => Self::NotAsked,
            fault => Self::CannotTell(fault),
        }
    }

    /// The results, when there are any.
    pub const fn checks(&self) -> Option<&Checks> {
        match self {
            Self::Checked(checks) => Some(checks),
            _ => None,
        }
    }

    /// One line for the end of a summary.
    pub fn line(&self) -> String {
        match self {
            Self::Checked(checks) => in_short(&checks.strength),
            Self::NotAsked => format!("\n{HOW_TO_ASK}"),
            Self::CannotTell(fault) => format!("\nLOOK  strength: it could not be worked out: {fault}\n"),
        }
    }
}

fn count<'a>(verdicts: impl Iterator<Item = &'a Verdict>, wanted: Verdict) -> usize {
    verdicts.filter(|v| **v == wanted).count()
}

/// The strength of a roof in a line.
pub fn in_short(strength: &Strength) -> String {
    let timbers = || strength.members.iter().map(|m| &m.left.verdict);
    let joints = || strength.joints.iter().filter_map(|j| j.verdict.as_ref());
    let most = strength.members.first().map_or_else(String::new, |m| {
        format!("; the most used is {} {}, {}", m.kind.name(), m.mark, percent(m.left.used))
    });
    let of =
        |total: usize, over: usize, near: usize, what: &str| format!("{over} over and {near} near of {total} {what}");
    let over = count(timbers(), Verdict::Over) + count(joints(), Verdict::Over);
    let timbers =
        of(strength.members.len(), count(timbers(), Verdict::Over), count(timbers(), Verdict::Near), "timbers");
    let joints =
        of(strength.joints.len(), count(joints(), Verdict::Over), count(joints(), Verdict::Near), "kinds of joint");
    let matters = match for_engineer(&strength.refused).len() {
        0 if over > 0 => "what is over is for an engineer".to_owned(),
        0 => "nothing found that these checks do not cover".to_owned(),
        1 => "1 matter for an engineer".to_owned(),
        n => format!("{n} matters for an engineer"),
    };
    format!("\nStrength (members only): {timbers}, {joints}{most}; {matters}. `seatcut strength` shows them.\n")
}

/// Everything about the strength of a roof but the working.
pub fn report(title: &str, strength: &Strength) -> String {
    let mut text = format!("{title}\n\n");
    for matter in for_engineer(&strength.refused) {
        let _ = writeln!(text, "ENGINEER  {}: {}", matter.places.join(", "), matter.text);
    }
    if !strength.refused.is_empty() {
        text.push('\n');
    }
    let taken = &strength.assumed;
    let _ = writeln!(
        text,
        "All timber {}, service class {}; feet {}; the ridge is a {}.\n",
        taken.class, taken.service, taken.feet, taken.ridge
    );
    text.push_str(&timbers(strength));
    text.push_str(&joints(&strength.joints));
    text.push_str(&walls(&strength.walls));
    text.push('\n');
    for caution in &strength.cautions {
        let _ = writeln!(text, "note  {caution}");
    }
    text
}

fn size(member: &MemberUse) -> String {
    format!("{:.0} x {:.0}", member.size.thickness_mm, member.size.depth_mm)
}

fn would_pass(member: &MemberUse) -> String {
    match (&member.would_pass, member.left.verdict) {
        (Some(size), _) => format!("{:.0} x {:.0} would pass", size.thickness_mm, size.depth_mm),
        (None, Verdict::Over) => "no stock size would pass".to_owned(),
        (None, _) => String::new(),
    }
}

fn timbers(strength: &Strength) -> String {
    let mut text = format!(
        "{:<17} {:>4} {:>5} {:>5}  {:<9} {:<10} {:>9}  {:<4}  {}\n",
        "Timber", "No.", "over", "near", "Most used", "Size", "Used", "", "Governing check"
    );
    for kind in by_kind(strength) {
        let most = kind.most;
        let check = most.checks.first().map_or_else(String::new, |c| format!("{}, {}", c.name, c.clause));
        let would = would_pass(most);
        let line = format!(
            "{:<17} {:>4} {:>5} {:>5}  {:<9} {:<10} {:>9}  {:<4}  {}",
            kind.kind.name(),
            kind.count,
            kind.over,
            kind.near,
            most.mark,
            size(most),
            percent(most.left.used),
            verdict(most.left.verdict),
            if would.is_empty() { check } else { format!("{check}; {would}") }
        );
        let _ = writeln!(text, "{}", line.trim_end());
    }
    text
}

fn joints(joints: &[JointUse]) -> String {
    if joints.is_empty() {
        return String::new();
    }
    let mut text = "\nJoints, each kind where it is used most\n".to_owned();
    for joint in joints {
        let used = joint.used.map_or_else(|| "not known".to_owned(), percent);
        let word = match joint.verdict.map_or("", verdict) {
            "" => String::new(),
            word => format!(" {word}"),
        };
        let remark = if joint.remark.is_empty() { String::new() } else { format!("; {}", joint.remark) };
        let _ = writeln!(
            text,
            "  {} at {}: carries {:.1} kN, takes {}; used {used}{word}{remark}",
            joint.name,
            joint.marks.join(", "),
            joint.force_n / 1e3,
            joint.takes
        );
    }
    text
}

fn walls(walls: &[WallLoad]) -> String {
    if walls.is_empty() {
        return String::new();
    }
    let mut text = "\nWalls and bearings, kN\n".to_owned();
    for wall in walls {
        let straps = match (wall.straps, wall.straps_apart_mm) {
            (Some(n), Some(apart)) if n > 0 => format!("; {n} straps, no more than {apart:.0} mm apart"),
            (Some(n), None) if n > 0 => format!("; {n} straps"),
            _ => String::new(),
        };
        let _ = writeln!(
            text,
            "  {:<12} own weight {:.1}, most down {:.1}, most up {:.1}{straps}",
            wall.name, wall.permanent_kn, wall.most_kn, wall.uplift_kn
        );
    }
    text
}

/// One timber: all its checks, and the working of one of them.
pub fn timber(strength: &Strength, member: &MemberUse, check: &str, working: &[Line]) -> String {
    let mut text = format!(
        "{} {}, {}, {}: used {} {}\n",
        member.kind.name(),
        member.mark,
        size(member),
        strength.assumed.class,
        percent(member.left.used),
        verdict(member.left.verdict)
    );
    let would = would_pass(member);
    if !would.is_empty() {
        let _ = writeln!(text, "{would}");
    }
    text.push_str("\nIts checks\n");
    for one in &member.checks {
        let number = one.combination.and_then(|n| strength.combinations.get(n as usize));
        let under = number.map_or("all loads that come together", |c| c.name.as_str());
        let _ = writeln!(
            text,
            "  {:<32} {:>9}  {:.0} mm from its foot, under {under}; {}",
            one.name,
            percent(one.used),
            one.at_mm,
            one.clause
        );
    }
    let _ = writeln!(text, "\nWorking: {check}");
    for line in working {
        let how = if line.how.is_empty() { String::new() } else { format!(" = {}", line.how) };
        let unit = if line.unit.is_empty() { String::new() } else { format!(" {}", line.unit) };
        let _ = writeln!(text, "  {}{how} = {}{unit}   [{}]", line.what, drawings::figure(line.value), line.from);
    }
    text.push('\n');
    for caution in &strength.cautions {
        let _ = writeln!(text, "note  {caution}");
    }
    text
}
