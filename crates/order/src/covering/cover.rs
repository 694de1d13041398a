//! A covering on a solved roof.

use super::along::{self};
use super::chosen::{Chosen, Product, product};
use super::count::{self, Counted};
use super::fault::CoverFault;
use super::figures::{Coverings, Way};
use super::order_lines::Count;
use super::out::{Battens, Covered, SlopeCovered};
use super::rows::{Rows, rows};
use super::slope::{EdgeKind, Overhangs, Slope, slopes};
use super::under::{self, Laid};
use super::{air, notes, sums};
use roof::solution::Solution;

/// Counts a covering on the real slopes of a roof, course by course.
///
/// `rafter_centres_mm`: the greatest distance between the middles of rafters, that battens span.
///
/// # Errors
/// When the covering is not known, a slope is flatter than it allows, a figure is not one that can be, or battens would
/// span further than their table goes.
pub fn cover(
    solution: &Solution,
    chosen: &Chosen,
    rafter_centres_mm: f64,
    figures: &Coverings,
) -> Result<Covered, CoverFault> {
    let product = product(chosen, figures)?;
    let common = &figures.common;
    let out = Overhangs {
        eaves: chosen.eaves_overhang.unwrap_or(common.eaves_overhang.value),
        verge: chosen.verge_overhang.unwrap_or(common.verge_overhang.value),
        over_break: common.break_overhang.value,
    };
    let slopes = slopes(solution, out);
    if slopes.is_empty() {
        return Err(CoverFault::NoSlopes);
    }
    let rows = rows(&slopes, &product, common.top_batten.value)?;
    let counted: Vec<Counted> = slopes.iter().zip(&rows).map(|(s, r)| count::count(s, r, &product)).collect();
    let laid: Vec<Laid> = slopes.iter().map(|s| under::of_slope(s, figures, chosen.supported)).collect();
    let battens = battens(&product, chosen, figures, rafter_centres_mm, &rows, &counted)?;
    let underlay = under::of_roof(&laid, figures);
    let lines = along::lines(&slopes);
    let vents = air::vents(&slopes, figures, solution.totals.plan_area_m2 * 1e6);
    let cut_lines = lines.iter().any(|l| matches!(l.kind, EdgeKind::Hip | EdgeKind::Valley));
    let usual = match (product.way, cut_lines) {
        (Way::Sheet, _) => 0.0,
        (_, true) => common.breakage_cut.value,
        (_, false) => common.breakage_plain.value,
    };
    let count = Count {
        chosen,
        product: &product,
        figures,
        slopes: &slopes,
        rows: &rows,
        counted: &counted,
        lines: &lines,
        breakage: chosen.breakage.unwrap_or(usual),
        battens: battens.as_ref(),
        rafter_centres: rafter_centres_mm,
        underlay: &underlay,
        vents: &vents,
    };
    let order = count.lines();
    let area_m2 = slopes.iter().map(Slope::area).sum::<f64>() / 1e6;
    let along_lines: f64 =
        order.iter().filter(|l| l.item == "ridge-piece" || l.item == "hip-piece").filter_map(|l| l.kg).sum();
    let pieces_kg = count.pieces_kg();
    let on_slopes = slopes.iter().zip(&rows).zip(counted.iter().zip(&laid));
    Ok(Covered {
        covering: product.name.to_owned(),
        called: product.called.to_owned(),
        slopes: on_slopes.map(|((s, r), (c, u))| slope_out(s, r, c, u, figures)).collect(),
        area_m2,
        weight_kg: pieces_kg.map(|kg| kg + along_lines),
        kg_per_m2: pieces_kg.filter(|_| area_m2 > 0.0).map(|kg| kg / area_m2),
        lines: order,
        notices: notes::notices(&product, figures, &slopes, &rows, &laid),
        sources: notes::sources(chosen, figures, &slopes),
        battens,
        underlay,
        vents,
    })
}

fn slope_out(slope: &Slope, rows: &Rows, counted: &Counted, laid: &Laid, figures: &Coverings) -> SlopeCovered {
    let [low, high] = slope.heights();
    SlopeCovered {
        walls: slope.walls.clone(),
        place: slope.place(),
        pitch_deg: slope.pitch_deg,
        area_m2: slope.area() / 1e6,
        length_mm: high - low,
        courses: rows.rows.len() as u64,
        gauge_mm: rows.gauge,
        lap_mm: rows.lap,
        whole: counted.whole,
        cut: counted.cut,
        short: counted.short,
        wide: counted.wide,
        cuts: counted.cuts,
        shown_m2: counted.area / 1e6,
        batten_m: counted.batten / 1000.0,
        underlay_m2: laid.length * figures.underlay.width.value / 1e6,
    }
}

/// Battens by the table of the region or as the job has them; none under what lies on boards or rails.
fn battens(
    product: &Product,
    chosen: &Chosen,
    figures: &Coverings,
    centres: f64,
    rows: &[Rows],
    counted: &[Counted],
) -> Result<Option<Battens>, CoverFault> {
    if !(centres.is_finite() && centres > 0.0) {
        return Err(CoverFault::NotPositive { what: "the distance of the rafters", value: centres });
    }
    let Some(kind) = product.battens else { return Ok(None) };
    let size_mm = match (chosen.batten, figures.batten(kind, centres)) {
        (Some(size), _) => size,
        (None, Some(row)) => [row.thickness, row.width],
        (None, None) => {
            return Err(CoverFault::BattenSpan {
                called: product.called.to_owned(),
                centres_mm: centres,
                most_mm: figures.batten_reach(kind),
            });
        }
    };
    let least_gauge = rows.iter().map(|r| r.gauge).fold(f64::INFINITY, f64::min);
    Ok(Some(Battens {
        size_mm,
        metres: counted.iter().map(|c| c.batten).sum::<f64>() / 1000.0,
        least_length_mm: figures.common.batten_least_length.value,
        least_supports: sums::whole_up(figures.common.batten_least_supports.value) as u32,
        nail_mm: figures.common.batten_nail.value,
        joints: figures.batten_joints(least_gauge),
    }))
}
