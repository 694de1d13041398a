//! Plans that are drawn and measured: they close, are asked for what they
//! lack, and become jobs.

use app::measure::{into_job, look, of_job};
use app::views::{Diagonal, Sketch, SketchAsk, SketchPart, SketchStep, SketchView, SketchWall, Snap};
use job::written::Lengths;
use std::path::Path;

/// A phone.
const SIZE: [f64; 2] = [360.0, 480.0];

/// Corners of one plan are those of another within this, mm.
const SAME: f64 = 0.5;

fn see(sketch: Sketch) -> SketchView {
    step(sketch, None)
}

fn step(sketch: Sketch, step: Option<SketchStep>) -> SketchView {
    ask(sketch, step, Lengths::Millimetres)
}

fn ask(sketch: Sketch, step: Option<SketchStep>, lengths: Lengths) -> SketchView {
    let [width, height] = SIZE;
    look(SketchAsk { sketch, width, height, step }, lengths).unwrap()
}

/// A closed plan from headings and tapes.
fn plan(walls: &[(f64, &str)]) -> Sketch {
    let wall = |(heading_deg, tape): &(f64, &str)| SketchWall {
        heading_deg: *heading_deg,
        drawn_mm: 4000.0,
        tape: (*tape).to_owned(),
        ..SketchWall::default()
    };
    Sketch {
        title: "Garden room".into(),
        start: Some([0.0, 0.0]),
        walls: walls.iter().map(wall).collect(),
        closed: true,
        ..Sketch::default()
    }
}

fn oblong(tapes: [&str; 4]) -> Sketch {
    let [a, b, c, d] = tapes;
    plan(&[(0.0, a), (90.0, b), (180.0, c), (-90.0, d)])
}

fn across(mut sketch: Sketch, from: u32, to: u32, tape: &str) -> Sketch {
    sketch.diagonals.push(Diagonal { from, to, tape: tape.into() });
    sketch
}

fn job_of(view: &SketchView) -> job::Job {
    let text = view.text.as_ref().unwrap_or_else(|| panic!("no text: {:?} {}", view.notices, view.next));
    job::read(text).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

fn corners(job: &job::Job) -> Vec<[f64; 2]> {
    job.plates()[0].clone()
}

fn assert_same(found: &[[f64; 2]], expected: &[[f64; 2]], what: &str) {
    assert_eq!(found.len(), expected.len(), "{what}");
    for (a, b) in found.iter().zip(expected) {
        assert!((a[0] - b[0]).abs() <= SAME && (a[1] - b[1]).abs() <= SAME, "{what}: {found:?}, not {expected:?}");
    }
}

#[test]
fn an_l_with_perfect_lengths_closes_to_nothing() {
    let walls = [(0.0, "9000"), (90.0, "5200"), (180.0, "3500"), (90.0, "2800"), (180.0, "5500"), (-90.0, "8 m")];
    let view = see(plan(&walls));
    assert_eq!(view.closing, "The plates close.");
    assert_eq!(view.figures[0].value, "0 mm");
    let expected = [[0.0, 0.0], [9000.0, 0.0], [9000.0, 5200.0], [5500.0, 5200.0], [5500.0, 8000.0], [0.0, 8000.0]];
    assert_same(&corners(&job_of(&view)), &expected, "L");
    assert!(view.notices.iter().any(|notice| notice.code == "corners-as-drawn" && notice.level == "note"));
}

#[test]
fn what_misses_is_said_and_shared_out() {
    let view = see(oblong(["8412", "5200", "8400", "5200"]));
    assert_eq!(view.closing, "The plates miss each other by 12 mm, mostly along walls A and C.");
    let moved: Vec<_> = view.walls.iter().map(|wall| wall.moved.as_deref()).collect();
    assert_eq!(moved, [Some("−6 mm"), None, Some("+6 mm"), None]);
    assert_same(&corners(&job_of(&view)), &[[0.0, 0.0], [8406.0, 0.0], [8406.0, 5200.0], [0.0, 5200.0]], "shared");
    // 60 mm is no error of a tape.
    let view = see(oblong(["8460", "5200", "8400", "5200"]));
    assert!(view.text.is_none());
    assert_eq!(view.notices[0].code, "does-not-close");
    assert_eq!(view.next_diagonal.map(|[a, b]| b - a), Some(2));
}

#[test]
fn the_diagonal_that_square_plates_would_have_is_told() {
    // Three, four, five (Euclid I.47), and the printed rule of the trade for the run of a hip: half a foot square.
    let view = see(oblong(["8000", "6000", "8000", "6000"]));
    assert!(view.next.contains("it reads 10000 mm"), "{}", view.next);
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/geometry_checks.json");
    let checks: serde_json::Value = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
    let check = checks.as_array().unwrap().iter().find(|check| check["id"] == "cyc-hip-half").unwrap();
    let run = format!("{}\"", check["inputs"]["run_in"]);
    let square = ask(oblong([&run, &run, &run, &run]), None, Lengths::FeetInches);
    assert_eq!(check["expected"], 8.5);
    assert!(square.next.contains("it reads 8 1/2\""), "{}", square.next);
}

#[test]
fn diagonals_of_an_oblong_tell_how_far_it_is_out_of_square() {
    let one = across(oblong(["8000", "6000", "8000", "6000"]), 0, 2, "10006");
    let view = see(one.clone());
    assert!(
        view.next.starts_with("The plan is fixed. Measure the diagonal from corner 2 to corner 4"),
        "{}",
        view.next
    );
    assert_eq!(view.next_diagonal, Some([1, 3]));
    let view = see(across(one, 1, 3, "9994"));
    let differ = view.figures.iter().find(|figure| figure.label == "Diagonals differ by").unwrap();
    assert_eq!(differ.value, "12 mm");
    let job = job_of(&view);
    let [a, c] = [job.plates()[0][0], job.plates()[0][2]];
    let long = ((c[0] - a[0]).powi(2) + (c[1] - a[1]).powi(2)).sqrt();
    assert!((long - 10006.0).abs() < 1.0, "the plan is the parallelogram that was measured: {long}");
    assert!(job.survey.is_some());
}

#[test]
fn a_slip_is_named_and_asked_for_again() {
    let bent = across(across(oblong(["8000", "6000", "8000", "6000"]), 0, 2, "10000"), 1, 3, "10080");
    let view = see(bent);
    assert!(view.notices.iter().any(|notice| notice.code == "slip"), "{:?}", view.notices);
    assert!(view.next.contains("again"), "{}", view.next);
    assert!(view.text.is_some(), "a slip is named, not forbidden");
}

#[test]
fn walls_not_measured_yet_follow_those_that_are() {
    let view = see(oblong(["8412", "5200", "", ""]));
    let lengths: Vec<_> = view.walls.iter().map(|wall| wall.length.as_str()).collect();
    assert_eq!(lengths, ["8412 mm", "5200 mm", "≈ 8412 mm", "≈ 5200 mm"]);
    assert_eq!(view.next_part.unwrap().name, "wall C");
    assert!(view.text.is_none() && view.closing.is_empty());
}

#[test]
fn what_cannot_be_read_is_said_beside_its_wall() {
    let view = see(oblong(["84oo", "5200", "8.4", "5200"]));
    assert!(view.walls[0].fault.is_some() && view.walls[1].fault.is_none());
    assert!(view.walls[2].fault.as_ref().unwrap().contains("write m behind metres"));
    assert_eq!(view.next, "Mend the length of wall A.");
    assert!(view.text.is_none() && !view.picture.parts.is_empty());
}

#[test]
fn feet_and_inches_are_typed_with_or_without_the_last_sign() {
    let typed = oblong(["27' 6 1/2\"", "17' 1 1/16", "27 ft 6 1/2 in", "17'-1 1/16\""]);
    let view = ask(typed, None, Lengths::FeetInches);
    assert_eq!(view.walls[0].length, "27' 6 1/2\"");
    assert_eq!(view.walls[1].length, "17' 1 1/16\"");
    assert_eq!(view.closing, "The plates close.");
    let job = job_of(&view);
    assert_eq!(job.show, job::LengthUnit::FeetInches);
    assert!((job.loops[0][2][1] - (17.0 * 304.8 + 25.4 * 17.0 / 16.0)).abs() < 0.01);
}

#[test]
fn a_plan_drawn_clockwise_is_turned_round() {
    let clockwise = plan(&[(0.0, "8400"), (-90.0, "5200"), (180.0, "8400"), (90.0, "5300")]);
    let view = see(across(clockwise, 0, 2, "9900"));
    let tapes: Vec<_> = view.sketch.walls.iter().map(|wall| wall.tape.as_str()).collect();
    assert_eq!(tapes, ["8400", "5300", "8400", "5200"], "wall A stays wall A");
    assert_eq!((view.sketch.diagonals[0].from, view.sketch.diagonals[0].to), (1, 3));
    assert_eq!(view.sketch.start, Some([8400.0, 0.0]));
    let again = see(view.sketch.clone());
    assert_eq!(again.sketch, view.sketch, "once is enough");
}

#[test]
fn crossing_walls_are_said_with_their_place() {
    let walls = [(0.0, "6000"), (90.0, "4000"), (180.0, "3000"), (-90.0, "6000"), (180.0, "3000"), (90.0, "2000")];
    let view = see(plan(&walls));
    let notice = view.notices.iter().find(|notice| notice.code == "walls-cross").unwrap();
    assert_eq!((notice.level.as_str(), notice.place.as_str()), ("stop", "walls A and D"));
    assert!(view.text.is_none());
}

#[test]
fn walls_drawn_by_eye_are_not_taken_for_measured() {
    let skew = plan(&[(0.0, "6000"), (70.0, "4000"), (180.0, "6000"), (-110.0, "4000")]);
    let view = see(skew.clone());
    assert_eq!(view.notices[0].code, "drawn-by-eye");
    assert!(view.text.is_none() && view.next_diagonal.is_some());
    assert!(see(across(skew, 0, 2, "8270")).text.is_some());
}

#[test]
fn a_plan_is_drawn_with_a_finger() {
    let touch = |sketch: Sketch, at: [f64; 2]| step(sketch, Some(SketchStep::Touch { at, snap: Snap::Square }));
    let mut view = touch(Sketch { title: "Shed".into(), ..Sketch::default() }, [60.0, 420.0]);
    assert_eq!(view.corners.len(), 1);
    let first = view.corners[0].at;
    // Each touch is off square by a few px, and the third off the first corner's line.
    for at in [[300.0, 412.0], [309.0, 200.0], [68.0, 190.0]] {
        view = touch(view.sketch, at);
        assert_eq!(view.touched.as_ref().map(|touched| touched.part), Some(SketchPart::Wall));
    }
    assert_eq!(view.corners[0].at, first, "the ground does not slip under the finger");
    view = touch(view.sketch, [first[0] + 4.0, first[1] + 4.0]);
    assert!(view.sketch.closed);
    let headings: Vec<_> = view.sketch.walls.iter().map(|wall| wall.heading_deg).collect();
    assert_eq!(headings, [0.0, 90.0, 180.0, -90.0]);
    let drawn: Vec<_> = view.sketch.walls.iter().map(|wall| wall.drawn_mm).collect();
    assert_eq!((drawn[0], drawn[1]), (drawn[2], drawn[3]), "corner 4 is level with corner 1");
    assert!(drawn.iter().all(|mm| mm % 50.0 == 0.0), "{drawn:?}");
    // A touch beside a wall of the closed plan means the wall.
    let [x, y] = [0, 1].map(|k| (view.corners[0].at[k] + view.corners[1].at[k]) / 2.0);
    let met = touch(view.sketch.clone(), [x, y + 20.0]);
    assert_eq!((met.touched.unwrap().name.as_str(), met.sketch), ("wall A", view.sketch.clone()));
    let back = step(view.sketch, Some(SketchStep::Back));
    assert!(!back.sketch.closed && back.sketch.walls.len() == 3);
}

#[test]
fn a_plan_is_drawn_without_pointing() {
    let ahead = |sketch: Sketch, turn_deg: f64, tape: &str| {
        step(sketch, Some(SketchStep::Ahead { turn_deg, tape: tape.into() }))
    };
    let mut view = see(Sketch { title: "Porch".into(), ..Sketch::default() });
    for (turn, tape) in [(0.0, "3000"), (90.0, "1800"), (60.0, "1200")] {
        view = ahead(view.sketch, turn, tape);
    }
    view = step(view.sketch, Some(SketchStep::Close));
    assert!(view.sketch.closed);
    assert_eq!(view.sketch.walls.len(), 4);
    assert_eq!(view.next_part.unwrap().name, "wall D");
}

#[test]
fn a_plan_of_an_example_comes_out_as_it_was() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let mut tried = 0;
    for file in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        let text = std::fs::read_to_string(&file).unwrap();
        let name = file.display().to_string();
        let job = job::read(&text).unwrap();
        let view = see(of_job(&job).unwrap());
        let moved: Vec<[f64; 2]> = corners(&job);
        let first = moved[0];
        let expected: Vec<[f64; 2]> = moved.iter().map(|at| [at[0] - first[0], at[1] - first[1]]).collect();
        assert_same(&corners(&job_of(&view)), &expected, &name);
        // Put back into its job, it changes nothing but the plan's own words.
        let again = job::read(into_job(&text, &view.sketch).unwrap()).unwrap();
        assert_same(&corners(&again), &corners(&job), &name);
        assert_eq!((again.walls, again.timber, again.dormers), (job.walls, job.timber, job.dormers), "{name}");
        tried += 1;
    }
    assert!(tried >= 10, "the examples were found");
}

#[test]
fn a_plan_measured_anew_keeps_the_rest_of_its_job() {
    let text = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/whole-house.toml"));
    let text = text.unwrap();
    let mut sketch = of_job(&job::read(&text).unwrap()).unwrap();
    sketch.walls[0].tape = "10812".into();
    sketch.walls[2].tape = "10808".into();
    let anew = across(across(sketch, 0, 2, "12990"), 1, 3, "12986");
    let new = into_job(&text, &anew).unwrap();
    let job = job::read(&new).unwrap();
    assert_eq!(job.survey.unwrap().measured.sides, [10812.0, 7200.0, 10808.0, 7200.0]);
    let rest = |text: &str| text[text.find("[roof]").unwrap()..].to_owned();
    assert_eq!(rest(&new), rest(&text));
    // A plan that has lost a wall does not fit a job that speaks of it.
    let mut three = anew;
    three.walls.truncate(3);
    three.diagonals.clear();
    for (wall, tape) in three.walls.iter_mut().zip(["3000", "4000", "5000"]) {
        wall.tape = tape.into();
    }
    let refusal = into_job(&text, &three).unwrap_err();
    assert_eq!(refusal.code, "plan-unfit");
    assert!(refusal.faults.iter().any(|fault| fault.what.contains("D")), "{refusal:?}");
}

mod never {
    use super::*;
    use proptest::prelude::*;

    fn wall() -> impl Strategy<Value = SketchWall> {
        let heading = prop_oneof![(-4i32..4).prop_map(|k| f64::from(k) * 45.0), any::<f64>()];
        let tape = prop_oneof![
            Just(String::new()),
            (0u32..20_000).prop_map(|mm| mm.to_string()),
            "[0-9]{0,3}' ?[0-9]{0,2}( [0-9]/[0-9])?",
            "\\PC{0,6}",
        ];
        let turn = prop_oneof![3 => Just(String::new()), 1 => "[0-9]{1,3}"];
        (heading, any::<bool>(), any::<f64>(), tape, turn).prop_map(|(heading_deg, known, drawn_mm, tape, turn)| {
            SketchWall { heading_deg, known, drawn_mm, tape, turn }
        })
    }

    fn sketch() -> impl Strategy<Value = Sketch> {
        let diagonal = (0u32..9, 0u32..9, "[0-9]{0,5}").prop_map(|(from, to, tape)| Diagonal { from, to, tape });
        let lists = (prop::collection::vec(wall(), 0..8), prop::collection::vec(diagonal, 0..5));
        let start = prop::option::of([any::<f64>(), any::<f64>()]);
        (lists, start, any::<bool>(), "\\PC{0,8}", "[0-9:]{0,4}", prop::option::of(any::<f64>())).prop_map(
            |((walls, diagonals), start, closed, title, pitch, tolerance_mm)| Sketch {
                title,
                start,
                walls,
                diagonals,
                closed,
                pitch,
                tolerance_mm,
            },
        )
    }

    fn any_step() -> impl Strategy<Value = Option<SketchStep>> {
        let at = || [any::<f64>(), any::<f64>()].prop_union_px();
        let snap = || prop_oneof![Just(Snap::Square), Just(Snap::Half), Just(Snap::Free)];
        prop_oneof![
            Just(None),
            (at(), snap()).prop_map(|(at, snap)| Some(SketchStep::Touch { at, snap })),
            (at(), snap()).prop_map(|(at, snap)| Some(SketchStep::Drag { at, snap })),
            (any::<f64>(), "[0-9]{0,4}").prop_map(|(turn_deg, tape)| Some(SketchStep::Ahead { turn_deg, tape })),
            Just(Some(SketchStep::Close)),
            Just(Some(SketchStep::Back)),
            (any::<u32>(), 0u32..9).prop_map(|(from, to)| Some(SketchStep::Diagonal { from, to })),
            any::<u32>().prop_map(|number| Some(SketchStep::DropDiagonal { number })),
        ]
    }

    trait Px {
        fn prop_union_px(self) -> BoxedStrategy<[f64; 2]>;
    }

    impl<S: Strategy<Value = [f64; 2]> + 'static> Px for S {
        fn prop_union_px(self) -> BoxedStrategy<[f64; 2]> {
            prop_oneof![self, [0.0..360.0, 0.0..480.0]].boxed()
        }
    }

    fn finite(view: &SketchView) -> bool {
        // What is not finite comes out as null, which no picture takes.
        !serde_json::to_string(&view.picture).unwrap().contains("null")
    }

    proptest! {
        #[test]
        fn does_a_sketch_break_it(sketch in sketch(), step in any_step()) {
            let ask = SketchAsk { sketch, width: 360.0, height: 480.0, step };
            if let Ok(view) = look(ask, Lengths::Millimetres) {
                prop_assert!(finite(&view));
                if let Some(text) = &view.text {
                    prop_assert!(job::read(text).is_ok());
                }
                let kept: Sketch = serde_json::from_str(&serde_json::to_string(&view.sketch).unwrap()).unwrap();
                let again = look(SketchAsk { sketch: kept, width: 360.0, height: 480.0, step: None }, Lengths::FeetInches);
                prop_assert!(again.is_ok());
            }
        }
    }
}
