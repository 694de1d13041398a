//! The strength classes as data.

use super::reading::uk;
use strength::eurocode::wood::Wood;

/// A property of a class.
type Of = fn(&Wood) -> f64;

/// Names of the columns and the fields that hold them; moduli are in kN/mm² in the table.
const COLUMNS: [(&str, Of); 12] = [
    ("fm_k", |w| w.fm_k),
    ("ft_0_k", |w| w.ft_0_k),
    ("ft_90_k", |w| w.ft_90_k),
    ("fc_0_k", |w| w.fc_0_k),
    ("fc_90_k", |w| w.fc_90_k),
    ("fv_k", |w| w.fv_k),
    ("E0_mean", |w| w.e0_mean / 1000.0),
    ("E0_05", |w| w.e0_05 / 1000.0),
    ("E90_mean", |w| w.e90_mean / 1000.0),
    ("G_mean", |w| w.g_mean / 1000.0),
    ("rho_k", |w| w.rho_k),
    ("rho_mean", |w| w.rho_mean),
];

/// The table is a public copy; this shows that the region has all of it, not that it is right.
#[test]
fn the_region_has_the_table_as_copied() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/en338.csv");
    let text = std::fs::read_to_string(path).expect("the table is there");
    let mut lines = text.lines();
    let head: Vec<&str> = lines.next().expect("it has a head").split(',').collect();
    assert_eq!(head[2..], COLUMNS.map(|(name, _)| name));
    let rows: Vec<Vec<&str>> = lines.map(|l| l.split(',').collect()).collect();
    assert_eq!((rows.len(), uk().classes.woods.len()), (20, 20));
    for (row, wood) in rows.iter().zip(&uk().classes.woods) {
        assert_eq!((row[0], row[1] == "softwood"), (wood.class.as_str(), wood.softwood));
        for ((name, of), text) in COLUMNS.iter().zip(&row[2..]) {
            let want: f64 = text.parse().expect("it is a number");
            assert!((of(wood) - want).abs() < 1e-9, "{} {name}: {} is not {want}", wood.class, of(wood));
        }
    }
}

/// The relations of EN 384:2016 are from memory and apart from the table: a slip of a digit in either shows.
#[test]
fn classes_keep_the_relations_between_their_properties() {
    let mut worst = (0.0, String::new());
    for wood in &uk().classes.woods {
        let soft = wood.softwood;
        let either = |softwood: f64, hardwood: f64| if soft { softwood } else { hardwood };
        let relations = [
            ("ft_0_k", wood.ft_0_k, either(0.73 * wood.fm_k - 3.07, 0.6 * wood.fm_k)),
            ("fc_0_k", wood.fc_0_k, 4.3 * wood.fm_k.sqrt()),
            ("fv_k", wood.fv_k, either((1.6 + 0.1 * wood.fm_k).min(4.0), (3.0 + 0.03 * wood.fm_k).min(5.0))),
            ("fc_90_k", wood.fc_90_k, either(0.007, if wood.rho_k > 700.0 { 0.015 } else { 0.010 }) * wood.rho_k),
            ("e0_05", wood.e0_05, either(0.67, 0.84) * wood.e0_mean),
            ("e90_mean", wood.e90_mean, wood.e0_mean / either(30.0, 15.0)),
            ("g_mean", wood.g_mean, wood.e0_mean / 16.0),
            ("rho_mean", wood.rho_mean, 1.2 * wood.rho_k),
        ];
        for (name, is, by) in relations {
            let off = (is / by - 1.0).abs();
            assert!(off <= 0.028, "{} {name}: {is}, by EN 384 {by}", wood.class);
            if off > worst.0 {
                worst = (off, format!("{} {name}", wood.class));
            }
        }
    }
    assert_eq!(worst.1, "D24 ft_0_k", "{}", worst.0);
}

/// Editions before 2016 have 14 and 2.5 here, and their shear strength goes without `k_cr`.
#[test]
fn strengths_and_crack_factor_are_of_one_edition() {
    let c24 = uk().class("C24").expect("C24 is there");
    assert!(uk().classes.edition.contains("2016"));
    assert_eq!((c24.ft_0_k, c24.fv_k, uk().factors.kcr.value), (14.5, 4.0, 0.67));
    let old_shear = 2.5;
    assert!((c24.fv_k * uk().factors.kcr.value / old_shear - 1.0).abs() < 0.08, "old and new shear are near equal");
}

#[test]
fn a_higher_softwood_class_is_nowhere_weaker() {
    let woods: Vec<&Wood> = uk().classes.woods.iter().filter(|w| w.softwood).collect();
    assert_eq!(woods.len(), 12);
    for pair in woods.windows(2) {
        for (name, of) in COLUMNS {
            assert!(of(pair[0]) <= of(pair[1]), "{} {name}", pair[1].class);
        }
    }
}
