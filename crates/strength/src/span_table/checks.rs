//! The checks of one timber of a span table.

use super::{Asked, Carries, SpanFault};
use crate::actions::{
    self, CaseKind, Combination, CombinationKind, Expression, Pressing, Rising, RoofForm, Site, SlopeLoads,
};
use crate::annex::loads::Loads;
use crate::annex::timber::{Duration, ServiceClass, Timber};
use crate::eurocode::members::{
    Contact, Design, Edge, Finish, Forces, Lengths, Notch, NotchFace, Section, Span, SpanLoad, SpanLoadAt, Support,
    Use, Variable, bearing, bearing_at_angle, column, deflection, lateral_torsional, movement, sag_of_point,
    sag_of_udl, shear, shear_at_notch,
};
use crate::eurocode::wood::Wood;
use crate::working::Working;
use geometry::Angle;

/// No timber is tried over more than this, mm.
pub(super) const FARTHEST: f64 = 20_000.0;
/// Halvings of a span: from 20 m to well under a thousandth of a mm.
const HALVINGS: usize = 40;
/// Bearing at each end along the plan, mm: the width of a common wall plate.
const BEARING: f64 = 100.0;
/// A birdsmouth takes at most this share of the depth: the rule of the trade.
const BIRDSMOUTH: f64 = 1.0 / 3.0;
/// Timbers of a roof are more than the four that share their loads.
const MANY: usize = 10;
/// Centres that are taken, mm.
pub(super) const CENTRES_TAKEN: [f64; 2] = [200.0, 1200.0];

/// All that the checks of a table need.
pub(super) struct Desk {
    pub(super) wood: &'static Wood,
    pub(super) timber: &'static Timber,
    pub(super) loads: &'static Loads,
    combinations: Vec<Combination>,
    pitch: Angle,
    /// On a rafter, or nothing.
    slope: Option<SlopeLoads>,
    /// On the slope or the ceiling for good, kN/m².
    permanent: f64,
    /// In the loft, kN/m².
    loft: f64,
    pub(super) rafter: bool,
    /// What of the place is for an engineer.
    pub(super) refused: Vec<String>,
}

/// Service class of covered roof timbers in a ventilated loft.
pub(super) const SERVICE: ServiceClass = ServiceClass::Two;

pub(super) fn within(what: &'static str, value: f64, [least, most]: [f64; 2]) -> Result<f64, SpanFault> {
    if (least..=most).contains(&value) { Ok(value) } else { Err(SpanFault::BadFigure { what, value, least, most }) }
}

impl Desk {
    pub(super) fn of(asked: &Asked, working: &mut Working) -> Result<Self, SpanFault> {
        let timber = Timber::of(&asked.region)?;
        let loads = Loads::of(&asked.region)?;
        let wood = timber.class(&asked.class)?;
        let combinations = actions::combinations(loads, Expression::Whole)?;
        let desk = |pitch: f64| Self {
            wood,
            timber,
            loads,
            combinations,
            pitch: Angle::deg(pitch),
            slope: None,
            permanent: 0.0,
            loft: 0.0,
            rafter: false,
            refused: Vec::new(),
        };
        match &asked.carries {
            Carries::Rafters(on) => {
                let covering = within("a covering", on.covering, [0.0, 5.0])?;
                let wind = within("a wind pressure", on.wind, [0.0, 5.0])?;
                let pitch = within("a pitch", on.pitch, [15.0, 60.0])?;
                working.line("covering on the slope", covering, "kN/m²", "as given", String::new);
                let site = Site {
                    altitude: on.altitude,
                    ground_snow: actions::ground_snow(loads, on.snow_zone, on.altitude, working)?,
                    peak_pressure: wind,
                    snow_held: false,
                    snow_drifts: false,
                    loft: 0.0,
                    tank: 0.0,
                };
                let refused = actions::refusals(loads, &site).into_iter().map(|r| r.text).collect();
                let form = RoofForm { pitch, hipped: false };
                let slope = actions::slope_loads(loads, &site, form, &[], &mut Working::off())?;
                // Once more for their lines, without those that a rafter does not carry.
                actions::people(loads, pitch, working)?;
                actions::slope_snow(loads, site.ground_snow, pitch, site.snow_held, working)?;
                actions::pressures(loads, form.hipped, pitch, wind, working)?;
                Ok(Self { slope: Some(slope), permanent: covering, rafter: true, refused, ..desk(pitch) })
            }
            Carries::CeilingJoists(on) => {
                let permanent = within("a ceiling", on.ceiling, [0.0, 5.0])?;
                let loft = within("a load in the loft", on.loft, [0.0, 5.0])?;
                working.line("ceiling for good", permanent, "kN/m²", "as given", String::new);
                working.line("load in the loft", loft, "kN/m²", "as given", String::new);
                working.line(
                    "one person in the loft",
                    loads.imposed.loft_person.value,
                    "kN",
                    "EN 1991-1-1",
                    String::new,
                );
                Ok(Self { permanent, loft, ..desk(0.0) })
            }
        }
    }

    /// Of a spread load: N/mm square to the timber and along it (down the slope), for each mm of the timber.
    fn spread(&self, kind: CaseKind, section: Section, centres: f64) -> [f64; 2] {
        let density = self.wood.rho_mean * 1e-9 * self.loads.gravity.value;
        let (sin, cos) = (self.pitch.sin(), self.pitch.cos());
        let [x, y] = match kind {
            CaseKind::Permanent => {
                let [x, y] =
                    actions::per_mm(self.permanent, centres, self.pitch, Pressing::OnSlope, Rising::ToTheRight);
                [x, y - density * section.area()]
            }
            CaseKind::Loft => [0.0, -self.loft * centres / 1000.0],
            _ => {
                let on = self.slope.as_ref().map_or(0.0, |slope| slope.on_area(kind, true));
                actions::per_mm(on, centres, self.pitch, Pressing::of(kind), Rising::ToTheRight)
            }
        };
        [x * sin - y * cos, -(x * cos + y * sin)]
    }

    /// One person, N.
    fn person(&self, kind: CaseKind) -> f64 {
        match kind {
            CaseKind::Person => self.slope.as_ref().map_or(0.0, |slope| slope.person * 1e3),
            CaseKind::LoftPerson if !self.rafter => self.loads.imposed.loft_person.value * 1e3,
            _ => 0.0,
        }
    }

    const fn finish(&self) -> Finish {
        if self.rafter { Finish::Open } else { Finish::Ceiling }
    }
}

/// The worst check of a timber over a clear span on plan.
pub(super) fn worst(desk: &Desk, section: Section, centres: f64, clear: f64) -> Use {
    let (sin, cos) = (desk.pitch.sin(), desk.pitch.cos());
    // Half a bearing at each end, and along the slope.
    let length = (clear + BEARING) / cos;
    let sharing = desk.timber.shares_load(MANY, centres);
    let mut most = Use::of(0.0, "", "");
    let off = &mut Working::off();
    for combination in desk.combinations.iter().filter(|c| c.kind == CombinationKind::Ultimate) {
        let (mut square, mut along, mut person) = (0.0, 0.0, 0.0);
        for (kind, factor) in &combination.factors {
            let [s, a] = desk.spread(*kind, section, centres);
            square += factor * s;
            along += factor * a;
            person += factor * desk.person(*kind);
        }
        let shared = sharing && !combination.has_one_person();
        let design =
            Design { wood: desk.wood, timber: desk.timber, service: SERVICE, duration: combination.duration, shared };
        let moment = square * length * length / 8.0 + person * cos * length / 4.0;
        // Held up straight at both ends, half of what runs down the slope presses along the foot.
        let axial = -(along * length / 2.0 + person * sin / 2.0).max(0.0);
        let force = square * length / 2.0 + person * cos / 2.0;
        let forces = Forces { axial, moment_y: moment, moment_z: 0.0 };
        // Battens hold a rafter sideways, boards and insulation rails a joist.
        most = most.or_worse(column(&design, section, Lengths { y: length, z: 0.0 }, forces, off));
        most = most.or_worse(shear(&design, section, force, off));
        if moment < 0.0 {
            // Wind lifts: the lower edge is pressed and nothing holds it.
            let edge = Edge::Free { span: length, load: SpanLoad::Udl, at: SpanLoadAt::CompressionEdge };
            most = most.or_worse(lateral_torsional(&design, section, edge, 0.0, forces, off));
        }
        if force > 0.0 {
            let down = force * cos + (along * length / 2.0 + person * sin / 2.0) * sin;
            most = most.or_worse(at_support(desk, &design, section, force, down));
        }
    }
    most.or_worse(sag(desk, section, centres, length))
}

/// A rafter on its birdsmouth, or a joist on its plate.
fn at_support(desk: &Desk, design: &Design<'_>, section: Section, force: f64, down: f64) -> Use {
    let off = &mut Working::off();
    if !desk.rafter {
        let contact = Contact {
            breadth: section.breadth,
            length: BEARING,
            beyond: [0.0, 30.0],
            gap: f64::INFINITY,
            support: Support::Discrete,
        };
        return bearing(design, section.depth, &contact, force, off);
    }
    // As deep as the seat needs to cover the plate, and never more than the trade allows.
    let sin = desk.pitch.sin();
    let depth = (BEARING * sin).min(section.depth * BIRDSMOUTH);
    let seat = depth / sin;
    let notch = Notch {
        left: section.depth - depth,
        reach: seat / 2.0 / desk.pitch.cos(),
        taper: 0.0,
        face: NotchFace::Support,
    };
    let to_grain = Angle::deg(90.0 - desk.pitch.to_deg());
    shear_at_notch(design, section, &notch, force, off).or_worse(bearing_at_angle(
        design,
        to_grain,
        seat * section.breadth,
        down,
        off,
    ))
}

fn sag(desk: &Desk, section: Section, centres: f64, length: f64) -> Use {
    let off = &mut Working::off();
    let of = |kind| sag_of_udl(desk.wood, section, length, desk.spread(kind, section, centres)[0]).total();
    let permanent = of(CaseKind::Permanent);
    let design =
        Design { wood: desk.wood, timber: desk.timber, service: SERVICE, duration: Duration::Permanent, shared: false };
    // On the roof snow or people, wind, the loft: of each family the one that bends it most.
    let families: [&[CaseKind]; 3] =
        [&[CaseKind::Imposed, CaseKind::Snow, CaseKind::SnowLeft], &[CaseKind::WindDown], &[CaseKind::Loft]];
    let variable = families.map(|kinds| {
        let none = Variable { first: 0.0, psi0: 0.0, psi2: 0.0 };
        kinds.iter().fold(none, |most, kind| {
            let first = of(*kind);
            if first <= most.first {
                return most;
            }
            let figures = desk.loads.cases.get(kind.family());
            let psi = |figure: Option<&crate::annex::Figure>| figure.map_or(0.0, |f| f.value);
            Variable {
                first,
                psi0: psi(figures.and_then(|f| f.psi0.as_ref())),
                psi2: psi(figures.and_then(|f| f.psi2.as_ref())),
            }
        })
    });
    let last = movement(&design, permanent, &variable, off).last;
    // One person gets no help from the neighbours here, and nothing else comes and goes with him.
    let person = if desk.rafter { CaseKind::Person } else { CaseKind::LoftPerson };
    let bent = sag_of_point(desk.wood, section, length, desk.person(person) * desk.pitch.cos()).total();
    let alone = [Variable { first: bent, psi0: 0.0, psi2: 0.0 }];
    let with_person = movement(&design, permanent, &alone, off).last;
    let limit = |last: f64| deflection(desk.timber, Span::Between(length), desk.finish(), last, &mut Working::off());
    limit(last).or_worse(limit(with_person))
}

/// The greatest clear span on plan of a section, mm, and what governs there.
pub(super) fn greatest(desk: &Desk, section: Section, centres: f64) -> (f64, Use) {
    let (mut low, mut high) = (0.0, FARTHEST);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if worst(desk, section, centres, middle).passes() { low = middle } else { high = middle }
    }
    (low, worst(desk, section, centres, low))
}
