//! How many people a lift wants by the published filter.

use super::rules::{Lifting, Team};
use serde::{Deserialize, Serialize};

/// Who lifts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hands {
    /// So many people by hand.
    People(u32),
    /// More than three people's worth: a hoist, or a lift in stages, or one that is assessed by itself.
    Aid,
}

/// What a team may lift by the filter, kg: `n · each · share` (two about ⅔ of the sum, three about ½).
///
/// `each` in kg; none for more than three, of whom the filter says nothing.
#[must_use]
pub fn team_kg(team: &Team, people: u32, each: f64) -> Option<f64> {
    match people {
        1 => Some(each),
        2 => Some(2.0 * each * team.two.value),
        3 => Some(3.0 * each * team.three.value),
        _ => None,
    }
}

/// Fewest people whose filter a weight does not pass, `each` being what one may lift, kg.
#[must_use]
pub fn people(team: &Team, kg: f64, each: f64) -> Hands {
    (1..=3).find(|n| team_kg(team, *n, each).is_some_and(|most| kg <= most)).map_or(Hands::Aid, Hands::People)
}

/// As [`people`] for a weight held close between knuckle and elbow, but two at least when it is long, mm.
#[must_use]
pub fn carried(rules: &Lifting, kg: f64, length_mm: f64) -> Hands {
    match people(&rules.team, kg, rules.close.knuckle_to_elbow_kg.value) {
        Hands::People(1) if length_mm > rules.team.alone_longest_mm.value => Hands::People(2),
        hands => hands,
    }
}

/// As [`people`] with the hands above the shoulder.
#[must_use]
pub fn overhead(rules: &Lifting, kg: f64, length_mm: f64) -> Hands {
    match people(&rules.team, kg, rules.close.above_shoulder_kg.value) {
        Hands::People(1) if length_mm > rules.team.alone_longest_mm.value => Hands::People(2),
        hands => hands,
    }
}
