//! Figures and sums of access against the rows `acc.*` of `reference/site_checks.json`: each row has its source there.

use roof::rules::Standing;
use serde_json::Value;
use site::access::rules::{Figure, Rules};
use site::access::{
    GRAVITY, OnBay, Stack, Verdict, bay_kn, check_bay, kilograms, ladder, ladder_slope, share_in_bay, throw,
    tower_height, whole_pieces,
};
use site::programme::NotifyAt;
use std::collections::BTreeSet;

/// Rows of access.
const ROWS: usize = 109;

fn rows() -> Vec<Value> {
    let text = include_str!("../../../reference/site_checks.json");
    let all: Vec<Value> = serde_json::from_str(text).unwrap();
    all.into_iter().filter(|row| id(row).starts_with("acc.")).collect()
}

fn id(row: &Value) -> &str {
    row["id"].as_str().unwrap()
}

fn near(row: &Value, ours: f64, expected: &Value) {
    let expected = expected.as_f64().unwrap();
    // A row without tolerance is exact, but for the last bits of a product.
    let tolerance = row["tolerance"].as_f64().unwrap().max(expected.abs() * 1e-12);
    assert!((ours - expected).abs() <= tolerance, "{}: {ours} is not {expected}", id(row));
}

/// A figure of a region against a row: its value in the unit of the source, and how it was come by.
fn same(row: &Value, figure: &Figure, expected: &Value) {
    near(row, figure.value, expected);
    let standing = match row["provenance"].as_str().unwrap() {
        "published" => Standing::Published,
        "memory" => Standing::Memory,
        "derived" => Standing::Derived,
        _ => Standing::CommonPractice,
    };
    assert_eq!(figure.standing, standing, "{}", id(row));
}

/// Rows that are one figure of a region each.
const FIGURES: [(&str, &str, &str); 53] = [
    ("acc.uk.guardrail_top_min_mm", "uk", "guardrail-top-min"),
    ("acc.uk.guardrail_gap_max_mm", "uk", "guardrail-gap-max"),
    ("acc.uk.guardrail_top_pre2005_mm", "uk", "guardrail-top-before-2005"),
    ("acc.uk.toeboard_pre2005_min_mm", "uk", "toe-board-min"),
    ("acc.uk.inspect_interval_days", "uk", "inspect-interval"),
    ("acc.uk.report_copy_within_h", "uk", "report-copy-within"),
    ("acc.uk.report_keep_after_completion_months", "uk", "report-keep"),
    ("acc.uk.ladder_rest_platform_rise_m", "uk", "ladder-rest-rise"),
    ("acc.uk.pavement_fence_height_m", "uk", "fence-height"),
    ("acc.uk.ladder_angle_nominal_deg", "uk", "ladder-angle"),
    ("acc.ladder_project_above_landing_m", "uk", "ladder-above-landing"),
    ("acc.uk.ladder_max_task_min", "uk", "ladder-task-max"),
    ("acc.uk.ladder_max_hand_load_kg", "uk", "ladder-load-max"),
    ("acc.tower.ratio_outdoor", "uk", "tower-ratio-outdoor"),
    ("acc.tower.ratio_indoor", "uk", "tower-ratio-indoor"),
    ("acc.tower.en1004_max_height_out_m", "uk", "tower-height-outdoor-max"),
    ("acc.tower.en1004_max_height_in_m", "uk", "tower-height-indoor-max"),
    ("acc.tower.wind_stop_mph", "uk", "tower-wind-stop"),
    ("acc.roof.wind_stop_mean_mph", "uk", "wind-stop"),
    ("acc.roof.wind_caution_mean_mph", "uk", "wind-care"),
    ("acc.public.headroom_covered_way_m", "uk", "covered-way-headroom"),
    ("acc.public.footway_clear_width_m", "uk", "footway-clear"),
    ("acc.public.passage_alt_m", "uk", "passage-other"),
    ("acc.public.clear_to_carriageway_m", "uk", "clear-to-carriageway"),
    ("acc.public.pavement_lift_headroom_m", "uk", "pavement-lift-headroom-min"),
    ("acc.public.pavement_lift_headroom_max_m", "uk", "pavement-lift-headroom-max"),
    ("acc.public.pavement_route_width_m", "uk", "pavement-route-width"),
    ("acc.board.38mm_max_span_m", "uk", "board-span-max"),
    ("acc.board.38mm_cert_span_m", "uk", "board-span-graded"),
    ("acc.wall_gap_max_mm", "uk", "wall-gap-max"),
    ("acc.us.guardrail_front_edge_gap_in", "us", "wall-gap-max"),
    ("acc.us.access_needed_over_ft", "us", "access-needed-over"),
    ("acc.us.fall_protection_scaffold_ft", "us", "fall-scaffold"),
    ("acc.us.guardrail_force_lb", "us", "guardrail-force"),
    ("acc.us.toeboard_in", "us", "toe-board-min"),
    ("acc.us.ladder_load_factor", "us", "ladder-load-factor"),
    ("acc.us.ladder_test_angle_deg", "us", "ladder-angle"),
    ("acc.us.scaffold_load_factor", "us", "scaffold-load-factor"),
    ("acc.us.platform_width_in", "us", "platform-width-min"),
    ("acc.us.height_base_ratio_free", "us", "tower-ratio-outdoor"),
    ("acc.us.plank_overhang_min_in", "us", "board-overhang-min"),
    ("acc.us.plank_overhang_max_in_up_to_10ft", "us", "board-overhang-max"),
    ("acc.us.plank_lap_min_in", "us", "board-lap-min"),
    ("acc.us.residential_fall_ft", "us", "fall-residential"),
    ("acc.us.ladder_project_ft", "us", "ladder-above-landing"),
    ("acc.us.ladder_out_fraction", "us", "ladder-out-share"),
    // Pairs of figures: the first here, the second below.
    ("acc.us.guardrail_scaffold_in", "us", "guardrail-top-min"),
    ("acc.us.guardrail_general_in", "us", "guardrail-general-min"),
    ("acc.us.steep_roof_over", "us", "steep-roof-rise"),
    ("acc.us.high_wind_mph", "us", "wind-stop"),
    ("acc.en12811.loaded_lifts", "uk", "loaded-lift"),
    ("acc.board.overhang_mm", "uk", "board-overhang-min"),
    ("acc.us.inspect", "us", "inspect-interval"),
];

/// The second figure of rows with two.
const SECOND: [(&str, &str); 6] = [
    ("acc.us.guardrail_scaffold_in", "guardrail-top-max"),
    ("acc.us.guardrail_general_in", "guardrail-general-max"),
    ("acc.us.steep_roof_over", "steep-roof-run"),
    ("acc.us.high_wind_mph", "wind-care"),
    ("acc.en12811.loaded_lifts", "loaded-neighbour"),
    ("acc.board.overhang_mm", "board-overhang-max"),
];

/// Rows that are figures; the names of those read.
fn read_figures(rows: &[Value]) -> BTreeSet<String> {
    let mut read = BTreeSet::new();
    for (name, region, key) in FIGURES {
        let row = rows.iter().find(|row| id(row) == name).unwrap_or_else(|| panic!("no row {name}"));
        let rules = Rules::of(region).unwrap();
        let figure = rules.get(key).unwrap_or_else(|| panic!("no figure {key}"));
        match &row["expected"] {
            Value::Array(pair) => {
                same(row, figure, &pair[0]);
                let (_, second) = SECOND.iter().find(|(other, _)| *other == name).unwrap();
                same(row, rules.get(second).unwrap(), &pair[1]);
            }
            // A shift is not a number: a day has one at least.
            Value::String(words) => {
                assert!(figure.source.contains(words.trim_start_matches("before each ")), "{name}");
                assert_eq!((figure.value, figure.standing), (1.0, Standing::Memory));
            }
            expected => same(row, figure, expected),
        }
        assert!(read.insert(name.to_owned()), "{name} twice");
    }
    let gusts =
        [("acc.roof.wind_stop_mean_mph", "wind-stop-gust"), ("acc.roof.wind_caution_mean_mph", "wind-care-gust")];
    for (name, key) in gusts {
        let row = rows.iter().find(|row| id(row) == name).unwrap();
        near(row, Rules::of("uk").unwrap().get(key).unwrap().value, &row["inputs"]["gust"]);
    }
    read
}

/// Rows of the tables of classes.
fn read_classes(row: &Value) -> bool {
    let (uk, us) = (Rules::of("uk").unwrap(), Rules::of("us").unwrap());
    let inputs = &row["inputs"];
    let class = || uk.class(u32::try_from(inputs["class"].as_u64().unwrap()).unwrap()).unwrap();
    let duty = |name: &str| &us.classes.iter().find(|class| class.name == name).unwrap().spread;
    let name = id(row);
    match name {
        _ if name.ends_with(".q1_kN_m2") => same(row, &class().spread, &row["expected"]),
        _ if name.ends_with(".F1_500x500_kN") => same(row, class().patch.as_ref().unwrap(), &row["expected"]),
        _ if name.ends_with(".q2_partial") => {
            same(row, class().part.as_ref().unwrap(), &row["expected"]["q2_kN_m2"]);
            same(row, class().part_area.as_ref().unwrap(), &row["expected"]["area_factor"]);
        }
        _ if name.starts_with("acc.en12811.width.") => {
            let wanted = inputs["class"].as_str().unwrap();
            let width = uk.widths.iter().find(|width| width.name == wanted).unwrap();
            same(row, &width.least, &row["expected"]);
            assert_eq!(uk.width(width.least.own()).map(|width| width.name.as_str()), Some(wanted));
        }
        _ if name.starts_with("acc.en13374.") => {
            let wanted = inputs["class"].as_str().unwrap();
            let edge = uk.edges.iter().find(|edge| edge.name == wanted).unwrap();
            same(row, &edge.steepest, &row["expected"]);
            assert_eq!(uk.edge(edge.steepest.own(), 1e5).map(|edge| edge.name.as_str()), Some(wanted));
        }
        _ if name.starts_with("acc.us.duty_") && name.ends_with("_psf") => {
            same(row, duty(name.trim_start_matches("acc.us.duty_").trim_end_matches("_psf")), &row["expected"]);
        }
        _ if name.starts_with("acc.us.duty_") => {
            let which = name.trim_start_matches("acc.us.duty_").trim_end_matches("_kN_m2");
            near(row, duty(which).own(), &row["expected"]);
        }
        "acc.uk.cdm.notify" => {
            for (key, field) in
                [("notify-days", "days"), ("notify-workers", "workers"), ("notify-person-days", "person_days")]
            {
                same(row, uk.get(key).unwrap(), &row["expected"][field]);
            }
        }
        _ => return false,
    }
    true
}

/// Rows that are sums.
fn read_sums(row: &Value) -> bool {
    let (inputs, expected) = (&row["inputs"], &row["expected"]);
    let input = |key: &str| inputs[key].as_f64().unwrap_or_else(|| panic!("{}: no {key}", id(row)));
    let uk = Rules::of("uk").unwrap();
    let name = id(row);
    match name {
        "acc.uk.ladder_angle_deg" => near(row, ladder_slope(input("rise"), input("out")), expected),
        "acc.tower.base1.35_outdoor_max_h" => near(row, tower_height(input("base_m"), input("ratio")), expected),
        "acc.us.light_35sqft_lb" => light_duty(row),
        "acc.bay.max_plain_tiles" => near(row, f64::from(whole_pieces(input("left_kg"), input("tile_kg"))), expected),
        "acc.bay.timber_pack_check" => pack(row),
        _ if name.starts_with("acc.ladder.length_for_landing_") => {
            let (length, out) = ladder(input("landing_m"), input("projection_m"), input("angle_deg"));
            near(row, length, &expected["length_m"]);
            near(row, out, &expected["foot_out_at_landing_m"]);
        }
        _ if name.starts_with("acc.wind.mph_to_ms_") => {
            let figure = ["wind-care", "wind-stop", "wind-care-gust", "wind-stop-gust"];
            let figure = figure.iter().filter_map(|key| uk.get(key)).find(|figure| figure.value == input("mph"));
            near(row, figure.unwrap().own(), expected);
        }
        _ if name.starts_with("acc.cdm.case_") => {
            let at = |key: &str| uk.get(key).unwrap().own();
            let at = NotifyAt {
                days: at("notify-days"),
                workers: at("notify-workers"),
                person_days: at("notify-person-days"),
            };
            let ours = at.notifiable(input("days"), input("peak_workers"), input("person_days"));
            assert_eq!(Some(ours), expected.as_bool(), "{name}");
        }
        _ if name.starts_with("acc.bay.class") => {
            let kn = bay_kn(input("q_kN_m2"), input("bay_m"), input("width_m"));
            near(row, kn, &expected["kN"]);
            near(row, kilograms(kn), &expected["kg"]);
        }
        _ if name.starts_with("acc.offcut_throw_") => near(row, throw(input("h_m"), input("v_ms")), expected),
        _ => return false,
    }
    true
}

/// 35 square feet of light duty carry 875 lb: our bay of that area in kN and kg says the same.
fn light_duty(row: &Value) {
    let light = &Rules::of("us").unwrap().class(1).unwrap().spread;
    assert_eq!(Some(light.value), row["inputs"]["psf"].as_f64());
    let foot = 0.3048;
    let kg = kilograms(bay_kn(light.own(), row["inputs"]["area_ft2"].as_f64().unwrap() * foot, foot));
    let pounds = kg / 0.453_592_37;
    // The factor from lb/ft² has six digits.
    assert!((pounds - row["expected"].as_f64().unwrap()).abs() < 0.01, "{pounds}");
}

fn pack(row: &Value) {
    let (inputs, expected) = (&row["inputs"], &row["expected"]);
    let input = |key: &str| inputs[key].as_f64().unwrap();
    let section: Vec<f64> =
        inputs["section_mm"].as_array().unwrap().iter().map(|mm| mm.as_f64().unwrap() / 1000.0).collect();
    let kg = input("n") * section[0] * section[1] * input("len_m") * input("density");
    near(row, kg, &expected["pack_kg"]);
    near(row, share_in_bay(kg, input("len_m"), input("bay_m")), &expected["share_in_bay_kg"]);
    let stack = Stack { what: "rafters".into(), pieces: 20, length_mm: input("len_m") * 1000.0, kg };
    let class = Rules::of("uk").unwrap().class(3).unwrap();
    assert_eq!(class.spread.own(), input("q"));
    let on = OnBay {
        stack: &stack,
        people: 2,
        person_kg: input("kg_per_person"),
        bay_m: input("bay_m"),
        width_m: input("width_m"),
        patch_m: 0.5,
    };
    let bay = check_bay(class, &on);
    near(row, bay.capacity_kg, &expected["bay_capacity_kg"]);
    near(row, bay.left_kg, &expected["left_for_material_kg"]);
    assert_eq!(Some(bay.average == Verdict::Within), expected["ok"].as_bool());
    // `reference/site.md` 1.3: 43 pieces at most.
    assert_eq!(bay.pieces_fit, 43);
    // Half a metre of it weighs 284.3 / 4.8 × 0.5 = 29.6 kg; the patch of the class is from memory, so it is asked about.
    assert!((bay.patch_kn - kg / 4.8 * 0.5 * GRAVITY / 1000.0).abs() < 1e-9);
    assert_eq!((bay.patch, bay.overall()), (Verdict::Ask, Verdict::Ask));
    let heavy = Stack { kg: kg * 5.0, ..stack.clone() };
    let over = check_bay(class, &OnBay { stack: &heavy, ..on });
    assert_eq!((over.average, over.patch, over.overall()), (Verdict::Over, Verdict::Ask, Verdict::Over));
    let heavier = Stack { kg: kg * 60.0, ..stack.clone() };
    assert_eq!(check_bay(class, &OnBay { stack: &heavier, ..on }).patch, Verdict::Over);
}

#[test]
fn every_row_of_access_is_met() {
    let rows = rows();
    assert_eq!(rows.len(), ROWS);
    let mut read = read_figures(&rows);
    for row in &rows {
        if read_classes(row) || read_sums(row) {
            assert!(read.insert(id(row).to_owned()), "{} twice", id(row));
        }
    }
    let missed: Vec<&str> = rows.iter().map(id).filter(|id| !read.contains(*id)).collect();
    assert!(missed.is_empty(), "{missed:?}");
}
