//! Access and papers of whole roofs.

use crate::common::{HOUSE, solved};
use job::{AccessAsked, AccessKind, Ground, Job};
use proptest::prelude::*;
use roof::solution::Solution;
use site::access::layout::layout;
use site::access::{Access, AccessFault, Basis, Row, Verdict, access};
use site::programme::{Programme, Work, programme};
use site::records::{Records, RecordsFault, calendar, records};
use std::collections::BTreeSet;

fn all(job: &Job, solution: &Solution) -> (Programme, Access, Records) {
    let work = Work::of(job, solution).unwrap();
    let programme = programme(job, solution, &work).unwrap();
    let access = access(job, solution, &programme).unwrap();
    let records = records(job, &access, &programme);
    (programme, access, records)
}

fn house(access: AccessAsked) -> Job {
    Job { access, ..HOUSE.0.clone() }
}

fn plain() -> AccessAsked {
    AccessAsked::plain()
}

#[test]
fn lengths_are_those_of_the_real_eaves_and_gables() {
    let laid = layout(&house(AccessAsked { plate_height: Some(2500.0), ..plain() }), &HOUSE.1).unwrap();
    let run = |wall: &str| laid.runs.iter().find(|run| run.wall == wall).unwrap();
    // 350 mm of eaves and 50 mm clear, then five boards of 225 mm, round both corners.
    assert_eq!(run("A").off_wall_mm, 400.0);
    assert!((run("A").length_mm - (10_800.0 + 2.0 * 1525.0)).abs() < 1e-6);
    // The gable has a verge of 300 mm.
    assert!((run("D").length_mm - (7200.0 + 2.0 * 1475.0)).abs() < 1e-6);
    assert_eq!((run("A").bays, run("B").bays), (7, 6), "13.85 m and 10.25 m in bays of 2 m");
    // The eaves hang 350 mm out at 40° below the tops of the rafters at the plate.
    let fall = 350.0 * geometry::Angle::deg(40.0).tan() - HOUSE.1.totals.upstand_mm;
    assert!((run("A").edge_mm - (2500.0 - fall)).abs() < 1e-6);
    assert_eq!(run("A").lifts, 2, "a platform at {} in lifts of 2 m", run("A").platform_mm);
    assert_eq!(run("D").platform_mm, 2200.0);
    // The gable's masonry stops under the rafters at the ridge: 3600 mm at 40° less what the rafters take.
    let apex = run("D").apex_mm.unwrap();
    assert!((apex - 2500.0 - 3600.0 * geometry::Angle::deg(40.0).tan()).abs() < 200.0, "{apex}");
    assert_eq!(run("D").gable_lifts, 1);
    assert_eq!((laid.kind.as_str(), laid.asked), ("scaffold", false));
}

#[test]
fn a_corner_that_points_in_takes_away_what_one_that_points_out_adds() {
    let text = "format = 1\ntitle = \"L\"\nplan.corners = [[0, 0], [9000, 0], [9000, 4000], [4000, 4000], [4000, 9000], [0, 9000]]\nroof.pitch = 40\n";
    let (job, solution) = solved(text);
    let laid = layout(&job, &solution).unwrap();
    // Steiner: round a rectangular outline the outside is longer by 8 distances, whatever corners it has.
    let perimeter: f64 = solution.plan.walls.iter().map(|wall| wall.length_mm).sum();
    let distance = 300.0 + 50.0 + 1125.0;
    assert!((laid.length_mm - perimeter - 8.0 * distance).abs() < 1e-6, "{}", laid.length_mm);
}

#[test]
fn names_are_unique_and_say_where_they_are_from() {
    for region in ["uk", "us"] {
        let access = AccessAsked {
            passers_by: Some(true),
            on_pavement: Some(true),
            overhead_lines: Some(true),
            ground: Some(Ground::Soft),
            sheeted: true,
            hire: Some(1400.0),
            extra_week: Some(60.0),
            ..plain()
        };
        let job = Job { region: region.into(), ..house(access) };
        let (_, _, papers) = all(&job, &HOUSE.1);
        let mut seen = 0;
        for paper in [&papers.brief, &papers.access_record, &papers.risk_and_method] {
            let rows: Vec<&Row> = paper.sections.iter().flat_map(|section| &section.rows).collect();
            let names: BTreeSet<&str> = rows.iter().map(|row| row.id()).collect();
            assert_eq!(names.len(), rows.len(), "{region} {}", paper.title);
            assert!(paper.cautions.len() >= 3);
            for row in rows {
                let plain = |byte: u8| byte.is_ascii_lowercase() || byte == b'-';
                assert!(row.id().bytes().all(plain), "{}", row.id());
                if let Row::Said(said) = row {
                    assert!(!said.source.is_empty() && !said.text.is_empty(), "{}", said.id);
                    // Nothing from memory or by habit passes a check.
                    assert!(said.verdict != Some(Verdict::Within) || said.basis.can_pass(), "{}", said.id);
                    seen += 1;
                }
            }
        }
        assert!(seen > 80, "{seen}");
        let text = serde_json::to_string(&papers).unwrap();
        assert!(!text.to_lowercase().contains("safe") && !text.contains("NaN"));
        // The last bit of a figure may be lost on the way.
        let read: Records = serde_json::from_str(&text).unwrap();
        assert_eq!(read.brief.sections.len(), papers.brief.sections.len());
    }
}

#[test]
fn texts_of_the_job_stand_in_their_places() {
    let mut job = house(plain());
    for (name, text) in [("access-ground", "Chalk."), ("risk-saws", "One saw, at the bench."), ("risk-sawz", "Gone.")] {
        job.records.insert(name.into(), text.into());
    }
    let (_, access, papers) = all(&job, &HOUSE.1);
    assert!(matches!(access.row("access-ground"), Some(Row::Blank(_))), "the sheet itself asks");
    let rows = |paper: &site::records::Paper, id: &str| {
        let found = paper.sections.iter().flat_map(|section| &section.rows).find(|row| row.id() == id).cloned();
        found.unwrap_or_else(|| panic!("no {id}"))
    };
    for paper in [&papers.brief, &papers.access_record] {
        let Row::Said(said) = rows(paper, "access-ground") else { panic!("still a blank") };
        assert_eq!((said.text.as_str(), said.basis), ("Chalk.", Basis::Site));
    }
    let Row::Said(saws) = rows(&papers.risk_and_method, "risk-saws") else { panic!() };
    assert_eq!(saws.basis, Basis::Site);
    assert_eq!(papers.unused, ["[record.risk-sawz] (did you mean `risk-saws`?): Gone."]);
}

#[test]
fn what_the_job_does_not_say_is_asked() {
    let (_, access, _) = all(&house(plain()), &HOUSE.1);
    for id in [
        "access-ground",
        "access-passers-by",
        "access-pavement",
        "access-overhead",
        "access-rescue-plan",
        "access-ties",
    ] {
        assert!(matches!(access.row(id), Some(Row::Blank(_))), "{id}");
    }
    let said = AccessAsked {
        ground: Some(Ground::Firm),
        passers_by: Some(false),
        on_pavement: Some(false),
        overhead_lines: Some(false),
        ..plain()
    };
    let (_, access, _) = all(&house(said), &HOUSE.1);
    for id in ["access-ground", "access-passers-by", "access-pavement", "access-overhead"] {
        assert!(matches!(access.row(id), Some(Row::Said(said)) if said.basis == Basis::Job), "{id}");
    }
}

#[test]
fn two_more_wet_weeks_are_two_more_weeks_of_hire() {
    let priced = AccessAsked { hire: Some(1400.0), hire_weeks: 3, extra_week: Some(60.0), ..plain() };
    let (programme, _, _) = all(&house(priced), &HOUSE.1);
    let [planned, _, wet] = programme.hire.cases.as_slice() else { panic!() };
    assert_eq!(wet.weeks, planned.weeks + 2);
    assert_eq!(planned.cost, Some(1400.0 + 60.0 * f64::from(planned.weeks.saturating_sub(3))));
    assert_eq!(wet.cost, planned.cost.map(|cost| cost + 60.0 * f64::from(2.min(wet.weeks - 3))));
}

#[test]
fn a_tower_is_held_against_its_scope_and_asks_its_maker() {
    let tall = AccessAsked { kind: Some(AccessKind::Tower), plate_height: Some(9000.0), ..plain() };
    let (_, access, _) = all(&house(tall), &HOUSE.1);
    let verdict = |id: &str| match access.row(id) {
        Some(Row::Said(said)) => said.verdict,
        _ => None,
    };
    assert_eq!(verdict("access-tower-height"), Some(Verdict::Over), "EN 1004-1: 8 m outside");
    assert_eq!(verdict("access-tower-base"), Some(Verdict::Ask));
    assert_eq!(access.layout.kind, "tower");
}

#[test]
fn a_region_without_figures_is_refused() {
    let job = Job { region: "atlantis".into(), ..house(plain()) };
    assert_eq!(layout(&job, &HOUSE.1), Err(AccessFault::NoRegion("atlantis".into())));
}

/// A calendar taken to pieces: events, each with its properties in order. Shares no code with what writes it.
fn events(text: &str) -> Vec<Vec<(String, String)>> {
    assert!(text.ends_with("END:VCALENDAR\r\n") && !text.replace("\r\n", "").contains(['\r', '\n']));
    let unfolded = text.replace("\r\n ", "");
    let mut events = Vec::new();
    for line in unfolded.split("\r\n") {
        match line {
            "BEGIN:VEVENT" => events.push(Vec::new()),
            _ => {
                if let (Some(event), Some((name, value))) = (events.last_mut(), line.split_once(':')) {
                    event.push((name.to_owned(), value.to_owned()));
                }
            }
        }
    }
    events
}

#[test]
fn the_calendar_holds_every_inspection_and_phase() {
    let mut job = house(plain());
    job.programme.start = job::Day::parse("2027-03-01");
    job.date = Some("2027-01-15".into());
    job.title = "Mill; the loft, and ×".into();
    let (programme, _, _) = all(&job, &HOUSE.1);
    let text = calendar(&job, &programme).unwrap();
    let events = events(&text);
    assert_eq!(events.len(), programme.hire.inspections.len() + programme.activities.len() + 1);
    let value = |event: &[(String, String)], name: &str| event.iter().find(|(n, _)| n == name).unwrap().1.clone();
    let ids: BTreeSet<String> = events.iter().map(|event| value(event, "UID")).collect();
    assert_eq!(ids.len(), events.len());
    for event in &events {
        assert_eq!(value(event, "DTSTAMP"), "20270115T000000Z", "the date of the job, not of a clock");
        assert!(value(event, "DTEND;VALUE=DATE") > value(event, "DTSTART;VALUE=DATE"));
        assert!(value(event, "SUMMARY").ends_with("Mill\\; the loft\\, and ×"));
    }
    let first = programme.hire.inspections[0].date.clone().unwrap().replace('-', "");
    assert_eq!(value(&events[0], "DTSTART;VALUE=DATE"), first);
    job.programme.start = None;
    assert_eq!(calendar(&job, &programme), Err(RecordsFault::NoStart));
}

prop_compose! {
    /// Anything that a job file may say.
    fn asked()(
        kind in prop::option::of(prop::sample::select(vec![AccessKind::Scaffold, AccessKind::Tower, AccessKind::EdgeProtection])),
        (class, boards, stack, hire_weeks) in (1_u32..=6, 2_u32..=12, 1_u32..=500, 0_u32..=520),
        (bay, lift) in (500.0..=4000.0_f64, 500.0..=3000.0_f64),
        plate_height in prop::option::of(prop_oneof![Just(0.0), Just(50_000.0), 0.0..20_000.0_f64]),
        people in prop::option::of(1_u32..=50),
        (hire, extra_week) in (prop::option::of(0.0..=1e7_f64), prop::option::of(0.0..=1e7_f64)),
        ground in prop::option::of(prop::sample::select(vec![Ground::Firm, Ground::Soft, Ground::Sloping])),
        (passers_by, on_pavement, overhead_lines) in (any::<Option<bool>>(), any::<Option<bool>>(), any::<Option<bool>>()),
        sheeted: bool,
    ) -> AccessAsked {
        AccessAsked { kind, class, bay, boards, lift, plate_height, people, stack, hire, hire_weeks, extra_week, ground, passers_by, on_pavement, overhead_lines, sheeted }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn whatever_is_asked_comes_out_in_figures(asked in asked(), us: bool) {
        let region = if us { "us" } else { "uk" };
        let job = Job { region: region.into(), ..house(asked.clone()) };
        let (_, access, papers) = all(&job, &HOUSE.1);
        let text = serde_json::to_string(&(&access, &papers)).unwrap();
        prop_assert!(!text.contains("NaN") && !text.contains("inf") || text.contains("information"));
        prop_assert!(!text.contains(":null"), "a figure is not a number");
        for run in &access.layout.runs {
            prop_assert!(run.lift_mm <= asked.lift + 1e-9);
            prop_assert!(f64::from(run.bays) * asked.bay >= run.length_mm - 1.0 - 1e-6);
        }
        let bay = access.bay.unwrap();
        let piece = bay.share_kg / f64::from(asked.stack);
        prop_assert_eq!(bay.average == Verdict::Over, bay.share_kg > bay.left_kg);
        prop_assert!(f64::from(bay.pieces_fit) * piece <= bay.left_kg.max(0.0) + 1e-6);
    }
}
