//! Which timber gives way where the check of a frame finds something wrong.

use super::Mends;
use crate::SolveError;
use crate::frame::timber::{CutUse, Role, Timber};
use crate::shape::Shape;
use crate::solution::{MemberKind, Notice, NoticeLevel};

/// Something wrong in a finished frame.
#[derive(Debug)]
pub struct Fault {
    /// What it is, in words for whoever is refused a roof.
    pub error: SolveError,
    /// The timber it was found on, as an index into the frame's timbers.
    pub on: usize,
    /// The other timber, if there is one.
    pub with: Option<usize>,
    /// For a contact that does not close: the cut, or `None` for a face that rests.
    pub cut: Option<usize>,
}

/// How firmly a timber keeps its place where two share wood: lower is firmer.
/// Plates are trimmed, and never left out.
fn rank(t: &Timber) -> u8 {
    match (t.role, t.kind) {
        (_, MemberKind::WallPlate) => 0,
        (Role::Fitted { .. }, _) => 5,
        (Role::Spine { .. }, MemberKind::RidgeBoard) => 1,
        (Role::Spine { .. }, _) => 2,
        _ if t.seat.is_some() => 3,
        _ => 4,
    }
}

/// Of two timbers, the firmer and the one that gives way.
fn ordered(timbers: &[Timber], a: usize, b: usize) -> [usize; 2] {
    if (rank(&timbers[a]), a) <= (rank(&timbers[b]), b) { [a, b] } else { [b, a] }
}

/// The number in the frame of the timber that a length is of.
fn whole(timbers: &[Timber], k: usize) -> usize {
    timbers[k].lengthened.as_ref().map_or(k, |l| l.first.index())
}

fn is_fitted(t: &Timber) -> bool {
    matches!(t.role, Role::Fitted { .. })
}

/// Does what can be done without framing again: a member that was fitted and
/// is at fault is left out, and a cut that misses its timber by a hair is a
/// cut of its own, to be packed. Gives what is then left to mend.
pub fn settle_fitted(
    timbers: &mut [Timber],
    shapes: &mut [Option<Shape>],
    marks: &[String],
    faults: Vec<Fault>,
    told: &mut Vec<Notice>,
) -> Vec<Fault> {
    let mut rest = Vec::new();
    for mut fault in faults {
        let with = fault.with.unwrap_or(fault.on);
        let [_, weak] = ordered(timbers, fault.on, with);
        let weak = if matches!(fault.error, SolveError::Gap { .. }) { fault.on } else { weak };
        if let (Some(cut), SolveError::Gap { gap, x, y, .. }) = (fault.cut, &fault.error) {
            let text = format!(
                "{} stands {gap:.1} mm off {} at one end: cut it to fit in place, or pack it.",
                marks[fault.on], marks[with]
            );
            timbers[fault.on].cuts[cut].purpose = CutUse::Trim;
            told.push(notice("stands-off", format!("({x:.0}, {y:.0})"), text));
        } else if is_fitted(&timbers[weak]) {
            leave_out(timbers, shapes, marks, weak, told);
        } else {
            (fault.on, fault.with) = (whole(timbers, fault.on), fault.with.map(|k| whole(timbers, k)));
            let [firm, weak] = ordered(timbers, fault.on, fault.with.unwrap_or(fault.on));
            (fault.on, fault.with) = (weak, (firm != weak).then_some(firm));
            rest.push(fault);
        }
    }
    rest
}

/// Leaves out a fitted member, all lengths of it and whatever rests on it.
fn leave_out(
    timbers: &mut [Timber],
    shapes: &mut [Option<Shape>],
    marks: &[String],
    which: usize,
    told: &mut Vec<Notice>,
) {
    let mut out = vec![which];
    while let Some(k) = out.pop() {
        if timbers[k].gone {
            continue;
        }
        let first = timbers[k].lengthened.as_ref().filter(|l| l.parts > 1).map(|l| l.first);
        let [foot, _] = timbers[k].line();
        let text = format!(
            "{} finds no sound place here and is left out: fit it, or what does its work, on site.",
            sentence(timbers[k].kind.name())
        );
        told.push(notice("member-left-out", format!("{} ({:.0}, {:.0})", marks[k], foot.x, foot.y), text));
        timbers[k].gone = true;
        shapes[k] = None;
        let goes_with = |t: &Timber| {
            let length = first.is_some() && t.lengthened.as_ref().is_some_and(|l| Some(l.first) == first);
            let held =
                t.lengthened.as_ref().is_some_and(|l| l.parts == 1 && l.splices.iter().any(|s| s.mate.index() == k));
            length || held || is_fitted(t) && t.rests.iter().any(|(_, on)| on.index() == k)
        };
        out.extend((0..timbers.len()).filter(|j| !timbers[*j].gone && goes_with(&timbers[*j])));
    }
}

/// Adds a mend for every fault; whether that changes anything.
pub fn mend(faults: &[Fault], mends: &mut Mends) -> bool {
    let mut changed = false;
    for fault in faults {
        let (weak, pair) = (fault.on, fault.with.map(|firm| [firm, fault.on]));
        // Two faults of one timber are often one: see what the first mend does.
        if mends.without.contains(&weak) {
            continue;
        }
        match pair {
            Some(pair) if !mends.apart.contains(&pair) => mends.apart.push(pair),
            _ => mends.without.push(weak),
        }
        changed = true;
    }
    changed
}

pub(super) fn sentence(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| format!("The {first}{}", letters.as_str()))
}

pub(super) fn notice(code: &str, place: String, text: String) -> Notice {
    Notice { code: code.into(), level: NoticeLevel::Warn, text, place }
}
