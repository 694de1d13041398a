//! Loads against the rows of `reference/strength_checks.json` and against what must always hold.
//!
//! What the rows are worth: EC1-P01 (peak pressure of the wind), EC1-P02 (snow on the ground in zone 3) and EC1-P03
//! (coefficients of a roof with two slopes) are printed figures that were seen: independent. All others are our own
//! arithmetic from figures that were seen or remembered: they guard the program, not the figures.

use geometry::Angle;
use proptest::prelude::*;
use serde_json::Value;
use strength::actions::{
    ActionsFault, CaseKind, Combination, CombinationKind, Duration, Expression, Loads, Pressing, Rising, RoofForm,
    Site, Terrain, WindForm, Zone, coefficients, combinations, ground_snow, layers, peak_pressure, people, per_mm,
    pressures, refusals, self_weight, slope_loads, slope_snow, zones,
};
use strength::annex::loads::LoadsFault;
use strength::working::Working;

/// For figures that have no tolerance of a row.
const EXACT: f64 = 1e-12;

fn uk() -> &'static Loads {
    Loads::of("uk").expect("the loads of the United Kingdom are read")
}

/// The rows of a kind, of which there must be `count`.
fn rows(kind: &str, count: usize) -> Vec<Value> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/strength_checks.json");
    let text = std::fs::read_to_string(path).expect("the reference is there");
    let rows: Vec<Value> = serde_json::from_str(&text).expect("the reference is JSON");
    let found: Vec<Value> = rows.into_iter().filter(|r| r["kind"] == kind).collect();
    assert_eq!(found.len(), count, "{kind}");
    found
}

fn figure(row: &Value, path: &str) -> f64 {
    row.pointer(path).and_then(Value::as_f64).unwrap_or_else(|| panic!("{}: no {path}", row["id"]))
}

/// Compare with the expected figure of a row, to the tolerance of the row.
fn check(row: &Value, name: &str, got: f64) {
    let want = figure(row, &format!("/expected/{name}"));
    let tolerance = match row.pointer("/tolerance/rel").and_then(Value::as_f64) {
        Some(rel) => rel * want.abs(),
        None => figure(row, "/tolerance/abs"),
    };
    assert!((got - want).abs() <= tolerance + EXACT, "{} {name}: {got} is not {want}", row["id"]);
}

#[test]
fn snow_sk() {
    // One row of seven is printed (EC1-P02).
    for row in rows("snow_sk", 7) {
        let zone = figure(&row, "/inputs/zone") as u8;
        let got = ground_snow(uk(), zone, figure(&row, "/inputs/altitude_m"), &mut Working::off()).unwrap();
        check(&row, "s_k", got);
    }
}

#[test]
fn snow_mu() {
    for row in rows("snow_mu", 5) {
        // With 1 kN/m² on the ground the load is the shape.
        let got = slope_snow(uk(), 1.0, figure(&row, "/inputs/pitch"), false, &mut Working::off()).unwrap();
        check(&row, "mu1", got.even);
        check(&row, "mu_drift_loaded_side", got.one_side);
    }
}

#[test]
fn roof_imposed() {
    for row in rows("roof_imposed", 5) {
        let got = people(uk(), figure(&row, "/inputs/pitch"), &mut Working::off()).unwrap();
        check(&row, "q_k", got.spread);
        check(&row, "Q_k", got.person);
    }
}

const ZONES: [(&str, Zone); 9] = [
    ("F", Zone::F),
    ("G", Zone::G),
    ("H", Zone::H),
    ("I", Zone::I),
    ("J", Zone::J),
    ("K", Zone::K),
    ("L", Zone::L),
    ("M", Zone::M),
    ("N", Zone::N),
];

/// Compare one table with what a row prints: by pitch, then zone, one figure or the pair of signs. The count of figures.
fn table(printed: &Value, form: WindForm) -> usize {
    let mut compared = 0;
    for (pitch, by_zone) in printed.as_object().unwrap() {
        for (zone, want) in by_zone.as_object().unwrap() {
            let (_, of) = ZONES.iter().find(|(name, _)| name == zone).unwrap();
            let mut want: Vec<f64> = want
                .as_array()
                .map_or_else(|| vec![want.as_f64().unwrap()], |a| a.iter().filter_map(Value::as_f64).collect());
            want.sort_by(f64::total_cmp);
            let got = coefficients(uk(), form, *of, pitch.parse().unwrap());
            let got: Vec<f64> = got.suction.into_iter().chain(got.pressure).collect();
            assert_eq!(got, want, "{form:?} {zone} at {pitch}");
            compared += want.len();
        }
    }
    compared
}

#[test]
fn wind_cpe_duopitch() {
    // A copy of the printed table was seen.
    let row = rows("wind_cpe_duopitch", 1).remove(0);
    assert_eq!(table(&row["expected"]["theta0"], WindForm::Across), 49);
    assert_eq!(table(&row["expected"]["theta90"], WindForm::Along), 24);
}

#[test]
fn wind_cpe_hip() {
    // From memory: the same figures twice, so this only guards against slips of the pen.
    let row = rows("wind_cpe_hip", 1).remove(0);
    assert_eq!(table(&row["expected"], WindForm::Hipped), 48);
}

#[test]
fn wind_cpe_interp() {
    let row = rows("wind_cpe_interp", 1).remove(0);
    let got = coefficients(uk(), WindForm::Across, Zone::H, figure(&row, "/inputs/pitch"));
    check(&row, "cpe", got.suction.unwrap());
}

#[test]
fn wind_qp() {
    // A printed worked calculation: independent.
    let row = rows("wind_qp", 1).remove(0);
    let input = |name: &str| figure(&row, &format!("/inputs/{name}"));
    let terrain =
        Terrain { roughness: input("z0"), least_height: input("zmin"), hills: input("co"), turbulence: input("kI") };
    assert!((uk().wind.speed.air.value - input("rho")).abs() < EXACT);
    let got = peak_pressure(uk(), input("vb0"), input("z_m"), terrain, &mut Working::off()).unwrap();
    for (name, value) in
        [("k_r", got.k_r), ("c_r", got.c_r), ("I_v", got.i_v), ("q_b", got.q_b), ("c_e", got.c_e), ("q_p", got.q_p)]
    {
        check(&row, name, value);
    }
}

fn named<'a>(all: &'a [Combination], kind: CombinationKind, name: &str) -> &'a Combination {
    all.iter().find(|c| c.kind == kind && c.name == name).unwrap_or_else(|| panic!("no {name}"))
}

#[test]
fn uplift() {
    let row = rows("uplift", 1).remove(0);
    let input = |name: &str| figure(&row, &format!("/inputs/{name}"));
    let all = combinations(uk(), Expression::Whole).unwrap();
    let lifting = named(&all, CombinationKind::Ultimate, "wind lifting, held down by own weight");
    // Square to the slope: down is onto the roof.
    let held = input("gk_slope") * Angle::deg(input("pitch")).cos();
    let wind = input("q_p") * (input("cpe") - uk().wind.inside_out.value);
    let down = lifting.sum(|kind| if kind == CaseKind::Permanent { held } else { wind });
    check(&row, "net_normal_kN_m2", -down);
    assert_eq!(lifting.duration, Duration::Instant);
    let off = all.iter().find(|c| c.kind == CombinationKind::Equilibrium).unwrap();
    assert_eq!(off.factors, [(CaseKind::Permanent, 0.9), (CaseKind::WindUp, 1.5)]);
}

#[test]
fn combinations_of_en_1990() {
    let row = rows("combinations", 1).remove(0);
    let load = |kind: CaseKind| match kind {
        CaseKind::Permanent => figure(&row, "/inputs/Gk"),
        CaseKind::Imposed => figure(&row, "/inputs/imposedH"),
        CaseKind::Snow => figure(&row, "/inputs/snow"),
        CaseKind::WindDown => figure(&row, "/inputs/wind"),
        _ => panic!("{kind:?} is not in the row"),
    };
    let sum = |expression, kind, name: &str| named(&combinations(uk(), expression).unwrap(), kind, name).sum(load);
    let (ultimate, snow_wind) = (CombinationKind::Ultimate, "own weight and even snow, with wind pressing down");
    check(&row, "G_only", sum(Expression::Whole, ultimate, "own weight alone"));
    check(&row, "G_H", sum(Expression::Whole, ultimate, "own weight and load of maintenance"));
    check(&row, "G_S_W", sum(Expression::Whole, ultimate, snow_wind));
    check(&row, "G_W_S", sum(Expression::Whole, ultimate, "own weight and wind pressing down, with even snow"));
    check(&row, "eq610a_S_W", sum(Expression::A, ultimate, snow_wind));
    check(&row, "eq610b_S_W", sum(Expression::B, ultimate, snow_wind));
    check(&row, "char_S_W", sum(Expression::Whole, CombinationKind::Characteristic, snow_wind));
}

#[test]
fn load_duration() {
    // k_mod 0.6 and 0.9 of solid timber: arithmetic only.
    let row = rows("load_duration", 1).remove(0);
    let all = combinations(uk(), Expression::Whole).unwrap();
    let load = |kind| if kind == CaseKind::Permanent { figure(&row, "/inputs/G") } else { figure(&row, "/inputs/S") };
    let ratio = |name: &str| {
        let combination = named(&all, CombinationKind::Ultimate, name);
        let kmod = match combination.duration {
            Duration::Permanent => 0.6,
            Duration::Short => 0.9,
            other => panic!("{other:?}"),
        };
        combination.sum(load) / kmod
    };
    let (alone, snow) = (ratio("own weight alone"), ratio("own weight and even snow"));
    check(&row, "ratio_G_only", alone);
    check(&row, "ratio_G_S", snow);
    assert_eq!(row["expected"]["governing"], "G only");
    assert!(alone > snow);
}

#[test]
fn people_are_never_with_snow_or_wind_and_the_shortest_load_rules() {
    let all = combinations(uk(), Expression::Whole).unwrap();
    assert_eq!(all.len(), 24 + 23 + 1);
    for combination in &all {
        let has = |family: &str| combination.factors.iter().any(|(kind, _)| kind.family() == family);
        let people = has("imposed") || has("person");
        assert!(!(people && (has("snow") || has("wind"))), "{}", combination.name);
        let shortest = combination.factors.iter().map(|(kind, _)| uk().cases[kind.family()].duration).max();
        assert_eq!(Some(combination.duration), shortest, "{}", combination.name);
        assert_eq!(combination.kind == CombinationKind::Characteristic, !combination.creep.is_empty());
        assert!(!combination.name.contains("safe"));
    }
    let names: std::collections::BTreeSet<&str> = uk().together.iter().map(|r| r.name.as_str()).collect();
    assert_eq!(names.len(), uk().together.len(), "names are told apart");
    for kind in CaseKind::ALL {
        assert!(all.iter().any(|c| c.factors.iter().any(|(k, _)| *k == kind)), "{kind:?} is never used");
        assert_eq!(CaseKind::ALL[kind as usize], kind);
    }
    let most_of_the_time = all.last().unwrap();
    assert_eq!(most_of_the_time.factors, [(CaseKind::Permanent, 1.0), (CaseKind::Loft, 0.3)]);
    assert_eq!(most_of_the_time.duration, Duration::Long);
}

#[test]
fn final_deflection_is_made_of_the_parts() {
    // EN 1995-1-1 2.2.3 with k_def 0.8: w_G (1 + 0.8) + w_Q1 (1 + 0.3 × 0.8) + w_Q2 (0.5 + 0).
    let all = combinations(uk(), Expression::Whole).unwrap();
    let c = named(&all, CombinationKind::Characteristic, "own weight and load in the loft, with even snow");
    let w = |kind| match kind {
        CaseKind::Permanent => 3.0,
        CaseKind::Loft => 2.0,
        _ => 5.0,
    };
    let creep: f64 = c.creep.iter().map(|(kind, share)| share * w(*kind)).sum();
    let want = 3.0 * 1.8 + 2.0 * (1.0 + 0.3 * 0.8) + 5.0 * 0.5;
    assert!((c.sum(w) + 0.8 * creep - want).abs() < EXACT);
}

#[test]
fn a_recipe_against_the_rule_is_not_read() {
    let uk = include_str!("../../../regions/uk/loads.toml");
    let bad = format!("{uk}\n[[together]]\nname = \"bad\"\nleading = \"snow-left\"\nwith = [\"person\"]\n");
    assert!(matches!(Loads::read(&bad), Err(LoadsFault::Unreadable(text)) if text.contains("person and snow")));
    let bad = uk.replace("[[0, 0.8], [15, 0.8]", "[[15, 0.8], [0, 0.8]");
    assert!(matches!(Loads::read(&bad), Err(LoadsFault::Unreadable(text)) if text.contains("order")));
    let bad = uk.replace("[cases.wind]", "[cases.gale]");
    assert!(matches!(Loads::read(&bad), Err(LoadsFault::Unreadable(text)) if text.contains("cases.wind")));
    assert!(matches!(Loads::of("atlantis"), Err(LoadsFault::NoRegion(_))));
    // Another edition is another file: psi0 of wind in the base text is 0.6.
    let start = uk.find("[cases.wind]").unwrap();
    let other = format!("{}{}", &uk[..start], uk[start..].replacen("psi0 = { value = 0.5", "psi0 = { value = 0.6", 1));
    let all = combinations(&Loads::read(&other).unwrap(), Expression::Whole).unwrap();
    let with_wind = named(&all, CombinationKind::Ultimate, "own weight and even snow, with wind pressing down");
    assert!((with_wind.factors[2].1 - 0.9).abs() < EXACT);
}

const SITE: Site = Site {
    altitude: 80.0,
    ground_snow: 0.5,
    peak_pressure: 0.8,
    snow_held: false,
    snow_drifts: false,
    loft: 0.25,
    tank: 0.0,
};

#[test]
fn what_is_for_an_engineer_is_named() {
    assert!(refusals(uk(), &SITE).is_empty());
    let bad = Site {
        altitude: 1200.0,
        ground_snow: 1.6,
        peak_pressure: f64::NAN,
        snow_held: false,
        snow_drifts: true,
        loft: 1.5,
        tank: 500.0,
    };
    let found = refusals(uk(), &bad);
    let codes: Vec<&str> = found.iter().map(|r| r.code.as_str()).collect();
    assert_eq!(codes, ["altitude", "ground-snow", "peak-pressure", "loft-load", "water-tank", "snow-drift"]);
    assert!(found.iter().all(|r| r.text.starts_with("Needs an engineer") && !r.source.is_empty()));
}

#[test]
fn all_loads_of_a_slope() {
    let form = RoofForm { pitch: 30.0, hipped: false };
    let mut working = Working::on();
    let got = slope_loads(uk(), &SITE, form, &["plain-tile", "battens-and-underlay"], &mut working).unwrap();
    assert!((got.layers - 0.785).abs() < EXACT);
    assert!((got.snow - 0.4).abs() < EXACT && (got.snow_one_side - 0.6).abs() < EXACT);
    // H presses with 0.4 + 0.3; along the ridge it lifts with 0.8 + 0.2, at the edges G with 1.4 + 0.2.
    assert!((got.wind_down - 0.56).abs() < EXACT, "{}", got.wind_down);
    assert!((got.wind_up + 0.8).abs() < EXACT && (got.wind_up_edge + 1.28).abs() < EXACT);
    let lines = working.lines();
    assert!(lines.len() > 10 && lines.iter().all(|line| !line.what.is_empty() && !line.from.is_empty()));
    assert!(lines.iter().all(|line| !line.what.contains("safe")));
    let on = |kind, left| got.on_area(kind, left);
    assert_eq!([on(CaseKind::SnowLeft, true), on(CaseKind::SnowLeft, false)], [got.snow_one_side, 0.0]);
    assert_eq!([on(CaseKind::SnowRight, true), on(CaseKind::SnowRight, false)], [0.0, got.snow_one_side]);
}

#[test]
fn a_load_along_a_rafter_is_the_load_on_its_area() {
    // 4 m of rafter at 400 mm: 1.6 m² of slope.
    let pitch = Angle::deg(30.0);
    let along = |pressing| per_mm(0.5, 400.0, pitch, pressing, Rising::ToTheRight).map(|v| v * 4000.0);
    let close = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).abs() < 1e-9 && (a[1] - b[1]).abs() < 1e-9;
    assert!(close(along(Pressing::OnSlope), [0.0, -800.0]));
    assert!(close(along(Pressing::OnPlan), [0.0, -800.0 * pitch.cos()]));
    assert!(close(along(Pressing::Square), [400.0, -800.0 * pitch.cos()]));
    let [x, _] = per_mm(0.5, 400.0, pitch, Pressing::Square, Rising::ToTheLeft);
    assert!(x < 0.0, "wind onto the right slope pushes to the left");
}

#[test]
fn weights() {
    let off = &mut Working::off();
    // 47 × 150 of C24: 0.029 kN/m.
    assert!((self_weight(uk(), 420.0, [47.0, 150.0], off).unwrap() - 0.029047).abs() < 1e-6);
    assert!(matches!(layers(uk(), &["thatch"], off), Err(ActionsFault::NoSuchLayer { .. })));
    assert!((layers(uk(), &["plasterboard-12.5", "plaster-skim"], off).unwrap() - 0.14).abs() < EXACT);
    for (name, layer) in &uk().layers {
        assert!(layer.value > 0.0 && layer.value < 2.0 && !layer.source.is_empty(), "{name}");
    }
}

#[test]
fn bad_figures_are_faults() {
    let off = &mut Working::off();
    assert!(matches!(ground_snow(uk(), 6, 100.0, off), Err(ActionsFault::NoSuchZone { zone: 6, .. })));
    assert!(matches!(ground_snow(uk(), 3, f64::NAN, off), Err(ActionsFault::BadFigure { .. })));
    for pitch in [f64::NAN, -1.0, 90.0, f64::INFINITY] {
        assert!(people(uk(), pitch, off).is_err() && slope_snow(uk(), 0.5, pitch, false, off).is_err());
        assert!(pressures(uk(), false, pitch, 0.8, off).is_err());
    }
    assert!(matches!(pressures(uk(), true, 50.0, 0.8, off), Err(ActionsFault::PitchNotTabled { .. })));
    assert!(pressures(uk(), false, 30.0, -1.0, off).is_err());
    let terrain = Terrain { roughness: 1.0, least_height: 0.0, hills: 1.0, turbulence: 1.0 };
    assert!(peak_pressure(uk(), 26.0, 0.5, terrain, off).is_err());
}

#[test]
fn zones_of_a_house() {
    let got = zones(uk(), 9000.0, 8000.0).unwrap();
    assert_eq!([got.e, got.edge_depth, got.corner_width, got.middle_depth], [9000.0, 900.0, 2250.0, 4500.0]);
    assert!((zones(uk(), 20_000.0, 6000.0).unwrap().e - 12_000.0).abs() < EXACT);
}

proptest! {
    #[test]
    fn steeper_is_never_more_even_snow_or_maintenance(a in 0.0..89.0f64, b in 0.0..89.0f64, s in 0.0..2.0f64, held: bool) {
        let (low, steep) = (a.min(b), a.max(b));
        let snow = |pitch| slope_snow(uk(), s, pitch, held, &mut Working::off()).unwrap().even;
        let load = |pitch| people(uk(), pitch, &mut Working::off()).unwrap().spread;
        prop_assert!(snow(steep) <= snow(low) + EXACT);
        prop_assert!(load(steep) <= load(low) + EXACT);
    }

    #[test]
    fn higher_up_is_never_less_snow(zone in 1..=5u8, a in -50.0..1500.0f64, b in -50.0..1500.0f64) {
        let snow = |zone, altitude| ground_snow(uk(), zone, altitude, &mut Working::off()).unwrap();
        prop_assert!(snow(zone, a.max(b)) >= snow(zone, a.min(b)));
        prop_assert!(zone == 5 || snow(zone + 1, a) >= snow(zone, a));
    }

    #[test]
    fn held_snow_is_never_less(pitch in 0.0..89.0f64, s in 0.0..2.0f64) {
        let snow = |held| slope_snow(uk(), s, pitch, held, &mut Working::off()).unwrap();
        let (free, held) = (snow(false), snow(true));
        prop_assert!(held.even >= free.even && held.one_side >= free.one_side);
    }

    #[test]
    fn wind_lies_between_its_tabled_values(pitch in 5.0..75.0f64, zone in 0..5usize) {
        let got = coefficients(uk(), WindForm::Across, ZONES[zone].1, pitch);
        prop_assert!(got.suction.is_some() || got.pressure.is_some());
        prop_assert!(got.suction.is_none_or(|c| (-1.7..=0.0).contains(&c)));
        prop_assert!(got.pressure.is_none_or(|c| (0.0..=0.8).contains(&c)));
    }

    #[test]
    fn more_wind_never_presses_or_lifts_less(pitch in 5.0..45.0f64, q in 0.0..1.5f64, more in 0.0..1.0f64, hipped: bool) {
        let wind = |q| pressures(uk(), hipped, pitch, q, &mut Working::off()).unwrap();
        let (less, more) = (wind(q), wind(q + more));
        prop_assert!(more.down >= less.down && more.up <= less.up);
        prop_assert!(more.edge_down >= more.down && more.edge_up <= more.up && more.up <= 0.0 && more.down >= 0.0);
    }
}
