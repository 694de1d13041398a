//! A check with its working, and a piece in one line.

use super::figures::{percent, verdict, word};
use super::found::combination;
use crate::refusal::Refusal;
use crate::views::{StrengthLine, StrengthWhy, StrengthWorking};
use crate::wording::Writing;
use job::written::Lengths;
use strength::whole::{Checks, MemberUse, Strength, Verdict};

const UNITS: &str = "The working stays in mm and N, the units of the code.";

/// The working of a check of a timber.
pub(super) fn of(checks: &Checks, writing: &Writing, ask: &StrengthWhy) -> Result<StrengthWorking, Refusal> {
    let strength = &checks.strength;
    let unknown = || {
        Refusal::new(
            "no-such-check",
            format!("Nothing was checked of {} by this name", ask.mark),
            "Ask again from the list: the roof may have changed since",
        )
    };
    let member = strength.members.iter().find(|m| is(m, &ask.mark)).ok_or_else(unknown)?;
    let named = |name: &str| member.checks.iter().find(|check| writing.say(&check.name) == name || check.name == name);
    let check = match &ask.check {
        Some(name) => named(name),
        None => member.checks.first(),
    }
    .ok_or_else(unknown)?;
    let lines = checks.working(&member.mark, Some(&check.name)).ok_or_else(unknown)?;
    let at = writing.lengths.write_with_unit(check.at_mm);
    let under = combination(strength, check.combination);
    let idea = format!("Asked of it: {} of what it can take, {at} from its foot, under {under}.", percent(check.used));
    let mut cautions = Vec::new();
    if writing.lengths == Lengths::FeetInches {
        cautions.push(writing.say(UNITS));
    }
    cautions.extend(strength.cautions.iter().map(|text| writing.say(text)));
    Ok(StrengthWorking {
        title: writing.say_first(&format!("{} {}: {}", member.kind.name(), member.mark, check.name)),
        value: format!("{} used", percent(check.used)),
        idea: writing.say(&idea),
        lines: writing.steps(&lines),
        clause: check.clause.clone(),
        checks: member.checks.iter().map(|one| (writing.say(&one.name), percent(one.used))).collect(),
        check: writing.say(&check.name),
        cautions,
    })
}

fn is(member: &MemberUse, mark: &str) -> bool {
    member.mark == mark || member.lengths.iter().any(|length| length == mark)
}

/// The most used of some timbers in one line.
pub(super) fn one_line(strength: &Strength, writing: &Writing, marks: &[String]) -> Option<StrengthLine> {
    // Members stand with the most used first.
    let most = strength.members.iter().find(|member| marks.iter().any(|mark| is(member, mark)))?;
    let check = most.checks.first()?;
    let mut words = format!("{} used, {}", percent(most.left.used), check.name);
    if marks.len() > 1 {
        words.push_str(&format!(", most at {}", most.mark));
    }
    if most.left.verdict != Verdict::Within {
        words.push_str(&format!(": {}", word(most.left.verdict)));
    }
    Some(StrengthLine { mark: most.mark.clone(), words: writing.say(&words), verdict: verdict(most.left.verdict) })
}
