//! Courses up a slope: where each has its tail, with one equal gauge.

use super::chosen::Product;
use super::fault::CoverFault;
use super::figures::Way;
use super::slope::Slope;
use super::{SAME, SAME_PITCH, sums};

/// No roof has more courses than this: beyond it a figure is wrong.
const MOST_COURSES: u64 = 5000;

/// No course has more pieces than this: beyond it a figure is wrong.
const MOST_IN_COURSE: f64 = 20_000.0;

/// What a course is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowKind {
    /// Under the first whole course.
    UnderEaves,
    /// A course of whole pieces.
    Whole,
    /// The last one below the ridge, of short pieces.
    Top,
}

/// A course, mm from the foot of the slope's measure.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    pub kind: RowKind,
    /// Its lower edge.
    pub tail: f64,
    /// Its upper edge.
    pub head: f64,
    /// What shows of it ends here; nothing shows of the one under the eaves course.
    pub shows_to: f64,
    /// Its batten.
    pub hangs_at: f64,
    /// For the bond: courses with odd numbers are shifted.
    pub number: u64,
}

/// The courses of a slope.
#[derive(Clone, Debug)]
pub struct Rows {
    pub gauge: f64,
    pub lap: f64,
    pub rows: Vec<Row>,
}

/// A slope with its least lap.
struct Wanted {
    lap: f64,
    most: f64,
    /// From the tail of the first whole course to the tail of the last, mm.
    distance: f64,
}

/// The courses of all slopes, in their order. Slopes of one pitch with their feet at one height have one gauge, so that
/// courses run round: that of the longest.
pub fn rows(slopes: &[Slope], product: &Product, top_gap: f64) -> Result<Vec<Rows>, CoverFault> {
    let wanted: Vec<Wanted> = slopes.iter().map(|s| want(s, product, top_gap)).collect::<Result<_, _>>()?;
    let mut out = Vec::with_capacity(slopes.len());
    for (k, slope) in slopes.iter().enumerate() {
        let mut with = k;
        if product.way != Way::Sheet {
            for (j, other) in slopes.iter().enumerate() {
                let level = (other.foot_z - slope.foot_z).abs() < super::ONE_LEVEL;
                let alike = (other.pitch_deg - slope.pitch_deg).abs() < SAME_PITCH;
                if level && alike && wanted[j].distance > wanted[with].distance + SAME {
                    with = j;
                }
            }
        }
        let (n, gauge) = sums::courses(wanted[with].distance, wanted[with].most);
        let courses =
            if wanted[k].distance > 0.0 && gauge > 0.0 { sums::whole_up(wanted[k].distance / gauge).max(1) } else { 0 };
        if n.max(courses) > MOST_COURSES {
            return Err(CoverFault::TooMany { place: slope.place(), what: "courses", count: n.max(courses) as f64 });
        }
        out.push(laid(slope, product, &wanted[k], courses, gauge, top_gap));
    }
    Ok(out)
}

fn want(slope: &Slope, product: &Product, top_gap: f64) -> Result<Wanted, CoverFault> {
    let mut lap = product.lap_at(slope.pitch_deg, &slope.place())?;
    if let Some(pitch) = slope.sprocket_pitch {
        lap = lap.max(product.lap_at(pitch, &format!("sprockets of wall {}", slope.walls.join(" and ")))?);
    }
    let most = product.most_gauge_with(lap);
    if most <= 0.0 {
        return Err(CoverFault::LapImpossible { lap_mm: lap, length_mm: product.length });
    }
    let in_course = slope.width() / product.cover_width;
    if in_course >= MOST_IN_COURSE {
        return Err(CoverFault::TooMany { place: slope.place(), what: "pieces in a course", count: in_course });
    }
    let [low, high] = slope.heights();
    let distance = match product.way {
        Way::Sheet => high - low - lap,
        _ => high - low - top_gap - product.short(lap),
    };
    Ok(Wanted { lap, most, distance })
}

fn laid(slope: &Slope, product: &Product, wanted: &Wanted, n: u64, gauge: f64, top_gap: f64) -> Rows {
    let [low, high] = slope.heights();
    if product.way == Way::Sheet {
        return sheets(low, high, wanted);
    }
    let top = (high - top_gap).max(low);
    let last = if n == 0 { 0.0 } else { wanted.distance };
    let tail = |k: u64| low + if k >= n { last } else { k as f64 * gauge };
    let short = product.short(wanted.lap);
    let lapped = matches!(product.way, Way::Double | Way::Triple);
    // A slope too short for a gauge has one course, as its lap allows.
    let gauge = if n == 0 { wanted.most } else { gauge };
    let lap = sums::lap(product.way, product.length, gauge);
    let mut rows = Vec::new();
    if lapped {
        let head = (low + short).min(top);
        let hangs_at = (low + product.hangs_at(short, gauge, lap).min(short)).min(top);
        rows.push(Row { kind: RowKind::UnderEaves, tail: low, head, shows_to: low, hangs_at, number: 1 });
    }
    for k in 0..=n {
        let is_top = k == n;
        let kind = if is_top && lapped { RowKind::Top } else { RowKind::Whole };
        let piece = if kind == RowKind::Top { short } else { product.length };
        rows.push(Row {
            kind,
            tail: tail(k),
            head: (tail(k) + piece).min(top),
            shows_to: if is_top { high } else { tail(k + 1) },
            hangs_at: (tail(k) + product.hangs_at(piece, gauge, lap)).min(top),
            number: k,
        });
    }
    Rows { gauge, lap, rows }
}

/// Sheets from the eaves up, all of one length: one where the slope is no longer than a sheet.
fn sheets(low: f64, high: f64, wanted: &Wanted) -> Rows {
    let n = sums::courses(wanted.distance, wanted.most).0.max(1);
    let step = (high - low - wanted.lap).max(0.0) / n as f64;
    let rows = (0..n)
        .map(|k| {
            let tail = low + k as f64 * step;
            let is_top = k + 1 == n;
            let head = if is_top { high } else { tail + step + wanted.lap };
            let shows_to = if is_top { high } else { tail + step };
            Row { kind: RowKind::Whole, tail, head, shows_to, hangs_at: head, number: k }
        })
        .collect();
    Rows { gauge: if n == 1 { high - low } else { step }, lap: wanted.lap, rows }
}
