//! Standing a timber that nothing holds yet: props under it, the rafters that go up with it, and its braces.

use super::super::graph::{Graph, ONE_HOLD_MM, ONE_HOLD_SHARE};
use super::super::rules::Rules;
use super::super::types::{Brace, BraceWay, End, Prop, PropFoot};
use super::bracing::{Ask, brace, inside, plate_level};
use super::rank::Turn;
use geometry::Angle;
use roof::solution::MemberKind;
use strength::carrying::is_rafter;

/// What a timber must be held over to count as held at two places, as a share of its length.
pub const SPREAD_SHARE: f64 = 0.25;
/// Step in search of a place for a prop, mm.
const STEP: f64 = 50.0;
/// A prop never stands farther from the end than this share of the timber.
const MOST_IN: f64 = 0.4;
/// A timber up to this long may hang on the nails at one end until a board holds the other, mm: a jack in the corner of
/// the eaves that has no plate under it.
const STUB: f64 = 900.0;
/// The shortest prop, mm.
const LEAST_PROP: f64 = 250.0;
/// Rafters whose places on a ridge differ by less than this share of their centres are a pair.
const PAIR_SHARE: f64 = 0.55;

/// What has been set up so far.
#[derive(Debug, Default)]
pub struct Temporary {
    /// Props.
    pub props: Vec<Prop>,
    /// Braces.
    pub braces: Vec<Brace>,
}

/// A timber to be stood with what goes up with it.
#[derive(Debug, Default)]
pub struct Stand {
    /// Timbers in the order of fixing.
    pub members: Vec<usize>,
    /// Names of its props.
    pub props: Vec<String>,
    /// Names of its braces.
    pub braces: Vec<String>,
}

/// The least and greatest of some places; `None` without any.
pub fn span(spots: &[f64]) -> Option<[f64; 2]> {
    let (low, high) = spots.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), s| (l.min(*s), h.max(*s)));
    (low <= high).then_some([low, high])
}

/// Whether a timber lies still on these places: apart, with its centre of gravity between them.
pub fn lies(graph: &Graph<'_>, k: usize, spots: &[f64]) -> bool {
    let Some(t) = graph.timbers.get(k) else { return false };
    span(spots)
        .is_some_and(|[low, high]| high - low >= SPREAD_SHARE * t.length && low <= t.balance && t.balance <= high)
}

/// Whether a timber is held at two places by what is fixed.
pub fn held(graph: &Graph<'_>, k: usize, fixed: &[bool]) -> bool {
    graph.timbers.get(k).is_some_and(|t| t.on_wall) || lies(graph, k, &graph.held_at(k, fixed))
}

/// Whether lengths that are spliced on the deck and lifted as one lie on what is fixed.
pub fn held_as_one(graph: &Graph<'_>, parts: &[usize], fixed: &[bool]) -> bool {
    let Some(first) = parts.first().and_then(|k| graph.timbers.get(*k)) else { return false };
    let (mut spots, mut weight, mut moment, mut length) = (Vec::new(), 0.0, 0.0, 0.0_f64);
    for k in parts {
        let Some(t) = graph.timbers.get(*k) else { return false };
        let shift = first.along.dot(t.origin - first.origin);
        spots.extend(graph.held_at(*k, fixed).into_iter().map(|s| s + shift));
        weight += t.member.volume_m3;
        moment += t.member.volume_m3 * (t.balance + shift);
        length = length.max(t.length + shift);
    }
    let balance = if weight > 0.0 { moment / weight } else { length / 2.0 };
    span(&spots).is_some_and(|[low, high]| high - low >= SPREAD_SHARE * length && low <= balance && balance <= high)
}

/// Whether a short timber is nailed to something fixed at one place at least.
pub fn hangs(graph: &Graph<'_>, k: usize, fixed: &[bool]) -> bool {
    graph.timbers.get(k).is_some_and(|t| t.length <= STUB) && !graph.held_at(k, fixed).is_empty()
}

/// At how many places apart a timber is held: 0, 1 or 2.
fn holds(graph: &Graph<'_>, k: usize, spots: &[f64]) -> usize {
    let Some(t) = graph.timbers.get(k) else { return 0 };
    match span(spots) {
        None => 0,
        Some([low, high]) if high - low > ONE_HOLD_MM.min(ONE_HOLD_SHARE * t.length) => 2,
        Some(_) => 1,
    }
}

/// Stand a timber on props, with rafters where it is a ridge, braced so that it stays.
pub fn stand(graph: &Graph<'_>, rules: &Rules, fixed: &[bool], k: usize, turn: Turn, now: &mut Temporary) -> Stand {
    let mut out = Stand { members: vec![k], ..Stand::default() };
    let Some(t) = graph.timbers.get(k) else { return out };
    let spots = graph.held_at(k, fixed);
    let mut prop_at: Vec<f64> = Vec::new();
    if !lies(graph, k, &spots) {
        prop_at = props_for(graph, rules, k, &spots);
        for s in &prop_at {
            let name = format!("Prop-{}", now.props.len() + 1);
            now.props.push(prop(graph, rules, fixed, k, *s, name.clone()));
            out.props.push(name);
        }
    }
    let held = holds(graph, k, &spots);
    let firsts = if turn == Turn::Spine { first_rafters(graph, fixed, k, &spots) } else { Vec::new() };
    let mut sideways: Vec<f64> = firsts.iter().map(|(s, _)| *s).collect();
    for (_, rafters) in &firsts {
        out.members.extend(rafters);
    }
    let one_hold = ONE_HOLD_MM.min(ONE_HOLD_SHARE * t.length);
    sideways.dedup_by(|b, a| (*b - *a).abs() <= one_hold);
    let mut fixed_now = fixed.to_vec();
    // A brace may not stand on what it is to hold.
    fixed_now[k] = false;
    let mut set = |at: f64, way: BraceWay, side: f64, now: &mut Temporary| -> bool {
        let name = format!("Brace-{}", now.braces.len() + 1);
        let ask = Ask { timber: k, at, way, side };
        match brace(graph, &rules.brace, &fixed_now, ask, name.clone()) {
            Some(b) => {
                now.braces.push(b);
                out.braces.push(name);
                true
            }
            None => false,
        }
    };
    let ends = if prop_at.is_empty() { vec![t.balance] } else { prop_at.clone() };
    let mut lacks = false;
    if held == 0 {
        // Both ways along, so that it is pushed whichever way the wind comes.
        let (first, last) = (ends[0], ends[ends.len() - 1]);
        let one = set(first, BraceWay::Along, 1.0, now);
        let other = set(last, BraceWay::Along, -1.0, now);
        lacks = !one && !other && !set(first, BraceWay::Along, 0.0, now) && !set(last, BraceWay::Along, 0.0, now);
    }
    let needed = 2usize.saturating_sub(held);
    let mut across: Vec<f64> =
        if held == 1 && ends.len() == 1 { ends.clone() } else { vec![ends[0], ends[ends.len() - 1]] };
    if held == 1 && across.len() > 1 {
        // The end that is not held.
        let [low, high] = span(&spots).unwrap_or([0.0, 0.0]);
        across.sort_by(|a, b| {
            let off = |s: f64| (s - low).abs().min((s - high).abs());
            off(*b).total_cmp(&off(*a))
        });
    }
    let mut have = sideways.len();
    for at in across {
        let taken = sideways.iter().any(|s| (s - at).abs() <= one_hold);
        if have < needed && !taken && set(at, BraceWay::Across, 0.0, now) {
            have += 1;
        }
    }
    if lacks || have < needed {
        now.props.iter_mut().filter(|p| out.props.contains(&p.name)).for_each(|p| p.stayed = true);
    }
    out
}

/// A stayed prop for a timber that still moves among what is fixed: as far from its holds as it goes; `None` when it has
/// stayed props at both ends.
pub fn stay(graph: &Graph<'_>, rules: &Rules, fixed: &[bool], k: usize, props: &[Prop]) -> Option<Prop> {
    let t = graph.timbers.get(k)?;
    let spots = graph.held_at(k, fixed);
    let near = |end: End| props.iter().any(|p| p.under == t.mark() && p.stayed && p.from_end == end);
    let off = |s: f64| spots.iter().map(|h| (h - s).abs()).fold(f64::INFINITY, f64::min);
    let places = [End::Head, End::Foot].into_iter().filter(|end| !near(*end));
    let at = places.map(|end| clear_of_end(graph, rules, k, end)).max_by(|a, b| off(*a).total_cmp(&off(*b)))?;
    let name = format!("Prop-{}", props.len() + 1);
    Some(Prop { stayed: true, ..prop(graph, rules, fixed, k, at, name) })
}

/// Where a timber wants props, given where it is held.
fn props_for(graph: &Graph<'_>, rules: &Rules, k: usize, spots: &[f64]) -> Vec<f64> {
    let Some(t) = graph.timbers.get(k) else { return Vec::new() };
    let (foot, head) = (clear_of_end(graph, rules, k, End::Foot), clear_of_end(graph, rules, k, End::Head));
    match span(spots) {
        None => vec![foot, head],
        Some([_, high]) if high <= t.balance => vec![head],
        Some([low, _]) if low >= t.balance => vec![foot],
        Some(_) => vec![foot, head],
    }
}

/// Near an end of a timber, inside the plan and clear of walls; under the splice when another length follows.
fn clear_of_end(graph: &Graph<'_>, rules: &Rules, k: usize, end: End) -> f64 {
    let Some(t) = graph.timbers.get(k) else { return 0.0 };
    let sloping = t.along.z.abs() > 0.05;
    let start = match end {
        End::Head if sloping => rules.prop.below_head_mm.value.min(MOST_IN * t.length),
        _ => {
            let at = roof::solution::CutPlace::Head;
            let splice = t.member.splices.iter().find(|s| (s.at == at) == (end == End::Head));
            splice.map_or(0.0, |s| s.length_mm / 2.0).min(MOST_IN * t.length)
        }
    };
    let place = |d: f64| match end {
        End::Foot => d,
        End::Head => t.length - d,
    };
    let clear = |d: f64| {
        let p = t.under(place(d)).truncate();
        let off = (0..graph.job.walls.len()).filter_map(|w| super::super::graph::wall_line(graph.job, w));
        let near = off.map(|line| super::super::graph::off_segment(p, line)).fold(f64::INFINITY, f64::min);
        inside(graph, p) && near >= rules.prop.inside_mm.value
    };
    // A prop wants room under it; the tail of a rafter hangs below the plates.
    let room = |d: f64| {
        let p = t.under(place(d));
        p.z - plate_level(graph, p.truncate()) >= LEAST_PROP
    };
    let tries = || (0..).map(|n| start + STEP * f64::from(n)).take_while(|d| *d <= MOST_IN * t.length);
    tries()
        .find(|d| clear(*d) && room(*d))
        .or_else(|| tries().find(|d| room(*d)))
        .map_or(place(MOST_IN * t.length), place)
}

fn prop(graph: &Graph<'_>, rules: &Rules, fixed: &[bool], k: usize, s: f64, name: String) -> Prop {
    /// A joist within this of a prop carries its sole board, mm.
    const ON_JOISTS: f64 = 700.0;
    let t = &graph.timbers[k];
    let head = t.under(s);
    let level = plate_level(graph, head.truncate());
    let joists = graph
        .timbers
        .iter()
        .enumerate()
        .filter(|(j, j_t)| fixed.get(*j).copied().unwrap_or(false) && j_t.kind() == MemberKind::CeilingJoist);
    let tops = joists.filter_map(|(_, j)| {
        let line = [j.under(0.0).truncate(), j.under(j.length).truncate()];
        let top = j.member.solid.points.iter().map(|p| p[2]).fold(f64::NEG_INFINITY, f64::max);
        (super::super::graph::off_segment(head.truncate(), line) < ON_JOISTS && top < head.z).then_some(top)
    });
    let deck = tops.fold(None, |best: Option<f64>, top| Some(best.map_or(top, |b| b.max(top))));
    let (from, foot) = match deck {
        Some(top) => (PropFoot::Joists, top + rules.prop.deck_mm.value),
        None => (PropFoot::PlateLevel, level),
    };
    let (from, foot) = if head.z - foot >= LEAST_PROP && inside(graph, head.truncate()) {
        (from, foot)
    } else {
        // Outside the walls or below the plates there is no level to work from.
        (PropFoot::InPlace, (head.z - LEAST_PROP).min(foot))
    };
    let height = head.z - foot;
    let (from_end, from_end_mm) = if s <= t.length / 2.0 { (End::Foot, s) } else { (End::Head, t.length - s) };
    Prop {
        name,
        under: t.mark().to_owned(),
        from_end,
        from_end_mm,
        from,
        height_mm: height,
        cut_mm: height - rules.prop.sole_mm.value - rules.prop.wedges_mm.value,
        stayed: false,
        head_cut_deg: Angle::from_rise_run(t.along.z.abs(), t.along.truncate().length()).to_deg(),
        foot: head.truncate().extend(foot).to_array(),
        head: head.to_array(),
    }
}

/// Rafters that go up with a ridge: a pair near each end that is not held, or single ones where no pair is.
fn first_rafters(graph: &Graph<'_>, fixed: &[bool], k: usize, spots: &[f64]) -> Vec<(f64, Vec<usize>)> {
    let Some(t) = graph.timbers.get(k) else { return Vec::new() };
    let mut with = fixed.to_vec();
    with[k] = true;
    let mut found: Vec<(f64, usize, bool)> = t
        .contacts
        .iter()
        .filter(|c| !fixed.get(c.other).copied().unwrap_or(true))
        .filter_map(|c| {
            let rafter = graph.timbers.get(c.other)?;
            let whole = is_rafter(rafter.kind()) && !matches!(rafter.kind(), MemberKind::CrownRafter);
            let leans = rafter.heading().dot(t.heading()).abs() < 0.5;
            let left = rafter.heading().perp_dot(t.heading()) > 0.0;
            (whole && leans && held(graph, c.other, &with)).then_some(((c.reach[0] + c.reach[1]) / 2.0, c.other, left))
        })
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    found.dedup_by_key(|f| f.1);
    let most = PAIR_SHARE * graph.job.timber.rafter.centres;
    let mut groups: Vec<(f64, Vec<usize>)> = Vec::new();
    let mut used = vec![false; found.len()];
    for a in 0..found.len() {
        if used[a] {
            continue;
        }
        used[a] = true;
        let across =
            (a + 1..found.len()).find(|b| !used[*b] && found[*b].2 != found[a].2 && found[*b].0 - found[a].0 < most);
        let mut group = vec![found[a].1];
        if let Some(b) = across {
            used[b] = true;
            group.push(found[b].1);
        }
        groups.push((found[a].0, group));
    }
    let best = groups.iter().map(|g| g.1.len()).max().unwrap_or(0);
    groups.retain(|g| g.1.len() == best);
    let apart = ONE_HOLD_MM.min(ONE_HOLD_SHARE * t.length);
    match (span(spots), groups.len()) {
        (_, 0) => Vec::new(),
        (None, n) => {
            let last = groups[n - 1].clone();
            let first = groups.swap_remove(0);
            if last.0 - first.0 > apart { vec![first, last] } else { vec![first] }
        }
        (Some([low, high]), _) => {
            let off = |s: f64| (s - low).abs().min((s - high).abs());
            let farthest = groups.into_iter().max_by(|a, b| off(a.0).total_cmp(&off(b.0)));
            farthest.into_iter().filter(|g| off(g.0) > apart).collect()
        }
    }
}

/// Braces for a plate on studs: along and across, as far as what is fixed does not hold it.
pub fn brace_plate(graph: &Graph<'_>, rules: &Rules, firm: &[bool], k: usize, now: &mut Temporary) -> Vec<String> {
    let Some(t) = graph.timbers.get(k) else { return Vec::new() };
    let held = holds(graph, k, &graph.held_at(k, firm));
    let ends = [ONE_HOLD_SHARE * t.length, (1.0 - ONE_HOLD_SHARE) * t.length];
    let asks: &[(f64, BraceWay)] = match held {
        0 => &[(ends[0], BraceWay::Along), (ends[0], BraceWay::Across), (ends[1], BraceWay::Across)],
        1 => &[(ends[1], BraceWay::Across), (ends[0], BraceWay::Across)],
        _ => &[],
    };
    let mut names = Vec::new();
    for (at, way) in asks {
        let name = format!("Brace-{}", now.braces.len() + 1);
        let ask = Ask { timber: k, at: *at, way: *way, side: 0.0 };
        if let Some(b) = brace(graph, &rules.brace, firm, ask, name.clone()) {
            now.braces.push(b);
            names.push(name);
        }
    }
    names
}
