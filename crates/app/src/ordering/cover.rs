//! What covers the slopes, worded.

use super::figures::kilograms;
use super::lines;
use crate::views::{CoveredSlope, Figure, OrderCovering, OrderNotice};
use crate::wording::Writing;
use crate::wording::capital;
use job::Job;
use job::written::{degrees, fixed};
use order::buying::PricedLine;
use order::covering::{CoverNotice, Covered, Coverings, SlopeCovered, Vent};
use order::whole::Order;
use roof::solution::NoticeLevel;

/// The covering, or why there is none.
///
/// `carried` is the covering that the roof is said to carry, which holds when none is chosen.
pub(super) fn covering(
    job: &Job,
    order: &Order,
    of_it: &[PricedLine],
    carried: Option<String>,
    writing: &Writing,
) -> OrderCovering {
    let found = order.covering.as_ref();
    let said = job.covering.as_ref().map(|covering| covering.of.clone());
    OrderCovering {
        chosen: said.or_else(|| found.map(|found| found.covering.clone())).or(carried).unwrap_or_default(),
        choices: choices(job, writing),
        refused: order.covering_refused.as_ref().map(|why| writing.sentence(why)),
        figures: found.map(|found| figures(found, writing)).unwrap_or_default(),
        slopes: found.map(|found| found.slopes.iter().map(|one| slope(one, writing)).collect()).unwrap_or_default(),
        lines: of_it.iter().map(|line| lines::line(job, line, writing)).collect(),
        air: found.map(|found| found.vents.iter().map(|vent| air(vent, writing)).collect()).unwrap_or_default(),
        notices: found.map(|found| found.notices.iter().map(|one| notice(one, writing)).collect()).unwrap_or_default(),
        sources: found
            .map(|found| {
                let all = found.sources.iter();
                all.map(|one| writing.sentence(&format!("{}: {} ({})", one.figure, one.source, one.standing))).collect()
            })
            .unwrap_or_default(),
    }
}

/// The coverings of the region, by their names.
fn choices(job: &Job, writing: &Writing) -> Vec<(String, String)> {
    let Ok(region) = Coverings::of(&job.region) else { return Vec::new() };
    region.coverings.iter().map(|(word, covering)| (word.clone(), writing.say_first(&covering.called))).collect()
}

fn square(m2: f64) -> String {
    format!("{} m²", fixed(m2, 1))
}

fn figures(found: &Covered, writing: &Writing) -> Vec<Figure> {
    let figure = |label: &str, value: String| Figure { label: writing.say(label), value, why: None };
    let mut out = vec![figure("Slopes", square(found.area_m2))];
    if let Some(kg) = found.weight_kg {
        out.push(figure("Weight on the roof", kilograms(kg)));
    }
    if let Some(kg) = found.kg_per_m2 {
        out.push(figure("On each m²", kilograms(kg)));
    }
    if let Some(battens) = &found.battens {
        let [thickness, width] = battens.size_mm;
        out.push(figure("Battens", writing.section(thickness, width)));
        out.push(figure("No batten shorter than", writing.length(battens.least_length_mm)));
    }
    out.push(figure("Head lap of the underlay", writing.length(found.underlay.head_lap_mm)));
    out
}

fn slope(slope: &SlopeCovered, writing: &Writing) -> CoveredSlope {
    let figure = |label: &str, value: String| Figure { label: writing.say(label), value, why: None };
    let mut rest = vec![
        figure("Lap", writing.length(slope.lap_mm)),
        figure("Up the slope", writing.length(slope.length_mm)),
        figure("Area", square(slope.area_m2)),
        figure("Whole", slope.whole.to_string()),
        figure("To be cut", slope.cut.to_string()),
    ];
    rest.extend((slope.short > 0).then(|| figure("Short, at eaves and top", slope.short.to_string())));
    rest.extend((slope.wide > 0).then(|| figure("Wide, at verges", slope.wide.to_string())));
    CoveredSlope {
        title: format!("{}, {}", writing.say_first(&slope.place), degrees(slope.pitch_deg)),
        main: vec![figure("Courses", slope.courses.to_string()), figure("Gauge", writing.length(slope.gauge_mm))],
        figures: rest,
    }
}

fn air(vent: &Vent, writing: &Writing) -> String {
    let (slot, length) = (writing.length(vent.slot_mm), writing.length(vent.length_mm));
    writing.sentence(&format!("{}: a slot of {slot} along {length}, or as much air in another way", vent.place))
}

fn notice(notice: &CoverNotice, writing: &Writing) -> OrderNotice {
    let level = match notice.level {
        NoticeLevel::Stop => "stop",
        NoticeLevel::Warn => "warn",
        NoticeLevel::Note => "note",
    };
    OrderNotice {
        level: level.to_owned(),
        text: writing.sentence(&notice.text),
        place: capital(&writing.say(&notice.place)),
    }
}
