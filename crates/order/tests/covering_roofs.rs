//! Coverings on whole roofs: areas against the slopes, counts against area and cover, one worked house.

use order::covering::{Chosen, CoverFault, CoverUnit, Covered, Coverings, cover, sums};
use proptest::prelude::*;
use roof::solution::Solution;

/// Shown area of courses against area of slopes, share: sums of mm.
const AREA: f64 = 1e-6;

fn solved(text: &str) -> Solution {
    let job = job::read(text.as_bytes()).expect("the job is read");
    roof::solve(&job).expect("the roof is solved")
}

fn uk() -> &'static Coverings {
    Coverings::of("uk").expect("figures")
}

fn rect(length: f64, width: f64, pitch: f64, gables: bool, out: f64) -> String {
    let walls = if gables { "[roof.walls]\nB = { gable = true }\nD = { gable = true }\n" } else { "" };
    format!(
        "format = 1\ntitle = \"t\"\nregion = \"uk\"\n[plan]\ncorners = [[0, 0], [{length}, 0], [{length}, {width}], [0, {width}]]\n\
         [roof]\npitch = {pitch}\neaves = {{ overhang = {out} }}\nverge = {{ overhang = 0 }}\n{walls}\
         [timber]\nrafter = {{ size = [47, 150], centres = 400 }}\nhip = {{ size = [47, 225] }}\nridge = {{ size = [32, 250] }}\nplate = {{ size = [75, 100] }}\n"
    )
}

fn line<'a>(covered: &'a Covered, item: &str) -> &'a order::covering::CoverLine {
    covered.lines.iter().find(|l| l.item == item).unwrap_or_else(|| panic!("no line {item}"))
}

fn no_overhang(name: &str) -> Chosen {
    Chosen { eaves_overhang: Some(0.0), verge_overhang: Some(0.0), ..Chosen::named(name) }
}

/// What must hold of any covered roof.
fn sound(covered: &Covered) {
    let mut shown = 0.0;
    for slope in &covered.slopes {
        // Independent of the count: the courses leave nothing out and nothing twice.
        assert!((slope.shown_m2 - slope.area_m2).abs() <= AREA * slope.area_m2.max(1.0), "{slope:?}");
        shown += slope.shown_m2;
        assert!(slope.gauge_mm > 0.0 && slope.courses > 0);
    }
    assert!((shown - covered.area_m2).abs() < 1e-3);
    for l in &covered.lines {
        assert!(l.quantity.is_finite() && l.quantity + 1e-9 >= l.net, "{l:?}");
    }
    let back: Covered = serde_json::from_str(&serde_json::to_string(covered).expect("written")).expect("read");
    assert_eq!(back.covering, covered.covering);
    assert_eq!(back.lines.len(), covered.lines.len());
}

/// Pieces of a slope against area / (cover × gauge): at least that, at most that and one piece for every cut, and for
/// lapped pieces the course under the eaves.
fn counts_fit(covered: &Covered, cover_width: f64, lapped: bool) {
    for s in &covered.slopes {
        let by_area = s.area_m2 * 1e6 / (cover_width * s.gauge_mm);
        let laid = (s.whole + s.cut + s.short) as f64 + 1.5 * s.wide as f64;
        // Joints take up slivers of up to 2 % of a piece, at most four a course; the top course shows less than a gauge.
        // The top course shows up to the ridge, more than a gauge.
        let rows = s.courses as f64 - if lapped { 1.0 } else { 0.0 };
        let at_top = (rows * s.gauge_mm / s.length_mm).min(1.0);
        let least = by_area * at_top * 0.98 - 0.08 * s.courses as f64 - 2.0;
        // Every course has room for a cut piece at each end more than shows, and lies as far up as its head.
        let eaves = if lapped {
            by_area / (s.courses as f64 - 1.0).max(1.0) * 2.5 + 4.0
        } else {
            by_area / s.courses as f64 * 2.0 + 4.0
        };
        let most = by_area + s.cuts.all() as f64 + eaves;
        assert!(laid >= least, "{}: {laid} of {by_area} {s:?}", s.place);
        assert!(laid <= most, "{}: {laid} of {by_area}, {} {s:?}", s.place, s.cuts.all());
    }
}

#[test]
fn the_worked_gable() {
    // ex.gable9x7: half span 3.5 m, eaves 0.3 m, 40 degrees; 50 courses, 900 m of battens, 20 ridge pieces.
    let solution = solved(&rect(9000.0, 7000.0, 40.0, true, 300.0));
    let covered = cover(&solution, &no_overhang("plain-tile"), 400.0, uk()).expect("covered");
    sound(&covered);
    for s in &covered.slopes {
        assert!((s.length_mm - 4961.0).abs() < 1.0, "{}", s.length_mm);
        assert_eq!(s.courses, 50);
        assert!(s.gauge_mm <= 100.0 && s.lap_mm >= 65.0);
        assert!((s.area_m2 - 4.961 * 9.0).abs() < 0.02);
    }
    let battens = covered.battens.as_ref().expect("battens");
    assert!((battens.metres - 900.0).abs() < 1e-6, "{}", battens.metres);
    assert_eq!(battens.size_mm, [25.0, 38.0]);
    assert_eq!(battens.joints, "at most 3 in any 12 joined over one rafter");
    assert_eq!(line(&covered, "ridge-piece").net, 20.0);
    counts_fit(&covered, 165.0, true);
    // 9000 / 165 = 54.5 tiles: half a tile over, made good by a tile and a half at one end or the other of each course.
    // Every other course begins with one, and ends with one: what is over there is 0.045 of a tile, else 0.545, cut.
    assert!(covered.slopes.iter().all(|s| s.wide == 50 && s.cuts.verge == 25));
    // cov.vent.soffit_9m: 10 mm along 9 m on two sides.
    let eaves: f64 = covered.vents.iter().filter(|v| v.item == "eaves-vent").map(|v| v.area_mm2).sum();
    assert!((eaves - 180_000.0).abs() < 1e-6);
    // Underlay 1 m wide with 100 mm laps, 150 mm over the ridge: (5111 - 100) / 900, so 6 runs of 9 m a side; 50 m rolls.
    assert!((covered.underlay.area_m2 - 2.0 * 6.0 * 9.0).abs() < 1e-6 && covered.underlay.rolls == 3);
    // 40 degrees wants a slot at the ridge.
    assert!(covered.vents.iter().any(|v| v.item == "ridge-vent" && v.slot_mm == 5.0));
}

#[test]
fn a_hip_has_the_area_of_the_gable() {
    // A known property of roofs of one pitch; the overhang at the ends adds its own.
    let covering = no_overhang("plain-tile");
    let gable = cover(&solved(&rect(9000.0, 7000.0, 40.0, true, 0.0)), &covering, 400.0, uk()).expect("covered");
    let hip = cover(&solved(&rect(9000.0, 7000.0, 40.0, false, 0.0)), &covering, 400.0, uk()).expect("covered");
    assert!((gable.area_m2 - hip.area_m2).abs() < 1e-6);
    assert!(hip.slopes.iter().any(|s| s.cuts.hip > 0));
    assert_eq!(line(&hip, "hip-iron").net, 4.0);
    let with_bonnets = Chosen { bonnets: true, ..covering };
    let bonnets = cover(&solved(&rect(9000.0, 7000.0, 40.0, false, 0.0)), &with_bonnets, 400.0, uk()).expect("covered");
    // One a course on four hips; the course under the eaves has none.
    assert_eq!(line(&bonnets, "bonnet").net, 4.0 * (hip.slopes[0].courses - 1) as f64);
    // All four slopes have one gauge: courses run round.
    assert!(hip.slopes.iter().all(|s| s.gauge_mm == hip.slopes[0].gauge_mm));
}

const EXAMPLES: [&str; 13] = [
    "bay",
    "boathouse",
    "dormers",
    "gablet",
    "half-hip",
    "lean-to",
    "mansard",
    "raised-plates",
    "saltbox",
    "sprockets",
    "surveyed",
    "whole-house",
    "wings",
];

fn example(name: &str) -> Solution {
    let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    solved(&std::fs::read_to_string(path).expect("the example is there"))
}

#[test]
fn every_example_is_covered() {
    for name in EXAMPLES {
        let solution = example(name);
        // 17.5 degrees and more: the lap is the greater.
        let covered =
            cover(&solution, &Chosen { head_lap: Some(100.0), ..Chosen::named("single-lap-tile") }, 400.0, uk())
                .unwrap_or_else(|e| panic!("{name}: {e}"));
        sound(&covered);
        counts_fit(&covered, 301.0, false);
        assert_eq!(covered.slopes.len(), solution.faces.len(), "{name}");
        // Faces grow by their overhangs, and lose their holes.
        let bare: f64 = solution.faces.iter().map(|f| f.slope_area_m2).sum();
        assert!(covered.area_m2 > bare * 0.95 && covered.area_m2 < bare * 1.45, "{name}: {} {bare}", covered.area_m2);
    }
}

#[test]
fn the_whole_house() {
    let solution = example("whole-house");
    let covered = cover(&solution, &Chosen::named("plain-tile"), 400.0, uk()).expect("covered");
    sound(&covered);
    counts_fit(&covered, 165.0, true);
    let valleys = covered.lines.iter().any(|l| l.item == "valley-lining");
    assert!(!valleys);
    // Two roof windows and a stack.
    assert_eq!(line(&covered, "opening-flashing").net, 3.0);
    assert!(covered.slopes.iter().map(|s| s.cuts.opening).sum::<u64>() > 0);
    // Plain tiles at 98.7 mm: 61.4 for each m2, and what hips and holes cut.
    let tiles = line(&covered, "plain-tile").net / covered.area_m2;
    assert!((58.0..66.0).contains(&tiles), "{tiles}");
    assert!((65.0..80.0).contains(&covered.kg_per_m2.expect("a weight")));
}

#[test]
fn refusals() {
    let low = solved(&rect(8000.0, 6000.0, 20.0, true, 300.0));
    let fault = cover(&low, &Chosen::named("plain-tile"), 400.0, uk()).expect_err("20 is below 35");
    assert!(matches!(fault, CoverFault::PitchBelowLeast { least_deg, .. } if least_deg == 35.0), "{fault}");
    // cov.single420: 75 lap from 26, 100 lap from 17.5.
    let with_75 = Chosen { head_lap: Some(75.0), ..Chosen::named("single-lap-tile") };
    let fault = cover(&low, &with_75, 400.0, uk()).expect_err("20 is below 26");
    assert!(fault.to_string().contains("100 mm allows 17.5"), "{fault}");
    assert!(cover(&low, &Chosen::named("single-lap-tile"), 400.0, uk()).is_ok(), "the lap for 20 degrees is taken");
    let steep = solved(&rect(8000.0, 6000.0, 40.0, true, 300.0));
    let fault = cover(&steep, &Chosen::named("plane-tile"), 400.0, uk()).expect_err("unknown");
    assert!(fault.to_string().contains("plain-tile"), "{fault}");
    let fault = cover(&steep, &Chosen::named("slate"), 620.0, uk()).expect_err("battens");
    assert!(matches!(fault, CoverFault::BattenSpan { most_mm, .. } if most_mm == 600.0));
    let given = Chosen { batten: Some([32.0, 50.0]), ..Chosen::named("slate") };
    assert!(cover(&steep, &given, 620.0, uk()).is_ok());
    let lap = Chosen { head_lap: Some(265.0), ..Chosen::named("plain-tile") };
    assert!(matches!(cover(&steep, &lap, 400.0, uk()), Err(CoverFault::LapImpossible { .. })));
    let lap = Chosen { head_lap: Some(20.0), ..Chosen::named("plain-tile") };
    assert!(matches!(cover(&steep, &lap, 400.0, uk()), Err(CoverFault::LapShort { .. })));
    for bad in [f64::NAN, 0.0, -5.0, f64::INFINITY] {
        for chosen in [
            Chosen { length: Some(bad), ..Chosen::named("slate") },
            Chosen { width: Some(bad), ..Chosen::named("slate") },
            Chosen { cover_width: Some(bad), ..Chosen::named("slate") },
            Chosen { most_gauge: Some(bad), ..Chosen::named("slate") },
            Chosen { weight: Some(bad), ..Chosen::named("slate") },
        ] {
            assert!(cover(&steep, &chosen, 400.0, uk()).is_err(), "{chosen:?}");
        }
        assert!(cover(&steep, &Chosen::named("slate"), bad, uk()).is_err());
    }
    let tiny = Chosen {
        length: Some(0.2),
        head_lap: Some(0.1),
        width: Some(0.1),
        least_pitch: Some(0.0),
        ..Chosen::named("slate")
    };
    assert!(matches!(cover(&steep, &tiny, 400.0, uk()), Err(CoverFault::TooMany { .. })));
    let thread = Chosen { width: Some(1e-9), cover_width: Some(1e-9), ..Chosen::named("slate") };
    assert!(matches!(cover(&steep, &thread, 400.0, uk()), Err(CoverFault::TooMany { .. })));
    // Sprockets flatter than the covering allows.
    assert!(cover(&example("sprockets"), &Chosen::named("plain-tile"), 400.0, uk()).is_err());
    assert!(Coverings::of("nowhere").is_err());
}

#[test]
fn shingles_and_their_share_of_air() {
    let us = Coverings::of("us").expect("figures");
    let roof = solved(&rect(8000.0, 6000.0, 40.0, true, 300.0));
    for name in ["wood-shingle", "asphalt-shingle"] {
        let covered = cover(&roof, &Chosen::named(name), 400.0, us).expect("covered");
        sound(&covered);
        assert!(covered.battens.is_none());
        // IRC R806.2, 1/150 of 48 m2.
        assert!((line(&covered, "roof-vent-area").net - 48.0 / 150.0).abs() < 1e-9);
    }
}

#[test]
fn sheets_cover_the_slope() {
    for (name, pitch) in [("metal-sheet", 15.0), ("fibre-cement-sheet", 20.0)] {
        let roof = solved(&rect(8000.0, 6000.0, pitch, true, 300.0));
        let covered = cover(&roof, &Chosen::named(name), 400.0, uk()).expect("covered");
        sound(&covered);
        let sheets: Vec<_> = covered.lines.iter().filter(|l| l.item == name).collect();
        assert_eq!(sheets.len(), 2);
        assert!(sheets.iter().all(|l| l.unit == CoverUnit::M2 && l.quantity >= l.net));
    }
}

#[test]
fn courses_that_come_out_whole() {
    // 9900 / 165 = 60 tiles. Even courses have 60; odd ones begin and end with a tile and a half, and 57 between.
    let covered = cover(&solved(&rect(9900.0, 7000.0, 40.0, true, 300.0)), &no_overhang("plain-tile"), 400.0, uk())
        .expect("covered");
    for s in &covered.slopes {
        // The course under the eaves and the top one (number 48, even) are of short tiles.
        assert_eq!((s.courses, s.whole, s.cut, s.wide), (50, 24 * 60 + 24 * 57, 0, 2 * 25));
        assert_eq!(s.short, 57 + 60);
    }
}

#[test]
fn areas_from_first_principles() {
    // The overhang grows the plan all round: by its perimeter and its corners; all of it lies at one pitch.
    let cos = geometry::Angle::deg(40.0).cos();
    let tile = Chosen { eaves_overhang: Some(50.0), ..Chosen::named("plain-tile") };
    let hip = cover(&solved(&rect(9000.0, 7000.0, 40.0, false, 300.0)), &tile, 400.0, uk()).expect("covered");
    assert!((hip.area_m2 - 9.7 * 7.7 / cos).abs() < 1e-6, "{}", hip.area_m2);
    let (a, b, w, d) = (4.0, 5.0, 4.5, 0.3);
    let l = cover(&solved(&ell(4000.0, 5000.0, 4500.0, 40.0)), &tile, 400.0, uk()).expect("covered");
    let (plan, round) = (w * (a + w) + w * b, 2.0 * (a + w + b + w));
    let grown = plan + round * d + 4.0 * d * d;
    assert!((l.area_m2 - grown / cos).abs() < 1e-6, "{} {}", l.area_m2, grown / cos);
}

#[test]
fn each_eaves_has_the_fascia_of_its_own_wall() {
    // Two short wings: the fascia of the one runs out beside the eaves of the other. 250 overhang, 25 fascia, 50 tile.
    let text = ell(1500.0, 1500.0, 4000.0, 40.0).replace("plate =", "fascia = { size = [25, 200] }\nplate =");
    let l = cover(&solved(&text), &Chosen::named("plain-tile"), 400.0, uk()).expect("covered");
    let (a, w, d) = (1.5, 4.0, 0.325);
    let grown = w * (a + w) + w * a + 2.0 * (2.0 * (a + w)) * d + 4.0 * d * d;
    let expected = grown / geometry::Angle::deg(40.0).cos();
    assert!((l.area_m2 - expected).abs() < 1e-6, "{} {expected}", l.area_m2);
}

#[test]
fn a_small_gable_within_the_roof_hangs_over() {
    // 9.6 x 5.6 m at 45 degrees, eaves 0.3 and 0.05 all round; the gablets, 0.9 high, hang over by 0.1 and 0.05 on
    // either half of either end, down to the line of the hip.
    let covered = cover(&example("gablet"), &Chosen::named("plain-tile"), 400.0, uk()).expect("covered");
    let plan = 10.3 * 6.3 + 4.0 * (0.9 * 0.15 + 0.15 * 0.15 / 2.0);
    let expected = plan / geometry::Angle::deg(45.0).cos();
    assert!((covered.area_m2 - expected).abs() < 1e-6, "{} {expected}", covered.area_m2);
}

#[test]
fn pieces_of_a_pyramid_by_points() {
    // Every piece is looked at by a grid of points; the count works by areas and skips what no edge crosses.
    const SIDE: f64 = 6000.0;
    const GRID: usize = 60;
    let solution = solved(&rect(SIDE, SIDE, 40.0, false, 0.0));
    let covered = cover(&solution, &no_overhang("single-lap-tile"), 400.0, uk()).expect("covered");
    let slope = &covered.slopes[0];
    let (length, width, piece) = (slope.length_mm, 301.0, 420.0);
    let [mut whole, mut cut] = [0_u64; 2];
    for k in 0..slope.courses {
        let tail = if k + 1 == slope.courses { length - 30.0 - piece } else { k as f64 * slope.gauge_mm };
        for place in 0..20 {
            let inside = |i: usize, j: usize| {
                let u = (place as f64 + (i as f64 + 0.5) / GRID as f64) * width;
                let s = tail + (j as f64 + 0.5) / GRID as f64 * piece;
                let in_from_hips = s / length * SIDE / 2.0;
                u > in_from_hips && u < SIDE - in_from_hips
            };
            let points = (0..GRID * GRID).filter(|n| inside(n % GRID, n / GRID)).count() as f64;
            match points / (GRID * GRID) as f64 {
                share if share <= 0.02 => {}
                share if share > 0.98 => whole += 1,
                _ => cut += 1,
            }
        }
    }
    // A share next to a threshold may be read either way by points.
    assert!(slope.whole.abs_diff(whole) <= 1 && slope.cut.abs_diff(cut) <= 2, "{slope:?} {whole} {cut}");
    assert_eq!(slope.cuts.hip, slope.cut);
}

/// An L of two widths, with its hips and its valley.
fn ell(a: f64, b: f64, w: f64, pitch: f64) -> String {
    let (x, y) = (a + w, b + w);
    rect(0.0, 0.0, pitch, false, 250.0)
        .replace(
            "corners = [[0, 0], [0, 0], [0, 0], [0, 0]]",
            &format!("corners = [[0, 0], [{x}, 0], [{x}, {w}], [{w}, {w}], [{w}, {y}], [0, {y}]]"),
        )
        .replace("plate =", "valley = { size = [47, 225] }\nplate =")
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn rectangles(length in 5000.0..14000.0_f64, width in 3500.0..8000.0_f64, pitch in 36.0..55.0_f64, gables: bool, which in 0..3_usize) {
        let (name, w, lapped) = [("plain-tile", 165.0, true), ("interlocking-tile", 300.0, false), ("slate", 250.0, true)][which];
        let solution = solved(&rect(length.round(), width.round(), pitch, gables, 300.0));
        let covered = cover(&solution, &Chosen::named(name), 400.0, uk()).expect("covered");
        sound(&covered);
        counts_fit(&covered, w, lapped);
        prop_assert!(covered.slopes.iter().all(|s| gables == (s.cuts.hip == 0)));
        // Battens: one for every gauge up the slope, and at most two more courses of them.
        for s in &covered.slopes {
            let by_gauge = sums::battens_per_area(s.gauge_mm) * s.area_m2;
            prop_assert!(s.batten_m > by_gauge * 0.8 && s.batten_m < by_gauge * 1.3 + 2.0 * length / 1000.0);
        }
    }

    #[test]
    fn ells(a in 3000.0..6000.0_f64, b in 3000.0..6000.0_f64, w in 4000.0..6000.0_f64, pitch in 36.0..50.0_f64) {
        let solution = solved(&ell(a.round(), b.round(), w.round(), pitch));
        let covered = cover(&solution, &Chosen::named("plain-tile"), 400.0, uk()).expect("covered");
        sound(&covered);
        counts_fit(&covered, 165.0, true);
        prop_assert!(covered.slopes.iter().any(|s| s.cuts.valley > 0));
        prop_assert!(line(&covered, "valley-lining").quantity > line(&covered, "valley-lining").net);
    }
}
