//! What a solution says of a measured plan.

use roof::solution::{MeasurementKind, Notice, NoticeLevel, Solution};

fn solved(text: &str) -> Solution {
    let job = job::read(text).unwrap_or_else(|faults| panic!("{faults}"));
    roof::solve(&job).unwrap_or_else(|error| panic!("{error}"))
}

fn hall(measured: &str) -> Solution {
    let head = "format = 1\ntitle = \"Hall\"\n[plan]\nsides = [8000, 5000, 8000, 5000]\n";
    solved(&format!("{head}{measured}\n[roof]\npitch = 40\n"))
}

fn notice<'s>(solution: &'s Solution, code: &str) -> Option<&'s Notice> {
    solution.notices.iter().find(|notice| notice.code == code)
}

#[test]
fn the_example_names_the_diagonal_that_was_read_long() {
    let out = solved(include_str!("../../../examples/surveyed.toml"));
    let survey = out.plan.survey.as_ref().expect("measured");
    let worst = survey.worst.as_ref().expect("there are measurements to spare");
    let named = &survey.measurements[worst.measurement as usize];
    assert_eq!((named.kind, named.name.as_str()), (MeasurementKind::Diagonal, "B-E"));
    // It was written 41 mm longer than the plan that the example was made from.
    assert!(worst.slip && worst.rivals.is_empty() && (worst.off - 41.0).abs() < 8.0, "{worst:?}");
    assert_eq!(out.plan.closing_error_mm, worst.off);
    let said = notice(&out, "survey-disagrees").expect("it is said");
    assert!(said.level == NoticeLevel::Warn && said.text.starts_with("Diagonal B-E reads 39 mm long"), "{}", said.text);
    let level = notice(&out, "plates-out-of-level").expect("levels were taken");
    assert!(level.text.contains("12 mm out of level") && level.text.contains("C 12 mm"), "{}", level.text);
    for m in &survey.measurements {
        assert!((m.adjusted - m.measured - m.residual).abs() < 1e-6, "{m:?}");
    }
    assert_eq!(survey.freedom, 15 - (2 * 6 - 3));
}

#[test]
fn a_plan_with_nothing_to_spare_says_so() {
    let out = hall("diagonals = { A-C = 9434 }");
    assert_eq!(out.plan.closing_error_mm, 0.0);
    assert!(notice(&out, "survey-unchecked").is_some_and(|n| n.text.contains("B-D")), "{:?}", out.notices);
    // The other plan that fits a hall folded along its diagonal crosses itself; that of a kite does not.
    assert!(notice(&out, "survey-taken-outward").is_none());
    let kite = |inward: &str| {
        solved(&format!(
            "format = 1\ntitle = \"Kite\"\n[plan]\nsides = [4717, 3905, 3905, 4717]\ndiagonals = {{ B-D = 5000 }}\n\
             {inward}\n[roof]\npitch = 40\n"
        ))
    };
    assert!(notice(&kite(""), "survey-taken-outward").is_some_and(|n| n.text.contains("inward = []")));
    assert!(notice(&kite("inward = []"), "survey-taken-outward").is_none());
}

#[test]
fn with_one_to_spare_nothing_tells_which_is_wrong() {
    let out = hall("diagonals = { A-C = 9434, B-D = 9474 }");
    let said = notice(&out, "survey-disagrees").expect("40 mm do not close");
    assert!(said.text.contains("Nothing tells it from"), "{}", said.text);
    // The diagonals of a parallelogram: their squares add up to those of the sides, so B-D should be 9434.
    assert!((out.plan.closing_error_mm - 40.0).abs() < 1.0, "{}", out.plan.closing_error_mm);
}

#[test]
fn a_plan_by_corners_has_no_survey() {
    let out = solved(include_str!("../../../examples/boathouse.toml"));
    assert!(out.plan.survey.is_none() && out.plan.closing_error_mm == 0.0);
    assert!(out.notices.iter().all(|n| !n.code.starts_with("survey") && n.code != "plates-out-of-level"));
}
