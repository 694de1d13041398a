//! Lifts: rows `mh.*` of reference/site_checks.json, and balance against plain statics.

use proptest::prelude::*;
use serde_json::Value;
use site::lifts::{
    Density, Hands, Lifting, Stage, Zones, balance, carried, lifts, overhead, packs, people, team_kg, weight_kg,
};
use std::path::Path;
use strength::annex::Figure;

fn rows(prefix: &str) -> Vec<Value> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/site_checks.json");
    let all: Vec<Value> = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    all.into_iter().filter(|r| r["id"].as_str().is_some_and(|id| id.starts_with(prefix))).collect()
}

fn solved(name: &str) -> roof::solution::Solution {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples").join(name);
    let job = job::read(std::fs::read_to_string(path).unwrap()).unwrap_or_else(|f| panic!("{f}"));
    roof::solve(&job).unwrap()
}

#[test]
fn the_filter_is_that_of_the_rows() {
    let r = Lifting::of("uk").unwrap();
    type Pick = fn(&Zones) -> &Figure;
    let zones: [(&str, Pick); 5] = [
        ("mh.zone.shoulder+", |z| &z.above_shoulder_kg),
        ("mh.zone.elbow-shoulder", |z| &z.elbow_to_shoulder_kg),
        ("mh.zone.knuckle-elbow", |z| &z.knuckle_to_elbow_kg),
        ("mh.zone.midleg-knuckle", |z| &z.midleg_to_knuckle_kg),
        ("mh.zone.below_midleg", |z| &z.below_midleg_kg),
    ];
    let rows = rows("mh.zone.");
    assert_eq!(rows.len(), 5);
    for (id, pick) in zones {
        let row = rows.iter().find(|r| r["id"] == id).unwrap();
        let pair = |who: &str| [0, 1].map(|k| row["expected"][who][k].as_f64().unwrap());
        assert_eq!([pick(&r.close).value, pick(&r.reach).value], pair("men"), "{id}");
        assert_eq!([pick(&r.close_women).value, pick(&r.reach_women).value], pair("women"), "{id}");
    }
}

#[test]
fn single_figures_are_those_of_the_rows() {
    let r = Lifting::of("uk").unwrap();
    let mut tried = 0;
    for row in rows("mh.") {
        let ours = match row["id"].as_str().unwrap() {
            "mh.reduce.1-2/min" => r.less.one_or_two_a_minute.value,
            "mh.reduce.5-8/min" => r.less.five_to_eight_a_minute.value,
            "mh.reduce.>12/min" => r.less.over_twelve_a_minute.value,
            "mh.reduce.twist45" => r.less.twist_45.value,
            "mh.reduce.twist90" => r.less.twist_90.value,
            "mh.carry_max_m" => r.less.carry_most_m.value,
            "mh.team2_factor" => r.team.two.value,
            "mh.team3_factor" => r.team.three.value,
            "mh.team2_men_kg" => team_kg(&r.team, 2, r.close.knuckle_to_elbow_kg.value).unwrap(),
            "mh.team3_men_kg" => team_kg(&r.team, 3, r.close.knuckle_to_elbow_kg.value).unwrap(),
            "mh.overhead_team1_men_kg" => team_kg(&r.team, 1, r.close.above_shoulder_kg.value).unwrap(),
            "mh.overhead_team3_men_kg" => team_kg(&r.team, 3, r.close.above_shoulder_kg.value).unwrap(),
            "mh.density.C16" => r.density.C16.value,
            "mh.density.C24" => r.density.C24.value,
            "mh.density.site_wet" => r.density.damp.value,
            _ => continue,
        };
        let (expected, tolerance) = (row["expected"].as_f64().unwrap(), row["tolerance"].as_f64().unwrap());
        assert!((ours - expected).abs() <= tolerance + 1e-12, "{}: {ours}", row["id"]);
        tried += 1;
    }
    assert_eq!(tried, 15);
}

#[test]
fn weights_and_people_are_those_of_the_derived_rows() {
    let r = Lifting::of("uk").unwrap();
    let rows = rows("mh.weight.");
    assert_eq!(rows.len(), 8);
    for row in rows {
        let input = |name: &str| row["inputs"][name].as_f64().unwrap();
        let kg = weight_kg(input("b_mm"), input("h_mm"), input("L_m") * 1000.0, input("rho"));
        let tolerance = row["tolerance"].as_f64().unwrap();
        assert!((kg - row["expected"]["kg"].as_f64().unwrap()).abs() <= tolerance, "{}: {kg}", row["id"]);
        let ours = people(&r.team, kg, r.close.knuckle_to_elbow_kg.value);
        let expected = match row["expected"]["people_by_filter"].as_u64() {
            Some(n) => Hands::People(u32::try_from(n).unwrap()),
            None => Hands::Aid,
        };
        assert_eq!(ours, expected, "{}", row["id"]);
    }
    // mh.overhead_ridge_38x225x6: past three people's filter, so it goes up in stages.
    let ridge = weight_kg(38.0, 225.0, 6000.0, 420.0);
    assert_eq!(overhead(r, ridge, 6000.0), Hands::Aid);
    // One by weight, two for its length.
    assert_eq!(carried(r, ridge, 6000.0), Hands::People(2));
}

/// First moments by the divergence theorem on the surface, `∮ x²/2 dA_x` and so on, with the exact rule for a square over
/// a triangle: no tetrahedra. The volume is held against that of the roof.
#[test]
fn timbers_balance_where_their_weight_is() {
    let mut seen = 0;
    for name in ["whole-house.toml", "boathouse.toml", "dormers.toml"] {
        for m in &solved(name).members {
            let p = &m.bench.points;
            let (mut volume, mut moment) = (0.0, [0.0; 3]);
            for face in &m.solid.faces {
                for k in 1..face.len() - 1 {
                    let [a, b, c] = [0, k, k + 1].map(|n| p[face[n] as usize]);
                    let (u, v) = ([0, 1, 2].map(|i| b[i] - a[i]), [0, 1, 2].map(|i| c[i] - a[i]));
                    let area = [0, 1, 2].map(|i| {
                        let (j, l) = ((i + 1) % 3, (i + 2) % 3);
                        (u[j] * v[l] - u[l] * v[j]) / 2.0
                    });
                    volume += area[0] * (a[0] + b[0] + c[0]) / 3.0;
                    for i in 0..3 {
                        let squares = a[i] * a[i] + b[i] * b[i] + c[i] * c[i] + a[i] * b[i] + b[i] * c[i] + c[i] * a[i];
                        moment[i] += area[i] * squares / 12.0;
                    }
                }
            }
            assert!((volume.abs() / 1e9 - m.volume_m3).abs() < 1e-6 * m.volume_m3 + 1e-9, "{name} {}", m.mark);
            for (ours, theirs) in balance(m).iter().zip(moment) {
                assert!((ours - theirs / volume).abs() < 1e-3, "{name} {}: {ours} {}", m.mark, theirs / volume);
            }
            seen += 1;
        }
    }
    assert!(seen > 600, "{seen}");
}

#[test]
fn the_weight_of_a_roof_is_that_of_its_volume() {
    let r = Lifting::of("uk").unwrap();
    let solution = solved("whole-house.toml");
    let density = Density::of(r, "C24");
    let all = lifts(&solution, &density).unwrap();
    assert_eq!(all.len(), solution.members.len());
    let (dry, damp) = all.iter().fold((0.0, 0.0), |(d, w), l| (d + l.kg, w + l.damp_kg));
    assert!((dry - solution.totals.timber_m3 * 420.0).abs() < 1e-6 * dry, "{dry}");
    assert!((damp / dry - 550.0 / 420.0).abs() < 1e-9);
    let hips: Vec<_> = all.iter().filter(|l| l.kind == roof::solution::MemberKind::HipRafter).collect();
    assert!(!hips.is_empty() && hips.iter().all(|h| h.above_shoulder && h.overhead == Hands::Aid), "{hips:?}");
    // No stage ends above the shoulder by hand when the filter does not pass it.
    for l in &all {
        if l.above_shoulder && l.overhead == Hands::Aid {
            assert!(!l.stages.contains(&Stage::Place), "{l:?}");
        }
    }
    let packs = packs(&all, 250.0);
    assert_eq!(packs.iter().map(|p| p.pieces as usize).sum::<usize>(), all.len());
    for p in &packs {
        assert!(f64::from(p.each_lift) * p.heaviest_kg <= 250.0 + 1e-9, "{p:?}");
        assert!(p.lifts.is_none_or(|n| n * p.each_lift >= p.pieces), "{p:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// More weight never wants fewer people.
    #[test]
    fn more_weight_wants_no_fewer_people(a in 0.0..60.0_f64, more in 0.0..20.0_f64, length in 500.0..7000.0_f64) {
        let r = Lifting::of("uk").unwrap();
        let count = |h: Hands| match h { Hands::People(n) => n, Hands::Aid => 4 };
        prop_assert!(count(carried(r, a, length)) <= count(carried(r, a + more, length)));
        prop_assert!(count(carried(r, a, length)) <= count(overhead(r, a, length)));
    }
}
