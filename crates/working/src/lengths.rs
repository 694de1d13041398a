//! True lengths, pitches and deductions.

use crate::chain::{Chain, Shown, Unit};
use crate::ground::{Ground, Lies, flat, plan_dir, plan_run};
use crate::question::{Figure, Question};
use crate::runs;
use crate::sawn::{self, Follows};
use crate::told::{Told, rule};
use crate::ways;
use geometry::DVec2;
use roof::solution::{Cut, CutPlace, Deduction, Member, MemberKind};

/// A run must agree with where the ends of the timber lie, mm.
const AGREES: f64 = 0.04;

/// A timber that stands this near to upright has no run, mm.
const NO_RUN: f64 = 0.005;

/// A centre line passes through an end of another within this, mm.
const THROUGH: f64 = 0.02;

/// Plan run of a timber's pitch line, from the plan if it can be.
pub(crate) fn run(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Shown {
    let want = plan_run(&m.axis);
    let mut trial = chain.clone();
    let found = match ground.lies(m) {
        Lies::In(slope) => between(&mut trial, slope.inside(flat(m.axis.from)), |c, end| {
            runs::up_to(c, ground, slope, if end { m.axis.to } else { m.axis.from })
        }),
        Lies::Between(spine) => {
            let start = spine.corner.dir.dot(flat(m.axis.from) - spine.corner.at);
            between(&mut trial, start, |c, end| {
                runs::along(c, ground, &spine, if end { m.axis.to } else { m.axis.from })
            })
        }
        Lies::Free => wall_plate(&mut trial, ground, m),
    };
    if let Some(run) = found.filter(|r| (r.value - want).abs() < AGREES) {
        *chain = trial;
        return run;
    }
    from_ends(chain, m)
}

/// The difference of two distances from the start of a line, the first of which
/// is often none.
fn between(chain: &mut Chain, start: f64, mut to: impl FnMut(&mut Chain, bool) -> Option<Shown>) -> Option<Shown> {
    let foot = if start.abs() < AGREES { None } else { Some(to(chain, false)?) };
    let head = to(chain, true)?;
    Some(match foot {
        None => head,
        Some(foot) => chain.length("Run of this timber: from its foot to its head", format!("{head} − {foot}")),
    })
}

/// A wall plate that is not spliced is as long as its wall.
fn wall_plate(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Option<Shown> {
    let wall = ground.solution.plan.walls.iter().find(|w| Some(&w.id) == m.wall.as_ref())?;
    if m.kind != MemberKind::WallPlate {
        return None;
    }
    let side = DVec2::from_array(wall.to) - DVec2::from_array(wall.from);
    let east = chain.given(format!("Wall {} runs east or west by", wall.id), side.x.abs(), Unit::Millimetres);
    let north = chain.given("and north or south by", side.y.abs(), Unit::Millimetres);
    Some(chain.length("Length of the plate line", format!("√({east}² + {north}²)")))
}

/// Plan run from where the ends lie on the plan.
fn from_ends(chain: &mut Chain, m: &Member) -> Shown {
    let side = flat(m.axis.to) - flat(m.axis.from);
    let east = chain.placed("Its ends lie apart, east or west by", side.x.abs(), Unit::Millimetres);
    let north = chain.placed("and north or south by", side.y.abs(), Unit::Millimetres);
    chain.length("Run in plan", format!("√({east}² + {north}²)"))
}

/// Slope of a timber from level.
pub(crate) fn pitch(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Shown {
    match ground.lies(m) {
        Lies::In(slope) => runs::pitch(chain, slope),
        Lies::Between(spine) => {
            let mut trial = chain.clone();
            if let Some(angle) = runs::rise_angle(&mut trial, &spine) {
                *chain = trial;
                return angle;
            }
            pitch_from_ends(chain, m)
        }
        Lies::Free => pitch_from_ends(chain, m),
    }
}

fn pitch_from_ends(chain: &mut Chain, m: &Member) -> Shown {
    let rise = m.axis.to[2] - m.axis.from[2];
    if rise.abs() < NO_RUN {
        return chain.given("Pitch: it lies level", 0.0, Unit::Degrees);
    }
    if plan_run(&m.axis) < NO_RUN {
        return chain.given("Pitch: it stands upright", 90.0_f64.copysign(rise), Unit::Degrees);
    }
    let run = from_ends(chain, m);
    let rise = chain.placed("Its head lies higher than its foot by", rise, Unit::Millimetres);
    chain.angle("Pitch", format!("atan({rise} ÷ {run})"))
}

/// True length on the pitch line.
pub(crate) fn true_length(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Shown {
    let run = run(chain, ground, m);
    match ground.lies(m) {
        Lies::In(slope) => {
            let pitch = runs::pitch(chain, slope);
            chain.length("True length, on the pitch line", format!("{run} ÷ cos {pitch}"))
        }
        Lies::Between(_) => {
            let pitch = pitch(chain, ground, m);
            let rise = chain.length("It rises by", format!("{run} × tan {pitch}"));
            chain.length("True length, on the pitch line", format!("√({run}² + {rise}²)"))
        }
        Lies::Free => {
            let rise = m.axis.to[2] - m.axis.from[2];
            if rise.abs() < NO_RUN {
                return chain.length("True length: it lies level, so its run", format!("{run}"));
            }
            let rise = chain.placed("Its head lies higher than its foot by", rise, Unit::Millimetres);
            chain.length("True length", format!("√({run}² + {rise}²)"))
        }
    }
}

/// The working of a true length.
pub(crate) fn tell_true_length(ground: &Ground<'_>, m: &Member) -> Told {
    let mut chain = Chain::new();
    true_length(&mut chain, ground, m);
    match ground.lies(m) {
        Lies::In(_) => Told::new(
            chain,
            "Seen from the side, run, rise and rafter make a square-cornered triangle. \
             The rafter is its long side: the run divided by the cosine of the pitch.",
            rule::COMMON,
        )
        .by_hand(
            "Step the run off with the square held at the pitch, 250 mm of run to each step, along the pitch line; \
             or draw the triangle at 1 to 10 on a sheet of plywood and measure its long side.",
        ),
        Lies::Between(_) => Told::new(
            chain,
            "A hip or valley runs on the slant in plan, so its own run is longer than that of a common rafter, \
             while it rises just as high. With its run and rise its length is the long side of their triangle.",
            rule::HIP,
        )
        .by_hand(
            "Snap the line on the floor at full size or at 1 to 10 to find its run, set up the rise square to it \
             at the upper end, and measure across.",
        ),
        Lies::Free if m.kind == MemberKind::WallPlate => {
            Told::new(chain, "A plate is measured along the plate line, from corner to corner of the plan.", rule::ENDS)
                .by_hand("Hook the tape on the corner of the plates and pull it along the outer top arris.")
        }
        Lies::Free => Told::new(
            chain,
            "Its centre line runs from one end to the other: how far they lie apart in plan and how much higher \
             one lies make the two short sides of a square-cornered triangle.",
            rule::ENDS,
        ),
    }
}

/// The working of a pitch.
pub(crate) fn tell_pitch(ground: &Ground<'_>, m: &Member) -> Told {
    let mut chain = Chain::new();
    pitch(&mut chain, ground, m);
    match ground.lies(m) {
        Lies::In(_) => {
            Told::new(chain, "A rafter that stands square to its plate has the pitch of its slope.", rule::COMMON)
                .by_hand("Lay a level on the rafter's back and set the bevel between the two.")
        }
        Lies::Between(_) => Told::new(
            chain,
            "A hip or valley rises as high as the common rafter beside it, but over a longer run, so it is flatter.",
            rule::HIP,
        )
        .by_hand(
            "On the square hold the common rafter's run on the slant, for a square corner its diagonal \
             (353.5 to the common's 250), and the same rise.",
        ),
        Lies::Free => Told::new(chain, "Its slope is its rise over its run, from where its ends lie.", rule::ENDS),
    }
}

/// The cut at an end of a timber that takes this much off its pitch line, with
/// what it follows.
pub(crate) fn cut_of_deduction<'a, 'g>(
    ground: &Ground<'g>,
    m: &'a Member,
    less: &Deduction,
) -> Option<(&'a Cut, sawn::Line, Follows<'g>)> {
    let run = plan_run(&m.axis);
    m.cuts.iter().find_map(|cut| {
        let line = sawn::line(m, cut)?;
        let short = if less.at == CutPlace::Head { run - line.centre } else { line.centre };
        if cut.at != less.at || (short - less.mm).abs() > THROUGH {
            return None;
        }
        Some((cut, line, sawn::follows(ground, m, cut, &line)?))
    })
}

/// A deduction, level, square off the plumb line.
pub(crate) fn less_level(chain: &mut Chain, ground: &Ground<'_>, m: &Member, less: &Deduction) -> Shown {
    let mut trial = chain.clone();
    if let Some(found) = by_what_it_meets(&mut trial, ground, m, less) {
        *chain = trial;
        return found;
    }
    let words = if less.mm < 0.0 {
        "how far the timber runs on past the end of its line"
    } else {
        "how far short of the end of its line the timber stops, level"
    };
    chain.read_off(words, less.mm, Unit::Millimetres)
}

fn by_what_it_meets(chain: &mut Chain, ground: &Ground<'_>, m: &Member, less: &Deduction) -> Option<Shown> {
    let at_head = less.at == CutPlace::Head;
    let (_, _, follows) = cut_of_deduction(ground, m, less)?;
    let found = match &follows {
        Follows::Side(other, _) => {
            let end = if at_head { plan_run(&m.axis) } else { 0.0 };
            let crossing = ways::crossing(m, other)?;
            if (crossing - end).abs() > THROUGH {
                return None;
            }
            sawn::short_of(chain, ground, m, &follows)?
        }
        Follows::End(other) => runs_on(chain, ground, m, other, less.mm)?,
        Follows::Square | Follows::Fascia(_) if less.mm < 0.0 => over_verge(chain, ground, m, less)?,
        _ => return None,
    };
    ((found.value - less.mm).abs() < AGREES).then_some(found)
}

/// A ridge runs on past its joint so that what is nailed to its sides bears
/// fully: by half the thickness of a common rafter.
fn runs_on(chain: &mut Chain, ground: &Ground<'_>, m: &Member, other: &Member, by: f64) -> Option<Shown> {
    let rafter = ground.job.timber.rafter.size.thickness;
    if other.kind != MemberKind::RidgeBoard || (by - rafter / 2.0).abs() > AGREES || m.kind == MemberKind::RidgeBoard {
        return None;
    }
    let rafter =
        chain.given("Thickness of the last common rafters, nailed to the ridge's sides", rafter, Unit::Millimetres);
    Some(chain.length("The ridge runs on past its end by half of it", format!("{rafter} ÷ 2")))
}

/// A ridge that runs out over a gable carries the verge rafters.
fn over_verge(chain: &mut Chain, ground: &Ground<'_>, m: &Member, less: &Deduction) -> Option<Shown> {
    let rafter = ground.job.timber.rafter.size.thickness;
    if (less.mm + rafter / 2.0).abs() < AGREES {
        let rafter = chain.given("Thickness of the rafters that bear on its end", rafter, Unit::Millimetres);
        return Some(chain.length("It runs on by half of it, added: so below nothing", format!("−{rafter} ÷ 2")));
    }
    let end = if less.at == CutPlace::Head { m.axis.to } else { m.axis.from };
    let dir = plan_dir(&m.axis);
    let wall = ground.solution.plan.walls.iter().find(|w| {
        let from = DVec2::from_array(w.from);
        let inward = (DVec2::from_array(w.to) - from).normalize_or_zero().perp();
        inward.perp_dot(dir).abs() < 1e-6 && inward.dot(flat(end) - from).abs() < THROUGH
    })?;
    if (less.mm + wall.overhang_mm).abs() < AGREES {
        let out =
            chain.given(format!("Overhang of the verge at wall {}", wall.id), wall.overhang_mm, Unit::Millimetres);
        chain.ask(&Question::of(Figure::Overhang, &wall.id));
        return Some(chain.length("It runs on by that, added: so below nothing", format!("−{out}")));
    }
    None
}

/// The working of a deduction.
pub(crate) fn tell_less(ground: &Ground<'_>, m: &Member, less: &Deduction) -> Told {
    let mut chain = Chain::new();
    less_level(&mut chain, ground, m, less);
    Told::new(
        chain,
        "The true length runs to the centre of what the timber meets. The timber stops at its side, \
         so half its thickness comes off, measured level along the timber: on the slant that is more.",
        rule::DEDUCT,
    )
    .by_hand(
        "Draw the plumb line at the true length, measure the deduction square off it and draw a second plumb line \
         there: that is where the saw goes.",
    )
}
