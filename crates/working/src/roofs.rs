//! Figures of the roof: heights, pitches and overhangs of walls, the plan's
//! closing, the volume.

use crate::birdsmouth;
use crate::chain::{Basis, Chain, Shown, Unit};
use crate::ground::Ground;
use crate::question::{Figure, Question};
use crate::runs;
use crate::slopes::Slope;
use crate::told::{Told, rule};
use geometry::Angle;
use job::{Fascia, Wall};
use roof::solution::{MeasurementKind, MemberKind};

/// Heights agree within this, mm.
const AGREES: f64 = 0.5;

/// The working of a figure of the roof.
pub(crate) fn tell(ground: &Ground<'_>, q: &Question) -> Option<Told> {
    let mut chain = Chain::new();
    match q.figure {
        Figure::Rise => {
            let top = ground.solution.totals.rise_mm;
            let points = ground.solution.faces.iter().flat_map(|f| &f.outline);
            let highest = points.copied().find(|p| (p[2] - top).abs() < AGREES)?;
            height(&mut chain, ground, highest)
        }
        Figure::Ridge => height(&mut chain, ground, ground.member(&q.of)?.axis.from),
        Figure::WallPitch => wall_pitch(ground, wall(ground, &q.of)?),
        Figure::Overhang => overhang(ground, wall(ground, &q.of)?),
        Figure::Closing => Some(closing(ground)),
        Figure::Upstand => {
            birdsmouth::roof_upstand(&mut chain, ground);
            Some(
                Told::new(
                    chain,
                    "The rafter of the flattest pitch gets the birdsmouth that the job asks for. What it leaves above \
                     the plate, measured plumb, all rafters keep, so that the covering meets over hips and valleys.",
                    rule::SEAT,
                )
                .by_hand("Stand a rule plumb on the plate at its outer arris: the back of the rafter cuts it here."),
            )
        }
        Figure::Volume => Some(volume(ground)),
        _ => None,
    }
}

fn wall<'a>(ground: &Ground<'a>, letter: &str) -> Option<&'a Wall> {
    ground.job.walls.iter().find(|w| w.letter == letter)
}

/// Height of a point of the roof surface: from the slope that leads to it.
fn height(chain: &mut Chain, ground: &Ground<'_>, p: [f64; 3]) -> Option<Told> {
    for slope in ground.others_at(p, &[]) {
        let mut trial = Chain::new();
        if climb(&mut trial, ground, slope, p).is_some_and(|h| (h.value - p[2]).abs() < AGREES) {
            *chain = trial;
            return Some(
                Told::new(
                    chain.clone(),
                    "Going in from the plate the slope rises by the tangent of its pitch for each mm of run.",
                    rule::COMMON,
                )
                .by_hand("Hold the square at the pitch and count its rise as often as its run goes into the run of the roof."),
            );
        }
    }
    None
}

fn climb(chain: &mut Chain, ground: &Ground<'_>, slope: &Slope, p: [f64; 3]) -> Option<Shown> {
    let run = runs::up_to(chain, ground, slope, p)?;
    let pitch = runs::pitch(chain, slope);
    let rise = chain.length("The slope rises by", format!("{run} × tan {pitch}"));
    if slope.base == 0.0 {
        return Some(rise);
    }
    let base = chain.given(format!("Height of {}", slope.line_name()), slope.base, Unit::Millimetres);
    Some(chain.length("Height", format!("{base} + {rise}")))
}

fn wall_pitch(ground: &Ground<'_>, wall: &Wall) -> Option<Told> {
    if wall.gable {
        return None;
    }
    let own = wall.pitch_deg.to_bits() != ground.job.pitch_deg.to_bits();
    let mut chain = Chain::new();
    let words = if own { "Pitch that the job gives this wall" } else { "Pitch that the job gives the roof" };
    let given = chain.given(words, wall.pitch_deg, Unit::Degrees);
    chain.sum("It rises, for each mm of run", format!("tan {given}"), Unit::Ratio);
    chain.angle("The pitch", format!("{given}"));
    let idea = if own {
        "This wall has a pitch of its own in the job."
    } else {
        "The job gives one pitch for the roof, and this wall says nothing else."
    };
    Some(
        Told::new(chain, idea, "given in the job")
            .by_hand("Level and bevel: set the bevel between the level and the slope."),
    )
}

fn overhang(ground: &Ground<'_>, wall: &Wall) -> Option<Told> {
    let eaves = &ground.job.eaves;
    let mut chain = Chain::new();
    if wall.gable || wall.half_hip.is_some() {
        chain.given("Overhang of the verges, given in the job", ground.job.verge.overhang, Unit::Millimetres);
        return Some(Told::new(
            chain,
            "Above a gable the roof runs out over the wall by the verge's overhang.",
            rule::PRACTICE,
        ));
    }
    if eaves.fascia == Fascia::Fixed {
        chain.given(
            "Overhang of this wall, given in the job",
            wall.overhang.unwrap_or(eaves.overhang),
            Unit::Millimetres,
        );
        return Some(Told::new(chain, "The job gives each wall its overhang, whatever its pitch.", rule::PRACTICE));
    }
    let asked = chain.given("Overhang that the job asks for at the main pitch", eaves.overhang, Unit::Millimetres);
    let main = chain.given("Main pitch", ground.job.pitch_deg, Unit::Degrees);
    let own = chain.given(format!("Pitch of wall {}", wall.letter), wall.pitch_deg, Unit::Degrees);
    let mut fall = chain.length("The fascia hangs below the plate by", format!("{asked} × tan {main}"));
    let want = ground.solution.plan.walls.iter().find(|w| w.id == wall.letter)?.overhang_mm;
    let higher = want * Angle::deg(wall.pitch_deg).tan() - eaves.overhang * Angle::deg(ground.job.pitch_deg).tan();
    if higher.abs() > 0.01 {
        let higher = chain.given(
            "This plate lies higher than the lowest on the same line of fascia by",
            higher,
            Unit::Millimetres,
        );
        fall = chain.length("so below this plate by", format!("{fall} + {higher}"));
    }
    chain.length("At this wall's pitch the slope falls as far over", format!("{fall} ÷ tan {own}"));
    Some(
        Told::new(
            chain,
            "One level line of fascia runs all round. A steeper slope falls to that line over a shorter overhang.",
            "from first principles: overhang × tan pitch is the same for every wall",
        )
        .by_hand("Snap a level line where the main slope's fascia comes and extend each slope down to it."),
    )
}

fn closing(ground: &Ground<'_>) -> Told {
    let mut chain = Chain::new();
    let survey = ground.solution.plan.survey.as_ref();
    let worst = survey.and_then(|s| {
        let worst = s.worst.as_ref()?;
        let m = s.measurements.get(worst.measurement as usize)?;
        (m.kind != MeasurementKind::Turn).then_some((m, worst))
    });
    match (survey, worst) {
        (Some(_), Some((m, worst))) => {
            let read = chain.given(format!("Read on the tape at {}", m.name), m.measured, Unit::Millimetres);
            let others =
                chain.given("What all the other measurements say it is", m.measured - worst.off, Unit::Millimetres);
            let (high, low) = if worst.off >= 0.0 { (read, others) } else { (others, read) };
            chain.length("They differ by", format!("{high} − {low}"));
        }
        (Some(_), None) => {
            chain.read_off(
                "by how much the measurement that disagrees most does so",
                ground.solution.plan.closing_error_mm,
                Unit::Millimetres,
            );
        }
        (None, _) => {
            chain.given("The plan is given by its corners, which always close", 0.0, Unit::Millimetres);
            return Told::new(chain, "Nothing was measured twice: corners close of themselves.", "given in the job")
                .by_hand("Tape both diagonals on the plates and compare them with the plan.");
        }
    }
    Told::new(
        chain,
        "More was measured than is needed to draw the plan, so the measurements check one another. The one that \
         disagrees most with all the others shows how well the plan closes.",
        "from first principles: least squares over all measurements",
    )
    .by_hand("Set the plan out with strings from the other measurements and tape that one again.")
}

fn volume(ground: &Ground<'_>) -> Told {
    let mut chain = Chain::new();
    let mut kinds: Vec<(MemberKind, u32, f64)> = Vec::new();
    for m in &ground.solution.members {
        match kinds.iter_mut().find(|k| k.0 == m.kind) {
            Some(k) => {
                k.1 += 1;
                k.2 += m.volume_m3;
            }
            None => kinds.push((m.kind, 1, m.volume_m3)),
        }
    }
    let mut parts = Vec::new();
    for (kind, count, volume) in kinds {
        let words = format!("{}, {count} in all, net of their cuts", kind.name());
        parts.push(chain.given(words, volume, Unit::CubicMetres).to_string());
    }
    chain.basis = Basis::Solid;
    chain.sum("All timber together", parts.join(" + "), Unit::CubicMetres);
    Told::new(chain, "The volume of every finished timber, added up.", rule::SOLID)
}
