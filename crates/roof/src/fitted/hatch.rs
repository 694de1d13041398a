//! Holes in the ceiling: hatches, and where chimneys pass through it.

use super::trimmers::{self, Rect, TrimmedJoists};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::openings::{Misfit, rule};
use crate::rules::{self, Id};
use crate::solution::NoticeLevel;
use geometry::surface::WallId;
use geometry::{Angle, DVec3};
use job::{Distance, Opening, OpeningKind};

/// A hole in the ceiling as it was trimmed.
#[derive(Clone, Debug)]
pub struct Hatch {
    /// Index into the job's openings.
    pub opening: usize,
    /// Its corners on the undersides of the joists, mm.
    pub outline: [DVec3; 4],
    /// Joists beside it, trimmers and cut joists.
    pub joists: TrimmedJoists,
}

/// Trim the ceiling joists round hatches and chimneys.
///
/// # Errors
/// When a hatch cannot be trimmed where the job puts it.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let openings = carcass.job.openings.clone();
    for (k, opening) in openings.iter().enumerate() {
        match opening.kind {
            OpeningKind::Hatch => hatch(carcass, k, opening)?,
            OpeningKind::Chimney => chimney(carcass, opening),
            OpeningKind::RoofWindow => {}
        }
    }
    Ok(())
}

fn hatch(carcass: &mut Carcass<'_>, k: usize, opening: &Opening) -> Result<(), SolveError> {
    let letter = carcass.job.walls.get(opening.wall).map_or_else(String::new, |w| w.letter.clone());
    let refused = |misfit: Misfit| SolveError::Opening {
        what: "hatch",
        name: opening.name.clone(),
        wall: letter.clone(),
        misfit: Box::new(misfit),
        nearest: None,
    };
    let rules = rules::of(&carcass.job.region);
    let least = rules.value(Id::HatchClear);
    if !(opening.width >= least && opening.height >= least) {
        return Err(refused(Misfit::HatchSmall { least }));
    }
    let rect = plan_of(carcass, opening, 0.0).ok_or_else(|| refused(Misfit::Outside))?;
    let joists = trimmers::trim(carcass, &rect).map_err(refused)?;
    let cut = joists.cut.len();
    let beside = match cut {
        0 => "no joist is cut".to_string(),
        1 => "1 joist is cut".to_string(),
        _ => format!("{cut} joists are cut"),
    };
    let doubled = if cut > 0 { " Double the joists beside it with another of full length." } else { "" };
    carcass.remark(
        NoticeLevel::Note,
        "hatch-trimmed",
        format!("hatch {}", opening.name),
        format!(
            "Hatch {} is trimmed between two joists; {beside}, {} joist hangers.{doubled} {}",
            opening.name,
            hangers(&joists),
            rules.get(Id::HatchClear).quote()
        ),
    );
    let outline = rect.corners().map(|p| p.extend(joists.z[0]));
    carcass.hatches.push(Hatch { opening: k, outline, joists });
    Ok(())
}

/// A chimney passes through the ceiling as well; where its joists cannot be
/// trimmed that is said.
fn chimney(carcass: &mut Carcass<'_>, opening: &Opening) {
    let Some(size) = carcass.job.timber.parts.ceiling_joist else { return };
    let clear = rule::from_face(carcass.job, opening.flue_wall);
    let Some(rect) = plan_of(carcass, opening, clear) else { return };
    let plate = carcass.job.walls.get(opening.wall).map_or(0.0, |w| w.plate);
    // Joists on a higher plate opposite lie higher than this wall's own.
    let levels = carcass.job.walls.iter().map(|w| w.plate).fold(plate, f64::max);
    let block = rect.block([plate, levels + size.depth]);
    let crossed = carcass.in_the_way(core::slice::from_ref(&block));
    if crossed.is_empty() {
        return;
    }
    let place = format!("chimney {}", opening.name);
    match trimmers::trim(carcass, &rect) {
        Ok(joists) => {
            let text = format!(
                "Where chimney {} passes through the ceiling, {} joists are cut and trimmed; {} joist hangers. Double \
                 the joists beside it with another of full length.",
                opening.name,
                joists.cut.len(),
                hangers(&joists)
            );
            carcass.remark(NoticeLevel::Note, "chimney-through-ceiling", place, text);
            carcass.ceiling_hangers += hangers(&joists);
        }
        Err(why) => {
            trimmers::part(carcass, &rect);
            let text = format!(
                "The ceiling joists cannot be trimmed round chimney {}: it {why}. They stop {clear:.0} mm from its \
                 faces: frame them to one another on site.",
                opening.name
            );
            carcass.remark(NoticeLevel::Warn, "chimney-through-ceiling", place, text);
        }
    }
}

/// Two for each trimmer between the joists, and one for each cut end.
pub fn hangers(joists: &TrimmedJoists) -> u32 {
    (4 + 2 * joists.cut.len()) as u32
}

/// The plan of an opening, and so much more on each side.
pub fn plan_of(carcass: &Carcass<'_>, opening: &Opening, more: f64) -> Option<Rect> {
    let [a, b] = carcass.surface.wall_ends(WallId(opening.wall as u32))?;
    let along = (b - a).normalize_or_zero();
    let wall = carcass.job.walls.get(opening.wall)?;
    let up = match opening.up {
        Distance::Plan(up) => up,
        Distance::Slope(up) => up * Angle::deg(wall.pitch_deg).cos(),
    };
    let (x, y) = (along.dot(a) + opening.along, along.perp().dot(a) + up);
    let rect = Rect { along, x: [x - more, x + opening.width + more], y: [y - more, y + opening.height + more] };
    let finite = rect.x.iter().chain(&rect.y).all(|v| v.is_finite());
    (finite && rect.x[1] > rect.x[0] && rect.y[1] > rect.y[0]).then_some(rect)
}
