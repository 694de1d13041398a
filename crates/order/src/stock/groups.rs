//! The timbers of a roof by section and class.

use super::same_section;
use crate::cutting::{Piece, Turns};
use job::{Job, StrengthClass};
use roof::solution::{Member, MemberKind, Solution};
use std::collections::BTreeMap;

/// Timbers of one section and class.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Thickness and depth, the smaller first, mm.
    pub section: [f64; 2],
    /// Strength class; none for boards and what carries nothing.
    pub class: Option<StrengthClass>,
    /// What is cut alike, the longest first.
    pub pieces: Vec<Piece>,
    /// For each of `pieces`, the kinds of timber.
    pub kinds: Vec<MemberKind>,
    /// Net volume of all of them, m³.
    pub volume_m3: f64,
}

impl Group {
    /// How many timbers there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.pieces.iter().map(|p| p.marks.len()).sum()
    }
}

/// Whether a timber is graded for strength.
const fn graded(kind: MemberKind) -> bool {
    use MemberKind::{BargeBoard, Fascia, GableLadder, LayBoard, Noggin, Soffit, Sprocket, Stud, TiltingFillet, Wedge};
    !matches!(
        kind,
        Fascia | Soffit | BargeBoard | TiltingFillet | LayBoard | Noggin | Sprocket | Wedge | GableLadder | Stud
    )
}

/// Whether one of its sides is to be seen.
const fn has_a_face(kind: MemberKind) -> bool {
    matches!(kind, MemberKind::Fascia | MemberKind::Soffit | MemberKind::BargeBoard)
}

/// Whether it is to be cut from long clean timber.
const fn wants_clean(kind: MemberKind) -> bool {
    matches!(kind, MemberKind::HipRafter | MemberKind::ValleyRafter)
}

/// Corners on the bench with the wide side of the section across `up`: a plate that lies flat is turned a quarter
/// about its length.
#[must_use]
pub fn bench_points(member: &Member) -> Vec<[f64; 3]> {
    let (t, d) = (member.size.thickness_mm, member.size.depth_mm);
    let turned = |[x, up, across]: [f64; 3]| if t > d { [x, across + t / 2.0, d / 2.0 - up] } else { [x, up, across] };
    member.bench.points.iter().copied().map(turned).collect()
}

/// The timbers of a roof by section and class: wide sections first, boards after what carries. What is not graded goes
/// with the graded timber of its section, if there is any. Folding wedges are left out: they come from offcuts.
#[must_use]
pub fn groups(job: &Job, solution: &Solution) -> Vec<Group> {
    let mut alike: BTreeMap<&str, Vec<&Member>> = BTreeMap::new();
    for member in solution.members.iter().filter(|m| m.kind != MemberKind::Wedge) {
        alike.entry(member.count_as.as_str()).or_default().push(member);
    }
    let mut out: Vec<Group> = Vec::new();
    for members in alike.values() {
        let Some(first) = members.first() else { continue };
        let (t, d) = (first.size.thickness_mm, first.size.depth_mm);
        let section = [t.min(d), t.max(d)];
        let class = graded(first.kind).then_some(job.strong.class);
        let at = out.iter().position(|g| g.class == class && same_section(g.section, section));
        let index = at.unwrap_or(out.len());
        if at.is_none() {
            out.push(Group { section, class, pieces: Vec::new(), kinds: Vec::new(), volume_m3: 0.0 });
        }
        let group = &mut out[index];
        group.volume_m3 += members.iter().map(|m| m.volume_m3).sum::<f64>();
        group.kinds.push(first.kind);
        group.pieces.push(Piece {
            marks: members.iter().map(|m| m.mark.clone()).collect(),
            points: bench_points(first),
            turns: if has_a_face(first.kind) { Turns::KeepSide } else { Turns::All },
            wants_clean: wants_clean(first.kind),
        });
    }
    // Noggins and the like come out of what the graded timber of their section leaves.
    for at in (0..out.len()).rev() {
        let graded = out.iter().position(|g| g.class.is_some() && same_section(g.section, out[at].section));
        if let (None, Some(graded)) = (out[at].class, graded) {
            let plain = out.remove(at);
            let graded = if graded > at { graded - 1 } else { graded };
            let group = &mut out[graded];
            group.pieces.extend(plain.pieces);
            group.kinds.extend(plain.kinds);
            group.volume_m3 += plain.volume_m3;
        }
    }
    for group in &mut out {
        let reach = |p: &Piece| p.points.iter().map(|q| q[0]).fold(0.0, f64::max);
        let mut order: Vec<usize> = (0..group.pieces.len()).collect();
        order.sort_by(|&a, &b| reach(&group.pieces[b]).total_cmp(&reach(&group.pieces[a])).then(a.cmp(&b)));
        group.kinds = order.iter().map(|&k| group.kinds[k]).collect();
        group.pieces = order.iter().map(|&k| group.pieces[k].clone()).collect();
    }
    out.sort_by(|a, b| {
        let key = |g: &Group| (g.class.is_none(), -(g.section[1] * 1e4) as i64, -(g.section[0] * 1e4) as i64);
        key(a).cmp(&key(b))
    });
    out
}
