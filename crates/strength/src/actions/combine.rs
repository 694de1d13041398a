//! Loads together: EN 1990 6.4.3 and 6.5.3 with the factors of the region.

use super::ActionsFault;
use crate::annex::Figure;
use crate::annex::loads::{CaseFigures, CaseKind, Duration, Loads, Permanent, Recipe, RecipeKind};

/// What a combination is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CombinationKind {
    /// Strength.
    Ultimate,
    /// Whether the roof could lift as a whole.
    Equilibrium,
    /// Deflection when the loads come, EN 1990 6.14.
    Characteristic,
    /// What is there most of the time, EN 1990 6.16.
    QuasiPermanent,
}

/// Which expression of EN 1990 6.4.3.2 the ultimate combinations are made by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Expression {
    /// 6.10: the heaviest.
    #[default]
    Whole,
    /// 6.10a: every variable load times psi0. Only together with 6.10b.
    A,
    /// 6.10b: permanent load times xi. Only together with 6.10a.
    B,
}

/// Cases of load with factors.
#[derive(Clone, Debug, PartialEq)]
pub struct Combination {
    /// In words of the job.
    pub name: String,
    /// What it is for.
    pub kind: CombinationKind,
    /// Cases and their factors.
    pub factors: Vec<(CaseKind, f64)>,
    /// For [`CombinationKind::Characteristic`], the shares that creep: final deflection is the sum of `factors` plus
    /// k_def times the sum of these (EN 1995-1-1 2.2.3: 1 for permanent load, psi2 for the others). Else empty.
    pub creep: Vec<(CaseKind, f64)>,
    /// That of the shortest load in it.
    pub duration: Duration,
}

impl Combination {
    /// Factors by the place of a case in [`CaseKind::ALL`], as [`crate::statics::Cases`] takes them when its cases were
    /// solved in that order.
    #[must_use]
    pub fn by_place(&self) -> Vec<(usize, f64)> {
        self.factors.iter().map(|(kind, factor)| (*kind as usize, *factor)).collect()
    }

    /// Whether one person on one member is in it, who gets no help from neighbouring members (no k_sys).
    #[must_use]
    pub fn has_one_person(&self) -> bool {
        self.factors.iter().any(|(kind, _)| kind.is_one_person())
    }

    /// The sum of loads times factors, for loads of one sort each.
    #[must_use]
    pub fn sum(&self, of: impl Fn(CaseKind) -> f64) -> f64 {
        self.factors.iter().map(|(kind, factor)| factor * of(*kind)).sum()
    }
}

/// All combinations of a region: for each of its recipes the ultimate one, or that of equilibrium; then the
/// characteristic ones and the quasi-permanent one.
///
/// # Errors
/// A variable load without psi.
pub fn combinations(loads: &Loads, expression: Expression) -> Result<Vec<Combination>, ActionsFault> {
    let mut all = Vec::with_capacity(2 * loads.together.len() + 1);
    for recipe in &loads.together {
        all.push(ultimate(loads, recipe, expression)?);
    }
    for recipe in loads.together.iter().filter(|r| r.kind == RecipeKind::Strength) {
        all.push(characteristic(loads, recipe)?);
    }
    all.push(quasi_permanent(loads)?);
    Ok(all)
}

fn figures(loads: &Loads, kind: CaseKind) -> Result<&CaseFigures, ActionsFault> {
    loads.cases.get(kind.family()).ok_or(ActionsFault::NoPsi(kind.family()))
}

fn psi(loads: &Loads, kind: CaseKind, of: fn(&CaseFigures) -> &Option<Figure>) -> Result<f64, ActionsFault> {
    of(figures(loads, kind)?).as_ref().map(|figure| figure.value).ok_or(ActionsFault::NoPsi(kind.family()))
}

const fn psi0(figures: &CaseFigures) -> &Option<Figure> {
    &figures.psi0
}

const fn psi2(figures: &CaseFigures) -> &Option<Figure> {
    &figures.psi2
}

/// The shortest duration of some cases.
fn shortest(loads: &Loads, factors: &[(CaseKind, f64)]) -> Result<Duration, ActionsFault> {
    let mut least = Duration::Permanent;
    for (kind, factor) in factors {
        if *factor != 0.0 {
            least = least.max(figures(loads, *kind)?.duration);
        }
    }
    Ok(least)
}

fn ultimate(loads: &Loads, recipe: &Recipe, expression: Expression) -> Result<Combination, ActionsFault> {
    let partial = &loads.partial;
    let xi = if expression == Expression::B { partial.xi.value } else { 1.0 };
    let (kind, permanent) = match (recipe.kind, recipe.permanent) {
        (RecipeKind::Equilibrium, Permanent::Helpful) => {
            (CombinationKind::Equilibrium, partial.permanent_helpful_balance.value)
        }
        (RecipeKind::Equilibrium, Permanent::Adverse) => {
            (CombinationKind::Equilibrium, partial.permanent_adverse.value)
        }
        (RecipeKind::Strength, Permanent::Helpful) => (CombinationKind::Ultimate, partial.permanent_helpful.value),
        (RecipeKind::Strength, Permanent::Adverse) => (CombinationKind::Ultimate, xi * partial.permanent_adverse.value),
    };
    let variable = partial.variable.value;
    let mut factors = vec![(CaseKind::Permanent, permanent)];
    if let Some(leading) = recipe.leading {
        let share = if expression == Expression::A { psi(loads, leading, psi0)? } else { 1.0 };
        factors.push((leading, variable * share));
    }
    for with in &recipe.with {
        factors.push((*with, variable * psi(loads, *with, psi0)?));
    }
    let duration = shortest(loads, &factors)?;
    Ok(Combination { name: recipe.name.clone(), kind, factors, creep: Vec::new(), duration })
}

fn characteristic(loads: &Loads, recipe: &Recipe) -> Result<Combination, ActionsFault> {
    let mut factors = vec![(CaseKind::Permanent, 1.0)];
    let mut creep = vec![(CaseKind::Permanent, 1.0)];
    if let Some(leading) = recipe.leading {
        factors.push((leading, 1.0));
        creep.push((leading, psi(loads, leading, psi2)?));
    }
    for with in &recipe.with {
        factors.push((*with, psi(loads, *with, psi0)?));
        creep.push((*with, psi(loads, *with, psi2)?));
    }
    let duration = shortest(loads, &factors)?;
    let kind = CombinationKind::Characteristic;
    Ok(Combination { name: recipe.name.clone(), kind, factors, creep, duration })
}

/// Permanent load and the share psi2 of every variable load that comes first in some recipe; of several of one family
/// the first.
fn quasi_permanent(loads: &Loads) -> Result<Combination, ActionsFault> {
    let mut factors = vec![(CaseKind::Permanent, 1.0)];
    for leading in loads.together.iter().filter_map(|recipe| recipe.leading) {
        let share = psi(loads, leading, psi2)?;
        if share != 0.0 && factors.iter().all(|(kind, _)| kind.family() != leading.family()) {
            factors.push((leading, share));
        }
    }
    let duration = shortest(loads, &factors)?;
    let (name, kind) = ("what is there most of the time".to_owned(), CombinationKind::QuasiPermanent);
    Ok(Combination { name, kind, factors, creep: Vec::new(), duration })
}
