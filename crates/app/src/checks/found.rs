//! The results, worded.

use super::figures::{left, percent, value, verdict, word};
use crate::views::{StrengthChecked, StrengthJoint, StrengthMatter, StrengthRow};
use crate::wording::Writing;
use crate::wording::kind;
use strength::whole::{Assumed, JointUse, MemberUse, Refused, Strength, Verdict};

/// What deflection is worked out under.
const ALL_TOGETHER: &str = "all that can be there together";

/// The whole of it.
pub(super) fn of(strength: &Strength, writing: &Writing) -> StrengthChecked {
    let engineer = matters(strength, writing);
    StrengthChecked {
        summary: summary(strength, engineer.len(), writing),
        timbers: strength.members.iter().map(|member| row(strength, member, writing)).collect(),
        joints: strength.joints.iter().map(|one| joint(one, writing)).collect(),
        engineer,
        assumed: assumed(&strength.assumed, &strength.editions, writing),
        cautions: strength.cautions.iter().map(|text| writing.say(text)).collect(),
    }
}

fn summary(strength: &Strength, matters: usize, writing: &Writing) -> Vec<String> {
    let members = &strength.members;
    let timbers = |of: Verdict| members.iter().filter(|m| m.left.verdict == of).count();
    let joints = |of: Verdict| strength.joints.iter().filter(|j| j.verdict == Some(of)).count();
    let counted = |what: &str, all: usize, over: usize, near: usize| {
        format!("{what}: {all} checked, {} over, {} near the limit.", none_or(over), none_or(near))
    };
    let mut out = vec![counted("Timbers", members.len(), timbers(Verdict::Over), timbers(Verdict::Near))];
    let figured = strength.joints.iter().filter(|j| j.verdict.is_some()).count();
    if figured > 0 {
        out.push(counted("Kinds of joint", figured, joints(Verdict::Over), joints(Verdict::Near)));
    }
    if let Some(most) = members.first() {
        out.push(format!("Most used: {} {}, {}.", most.kind.name(), most.mark, percent(most.left.used)));
    }
    out.push(format!("Matters for an engineer: {}.", none_or(matters)));
    if timbers(Verdict::Over) + joints(Verdict::Over) > 0 {
        out.push("What is over wants what would pass, or an engineer.".to_owned());
    }
    out.iter().map(|text| writing.say(text)).collect()
}

fn none_or(count: usize) -> String {
    if count == 0 { "none".to_owned() } else { count.to_string() }
}

fn row(strength: &Strength, member: &MemberUse, writing: &Writing) -> StrengthRow {
    let governing = member.checks.first();
    let passes = |size: &strength::whole::StructuralSize| {
        let section = writing.section(size.thickness_mm, size.depth_mm);
        writing.say(&format!("{section} would pass under the same loads."))
    };
    let is_over = member.left.verdict == Verdict::Over;
    let would_pass = member.would_pass.as_ref().map(passes);
    StrengthRow {
        mark: member.mark.clone(),
        lengths: member.lengths.clone(),
        kind: kind(writing.words, member.kind),
        size: writing.section(member.size.thickness_mm, member.size.depth_mm),
        check: governing.map_or_else(String::new, |check| writing.say(&check.name)),
        clause: governing.map_or_else(String::new, |check| check.clause.clone()),
        combination: writing.say(combination(strength, governing.and_then(|check| check.combination))),
        used: format!("{} used", percent(member.left.used)),
        left: left(member.left.used),
        verdict: verdict(member.left.verdict),
        word: writing.say_first(word(member.left.verdict)),
        would_pass: would_pass
            .or_else(|| is_over.then(|| writing.say("No stock section passes: shorten the span, or ask an engineer."))),
        tag: is_over.then(|| format!("over, {}", percent(member.left.used))),
    }
}

/// The loads of a combination by its number.
pub(super) fn combination(strength: &Strength, number: Option<u32>) -> &str {
    let at = |number: u32| strength.combinations.get(usize::try_from(number).ok()?).map(|c| c.name.as_str());
    number.and_then(at).unwrap_or(ALL_TOGETHER)
}

fn joint(joint: &JointUse, writing: &Writing) -> StrengthJoint {
    StrengthJoint {
        name: writing.say_first(&joint.name),
        marks: joint.marks.join(", "),
        force: format!("{} kN", value(joint.force_n / 1e3)),
        used: joint.used.map_or_else(|| "no figure".to_owned(), |used| format!("{} used", percent(used))),
        verdict: joint.verdict.map(verdict),
        word: writing.say_first(joint.verdict.map_or("not checked", word)),
        takes: writing.say_first(&joint.takes),
        remark: writing.say_first(&joint.remark),
        clause: joint.clause.clone(),
        lines: writing.steps(&joint.working),
    }
}

/// What is for an engineer; the same reason at several places is said once.
fn matters(strength: &Strength, writing: &Writing) -> Vec<StrengthMatter> {
    let mut groups: Vec<(&Refused, Vec<&str>)> = Vec::new();
    for refused in &strength.refused {
        match groups.iter_mut().find(|(first, _)| first.text == refused.text) {
            Some((_, places)) => places.push(&refused.place),
            None => groups.push((refused, vec![&refused.place])),
        }
    }
    let matter = |(refused, places): (&Refused, Vec<&str>)| {
        let marks = places.first().and_then(|place| place.split(", ").next()).unwrap_or_default();
        let timber = strength.members.iter().find(|m| m.mark == marks || m.lengths.iter().any(|l| l == marks));
        StrengthMatter {
            text: writing.say(&refused.text),
            places: writing.say(&places.join(", ")),
            mark: timber.and_then(|m| m.lengths.iter().find(|l| *l == marks).or(m.lengths.first())).cloned(),
        }
    };
    groups.into_iter().map(matter).collect()
}

fn assumed(assumed: &Assumed, editions: &[String], writing: &Writing) -> Vec<String> {
    let feet = match assumed.feet.as_str() {
        "held" => "The walls are taken to hold the feet of the rafters.",
        _ => "The feet of the rafters are free to move out where nothing ties them.",
    };
    let ridge = match assumed.ridge.as_str() {
        "beam" => "The ridge is a beam that carries the heads of the rafters.",
        _ => "The ridge is a board that pairs of rafters lean on; it carries nothing.",
    };
    let sharing = if assumed.sharing {
        "Rafters and joists stand close enough to share their loads."
    } else {
        "No timber shares its load with its neighbours."
    };
    let mut out = vec![
        format!("All timber is {}, service class {}.", assumed.class, assumed.service),
        feet.to_owned(),
        ridge.to_owned(),
        sharing.to_owned(),
    ];
    if assumed.from_memory > 0 {
        out.push(format!("Figures from memory of their source: {}.", assumed.from_memory));
    }
    out.push(format!("Codes: {}.", editions.join("; ")));
    out.iter().map(|text| writing.say(text)).collect()
}
