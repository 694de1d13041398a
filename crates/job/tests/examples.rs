//! Every example reads without a fault, and shows what it is named for; so do
//! the pieces of job files in the guide.

use job::{DormerKind, Job, OpeningKind};
use std::path::Path;

fn folder() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples")
}

#[track_caller]
fn example(name: &str) -> Job {
    let text = std::fs::read(folder().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"));
    job::read(text).unwrap_or_else(|faults| panic!("{name}: {faults}"))
}

#[test]
fn every_example_reads() {
    let mut read = 0;
    for entry in std::fs::read_dir(folder()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        if name.ends_with(".toml") {
            let job = example(&name);
            assert!(job.title.len() > 5, "{name} has a title of its own");
            read += 1;
        }
    }
    assert!(read >= 12, "{read} examples");
}

/// How many walls a rule holds of.
fn count(job: &Job, rule: impl Fn(&job::Wall) -> bool) -> usize {
    job.walls.iter().filter(|wall| rule(wall)).count()
}

#[test]
fn examples_of_forms_show_them() {
    assert_eq!(count(&example("half-hip.toml"), |wall| wall.half_hip.is_some()), 2);
    assert_eq!(count(&example("gablet.toml"), |wall| wall.gablet.is_some()), 2);
    assert_eq!(count(&example("lean-to.toml"), |wall| !wall.gable), 1);
    let saltbox = example("saltbox.toml");
    assert!(saltbox.walls[0].plate > saltbox.walls[2].plate);
    assert_eq!(count(&example("raised-plates.toml"), |wall| wall.plate < 0.0), 3);
    assert_eq!(count(&example("mansard.toml"), |wall| wall.upper.is_some()), 4);
    assert!(example("sprockets.toml").eaves.sprocket.is_some());
    let wings = example("wings.toml");
    assert_eq!((wings.walls.len(), count(&wings, |wall| wall.gable)), (12, 2));
    let dormers = example("dormers.toml").dormers;
    assert_eq!(dormers.iter().map(|dormer| dormer.kind).collect::<Vec<_>>(), [DormerKind::Gable, DormerKind::LeanTo]);
    assert_eq!(example("bay.toml").walls.len(), 8);
}

#[test]
fn the_whole_house_has_every_part() {
    let job = example("whole-house.toml");
    let parts = job.timber.parts;
    assert!(parts.purlin.is_some() && parts.strut.is_some() && parts.collar.is_some());
    assert!(parts.ceiling_joist.is_some() && parts.binder.is_some() && parts.hanger.is_some());
    assert!(parts.angle_tie.is_some() && parts.dragon_tie.is_some());
    assert!(parts.ladder.is_some() && parts.barge.is_some() && parts.noggin.is_some());
    assert!(parts.fascia.is_some() && parts.soffit.is_some() && parts.fillet.is_some());
    let kinds: Vec<OpeningKind> = job.openings.iter().map(|opening| opening.kind).collect();
    assert_eq!(kinds, [OpeningKind::RoofWindow, OpeningKind::RoofWindow, OpeningKind::Chimney]);
    assert_eq!((job.bearings.len(), job.timber.joint.longest), (2, 5400.0));
}

#[test]
fn the_pieces_of_the_guide_read() {
    let head =
        "format = 1\ntitle = \"x\"\nplan.corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]\nroof.pitch = 40\n";
    let guide = include_str!("../../../docs/job-file.md");
    let pieces: Vec<&str> = guide.split("```toml\n").skip(1).filter_map(|rest| rest.split("```").next()).collect();
    for piece in &pieces {
        if let Err(faults) = job::read(format!("{head}{piece}")) {
            panic!("{piece}\n{faults}");
        }
    }
    assert_eq!(pieces.len(), 9);
}
