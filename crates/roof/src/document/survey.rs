//! A measured plan in the document, and what the carpenter must know of it.

use crate::solution::{LevelOut, LevelsOut, MeasurementKind, MeasurementOut, Notice, NoticeLevel, SurveyOut, WorstOut};
use geometry::survey::{Levels, Measure, Reading, levels};
use job::{Job, Survey, wall_letter};

/// Plates further out of level than this are to be packed before anything is
/// set out on them, mm (common practice: what a bed of mortar takes up).
const LEVEL_ENOUGH: f64 = 5.0;

/// Wind and packing less than this is not worth a word, mm.
const WORTH_A_WORD: f64 = 0.5;

/// The survey of a job in the document.
pub fn of(job: &Job) -> Option<SurveyOut> {
    let Survey { measured, adjusted, .. } = job.survey.as_ref()?;
    Some(SurveyOut {
        measurements: adjusted.readings.iter().map(measurement).collect(),
        freedom: adjusted.freedom as u32,
        tolerance_mm: measured.tolerance,
        worst: adjusted.worst.as_ref().map(|worst| WorstOut {
            measurement: worst.reading as u32,
            off: worst.off,
            slip: worst.slip,
            rivals: worst.rivals.iter().map(|k| *k as u32).collect(),
        }),
        weakest: [adjusted.weakest.from, adjusted.weakest.to].map(wall_letter),
        weakest_within_mm: adjusted.weakest.within,
        taken_outward: adjusted.taken_outward.iter().map(|k| wall_letter(*k)).collect(),
        levels: levels_of(job).map(|(survey, levels)| levels_out(survey, &levels)),
    })
}

/// By how much a measured plan does not close, mm.
pub fn closing_error(job: &Job) -> f64 {
    job.survey.as_ref().map_or(0.0, |survey| survey.adjusted.closing_error)
}

fn levels_of(job: &Job) -> Option<(&Survey, Levels)> {
    let survey = job.survey.as_ref()?;
    Some((survey, levels(&survey.adjusted.corners, &survey.levels)?))
}

fn measurement(reading: &Reading) -> MeasurementOut {
    MeasurementOut {
        kind: match reading.what {
            Measure::Side(_) => MeasurementKind::Wall,
            Measure::Diagonal(..) => MeasurementKind::Diagonal,
            Measure::Turn(_) => MeasurementKind::Turn,
        },
        name: match reading.what {
            Measure::Side(k) | Measure::Turn(k) => wall_letter(k),
            Measure::Diagonal(a, b) => pair(a, b),
        },
        measured: reading.measured,
        adjusted: reading.adjusted,
        residual: reading.residual,
        redundancy: reading.redundancy,
        standardised: reading.standardised,
    }
}

fn pair(a: usize, b: usize) -> String {
    format!("{}-{}", wall_letter(a.min(b)), wall_letter(a.max(b)))
}

fn levels_out(survey: &Survey, out: &Levels) -> LevelsOut {
    let off = |k: usize| out.tilt.as_ref().and_then(|tilt| tilt.off.get(k)).map(|l| l.height);
    let corners = survey.levels.iter().zip(&out.packing).enumerate();
    LevelsOut {
        highest: wall_letter(out.highest),
        out_of_level_mm: out.out_of_level,
        corners: corners
            .map(|(k, (level, packing))| LevelOut {
                corner: wall_letter(level.corner),
                level_mm: level.height,
                packing_mm: packing.height,
                off_plane_mm: off(k),
            })
            .collect(),
        fall_mm_per_m: out.tilt.as_ref().map(|tilt| tilt.fall_per_metre),
        falls_towards_deg: out.tilt.as_ref().map(|tilt| tilt.towards_deg),
    }
}

/// What the carpenter must know of the survey and the levels.
pub fn notices(job: &Job) -> Vec<Notice> {
    let mut out = Vec::new();
    let Some(survey) = &job.survey else { return out };
    let mut add = |level, code: &str, place: String, text: String| {
        out.push(Notice { code: code.into(), level, text, place });
    };
    let adjusted = &survey.adjusted;
    let called = |k: usize| adjusted.readings.get(k).map_or_else(String::new, called);
    let weakest = pair(adjusted.weakest.from, adjusted.weakest.to);
    match &adjusted.worst {
        Some(worst) if worst.slip => {
            let long = long_or_short(worst.off, adjusted.readings.get(worst.reading));
            let name = called(worst.reading);
            let again = if worst.rivals.is_empty() {
                format!("Measure {name} again before anything is cut")
            } else {
                let rivals: Vec<String> = worst.rivals.iter().map(|k| called(*k)).collect();
                format!(
                    "Nothing tells it from {}: measure them all again before anything is cut, and one distance more",
                    listed(&rivals)
                )
            };
            // What is cut from a plan that cannot be right is firewood.
            let level = if job.setting_out.accept { NoticeLevel::Warn } else { NoticeLevel::Stop };
            add(
                level,
                "survey-disagrees",
                name.clone(),
                format!(
                    "{} reads {long} against the others, more than chance. {again}{}.",
                    capital(&name),
                    if job.setting_out.accept {
                        ""
                    } else {
                        ", or write `accept = true` in the plan to build by them as they are"
                    }
                ),
            );
        }
        None if adjusted.freedom == 0 => add(
            NoticeLevel::Warn,
            "survey-unchecked",
            "plan".into(),
            format!(
                "There is no measurement to spare, so that a slip of the tape would go unseen. Measure one more, best \
                 {weakest}."
            ),
        ),
        _ => {}
    }
    let most = adjusted.readings.iter().filter(|r| !matches!(r.what, Measure::Turn(_)));
    if let Some(most) = most.max_by(|a, b| a.residual.abs().total_cmp(&b.residual.abs()))
        && adjusted.freedom > 0
    {
        let spare =
            if adjusted.freedom == 1 { "one to spare".into() } else { format!("{} to spare", adjusted.freedom) };
        add(
            NoticeLevel::Note,
            "survey-closed",
            "plan".into(),
            format!(
                "{} measurements, {spare}, were brought into one plan. They do not close by {:.0} mm; the length \
                 changed most is {}, by {:.1} mm. {weakest} is known least, to {:.0} mm either way.",
                adjusted.readings.len(),
                adjusted.closing_error,
                self::called(most),
                most.residual,
                adjusted.weakest.within
            ),
        );
    }
    if !adjusted.taken_outward.is_empty() {
        let letters: Vec<String> = adjusted.taken_outward.iter().map(|k| wall_letter(*k)).collect();
        let (corners, point) = if letters.len() == 1 { ("Corner", "points") } else { ("Corners", "point") };
        add(
            NoticeLevel::Warn,
            "survey-taken-outward",
            "plan".into(),
            format!(
                "{corners} {} could point into the building for all that was measured. It is taken that no corner does: \
                 if that is right, write `inward = []` in the plan; if one {point} inwards, name it there.",
                listed(&letters)
            ),
        );
    }
    out.extend(levels_of(job).and_then(|(_, levels)| level_notice(&levels)));
    out
}

/// `diagonal B-D`, `wall A`, `the turn at C`.
fn called(reading: &Reading) -> String {
    match reading.what {
        Measure::Side(k) => format!("wall {}", wall_letter(k)),
        Measure::Diagonal(a, b) => format!("diagonal {}", pair(a, b)),
        Measure::Turn(k) => format!("the turn at {}", wall_letter(k)),
    }
}

fn long_or_short(off: f64, reading: Option<&Reading>) -> String {
    if reading.is_some_and(|r| matches!(r.what, Measure::Turn(_))) {
        return format!("{:.1}° {}", off.abs(), if off > 0.0 { "wide" } else { "narrow" });
    }
    format!("{:.0} mm {}", off.abs(), if off > 0.0 { "long" } else { "short" })
}

fn level_notice(levels: &Levels) -> Option<Notice> {
    if levels.out_of_level < WORTH_A_WORD {
        return None;
    }
    let pack: Vec<String> = levels
        .packing
        .iter()
        .filter(|l| l.height >= WORTH_A_WORD)
        .map(|l| format!("{} {:.0} mm", wall_letter(l.corner), l.height))
        .collect();
    let tilt = levels.tilt.as_ref().map_or_else(String::new, |tilt| {
        let wind = tilt.off.iter().map(|l| l.height.abs()).fold(0.0, f64::max);
        let falls = format!(
            " Together they fall {:.1} mm a metre towards the {} of the plan",
            tilt.fall_per_metre,
            compass(tilt.towards_deg)
        );
        if wind < WORTH_A_WORD { falls + "." } else { format!("{falls}, and wind by up to {wind:.0} mm.") }
    });
    let highest = wall_letter(levels.highest);
    Some(Notice {
        code: "plates-out-of-level".into(),
        level: if levels.out_of_level > LEVEL_ENOUGH { NoticeLevel::Warn } else { NoticeLevel::Note },
        text: format!(
            "The plates are {:.0} mm out of level; corner {highest} is highest, and all heights here are over plates \
             packed up to it: {}.{tilt}",
            levels.out_of_level,
            listed(&pack)
        ),
        place: format!("corner {highest}"),
    })
}

/// Of eight winds, east is +x.
fn compass(degrees: f64) -> &'static str {
    const WINDS: [&str; 8] = ["east", "north-east", "north", "north-west", "west", "south-west", "south", "south-east"];
    let eighth = (degrees / 45.0).round().rem_euclid(8.0) as usize;
    WINDS[eighth % WINDS.len()]
}

fn listed(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::compass;

    #[test]
    fn winds_go_round() {
        let named = [0.0, 44.0, 90.0, 180.0, -170.0, -90.0, -22.0, 359.0].map(compass);
        assert_eq!(named, ["east", "north-east", "north", "west", "west", "south", "east", "east"]);
    }
}
