//! Fixings of real roofs against counts by hand and against published rows.

use order::buying::figures::Figures;
use order::buying::{Line, LineKind, lines, strap_count};
use roof::solution::Solution;
use serde_json::Value;
use std::path::Path;

fn root(path: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path);
    std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

fn solved(text: &str) -> (job::Job, Solution) {
    let job = job::read(text).unwrap_or_else(|faults| panic!("{faults}"));
    let solution = roof::solve(&job).unwrap_or_else(|error| panic!("{error}"));
    (job, solution)
}

fn examples() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let mut all: Vec<(String, String)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name.ends_with(".toml"))
        .map(|name| (name.clone(), root(&format!("examples/{name}"))))
        .collect();
    all.sort();
    assert!(all.len() >= 13, "{}", all.len());
    all
}

fn line<'l>(all: &'l [Line], item: &str) -> &'l Line {
    let found: Vec<&Line> = all.iter().filter(|l| l.item == item).collect();
    assert_eq!(found.len(), 1, "{item}: {:?}", all.iter().map(|l| &l.item).collect::<Vec<_>>());
    found[0]
}

fn quantity(all: &[Line], item: &str) -> f64 {
    line(all, item).quantity
}

#[test]
fn the_whole_house_by_hand() {
    let (job, solution) = solved(&root("examples/whole-house.toml"));
    let strength = strength::whole::check(&job, &solution).unwrap().strength;
    let all = lines(&job, &solution, Some(&strength));

    // Walls A and C 10.8 m: ceil(5.4) + 1 = 7 each; B 7.2 m: ceil(3.6) + 1 = 5. D is a gable without a plate. No wall
    // lifts, so the strength asks for none.
    assert_eq!(quantity(&all, "strap-down"), 19.0);
    // Slopes of the gable 3.6 m / cos 40° = 4.70 m: ceil(2.35) + 1 = 4 each, the one at the top shared.
    assert_eq!(quantity(&all, "strap-gable"), 7.0);
    // 100 on the wall, two spaces of 400, 47 of the third rafter = 947: the next that is sold is 1000.
    assert!(line(&all, "strap-gable").size.contains("1000"), "{}", line(&all, "strap-gable").size);
    // Four screws to each strap.
    assert_eq!(quantity(&all, "screws-12x50"), f64::from(4 * (19 + 7)));

    // Bolts, each longer than what it goes through by 2 washers 3.6, a nut 10.8 and 2.4 of thread = 20.4 mm:
    // the ridge is spliced once with 4 through 32 -> 52.4; a joist once with 3 through 47 -> 67.4;
    // a binder once with 3 through 50 -> 70.4; two hips and two purlins with 4 each through 225 -> 245.4;
    // five collars have one bolt at either end through 47 + 47 -> 114.4 (the strength asks for one).
    assert_eq!(quantity(&all, "bolt-m12x60"), 4.0);
    assert_eq!(quantity(&all, "bolt-m12x70"), 3.0);
    assert_eq!(quantity(&all, "bolt-m12x75"), 3.0);
    assert_eq!(quantity(&all, "bolt-m12x120"), 10.0);
    assert_eq!(quantity(&all, "bolt-m12x260"), 16.0);
    assert_eq!(quantity(&all, "nut-m12"), 36.0);
    assert_eq!(quantity(&all, "washer-m12"), 72.0);

    // Three openings in the slopes cut two rafters each: 4 ends of trimmers and 4 cut ends. The stack also cuts three
    // joists, with doubled trimmers between the joists beside it.
    assert_eq!(quantity(&all, "joist-hanger-47x150"), 24.0);
    assert_eq!(quantity(&all, "joist-hanger-94x125"), 4.0);
    assert_eq!(quantity(&all, "joist-hanger-47x125"), 6.0);

    // Rafters with a seat: 50 common less the 6 upper pieces of cut ones, 32 jacks, 1 crown, 6 trimming = 83, with two
    // nails each; three in each of 2 hips on the plates, 4 ends of purlins on hips, 2 purlins on the next = 8.
    let words = &line(&all, "nails-100x4-5").counted;
    assert!(words.contains("rafters on plates 83 × 2") && words.contains("190 nails"), "{words}");
    // The strength asks for 5 in the lap of rafter and joist, where habit puts 4; 7 at hangers, of which there are 13
    // (with joists and binders to nail to: 13 at the top, 11 + 13 below).
    let words = &line(&all, "nails-100x4").counted;
    assert!(words.contains("rafters lapped to joists 81 × 5 as the strength asks"), "{words}");
    assert!(words.contains("hangers to what they join 37 × 7 as the strength asks"), "{words}");
    let habit = lines(&job, &solution, None);
    assert!(line(&habit, "nails-100x4").counted.contains("rafters lapped to joists 81 × 4;"));

    // Plates on A, B and C: 10.8 + 7.2 + 10.8 m.
    assert!((quantity(&all, "plate-bedding") - 28.8).abs() < 1e-9);
    // Nothing of treatment, which the job does not ask for.
    assert!(!all.iter().any(|l| l.item == "preservative" || l.item == "treatment"));
}

#[test]
fn the_strength_has_the_last_word_where_it_asks_for_more() {
    let (job, solution) = solved(&root("examples/whole-house.toml"));
    let mut strength = strength::whole::check(&job, &solution).unwrap().strength;
    let wall = strength.walls.iter_mut().find(|w| w.name == "A").unwrap();
    wall.straps = Some(11);
    let wall = strength.walls.iter_mut().find(|w| w.name == "B").unwrap();
    wall.straps = Some(2);
    let collar = strength.joints.iter_mut().find(|j| j.name == "collar to rafter").unwrap();
    collar.fixings = Some(3);
    let foot = strength.joints.iter_mut().find(|j| j.name == "rafter foot to ceiling joist").unwrap();
    foot.fixings = None;
    foot.verdict = Some(strength::whole::Verdict::Over);
    let all = lines(&job, &solution, Some(&strength));
    // 11 on A as asked, 5 on B by the rule, which is more than 2, and 7 on C.
    assert_eq!(quantity(&all, "strap-down"), 23.0);
    assert!(line(&all, "strap-down").counted.contains("wall A 11 on 10.80 m as the strength asks; wall B 5"));
    assert_eq!(quantity(&all, "bolt-m12x120"), 30.0);
    // No number carries the lap: the habit is counted, and it is said.
    let words = &line(&all, "nails-100x4").counted;
    assert!(words.contains("rafters lapped to joists (not enough by the strength of the roof"), "{words}");
    assert!(words.contains("before ordering) 81 × 4;"), "{words}");
}

#[test]
fn preservative_goes_by_the_cut_faces() {
    let text = root("examples/whole-house.toml").replace("\n[order]\n", "\n[order]\ntreated = true\n");
    let (job, solution) = solved(&text);
    let all = lines(&job, &solution, None);
    let words = &line(&all, "preservative").counted;
    // At least both ends of the sections, square across: what oblique cuts and birdsmouths add comes on top.
    let ends: f64 = solution
        .members
        .iter()
        .filter(|m| !["fascia board", "soffit board", "tilting fillet", "barge board"].contains(&m.kind.name()))
        .map(|m| 2.0 * m.size.thickness_mm * m.size.depth_mm / 1e6)
        .sum();
    let area: f64 = words.split(" timbers, ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    assert!(area > ends && area < 2.5 * ends, "{area} {ends}");
    // Two coats at 4 m² a litre.
    assert_eq!(quantity(&all, "preservative"), (area * 2.0 / 4.0).ceil());
    assert_eq!(line(&all, "treatment").kind, LineKind::ToChoose);
}

#[test]
fn rows_of_straps() {
    let rows: Vec<Value> = serde_json::from_str(&root("reference/site_checks.json")).unwrap();
    let mine: Vec<&Value> =
        rows.iter().filter(|r| r["id"].as_str().is_some_and(|id| id.starts_with("st.count_plate_"))).collect();
    assert_eq!(mine.len(), 4);
    for row in mine {
        let (length, apart) = (row["inputs"]["len_m"].as_f64().unwrap(), row["inputs"]["max_m"].as_f64().unwrap());
        let expected = row["expected"]["n"].as_u64().unwrap();
        let count = strap_count(length * 1000.0, apart * 1000.0);
        assert_eq!(u64::from(count), expected, "{row}");
        let spacing = length / f64::from(count - 1);
        assert!((spacing - row["expected"]["spacing_m"].as_f64().unwrap()).abs() < 0.001, "{row}");
    }
    // reference/site.md section 3: 7.3 m 5; a slope of 4.569 m 4.
    assert_eq!(strap_count(7300.0, 2000.0), 5);
    assert_eq!(strap_count(4569.0, 2000.0), 4);
    assert_eq!([strap_count(0.0, 2000.0), strap_count(f64::NAN, 2000.0), strap_count(1.0, 0.0)], [0; 3]);
}

#[test]
fn figures_are_those_of_the_published_rows() {
    let rows: Vec<Value> = serde_json::from_str(&root("reference/site_checks.json")).unwrap();
    let expected = |id: &str| rows.iter().find(|r| r["id"] == id).unwrap_or_else(|| panic!("{id}"))["expected"].clone();
    let straps = &Figures::of("uk").straps;
    let (down, gable) = (&straps.down, &straps.gable);
    assert_eq!(expected("st.uk.hold_down_section_mm"), serde_json::json!([30, 2.5]));
    assert_eq!([down.wide.value, down.thick.value], [30.0, 2.5]);
    assert_eq!(expected("st.uk.hold_down_max_centres_m").as_f64().unwrap() * 1000.0, down.apart.value);
    assert_eq!(expected("st.uk.hold_down_len_typ_m").as_f64().unwrap() * 1000.0, down.length.value);
    assert_eq!(expected("st.uk.lateral_section_mm"), serde_json::json!([30, 5]));
    assert_eq!([gable.wide.value, gable.thick.value], [30.0, 5.0]);
    assert_eq!(expected("st.uk.lateral_max_centres_m_to3storeys").as_f64().unwrap() * 1000.0, gable.apart.value);
    assert_eq!(expected("st.uk.lateral_min_members").as_f64(), Some(gable.over.value));
    assert_eq!(expected("st.uk.lateral_downturn_mm").as_f64(), Some(gable.down.value));
    assert_eq!(expected("st.uk.lateral_noggin_fixings").as_f64(), Some(gable.screwed.value));
}

#[test]
fn nails_weigh_what_tables_of_nails_say() {
    // Wire nails to the pound, common tables of penny sizes as reproduced on public pages; diameters of common nails
    // 0.113, 0.131, 0.148, 0.162, 0.192 in. 1 lb = 0.45359237 kg.
    let table = [(2.0, 0.113, 180.0), (2.5, 0.131, 105.0), (3.0, 0.148, 70.0), (3.5, 0.162, 50.0), (4.0, 0.192, 30.0)];
    let figures = Figures::of("uk");
    for (length, diameter, to_the_pound) in table {
        let pound = 0.453_592_37 / figures.rod_kg(diameter * 25.4, length * 25.4);
        assert!((pound / to_the_pound - 1.0).abs() < 0.05, "{length} in: {pound} not {to_the_pound}");
    }
}

#[test]
fn every_joint_of_every_example_has_a_rule_of_its_own() {
    let figures = Figures::of("uk");
    let last = figures.joints.last().unwrap();
    assert_eq!(last.what, "other joints");
    for rule in &figures.joints {
        let ways = [rule.nails.is_some(), rule.bolts.is_some(), rule.none.is_some()];
        assert_eq!(ways.iter().filter(|way| **way).count(), 1, "{}", rule.what);
        assert!(rule.none.is_some() || (rule.count > 0 && !rule.source.is_empty() && rule.standing.is_some()));
        assert!(rule.nails.as_ref().is_none_or(|nails| figures.nails.contains_key(nails)), "{}", rule.what);
    }
    for (name, text) in examples() {
        let (job, solution) = solved(&text);
        for line in lines(&job, &solution, None) {
            assert!(!line.counted.contains("other joints"), "{name}: {}", line.counted);
        }
    }
}

#[test]
fn lines_of_every_example_can_be_ordered() {
    let mut hangers = 0;
    for (name, text) in examples() {
        let (job, solution) = solved(&text);
        let all = lines(&job, &solution, None);
        let mut seen = std::collections::BTreeSet::new();
        for line in &all {
            assert!(seen.insert(&line.item), "{name}: {} twice", line.item);
            // A word that a job takes: it must be a name in [price.NAME].
            let priced = format!("[price.{}]\nprice = 1.5\nper = \"{}\"\n", line.item, line.unit.word());
            let job = job::read(format!("{text}\n{priced}")).unwrap_or_else(|faults| panic!("{name}: {faults}"));
            assert_eq!(job.prices.last().unwrap().item, line.item);
            assert!(line.quantity > 0.0 && line.quantity.is_finite() && line.kg >= 0.0, "{name}: {line:?}");
            assert!(!line.what.is_empty() && !line.counted.is_empty() && !line.standing.is_empty(), "{name}: {line:?}");
            assert!(!line.source.is_empty(), "{name}: {line:?}");
        }
        let hung: f64 = all.iter().filter(|l| l.item.starts_with("joist-hanger-")).map(|l| l.quantity).sum();
        assert_eq!(hung, f64::from(solution.totals.hangers), "{name}");
        hangers += solution.totals.hangers;
        // Bolts of splices, counted on holes another way: each hole of a pair of halves is one bolt; fish plates have
        // every hole of their pair.
        let bolts: f64 = all.iter().filter(|l| l.item.starts_with("bolt-")).map(|l| l.quantity).sum();
        let collars = solution.members.iter().filter(|m| m.kind.name() == "collar").count() * 2;
        let holes = |fish: bool| -> usize {
            let mine = solution.members.iter().filter(|m| (m.kind.name() == "fish plate") == fish);
            mine.flat_map(|m| &m.splices)
                .filter(|s| fish || s.kind != roof::solution::SpliceForm::FishPlates)
                .map(|s| s.bolts.len())
                .sum()
        };
        assert_eq!(bolts as usize, collars + holes(false) / 2 + holes(true) / 2, "{name}");
    }
    assert!(hangers > 34, "{hangers}");
}
