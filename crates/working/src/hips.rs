//! Backing and dropping of hips and valleys.

use crate::birdsmouth;
use crate::chain::Chain;
use crate::ground::{Ground, Lies};
use crate::lengths;
use crate::question::{Figure, Question};
use crate::runs;
use crate::told::Told;
use geometry::DVec2;
use roof::solution::{Member, MemberKind};

/// The backing on the left (0) or right (1).
pub(crate) fn backing(ground: &Ground<'_>, m: &Member, side: usize) -> Option<Told> {
    let Lies::Between(spine) = ground.lies(m) else { return None };
    // On a hip each slope falls away on its own side; on a valley it rises there.
    let left: DVec2 = spine.corner.dir.perp();
    let toward = if side == 0 { left } else { -left };
    let valley = m.kind == MemberKind::ValleyRafter;
    let a_here = (spine.a.inward.dot(toward) < 0.0) != valley;
    let (a, b) = if a_here { (spine.a, spine.b) } else { (spine.b, spine.a) };
    let mut chain = Chain::new();
    let delta = runs::delta(&mut chain, a, b)?;
    let gamma = lengths::pitch(&mut chain, ground, m);
    chain.ask(&Question::of(Figure::Pitch, &m.mark));
    let sign = if valley { "−" } else { "" };
    chain.angle(format!("Backing to the slope of {}", a.name()), format!("{sign}atan(sin {gamma} ÷ tan {delta})"));
    let told = Told::new(
        chain,
        "The slope falls away from the middle of the hip. Seen square to the hip, along its length, it falls by \
         the sine of the hip's pitch over the tangent of its plan angle.",
        "Griffith, Carpentry (1916), section 26, and Hodgson, ABC of the Steel Square: the rise on the length of the hip",
    );
    Some(told.by_hand(
        "For a square corner and equal pitches hold the hip's length on the blade and its rise on the tongue: \
         the tongue gives the bevel. Gauge it down both sides and plane to the middle line.",
    ))
}

/// How far a hip is dropped.
pub(crate) fn drop(ground: &Ground<'_>, m: &Member) -> Option<Told> {
    let mut chain = Chain::new();
    birdsmouth::drop(&mut chain, ground, m)?;
    Some(
        Told::new(
            chain,
            "A hip left square on top would stand proud at its arrises, where the slopes have fallen away from the \
             middle line. It is lowered until its arrises lie in the slopes.",
            "NAVEDTRA 14044, Builder (US Navy), chapter 2: half the thickness measured along the level line",
        )
        .by_hand(
            "Lay half the hip's thickness along the level line of the seat, from the plumb line, and measure the \
             plumb height to the top edge there: take that off the seat.",
        ),
    )
}
