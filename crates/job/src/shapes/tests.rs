use super::*;
use proptest::prelude::*;

/// Twice the area of a loop, above zero when it runs anticlockwise.
fn twice_area(corners: &[[f64; 2]]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum()
}

#[test]
fn every_shape_makes_a_good_job() {
    for shape in shapes() {
        let text = new_job(shape.name, "Trial", &[], false).unwrap_or_else(|error| panic!("{}: {error}", shape.name));
        let job = read(&text).unwrap();
        let gables = job.walls.iter().filter(|wall| wall.gable).count();
        let expected = match shape.name {
            "lean-to" => 3,
            "saltbox" => 2,
            _ => 0,
        };
        assert_eq!(gables, expected, "{}", shape.name);
        assert!(twice_area(&job.loops[0]) > 0.0, "{} runs clockwise", shape.name);
        for hole in &job.loops[1..] {
            assert!(twice_area(hole) < 0.0, "a courtyard of {} runs anticlockwise", shape.name);
        }
        for (n, wall) in job.walls.iter().enumerate() {
            assert!(text.contains(&format!("# wall {}\n", wall.letter)), "{} {n}", shape.name);
        }
    }
}

#[test]
fn gables_stand_at_the_outer_ends() {
    for shape in shapes() {
        let made = new_job(shape.name, "Trial", &[], true);
        if !shape.gables {
            assert_eq!(made, Err(ShapeError::NoGables { shape: shape.name }));
            continue;
        }
        let job = read(made.unwrap()).unwrap();
        let ring = &job.loops[0];
        let gables: Vec<usize> = (0..job.walls.len()).filter(|n| job.walls[*n].gable).collect();
        assert!(gables.len() >= 2, "{}", shape.name);
        for gable in gables {
            // Both corners of an end turn left, so the roof behind it has
            // slopes on both sides.
            for at in [gable, gable + 1] {
                let corner = |n: usize| ring[(n + ring.len()) % ring.len()];
                let (a, b, c) = (corner(at + ring.len() - 1), corner(at), corner(at + 1));
                let turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
                assert!(turn > 0.0, "{} wall {}", shape.name, job.walls[gable].letter);
            }
        }
    }
}

#[test]
fn areas_follow_from_the_sizes() {
    let area = |shape, sizes: &[(&str, f64)]| {
        let job = read(new_job(shape, "Trial", sizes, false).unwrap()).unwrap();
        job.loops.iter().map(|ring| twice_area(ring) / 2.0).sum::<f64>()
    };
    assert_eq!(area("rectangle", &[("length", 9000.0), ("width", 5000.0)]), 9000.0 * 5000.0);
    let l = [("length", 9000.0), ("width", 8000.0), ("main", 5000.0), ("wing", 4000.0)];
    assert_eq!(area("L", &l), 9000.0 * 5000.0 + 4000.0 * 3000.0);
    let t = [("length", 9000.0), ("main", 5000.0), ("wing", 4000.0), ("projection", 3000.0)];
    assert_eq!(area("T", &t), 9000.0 * 5000.0 + 4000.0 * 3000.0);
    let u = [("length", 12_000.0), ("depth", 9000.0), ("back", 5000.0), ("wing", 4000.0)];
    assert_eq!(area("U", &u), 12_000.0 * 5000.0 + 2.0 * 4000.0 * 4000.0);
    let h = [("length", 12_000.0), ("depth", 10_000.0), ("wing", 4000.0), ("bar", 5000.0)];
    assert_eq!(area("H", &h), 2.0 * 4000.0 * 10_000.0 + 4000.0 * 5000.0);
    let cross = [("length", 12_000.0), ("depth", 10_000.0), ("arm", 4000.0)];
    assert_eq!(area("cross", &cross), (12_000.0 + 10_000.0 - 4000.0) * 4000.0);
    let yard = [("length", 15_000.0), ("depth", 13_000.0), ("wing", 4000.0)];
    assert_eq!(area("courtyard", &yard), 15_000.0 * 13_000.0 - 7000.0 * 5000.0);
    let bay = [("length", 9000.0), ("width", 5000.0), ("bay", 3000.0), ("front", 2000.0), ("projection", 600.0)];
    assert_eq!(area("bay", &bay), 9000.0 * 5000.0 + 2500.0 * 600.0);
    // A regular octagon of width w across the flats has the area 2(√2 − 1)w².
    let octagon = 2.0 * (core::f64::consts::SQRT_2 - 1.0) * 5000.0 * 5000.0;
    // The corners are written to a thousandth of a millimetre.
    assert!((area("octagon", &[("width", 5000.0)]) - octagon).abs() < 5000.0 * 8.0 * 0.001);
}

#[test]
fn forms_follow_from_the_sizes() {
    let job = |shape, sizes: &[(&str, f64)]| read(new_job(shape, "Trial", sizes, false).unwrap()).unwrap();
    let half_hips = job("half-hip", &[("rise", 1000.0)]);
    assert_eq!(
        half_hips.walls.iter().map(|wall| wall.half_hip).collect::<Vec<_>>(),
        [None, Some(1000.0), None, Some(1000.0)]
    );
    let gablets = job("gablet", &[("length", 4000.0), ("rise", 800.5)]);
    assert_eq!(
        gablets.walls.iter().map(|wall| wall.gablet).collect::<Vec<_>>(),
        [Some(800.5), None, Some(800.5), None]
    );
    let lean_to = job("lean-to", &[]);
    assert_eq!(lean_to.walls.iter().map(|wall| wall.gable).collect::<Vec<_>>(), [false, true, true, true]);
    let saltbox = job("saltbox", &[("raise", 900.0)]);
    assert_eq!(saltbox.walls.iter().map(|wall| wall.plate).collect::<Vec<_>>(), [900.0, 0.0, 0.0, 0.0]);
    assert_eq!(saltbox.eaves.fascia, crate::Fascia::Fixed);
    let mansard = job("mansard", &[("lower", 2000.0)]);
    assert!(mansard.walls.iter().all(|wall| wall.upper.is_some_and(|upper| upper.from == 2000.0)));
    let gabled = read(new_job("mansard", "Trial", &[], true).unwrap()).unwrap();
    assert_eq!(gabled.walls.iter().map(|wall| wall.upper.is_some()).collect::<Vec<_>>(), [true, false, true, false]);
    let sprockets = job("sprockets", &[("reach", 500.0)]);
    assert_eq!(sprockets.eaves.sprocket.map(|sprocket| sprocket.reach), Some(500.0));
}

#[test]
fn forms_that_do_not_fit_under_the_ridge_are_refused() {
    let limit = |shape, sizes: &[(&str, f64)]| match new_job(shape, "Trial", sizes, false) {
        Err(ShapeError::TooLarge { limit, .. }) => limit,
        other => panic!("{shape}: {other:?}"),
    };
    // The ridge of a roof of 40° over 5000 mm is 2500 tan 40° = 2097.749 high
    // (first principles), and tan 70° = 2.747477.
    let width = ("width", 5000.0);
    assert!((limit("half-hip", &[width, ("rise", 2098.0)]) - 2097.749).abs() < 1e-3);
    assert!((limit("gablet", &[width, ("rise", 3000.0)]) - 2097.749).abs() < 1e-3);
    assert!((limit("saltbox", &[width, ("raise", 5000.0)]) - 2.0 * 2097.749).abs() < 1e-2);
    assert!((limit("mansard", &[width, ("lower", 9000.0)]) - 2500.0 * 2.747_477).abs() < 1e-2);
    assert!((limit("sprockets", &[width, ("reach", 2600.0)]) - 2500.0).abs() < 1e-9);
}

#[test]
fn gables_of_a_rectangle_are_on_the_short_ends() {
    let gables = |length: f64| {
        let text = new_job("Rectangle", "Trial", &[("length", length)], true).unwrap();
        read(text).unwrap().walls.iter().map(|wall| wall.gable).collect::<Vec<_>>()
    };
    assert_eq!(gables(9000.0), [false, true, false, true]);
    assert_eq!(gables(3000.0), [true, false, true, false]);
}

#[test]
fn wrong_names_and_sizes_are_refused() {
    let shape = new_job("ocatgon", "Trial", &[], false);
    assert!(matches!(shape, Err(ShapeError::UnknownShape { nearest: Some(near), .. }) if near == "octagon"));
    let size = new_job("L", "Trial", &[("height", 1.0)], false);
    assert!(matches!(size, Err(ShapeError::UnknownParameter { .. })));
    for mm in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(matches!(new_job("L", "Trial", &[("wing", mm)], false), Err(ShapeError::BadSize { .. })), "{mm}");
    }
    let wide = new_job("U", "Trial", &[("length", 8000.0), ("wing", 4000.0)], false);
    let limit = ShapeError::TooLarge { parameter: "wing", mm: 4000.0, limit: 4000.0, because: "length" };
    assert_eq!(wide, Err(limit));
    assert!(matches!(new_job("rectangle", "Two\nlines", &[], false), Err(ShapeError::Faults(_))));
    assert!(matches!(new_job("rectangle", "Trial", &[("width", 20.0)], false), Err(ShapeError::Faults(_))));
}

#[test]
fn titles_are_written_as_texts() {
    for title in ["The \"Old\" Forge", "A \\ B", "½ way = # up", "'"] {
        let job = read(new_job("rectangle", title, &[], false).unwrap()).unwrap();
        assert_eq!(job.title, title);
    }
}

proptest! {
    #[test]
    fn any_sizes_make_a_good_job_or_an_error(which in 0..shapes().len(), sizes in prop::collection::vec(1.0..20_000.0_f64, 5)) {
        let shape = &shapes()[which];
        let sizes: Vec<(&str, f64)> =
            shape.parameters.iter().zip(sizes).map(|(parameter, mm)| (parameter.name, mm)).collect();
        if let Ok(text) = new_job(shape.name, "Trial", &sizes, shape.gables) {
            prop_assert!(read(&text).is_ok());
        }
    }
}
