//! Rows `st.*` of reference/site_checks.json: limits of straps and plates, and how many straps a line wants.

use serde_json::Value;
use site::sequence::{Rules, strap_count};
use std::path::Path;

fn rows(prefix: &str) -> Vec<Value> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/site_checks.json");
    let all: Vec<Value> = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    all.into_iter().filter(|r| r["id"].as_str().is_some_and(|id| id.starts_with(prefix))).collect()
}

#[test]
fn limits_are_those_of_the_published_rows() {
    let r = Rules::of("uk").unwrap();
    let (strap, plate) = (&r.strap, &r.plate);
    let mut tried = 0;
    for row in rows("st.uk.") {
        let ours: Vec<f64> = match row["id"].as_str().unwrap() {
            "st.uk.plate_len_min_m" => vec![plate.least_length_mm.value / 1000.0],
            "st.uk.plate_min_supports" => vec![plate.least_supports.value],
            "st.uk.plate_section_mm" => vec![plate.thickness_mm.value, plate.width_mm.value],
            "st.uk.hold_down_section_mm" => vec![strap.hold_down_width_mm.value, strap.hold_down_thickness_mm.value],
            "st.uk.hold_down_max_centres_m" => vec![strap.hold_down_centres_mm.value / 1000.0],
            "st.uk.hold_down_low_fix_within_mm" => vec![strap.hold_down_low_fixing_mm.value],
            "st.uk.lateral_section_mm" => vec![strap.lateral_width_mm.value, strap.lateral_thickness_mm.value],
            "st.uk.lateral_max_centres_m_to3storeys" => vec![strap.lateral_centres_mm.value / 1000.0],
            "st.uk.lateral_max_centres_m_4plus" => vec![strap.lateral_centres_tall_mm.value / 1000.0],
            "st.uk.lateral_min_members" => vec![strap.lateral_members.value],
            "st.uk.lateral_downturn_mm" => vec![strap.lateral_downturn_mm.value],
            "st.uk.lateral_noggin_fixings" => vec![strap.lateral_noggin_fixings.value],
            "st.uk.lateral_brace_fixings" => vec![strap.lateral_brace_fixings.value],
            "st.uk.hold_down_len_min_m" => vec![strap.hold_down_least_length_mm.value / 1000.0],
            "st.uk.hold_down_len_typ_m" => vec![strap.hold_down_usual_length_mm.value / 1000.0],
            // The nail and the exemption are no figures of this sheet.
            "st.uk.masonry_nail_mm" | "st.uk.ada_exempt" => continue,
            other => panic!("a new row: {other}"),
        };
        let expected = match &row["expected"] {
            Value::Array(a) => a.iter().map(|v| v.as_f64().unwrap()).collect(),
            v => vec![v.as_f64().unwrap()],
        };
        assert_eq!(ours, expected, "{}", row["id"]);
        tried += 1;
    }
    assert_eq!(tried, 15);
}

#[test]
fn a_line_wants_as_many_straps_as_the_derived_rows_say() {
    let rows = rows("st.count_plate_");
    assert_eq!(rows.len(), 4);
    for row in rows {
        let metres = |v: &Value| v.as_f64().unwrap() * 1000.0;
        let (n, spacing) = strap_count(metres(&row["inputs"]["len_m"]), metres(&row["inputs"]["max_m"])).unwrap();
        assert_eq!(u64::from(n), row["expected"]["n"].as_u64().unwrap(), "{}", row["id"]);
        let off = spacing - metres(&row["expected"]["spacing_m"]);
        assert!(off.abs() <= metres(&row["tolerance"]), "{}: {spacing}", row["id"]);
    }
    // reference/site.md, section 3: a plate of 7.3 m wants 5; half a gable of 7 m at 40° is 4.569 m and wants 4.
    assert_eq!(strap_count(7300.0, 2000.0).unwrap().0, 5);
    assert_eq!(strap_count(3500.0 / geometry::Angle::deg(40.0).cos(), 2000.0).unwrap().0, 4);
    assert_eq!(strap_count(f64::NAN, 2000.0), None);
    assert_eq!(strap_count(-1.0, 2000.0), None);
}
