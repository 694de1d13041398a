//! A thousand ordinary houses and a thousand wild ones, as their walls stand:
//! none makes the solver panic, and next to none is refused. A wider run is
//! `cargo run --release -p roof --example houses`.

use trials::houses::{self, House};

const HOUSES: u64 = 1000;

/// Wild houses refused among them: one in two hundred.
const WILD_REFUSED: usize = 5;

fn refused(house: &dyn Fn(u64) -> House) -> Vec<String> {
    let mut refused = Vec::new();
    for number in 1..=HOUSES {
        let text = house(number).as_built();
        let job = match job::read(&text) {
            Ok(job) => job,
            Err(faults) => {
                refused.push(format!("{number}: {faults}"));
                continue;
            }
        };
        match roof::solve(&job) {
            Ok(solution) => {
                let sound = |m: &roof::solution::Member| m.stock_length_mm.is_finite() && m.volume_m3 > 0.0;
                assert!(!solution.members.is_empty() && solution.members.iter().all(sound), "{number}");
                let texts = solution.notices.iter().flat_map(|n| [&n.text, &n.place]);
                let mut words = texts.flat_map(|t| t.split(' '));
                assert!(!words.any(|w| w == "inf" || w == "NaN"), "{number}: a figure that is none");
            }
            Err(e) => refused.push(format!("{number}: {e}")),
        }
    }
    refused
}

#[test]
fn no_ordinary_house_is_refused() {
    let refused = refused(&houses::ordinary);
    assert!(refused.is_empty(), "{refused:#?}");
}

#[test]
fn few_wild_houses_are_refused() {
    let refused = refused(&houses::wild);
    assert!(refused.len() <= WILD_REFUSED, "{refused:#?}");
}
