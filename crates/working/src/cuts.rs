//! Angles of cuts: on the wide side, on the edge, and on the saw.

use crate::chain::{Chain, Shown, Unit};
use crate::ground::Ground;
use crate::lengths;
use crate::question::{Figure, Question};
use crate::sawn;
use crate::told::{Told, rule};
use geometry::DVec3;
use roof::solution::{Cut, Member};

/// A cut that points up by more than this (1 − sine) is level.
const LEVEL: f64 = 1e-9;

/// How a cut lies, which decides how its angles are found.
enum Kind {
    Upright(sawn::Line),
    Level,
    Other(DVec3),
}

fn kind(m: &Member, cut: &Cut) -> Option<Kind> {
    if let Some(line) = sawn::line(m, cut) {
        return Some(Kind::Upright(line));
    }
    let (normal, _) = sawn::face(m, cut)?;
    if normal.z.abs() > 1.0 - LEVEL {
        return Some(Kind::Level);
    }
    let axes = [m.bench.along, m.bench.up, m.bench.across].map(DVec3::from_array);
    Some(Kind::Other(DVec3::from_array(axes.map(|a| normal.dot(a).abs()))))
}

/// How steeply a cut's plane leans along the length, the depth and the thickness.
fn leans(chain: &mut Chain, normal: DVec3) -> [Shown; 3] {
    [
        chain.read_off("how far the cut's square line reaches along the timber, of 1", normal.x, Unit::Ratio),
        chain.read_off("how far up its depth", normal.y, Unit::Ratio),
        chain.read_off("how far across its thickness", normal.z, Unit::Ratio),
    ]
}

/// Angle on the wide side from square across.
pub(crate) fn face(ground: &Ground<'_>, m: &Member, number: usize) -> Option<Told> {
    let cut = m.cuts.get(number)?;
    let mut chain = Chain::new();
    Some(match kind(m, cut)? {
        Kind::Upright(_) => {
            let pitch = lengths::pitch(&mut chain, ground, m);
            chain.ask(&Question::of(Figure::Pitch, &m.mark));
            chain.angle("An upright cut leans on the wide side by the pitch", format!("{pitch}"));
            Told::new(
                chain,
                "A plumb cut stands upright when the timber is up. On the wide side it leans from square across \
                 by just as much as the timber leans from level.",
                rule::PLUMB_CUT,
            )
            .by_hand(square_by_hand(cut.square.run, cut.square.rise, "wide side"))
        }
        Kind::Level => {
            let pitch = lengths::pitch(&mut chain, ground, m);
            chain.ask(&Question::of(Figure::Pitch, &m.mark));
            chain.angle("A level cut lies square to the plumb cut", format!("90° − {pitch}"));
            Told::new(chain, "A level cut is square to the plumb cut, so the two angles make up 90°.", rule::PLUMB_CUT)
                .by_hand(square_by_hand(cut.square.run, cut.square.rise, "wide side"))
        }
        Kind::Other(normal) => {
            let [x, y, _] = leans(&mut chain, normal);
            chain.angle("Angle on the wide side", slope(&y, &x));
            Told::new(
                chain,
                "The cut is neither plumb nor level. A line square to it is read in the timber's own length, depth \
                 and thickness; on the wide side only length and depth count.",
                rule::SOLID,
            )
        }
    })
}

/// The angle with this slope; along the timber where there is no run.
fn slope(rise: &Shown, run: &Shown) -> String {
    if run.value > 0.0 { format!("atan({rise} ÷ {run})") } else { "90°".to_owned() }
}

/// Angle on the top edge from square across.
pub(crate) fn edge(ground: &Ground<'_>, m: &Member, number: usize) -> Option<Told> {
    let cut = m.cuts.get(number)?;
    let mut chain = Chain::new();
    Some(match kind(m, cut)? {
        Kind::Upright(line) => {
            on_edge(&mut chain, ground, m, cut, &line)?;
            Told::new(
                chain,
                "In plan the cut crosses the timber at an angle. On the sloping top edge the same cut runs out longer, \
                 because the edge is longer than its plan: its slope is that of the plan over the cosine of the pitch.",
                rule::EDGE,
            )
            .by_hand(square_by_hand(cut.edge_square.run, cut.edge_square.rise, "top edge"))
        }
        Kind::Level => {
            chain.angle("A level cut of a timber that stands square in plan lies square across its edge", "0°");
            Told::new(chain, "A level cut runs square across the top edge.", rule::PLUMB_CUT)
        }
        Kind::Other(normal) => {
            let [x, _, z] = leans(&mut chain, normal);
            chain.angle("Angle on the top edge", slope(&z, &x));
            Told::new(
                chain,
                "A line square to the cut is read in the timber's own length, depth and thickness; \
                 on the top edge only length and thickness count.",
                rule::SOLID,
            )
        }
    })
}

/// The angle of an upright cut on the top edge.
pub(crate) fn on_edge(
    chain: &mut Chain,
    ground: &Ground<'_>,
    m: &Member,
    cut: &Cut,
    line: &sawn::Line,
) -> Option<Shown> {
    let turn = plan_turn(chain, ground, m, cut, line);
    let pitch = lengths::pitch(chain, ground, m);
    Some(chain.angle("Angle on the top edge", format!("atan(tan {turn} ÷ cos {pitch})")))
}

/// Plan angle of an upright cut from square across.
fn plan_turn(chain: &mut Chain, ground: &Ground<'_>, m: &Member, cut: &Cut, line: &sawn::Line) -> Shown {
    match sawn::follows(ground, m, cut, line) {
        Some(follows) => sawn::turn(chain, ground, m, &follows, line),
        None => chain.read_off("plan angle of the cut from square across", cut.saw.tilt_deg, Unit::Degrees),
    }
}

/// Mitre scale of the saw.
pub(crate) fn mitre(ground: &Ground<'_>, m: &Member, number: usize) -> Option<Told> {
    let told = face(ground, m, number)?;
    let mut chain = told.chain;
    let angle = Shown::new(chain.value, Unit::Degrees);
    chain.ask(&Question::nth(Figure::Face, &m.mark, number));
    chain.angle("The stock lies on its wide side, so the mitre scale reads that angle", format!("{angle}"));
    Some(Told::new(
        chain,
        "The stock lies on its wide side against the fence: the line that the saw follows is the one on the wide side.",
        told.rule,
    ))
}

/// Tilt of the blade.
pub(crate) fn tilt(ground: &Ground<'_>, m: &Member, number: usize) -> Option<Told> {
    let cut = m.cuts.get(number)?;
    let mut chain = Chain::new();
    Some(match kind(m, cut)? {
        Kind::Upright(line) => {
            plan_turn(&mut chain, ground, m, cut, &line);
            let turn = Shown::new(chain.value, Unit::Degrees);
            chain.angle("The blade leans by that angle", format!("{turn}"));
            Told::new(
                chain,
                "A plumb cut follows the plumb line on the wide side. Seen along that line, the blade leans from square \
                 by just the angle that the cut has in plan, whatever the pitch.",
                "from first principles: the plumb line is upright, so looking down it shows the plan",
            )
            .by_hand("Set the bevel to the plan angle on the setting-out and hold it against the blade and the table.")
        }
        Kind::Level => {
            chain.angle("The cut lies square to the wide side", "0°");
            Told::new(chain, "A level cut goes square through the stock: the blade stands upright.", rule::PLUMB_CUT)
        }
        Kind::Other(normal) => {
            let [_, _, z] = leans(&mut chain, normal);
            chain.angle("Tilt of the blade", format!("asin {z}"));
            Told::new(
                chain,
                "The blade leans by as much as the line square to the cut leans out of the wide side.",
                rule::SOLID,
            )
        }
    })
}

fn square_by_hand(run: f64, rise: f64, side: &str) -> String {
    format!(
        "Hold {run:.0} on the blade and {} on the tongue of the roofing square against the {side}, and mark along the tongue.",
        job::written::tenth(rise)
    )
}
