//! Lifts: what each timber weighs, where it balances, and who or what lifts it.
//!
//! The figures are a filter: a lift within it needs no more thought, one past it is assessed by whoever is in charge.
//! It is no limit of the law, and says nothing of wind, ladders or footing.

mod centroid;
mod filter;
mod packs;
mod rules;

pub use centroid::balance;
pub use filter::{Hands, carried, overhead, people, team_kg};
pub use packs::{Pack, packs};
pub use rules::{Densities, Heights, Less, Lifting, LiftingError, Team, Zones};

use roof::solution::{Member, MemberKind, Solution};
use serde::{Deserialize, Serialize};

/// Density of timber, kg/m³.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Density {
    /// Dry.
    pub dry: f64,
    /// Damp.
    pub damp: f64,
}

impl Density {
    /// Of a strength class by its name (`C16`, `C24`); classes that are not kept count as the heavier of these.
    #[must_use]
    pub fn of(rules: &Lifting, class: &str) -> Self {
        let dry = if class == "C16" { rules.density.C16.value } else { rules.density.C24.value };
        Self { dry, damp: rules.density.damp.value }
    }
}

/// Weight of a straight timber, kg: thickness · depth · length · density.
///
/// Section in mm, length in mm, density in kg/m³.
#[must_use]
pub fn weight_kg(thickness_mm: f64, depth_mm: f64, length_mm: f64, density: f64) -> f64 {
    const MM3_IN_M3: f64 = 1e9;
    thickness_mm * depth_mm * length_mm * density / MM3_IN_M3
}

/// One stage of a lift.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// From the ground to the level of the plates: by the scaffold's hoist, or handed up.
    ToPlates,
    /// One end, then the other, onto a trestle.
    Trestle,
    /// One end, then the other, onto its prop.
    Prop,
    /// One end, then the other, into its place: never all of it in the hands.
    PlaceByEnds,
    /// Straight into place by hand.
    Place,
    /// With a hoist all the way.
    Hoist,
}

/// A timber to lift.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lift {
    /// Its mark.
    pub mark: String,
    /// Kind.
    pub kind: MemberKind,
    /// Length over all, mm.
    pub length_mm: f64,
    /// Weight dry, kg.
    pub kg: f64,
    /// Weight damp, kg.
    pub damp_kg: f64,
    /// Where it balances: from the foot end along the top edge, mm.
    pub balance_mm: f64,
    /// The same point over the underside, mm.
    pub balance_up_mm: f64,
    /// Who carries it, damp, held close between knuckle and elbow.
    pub carried: Hands,
    /// Who lifts it into place with hands above the shoulder, damp.
    pub overhead: Hands,
    /// How high its lower and upper end come over the plates, mm.
    pub height_mm: [f64; 2],
    /// Whether it goes in above the shoulder of somebody who stands on a deck at the level of the plates.
    pub above_shoulder: bool,
    /// How it is lifted so that no hand passes the filter: from the ground up.
    pub stages: Vec<Stage>,
    /// Trestle heights over the plates on its way, mm.
    pub trestles_mm: Vec<f64>,
}

/// What every timber of a roof weighs, and how it is lifted.
///
/// # Errors
/// When the region of the roof keeps no figures.
pub fn lifts(solution: &Solution, density: &Density) -> Result<Vec<Lift>, LiftingError> {
    let rules = Lifting::of(&solution.region)?;
    Ok(solution.members.iter().map(|m| lift(rules, density, m)).collect())
}

fn lift(rules: &Lifting, density: &Density, m: &Member) -> Lift {
    let (kg, damp_kg) = (m.volume_m3 * density.dry, m.volume_m3 * density.damp);
    let length_mm = m.bench.points.iter().map(|p| p[0]).fold(0.0, f64::max);
    let [along, up, _] = balance(m);
    let heights = m.solid.points.iter().map(|p| p[2]);
    let (low, high) = heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), z| (l.min(z), h.max(z)));
    let height_mm = if low <= high { [low, high] } else { [0.0; 2] };
    let above_shoulder = height_mm[1] > rules.height.shoulder_mm.value;
    let overhead = overhead(rules, damp_kg, length_mm);
    let carried = carried(rules, damp_kg, length_mm);
    let (stages, trestles_mm) = staged(rules, m.kind, carried, overhead, above_shoulder.then_some(height_mm[1]));
    Lift {
        mark: m.mark.clone(),
        kind: m.kind,
        length_mm,
        kg,
        damp_kg,
        balance_mm: along,
        balance_up_mm: up,
        carried,
        overhead,
        height_mm,
        above_shoulder,
        stages,
        trestles_mm,
    }
}

/// Above the shoulder no filter is passed by lifting in stages: plates, trestles one below the other, then its prop for a
/// ridge and its place for all else; a hoist when three cannot carry it. `above`: how high it comes, mm, when that is
/// above the shoulder.
fn staged(
    rules: &Lifting,
    kind: MemberKind,
    carried: Hands,
    overhead: Hands,
    above: Option<f64>,
) -> (Vec<Stage>, Vec<f64>) {
    /// No roof is higher than this many stages.
    const MOST: usize = 40;
    if carried == Hands::Aid {
        return (vec![Stage::Hoist], Vec::new());
    }
    let Some(high) = above.filter(|_| overhead == Hands::Aid) else {
        return (vec![Stage::ToPlates, Stage::Place], Vec::new());
    };
    let step = rules.height.stage_mm.value;
    let mut trestles = Vec::new();
    while step > 0.0 && trestles.len() < MOST && step * ((trestles.len() + 1) as f64) < high - step / 2.0 {
        trestles.push(step * (trestles.len() + 1) as f64);
    }
    let mut stages = vec![Stage::ToPlates];
    stages.extend(trestles.iter().map(|_| Stage::Trestle));
    stages.push(if kind == MemberKind::RidgeBoard { Stage::Prop } else { Stage::PlaceByEnds });
    (stages, trestles)
}
