//! Faults of plans: that each is put into words at its place. The faults are
//! made by hand here, so that this test stands without a checker of plans.

use geometry::{CornerRef, DVec2, PlanFault};

const TEXT: &str = r#"format = 1
title = "Boathouse workshop"
[plan]
corners = [
    [0, 0],
    ["8.4 m", 0],
    [8400, 5200],
    [0, 5200],
]
holes = [
    [[2000, 2000], [2000, 3000], [3000, 3000]],
]
[roof]
pitch = 40
"#;

const fn at(ring: usize, corner: usize) -> CornerRef {
    CornerRef { ring, corner }
}

/// The only fault when the checker finds this one.
fn only(text: &str, found: PlanFault) -> job::Fault {
    let faults: Vec<job::Fault> =
        job::read_with(text, &|_| vec![found.clone()]).expect_err("a fault").into_iter().collect();
    assert_eq!(faults.len(), 1, "{faults:?}");
    faults.into_iter().next().unwrap()
}

#[track_caller]
fn reads(found: PlanFault, line: usize, code: &str, words: &[&str]) {
    let fault = only(TEXT, found);
    let text = fault.to_string();
    assert_eq!((fault.line, fault.code), (line, code), "{text}");
    for word in words {
        assert!(text.contains(word), "`{word}` is not in: {text}");
    }
}

#[test]
fn the_checker_gets_the_loops_in_millimetres() {
    let seen = std::cell::RefCell::new(Vec::new());
    let job = job::read_with(TEXT, &|loops| {
        *seen.borrow_mut() = loops.to_vec();
        Vec::new()
    });
    assert!(job.is_ok());
    let seen = seen.into_inner();
    assert_eq!(seen.len(), 2);
    assert_eq!(seen[0][1], DVec2::new(8400.0, 0.0));
    assert_eq!(seen[1].len(), 3);
}

#[test]
fn the_checker_is_not_asked_about_a_plan_that_cannot_be_read() {
    let text = TEXT.replace("[8400, 5200]", "[8400, \"much\"]");
    let faults = job::read_with(text, &|_| panic!("asked")).expect_err("a fault");
    assert_eq!(faults.as_slice().len(), 1);
}

#[test]
fn corners_are_pointed_at() {
    reads(PlanFault::NotAPlace { at: at(0, 2) }, 7, "plan-not-a-place", &["Corner 3 of the outer plates"]);
    reads(
        PlanFault::RepeatedCorner { at: at(0, 1) },
        6,
        "plan-repeated-corner",
        &["Corner 2", "Leave it out, or correct it"],
    );
    reads(
        PlanFault::RepeatedCorner { at: at(1, 0) },
        11,
        "plan-repeated-corner",
        &["Corner 3 of courtyard 1", "by itself"],
    );
    reads(
        PlanFault::RepeatedCorner { at: at(0, 0) },
        8,
        "plan-repeated-corner",
        &["Corner 4", "same place as the first"],
    );
}

#[test]
fn walls_go_by_letter() {
    let cross = PlanFault::WallsCross { first: at(0, 1), second: at(1, 0) };
    reads(cross, 6, "plan-walls-cross", &["Wall B", "crosses or touches wall E"]);
    let short = PlanFault::WallTooShort { at: at(1, 2), length: 4.25, shortest: 10.0 };
    reads(short, 11, "plan-wall-too-short", &["Wall G", "4.2 mm long", "shortest is 10 mm"]);
}

#[test]
fn loops_are_pointed_at() {
    reads(PlanFault::TooFewCorners { ring: 1, corners: 2 }, 11, "plan-too-few-corners", &["courtyard 1 has 2 corners"]);
    reads(PlanFault::CourtyardOutside { ring: 1 }, 11, "plan-courtyard-outside", &["Courtyard 1 does not lie inside"]);
}

#[test]
fn a_loop_the_wrong_way_round_comes_with_what_to_write() {
    reads(
        PlanFault::WrongWayRound { ring: 0 },
        4,
        "plan-wrong-way-round",
        &["anticlockwise", "corners = [[\"8.4 m\", 0], [0, 0], [0, 5200], [8400, 5200]]", "wall A stays"],
    );
    reads(
        PlanFault::WrongWayRound { ring: 1 },
        11,
        "plan-wrong-way-round",
        &["run clockwise", "[[2000, 3000], [2000, 2000], [3000, 3000]]", "wall E stays"],
    );
}

#[test]
fn what_to_write_can_be_written() {
    // A comment inside a corner must not swallow what follows.
    let text = TEXT.replace("[8400, 5200]", "[8400, # as taped\n 5200]");
    let fault = only(&text, PlanFault::WrongWayRound { ring: 0 });
    let (_, written) = fault.remedy.split_once(": ").unwrap();
    let start = text.find("corners").unwrap();
    let end = text.find("holes").unwrap();
    let turned = format!("{}{written}\n{}", &text[..start], &text[end..]);
    let loops = |text: &str| job::read_with(text, &|_| Vec::new()).unwrap().loops;
    let (before, after) = (loops(&text), loops(&turned));
    let mut expected = before[0].clone();
    expected.reverse();
    // The first wall stays the first, so the loop starts at its other end.
    expected.rotate_right(2);
    assert_eq!(after[0], expected);
    assert_eq!(after[1], before[1]);
}

#[test]
fn several_faults_come_together_in_the_order_of_the_text() {
    let found = vec![PlanFault::CourtyardOutside { ring: 1 }, PlanFault::NotAPlace { at: at(0, 0) }];
    let text = TEXT.replace("pitch = 40", "pitch = 1");
    let faults = job::read_with(text, &|_| found.clone()).expect_err("faults");
    let codes: Vec<&str> = faults.iter().map(|fault| fault.code).collect();
    assert_eq!(codes, ["plan-not-a-place", "plan-courtyard-outside", "out-of-range"]);
}

#[test]
fn places_that_are_not_in_the_plan_break_nothing() {
    only(TEXT, PlanFault::NotAPlace { at: at(9, 9) });
    only(TEXT, PlanFault::WrongWayRound { ring: 9 });
    only(TEXT, PlanFault::WallsCross { first: at(0, 99), second: at(7, 0) });
}

#[test]
fn a_wall_shorter_than_the_plate_is_wide_is_named() {
    let text = TEXT.replace("    [0, 5200],\n", "    [60, 5200],\n    [0, 5200],\n");
    let faults = job::read_with(&text, &|_| Vec::new()).expect_err("a fault");
    let fault = &faults.as_slice()[0];
    assert_eq!((fault.code, fault.line, faults.as_slice().len()), ("wall-shorter-than-plate", 8, 1));
    assert!(fault.what.contains("Wall D") && fault.what.contains("60.0 mm"), "{fault}");
    // It is enough for a narrower plate, and said once only.
    let narrow = text.replace("[roof]", "[timber]\nplate = { size = [75, 60] }\n[roof]");
    assert!(job::read_with(narrow, &|_| Vec::new()).is_ok());
    let fault = only(&text, PlanFault::WallTooShort { at: at(0, 3), length: 60.0, shortest: 70.0 });
    assert_eq!(fault.code, "plan-wall-too-short");
    let twice = TEXT.replace("    [0, 5200],\n", "    [0, 5200],\n    [0, 5200],\n");
    assert_eq!(only(&twice, PlanFault::RepeatedCorner { at: at(0, 4) }).code, "plan-repeated-corner");
}

#[test]
fn more_corners_than_can_be_compared_are_refused() {
    let corners: Vec<String> = (0..=job::MOST_CORNERS).map(|n| format!("[{n}, 0]")).collect();
    let text = format!("format = 1\ntitle = \"x\"\nplan.corners = [{}]\nroof.pitch = 40\n", corners.join(","));
    let faults = job::read_with(text, &|_| panic!("asked")).expect_err("a fault");
    assert_eq!(faults.iter().map(|fault| fault.code).collect::<Vec<_>>(), ["too-many-corners"]);
}
