//! Pairs of rafters with free feet and with held ones: two opposite answers, and both are told.

use super::effects::sum;
use crate::actions::{Combination, CombinationKind};
use crate::carrying::Carrying;
use crate::carrying::build::{hold, release};
use crate::carrying::flow::Flow;
use crate::carrying::unit::{Kind, Role, Unit};
use roof::solution::MemberKind;
use serde::{Deserialize, Serialize};

/// A pair with its feet free and held.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PairFeet {
    /// Marks of the two rafters.
    pub rafters: [String; 2],
    /// Mark of the collar, if there is one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub collar: Option<String>,
    /// The feet are tied by joists.
    pub tied: bool,
    /// With free feet: how far the plates move apart under all loads without factors, mm; none when it cannot stand so.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub spread_mm: Option<f64>,
    /// With free feet: greatest tension of the tie, N, with factors.
    pub tie_n: f64,
    /// With free feet: greatest force in the collar, N, with factors; tension positive.
    pub collar_free_n: f64,
    /// With held feet: greatest push on each wall, N, with factors.
    pub thrust_n: f64,
    /// With held feet: greatest force in the collar, N, with factors; tension positive.
    pub collar_held_n: f64,
}

/// Work out a pair both ways; `None` for what is no pair.
#[must_use]
pub fn both(
    roof: &Carrying<'_>,
    unit: &Unit,
    number: usize,
    flow: &Flow,
    combinations: &[Combination],
    factors: &[Vec<(usize, f64)>],
) -> Option<PairFeet> {
    let Kind::Pair { left, right } = unit.kind else { return None };
    let loads = &flow.loads[number];
    let collar = unit.pieces.iter().position(|p| roof.runs[p.run].kind == MemberKind::Collar);
    let tie = unit.pieces.iter().position(|p| p.role == Role::Tie);
    let ultimate =
        || combinations.iter().zip(factors).filter(|(c, _)| c.kind == CombinationKind::Ultimate).map(|(_, f)| f);
    let greatest = |values: &[f64]| {
        ultimate().map(|f| sum(values, f)).fold(0.0_f64, |most, n| if n.abs() > most.abs() { n } else { most })
    };

    let mut free = unit.clone();
    release(&mut free);
    let free_answers = free.frame.solve(loads).ok();
    let mut held = unit.clone();
    hold(&mut held);
    // Held by the walls, the joists tie nothing.
    let held_answers = held.frame.solve(loads).ok();
    let axial = |answers: &Option<crate::statics::Cases>, bar: Option<usize>| -> Vec<f64> {
        let (Some(answers), Some(bar)) = (answers, bar) else { return Vec::new() };
        answers.all().iter().map(|a| a.bars[bar].n(0.0)).collect()
    };
    let far = unit.far_foot.and_then(|s| unit.frame.supports.get(s)).map(|s| s.node);
    let spread = free_answers.as_ref().zip(far).map(|(answers, node)| {
        let moved: Vec<f64> = answers.all().iter().map(|a| a.nodes[node][0]).collect();
        let all = combinations.iter().zip(factors).filter(|(c, _)| c.kind == CombinationKind::Characteristic);
        all.map(|(_, f)| sum(&moved, f)).fold(0.0_f64, f64::max)
    });
    let thrust: Vec<f64> = held_answers
        .as_ref()
        .zip(unit.far_foot)
        .map_or_else(Vec::new, |(answers, support)| answers.all().iter().map(|a| a.reactions[support][0]).collect());
    Some(PairFeet {
        rafters: [left, right].map(|r| roof.runs[r].mark.clone()),
        collar: collar.map(|bar| roof.runs[unit.pieces[bar].run].mark.clone()),
        tied: unit.tied,
        spread_mm: spread,
        tie_n: greatest(&axial(&free_answers, tie)).max(0.0),
        collar_free_n: greatest(&axial(&free_answers, collar)),
        thrust_n: greatest(&thrust).abs(),
        collar_held_n: greatest(&axial(&held_answers, collar)),
    })
}
