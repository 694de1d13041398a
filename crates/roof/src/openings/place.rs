//! Putting the holes into the carcass, and what is said about them.

use super::hole::Owner;
use super::trim::{plain, trim};
use super::{Hole, Trimmed, Void, rule, void};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::dormers;
use crate::fitted::{self, Hatch};
use crate::frame::timber::TimberId;
use crate::rules::Id;
use crate::solution::{NoticeLevel, OpeningOut};
use job::{Job, OpeningKind};

/// Trim all holes of the job.
///
/// # Errors
/// When a hole cannot be trimmed.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let holes = super::holes(carcass.job, carcass.surface, &carcass.heights)?;
    for hole in &holes {
        let trimmed = trim(carcass, hole)?;
        remarks(carcass, hole, &trimmed);
        let void = void::of_hole(carcass, &trimmed);
        carcass.voids.extend(void);
        carcass.trimmed.push(trimmed);
    }
    let upright: Vec<Void> = carcass.job.openings.iter().filter_map(|o| void::upright(carcass, o)).collect();
    carcass.voids.extend(upright);
    for trimmed in carcass.trimmed.clone() {
        dormers::place(carcass, &trimmed)?;
    }
    Ok(())
}

fn remarks(carcass: &mut Carcass<'_>, hole: &Hole, trimmed: &Trimmed) {
    let (name, what) = (&hole.name, hole.what);
    let cut = trimmed.cut.len();
    let clear = trimmed.inner[1] - trimmed.inner[0];
    let height = hole.s[1] - hole.s[0];
    let place = format!("{what} {name}");
    let rafters = match cut {
        0 => "no rafter is cut".to_string(),
        1 => "1 rafter is cut, and a trimming rafter stands on each side".to_string(),
        _ if trimmed.trimming[0].len() == 1 => {
            format!("{cut} rafters are cut, and a trimming rafter stands on each side")
        }
        _ => format!("{cut} rafters are cut: trimming rafters and trimmers are doubled"),
    };
    carcass.remark(
        NoticeLevel::Note,
        "opening-trimmed",
        place.clone(),
        format!(
            "The hole for {what} {name} is {clear:.0} mm clear between its trimming rafters and {height:.0} mm up the \
             slope between its trimmers; {rafters}. {} joist hangers. {}",
            trimmed.hangers(),
            rule::quote(carcass.job, Id::OpeningCutPerPair)
        ),
    );
    if cut > 0 {
        carcass.remark(
            NoticeLevel::Warn,
            "cut-rafters-lose-their-pair",
            place.clone(),
            format!(
                "Rafters cut for {what} {name} no longer thrust against those opposite: prop the ridge until the \
                 trimmers are fixed, and see that a tie or purlin takes the thrust. {}",
                rule::quote(carcass.job, Id::OpeningBreaksCouple)
            ),
        );
    }
    clearance(carcass, hole);
}

fn clearance(carcass: &mut Carcass<'_>, hole: &Hole) {
    let Owner::Opening(k) = hole.owner else { return };
    let Some(opening) = carcass.job.openings.get(k).filter(|o| o.kind == OpeningKind::Chimney) else { return };
    let (name, clear) = (&hole.name, rule::from_face(carcass.job, opening.flue_wall));
    let wall = opening.flue_wall.map_or_else(
        || "the thickness of its masonry is not given".to_string(),
        |wall| format!("its masonry is {wall:.0} mm thick round the flue"),
    );
    // The rule that asks less decides; a thin wall is bound by the distance from its face.
    let chosen = match opening.flue_wall {
        Some(wall) if rule::from_face(carcass.job, Some(wall)) < rule::from_face(carcass.job, None) => {
            Id::ChimneyFromFlue
        }
        _ => Id::ChimneyFromFace,
    };
    let text = format!(
        "Timber keeps {clear:.0} mm from the faces of chimney {name}; {wall}. The hole is longer up the slope than the stack, because the stack is upright and the trimmers are square to the rafters. {}",
        rule::quote(carcass.job, chosen)
    );
    carcass.remark(NoticeLevel::Note, "chimney-clearance", format!("chimney {name}"), text);
}

/// The openings of a solution; `marks` are those of all timbers.
pub fn out(job: &Job, trimmed: &[Trimmed], hatches: &[Hatch], marks: &[String]) -> Vec<OpeningOut> {
    let names = |ids: &mut dyn Iterator<Item = TimberId>| -> Vec<String> {
        ids.filter_map(|id| marks.get(id.index()).cloned()).collect()
    };
    trimmed
        .iter()
        .map(|t| OpeningOut {
            name: t.hole.name.clone(),
            kind: t.hole.what.into(),
            wall: t.hole.letter.clone(),
            outline: plain(t.hole.corners()),
            trimming_rafters: names(&mut t.trimming.iter().flatten().copied()),
            trimmers: names(&mut t.trimmers.iter().flatten().copied()),
            cut: names(&mut t.cut.iter().flatten().copied()),
            hangers: t.hangers(),
        })
        .chain(hatches.iter().filter_map(|h| {
            let opening = job.openings.get(h.opening)?;
            Some(OpeningOut {
                name: opening.name.clone(),
                kind: "hatch".into(),
                wall: job.walls.get(opening.wall).map_or_else(String::new, |w| w.letter.clone()),
                outline: plain(h.outline),
                trimming_rafters: names(&mut h.joists.beside.iter().copied()),
                trimmers: names(&mut h.joists.trimmers.iter().copied()),
                cut: names(&mut h.joists.cut.iter().flatten().copied()),
                hangers: fitted::hangers(&h.joists),
            })
        }))
        .collect()
}
