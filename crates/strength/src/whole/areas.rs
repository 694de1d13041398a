//! What the job says the roof carries, as loads on slopes and ceilings for every case.

use super::CheckFault;
use crate::actions::{self, ActionsFault, CaseKind, Loads, RoofForm, Site, SlopeLoads};
use crate::carrying::Carrying;
use crate::carrying::carries;
use crate::carrying::own::Areas;
use crate::eurocode::wood::Wood;
use crate::working::Working;
use geometry::{Angle, DVec2};
use job::{Carried, Covering};
use roof::solution::LineKind;

/// kN/m² in N/mm².
const KN_M2: f64 = 1e-3;

/// A slope that faces a snow wind by less than this share lies along it: its snow is even.
const FACES: f64 = 0.5;

/// Loads of the roof.
#[derive(Clone, Debug)]
pub struct RoofLoads {
    /// For each case of [`CaseKind::ALL`].
    pub areas: Areas,
    /// One person on the roof and in the loft, N.
    pub persons: [f64; 2],
    /// For each slope.
    pub slopes: Vec<SlopeLoads>,
    /// The place and use of the roof.
    pub site: Site,
    /// Own weight of a slope without its rafters, kN/m² on the slope.
    pub on_slope: f64,
    /// Pitches for which wind on a hipped roof is not tabled, with the range that is, degrees.
    pub untabled: Vec<[f64; 3]>,
    /// Boards, noggins, fillets and the like spread over the slopes, kN/m² on plan.
    pub boards: f64,
}

/// The name of a covering in the table of layers.
pub(super) const fn layer_of(covering: Covering) -> &'static str {
    match covering {
        Covering::PlainTile => "plain-tile",
        Covering::HandmadePlainTile => "plain-tile-handmade",
        Covering::InterlockingTile => "concrete-interlocking-tile",
        Covering::Pantile => "pantile",
        Covering::Slate => "slate",
        Covering::HeavySlate => "slate-heavy",
        Covering::FibreCementSlate => "fibre-cement-slate",
    }
}

/// The loads of a roof.
///
/// # Errors
/// Layers or pitches that the region's figures do not cover.
pub fn roof_loads(
    roof: &Carrying<'_>,
    carried: &Carried,
    loads: &Loads,
    wood: &Wood,
    working: &mut Working,
) -> Result<RoofLoads, CheckFault> {
    let zone = u8::try_from(carried.snow_zone).unwrap_or(u8::MAX);
    let ground_snow = actions::ground_snow(loads, zone, carried.altitude, working)?;
    let site = Site {
        altitude: carried.altitude,
        ground_snow,
        peak_pressure: carried.wind,
        snow_held: carried.snow_held,
        snow_drifts: roof.solution.lines.iter().any(|l| l.kind == LineKind::Valley),
        loft: carried.loft,
        tank: if carried.tank { f64::INFINITY } else { 0.0 },
    };
    let covering = match carried.covering_weight {
        Some(weight) => working.line("covering as its maker declares it", weight, "kN/m²", "the job", String::new),
        None => actions::layers(loads, &[layer_of(carried.covering)], working)?,
    };
    let on_slope = covering + carried.under_covering + carried.lining;
    let density = wood.rho_mean * loads.gravity.value * 1e-9;
    let plan: f64 = roof.slopes.iter().map(|s| s.area()).sum();
    let boards_n: f64 = roof.runs.iter().filter(|r| !carries(r.kind)).map(|r| r.volume * 1e9 * density).sum();
    let noggins_n: f64 = roof
        .runs
        .iter()
        .filter(|r| {
            use roof::solution::MemberKind::{GableLadder, Noggin};
            matches!(r.kind, Noggin | GableLadder)
        })
        .map(|r| r.volume * 1e9 * density)
        .sum();
    let boards = if plan > 0.0 { (boards_n + noggins_n) / plan / KN_M2 } else { 0.0 };

    let hipped = roof.solution.lines.iter().any(|l| l.kind == LineKind::Hip);
    let across = snow_way(roof);
    let mut slopes = Vec::with_capacity(roof.slopes.len());
    let mut untabled = Vec::new();
    for slope in &roof.slopes {
        let form = RoofForm { pitch: slope.pitch_deg, hipped };
        // Slopes of one pitch carry the same: its sums are written once.
        let written = roof.slopes.iter().position(|s| s.pitch_deg == slope.pitch_deg) == Some(slopes.len());
        let mut quiet = Working::off();
        let working = if written { &mut *working } else { &mut quiet };
        if written {
            working.line("pitch of the slope", slope.pitch_deg, "°", "the job", String::new);
        }
        let all = match actions::slope_loads(loads, &site, form, &[], working) {
            // Steeper or flatter than hips are tabled for: as a gabled roof, and said so.
            Err(ActionsFault::PitchNotTabled { pitch, from, to }) => {
                untabled.push([pitch, from, to]);
                let form = RoofForm { hipped: false, ..form };
                actions::slope_loads(loads, &site, form, &[], working)?
            }
            all => all?,
        };
        slopes.push(all);
    }
    let mut areas = Areas::default();
    for kind in CaseKind::ALL {
        let on_slopes = roof.slopes.iter().zip(&slopes).map(|(slope, load)| {
            let pitch = Angle::deg(slope.pitch_deg);
            match kind {
                CaseKind::Permanent => [0.0, (on_slope / pitch.cos() + boards) * KN_M2],
                CaseKind::WindDown => square(load.wind_down, pitch),
                CaseKind::WindUp => square(load.wind_up, pitch),
                CaseKind::SnowLeft | CaseKind::SnowRight => {
                    let faces = slope.inward.dot(across);
                    let left = faces > 0.0;
                    // The ends of a hipped roof keep even snow while one side of it is bare.
                    let snow = if faces.abs() < FACES { load.snow } else { load.on_area(kind, left) };
                    [0.0, snow * KN_M2]
                }
                _ => [0.0, load.on_area(kind, true) * KN_M2],
            }
        });
        areas.slopes.push(on_slopes.collect());
        areas.ceiling.push(match kind {
            CaseKind::Permanent => carried.ceiling * KN_M2,
            CaseKind::Loft => carried.loft * KN_M2,
            _ => 0.0,
        });
        areas.timber.push(if kind == CaseKind::Permanent { density } else { 0.0 });
    }
    let persons = [loads.imposed.person.value * 1e3, loads.imposed.loft_person.value * 1e3];
    Ok(RoofLoads { areas, persons, slopes, site, on_slope, untabled, boards })
}

/// A pressure square to the slope, kN/m², as inward and down for an area in plan.
fn square(pressure: f64, pitch: Angle) -> [f64; 2] {
    [pressure * pitch.tan() * KN_M2, pressure * KN_M2]
}

/// Square to the longest ridge, or to the first wall of a roof without one: the way that a one-sided snow comes from.
fn snow_way(roof: &Carrying<'_>) -> DVec2 {
    let ridges = roof.solution.lines.iter().filter(|l| l.kind == LineKind::Ridge);
    let longest = ridges.max_by(|a, b| a.length_mm.total_cmp(&b.length_mm));
    let along = longest.map(|l| DVec2::new(l.to[0] - l.from[0], l.to[1] - l.from[1]).normalize_or_zero());
    along.map_or_else(|| roof.slopes.first().map_or(DVec2::Y, |s| s.inward), DVec2::perp)
}
