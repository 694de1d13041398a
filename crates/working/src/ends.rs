//! Where the ends of a timber lie beyond or short of its pitch line: cut
//! lengths, stock and marks for the tape.

use crate::chain::{Chain, Shown, Unit};
use crate::ground::{Ground, Lies, plan_run};
use crate::question::{Figure, Question};
use crate::sawn::{self, Follows};
use crate::told::{Told, rule};
use crate::ways::{self, Way};
use crate::{lengths, runs};
use geometry::DVec3;
use job::{HipEdge, TailCut};
use roof::solution::{Cut, CutPlace, Member, MemberKind};

/// Places agree within this, mm.
const AGREES: f64 = 0.02;

/// The name of a birdsmouth's plumb cut, on the plate and on a purlin: it ends nothing.
const HEELS: [&str; 2] = ["heel plumb cut", "plumb cut on the purlin"];

/// The farthest point of an end: how far short of the end of the pitch line it
/// lies, level (below nothing where it lies beyond), and how far from the
/// middle of the timber's thickness.
pub(crate) struct Tip {
    pub short: Shown,
    pub aside: Option<Shown>,
}

/// An upright cut at an end of a timber.
#[derive(Clone, Copy)]
pub(crate) struct EndCut<'a> {
    pub cut: &'a Cut,
    pub line: sawn::Line,
}

/// The upright cuts that end a timber at its head or foot.
pub(crate) fn end_cuts(m: &Member, head: bool) -> Vec<EndCut<'_>> {
    m.cuts
        .iter()
        .filter(|c| (c.at == CutPlace::Head) == head && !HEELS.contains(&c.name.as_str()))
        .filter_map(|cut| Some(EndCut { cut, line: sawn::line(m, cut)? }))
        .collect()
}

/// How far short of the end of the pitch line a cut crosses it, level: by number.
fn short(m: &Member, cut: &EndCut<'_>, head: bool) -> f64 {
    if head { plan_run(&m.axis) - cut.line.centre } else { cut.line.centre }
}

/// The same, from what the cut follows.
pub(crate) fn short_of_end(chain: &mut Chain, ground: &Ground<'_>, m: &Member, cut: &EndCut<'_>, head: bool) -> Shown {
    let want = short(m, cut, head);
    let place = if head { CutPlace::Head } else { CutPlace::Foot };
    let less = m.deductions.iter().enumerate().find(|(_, d)| d.at == place && (d.mm - want).abs() < AGREES);
    if let Some((number, less)) = less {
        let found = lengths::less_level(chain, ground, m, less);
        chain.ask(&Question::nth(Figure::Less, &m.mark, number));
        return found;
    }
    if want.abs() < AGREES {
        let end = if head { "head" } else { "foot" };
        return chain.given(
            format!("The cut passes through the {end} of the line: short by nothing"),
            0.0,
            Unit::Millimetres,
        );
    }
    let mut trial = chain.clone();
    if let Some(found) = by_following(&mut trial, ground, m, cut, head).filter(|f| (f.value - want).abs() < AGREES) {
        *chain = trial;
        return found;
    }
    chain.read_off(
        &format!("how far short of the end of the line the {} crosses it, level", cut.cut.name),
        want,
        Unit::Millimetres,
    )
}

fn by_following(chain: &mut Chain, ground: &Ground<'_>, m: &Member, cut: &EndCut<'_>, head: bool) -> Option<Shown> {
    let follows = sawn::follows(ground, m, cut.cut, &cut.line)?;
    match &follows {
        Follows::Fascia(wall) => tail(chain, ground, m, &wall.id),
        Follows::Square if !head => {
            let Lies::Between(spine) = ground.lies(m) else { return None };
            tail(chain, ground, m, &spine.a.letter)
        }
        Follows::Side(other, _) => {
            let end = if head { plan_run(&m.axis) } else { 0.0 };
            let off = ways::crossing(m, other)? - end;
            if off.abs() > AGREES {
                return None;
            }
            sawn::short_of(chain, ground, m, &follows)
        }
        _ => None,
    }
}

/// The tail runs out to the fascia of a wall.
fn tail(chain: &mut Chain, ground: &Ground<'_>, m: &Member, letter: &str) -> Option<Shown> {
    let wall = ground.solution.plan.walls.iter().find(|w| w.id == letter)?;
    let out = chain.given(format!("Overhang at wall {letter}, level"), wall.overhang_mm, Unit::Millimetres);
    chain.ask(&Question::of(Figure::Overhang, letter));
    let angle = ways::between(chain, ground, Way::Timber(m), Way::Wall(wall));
    let out = if angle.value >= 90.0 {
        out
    } else {
        chain.length("The tail runs out past the plate by, level along the timber", format!("{out} ÷ sin {angle}"))
    };
    // Past the end of the line: short of it by less than nothing.
    Some(Shown::new(-out.value, Unit::Millimetres))
}

/// The farthest point of an end.
pub(crate) fn tip(chain: &mut Chain, ground: &Ground<'_>, m: &Member, head: bool) -> Option<Tip> {
    let cuts = end_cuts(m, head);
    if cuts.is_empty() {
        return square_tail(chain, ground, m, head);
    }
    let half = m.size.thickness_mm / 2.0;
    // Short of the end at a distance to the left of the middle: the cut that takes most.
    let at = |y: f64| {
        cuts.iter().map(|c| (c, short(m, c, head) + if head { -c.line.lean * y } else { c.line.lean * y })).fold(
            None,
            |worst: Option<(&EndCut<'_>, f64)>, c| if worst.is_some_and(|w| w.1 >= c.1) { worst } else { Some(c) },
        )
    };
    let mut spots = vec![-half, half];
    for (i, a) in cuts.iter().enumerate() {
        for b in &cuts[i + 1..] {
            let slope = a.line.lean - b.line.lean;
            let y = (b.line.centre - a.line.centre) / slope;
            if slope.abs() > 1e-9 && y.abs() < half {
                spots.push(y);
            }
        }
    }
    let planed = lowered_per_mm(ground, m);
    let reach = |y: f64| at(y).map_or(f64::INFINITY, |(_, s)| s + planed * y.abs());
    let y = spots.into_iter().min_by(|a, b| reach(*a).total_cmp(&reach(*b)))?;
    let here: Vec<&EndCut<'_>> = {
        let (_, least) = at(y)?;
        cuts.iter()
            .filter(|c| (short(m, c, head) - c.line.lean * if head { y } else { -y } - least).abs() < 1e-6)
            .collect()
    };
    tip_at(chain, ground, m, head, y, &here)
}

fn tip_at(chain: &mut Chain, ground: &Ground<'_>, m: &Member, head: bool, y: f64, here: &[&EndCut<'_>]) -> Option<Tip> {
    let first = here.first()?;
    let centre = short_of_end(chain, ground, m, first, head);
    if y.abs() < AGREES || first.line.lean.abs() < 1e-9 {
        return Some(Tip { short: centre, aside: None });
    }
    let turn = |chain: &mut Chain, c: &EndCut<'_>| turn_of(chain, ground, m, c);
    let half = m.size.thickness_mm / 2.0;
    let angle = turn(chain, first);
    let aside = if (y.abs() - half).abs() < AGREES {
        let thick = chain.given("Thickness of the timber", m.size.thickness_mm, Unit::Millimetres);
        chain.length("From its middle to the arris", format!("{thick} ÷ 2"))
    } else {
        let second = here.get(1)?;
        let other = short_of_end(chain, ground, m, second, head);
        let (a, b) = (angle.clone(), turn(chain, second));
        let (la, lb) = (first.line.lean, second.line.lean);
        let (high, low) = if centre.value >= other.value { (&centre, &other) } else { (&other, &centre) };
        let tans = if la * lb < 0.0 {
            format!("tan {a} + tan {b}")
        } else if la.abs() > lb.abs() {
            format!("tan {a} − tan {b}")
        } else {
            format!("tan {b} − tan {a}")
        };
        chain.length("The two cuts meet off the middle of the timber by", format!("({high} − {low}) ÷ ({tans})"))
    };
    // Towards the tip the cut comes nearer to the end of the line, or draws off.
    let nearer = (first.line.lean * y > 0.0) == head;
    let sign = if nearer { "−" } else { "+" };
    let short = chain
        .length("The long point is short of the end of the line by", format!("{centre} {sign} {aside} × tan {angle}"));
    Some(Tip { short, aside: Some(aside) })
}

/// Plan angle of an end cut from square across.
pub(crate) fn turn_of(chain: &mut Chain, ground: &Ground<'_>, m: &Member, cut: &EndCut<'_>) -> Shown {
    match sawn::follows(ground, m, cut.cut, &cut.line) {
        Some(follows) => sawn::turn(chain, ground, m, &follows, &cut.line),
        None => chain.read_off("plan angle of the cut from square across", cut.cut.saw.tilt_deg, Unit::Degrees),
    }
}

/// A tail cut square to its rafter ends at the overhang on its top arris.
fn square_tail(chain: &mut Chain, ground: &Ground<'_>, m: &Member, head: bool) -> Option<Tip> {
    let Lies::In(slope) = ground.lies(m) else { return None };
    if head || ground.job.eaves.tail != TailCut::Square || m.birdsmouth.is_none() {
        return None;
    }
    Some(Tip { short: tail(chain, ground, m, &slope.letter)?, aside: None })
}

/// By how much the planed top of a hip draws back, level, for each mm from its
/// middle: below nothing for a hollow valley. By number.
fn lowered_per_mm(ground: &Ground<'_>, m: &Member) -> f64 {
    if !matches!(ground.lies(m), Lies::Between(_)) {
        return 0.0;
    }
    let Some([left, right]) = m.backing_deg else { return 0.0 };
    // tan(backing) = fall across, square to the edge; along the slope it draws back by sin² of the pitch.
    let tan = geometry::Angle::deg(left.abs().min(right.abs())).tan();
    let pitch = geometry::Angle::deg(m.pitch_deg);
    let back = tan * pitch.tan() * pitch.cos();
    if m.kind == MemberKind::ValleyRafter { -back } else { back }
}

/// What planing the top of a hip takes off its length at a long point that lies
/// to one side, along the slope.
fn planed(chain: &mut Chain, ground: &Ground<'_>, m: &Member, tip: &Tip, pitch: &Shown) -> Option<Shown> {
    let aside = tip.aside.as_ref()?;
    let Lies::Between(spine) = ground.lies(m) else { return None };
    let hip = if m.kind == MemberKind::HipRafter { &ground.job.timber.hip } else { return None };
    if hip.edge != HipEdge::Backed {
        return None;
    }
    let delta = runs::delta(chain, spine.a, spine.b)?;
    let fall = chain.length("The planed top lies lower there by", format!("{aside} × tan {pitch} ÷ tan {delta}"));
    Some(chain.length("which draws it back along the timber by", format!("{fall} × sin {pitch}")))
}

/// Long point to long point along the top.
pub(crate) fn cut_length(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Option<Shown> {
    let length = lengths::true_length(chain, ground, m);
    chain.ask(&Question::of(Figure::TrueLength, &m.mark));
    let pitch = lengths::pitch(chain, ground, m);
    let mut sum = length.to_string();
    for head in [false, true] {
        let tip = tip(chain, ground, m, head)?;
        push_slope(&mut sum, &tip.short, &pitch, false);
        if let Some(back) = planed(chain, ground, m, &tip, &pitch) {
            sum = format!("{sum} − {back}");
        }
    }
    let words = "Long point to long point: true length, less what each end is short, along the slope";
    Some(chain.length(words, sum))
}

/// Takes (or adds) a level distance, along the slope.
fn push_slope(sum: &mut String, level: &Shown, pitch: &Shown, add: bool) {
    if level.value == 0.0 {
        return;
    }
    let sign = if (level.value > 0.0) == add { "+" } else { "−" };
    let size = Shown::new(level.value.abs(), Unit::Millimetres);
    let slope = if pitch.value == 0.0 { size.to_string() } else { format!("{size} ÷ cos {pitch}") };
    *sum = if sum.is_empty() && sign == "+" {
        slope
    } else if sum.is_empty() {
        format!("−{slope}")
    } else {
        format!("{sum} {sign} {slope}")
    };
}

/// What the foot of a timber needs beyond the long point of its top, so that
/// its lowest corner has wood.
fn below(chain: &mut Chain, ground: &Ground<'_>, m: &Member, pitch: &Shown) -> Option<Shown> {
    if pitch.value == 0.0 {
        return None;
    }
    let eaves = &ground.job.eaves;
    if m.cuts.iter().any(|c| c.name == "soffit level cut") {
        let face = chain.given("Plumb face of the tail, for the fascia", eaves.fascia_depth, Unit::Millimetres);
        return Some(chain.length("Its lower corner lies farther down the slope by", format!("{face} × sin {pitch}")));
    }
    if end_cuts(m, false).is_empty() {
        return None;
    }
    let depth = chain.given("Depth of the timber", m.size.depth_mm, Unit::Millimetres);
    Some(chain.length("The plumb cut at the foot reaches farther down the slope by", format!("{depth} × tan {pitch}")))
}

/// The shortest timber with square ends.
pub(crate) fn stock(chain: &mut Chain, ground: &Ground<'_>, m: &Member) -> Option<Shown> {
    let cut = cut_length(chain, ground, m)?;
    chain.ask(&Question::of(Figure::CutLength, &m.mark));
    let pitch = lengths::pitch(chain, ground, m);
    Some(match below(chain, ground, m, &pitch) {
        Some(below) => chain.length("Stock: cut length and that", format!("{cut} + {below}")),
        None => chain.conclude("Stock: the cut length, both ends being square on the side", &cut),
    })
}

/// From the foot end of the stock to the plumb line at the foot of the pitch line, on the top edge.
fn to_foot(chain: &mut Chain, ground: &Ground<'_>, m: &Member, pitch: &Shown) -> Shown {
    let want = foot_on_edge(m);
    let mut trial = chain.clone();
    if let Some(found) =
        foot_by_tail(&mut trial, ground, m, pitch).filter(|f| want.is_none_or(|w| (f.value - w).abs() < AGREES))
    {
        *chain = trial;
        return found;
    }
    let words = "along the top edge, from the foot end to the plumb line at the foot of the pitch line";
    chain.read_off(words, want.unwrap_or(f64::NAN), Unit::Millimetres)
}

fn foot_by_tail(chain: &mut Chain, ground: &Ground<'_>, m: &Member, pitch: &Shown) -> Option<Shown> {
    let tip = tip(chain, ground, m, false)?;
    let below = below(chain, ground, m, pitch);
    let mut sum = String::new();
    push_slope(&mut sum, &tip.short, pitch, false);
    if let Some(below) = below {
        sum = if sum.is_empty() { below.to_string() } else { format!("{below} {}", signed(&sum)) };
    }
    if sum.is_empty() {
        sum.push('0');
    }
    Some(chain.length("From the foot end, along the top edge, to the plumb line at the foot of the pitch line", sum))
}

fn signed(sum: &str) -> String {
    sum.strip_prefix('−').map_or_else(|| format!("+ {sum}"), |rest| format!("− {rest}"))
}

/// Where that plumb line crosses the top edge, from the foot end, mm. By number.
fn foot_on_edge(m: &Member) -> Option<f64> {
    let [along, up] = [m.bench.along, m.bench.up].map(DVec3::from_array);
    let from = DVec3::from_array(m.axis.from) - DVec3::from_array(m.bench.origin);
    (up.z.abs() > 1e-9).then(|| from.dot(along) + (m.size.depth_mm - from.dot(up)) / up.z * along.z)
}

/// The left end of a mark on the top edge, from the foot end.
pub(crate) fn tape(chain: &mut Chain, ground: &Ground<'_>, m: &Member, number: usize) -> Option<Shown> {
    let mark = m.marks.get(number)?;
    let pitch = lengths::pitch(chain, ground, m);
    let (head, cut, number) = marked(m, number)?;
    let start = to_foot(chain, ground, m, &pitch);
    let mut sum = start.to_string();
    let words = if HEELS.contains(&cut.name.as_str()) {
        if let Some(back) = crate::birdsmouth::heel_back(chain, ground, m) {
            push_slope(&mut sum, &back, &pitch, false);
        }
        "Tape to the heel's plumb line"
    } else {
        let line = sawn::line(m, cut)?;
        let end = EndCut { cut, line };
        let short = short_of_end(chain, ground, m, &end, head);
        if head {
            let length = lengths::true_length(chain, ground, m);
            chain.ask(&Question::of(Figure::TrueLength, &m.mark));
            sum = format!("{sum} + {length}");
        }
        push_slope(&mut sum, &short, &pitch, !head);
        let aside = mark.left_across_mm;
        if line.lean.abs() > 1e-9 && aside.abs() > AGREES {
            let aside_shown = aside_of(chain, ground, m, head, aside);
            let turn = turn_of(chain, ground, m, &end);
            let edge = chain.angle("Angle of the line on the top edge", format!("atan(tan {turn} ÷ cos {pitch})"));
            chain.ask(&Question::nth(Figure::Edge, &m.mark, number));
            let sign = if line.lean * aside > 0.0 { "+" } else { "−" };
            sum = format!("{sum} {sign} {aside_shown} × tan {edge}");
        }
        "Tape to the left end of the line"
    };
    Some(chain.length(words, sum))
}

/// How far from the middle of the edge a mark ends: at the arris, or where two cuts meet.
fn aside_of(chain: &mut Chain, ground: &Ground<'_>, m: &Member, head: bool, aside: f64) -> Shown {
    if (aside.abs() - m.size.thickness_mm / 2.0).abs() < AGREES {
        let thick = chain.given("Thickness of the timber", m.size.thickness_mm, Unit::Millimetres);
        return chain.length("From its middle to the arris", format!("{thick} ÷ 2"));
    }
    let mut trial = chain.clone();
    if let Some(found) =
        tip(&mut trial, ground, m, head).and_then(|t| t.aside).filter(|a| (a.value - aside.abs()).abs() < AGREES)
    {
        *chain = trial;
        return found;
    }
    chain.read_off("how far from the middle of the edge the line ends", aside.abs(), Unit::Millimetres)
}

/// The cut that a mark belongs to, at the head or not, and its number.
fn marked(m: &Member, number: usize) -> Option<(bool, &Cut, usize)> {
    let mark = m.marks.get(number)?;
    let cos = geometry::Angle::deg(m.pitch_deg).cos();
    let start = foot_on_edge(m)?;
    let off = |cut: &Cut| {
        sawn::line(m, cut)
            .map_or(f64::INFINITY, |l| (start + (l.centre + l.lean * mark.left_across_mm) / cos - mark.left_mm).abs())
    };
    let (number, cut) = m
        .cuts
        .iter()
        .enumerate()
        .filter(|(_, c)| c.name == mark.name && c.at == mark.at)
        .min_by(|a, b| off(a.1).total_cmp(&off(b.1)))?;
    Some((cut.at == CutPlace::Head, cut, number))
}

/// The working of a cut length, of the stock, or of a mark.
pub(crate) fn tell(ground: &Ground<'_>, m: &Member, q: &Question) -> Option<Told> {
    let mut chain = Chain::new();
    Some(match q.figure {
        Figure::CutLength => {
            cut_length(&mut chain, ground, m)?;
            Told::new(
                chain,
                "The true length runs on the pitch line. The timber runs on past it where it has a tail or a long point, \
                 and stops short of it at the side of what it meets.",
                rule::DEDUCT,
            )
            .by_hand("Tape along the top edge from the long point of one end to the long point of the other.")
        }
        Figure::Stock => {
            stock(&mut chain, ground, m)?;
            Told::new(
                chain,
                "Stock has square ends. A plumb cut at the foot leans down the slope, so its lower corner lies \
                 farther out than the long point on the top edge.",
                "from first principles: depth × tan pitch is how far a plumb cut leans",
            )
            .by_hand("Hold the square across the timber at its outermost corner of either end and measure between.")
        }
        _ => {
            tape(&mut chain, ground, m, q.number)?;
            Told::new(
                chain,
                "The tape hooks on the square foot end of the stock and runs along the top edge. The plumb line at the \
                 plate is found first; all other marks are pulled from it.",
                rule::PRACTICE,
            )
            .by_hand("Leave the tape hooked on and pull all marks without moving it, so that errors do not add up.")
        }
    })
}
