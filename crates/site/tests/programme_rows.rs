//! Hours, weather and hire against the rows `lab.*` and `ex.*` of `reference/site_checks.json`: each has its source there.

use job::WorkItem;
use roof::rules::Standing;
use serde_json::Value;
use site::programme::{
    Calendar, Labour, Pace, Phase, Rate, Step, Terms, Work, board_feet, case, inspections, pass, weeks, with_loss,
};

/// Rows on hours and hire, and on a whole gable roof.
const ROWS: usize = 46;
/// Rows that nothing here works out: how near a preliminary estimate comes to a detailed one, and metres of battens.
const ELSEWHERE: [&str; 2] = ["lab.prelim_vs_detailed", "ex.gable9x7.battens_m"];

fn rows() -> Vec<Value> {
    let text = include_str!("../../../reference/site_checks.json");
    let all: Vec<Value> = serde_json::from_str(text).unwrap();
    all.into_iter().filter(|row| id(row).starts_with("lab.") || id(row).starts_with("ex.")).collect()
}

fn id(row: &Value) -> &str {
    row["id"].as_str().unwrap()
}

fn near(row: &Value, ours: f64, expected: &Value) {
    let expected = expected.as_f64().unwrap();
    let tolerance = row["tolerance"].as_f64().unwrap().max(expected.abs() * 1e-12);
    assert!((ours - expected).abs() <= tolerance, "{}: {ours} is not {expected}", id(row));
}

fn both(row: &Value, [low, _, high]: [f64; 3], expected: &Value) {
    near(row, low, &expected[0]);
    near(row, high, &expected[1]);
}

const INCH: f64 = 25.4;
const FOOT_M: f64 = 0.3048;
/// Cubic metres of 1000 board feet: 1000 / 12 cubic feet.
const M3_PER_1000: f64 = 2.359_737;

/// The rows of the textbook's table.
const TABLE: [&str; 9] =
    ["sills", "joists", "walls", "rafters_gable", "rafters_hip", "bridging_wood", "ply_roof", "fascia", "soffit"];

/// Our starting values: the row and the item, or the covering.
const OWN: [(&str, &str); 14] = [
    ("common_rafter_each", "rafter_each"),
    ("jack_rafter_each", "jack_each"),
    ("hip_or_valley_each", "hip_each"),
    ("ridge_per_m", "ridge_m"),
    ("ceiling_joist_each", "ceiling_joist_each"),
    ("purlin_per_m", "purlin_m"),
    ("collar_each", "collar_each"),
    ("plate_per_m", "plate_m"),
    ("strap_each", "strap_each"),
    ("trim_opening_each", "opening_each"),
    ("underlay_batten_m2", "underlay_battens_m2"),
    ("plain_tiling_m2", "plain-tile"),
    ("single_lap_tiling_m2", "interlocking-tile"),
    ("slating_m2", "slate"),
];

fn read(row: &Value) -> bool {
    let (uk, us) = (Labour::of("uk").unwrap(), Labour::of("us").unwrap());
    let published = |name: &str| us.published.get(name).unwrap_or_else(|| panic!("no {name}"));
    let (name, inputs, expected) = (id(row), &row["inputs"], &row["expected"]);
    let input = |key: &str| inputs[key].as_f64().unwrap_or_else(|| panic!("{name}: no {key}"));
    let short = name.trim_start_matches("lab.");
    if TABLE.contains(&short) {
        let rate = published(short);
        both(row, [rate.low, rate.likely, rate.high], expected);
        assert_eq!(rate.standing, Standing::Published);
        return true;
    }
    if let Some(uk_item) = short.strip_prefix("uk.") {
        let (_, item) = OWN.iter().find(|(row, _)| *row == uk_item).unwrap_or_else(|| panic!("{name}"));
        let rate: &Rate = uk.work.get(*item).or_else(|| uk.covering.get(*item)).unwrap();
        both(row, [rate.low, rate.likely, rate.high], expected);
        assert_eq!(rate.standing, Standing::CommonPractice);
        return true;
    }
    let of_m3 = |name: &str| published(name).hours(0.0, 1000.0 / M3_PER_1000);
    match name {
        "lab.rafters_gable_h_per_m3_nominal" => both(row, of_m3("rafters_gable"), expected),
        "lab.rafters_hip_h_per_m3_nominal" => both(row, of_m3("rafters_hip"), expected),
        "lab.joists_h_per_m3_nominal" => both(row, of_m3("joists"), expected),
        "lab.fascia_h_per_m" => both(row, published("fascia").hours(1.0, 0.0), expected),
        "lab.soffit_h_per_m" => both(row, published("soffit").hours(1.0, 0.0), expected),
        "lab.sill_h_per_m" => both(row, published("sills").hours(1.0, 0.0), expected),
        "lab.ply_roof_h_per_m2" => both(row, published("ply_roof").hours(1.0, 0.0), expected),
        "lab.hip_over_gable_ratio" => {
            let (hip, gable) = (published("rafters_hip"), published("rafters_gable"));
            both(row, [hip.low / gable.low, 0.0, hip.high / gable.high], expected);
        }
        "lab.joist20_bf_h" | "lab.joist14_bf_h" => {
            let feet = input("n") * board_feet(input("t") * INCH, input("w") * INCH, input("l") * FOOT_M);
            near(row, feet, &expected["bf"]);
            near(row, feet / input("hours"), &expected["bf_per_h"]);
            near(row, input("n") / input("hours"), &expected["pieces_per_h"]);
        }
        "lab.rafter_2x6_14ft_h" => {
            // Dressed sizes have the nominal size of what they were sawn as.
            let feet = board_feet(1.5 * INCH, 5.5 * INCH, 14.0 * FOOT_M);
            near(row, feet, &inputs["bf"]);
            both(row, published("rafters_gable").hours(0.0, feet), expected);
        }
        "lab.hip_2x8_18ft_h" => {
            let feet = board_feet(1.5 * INCH, 7.25 * INCH, 18.0 * FOOT_M);
            near(row, feet, &inputs["bf"]);
            both(row, published("rafters_hip").hours(0.0, feet), expected);
        }
        "lab.48_rafters_5.1m" => {
            let feet = input("n") * board_feet(47.0, 150.0, input("len_m"));
            near(row, feet, &expected["bf"]);
            both(row, published("rafters_gable").hours(0.0, feet), &expected["h"]);
        }
        "lab.mh_formula" => {
            assert_eq!(expected.as_str(), Some("q*rate"));
            let rate = &uk.work["rafter_each"];
            assert_eq!(rate.hours(7.0, 0.0), [7.0 * rate.low, 7.0 * rate.likely, 7.0 * rate.high]);
        }
        // Not every wet day is lost: no month loses more than the share of days with rain.
        "lab.rain_day_share_england" => {
            let most = expected.as_f64().unwrap();
            assert!(uk.weather.loss.iter().all(|loss| *loss > 0.0 && *loss < most));
        }
        "lab.weather_15pc" => {
            let days = with_loss(input("net_days"), input("loss"));
            near(row, days, &expected["days"]);
            near(row, days.ceil(), &expected["ceil"]);
            let step = Step { net: input("net_days"), exposed: true, after: Vec::new() };
            near(row, pass(&[step], &Pace::new(vec![1.0 - input("loss"); 60])).unwrap().end, &expected["days"]);
        }
        "lab.programme_example" => programme_example(row),
        "ex.gable9x7.slope_m" => {
            // Both slopes with their eaves, over the 9 m of the ridge.
            let covered = gable().lines[&(Phase::Covering, WorkItem::Covering)].amount;
            near(row, covered / 2.0 / 9.0, expected);
        }
        "ex.gable9x7.rafter_mass_kg" => {
            let rafters = gable().lines[&(Phase::MainFrame, WorkItem::Rafter)].amount;
            near(row, rafters * 0.047 * 0.15 * 5.1 * 420.0, expected);
        }
        _ if name.starts_with("lab.hire_") => {
            let base = u32::try_from(inputs["base_weeks"].as_u64().unwrap()).unwrap();
            let days = u32::try_from(inputs["calendar_days"].as_u64().unwrap()).unwrap();
            let ours = case("", days, Some(input("lump")), base, Some(input("extra_week")));
            near(row, f64::from(ours.weeks), &expected["weeks"]);
            near(row, f64::from(ours.extra_weeks), &expected["extra"]);
            near(row, ours.cost.unwrap(), &expected["cost"]);
            let terms = Terms { lump: input("lump"), included_weeks: base, extra_week: input("extra_week") };
            assert_eq!(terms.cost(weeks(days)), (ours.extra_weeks, ours.cost.unwrap()));
        }
        _ => return false,
    }
    true
}

fn programme_example(row: &Value) {
    let (inputs, expected) = (&row["inputs"], &row["expected"]);
    let net: Vec<f64> = inputs["steps"].as_array().unwrap().iter().map(|step| step[1].as_f64().unwrap()).collect();
    near(row, net.iter().sum(), &expected["net"]);
    let after = |k: usize| if k == 0 { Vec::new() } else { vec![k - 1] };
    let steps: Vec<Step> =
        net.iter().enumerate().map(|(k, net)| Step { net: *net, exposed: true, after: after(k) }).collect();
    let loss = inputs["loss"].as_f64().unwrap_or_else(|| row["inputs"]["loss"].as_f64().unwrap());
    let calendar = Calendar::new(&job::ProgrammeAsked::default(), &[loss; 12]).unwrap();
    let times = pass(&steps, &calendar.pace()).unwrap();
    assert!(times.float.iter().all(|float| *float < 1e-6), "one after the other, all are critical");
    let days = times.end.ceil();
    near(row, days, &expected["working_days"]);
    let weeks = weeks(calendar.calendar_days(1, days as u32));
    near(row, f64::from(weeks), &expected["weeks"]);
    near(row, f64::from(weeks * 7), &expected["calendar_days"]);
    let inspected = inspections(&calendar, 1, days as u32, 7);
    near(row, inspected.len() as f64, &expected["inspections_7day"]);
}

/// The work on the gable roof of the rows: 9 m by 7 m at 40°, 300 mm of eaves.
fn gable() -> Work {
    let text = "format = 1\ntitle = \"Gable\"\nplan.corners = [[0, 0], [9000, 0], [9000, 7000], [0, 7000]]\nroof.pitch = 40\nroof.walls = { B = { gable = true }, D = { gable = true } }\n";
    let job = job::read(text).unwrap();
    Work::of(&job, &roof::solve(&job).unwrap()).unwrap()
}

#[test]
fn every_row_on_hours_and_hire_is_met() {
    let rows = rows();
    assert_eq!(rows.len(), ROWS);
    let missed: Vec<&str> = rows.iter().filter(|row| !read(row)).map(id).collect();
    assert_eq!(missed, ELSEWHERE);
}

#[test]
fn the_hours_of_the_textbook_are_those_that_the_united_states_plan_with() {
    let us = Labour::of("us").unwrap();
    let covering = job::Covering::PlainTile;
    for (item, hipped, name) in [
        (WorkItem::Rafter, false, "rafters_gable"),
        (WorkItem::Rafter, true, "rafters_hip"),
        (WorkItem::Hip, true, "rafters_hip"),
        (WorkItem::CeilingJoist, true, "joists"),
        (WorkItem::Plate, false, "sills"),
    ] {
        let (rate, published) = (us.rate(item, covering, hipped).unwrap(), &us.published[name]);
        assert_eq!((rate.low, rate.high, rate.per), (published.low, published.high, published.per), "{name}");
    }
}
