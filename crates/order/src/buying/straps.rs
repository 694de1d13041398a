//! Straps that hold plates down and gables to the roof.

use super::figures::Figures;
use super::line::{Line, LineKind};
use super::strength_says;
use geometry::DVec3;
use job::Job;
use job::Per;
use roof::solution::{LineKind as Edge, MemberKind, Solution};
use strength::whole::Strength;

/// A length that is over a whole number of spaces by less than this is that number, mm: rounding.
const ROUNDING: f64 = 0.01;

/// Tops of two slopes of a gable nearer than this are one place, mm: a strap there serves both.
const SAME_PLACE: f64 = 1.0;

/// Straps of a roof.
pub(super) struct Straps {
    /// Holding down.
    pub down: u32,
    down_words: String,
    strength_asked: bool,
    gable: u32,
    gable_words: String,
    gable_length: f64,
    /// Most that a gable strap should be, when none sold is long enough.
    gable_too_long: bool,
}

/// How many straps stand along a length with one at either end and no more than `apart` between, mm: `ceil(L/a) + 1`.
/// None where there is no length.
#[must_use]
pub fn strap_count(length: f64, apart: f64) -> u32 {
    if !(length > ROUNDING && apart > 0.0) {
        return 0;
    }
    ((length - ROUNDING) / apart).ceil().min(f64::from(u32::MAX - 1)) as u32 + 1
}

/// The straps of a roof.
pub(super) fn straps(job: &Job, solution: &Solution, strength: Option<&Strength>, figures: &Figures) -> Straps {
    let apart = figures.straps.down.apart.value;
    let (mut down, mut words, mut strength_asked) = (0_u32, Vec::new(), false);
    for wall in &solution.plan.walls {
        let plated = solution
            .members
            .iter()
            .any(|m| m.kind == MemberKind::WallPlate && m.wall.as_deref() == Some(wall.id.as_str()));
        if !plated {
            continue;
        }
        let by_rule = strap_count(wall.length_mm, apart);
        let asked = strength_says::straps(strength, &wall.id).filter(|asked| *asked > by_rule);
        strength_asked |= asked.is_some();
        let count = asked.unwrap_or(by_rule);
        down = down.saturating_add(count);
        let why = if asked.is_some() { " as the strength asks" } else { "" };
        words.push(format!("wall {} {count} on {:.2} m{why}", wall.id, wall.length_mm / 1000.0));
    }
    let gable = gable(solution, figures.straps.gable.apart.value);
    let needed = gable_length(job, figures);
    let lengths = &figures.straps.gable.lengths;
    let sold = lengths.iter().copied().find(|length| *length >= needed - ROUNDING);
    Straps {
        down,
        down_words: words.join("; "),
        strength_asked,
        gable: gable.0,
        gable_words: gable.1,
        gable_length: sold.unwrap_or(needed),
        gable_too_long: sold.is_none(),
    }
}

/// Straps up the slopes of gables: along each verge, with one at the top shared by both slopes.
fn gable(solution: &Solution, apart: f64) -> (u32, String) {
    let mut tops: Vec<DVec3> = Vec::new();
    let (mut sum, mut words) = (0_u32, Vec::new());
    for line in solution.lines.iter().filter(|line| line.kind == Edge::Verge) {
        let top = DVec3::from_array(line.to);
        let count = strap_count(line.length_mm, apart);
        let shared = tops.iter().any(|other| other.distance(top) < SAME_PLACE);
        if !shared {
            tops.push(top);
        }
        let mine = if shared { count.saturating_sub(1) } else { count };
        sum = sum.saturating_add(mine);
        words.push(format!(
            "{mine} on {:.2} m{}",
            line.length_mm / 1000.0,
            if shared { ", the top one shared" } else { "" }
        ));
    }
    (sum, words.join("; "))
}

/// From the down-turn over the wall to the far side of the last timber that it crosses, mm.
fn gable_length(job: &Job, figures: &Figures) -> f64 {
    let gable = &figures.straps.gable;
    let rafter = &job.timber.rafter;
    gable.wall.value
        + job.verge.inset.max(0.0)
        + (gable.over.value - 1.0).max(0.0) * rafter.centres
        + rafter.size.thickness
}

/// Lines for straps and their screws.
pub(super) fn lines(straps: &Straps, figures: &Figures) -> Vec<Line> {
    let mut lines = Vec::new();
    let (down, gable) = (&figures.straps.down, &figures.straps.gable);
    if straps.down > 0 {
        let (wide, thick, length) = (down.wide.value, down.thick.value, down.length.value);
        lines.push(Line {
            item: "strap-down".to_owned(),
            what: "holding-down straps, galvanised, cranked end".to_owned(),
            size: format!("{wide} × {thick} × {length} mm"),
            quantity: f64::from(straps.down),
            unit: Per::Each,
            kg: f64::from(straps.down) * figures.bar_kg(wide, thick, length),
            counted: format!(
                "one at either end and no more than {:.2} m apart: {}",
                down.apart.value / 1000.0,
                straps.down_words
            ),
            source: if straps.strength_asked {
                format!("{}; the uplift of the strength", down.apart.source)
            } else {
                down.apart.source.clone()
            },
            standing: down.apart.standing.to_string(),
            kind: LineKind::Counted,
        });
    }
    if straps.gable > 0 {
        let (wide, thick) = (gable.wide.value, gable.thick.value);
        let long = if straps.gable_too_long { "; longer than is usually sold" } else { "" };
        lines.push(Line {
            item: "strap-gable".to_owned(),
            what: "straps from the gable across the rafters, galvanised".to_owned(),
            size: format!("{wide} × {thick} × {:.0} mm, and {:.0} mm turned down", straps.gable_length, gable.down.value),
            quantity: f64::from(straps.gable),
            unit: Per::Each,
            kg: f64::from(straps.gable) * figures.bar_kg(wide, thick, straps.gable_length + gable.down.value),
            counted: format!(
                "up the slopes, no more than {:.2} m apart: {}; each over {:.0} rafters, with noggings and packing from \
                 offcuts below{long}. Ask building control whether the ceiling needs them too",
                gable.apart.value / 1000.0,
                straps.gable_words,
                gable.over.value
            ),
            source: gable.apart.source.clone(),
            standing: gable.apart.standing.to_string(),
            kind: LineKind::Counted,
        });
    }
    let [into_wall, into_noggings] = [down.screwed.value as u32, gable.screwed.value as u32];
    let count = straps.down.saturating_mul(into_wall).saturating_add(straps.gable.saturating_mul(into_noggings));
    if count > 0 {
        let screws = &figures.screws;
        lines.push(Line {
            item: screws.item.clone(),
            what: screws.what.clone(),
            size: screws.size.clone(),
            quantity: f64::from(count),
            unit: Per::Each,
            kg: f64::from(count) * figures.rod_kg(screws.diameter, screws.length),
            counted: format!(
                "holding-down straps {} × {into_wall} into the wall; straps of gables {} × {into_noggings}",
                straps.down, straps.gable
            ),
            source: format!("{}; {}; {}", screws.source, down.screwed.source, gable.screwed.source),
            standing: down.screwed.standing.to_string(),
            kind: LineKind::Allowance,
        });
    }
    lines
}
