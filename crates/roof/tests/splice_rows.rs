//! The proportions of lengthening joints (`scarf-*`, `fish-*`) of the reference
//! file against the sizes that splices get, and against solved roofs.

use crate::common;
use crate::published::{Entry, Tally, family};
use crate::reading::solve;
use job::{Job, JointRules, Section, SpliceKind, Wood};
use roof::solution::{Member, MemberKind, Solution, SpliceForm};

const THICKNESS: f64 = 75.0;
const DEPTH: f64 = 200.0;

/// Stock for rafters of about 8.5 m: room for the longest scarf in the hips.
const LONGEST: f64 = 8200.0;

fn joint(timber: &str, fastening: &str) -> JointRules {
    JointRules {
        longest: LONGEST,
        kind: if fastening == "bolts+indents" { SpliceKind::Hooked } else { SpliceKind::Splayed },
        bolted: fastening != "none",
        wood: if timber == "hardwood" { Wood::Hardwood } else { Wood::Softwood },
    }
}

/// A roof of stout rafters, longer than the stock.
fn stout(joint: JointRules) -> Job {
    let mut job =
        common::job_over(vec![vec![[0.0, 0.0], [16_000.0, 0.0], [16_000.0, 12_000.0], [0.0, 12_000.0]]], 42.0);
    job.timber.rafter.size = Section { thickness: THICKNESS, depth: DEPTH };
    job.timber.rafter.centres = 600.0;
    job.timber.hip.size = Section { thickness: THICKNESS, depth: 300.0 };
    job.timber.valley.size = job.timber.hip.size;
    job.timber.ridge.size = Section { thickness: 75.0, depth: 300.0 };
    job.timber.joint = joint;
    job
}

fn spliced(s: &Solution) -> Vec<&Member> {
    let rafters = s.members.iter().filter(|m| m.kind == MemberKind::CommonRafter);
    rafters.filter(|m| !m.splices.is_empty()).collect()
}

/// Scarf by wood and fastening: what the sizes say, and every common rafter of
/// a roof that needs it.
fn scarf(tally: &mut Tally, row: &Entry) {
    let text = |key: &str| row.inputs[key].as_str().expect("timber and fastening are words").to_owned();
    let joint = joint(&text("timber"), &text("fastening"));
    let want = row.expected.as_f64().expect("a multiple of the depth");
    let sizes = roof::proportions("uk", THICKNESS, DEPTH, &joint);
    tally.check(row, "sizes", sizes.scarf_length / DEPTH, want, 0.0);
    let s = solve(&stout(joint), &row.id);
    let rafters = spliced(&s);
    assert!(!rafters.is_empty(), "{}: no rafter is spliced", row.id);
    let form = if joint.kind == SpliceKind::Hooked { SpliceForm::Hooked } else { SpliceForm::Splayed };
    let all = rafters.iter().flat_map(|m| &m.splices).all(|x| x.kind == form && x.length_mm == want * DEPTH);
    tally.holds(row, "length of the scarfs of a solved roof", all);
    let bolted = rafters.iter().flat_map(|m| &m.splices).all(|x| x.bolts.is_empty() != joint.bolted);
    tally.holds(row, "bolts of a solved roof", bolted);
}

#[test]
fn scarfs_and_fish_plates_have_the_published_proportions() {
    let mut tally = Tally::default();
    let scarfs: Vec<Entry> = family("scarf-hardwood").into_iter().chain(family("scarf-softwood")).collect();
    assert_eq!(scarfs.len(), 6);
    scarfs.iter().for_each(|row| scarf(&mut tally, row));

    // What resists shear is the wood from the indent to the tip: half a scarf.
    for (wood, start) in [("hardwood", "scarf-shear-hard"), ("softwood", "scarf-shear-soft")] {
        let sizes = roof::proportions("uk", THICKNESS, DEPTH, &joint(wood, "bolts+indents"));
        let ratio = sizes.scarf_length / 2.0 / sizes.indent;
        for row in family(start) {
            let want = row.expected.as_f64().expect("a ratio");
            let holds = if row.id.ends_with("min") { ratio >= want } else { ratio <= want };
            tally.holds(&row, "length that resists shear", holds);
        }
    }

    let sizes = roof::proportions("uk", THICKNESS, DEPTH, &joint("softwood", "bolts"));
    let area = THICKNESS * DEPTH;
    for row in &family("scarf-bolt-area") {
        tally.check(row, "area of bolts", sizes.bolt_area / area, row.expected.as_f64().expect("a share"), 0.0);
    }
    let s = solve(&stout(JointRules { kind: SpliceKind::FishPlates, ..joint("softwood", "bolts") }), "fish plates");
    let plates: Vec<&Member> = s.members.iter().filter(|m| m.kind == MemberKind::FishPlate).collect();
    assert!(plates.len() > 40, "{} fish plates", plates.len());
    let on_rafters = || plates.iter().filter(|p| (p.size.depth_mm - DEPTH).abs() < 1e-6);
    for row in &family("fish-") {
        let want = row.expected.as_f64().expect("a ratio");
        match row.id.as_str() {
            "fish-thickness" => {
                tally.check(row, "sizes", sizes.fish_thickness / DEPTH, want, 0.0);
                tally.holds(
                    row,
                    "plates of a roof",
                    plates.iter().all(|p| p.size.thickness_mm >= want * p.size.depth_mm - 1e-6),
                );
            }
            "fish-length" => {
                tally.check(row, "sizes", sizes.fish_length / DEPTH, want, 0.0);
                let whole = on_rafters().all(|p| (p.stock_length_mm / DEPTH - want).abs() < 1e-9);
                tally.holds(row, "plates of the rafters of a roof", whole && on_rafters().count() > 20);
            }
            // The plates are plain: the rule stands for those who let them in.
            "fish-indent" => {
                let rule = roof::rules::of("uk").value(roof::rules::Id::FishPlateIndentDepth);
                tally.check(row, "rule", rule, want, 0.0);
            }
            other => panic!("nothing is known of {other}"),
        }
    }
    let starts = ["scarf-hardwood", "scarf-softwood", "scarf-bolt-area", "scarf-shear", "fish-"];
    tally.finish(&starts, 6 * 3 + 4 + 1 + 2 + 2 + 1);
}
