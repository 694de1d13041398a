//! Joints against `reference/strength_checks.json`, row by row, and what must hold whatever the figures.
//!
//! What the rows are worth: EC5-P12 and EC5-P13 are printed figures, but small sums; all other rows (EC5-D…) come from one
//! implementation of the clauses from memory, so that agreeing with them shows no slip of the pen, not that the clauses
//! were remembered rightly. What must hold whatever the figures is in `joints/properties.rs`.

mod properties;

use serde_json::Value;
use strength::annex::joints::Joints;
use strength::eurocode::joints::bolts::Bolt;
use strength::eurocode::joints::fish_plate::FishPlate;
use strength::eurocode::joints::johansen::Modes;
use strength::eurocode::joints::lapped::Timber;
use strength::eurocode::joints::nails::{Nail, Shank};
use strength::eurocode::joints::rafter_foot::{RafterFoot, tie_force_n};
use strength::eurocode::joints::spacing::Spacings;
use strength::eurocode::joints::{Capacity, Part, in_a_row, splitting};
use strength::eurocode::wood::Wood;
use strength::working::Working;

const CHECKS: &str = include_str!("../../../reference/strength_checks.json");
const CLASSES: &str = include_str!("../../../reference/en338.csv");

fn rows(kind: &str, expected: usize) -> Vec<Value> {
    let all: Vec<Value> = serde_json::from_str(CHECKS).expect("the reference is read");
    let rows: Vec<Value> = all.into_iter().filter(|row| row["kind"] == kind).collect();
    assert_eq!(rows.len(), expected, "rows of {kind}");
    rows
}

fn figure(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("a number, not {value}"))
}

/// Compare with what a row expects under `key`, within the row's own tolerance.
fn same(row: &Value, key: &str, got: f64) {
    let wanted = figure(&row["expected"][key]);
    within(row, key, wanted, got);
}

fn within(row: &Value, key: &str, wanted: f64, got: f64) {
    let tolerance = &row["tolerance"];
    let most = tolerance["abs"].as_f64().unwrap_or_else(|| figure(&tolerance["rel"]) * wanted.abs());
    assert!((got - wanted).abs() <= most, "{} {key}: {got}, expected {wanted} within {most}", row["id"]);
}

fn modes(row: &Value, modes: &Modes) {
    let wanted = row["expected"]["modes_N"].as_object().expect("modes");
    assert_eq!(wanted.len(), modes.all.len(), "{}", row["id"]);
    for (mode, got, _) in &modes.all {
        within(row, &mode.to_string(), figure(&wanted[&mode.to_string()]), *got);
    }
}

fn governs(row: &Value, capacity: &Capacity) {
    assert_eq!(row["expected"]["mode"].as_str(), Some(capacity.mode.to_string().as_str()), "{}", row["id"]);
}

fn wood(class: &str) -> Wood {
    let line = CLASSES.lines().find(|line| line.starts_with(&format!("{class},"))).expect("a class");
    let cells: Vec<&str> = line.split(',').collect();
    let at = |i: usize| cells[i].trim().parse::<f64>().expect("a number");
    Wood {
        class: class.into(),
        softwood: cells[1] == "softwood",
        fm_k: at(2),
        ft_0_k: at(3),
        ft_90_k: at(4),
        fc_0_k: at(5),
        fc_90_k: at(6),
        fv_k: at(7),
        e0_mean: at(8) * 1000.0,
        e0_05: at(9) * 1000.0,
        e90_mean: at(10) * 1000.0,
        g_mean: at(11) * 1000.0,
        rho_k: at(12),
        rho_mean: at(13),
    }
}

fn annex() -> &'static Joints {
    Joints::of("uk").expect("the figures of the UK")
}

fn round(diameter_mm: f64, length_mm: f64, head_mm: f64) -> Nail {
    Nail { diameter_mm, length_mm, head_mm, shank: Shank::Round, tensile_n_mm2: 600.0, bored: false }
}

fn part(wood: &Wood, thickness_mm: f64, angle_deg: f64) -> Part<'_> {
    Part { wood, thickness_mm, angle_deg }
}

#[test]
fn nail_single_shear() {
    for row in rows("nail_single_shear", 3) {
        let i = &row["inputs"];
        let class = wood(i["cls"].as_str().expect("a class"));
        let nail = Nail {
            tensile_n_mm2: figure(&i["f_u"]),
            ..round(figure(&i["d_mm"]), figure(&i["length_mm"]), figure(&i["head_mm"]))
        };
        let head = part(&class, figure(&i["t1_mm"]), 0.0);
        // The rows say nothing of the thickness at the point: it is thicker than the point goes.
        let point = part(&class, 200.0, 0.0);
        let mut w = Working::on();
        let shear = nail.in_shear(&head, &point, annex(), &mut w);
        let design = shear.capacity.design_n(figure(&i["kmod"]), annex(), &mut w);
        same(&row, "F_v_Rk_N", shear.capacity.characteristic_n);
        same(&row, "F_v_Rk_no_rope_N", shear.no_rope_n);
        same(&row, "F_ax_Rk", shear.axial_n);
        same(&row, "pointside_pen_mm", shear.pointside_mm);
        same(&row, "F_v_Rd_N", design);
        governs(&row, &shear.capacity);
        modes(&row, &shear.modes);
        let lines = w.lines();
        let line = |start: &str| lines.iter().find(|l| l.what.starts_with(start)).expect("a line").value;
        same(&row, "f_h_k", line("embedment strength"));
        same(&row, "M_y_Rk", line("yield moment"));
    }
}

#[test]
fn bolts_in_shear() {
    for (kind, double) in [("bolt_single_shear", false), ("bolt_double_shear", true)] {
        for row in rows(kind, 1) {
            let i = &row["inputs"];
            let class = wood(i["cls"].as_str().expect("a class"));
            let bolt = Bolt {
                diameter_mm: figure(&i["d_mm"]),
                tensile_n_mm2: figure(&i["f_u"]),
                washer_mm: figure(&i["washer_mm"]),
            };
            assert!((bolt.hole_mm(annex()) - figure(&i["hole_mm"])).abs() < 1e-9);
            let first = part(&class, figure(&i["t1_mm"]), figure(&i["alpha1"]));
            let second = part(&class, figure(&i["t2_mm"]), figure(&i["alpha2"]));
            let mut w = Working::on();
            let shear = if double {
                bolt.double_shear(&first, &second, annex(), &mut w)
            } else {
                bolt.single_shear(&first, &second, annex(), &mut w)
            };
            same(&row, "f_h1", shear.embedment_1);
            same(&row, "f_h2", shear.embedment_2);
            same(&row, "F_ax_Rk", shear.axial_n);
            same(&row, "F_v_Rk_N_per_plane", shear.capacity.characteristic_n);
            governs(&row, &shear.capacity);
            modes(&row, &shear.modes);
            let yields = w.lines().into_iter().find(|l| l.what.starts_with("yield moment")).expect("a line");
            same(&row, "M_y_Rk", yields.value);
        }
    }
}

#[test]
fn steel_timber_single() {
    for row in rows("steel_timber_single", 2) {
        let i = &row["inputs"];
        let class = wood(i["cls"].as_str().expect("a class"));
        let d = figure(&i["d_mm"]);
        let bolt = Bolt { diameter_mm: d, tensile_n_mm2: figure(&i["f_u"]), washer_mm: 0.0 };
        let plate = if i["plate"].as_str().expect("a word").starts_with("thin") { 0.5 * d } else { d };
        let timber = part(&class, figure(&i["t1_mm"]), 0.0);
        let shear = bolt.under_plate(plate, &timber, false, annex(), &mut Working::off());
        same(&row, "F_v_Rk_N", shear.capacity.characteristic_n);
        governs(&row, &shear.capacity);
    }
}

#[test]
fn nail_n_ef() {
    for row in rows("nail_n_ef", 1) {
        let i = &row["inputs"];
        let (n, apart) = (figure(&i["n"]) as u32, figure(&i["a1_over_d"]));
        assert!((in_a_row::k_ef(apart, false, annex()) - figure(&i["k_ef"])).abs() < 1e-9);
        same(&row, "n_ef", in_a_row::nails(n, apart, false, false, annex(), &mut Working::off()));
    }
}

#[test]
fn splitting_f90() {
    for row in rows("splitting_F90", 1) {
        let [b, h, he] = ["b_mm", "h_mm", "he_mm"].map(|key| figure(&row["inputs"][key]));
        same(&row, "F_90_Rk_N", splitting::characteristic_n(b, h, he, annex(), &mut Working::off()));
    }
}

#[test]
fn bolt_design_capacity() {
    // Printed, but only F · n · k_mod / γ_M; that n is 2 was inferred from the figures.
    for row in rows("bolt_design_capacity", 1) {
        let i = &row["inputs"];
        let capacity = Capacity { characteristic_n: figure(&i["F_v_Rk_kN"]) * 1000.0, mode: 'j', clause: "given" };
        assert!((annex().partial.connection.value - figure(&i["gamma_M"])).abs() < 1e-9);
        let each = capacity.design_n(figure(&i["kmod"]), annex(), &mut Working::off());
        same(&row, "F_v_Rd_kN", each * figure(&i["n"]) / 1000.0);
    }
}

#[test]
fn nail_detailing() {
    // Printed figures: 8d at the point, 5d from an unloaded edge.
    for row in rows("nail_detailing", 1) {
        let i = &row["inputs"];
        let nail = round(figure(&i["d_mm"]), figure(&i["length_mm"]), 5.0);
        let least = nail.least_pointside_mm(annex());
        same(&row, "min_pointside_penetration_mm", least);
        let spacings = Spacings::nail(&nail, figure(&i["rho_k"]), 0.0, annex());
        same(&row, "min_member_width_two_edges_mm", 2.0 * spacings.free_edge_mm);
        // The example stands 25 mm of timber against the 26.5 mm: 21.2 / 25 = 0.848 is its ratio.
        same(&row, "pen_ratio", least / 25.0);
    }
}

fn foot<'a>(wood: &'a Wood, joist_depth: f64) -> RafterFoot<'a> {
    RafterFoot {
        joist: Timber { wood, thickness_mm: 47.0, depth_mm: joist_depth },
        rafter: Timber { wood, thickness_mm: 38.0, depth_mm: 125.0 },
        pitch_deg: 35.0,
        seat_mm: 60.0,
        joist_end_mm: Some(0.0),
        rafter_end_mm: None,
        nail: round(3.35, 75.0, 7.0),
        staggered: true,
        turns_round: false,
    }
}

#[test]
fn rafter_foot_joint() {
    for row in rows("rafter_foot_joint", 1) {
        let i = &row["inputs"];
        let [span, pitch, spacing] = ["span_m", "pitch", "spacing_m"].map(|key| figure(&i[key]));
        let cosine = geometry::Angle::deg(pitch).cos();
        let load = spacing
            * (figure(&i["gammaG"]) * figure(&i["gk_slope"]) / cosine
                + figure(&i["gammaQ"]) * figure(&i["mu1"]) * figure(&i["s_k"]));
        same(&row, "w_d_plan", load);
        let mut w = Working::on();
        let force = tie_force_n(load, span * 1000.0, pitch, &mut w);
        same(&row, "T_d_kN", force / 1000.0);
        let class = wood("C16");
        let outcome = foot(&class, 97.0).check(force, figure(&i["kmod"]), annex(), &mut w).nailed;
        same(&row, "F_v_Rd_N", outcome.each_n);
        assert_eq!(outcome.needed, Some(figure(&row["expected"]["n_nails"]) as u32));
        assert_eq!(Value::Bool(outcome.pointside_ok), row["expected"]["pointside_ok"]);
        assert!(w.lines().iter().any(|line| line.what == "fasteners that fit on the lap"));
    }
}

#[test]
fn fish_plate_splice() {
    // The row is the couple alone; the worse pair also has half of the shear, which the check uses.
    for row in rows("fish_plate_splice", 1) {
        let i = &row["inputs"];
        let plates = FishPlate {
            between_pairs_mm: 240.0,
            joint_to_middle_mm: figure(&i["e_m"]) * 1000.0,
            bolts_in_pair: 2,
            plate_mm: 25.0,
            plate_depth_mm: 150.0,
            hole_mm: 13.0,
        };
        let (moment, shear) = (figure(&i["M_d_kNm"]) * 1e6, figure(&i["V_d_kN"]) * 1000.0);
        let splice = plates.check(moment, shear, 4000.0, 16.0, &mut Working::off());
        same(&row, "bolt_force_per_pair_kN", splice.couple_n / 1000.0);
        assert!((splice.pair_n - 4500.0).abs() < 1e-6);
        assert!(splice.plates.ratio > 0.0 && splice.plates.ratio < 1.0, "{:?}", splice.plates);
    }
}
