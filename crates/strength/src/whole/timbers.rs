//! The checks of one timber under every combination.

use super::asks::{Ask, Stuff};
use super::effects::{Acting, Span, sum};
use crate::actions::{CaseKind, Combination, CombinationKind};
use crate::annex::timber::Duration;
use crate::carrying::Carrying;
use crate::carrying::is_rafter;
use crate::carrying::places::Under;
use crate::carrying::unit::Unit;
use crate::eurocode::members::{
    Contact, Edge, Finish, Forces, Lengths, Notch, NotchFace, Section, Span as SpanKind, SpanLoad, SpanLoadAt, Support,
    Use, Variable,
};
use crate::working::Working;
use roof::solution::MemberKind;

/// A check with its result: the worst of all combinations and places.
#[derive(Clone, Debug)]
pub struct Found {
    /// How far the timber is used.
    pub used: Use,
    /// The check, to run again.
    pub ask: Ask,
    /// The combination, by its number; deflection has none.
    pub combination: usize,
    /// mm from the foot of the run.
    pub at: f64,
    /// Duration of the shortest load.
    pub duration: Duration,
    /// The load was shared with its neighbours.
    pub shared: bool,
}

/// What all timbers of a roof are checked with.
#[derive(Debug)]
pub struct Rules<'a> {
    /// Wood, factors, service class.
    pub stuff: Stuff,
    /// All combinations.
    pub combinations: &'a [Combination],
    /// Their factors by the numbers of the cases.
    pub factors: &'a [Vec<(usize, f64)>],
    /// Rafters and joists stand close enough, and are enough, to share.
    pub sharing: bool,
    /// What is under the rafters, and under the joists.
    pub finish: [Finish; 2],
    /// For each variable case that deflects: case, psi0, psi2.
    pub variables: Vec<(usize, f64, f64)>,
}

/// A timber as it is checked.
#[derive(Clone, Copy, Debug)]
pub struct Checked<'a> {
    /// Its run.
    pub run: usize,
    /// Kind.
    pub kind: MemberKind,
    /// Section.
    pub section: Section,
    /// Its spans.
    pub spans: &'a [Span],
    /// Depth of its birdsmouth and length of the seat, mm, if it has one.
    pub birdsmouth: Option<[f64; 2]>,
    /// Slope, degrees.
    pub pitch: f64,
    /// Share of a load straight down that bends it about its strong axis, and sideways.
    pub tilt: [f64; 2],
    /// Tension of a tie in it, N for each case.
    pub tie: Option<&'a [f64]>,
}

/// The same place along a timber, mm.
const AT_FOOT: f64 = 1.0;

/// The worst of each kind of check.
struct Worst<'a> {
    rules: &'a Rules<'a>,
    section: Section,
    found: Vec<Found>,
}

impl Worst<'_> {
    fn ask(&mut self, ask: Ask, combination: usize, shared: bool, at: f64) {
        let duration = self.rules.combinations[combination].duration;
        let used = ask.run(&self.rules.stuff, duration, shared, self.section, &mut Working::off());
        self.keep(Found { used, ask, combination, at, duration, shared });
    }

    fn keep(&mut self, new: Found) {
        match self.found.iter_mut().find(|f| f.used.name == new.used.name) {
            Some(old) if old.used.ratio >= new.used.ratio => {}
            Some(old) => *old = new,
            None => self.found.push(new),
        }
    }
}

/// Whether a timber gets help from its neighbours: one of many alike under a common load.
const fn can_share(kind: MemberKind) -> bool {
    matches!(kind, MemberKind::CommonRafter | MemberKind::JackRafter | MemberKind::CeilingJoist)
}

/// All checks of a timber.
#[must_use]
pub fn check(rules: &Rules<'_>, timber: &Checked<'_>) -> Vec<Found> {
    let mut worst = Worst { rules, section: timber.section, found: Vec::new() };
    let mut acting: Vec<Candidate<'_>> = Vec::with_capacity(timber.spans.len() * rules.combinations.len());
    for (number, combination) in rules.combinations.iter().enumerate() {
        if combination.kind != CombinationKind::Ultimate {
            continue;
        }
        let factors = &rules.factors[number];
        let shared = rules.sharing && can_share(timber.kind) && !combination.has_one_person();
        let tie = timber.tie.map_or(0.0, |n| sum(n, factors));
        let duration = combination.duration;
        let kmod = rules.stuff.timber.kmod(rules.stuff.service, duration).value;
        for span in timber.spans {
            acting.extend(candidate(&worst, span, number, factors, shared, tie, kmod));
        }
        birdsmouth(&mut worst, timber, number, factors, shared);
    }
    // Pressed and pulled apart from one another, as a pressed timber buckles. The exact checks differ from the rough
    // shares by buckling and the shares of two axes, by less than a half: what is below half of the most cannot govern.
    const GOVERNS: f64 = 0.5;
    for pressed in [true, false] {
        let mine = || acting.iter().filter(|c| (c.most.n < 0.0) == pressed);
        let most = mine().map(|c| c.rough).fold(0.0, f64::max);
        for candidate in mine().filter(|c| c.rough >= GOVERNS * most) {
            bending(&mut worst, timber, candidate);
        }
    }
    if let Some(most) = acting.iter().max_by(|a, b| a.shearing.total_cmp(&b.shearing)) {
        let [upright, sideways] = timber.tilt;
        let force = most.shear.v * (upright * upright + sideways * sideways).sqrt();
        worst.ask(Ask::Shear { force }, most.number, most.shared, most.shear.at);
    }
    sag(&mut worst, timber);
    worst.found
}

/// The worst place of a span under a combination, before it is checked exactly.
struct Candidate<'a> {
    span: &'a Span,
    number: usize,
    shared: bool,
    /// Where bending and axial force together ask most.
    most: Acting,
    /// A share of strength, as far as a sum of two shares tells.
    rough: f64,
    /// Where shear is most.
    shear: Acting,
    /// Shear over k_mod, N.
    shearing: f64,
}

fn candidate<'a>(
    worst: &Worst<'_>,
    span: &'a Span,
    number: usize,
    factors: &[(usize, f64)],
    shared: bool,
    tie: f64,
    kmod: f64,
) -> Option<Candidate<'a>> {
    let section = worst.section;
    let wood = worst.rules.stuff.wood;
    let share = |a: &Acting| {
        let along = if a.n < 0.0 { wood.fc_0_k } else { wood.ft_0_k };
        a.m.abs() / section.w_y() / wood.fm_k + a.n.abs() / section.area() / along
    };
    let mut most: Option<(Acting, f64)> = None;
    let mut shear = Acting::default();
    for acting in span.acting(factors) {
        let acting = Acting { n: acting.n + tie, ..acting };
        let rough = share(&acting);
        if most.is_none_or(|(_, m)| rough > m) {
            most = Some((acting, rough));
        }
        if acting.v.abs() > shear.v.abs() {
            shear = acting;
        }
    }
    let (most, rough) = most?;
    Some(Candidate { span, number, shared, most, rough: rough / kmod, shear, shearing: shear.v.abs() / kmod })
}

/// Bending with axial force, buckling and twisting.
fn bending(worst: &mut Worst<'_>, timber: &Checked<'_>, candidate: &Candidate<'_>) {
    let section = timber.section;
    let &Candidate { span, number, shared, most, .. } = candidate;
    let [upright, sideways] = timber.tilt;
    let forces = Forces { axial: most.n, moment_y: most.m * upright, moment_z: most.m * sideways };
    let length = span.length();
    // Battens, boards and the rafters themselves hold these sideways; jacks hold a hip.
    let held_sideways = is_rafter(timber.kind)
        || matches!(
            timber.kind,
            MemberKind::Purlin | MemberKind::HipRafter | MemberKind::ValleyRafter | MemberKind::CeilingJoist
        );
    let ask = if most.n < 0.0 {
        let z = if held_sideways { 0.0 } else { length };
        Ask::Column { lengths: Lengths { y: length, z }, forces }
    } else {
        Ask::Section { forces }
    };
    worst.ask(ask, number, shared, most.at);
    // Over a support the lower edge is pressed, and nothing holds it; so are the upper edges of binders and trimmers.
    if (!held_sideways || most.m < 0.0) && section.depth > section.breadth {
        let edge = Edge::Free { span: length, load: SpanLoad::Udl, at: SpanLoadAt::CompressionEdge };
        let forces = Forces { axial: most.n.min(0.0), ..forces };
        worst.ask(Ask::Lateral { edge, forces, sideways: 0.0 }, number, shared, most.at);
    }
}

/// What a birdsmouth leaves, at the foot.
fn birdsmouth(worst: &mut Worst<'_>, timber: &Checked<'_>, number: usize, factors: &[(usize, f64)], shared: bool) {
    let Some([depth, seat]) = timber.birdsmouth else { return };
    let left = timber.section.depth - depth;
    // The foot is where the first span that is held at its start begins.
    let Some(span) = timber.spans.iter().find(|s| s.between[0].is_some_and(|at| (at - s.reach[0]).abs() < AT_FOOT))
    else {
        return;
    };
    let Some(first) = span.stations.first() else { return };
    let (n, v, m) = (sum(&first.n, factors), sum(&first.v, factors), sum(&first.m, factors));
    let forces = Forces { axial: n, moment_y: m, moment_z: 0.0 };
    worst.ask(Ask::Net { left, forces }, number, shared, first.at);
    // From the middle of the seat to its corner at the heel, along the timber.
    let reach = seat / 2.0 / geometry::Angle::deg(timber.pitch).cos();
    let notch = Notch { left, reach, taper: 0.0, face: NotchFace::Support };
    worst.ask(Ask::NotchShear { notch, force: v }, number, shared, first.at);
}

/// Deflection of every span that is held at both ends, under all that may be there together.
fn sag(worst: &mut Worst<'_>, timber: &Checked<'_>) {
    let rules = worst.rules;
    let finish = rules.finish[usize::from(timber.kind == MemberKind::CeilingJoist)];
    for span in timber.spans {
        let [Some(from), Some(to)] = span.between else { continue };
        let ends = [from, to].map(|at| moved_at(timber.spans, at));
        let [Some(first), Some(last)] = ends else { continue };
        let length = to - from;
        for station in &span.stations {
            // Off the line between the two holds, which may move themselves, as the head of a pair does.
            let share = (station.at - from) / length;
            let off = |case: usize| {
                let of = |moved: &[f64]| moved.get(case).copied().unwrap_or(0.0);
                of(&station.moved) - of(first) * (1.0 - share) - of(last) * share
            };
            let permanent = off(CaseKind::Permanent as usize);
            // The greatest load of each family that comes and goes and bends it the same way.
            let mut variable = [Variable { first: 0.0, psi0: 0.0, psi2: 0.0 }; 3];
            for (case, psi0, psi2) in &rules.variables {
                let family = family_slot(*case);
                let moved = off(*case);
                if moved * permanent > 0.0 && moved.abs() > variable[family].first.abs() {
                    variable[family] = Variable { first: moved, psi0: *psi0, psi2: *psi2 };
                }
            }
            let span = SpanKind::Between(length);
            worst.ask(Ask::Sag { span, finish, permanent, variable }, 0, false, station.at);
        }
    }
}

/// How far a run moves at one of its holds under each case.
fn moved_at(spans: &[Span], at: f64) -> Option<&[f64]> {
    let stations = || spans.iter().flat_map(|s| s.stations.iter());
    let nearest = stations().min_by(|a, b| (a.at - at).abs().total_cmp(&(b.at - at).abs()))?;
    Some(&nearest.moved)
}

/// Loads of one slot are not there at once: on the roof snow or people; wind; the loft.
fn family_slot(case: usize) -> usize {
    if case == CaseKind::WindDown as usize || case == CaseKind::WindUp as usize {
        1
    } else if case == CaseKind::Loft as usize || case == CaseKind::LoftPerson as usize {
        2
    } else {
        0
    }
}

/// Pressure where a timber rests, and on what it rests.
#[must_use]
pub fn seats(
    rules: &Rules<'_>,
    roof: &Carrying<'_>,
    unit: &Unit,
    reactions: &[Vec<f64>],
    timber: &Checked<'_>,
) -> Vec<Found> {
    let mut worst = Worst { rules, section: timber.section, found: Vec::new() };
    let run = &roof.runs[timber.run];
    let rests = roof.rests(timber.run);
    for (support, under) in unit.under.iter().enumerate() {
        // A pair has supports of both its rafters; each looks at its own.
        let Some(rest) = rests.iter().find(|r| r.under == *under) else { continue };
        let width = timber.section.breadth;
        for (number, combination) in rules.combinations.iter().enumerate() {
            if combination.kind != CombinationKind::Ultimate {
                continue;
            }
            let force = sum(&reactions[support], &rules.factors[number]);
            if force <= 0.0 {
                continue;
            }
            let gap = f64::INFINITY;
            let ask = match (under, timber.birdsmouth) {
                // A level seat on the plate: at an angle to the rafter's grain.
                (Under::Wall(_), Some([_, seat])) if is_rafter(timber.kind) || timber.kind == MemberKind::HipRafter => {
                    Ask::AngleBearing { to_grain: 90.0 - timber.pitch, area: seat * width, force }
                }
                (Under::Run(..), _) if rest.area > 0.0 && matches!(timber.kind, MemberKind::Purlin) => {
                    let length = (rest.area / width).min(run.length);
                    let contact =
                        Contact { breadth: width, length, beyond: [30.0, 30.0], gap, support: Support::Discrete };
                    Ask::Bearing { contact, force }
                }
                (Under::Run(..), _) if rest.area > 0.0 && is_rafter(timber.kind) => {
                    let at_purlin = matches!(under, Under::Run(r, _) if roof.runs[*r].kind == MemberKind::Purlin);
                    if !at_purlin {
                        continue;
                    }
                    Ask::AngleBearing { to_grain: 90.0, area: rest.area, force }
                }
                (Under::Wall(_), None) if timber.kind == MemberKind::CeilingJoist && rest.area > 0.0 => {
                    let length = rest.area / width;
                    let contact =
                        Contact { breadth: width, length, beyond: [0.0, 30.0], gap, support: Support::Discrete };
                    Ask::Bearing { contact, force }
                }
                _ => continue,
            };
            worst.ask(ask, number, false, rest.at);
        }
    }
    worst.found
}
