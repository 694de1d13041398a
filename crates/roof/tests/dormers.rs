//! Dormers: their figures, what carries them, and what is refused.

use crate::common::{Seed, job_over, random_job};
use crate::openings::random::{move_dormer, random_dormer};
use geometry::Angle;
use job::{Dormer, DormerKind, Job, Section, ValleyAs};
use roof::solution::{Member, MemberKind, NoticeLevel, Solution};
use roof::{Misfit, SolveError};

fn house() -> Job {
    job_over(vec![vec![[0.0, 0.0], [12000.0, 0.0], [12000.0, 9000.0], [0.0, 9000.0]]], 40.0)
}

fn gable() -> Dormer {
    Dormer {
        name: "d".into(),
        kind: DormerKind::Gable,
        wall: 0,
        along: 5000.0,
        back: 700.0,
        width: 1500.0,
        plate: 1900.0,
        pitch_deg: 35.0,
        valley: ValleyAs::LayBoard,
    }
}

fn lean_to() -> Dormer {
    Dormer { kind: DormerKind::LeanTo, pitch_deg: 12.0, ..gable() }
}

fn with(mut job: Job, dormer: Dormer) -> Result<Solution, SolveError> {
    job.dormers.push(dormer);
    roof::solve(&job)
}

fn of_kind<'s>(s: &'s Solution, kind: MemberKind, word: &str) -> Vec<&'s Member> {
    s.members.iter().filter(|m| m.kind == kind && m.mark.starts_with(word)).collect()
}

fn misfit(dormer: Dormer) -> (Misfit, bool) {
    match with(house(), dormer) {
        Err(SolveError::Opening { misfit, nearest, .. }) => (*misfit, nearest.is_some()),
        other => panic!("{other:?}"),
    }
}

/// Everything that must lie on something says what it lies on.
fn assert_carried(s: &Solution) {
    for m in &s.members {
        let cut = |start: &'static str| m.cuts.iter().filter(move |c| c.name.starts_with(start));
        match m.kind {
            MemberKind::Stud => {
                let foot = cut("foot").chain(cut("head")).filter(|c| c.face_angle_deg > 0.1 || c.edge_angle_deg > 0.1);
                for c in foot {
                    assert!(c.against.is_some(), "{}: {} lies on nothing", m.mark, c.name);
                }
            }
            MemberKind::ValleyJack if m.mark.starts_with("Jack") => {
                assert!(
                    cut("foot").any(|c| c.against.as_ref().is_some_and(|a| a.starts_with("Layboard"))),
                    "{}",
                    m.mark
                );
                assert!(cut("head").any(|c| c.against.as_ref().is_some_and(|a| a.starts_with("Ridge"))), "{}", m.mark);
            }
            _ => {}
        }
    }
}

#[test]
fn a_gable_dormer_has_all_its_parts() {
    let s = with(house(), gable()).expect("it fits");
    assert_carried(&s);
    assert_eq!(of_kind(&s, MemberKind::LayBoard, "Layboard").len(), 2);
    assert_eq!(of_kind(&s, MemberKind::SolePlate, "Sole").len(), 1);
    // Two over the cheeks and one across the front, beside the four of the house.
    assert_eq!(of_kind(&s, MemberKind::WallPlate, "Plate").len(), 7);
    assert_eq!(of_kind(&s, MemberKind::RidgeBoard, "Ridge").len(), 2);
    // The rafters stand in pairs.
    assert_eq!(of_kind(&s, MemberKind::CommonRafter, "Rafter").len() % 2, 0);
    assert_eq!(of_kind(&s, MemberKind::ValleyJack, "Jack").len() % 2, 0);
    assert!(of_kind(&s, MemberKind::ValleyJack, "Jack").len() >= 2);
    assert_eq!(s.openings.len(), 1);
    assert_eq!(s.openings[0].kind, "dormer");
}

/// True length of a common of the dormer: half the width over its plates /
/// cos(pitch); its birdsmouth is that of the job's rafters.
#[test]
fn rafters_of_a_gable_dormer_have_the_figures_of_a_small_roof() {
    let (job, dormer) = (house(), gable());
    let s = with(job.clone(), dormer.clone()).expect("it fits");
    let pitch = Angle::deg(dormer.pitch_deg);
    for m in of_kind(&s, MemberKind::CommonRafter, "Rafter") {
        assert!((m.true_length_mm - dormer.width / 2.0 / pitch.cos()).abs() < 1e-6, "{}", m.mark);
        assert!((m.pitch_deg - dormer.pitch_deg).abs() < 1e-9);
        if let Some(b) = m.birdsmouth {
            assert!((b.depth_mm - job.timber.rafter.birdsmouth).abs() < 1e-6);
            assert!((b.seat_mm - job.timber.rafter.birdsmouth / pitch.sin()).abs() < 1e-6);
        }
    }
}

/// The foot of a jack on a lay board: the board lies in the main slope, so
/// against the jack's own length its plane leans 90° - pitch on the wide side
/// and atan(tan main / sin pitch) across the edge (from the planes' normals).
#[test]
fn feet_of_jacks_are_marked_as_the_planes_say() {
    let dormer = gable();
    let s = with(house(), dormer.clone()).expect("it fits");
    let pitch = Angle::deg(dormer.pitch_deg);
    let edge = Angle::from_rise_run(Angle::deg(40.0).tan(), pitch.sin()).to_deg();
    for m in of_kind(&s, MemberKind::ValleyJack, "Jack") {
        let foot = m.cuts.iter().find(|c| c.against.as_ref().is_some_and(|a| a.starts_with("Layboard")));
        let foot = foot.unwrap_or_else(|| panic!("{} lies on a board", m.mark));
        assert!((foot.face_angle_deg - (90.0 - dormer.pitch_deg)).abs() < 1e-6, "{}", foot.face_angle_deg);
        assert!((foot.edge_angle_deg - edge).abs() < 1e-6, "{} {edge}", foot.edge_angle_deg);
    }
}

/// A lay board's own line is a valley in plan: its slope to the ridge of the
/// dormer is tan(dormer) across for tan(main) up.
#[test]
fn lay_boards_follow_the_valleys() {
    let dormer = gable();
    let s = with(house(), dormer.clone()).expect("it fits");
    for m in of_kind(&s, MemberKind::LayBoard, "Layboard") {
        let d: Vec<f64> = (0..3).map(|i| m.axis.to[i] - m.axis.from[i]).collect();
        let (across, up) = (d[0].abs(), d[1].abs());
        let want = Angle::deg(40.0).tan() / Angle::deg(dormer.pitch_deg).tan();
        assert!((across / up - want).abs() < 1e-9);
        assert!((d[2] / up - Angle::deg(40.0).tan()).abs() < 1e-9);
    }
}

#[test]
fn a_lean_to_dormer_has_all_its_parts() {
    let dormer = lean_to();
    let s = with(house(), dormer.clone()).expect("it fits");
    assert_carried(&s);
    assert_eq!(of_kind(&s, MemberKind::LayBoard, "Layboard").len(), 1);
    assert_eq!(of_kind(&s, MemberKind::SolePlate, "Sole").len(), 1);
    let rafters = of_kind(&s, MemberKind::CommonRafter, "Rafter");
    assert!(rafters.len() >= 4);
    for m in rafters {
        assert!((m.pitch_deg - dormer.pitch_deg).abs() < 1e-9);
        assert!(m.cuts.iter().any(|c| c.against.as_ref().is_some_and(|a| a.starts_with("Layboard"))), "{}", m.mark);
        // Head cut on the main slope: it leans by the difference of the pitches.
        let head = m.cuts.iter().find(|c| c.name.starts_with("head")).expect("a head cut");
        assert!((head.face_angle_deg - (90.0 - (40.0 - dormer.pitch_deg))).abs() < 1e-6);
    }
}

#[test]
fn what_cannot_be_built_is_refused_with_a_remedy() {
    let (why, moved) = misfit(Dormer { plate: 900.0, ..gable() });
    assert!(matches!(why, Misfit::PlateLow { higher } if higher > 0.0), "{why:?}");
    assert!(why.to_string().contains("raise `plate`") && moved, "further down the slope it clears it");
    let (why, _) = misfit(Dormer { plate: 3800.0, ..gable() });
    assert!(matches!(why, Misfit::RidgeHigh { over } if over > 0.0), "{why:?}");
    assert_eq!(misfit(Dormer { pitch_deg: 38.0, ..lean_to() }), (Misfit::NotFlatter { most: 35.0 }, false));
    assert_eq!(misfit(Dormer { valley: ValleyAs::Rafter, ..gable() }), (Misfit::ValleyRafters, false));
    let (why, moved) = misfit(Dormer { along: 300.0, ..gable() });
    assert!(matches!(why, Misfit::Line { kind: "hip", .. }) && moved, "{why:?}");
    let (why, _) = misfit(Dormer { width: 2600.0, ..gable() });
    assert!(matches!(why, Misfit::TooManyCut { .. }), "{why:?}");
    assert!(matches!(misfit(Dormer { width: 250.0, ..gable() }).0, Misfit::Narrow { .. }));
    assert_eq!(misfit(Dormer { pitch_deg: 2.0, ..gable() }), (Misfit::Flat, false));
}

/// Raising the plate by what the refusal says makes the dormer fit.
#[test]
fn the_plate_is_raised_by_as_much_as_is_asked() {
    let low = Dormer { plate: 900.0, ..gable() };
    let (Misfit::PlateLow { higher }, _) = misfit(low.clone()) else { panic!("the plate is too low") };
    let mut plate = low.plate + higher + 0.01;
    // The first refusal may give way to the other reason of the same kind.
    if let Err(SolveError::Opening { misfit, .. }) = with(house(), Dormer { plate, ..low.clone() }) {
        let Misfit::PlateLow { higher } = *misfit else { panic!("{misfit:?}") };
        plate += higher + 0.01;
    }
    let s = with(house(), Dormer { plate, ..low }).unwrap_or_else(|e| panic!("{e}"));
    assert_carried(&s);
}

#[test]
fn random_dormers_are_built_or_a_place_is_named_that_takes_them() {
    let (mut built, mut moved, mut nowhere) = (0, 0, 0);
    for seed in 1..=250 {
        let mut random = Seed::new(seed);
        let mut job = random_job(&mut random);
        if random.once_in(3) {
            job.timber.parts.lay_board = Some(Section { thickness: 38.0, depth: 150.0 });
        }
        if roof::solve(&job).is_err() {
            continue;
        }
        let dormer = random_dormer(&mut random, &job);
        job.dormers.push(dormer);
        match roof::solve(&job) {
            Ok(s) => {
                assert_carried(&s);
                built += 1;
            }
            Err(SolveError::Opening { nearest: Some(place), .. }) => {
                move_dormer(&mut job.dormers[0], place);
                let s = roof::solve(&job).unwrap_or_else(|e| panic!("seed {seed}: refused where it was to fit: {e}"));
                assert_carried(&s);
                moved += 1;
            }
            Err(SolveError::Opening { .. }) => nowhere += 1,
            Err(e) => panic!("seed {seed}: {e}"),
        }
    }
    // The generator must keep trying all three.
    assert!(built > 40 && moved > 60 && nowhere > 10, "{built} built, {moved} moved, {nowhere} nowhere");
}

#[test]
fn dormers_and_windows_share_a_roof() {
    let mut job = house();
    job.dormers.push(gable());
    job.dormers.push(Dormer { name: "back".into(), wall: 2, along: 5600.0, ..lean_to() });
    let window = job::Opening {
        name: "w".into(),
        kind: job::OpeningKind::RoofWindow,
        wall: 0,
        along: 5200.0,
        up: job::Distance::Slope(4600.0),
        width: 780.0,
        height: 600.0,
        flue_wall: None,
    };
    job.openings.push(window);
    match roof::solve(&job) {
        Err(SolveError::Opening { name, misfit, nearest, .. }) => {
            assert_eq!(name, "w");
            assert!(matches!(*misfit, Misfit::Taken { .. } | Misfit::TrimmingRafters { .. }), "{misfit:?}");
            let place = nearest.expect("there is room beside the dormer");
            job.openings[0].along = place.along;
            job.openings[0].up = job::Distance::Slope(place.up);
        }
        other => panic!("{other:?}"),
    }
    let s = roof::solve(&job).unwrap_or_else(|e| panic!("{e}"));
    assert_carried(&s);
    assert_eq!(s.openings.len(), 3);
    assert!(s.notices.iter().all(|n| n.level != NoticeLevel::Stop));
}
