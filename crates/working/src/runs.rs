//! Plan runs of rafters, hips and valleys from the sizes of the plan.

use crate::chain::{Chain, Shown, Unit};
use crate::ground::{Ground, Spine, flat};
use crate::question::{Figure, Question};
use crate::slopes::{self, Slope, Start};
use geometry::{Angle, DVec2};

/// A run that was worked out must come this near to where the point lies, mm in plan.
const AGREES: f64 = 0.04;

/// The pitch of a slope, taken over.
pub(crate) fn pitch(chain: &mut Chain, slope: &Slope) -> Shown {
    let shown = chain.given(format!("Pitch of {}", slope.name()), slope.pitch, Unit::Degrees);
    if !matches!(slope.start, Start::Break(..)) {
        chain.ask(&Question::of(Figure::WallPitch, &slope.letter));
    }
    shown
}

/// Plan angle between the line where two slopes meet and the plate of the first.
pub(crate) fn delta(chain: &mut Chain, a: &Slope, b: &Slope) -> Option<Shown> {
    let corner = slopes::corner(a, b, a.base)?;
    let kappa =
        chain.given(format!("Plan angle between plates {} and {}", a.letter, b.letter), corner.kappa, Unit::Degrees);
    let words = format!("Plan angle of the line where {} and {} meet, from plate {}", a.name(), b.name(), a.letter);
    if (a.pitch - b.pitch).abs() < 1e-9 {
        // Equal pitches: it halves the angle.
        return Some(chain.angle(words, format!("{kappa} ÷ 2")));
    }
    let (pa, pb) = (pitch(chain, a), pitch(chain, b));
    let past = if corner.delta > 90.0 { "180° + " } else { "" };
    Some(chain.angle(words, format!("{past}atan(sin {kappa} × tan {pb} ÷ (tan {pa} + cos {kappa} × tan {pb}))")))
}

/// Plan distance up slope `a`, from the line that it starts from, to a point
/// `p` of the roof where it meets another slope, a wall or its own upper slope.
pub(crate) fn up_to(chain: &mut Chain, ground: &Ground<'_>, a: &Slope, p: [f64; 3]) -> Option<Shown> {
    let want = a.inside(flat(p));
    let tries = ground.others_at(p, &[a]);
    for b in tries {
        let mut trial = chain.clone();
        if let Some(run) = up_to_slope(&mut trial, a, b, flat(p)).filter(|r| (r.value - want).abs() < AGREES) {
            *chain = trial;
            return Some(run);
        }
    }
    let mut trial = chain.clone();
    let run = up_to_wall(&mut trial, ground, a, flat(p)).filter(|r| (r.value - want).abs() < AGREES)?;
    *chain = trial;
    Some(run)
}

fn up_to_slope(chain: &mut Chain, a: &Slope, b: &Slope, at: DVec2) -> Option<Shown> {
    if let (true, Start::Break(height, _)) = (a.letter == b.letter, b.start) {
        let (pa, height) =
            (pitch(chain, a), chain.given("Height at which the pitch changes", height, Unit::Millimetres));
        return Some(chain.length("Run up to the change of pitch", format!("{height} ÷ tan {pa}")));
    }
    if a.faces(b) {
        return Some(up_to_ridge(chain, a, b));
    }
    let corner = slopes::corner(a, b, a.base)?;
    let delta = delta(chain, a, b)?;
    let out = a.inward.perp().dot(at - corner.at).abs();
    let from = if (b.base - a.base).abs() < 1e-9 {
        format!("where the lines of plates {} and {} cross", a.letter, b.letter)
    } else {
        format!("where the slope of {} comes to the level of {}", b.name(), a.line_name())
    };
    let out = chain.given(format!("Along {}, from {from}", a.line_name()), out, Unit::Millimetres);
    let sum = if delta.value > 90.0 { format!("−{out} × tan {delta}") } else { format!("{out} × tan {delta}") };
    Some(chain.length(format!("Run up the slope to where {} and {} meet", a.name(), b.name()), sum))
}

/// Run to the ridge between slopes that face one another.
fn up_to_ridge(chain: &mut Chain, a: &Slope, b: &Slope) -> Shown {
    let span = chain.given(
        format!("In plan between {} and {}", a.line_name(), b.line_name()),
        -a.offset - b.offset,
        Unit::Millimetres,
    );
    let level = (a.base - b.base).abs() < 1e-9;
    if level && (a.pitch - b.pitch).abs() < 1e-9 {
        return chain.length("Run to the centre of the ridge, half of it", format!("{span} ÷ 2"));
    }
    let (pa, pb) = (pitch(chain, a), pitch(chain, b));
    let rise = if level {
        format!("{span} × tan {pb}")
    } else {
        let higher = chain.given(
            format!("How much higher {} lies than {}", b.line_name(), a.line_name()),
            b.base - a.base,
            Unit::Millimetres,
        );
        format!("({higher} + {span} × tan {pb})")
    };
    chain.length(
        "Run to the centre of the ridge, where both slopes are equally high",
        format!("{rise} ÷ (tan {pa} + tan {pb})"),
    )
}

/// Run to a wall that is carried up and lies along the slope's own plate.
fn up_to_wall(chain: &mut Chain, ground: &Ground<'_>, a: &Slope, at: DVec2) -> Option<Shown> {
    let inside = a.inside(at);
    let wall = ground.solution.plan.walls.iter().find(|w| {
        let (from, to) = (DVec2::from_array(w.from), DVec2::from_array(w.to));
        let along = (to - from).normalize_or_zero();
        along.dot(a.inward).abs() < 1e-6 && (a.inside(from) - inside).abs() < 0.5
    });
    if let Some(wall) = wall {
        let run = a.inside(DVec2::from_array(wall.from));
        let words = format!("Run: in plan from {} to wall {}", a.line_name(), wall.id);
        return Some(chain.given(words, run, Unit::Millimetres));
    }
    // The slope stops at a height that the job gives: under a gablet.
    let height = ground.job.walls.iter().find(|w| w.letter == a.letter)?.gablet?;
    let (pa, height) = (pitch(chain, a), chain.given("Height at which the slope stops", height, Unit::Millimetres));
    Some(chain.length("Run up to there", format!("{height} ÷ tan {pa}")))
}

/// Plan distance along a hip or valley from its corner to a point `p` of it.
pub(crate) fn along(chain: &mut Chain, ground: &Ground<'_>, spine: &Spine<'_>, p: [f64; 3]) -> Option<Shown> {
    let want = spine.corner.dir.dot(flat(p) - spine.corner.at);
    for (a, b) in [(spine.a, spine.b), (spine.b, spine.a)] {
        for c in ground.others_at(p, &[a, b]) {
            if !(a.faces(c) || a.letter == c.letter) {
                continue;
            }
            let mut trial = chain.clone();
            if let Some(run) = by_run(&mut trial, ground, spine, (a, b), p).filter(|r| (r.value - want).abs() < AGREES)
            {
                *chain = trial;
                return Some(run);
            }
        }
    }
    for c in ground.others_at(p, &[spine.a, spine.b]) {
        let mut trial = chain.clone();
        if let Some(run) = by_falling(&mut trial, spine, c).filter(|r| (r.value - want).abs() < AGREES) {
            *chain = trial;
            return Some(run);
        }
    }
    let mut trial = chain.clone();
    let run = by_run(&mut trial, ground, spine, (spine.a, spine.b), p).filter(|r| (r.value - want).abs() < AGREES)?;
    *chain = trial;
    Some(run)
}

/// From the run of the common rafter that ends at the same point.
fn by_run(
    chain: &mut Chain,
    ground: &Ground<'_>,
    spine: &Spine<'_>,
    (a, b): (&Slope, &Slope),
    p: [f64; 3],
) -> Option<Shown> {
    let mut run = up_to(chain, ground, a, p)?;
    let start = a.inside(spine.corner.at);
    if start.abs() > AGREES {
        let (pa, start) = (
            pitch(chain, a),
            chain.given(
                format!("Height of {} over {}", b.line_name(), a.line_name()),
                spine.corner.level - a.base,
                Unit::Millimetres,
            ),
        );
        run = chain.length("Run from the level where the line starts", format!("{run} − {start} ÷ tan {pa}"));
    }
    let delta = delta(chain, a, b)?;
    Some(chain.length("Plan length along the line, from the corner", format!("{run} ÷ sin {delta}")))
}

/// Where a third slope comes down on the line: how high it passes over the
/// corner, over how fast the two approach.
fn by_falling(chain: &mut Chain, spine: &Spine<'_>, c: &Slope) -> Option<Shown> {
    let gamma = rise_angle(chain, spine)?;
    let over = c.inside(spine.corner.at);
    let pc = pitch(chain, c);
    let over = chain.given(format!("In plan from {} to the corner", c.line_name()), over, Unit::Millimetres);
    let rise = format!("{over} × tan {pc}");
    let higher = c.base - spine.corner.level;
    let rise = if higher.abs() < AGREES {
        rise
    } else {
        let words = format!("Height of {} over the corner", c.line_name());
        format!("{} + {rise}", chain.given(words, higher, Unit::Millimetres))
    };
    let above = chain.length(format!("The slope of {} passes over the corner at", c.name()), rise);
    let turn = Angle::from_cos(spine.corner.dir.dot(c.inward)).to_deg();
    let turn = chain.given(
        format!("Plan angle between the line and straight up the slope of {}", c.name()),
        turn,
        Unit::Degrees,
    );
    let closing = chain.sum(
        "They come nearer by, for each mm along in plan",
        format!("tan {gamma} − cos {turn} × tan {pc}"),
        Unit::Ratio,
    );
    Some(chain.length("Plan length along the line to where they meet", format!("{above} ÷ {closing}")))
}

/// Slope of a hip or valley from level.
pub(crate) fn rise_angle(chain: &mut Chain, spine: &Spine<'_>) -> Option<Shown> {
    let delta = delta(chain, spine.a, spine.b)?;
    let pa = pitch(chain, spine.a);
    Some(chain.angle("Pitch of the line where they meet", format!("atan(sin {delta} × tan {pa})")))
}
