//! Measured plans in a job.

const HALL: &str = r#"format = 1
title = "Measured hall"
[plan]
sides = [8000, "5 m", 8000, 5000]
diagonals = { A-C = 9434, D-B = 9434 }
levels = { A = 0, B = -4 }
[roof]
pitch = 40
"#;

#[test]
fn the_plan_is_made_of_the_measurements() {
    let job = job::read(HALL).unwrap_or_else(|faults| panic!("{faults}"));
    let survey = job.survey.as_ref().expect("measured");
    let corners: Vec<[f64; 2]> = survey.adjusted.corners.iter().map(|p| p.to_array()).collect();
    assert_eq!(job.plates(), std::slice::from_ref(&corners));
    assert_eq!(corners[0], [0.0, 0.0]);
    assert_eq!(corners[1][1], 0.0);
    // 8000 by 5000 has diagonals of 9433.98: both are 0.02 mm long, and there is one reading to spare.
    for (corner, square) in corners.iter().zip([[0.0, 0.0], [8000.0, 0.0], [8000.0, 5000.0], [0.0, 5000.0]]) {
        assert!((corner[0] - square[0]).abs() < 0.1 && (corner[1] - square[1]).abs() < 0.1, "{corners:?}");
    }
    assert_eq!((survey.adjusted.freedom, survey.levels.len(), job.walls.len()), (1, 2, 4));
}

#[test]
fn rules_of_the_plan_hold_for_measured_ones() {
    let short = HALL.replace("\"5 m\"", "20").replace("8000, 5000", "8000, 20").replace("9434", "8000.025");
    let short = short.replace("levels", "turns = { A = 90 }\nlevels");
    let faults: Vec<job::Fault> = job::read(short).expect_err("two walls are too short").into_iter().collect();
    let codes: Vec<&str> = faults.iter().map(|fault| fault.code).collect();
    assert_eq!(codes, ["plan-wall-too-short"; 2], "{faults:?}");
}

#[test]
fn what_is_asked_for_suffices() {
    let loose = HALL.replace("diagonals", "# diagonals");
    let faults = job::read(&loose).expect_err("four walls fold").to_string();
    let asked = ["A-C", "B-D"].into_iter().find(|name| faults.contains(&format!("Measure {name}")));
    let name = asked.unwrap_or_else(|| panic!("{faults}"));
    let firm = loose.replace("# diagonals", &format!("diagonals = {{ {name} = 9434 }} #"));
    assert_eq!(job::read(firm).unwrap_or_else(|faults| panic!("{faults}")).loops[0].len(), 4);
}
