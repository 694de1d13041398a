//! What the roofer must know, and where the figures are from.

use super::chosen::{Chosen, Product};
use super::figures::{Coverings, Figure, Standing, Way};
use super::out::{CoverNotice, Source};
use super::rows::Rows;
use super::slope::Slope;
use super::under::Laid;
use super::{CAUTION, SAME};
use roof::solution::NoticeLevel;

fn notice(code: &str, level: NoticeLevel, place: String, text: String) -> CoverNotice {
    CoverNotice { code: code.to_owned(), level, text, place }
}

/// What the roofer must know.
pub fn notices(
    product: &Product,
    figures: &Coverings,
    slopes: &[Slope],
    rows: &[Rows],
    underlay: &[Laid],
) -> Vec<CoverNotice> {
    use NoticeLevel::{Note, Warn};
    let roof = || "roof".to_owned();
    let mut out = vec![notice("covering-fixing", Note, roof(), CAUTION.to_owned())];
    let from_memory = product.laps.iter().any(|l| l.standing != Standing::Published);
    if from_memory && product.least_pitch.is_none() {
        let text = format!(
            "The least pitch and laps of {} are not all from a maker's sheet: the maker's figures for the exposure of the site decide. Give them in the job.",
            product.called
        );
        out.push(notice("covering-figures", Warn, roof(), text));
    }
    if product.random {
        let text = "Random slates in diminishing courses are counted as of one size: order by weight from the quarry's cover for a ton, and gauge each course by its slates.";
        out.push(notice("random-slates", Warn, roof(), text.to_owned()));
    }
    if product.way == Way::Sheet {
        let text = "The distance of rails is a habit: the maker's span table for snow and wind decides.";
        out.push(notice("rails-by-maker", Warn, roof(), text.to_owned()));
    }
    for (k, (slope, laid)) in slopes.iter().zip(rows).enumerate() {
        if let Some(least) = product.least_gauge.filter(|least| laid.gauge < least - SAME) {
            let text = format!(
                "An equal gauge of {:.0} mm is below the least of {least:.0} mm: leave out a course and cut the top one, or move the tails.",
                laid.gauge
            );
            out.push(notice("gauge-short", Warn, slope.place(), text));
        }
        if let Some(pitch) = slope.sprocket_pitch {
            let text = format!(
                "Sprockets lie at {pitch:.1} degrees: courses and area are counted as if the slope ran straight on; check the gauge where it bends."
            );
            out.push(notice("sprocketed-eaves", Note, slope.place(), text));
        }
        if underlay.get(k).is_some_and(|u| u.too_flat) {
            let text = format!(
                "{:.1} degrees is below the table of laps of the underlay: its maker says whether it may be used, and with what lap.",
                slope.pitch_deg
            );
            out.push(notice("underlay-flat", Warn, slope.place(), text));
        }
        for hole in slope.holes.iter().filter(|h| h.kind == "dormer") {
            let text =
                "The hole of the dormer is taken out of the slope; the dormer's own roof and cheeks are not counted.";
            out.push(notice("dormer-roof", Warn, format!("dormer {}", hole.name), text.to_owned()));
        }
    }
    shared_gauges(product, slopes, rows, &mut out);
    if let Some(rule) = &figures.ventilation {
        let text = format!(
            "Keep {:.0} mm clear above insulation between or over the rafters' feet, so that air passes from the eaves.",
            rule.over_insulation.value
        );
        out.push(notice("insulation-gap", Note, roof(), text));
    }
    out
}

/// Says which slopes have the gauge of a longer one.
fn shared_gauges(product: &Product, slopes: &[Slope], rows: &[Rows], out: &mut Vec<CoverNotice>) {
    if product.way == Way::Sheet {
        return;
    }
    for (k, slope) in slopes.iter().enumerate() {
        let [low, high] = slope.heights();
        let longer = slopes.iter().zip(rows).enumerate().find(|(j, (other, laid))| {
            let [a, b] = other.heights();
            let level = (other.foot_z - slope.foot_z).abs() < super::ONE_LEVEL;
            let alike = (other.pitch_deg - slope.pitch_deg).abs() < super::SAME_PITCH;
            let same = rows.get(k).is_some_and(|mine| mine.gauge == laid.gauge);
            *j != k && level && alike && same && b - a > high - low + SAME
        });
        if let Some((_, (other, laid))) = longer {
            let text = format!(
                "Has the gauge of the {}, {:.1} mm, so that courses run round level; its top course is cut or lapped more.",
                other.place(),
                laid.gauge
            );
            out.push(notice("gauge-shared", NoticeLevel::Note, slope.place(), text));
        }
    }
}

/// Where the figures are from that decide most.
pub fn sources(chosen: &Chosen, figures: &Coverings, slopes: &[Slope]) -> Vec<Source> {
    let mut out = Vec::new();
    let mut put = |figure: String, source: &str, standing: Standing| {
        let made = Source { figure, source: source.to_owned(), standing: standing.to_string() };
        if !out.contains(&made) {
            out.push(made);
        }
    };
    let mm = |what: &str, f: &Figure| (format!("{what} {} mm", f.value), f.source.clone(), f.standing);
    if let Some(c) = figures.coverings.get(&chosen.name) {
        for (what, figure, given) in [
            ("length", Some(&c.length), chosen.length),
            ("width", Some(&c.width), chosen.width),
            ("cover width", c.cover_width.as_ref(), chosen.cover_width),
            ("most gauge", c.most_gauge.as_ref(), chosen.most_gauge),
        ] {
            if let Some(figure) = figure.filter(|_| given.is_none()) {
                let (text, source, standing) = mm(what, figure);
                put(text, &source, standing);
            }
        }
        if chosen.head_lap.is_none() {
            for step in &c.laps {
                let text = format!("head lap {} mm from {} degrees", step.lap, step.from_pitch);
                put(text, &step.source, step.standing);
            }
        }
        if let Some(weight) = c.weight.as_ref().filter(|_| chosen.weight.is_none()) {
            put(format!("weight {} kg each", weight.value), &weight.source, weight.standing);
        }
        if let Some(row) = c.battens.and_then(|kind| figures.battens.iter().find(|b| b.kind == kind)) {
            put("size of battens".to_owned(), &row.source, row.standing);
        }
    }
    for slope in slopes {
        if let Some((lap, step)) = figures.underlay_lap(slope.pitch_deg, chosen.supported) {
            put(format!("underlay head lap {lap} mm"), &step.source, step.standing);
        }
    }
    if let Some(rule) = &figures.ventilation {
        let (text, source, standing) = mm("eaves slot", &rule.eaves);
        put(text, &source, standing);
        let (text, source, standing) = mm("ridge slot", &rule.ridge);
        put(text, &source, standing);
    }
    for (text, source, standing) in [
        mm("overhang at eaves", &figures.common.eaves_overhang),
        mm("overhang at verges", &figures.common.verge_overhang),
        mm("top course below the ridge line", &figures.common.top_batten),
    ] {
        put(text, &source, standing);
    }
    out
}
