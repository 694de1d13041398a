//! Firring under rafters, and what there is to say of plates out of parallel.

use crate::frame::timber::{Role, Timber};
use crate::level_ridge::{Levelled, OutOfParallel};
use crate::solution::{Notice, NoticeLevel, Solution};
use geometry::surface::WallId;
use job::Job;

/// Adds firring rafter by rafter to the strips of the plates, and says what
/// was done about plates out of parallel.
pub fn tell(job: &Job, levelled: &Levelled, timbers: &[Timber], names: &[String], solution: &mut Solution) {
    let tops: Vec<(WallId, f64)> = timbers
        .iter()
        .filter_map(|t| if let Role::Plate { wall } = t.role { Some((wall, t.base + t.top_offset)) } else { None })
        .collect();
    let firred: Vec<(&str, WallId, f64)> = timbers
        .iter()
        .zip(names)
        .filter(|(t, _)| !t.gone)
        .flat_map(|(t, name)| t.tails.iter().filter_map(move |tail| Some((name.as_str(), tail.wall, t.seat?.level))))
        .filter(|(_, wall, _)| levelled.plates.get(wall.index()).is_some_and(Option::is_some))
        .filter_map(|(name, wall, level)| {
            let top = tops.iter().find(|(w, _)| *w == wall)?.1;
            Some((name, wall, level - top))
        })
        .collect();
    let of_plate = |mark: &str| names.iter().position(|name| name == mark).map(|k| timbers[k].role);
    for strip in &mut solution.setting_out {
        let Some(Role::Plate { wall }) = of_plate(&strip.mark) else { continue };
        for station in &mut strip.stations {
            let found = firred.iter().find(|(name, w, _)| *name == station.mark && *w == wall);
            station.firring_mm = found.map(|(.., mm)| *mm);
        }
    }
    let letter = |wall: WallId| job.walls.get(wall.index()).map_or("", |w| w.letter.as_str());
    for told in levelled.told.iter().filter(|told| told.is_told()) {
        let (wall, across) = (letter(told.wall), letter(told.across));
        let how = if told.one { "line" } else { "parallel" };
        let apart = format!("Wall {wall} runs {:.0} mm out of {how} with wall {across} over its length.", told.by);
        let (level, code, text) = if told.packed && told.one {
            (
                NoticeLevel::Note,
                "one-slope",
                format!("{apart} They carry one slope: what stands on them is firred up as their strips say."),
            )
        } else if told.one {
            (
                NoticeLevel::Warn,
                "slopes-apart",
                format!(
                    "{apart} One slope over both would take firring of {:.0} mm: raise `roof.packing` to that if the \
                     plates can carry it. The two slopes meet in a line beside the wing.",
                    told.firring
                ),
            )
        } else if told.packed {
            let mut mine = firred.iter().filter(|(_, w, _)| *w == told.wall);
            let first = mine.next();
            let most = mine.chain(first).max_by(|a, b| a.2.total_cmp(&b.2));
            let at = most.map_or_else(String::new, |(name, _, mm)| format!(", {mm:.0} mm at the most, under {name}"));
            (
                NoticeLevel::Note,
                "ridge-kept-level",
                format!(
                    "{apart} The ridge is kept level: rafters on wall {wall} stand on firring{at}; its strip says how \
                     much under each. Write `roof.ridge = \"as-it-falls\"` to pack nothing and let the ridge fall \
                     {:.0} mm.",
                    told.falls
                ),
            )
        } else {
            (NoticeLevel::Warn, "ridge-falls", format!("{apart} {}", ways(told)))
        };
        let place = format!("walls {across} and {wall}");
        solution.notices.push(Notice { code: code.into(), level, text, place });
    }
    solution.notices.sort_by_key(|notice| notice.level);
}

/// The ways there are where a ridge is not kept level.
fn ways(told: &OutOfParallel) -> String {
    format!(
        "The ridge falls {:.0} mm. A level one would take firring of {:.0} mm: raise `roof.packing` to that if the plate \
         can carry it, bed the plate nearer to parallel, or take a pitch of {:.1}° or less there.",
        told.falls, told.firring, told.pitch_deg
    )
}
