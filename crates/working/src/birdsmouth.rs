//! Seat, heel, depth and upstand of a birdsmouth.

use crate::chain::{Chain, Shown, Unit};
use crate::ground::{Ground, Lies, flat, plan_dir};
use crate::lengths;
use crate::question::{Figure, Question};
use crate::sawn;
use crate::told::{Told, rule};
use crate::ways::{self, Way};
use roof::solution::{Member, MemberKind};

/// A heel nearer to its corner than this is at it, mm.
const AT_CORNER: f64 = 0.005;

/// Plumb height of the rafters' backs over the pitch planes.
pub(crate) fn roof_upstand(chain: &mut Chain, ground: &Ground<'_>) -> Shown {
    let rafter = &ground.job.timber.rafter;
    let walls = || ground.job.walls.iter().filter(|w| !w.gable);
    let flattest = walls().min_by(|a, b| a.pitch_deg.total_cmp(&b.pitch_deg));
    let depth = chain.given("Depth of the rafters", rafter.size.depth, Unit::Millimetres);
    let notch =
        chain.given("Birdsmouth that the job asks for, square to the rafter", rafter.birdsmouth, Unit::Millimetres);
    let letter = flattest.map_or("", |w| w.letter.as_str());
    let flattest = chain.given(
        format!("Flattest pitch, wall {letter}: it gets that birdsmouth"),
        flattest.map_or(0.0, |w| w.pitch_deg),
        Unit::Degrees,
    );
    chain.length(
        "Left above the plate, plumb, the same for all rafters",
        format!("({depth} − {notch}) ÷ cos {flattest}"),
    )
}

/// How far below the top of the timber the roof's common upstand is left: the drop.
pub(crate) fn drop(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Option<Shown> {
    m.drop_mm?;
    let Lies::Between(spine) = ground.lies(m) else { return None };
    if m.kind == MemberKind::ValleyRafter {
        return Some(chain.length("A valley's arrises lie below the slopes as it is: it is not lowered", "0"));
    }
    let thick = chain.given("Thickness of the hip", m.size.thickness_mm, Unit::Millimetres);
    let half = chain.length("Half of it", format!("{thick} ÷ 2"));
    let gamma = lengths::pitch(chain, ground, m);
    let delta = [(spine.a, spine.b), (spine.b, spine.a)]
        .into_iter()
        .filter_map(|(a, b)| crate::runs::delta(chain, a, b))
        .min_by(|a, b| a.value.total_cmp(&b.value))?;
    Some(
        chain.length(
            "Each slope has fallen by this where the arris lies",
            format!("{half} × tan {gamma} ÷ tan {delta}"),
        ),
    )
}

/// Plumb height of a timber's top over its pitch line, at mid thickness.
pub(crate) fn upstand(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Shown {
    let common = roof_upstand(chain, ground);
    chain.ask(&Question::roof(Figure::Upstand));
    let mut trial = chain.clone();
    match drop(&mut trial, ground, m).filter(|d| d.value > 0.0) {
        Some(drop) => {
            *chain = trial;
            chain.length("The hip is lowered, so there is left", format!("{common} − {drop}"))
        }
        None => common,
    }
}

/// Depth of the notch, square to the timber.
fn notch(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Shown {
    let upstand = upstand(chain, ground, m);
    let pitch = lengths::pitch(chain, ground, m);
    let depth = chain.given("Depth of the timber", m.size.depth_mm, Unit::Millimetres);
    chain.length(
        "Left over at the notch, so cut out, square to the timber",
        format!("{depth} − {upstand} × cos {pitch}"),
    )
}

/// How far outside its plate corner the heel stands, level along the timber.
pub(crate) fn heel_back(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Option<Shown> {
    let cut = m.cuts.iter().find(|c| c.name == "heel plumb cut")?;
    let back = -sawn::line(m, cut)?.centre;
    if back.abs() < AT_CORNER {
        return None;
    }
    let dir = plan_dir(&m.axis);
    let foot = flat(m.axis.from);
    // The heel's arrises clear the plates that the timber crosses on the slant.
    for wall in &ground.solution.plan.walls {
        let from = geometry::DVec2::from_array(wall.from);
        let along = (geometry::DVec2::from_array(wall.to) - from).normalize_or_zero();
        let splay = geometry::Angle::deg(crate::ground::plan_angle(dir, along)).tan();
        if along.perp_dot(foot - from).abs() < 1.0 && (m.size.thickness_mm / 2.0 / splay - back).abs() < 0.02 {
            let thick = chain.given("Thickness of the timber", m.size.thickness_mm, Unit::Millimetres);
            let angle = ways::between(chain, ground, Way::Timber(m), Way::Wall(wall));
            return Some(chain.length(
                "The heel stands out so far that both its arrises clear the plate",
                format!("{thick} ÷ 2 ÷ tan {angle}"),
            ));
        }
    }
    Some(chain.read_off("how far outside the corner the heel stands, level", back, Unit::Millimetres))
}

/// Height of the plumb cut.
fn heel(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Shown {
    let notch = notch(chain, ground, m);
    let pitch = lengths::pitch(chain, ground, m);
    let plumb = chain.length("The same plumb, at the corner of the plates", format!("{notch} ÷ cos {pitch}"));
    match heel_back(chain, ground, m) {
        Some(back) => {
            chain.length("The timber hangs lower there, so the plumb cut is", format!("{plumb} + {back} × tan {pitch}"))
        }
        None => plumb,
    }
}

/// The working of one figure of a birdsmouth.
pub(crate) fn tell(ground: &Ground<'_>, m: &Member, figure: Figure) -> Option<Told> {
    m.birdsmouth?;
    let mut chain = Chain::new();
    let (idea, hand) = match figure {
        Figure::Seat => {
            let heel = heel(&mut chain, ground, m);
            let pitch = lengths::pitch(&mut chain, ground, m);
            chain.length("Length of the level seat", format!("{heel} ÷ tan {pitch}"));
            (
                "The birdsmouth is a small triangle like the one of run and rise: its plumb cut stands to its seat \
                 as the rise of the roof stands to its run.",
                "Mark the plumb line at the plate, measure the plumb cut up it from the underside, \
                 and square a level line across to the underside: that is the seat.",
            )
        }
        Figure::Heel => {
            heel(&mut chain, ground, m);
            (
                "The notch is measured square to the timber; measured plumb it is longer, by the cosine of the pitch.",
                "Mark the plumb line at the plate across the wide side, and measure up it from the underside.",
            )
        }
        Figure::Notch => {
            notch(&mut chain, ground, m);
            (
                "All rafters' backs lie one plumb height above the pitch planes, so that the covering meets over hips. \
                 What the timber is deeper than that height, square to itself, is cut out over the plate.",
                "Gauge the depth that is left down from the top edge: where the gauge line meets the plumb line is the inner corner.",
            )
        }
        _ => {
            upstand(&mut chain, ground, m);
            (
                "What stands above the plate, plumb, comes from the rafter of the flattest pitch with the birdsmouth \
                 that the job asks for. All other rafters keep to that height.",
                "Stand a rule plumb on the plate at its outer arris: the back of the rafter cuts it at this height.",
            )
        }
    };
    Some(Told::new(chain, idea, rule::SEAT).by_hand(hand))
}
