//! The commented example, the smallest file and the defaults agree.

use std::sync::LazyLock;

use job::{
    Distance, DormerKind, Fascia, HipEdge, HipHead, HipLine, LengthUnit, OpeningKind, Parts, PurlinSet, RidgeTop,
    Section, SpliceKind, Spread, TailCut, UpperSlope, ValleyAs, Wood,
};

const SMALLEST: &str = r#"format = 1
title = "Boathouse workshop"
plan.corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]
roof.pitch = 40
"#;

#[test]
fn the_example_says_no_more_than_the_smallest_file() {
    assert_eq!(job::read(job::defaults_toml()).unwrap(), job::read(SMALLEST).unwrap());
}

/// The key of a line that is commented out. Comments are sentences with
/// capitals, or go on in words; keys are one word and an equals sign.
fn key_out(line: &str) -> Option<&str> {
    let (key, _) = line.strip_prefix("# ")?.split_once(" = ")?;
    if key.contains(' ') { None } else { Some(key) }
}

/// The example with those lines put in that are picked by head and key.
fn with(pick: impl Fn(&str, &str) -> bool) -> String {
    let mut head = "";
    let mut text = String::new();
    for line in EXAMPLE.lines() {
        if line.starts_with('[') {
            head = line;
        }
        let put_in = key_out(line).is_some_and(|key| pick(head, key));
        text.push_str(if put_in { &line[2..] } else { line });
        text.push('\n');
    }
    text
}

static EXAMPLE: LazyLock<String> = LazyLock::new(job::defaults_toml);

/// The heads and keys of all lines that are commented out.
fn keys_out() -> Vec<(&'static str, &'static str)> {
    let mut head = "";
    let mut keys = Vec::new();
    for line in EXAMPLE.lines() {
        if line.starts_with('[') {
            head = line;
        }
        keys.extend(key_out(line).map(|key| (head, key)));
    }
    keys
}

/// What the part under a head cannot do without.
const FITTED_TO: [(&str, &[&str]); 4] = [
    ("[timber.strut]", &["[timber.purlin]", "[bearings]"]),
    ("[timber.binder]", &["[timber.ceiling_joist]"]),
    ("[timber.hanger]", &["[timber.binder]", "[timber.ceiling_joist]"]),
    ("[timber.dragon_tie]", &["[timber.angle_tie]"]),
];

/// Keys that only make sense for another kind of opening than the example's,
/// or beside another key.
const OTHERWISE: [&str; 3] = ["landing.up_plan", "landing.flue_wall", "rafters.prices"];

/// Heads of groups whose keys only make sense together.
fn is_whole(head: &str) -> bool {
    let alone = ["", "[roof.walls]", "[timber.rafter]", "[timber.valley]"];
    !alone.contains(&head)
}

#[test]
fn every_line_that_is_commented_out_can_be_put_in() {
    let plain = job::read(&*EXAMPLE).unwrap();
    let out = keys_out();
    // What is measured stands in place of corners, and has a test of its own.
    for (head, key) in out.iter().filter(|(head, _)| !head.starts_with("[plan")) {
        let fits = |other: &str| FITTED_TO.iter().any(|(part, needs)| part == head && needs.contains(&other));
        let mut text = with(|other_head, other| {
            let together = (other_head == *head && is_whole(head)) || fits(other_head);
            let both_of_wall = key.starts_with("B.upper.") && other.starts_with("B.upper.");
            (other_head == *head && other == *key) || both_of_wall || (together && !OTHERWISE.contains(&other))
        });
        if key.ends_with(".overhang") {
            text = text.replace("fascia = \"level\"", "fascia = \"fixed\"");
        }
        if *key == "rafters.prices" {
            text = text.replace("\nrafters.price = ", "\n# ");
        } else if OTHERWISE.contains(key) {
            text = text.replace("kind = \"roof-window\"", "kind = \"chimney\"").replace("\nlanding.up = ", "\n# ");
            text = text.replace("# landing.up_plan", "landing.up_plan");
        }
        let job = job::read(&text).unwrap_or_else(|faults| panic!("{head} {key}: {faults}"));
        assert_ne!(job, plain, "{head} {key} changes nothing");
    }
    // Date and revision, eight keys of a wall, both pairs of the roof's second
    // pitch and its sprockets, birdsmouth and the valley's size, 23 keys of
    // parts, 8 of an opening, 8 of a dormer, 3 of a bearing, 7 of a survey, how true the plates are made, 12
    // of loads, 7 of stock, 5 of the yard, 3 of a price, 11 of the covering, 4 of the programme and 19 of its hours,
    // 9 of the access, one statement and the two of what is done.
    assert_eq!(out.len(), 2 + 8 + 4 + 2 + 23 + 8 + 8 + 3 + 7 + 1 + 12 + 7 + 5 + 3 + 11 + (4 + 19 + 9 + 1) + 2);
}

#[test]
fn parts_of_the_example_are_fitted_when_they_are_put_in() {
    let job = job::read(with(|head, key| head.starts_with("[timber.") && key != "birdsmouth" || head == "[bearings]"))
        .unwrap_or_else(|faults| panic!("{faults}"));
    let parts = job.timber.parts;
    assert_eq!(
        parts.purlin.map(|purlin| (purlin.size.depth, purlin.set, purlin.up)),
        Some((225.0, PurlinSet::Square, vec![]))
    );
    assert_eq!(parts.strut.map(|strut| strut.centres), Some(1800.0));
    assert_eq!(parts.collar.map(|collar| (collar.height, collar.every)), Some((1200.0, 1)));
    assert_eq!(parts.hanger.map(|hanger| hanger.centres), Some(1800.0));
    assert_eq!(parts.ladder.map(|ladder| ladder.centres), Some(600.0));
    assert_eq!(parts.noggin.map(|noggin| noggin.rows), Some(1));
    let plain = [parts.ceiling_joist, parts.binder, parts.angle_tie, parts.dragon_tie, parts.fascia, parts.soffit];
    assert!(plain.iter().chain(&[parts.fillet, parts.barge, parts.lay_board]).all(Option::is_some));
    assert_eq!(job.bearings.len(), 1);
}

#[test]
fn defaults_are_those_of_the_guide() {
    let job = job::read(SMALLEST).unwrap();
    assert_eq!((job.region.as_str(), job.show), ("uk", LengthUnit::Millimetres));
    assert_eq!((job.date, job.revision), (None, None));
    assert_eq!((job.eaves.overhang, job.eaves.fascia_depth), (300.0, 150.0));
    assert_eq!((job.eaves.fascia, job.eaves.tail), (Fascia::Level, TailCut::Plumb));
    assert_eq!((job.verge.overhang, job.verge.inset), (0.0, 0.0));
    let rafter = job.timber.rafter;
    assert_eq!(rafter.size, Section { thickness: 47.0, depth: 150.0 });
    assert_eq!((rafter.centres, rafter.spread, rafter.birdsmouth), (400.0, Spread::FromStart, 37.5));
    let hip = job.timber.hip;
    assert_eq!(hip.size, Section { thickness: 47.0, depth: 200.0 });
    assert_eq!((hip.edge, hip.line, hip.head), (HipEdge::Backed, HipLine::Centred, HipHead::Crown));
    let valley = job.timber.valley;
    assert_eq!((valley.size, valley.edge, valley.line), (hip.size, HipEdge::Dropped, HipLine::Centred));
    assert_eq!(job.timber.ridge.size, Section { thickness: 32.0, depth: 225.0 });
    assert_eq!(job.timber.ridge.top, RidgeTop::Arrises);
    assert_eq!(job.timber.plate, Section { thickness: 75.0, depth: 100.0 });
    assert_eq!(job.timber.parts, Parts::default());
    let joint = job.timber.joint;
    assert_eq!((joint.longest, joint.kind, joint.bolted), (7200.0, SpliceKind::FishPlates, true));
    assert_eq!(joint.wood, Wood::Softwood);
    assert!(job.openings.is_empty() && job.dormers.is_empty() && job.bearings.is_empty());
    assert_eq!(job.eaves.sprocket, None);
    let programme = job.programme;
    assert_eq!((programme.crew, programme.roofers, programme.hours_a_day), (2, 2, 8.0));
    assert_eq!((programme.start, programme.weather_loss, programme.saturdays), (None, None, false));
    assert!(programme.holidays.is_empty() && programme.hours.is_empty() && job.records.is_empty());
    let access = job.access;
    assert_eq!((access.class, access.bay, access.boards, access.lift), (3, 2000.0, 5, 2000.0));
    assert_eq!((access.kind, access.plate_height, access.people, access.passers_by), (None, None, None, None));
    assert_eq!((access.hire, access.hire_weeks, access.extra_week), (None, 6, None));
    assert_eq!(access, job::AccessAsked::plain());
    let letters: Vec<&str> = job.walls.iter().map(|wall| wall.letter.as_str()).collect();
    assert_eq!(letters, ["A", "B", "C", "D"]);
    assert!(job.walls.iter().all(|wall| wall.pitch_deg == 40.0 && !wall.gable && wall.overhang.is_none()));
    let plain = |wall: &job::Wall| *wall == job::Wall::plain(wall.letter.clone(), 40.0);
    assert!(job.walls.iter().all(plain));
}

#[test]
fn the_valley_follows_the_hip_and_the_birdsmouth_the_rafter() {
    let text = format!("{SMALLEST}timber.hip.size = [50, 250]\ntimber.rafter.size = [50, 200]\n");
    let job = job::read(text).unwrap();
    assert_eq!(job.timber.valley.size, Section { thickness: 50.0, depth: 250.0 });
    assert_eq!(job.timber.rafter.birdsmouth, 50.0);
}

#[test]
fn what_a_file_says_is_what_the_job_holds() {
    let job = job::read(include_str!("cases/good-every-way-of-writing.toml")).unwrap();
    assert_eq!((job.date.as_deref(), job.revision.as_deref()), (Some("2031-05-14"), Some("B")));
    assert_eq!(job.show, LengthUnit::FeetInches);
    assert_eq!(job.loops.iter().map(Vec::len).collect::<Vec<_>>(), [4, 4]);
    assert_eq!(job.plates()[0][2], [8394.7, 5200.0]);
    // 9 × 304.8 + 10 × 25.4 = 2997.2.
    assert!((job.plates()[1][3][0] - 2997.2).abs() < 1e-9);
    assert_eq!((job.pitch_deg, job.eaves.overhang), (40.0, 304.8));
    assert_eq!((job.verge.overhang, job.verge.inset), (50.0, 50.8));
    assert!(job.walls[1].gable && !job.walls[3].gable);
    assert!((job.walls[3].pitch_deg - 26.565_051_177).abs() < 1e-8, "atan(6 / 12)");
    assert_eq!(job.walls[3].overhang, Some(250.0));
    assert_eq!((job.walls[6].letter.as_str(), job.walls[6].pitch_deg), ("G", 50.0));
    assert!((job.timber.rafter.size.depth - 152.4).abs() < 1e-9);
    assert!((job.timber.rafter.birdsmouth - 38.1).abs() < 1e-9);
    assert_eq!(job.timber.rafter.spread, Spread::Equal);
    assert_eq!((job.timber.hip.edge, job.timber.hip.line), (HipEdge::Dropped, HipLine::SetOver));
    assert_eq!(job.timber.hip.head, HipHead::Ridge);
    assert_eq!((job.timber.valley.edge, job.timber.valley.line), (HipEdge::Backed, HipLine::SetOver));
    assert_eq!(job.timber.ridge.top, RidgeTop::Centre);
    assert_eq!(job.timber.plate, Section { thickness: 100.0, depth: 75.0 });
}

#[test]
fn every_part_that_a_file_writes_is_in_the_job() {
    let job = job::read(include_str!("cases/good-every-part.toml")).unwrap_or_else(|faults| panic!("{faults}"));
    let sprocket = job.eaves.sprocket.unwrap();
    assert_eq!(sprocket.pitch_deg, 25.0);
    assert!((sprocket.reach - 609.6).abs() < 1e-9, "2 × 304.8");
    let walls = &job.walls;
    assert_eq!((walls[0].plate, walls[0].upper.map(|u| (u.from, u.pitch_deg))), (-300.0, Some((1400.0, 55.0))));
    assert_eq!((walls[1].half_hip, walls[1].plate, walls[1].upper), (Some(1219.2), 600.0, None));
    assert_eq!((walls[2].gablet, walls[2].upper), (Some(1500.0), None));
    assert_eq!((walls[3].gable, walls[3].plate, walls[3].upper), (true, 150.0, None));
    // The courtyard's walls say nothing, so they break where the roof says.
    assert!(walls[4..].iter().all(|wall| wall.upper == Some(UpperSlope { from: 1200.0, pitch_deg: 30.0 })));

    let parts = job.timber.parts;
    let purlin = parts.purlin.unwrap();
    assert_eq!((purlin.set, purlin.up), (PurlinSet::Plumb, vec![1219.2, 2400.0]));
    let collar = parts.collar.unwrap();
    assert_eq!((collar.size.depth, collar.height, collar.every), (125.0, 1100.0, 3));
    assert_eq!(parts.strut.map(|strut| strut.centres), Some(1500.0));
    assert_eq!(parts.hanger.map(|hanger| hanger.centres), Some(1524.0));
    assert_eq!(parts.ladder.map(|ladder| (ladder.size.thickness, ladder.centres)), Some((47.0, 450.0)));
    assert_eq!(parts.noggin.map(|noggin| noggin.rows), Some(2));
    let depths = [
        parts.ceiling_joist,
        parts.binder,
        parts.angle_tie,
        parts.dragon_tie,
        parts.fascia,
        parts.soffit,
        parts.fillet,
        parts.barge,
        parts.lay_board,
    ];
    let depths = depths.map(|size| size.map(|size| size.depth).unwrap());
    assert_eq!(depths, [100.0, 125.0, 75.0, 75.0, 200.0, 300.0, 75.0, 225.0, 175.0]);
    let joint = job.timber.joint;
    assert_eq!((joint.kind, joint.bolted, joint.wood), (SpliceKind::Hooked, false, Wood::Hardwood));
    assert!((joint.longest - 5486.4).abs() < 1e-9, "18 × 304.8");
}

#[test]
fn what_is_named_keeps_the_order_of_the_file() {
    let job = job::read(include_str!("cases/good-every-part.toml")).unwrap_or_else(|faults| panic!("{faults}"));
    let openings: Vec<&str> = job.openings.iter().map(|opening| opening.name.as_str()).collect();
    assert_eq!(openings, ["stair_1", "z", "2-b", "a"]);
    let [stair, z, stack, hatch] = &job.openings[..] else { panic!("four openings") };
    assert_eq!((stair.kind, stair.up, stair.flue_wall), (OpeningKind::RoofWindow, Distance::Plan(900.0), None));
    assert_eq!((z.wall, z.along, z.up), (0, 4000.0, Distance::Slope(1200.0)));
    assert_eq!((stack.kind, stack.wall), (OpeningKind::Chimney, 2));
    assert_eq!((stack.width, stack.height, stack.flue_wall), (600.0, 440.0, Some(101.6)));
    assert_eq!((hatch.kind, hatch.wall, hatch.up), (OpeningKind::Hatch, 4, Distance::Plan(0.0)));
    let dormers: Vec<&str> = job.dormers.iter().map(|dormer| dormer.name.as_str()).collect();
    assert_eq!(dormers, ["z", "a"]);
    let [gable, lean_to] = &job.dormers[..] else { panic!("two dormers") };
    assert_eq!((gable.kind, gable.valley, gable.wall), (DormerKind::Gable, ValleyAs::Rafter, 0));
    assert_eq!((lean_to.kind, lean_to.valley, lean_to.pitch_deg), (DormerKind::LeanTo, ValleyAs::LayBoard, 10.0));
    assert_eq!((lean_to.back, lean_to.width, lean_to.plate), (300.0, 1500.0, 1300.0));
    let [z, a] = &job.bearings[..] else { panic!("two bearings") };
    assert_eq!((z.name.as_str(), z.from, z.top), ("z", [-1000.0, 1500.0], -100.0));
    assert_eq!((a.name.as_str(), a.to, a.top), ("a", [8400.0, 3500.0], 0.0));
}

#[test]
fn what_was_measured_can_be_put_in_for_the_corners() {
    let text = with(|head, _| head.starts_with("[plan"));
    let text = text.replace("\ncorners = ", "\n# ");
    let job = job::read(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let survey = job.survey.as_ref().expect("the plan was measured");
    assert_eq!((survey.measured.tolerance, survey.measured.turn_tolerance_deg), (3.0, 0.2));
    assert_eq!((survey.measured.diagonals.len(), survey.measured.turns.len(), survey.levels.len()), (1, 1, 1));
    assert_eq!(survey.measured.inward, Some(vec![]));
    let plain = job::read(&*EXAMPLE).unwrap();
    for (measured, given) in job.plates()[0].iter().zip(&plain.loops[0]) {
        assert!((measured[0] - given[0]).abs() < 2.0 && (measured[1] - given[1]).abs() < 2.0, "{measured:?}");
    }
}

#[test]
fn everything_of_the_site_is_in_the_job() {
    let job = job::read(include_str!("cases/good-site.toml")).unwrap_or_else(|faults| panic!("{faults}"));
    let programme = job.programme;
    assert_eq!(programme.start.map(|day| day.to_string()).as_deref(), Some("2028-02-29"));
    assert_eq!((programme.crew, programme.hours_a_day, programme.saturdays), (3, 7.5, true));
    let holidays: Vec<String> = programme.holidays.iter().map(ToString::to_string).collect();
    assert_eq!(holidays, ["2028-04-14", "2028-04-17"], "in order, each once");
    assert_eq!(programme.weather_loss, Some([0.125; 12]));
    assert_eq!((programme.scaffold_up, programme.scaffold_down), (Some(2.0), None));
    let hours: Vec<(&str, f64)> = programme.hours.iter().map(|(item, hours)| (item.word(), *hours)).collect();
    assert_eq!(hours, [("rafter_each", 0.5), ("covering_m2", 0.0)]);
    let access = job.access;
    assert_eq!((access.kind, access.class, access.people), (Some(job::AccessKind::Tower), 4, Some(3)));
    assert_eq!((access.plate_height, access.hire, access.extra_week), (Some(5100.0), Some(1400.0), Some(60.0)));
    assert_eq!((access.ground, access.passers_by), (Some(job::Ground::Soft), Some(false)));
    assert_eq!((access.on_pavement, access.overhead_lines), (Some(true), None));
    assert!(job.records["brief-ground"].ends_with("every pair."));
}
