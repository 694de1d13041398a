//! Notices, walls, ridges and timbers as rows.

use super::Shown;
use crate::bench::progress;
use crate::views::{Done, MemberRow, NoticeRow, RidgeRow, Tally, WallRow};
use crate::wording::{kind, say};
use job::written::degrees;
use roof::solution::{Member, Notice, NoticeLevel};

/// The notices, the gravest first.
pub(super) fn notices(shown: &Shown<'_>) -> Vec<NoticeRow> {
    let mut sorted: Vec<&Notice> = shown.solution.notices.iter().collect();
    sorted.sort_by_key(|notice| notice.level);
    let row = |notice: &Notice| NoticeRow {
        level: match notice.level {
            NoticeLevel::Stop => "stop",
            NoticeLevel::Warn => "warn",
            NoticeLevel::Note => "note",
        }
        .to_owned(),
        code: notice.code.clone(),
        text: say(shown.words, &notice.text).into_owned(),
        place: say(shown.words, &notice.place).into_owned(),
        mark: shown.solution.members.iter().any(|m| m.mark == notice.place).then(|| notice.place.clone()),
    };
    sorted.into_iter().map(row).collect()
}

/// The walls.
pub(super) fn walls(shown: &Shown<'_>) -> Vec<WallRow> {
    let row = |wall: &roof::solution::WallOut| WallRow {
        wall: wall.id.clone(),
        line: [wall.from, wall.to],
        length: shown.lengths.write_with_unit(wall.length_mm),
        gable: wall.gable,
        pitch_deg: wall.pitch_deg,
        form: wall.pitch_deg.map_or_else(|| say(shown.words, "gable").into_owned(), degrees),
    };
    shown.solution.plan.walls.iter().map(row).collect()
}

/// The ridges.
pub(super) fn ridges(shown: &Shown<'_>) -> Vec<RidgeRow> {
    let row = |ridge: super::Ridge<'_>| RidgeRow {
        line: [ridge.line.from, ridge.line.to],
        height_mm: ridge.height(),
        height: shown.lengths.write_with_unit(ridge.height()),
        id: ridge.id,
    };
    super::ridges(shown.solution).into_iter().map(row).collect()
}

/// The timbers.
pub(super) fn members(shown: &Shown<'_>) -> Vec<MemberRow> {
    shown.solution.members.iter().map(|member| member_row(shown, member)).collect()
}

fn member_row(shown: &Shown<'_>, member: &Member) -> MemberRow {
    let length = shown.lengths.write_with_unit(member.cut_length_mm);
    let name = say(shown.words, member.kind.name());
    let spoken = match &member.wall {
        Some(wall) => format!("{name} {}, wall {wall}, {length}", member.mark),
        None => format!("{name} {}, {length}", member.mark),
    };
    let progress = progress(shown.job, member);
    let state = match progress.done {
        Done::No => "",
        Done::Cut => ", cut",
        Done::Fixed => ", fixed",
    };
    let spoken = spoken + state + if progress.changed { ", changed since" } else { "" };
    MemberRow {
        mark: member.mark.clone(),
        piece: member.count_as.clone(),
        kind: kind(shown.words, member.kind),
        spoken,
        done: progress.done,
        changed: progress.changed,
    }
}

/// How much is done.
pub(super) fn tally(members: &[MemberRow]) -> Tally {
    let count = |counts: &dyn Fn(&MemberRow) -> bool| {
        u32::try_from(members.iter().filter(|member| counts(member)).count()).unwrap_or(u32::MAX)
    };
    Tally {
        timbers: count(&|_| true),
        cut: count(&|member| member.done >= Done::Cut),
        fixed: count(&|member| member.done == Done::Fixed),
        changed: count(&|member| member.changed),
    }
}
