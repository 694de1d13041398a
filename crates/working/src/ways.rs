//! Plan angles between timbers and walls, from the angles of the plan.

use crate::chain::{Chain, Shown, Unit};
use crate::ground::{Ground, Lies, flat, plan_angle, plan_dir};
use crate::runs;
use crate::slopes::Slope;
use geometry::{Angle, DVec2};
use roof::solution::{Member, WallOut};

/// Angles that were worked out must come this near to those of the timber, degrees.
const AGREES: f64 = 0.002;

/// Two plan directions are square or parallel within this, degrees.
const TRUE: f64 = 1e-4;

/// Something with a direction in plan.
#[derive(Clone, Copy)]
pub(crate) enum Way<'a> {
    Timber(&'a Member),
    Wall(&'a WallOut),
}

/// How a direction stands to the plate of a wall.
enum Stands<'a> {
    Along,
    Square,
    /// On the line where this slope meets the other.
    Off(&'a Slope, &'a Slope),
}

impl Way<'_> {
    pub(crate) fn dir(&self) -> DVec2 {
        match self {
            Self::Timber(m) => plan_dir(&m.axis),
            Self::Wall(w) => wall_dir(w),
        }
    }

    fn name(&self) -> String {
        match self {
            Self::Timber(m) => format!("{} {}", m.kind.name(), m.mark),
            Self::Wall(w) => format!("plate {}", w.id),
        }
    }
}

fn wall_dir(w: &WallOut) -> DVec2 {
    (DVec2::from_array(w.to) - DVec2::from_array(w.from)).normalize_or_zero()
}

/// Every way of saying how it stands to a plate.
fn stands<'a>(ground: &'a Ground<'_>, way: Way<'a>) -> Vec<(&'a WallOut, Stands<'a>)> {
    let walls = &ground.solution.plan.walls;
    let wall = |s: &Slope| walls.iter().find(|w| w.id == s.letter);
    match way {
        Way::Wall(w) => vec![(w, Stands::Along)],
        Way::Timber(m) => match ground.lies(m) {
            Lies::In(a) => wall(a).map(|w| (w, Stands::Square)).into_iter().collect(),
            Lies::Between(spine) => [(spine.a, spine.b), (spine.b, spine.a)]
                .into_iter()
                .filter_map(|(a, b)| wall(a).map(|w| (w, Stands::Off(a, b))))
                .collect(),
            Lies::Free => {
                let dir = plan_dir(&m.axis);
                let to = |w: &WallOut| plan_angle(dir, wall_dir(w));
                let along = walls.iter().filter(|w| to(w) < TRUE).map(|w| (w, Stands::Along));
                let square = walls.iter().filter(|w| to(w) > 90.0 - TRUE).map(|w| (w, Stands::Square));
                along.chain(square).collect()
            }
        },
    }
}

/// Plan angle between two directions, 0 to 90°.
pub(crate) fn between(chain: &mut Chain, ground: &Ground<'_>, a: Way<'_>, b: Way<'_>) -> Shown {
    let want = plan_angle(a.dir(), b.dir());
    let words = format!("Plan angle between {} and {}", a.name(), b.name());
    if want > 90.0 - TRUE {
        return chain.given(format!("{words}: square"), 90.0, Unit::Degrees);
    }
    let (sa, sb) = (stands(ground, a), stands(ground, b));
    let mut pairs: Vec<_> = sa.iter().flat_map(|x| sb.iter().map(move |y| (x, y))).collect();
    // Two that stand to one plate need no angle between plates.
    pairs.sort_by_key(|((wa, _), (wb, _))| wa.id != wb.id);
    for ((wa, x), (wb, y)) in pairs {
        let mut trial = chain.clone();
        if let Some(found) = from_plates(&mut trial, (wa, x), (wb, y), want, &words) {
            *chain = trial;
            return found;
        }
    }
    chain.placed(format!("{words}, as they lie"), want, Unit::Degrees)
}

fn from_plates(
    chain: &mut Chain,
    (wa, a): (&WallOut, &Stands<'_>),
    (wb, b): (&WallOut, &Stands<'_>),
    want: f64,
    words: &str,
) -> Option<Shown> {
    let mut parts: Vec<Shown> = Vec::new();
    for stands in [a, b] {
        match stands {
            Stands::Along => {}
            Stands::Square => parts.push(Shown::new(90.0, Unit::Degrees)),
            Stands::Off(s, t) => parts.push(runs::delta(chain, s, t)?),
        }
    }
    let turn = Angle::from_cos(wall_dir(wa).dot(wall_dir(wb))).to_deg();
    if wa.id != wb.id && turn > TRUE && turn < 180.0 - TRUE {
        // As it was named before, if it was.
        parts.push(chain.given(
            format!("Plan angle between plates {} and {}", wa.id, wb.id),
            180.0 - turn,
            Unit::Degrees,
        ));
    }
    let sum = combined(&parts, want)?;
    Some(if sum.contains(' ') { chain.angle(words, sum) } else { chain.given(words, want, Unit::Degrees) })
}

/// The parts, added and taken from one another and from 180°, so that they come
/// to the angle that is wanted.
fn combined(parts: &[Shown], want: f64) -> Option<String> {
    for turn in [0.0, 180.0, -180.0] {
        for signs in 0..(1_u32 << parts.len()) {
            let plus = |k: usize| signs >> k & 1 == 0;
            let total =
                parts.iter().enumerate().fold(turn, |sum, (k, p)| if plus(k) { sum + p.value } else { sum - p.value });
            if (total - want).abs() > AGREES {
                continue;
            }
            // What is added comes first, so that no sum starts with a minus.
            let mut added: Vec<String> = if turn > 0.0 { vec!["180°".into()] } else { Vec::new() };
            added.extend(parts.iter().enumerate().filter(|(k, _)| plus(*k)).map(|(_, p)| p.to_string()));
            let mut sum = added.join(" + ");
            for (_, p) in parts.iter().enumerate().filter(|(k, _)| !plus(*k)) {
                sum = format!("{sum} − {p}");
            }
            if turn < 0.0 {
                sum.push_str(" − 180°");
            }
            return (!added.is_empty()).then_some(sum);
        }
    }
    None
}

/// Where the centre lines of two timbers cross in plan, as a distance from the
/// foot of the first, mm; `None` if they are parallel.
pub(crate) fn crossing(m: &Member, other: &Member) -> Option<f64> {
    let (u, v) = (plan_dir(&m.axis), plan_dir(&other.axis));
    let turn = u.perp_dot(v);
    (turn.abs() > 1e-6).then(|| (flat(other.axis.from) - flat(m.axis.from)).perp_dot(v) / turn)
}
