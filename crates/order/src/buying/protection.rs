//! Preservative for the cut ends of treated timber, and treatment where it is charged by itself.

use super::figures::Figures;
use super::line::{Line, LineKind};
use geometry::DVec3;
use job::Job;
use job::Per;
use roof::rules::Standing;
use roof::solution::{Member, MemberKind, Solution};

/// Names of the faces of a timber that its cuts have not made.
const SAWN: [&str; 4] = ["top", "underside", "left", "right"];

/// mm² in a m².
const MM2_IN_M2: f64 = 1e6;
/// mm³ in a m³.
const MM3_IN_M3: f64 = 1e9;

/// Whether a timber is structural: boards, fillets and wedges are not bought with it.
pub(super) const fn is_structural(kind: MemberKind) -> bool {
    !matches!(
        kind,
        MemberKind::Fascia
            | MemberKind::Soffit
            | MemberKind::TiltingFillet
            | MemberKind::BargeBoard
            | MemberKind::LayBoard
            | MemberKind::Wedge
    )
}

/// Lines for preservative and treatment; none when timber is not bought treated.
pub(super) fn lines(job: &Job, solution: &Solution, figures: &Figures) -> Vec<Line> {
    if !job.ordering.treated {
        return Vec::new();
    }
    let structural: Vec<&Member> = solution.members.iter().filter(|m| is_structural(m.kind)).collect();
    let (mut faces, mut area) = (0_u32, 0.0);
    for member in &structural {
        let cut = cut_faces(member);
        faces += cut.0;
        area += cut.1 / MM2_IN_M2;
    }
    let tin = &figures.preservative;
    let litres = area * tin.coats.value / tin.covers.value;
    let tins = (litres / tin.tin.value).ceil();
    let mut lines = Vec::new();
    if tins > 0.0 {
        lines.push(Line {
            item: "preservative".to_owned(),
            what: "preservative for cut ends, brushed".to_owned(),
            size: format!("tins of {} l", tin.tin.value),
            quantity: tins,
            unit: Per::Each,
            kg: tins * tin.tin.value * tin.density.value,
            counted: format!(
                "{faces} cut faces of {} timbers, {area:.2} m² in all, {:.0} coats, {} m² to the litre: {litres:.1} l",
                structural.len(),
                tin.coats.value,
                tin.covers.value
            ),
            source: format!("{}; {}", tin.coats.source, tin.covers.source),
            standing: tin.covers.standing.to_string(),
            kind: LineKind::Allowance,
        });
    }
    let volume: f64 = structural.iter().map(|m| m.size.thickness_mm * m.size.depth_mm * m.stock_length_mm).sum();
    if volume > 0.0 {
        lines.push(Line {
            item: "treatment".to_owned(),
            what: "treatment of structural timber, where it is charged by itself".to_owned(),
            size: String::new(),
            quantity: volume / MM3_IN_M3,
            unit: Per::CubicMetre,
            kg: 0.0,
            counted: format!("the sticks that {} timbers are cut from, without what is left over", structural.len()),
            source: "the timbers of the roof".to_owned(),
            standing: Standing::Derived.to_string(),
            kind: LineKind::ToChoose,
        });
    }
    lines
}

/// How many faces cuts have made, and their area, mm².
fn cut_faces(member: &Member) -> (u32, f64) {
    let solid = &member.solid;
    let mine = solid.faces.iter().zip(&solid.names).filter(|(_, name)| !SAWN.contains(&name.as_str()));
    mine.fold((0, 0.0), |(count, sum), (ring, _)| {
        let ring = ring.iter().filter_map(|k| solid.points.get(*k as usize));
        (count + 1, sum + area(ring.copied().map(DVec3::from_array)))
    })
}

/// Area of a flat ring.
pub(super) fn area(ring: impl Iterator<Item = DVec3>) -> f64 {
    let points: Vec<DVec3> = ring.collect();
    let Some(first) = points.first() else { return 0.0 };
    let twice = points.windows(2).fold(DVec3::ZERO, |sum, side| match side {
        [a, b] => sum + (*a - *first).cross(*b - *first),
        _ => sum,
    });
    twice.length() / 2.0
}
