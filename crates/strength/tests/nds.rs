//! The NDS against `reference/strength_checks.json`, row by row.
//!
//! What the rows are worth: NDS-P01 is printed; NDS-P02 to P08 are values of another program's tests, full precision, not
//! the book's own figures. The span rows are printed tables: 89 ceiling joists and 87 rafters come out with the current
//! design values, recalled but not tuned. 25 rafters were missed by those; they come out with an older set of values and the
//! cap of 26 ft, both taken up to fit, so that they support the older set but prove nothing.

use proptest::prelude::*;
use serde_json::Value;
use strength::annex::nds::{Nds, NdsError, Set};
use strength::nds::beam::{Beam, stability};
use strength::nds::column::column;
use strength::nds::nails::{Nail, withdrawal_lb_per_in};
use strength::nds::spans::{Asked, longest};
use strength::nds::{BEYOND, units};
use strength::working::Working;

const CHECKS: &str = include_str!("../../../reference/strength_checks.json");

fn rows(kind: &str, expected: usize) -> Vec<Value> {
    let all: Vec<Value> = serde_json::from_str(CHECKS).expect("the reference is read");
    let rows: Vec<Value> = all.into_iter().filter(|row| row["kind"] == kind).collect();
    assert_eq!(rows.len(), expected, "rows of {kind}");
    rows
}

fn figure(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("a number, not {value}"))
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_else(|| panic!("a word, not {value}"))
}

fn same(row: &Value, key: &str, got: f64) {
    let wanted = figure(&row["expected"][key]);
    let most = figure(&row["tolerance"]["rel"]) * wanted.abs();
    assert!((got - wanted).abs() <= most, "{} {key}: {got}, expected {wanted} within {most}", row["id"]);
}

fn nds() -> &'static Nds {
    Nds::of("us").expect("the figures of the US")
}

#[test]
fn the_file_is_read_and_swapped() {
    assert_eq!(Nds::of("uk"), Err(NdsError::NoSuchRegion { region: "uk".into() }));
    let us = include_str!("../../../regions/us/nds.toml");
    let other = Nds::read("us", &us.replacen("value = 312", "value = 240", 1)).expect("the file is read");
    assert!((other.spans.longest_in.value - 240.0).abs() < f64::EPSILON);
    assert!(matches!(Nds::read("us", "edition = \"none\""), Err(NdsError::Unread { .. })));
    let fault = nds().stick(Set::Current, "SPF", "9", "2x6").expect_err("no such grade").to_string();
    assert!(fault.contains("SPF grade 9 2x6"), "{fault}");
    for lumber in &nds().lumber {
        assert!(!lumber.source.is_empty() && lumber.bending > 0.0 && lumber.modulus_least < lumber.modulus);
    }
}

#[test]
fn nds_beam_stability() {
    for row in rows("nds_beam_stability", 1) {
        let [b, d, l, fb, e] = ["b_in", "d_in", "l_e_in", "Fb_psi", "Emin_psi"].map(|key| figure(&row["inputs"][key]));
        let beam = stability(b, d, l, fb, e, nds(), &mut Working::off());
        same(&row, "R_B", beam.slenderness);
        same(&row, "F_bE", beam.euler_psi);
        same(&row, "C_L", beam.c_l);
        same(&row, "Fb_adj", beam.c_l * fb);
    }
}

#[test]
fn nds_column() {
    for row in rows("nds_column", 1) {
        let i = &row["inputs"];
        assert_eq!(text(&i["size"]), "4x4");
        // A 4x4 is 3.5 in square; its size factor is given by the row.
        let side = 3.5;
        let star = figure(&i["Fc_psi"]) * figure(&i["C_F"]) * figure(&i["C_D"]);
        let post = column(side, figure(&i["L_ft"]) * 12.0, star, figure(&i["Emin_psi"]), nds(), &mut Working::off());
        same(&row, "C_P", post.c_p);
        same(&row, "Fc_adj_psi", post.allowed_psi);
        same(&row, "utilisation", post.compression(figure(&i["P_lb"]) / (side * side), &mut Working::off()).ratio);
    }
}

#[test]
fn nds_nail_lateral() {
    for row in rows("nds_nail_lateral", 1) {
        let i = &row["inputs"];
        let side = figure(&i["side_in"]);
        let nail = Nail {
            diameter_in: figure(&i["d_in"]),
            yield_psi: figure(&i["Fyb_psi"]),
            side_in: side,
            main_in: figure(&i["length_in"]) - side,
            side_gravity: figure(&i["G"]),
            main_gravity: figure(&i["G"]),
        };
        assert!((nds().nails.reduction_small.value - figure(&i["K_D"])).abs() < 1e-9);
        let lateral = nail.lateral(nds(), &mut Working::off());
        same(&row, "Z_lb", lateral.z_lb);
        same(&row, "Z_N", units::newtons(lateral.z_lb));
        assert_eq!(lateral.mode, text(&row["expected"]["mode"]));
        assert!(lateral.deep_enough);
    }
}

#[test]
fn nds_nail_withdrawal() {
    for row in rows("nds_nail_withdrawal", 1) {
        let i = &row["inputs"];
        let value = withdrawal_lb_per_in(figure(&i["d_in"]), figure(&i["G"]), nds(), &mut Working::off());
        same(&row, "W_lb_per_in", value);
        same(&row, "W_N_per_m", units::newtons(value) / units::mm(1.0) * 1000.0);
    }
}

#[test]
fn nds_rafter() {
    // The row takes both loads on the slope and the span along it; its deflection is that of the whole load.
    for row in rows("nds_rafter", 1) {
        let i = &row["inputs"];
        let stick =
            nds().stick(Set::Current, text(&i["species"]), text(&i["grade"]), text(&i["size"])).expect("lumber");
        let level = (figure(&i["D_psf"]) + figure(&i["S_psf"])) * figure(&i["spacing_in"]) / 144.0;
        let beam = Beam {
            span_in: figure(&i["span_ft"]) * 12.0,
            load_lb_per_in: level * geometry::Angle::deg(figure(&i["pitch"])).cos(),
            modulus_in3: stick.modulus_in3(),
            inertia_in4: stick.inertia_in4(),
        };
        let allowed = stick.bending() * figure(&i["C_D"]) * nds().members.repetitive.value;
        same(&row, "utilisation", beam.bending(allowed, &mut Working::off()).ratio);
        let deflection = beam.deflection_in(stick.lumber.modulus, &mut Working::off());
        same(&row, "deflection_mm", units::mm(deflection));
    }
}

#[test]
fn nds_beam_column() {
    // F_c* is taken from the reference, so only C_P and the interaction are checked.
    for row in rows("nds_beam_column", 3) {
        let i = &row["inputs"];
        let stick =
            nds().stick(Set::Current, text(&i["species"]), text(&i["grade"]), text(&i["size"])).expect("lumber");
        let height = figure(&i["height_ft"]) * 12.0;
        let emin = figure(&i["Emin_psi"]);
        assert!((stick.lumber.modulus_least - emin).abs() < 1.0);
        // Rounded to the inch-pound from the metric of the program that it is from.
        let star = stick.compression() * figure(&i["C_D"]);
        assert!((star / figure(&i["Fc_star_psi"]) - 1.0).abs() < 0.002, "{}", row["id"]);
        let (b, d) = (stick.size.breadth_in, stick.size.depth_in);
        let stud = column(d, height, figure(&i["Fc_star_psi"]), emin, nds(), &mut Working::off());
        assert!((stud.euler_psi - figure(&i["F_cE_psi"])).abs() < 0.1);
        same(&row, "C_P", stud.c_p);
        same(&row, "F_c_adj", stud.allowed_psi);
        let pressed = figure(&i["axial_lb"]) / (b * d);
        let alone = stud.compression(pressed, &mut Working::off()).ratio;
        let load = figure(&i["wind_psf"]) * figure(&i["trib_ft"]) / 12.0;
        let bent = load * height * height / 8.0 / stick.modulus_in3();
        let both = stud.with_bending(pressed, bent, figure(&i["Fb_adj_psi"]), &mut Working::off()).ratio;
        assert!((alone - figure(&row["expected"]["axial_only_ratio"])).abs() < 1e-3, "{}", row["id"]);
        let rounded = figure(&row["expected"]["interaction_3_9_3"]);
        assert!((both - rounded).abs() < 1e-3, "{}: {both} {rounded}", row["id"]);
        // Without bending the program gives the compression alone.
        same(&row, "published_utilisation", if load > 0.0 { both } else { alone });
    }
}

/// Longest span of a row, and how many inches it is off the printed one.
fn off_by(row: &Value, set: Set) -> i64 {
    let i = &row["inputs"];
    let stick = nds().stick(set, text(&i["species"]), text(&i["grade"]), text(&i["size"])).expect("lumber");
    let asked = Asked {
        spacing_in: figure(&i["spacing_in"]),
        live_psf: figure(&i["LL_psf"]),
        dead_psf: figure(&i["DL_psf"]),
        deflection_limit: figure(&i["defl_limit"]),
        duration: figure(&i["C_D"]),
    };
    assert!((nds().members.repetitive.value - figure(&i["C_r"])).abs() < 1e-9);
    let span = longest(&stick, &asked, nds(), &mut Working::off());
    let printed = text(&row["expected"]["span_ft_in"]);
    let (feet, inches) = printed.split_once('-').expect("feet and inches");
    let printed: i64 = feet.parse::<i64>().expect("feet") * 12 + inches.parse::<i64>().expect("inches");
    i64::from(span.inches) - printed
}

fn most_off(row: &Value) -> i64 {
    figure(&row["tolerance"]["abs_in"]) as i64
}

#[test]
fn ceiling_joist_span() {
    // Printed table, current values, not tuned: these rows are independent.
    let rows = rows("ceiling_joist_span", 89);
    let exact = rows.iter().filter(|row| off_by(row, Set::Current) == 0).count();
    for row in &rows {
        assert!(off_by(row, Set::Current).abs() <= most_off(row), "{}: {}", row["id"], off_by(row, Set::Current));
    }
    assert!(exact >= 88, "{exact} of {} exact", rows.len());
}

#[test]
fn rafter_span() {
    let rows = rows("rafter_span", 112);
    let (first, missed): (Vec<_>, Vec<_>) =
        rows.iter().partition(|row| row["inputs"]["first_pass_match"] == true || row["first_pass_match"] == true);
    assert_eq!((first.len(), missed.len()), (87, 25));
    // Printed table, current values: independent.
    for row in first {
        assert!(off_by(row, Set::Current).abs() <= most_off(row), "{}: {}", row["id"], off_by(row, Set::Current));
    }
    // Printed table, but with the older set and the cap, which were taken up to fit these rows.
    let mut with_current = 0;
    for row in missed {
        assert!(off_by(row, Set::Older).abs() <= most_off(row), "{}: {}", row["id"], off_by(row, Set::Older));
        if off_by(row, Set::Current).abs() <= most_off(row) {
            // Two of Southern pine by the cap; one of Douglas fir is an inch off, within the tolerance but not exact.
            let id = text(&row["id"]);
            assert!(["US-204", "US-209", "US-288"].contains(&id), "{id}");
            with_current += 1;
        }
    }
    // The other 22 tell the two sets apart.
    assert_eq!(with_current, 3, "of the 25 with the current set");
}

#[test]
fn units_go_there_and_back() {
    assert!((units::n_per_mm2(1000.0) - 6.894_757).abs() < 1e-6);
    assert!((units::psf(1.0) - 20.885_43).abs() < 1e-4);
    assert!((units::mm(units::inches(123.0)) - 123.0).abs() < 1e-9);
    assert!((units::newtons(units::pounds(123.0)) - 123.0).abs() < 1e-9);
    assert_eq!(units::feet_inches(196), "16-4");
}

proptest! {
    #[test]
    fn longer_and_slenderer_is_never_stronger(l in 10.0..400.0f64, more in 1.0..2.0f64, star in 500.0..2500.0f64) {
        let post = |l| column(3.5, l, star, 510_000.0, nds(), &mut Working::off()).c_p;
        prop_assert!(post(l * more) <= post(l) + 1e-12);
        let beam = |l| stability(1.5, 9.25, l, star, 510_000.0, nds(), &mut Working::off()).c_l;
        prop_assert!(beam(l * more) <= beam(l) + 1e-12);
    }

    #[test]
    fn thicker_nails_are_never_weaker_within_a_reduction(d in 0.09..0.17f64, more in 1.0..1.2f64) {
        // F_yb is kept; thicker wire is softer, which is data.
        let z = |d: f64| {
            let nail = Nail { diameter_in: d, yield_psi: 90_000.0, side_in: 1.5, main_in: 1.5, side_gravity: 0.42, main_gravity: 0.42 };
            nail.lateral(nds(), &mut Working::off()).z_lb
        };
        prop_assert!(z((d * more).min(0.17)) >= z(d) - 1e-9);
    }

    #[test]
    fn more_load_never_spans_further(live in 10.0..60.0f64, dead in 5.0..30.0f64, more in 0.0..30.0f64) {
        let stick = nds().stick(Set::Current, "SPF", "2", "2x8").expect("lumber");
        let span = |live, dead| {
            let asked = Asked { spacing_in: 16.0, live_psf: live, dead_psf: dead, deflection_limit: 240.0, duration: 1.15 };
            longest(&stick, &asked, nds(), &mut Working::off()).inches
        };
        prop_assert!(span(live + more, dead) <= span(live, dead));
        prop_assert!(span(live, dead + more) <= span(live, dead));
    }

    #[test]
    fn no_input_makes_a_panic(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in any::<f64>()) {
        let post = column(a, b, c, d, nds(), &mut Working::on());
        let ratio = post.with_bending(a, b, c, &mut Working::on()).ratio;
        prop_assert!((0.0..=BEYOND).contains(&ratio));
        prop_assert!((0.0..=1.0).contains(&stability(a, b, c, d, 1.0, nds(), &mut Working::on()).c_l));
        let nail = Nail { diameter_in: a, yield_psi: b, side_in: c, main_in: d, side_gravity: a, main_gravity: b };
        prop_assert!(nail.lateral(nds(), &mut Working::on()).z_lb >= 0.0);
    }
}
