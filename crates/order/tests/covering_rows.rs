//! Coverings against the published rows of `reference/site_checks.json`, through the functions that count a roof.

use order::covering::{BattenKind, Coverings, Ventilation, Way, eaves_slot, ridge_slot, share_of_floor, sums};
use serde_json::Value;

const CHECKS: &str = include_str!("../../../reference/site_checks.json");

/// Rows of coverings in the file: `cov.*`, and what the worked house and the allowances say of them.
const ROWS: usize = 55;

/// A square of shingles, square inches.
const SQUARE: f64 = 14_400.0;

const MM_PER_INCH: f64 = 25.4;

fn rows() -> Vec<Value> {
    let all: Vec<Value> = serde_json::from_str(CHECKS).expect("the reference is read");
    let ours = |id: &str| {
        id.starts_with("cov.") || ["ex.gable9x7.slope_m", "ex.gable9x7.battens_m", "mat.waste_tiles"].contains(&id)
    };
    all.into_iter().filter(|row| row["id"].as_str().is_some_and(ours)).collect()
}

fn uk() -> &'static Coverings {
    Coverings::of("uk").expect("figures")
}

fn us() -> &'static Coverings {
    Coverings::of("us").expect("figures")
}

fn air() -> &'static Ventilation {
    uk().ventilation.as_ref().expect("slots")
}

/// Numbers of an expectation, flattened.
fn numbers(value: &Value) -> Vec<f64> {
    match value {
        Value::Array(all) => all.iter().flat_map(numbers).collect(),
        Value::Object(all) => all.values().flat_map(numbers).collect(),
        _ => vec![value.as_f64().expect("a number")],
    }
}

fn batten(kind: BattenKind) -> Vec<f64> {
    [450.0, 600.0]
        .iter()
        .flat_map(|span| uk().batten(kind, *span).map(|b| [b.thickness, b.width]).expect("a size"))
        .collect()
}

fn tile() -> &'static order::covering::Covering {
    &uk().coverings["single-lap-tile"]
}

/// Gauge of the 420 tile at the pitch from which a lap is allowed, and that pitch.
fn single(lap: f64) -> (f64, f64) {
    let step = tile().laps.iter().find(|step| step.lap == lap).expect("the lap is there");
    (sums::gauge(tile().way, tile().length.value, step.lap), step.from_pitch)
}

fn single_figures(id: &str, lap: f64) -> f64 {
    let (gauge, pitch) = single(lap);
    let cover = tile().cover_width.as_ref().expect("a cover width").value;
    match id.rsplit('.').next() {
        Some("gauge") => gauge,
        Some("tiles_m2") => sums::pieces_in(1e6, cover, gauge),
        Some("batten_m_m2") => sums::battens_per_area(gauge),
        Some("kg_m2") => sums::pieces_in(1e6, cover, gauge) * tile().weight.as_ref().expect("a weight").value,
        Some("min_pitch") => pitch,
        _ => panic!("{id}"),
    }
}

fn underlay(pitch: f64) -> Vec<f64> {
    [false, true].iter().map(|boards| uk().underlay_lap(pitch, *boards).expect("a lap").0).collect()
}

#[allow(clippy::too_many_lines, reason = "one row each")]
fn found(id: &str, inputs: &Value) -> Vec<f64> {
    let number = |key: &str| inputs[key].as_f64().unwrap_or_else(|| panic!("{id}: {key}"));
    let common = &uk().common;
    let plain = &uk().coverings["plain-tile"];
    let shingle = &us().coverings["wood-shingle"];
    match id {
        "cov.batten.natural_slate" => batten(BattenKind::NaturalSlate),
        "cov.batten.fibre_or_concrete_slate" => batten(BattenKind::FibreOrConcreteSlate),
        "cov.batten.tile_double_lap" => batten(BattenKind::TileDoubleLap),
        "cov.batten.tile_single_lap" => batten(BattenKind::TileSingleLap),
        "cov.batten.min_len_m" => vec![common.batten_least_length.value / 1000.0],
        "cov.batten.min_supports" => vec![common.batten_least_supports.value],
        "cov.batten.nail_dia_mm" => vec![common.batten_nail.value],
        "cov.eaves_overhang_gutter_mm" => vec![common.eaves_overhang.value],
        "cov.gauge.plain_265_65" => {
            assert_eq!((plain.length.value, plain.laps[0].lap), (number("L"), number("headlap")));
            vec![sums::gauge(plain.way, number("L"), number("headlap"))]
        }
        "cov.plain.per_m2" => vec![sums::pieces_in(1e6, plain.width.value, number("gauge"))],
        "cov.plain.battens_m_m2" => vec![sums::battens_per_area(number("gauge"))],
        "cov.plain.min_pitch_deg" => vec![plain.laps[0].from_pitch],
        "cov.plain.min_headlap_mm" => vec![plain.laps[0].lap],
        "cov.slate.600x300.h110" | "cov.slate.600x300.h100" => {
            let gauge = sums::gauge(Way::Double, number("L"), number("headlap"));
            // In the order of the names in the row: battens, gauge, pieces.
            vec![sums::battens_per_area(gauge), gauge, sums::pieces_in(1e6, number("w"), gauge)]
        }
        "cov.slate.holing_from_tail" => {
            vec![sums::holing_from_tail(number("gauge"), number("headlap"), common.holing_extra.value)]
        }
        "cov.slate.head_nailed_gauge" => {
            vec![sums::head_nailed_gauge(number("L"), common.hole_from_head.value, number("lap"))]
        }
        "cov.courses.3200_260" | "cov.courses.3000_300" => {
            let (n, gauge) = sums::courses(number("first_to_top_batten_mm"), number("max_gauge"));
            vec![gauge, n as f64]
        }
        "cov.shingle.18x4_per_square" => {
            let (length, lap) = (shingle.length.value / MM_PER_INCH, shingle.laps[0].lap / MM_PER_INCH);
            let exposure = sums::gauge(shingle.way, length, lap);
            vec![exposure, sums::pieces_in(SQUARE, number("w_in"), exposure)]
        }
        _ if id.starts_with("cov.shingle.exposure") => {
            let exposure: f64 = id.trim_start_matches("cov.shingle.exposure").parse().expect("inches");
            numbers(&inputs["widths_in"]).iter().map(|w| sums::pieces_in(SQUARE, *w, exposure)).collect()
        }
        "cov.shingle.waste" => vec![us().common.breakage_plain.value, us().common.breakage_cut.value],
        "cov.sheathing_diagonal_extra" => {
            let extra = us().common.diagonal_boards.as_ref().expect("a share");
            vec![extra.low, extra.high]
        }
        "cov.underlay.lap_12.5-14" => underlay(14.0),
        "cov.underlay.lap_15-34" => underlay(34.0),
        "cov.underlay.lap_35+" => underlay(35.0),
        "cov.underlay.side_lap_mm" => vec![uk().underlay.side_lap.value],
        "cov.vent.eaves_15to34_under10m_mm" => {
            assert_eq!(ridge_slot(air(), 34.0, 9999.0), 0.0);
            vec![eaves_slot(air(), 34.0)]
        }
        "cov.vent.ridge_if_35plus_or_10m_mm" => {
            assert_eq!(ridge_slot(air(), 20.0, 10_000.0), ridge_slot(air(), 35.0, 5000.0));
            vec![ridge_slot(air(), 35.0, 5000.0)]
        }
        "cov.vent.eaves_upto15_mm" => vec![eaves_slot(air(), 15.0)],
        "cov.vent.mono_eaves_mm" => vec![eaves_slot(air(), 22.5)],
        "cov.vent.mono_top_mm" => vec![air().lean_to_top.value],
        "cov.vent.gap_over_insulation_mm" => vec![air().over_insulation.value],
        "cov.vent.10mm_as_mm2_per_m" => vec![sums::slot_area(1000.0, number("slot"))],
        "cov.vent.soffit_9m" => {
            vec![sums::slot_area(number("eaves_m") * 1000.0, eaves_slot(air(), 40.0)) * number("sides")]
        }
        "cov.vent.us_ratio" => {
            let share = us().ventilation_share.as_ref().expect("a share");
            [&share.whole, &share.reduced].iter().map(|f| share_of_floor(1.0, f.value)).collect()
        }
        "cov.ridge_tiles_9m" => {
            assert_eq!(common.ridge_piece.value, number("tile_mm"));
            vec![sums::pieces_along(number("ridge_m") * 1000.0, number("tile_mm")) as f64]
        }
        "mat.waste_tiles" => vec![common.breakage_plain.value, common.breakage_cut.value],
        "ex.gable9x7.slope_m" => vec![(3.5 + 0.3) / geometry::Angle::deg(40.0).cos()],
        "ex.gable9x7.battens_m" => {
            let slope = (3500.0 + 300.0) / geometry::Angle::deg(40.0).cos();
            let (n, gauge) = sums::courses(slope, 100.0);
            assert_eq!(n as f64, number("courses"));
            // Printed to two places from 4961.
            assert!((gauge - number("gauge_mm")).abs() < 0.011, "{gauge}");
            vec![n as f64 * 9.0 * 2.0]
        }
        _ if id.starts_with("cov.single420.h75") => vec![single_figures(id, 75.0)],
        _ if id.starts_with("cov.single420.h100") => vec![single_figures(id, 100.0)],
        _ => panic!("no check for {id}"),
    }
}

/// `1 in any 4 …` as its two numbers.
fn share(text: &str) -> Vec<u32> {
    text.split_whitespace().filter_map(|word| word.parse().ok()).collect()
}

#[test]
fn every_row() {
    let rows = rows();
    assert_eq!(rows.len(), ROWS);
    for row in &rows {
        let id = row["id"].as_str().expect("an id");
        // Rules in words.
        let gauge = match id {
            "cov.batten.joint_rule_over200" => 200.1,
            "cov.batten.joint_rule_upto200" => 200.0,
            _ => 0.0,
        };
        if gauge > 0.0 {
            let found = uk().joint_share(gauge);
            assert_eq!(share(row["expected"].as_str().expect("words")), [found.most, found.among], "{id}");
            continue;
        }
        let expected = numbers(&row["expected"]);
        let found = found(id, &row["inputs"]);
        assert_eq!(found.len(), expected.len(), "{id}");
        // A tolerance of none is exact to rounding of the last bit.
        let tolerance = row["tolerance"].as_f64().expect("a tolerance").max(1e-9);
        for (a, b) in found.iter().zip(&expected) {
            assert!((a - b).abs() <= tolerance + 1e-12, "{id}: {a} for {b}");
        }
    }
}

#[test]
fn coverings_of_the_job_have_figures() {
    // The words of `loads.covering`.
    for name in [
        "plain-tile",
        "handmade-plain-tile",
        "interlocking-tile",
        "pantile",
        "slate",
        "heavy-slate",
        "fibre-cement-slate",
    ] {
        assert!(uk().coverings.contains_key(name), "{name}");
    }
    for coverings in [uk(), us()] {
        for (name, c) in &coverings.coverings {
            assert!(c.laps.windows(2).all(|w| w[0].from_pitch < w[1].from_pitch && w[0].lap >= w[1].lap), "{name}");
            assert!(c.laps.iter().all(|l| l.lap < c.length.value), "{name}");
            assert!(c.weight.is_some() != c.weight_per_area.is_some(), "{name}");
            // The most gauge is that of the least lap.
            if let (Some(most), Some(last)) = (&c.most_gauge, c.laps.last()) {
                assert!((most.value - sums::gauge(c.way, c.length.value, last.lap)).abs() < 1e-9, "{name}");
            }
        }
    }
}
