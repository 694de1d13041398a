//! The commented example, the smallest file and the defaults agree.

use job::{Fascia, HipEdge, HipHead, HipLine, LengthUnit, RidgeTop, Section, Spread, TailCut};

const SMALLEST: &str = r#"format = 1
title = "Boathouse workshop"
plan.corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]
roof.pitch = 40
"#;

#[test]
fn the_example_says_no_more_than_the_smallest_file() {
    assert_eq!(job::read(job::defaults_toml()).unwrap(), job::read(SMALLEST).unwrap());
}

#[test]
fn every_line_that_is_commented_out_can_be_put_in() {
    let example = job::defaults_toml();
    let mut tried = 0;
    for (n, line) in example.lines().enumerate() {
        // Comments are sentences with capitals, or go on in words; keys are
        // one word and an equals sign.
        let Some((key, _)) = line.strip_prefix("# ").and_then(|rest| rest.split_once(" = ")) else { continue };
        if key.contains(' ') {
            continue;
        }
        tried += 1;
        let mut lines: Vec<&str> = example.lines().collect();
        lines[n] = &line[2..];
        let mut text = lines.join("\n");
        if key.ends_with(".overhang") {
            text = text.replace("fascia = \"level\"", "fascia = \"fixed\"");
        }
        let job = job::read(&text).unwrap_or_else(|faults| panic!("{line}: {faults}"));
        assert_ne!(job, job::read(&example).unwrap(), "{line} changes nothing");
    }
    // Date, revision, three keys of a wall, birdsmouth and the valley's size.
    assert_eq!(tried, 7);
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
    let letters: Vec<&str> = job.walls.iter().map(|wall| wall.letter.as_str()).collect();
    assert_eq!(letters, ["A", "B", "C", "D"]);
    assert!(job.walls.iter().all(|wall| wall.pitch_deg == 40.0 && !wall.gable && wall.overhang.is_none()));
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
    assert_eq!(job.loops[0][2], [8394.7, 5200.0]);
    // 9 × 304.8 + 10 × 25.4 = 2997.2.
    assert!((job.loops[1][3][0] - 2997.2).abs() < 1e-9);
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
