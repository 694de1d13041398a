//! What every check keeps, whatever it is given.

use super::reading::uk;
use geometry::Angle;
use proptest::prelude::*;
use strength::annex::timber::{Duration, ServiceClass};
use strength::eurocode::members::{
    Contact, Design, Edge, Finish, Forces, Lengths, Notch, NotchFace, Section, Span, SpanLoad, SpanLoadAt, Support,
    Use, Variable, at_notch, at_section, bearing, bearing_at_angle, column, deflection, lateral_torsional, movement,
    sag_of_point, sag_of_udl, shear, shear_at_notch,
};
use strength::working::Working;

/// What a timber is asked to do.
#[derive(Clone, Copy, Debug)]
struct Case {
    /// N.
    force: f64,
    /// N·mm.
    moment_y: f64,
    /// N·mm.
    moment_z: f64,
    /// mm.
    span: f64,
    /// Depth of a notch, mm.
    cut: f64,
    /// Reach of a notch, mm.
    reach: f64,
    /// Degrees.
    angle: f64,
}

type Check = fn(&Design<'_>, Section, &Case, &mut Working) -> Use;

fn forces(case: &Case, sign: f64) -> Forces {
    Forces { axial: sign * case.force, moment_y: case.moment_y, moment_z: case.moment_z }
}

fn twist(case: &Case) -> Edge {
    Edge::Free { span: case.span, load: SpanLoad::Udl, at: SpanLoadAt::CompressionEdge }
}

fn notch(section: Section, case: &Case) -> Notch {
    Notch { left: section.depth - case.cut, reach: case.reach, taper: 0.0, face: NotchFace::Support }
}

fn sagging(design: &Design<'_>, section: Section, case: &Case, working: &mut Working) -> Use {
    let permanent = sag_of_udl(design.wood, section, case.span, case.force / case.span).total();
    let first = sag_of_point(design.wood, section, case.span, case.force).total();
    let moved = movement(design, permanent, &[Variable { first, psi0: 0.5, psi2: 0.2 }], working);
    deflection(design.timber, Span::Between(case.span), Finish::Open, moved.last, working)
}

/// Every check; whether its ratio grows as the load does.
const CHECKS: [(&str, bool, Check); 16] = [
    ("bending", true, |d, s, c, w| at_section(d, s, forces(c, 0.0), w)),
    ("with tension", true, |d, s, c, w| at_section(d, s, forces(c, 1.0), w)),
    ("with compression", false, |d, s, c, w| at_section(d, s, forces(c, -1.0), w)),
    ("tension", true, |d, s, c, w| at_section(d, s, Forces { axial: c.force, ..Forces::default() }, w)),
    ("compression", true, |d, s, c, w| at_section(d, s, Forces { axial: -c.force, ..Forces::default() }, w)),
    ("at a notch", true, |d, s, c, w| at_notch(d, s, s.depth - c.cut, forces(c, 0.0), w)),
    ("pressed at a notch", false, |d, s, c, w| at_notch(d, s, s.depth - c.cut, forces(c, -1.0), w)),
    ("column", false, |d, s, c, w| column(d, s, Lengths { y: c.span, z: c.span / 2.0 }, forces(c, -1.0), w)),
    ("strut", true, |d, s, c, w| {
        column(d, s, Lengths { y: c.span, z: c.span }, Forces { axial: -c.force, ..Forces::default() }, w)
    }),
    ("twisting", true, |d, s, c, w| lateral_torsional(d, s, twist(c), c.span, forces(c, 0.0), w)),
    ("twisting, pressed", false, |d, s, c, w| lateral_torsional(d, s, twist(c), c.span, forces(c, -1.0), w)),
    ("shear", true, |d, s, c, w| shear(d, s, c.force, w)),
    ("shear at a notch", true, |d, s, c, w| shear_at_notch(d, s, &notch(s, c), c.force, w)),
    // Deeper timber can lose k_c,90 = 1.5 by the clause, when the next force is less than two depths away.
    ("bearing", true, |d, s, c, w| {
        let gap = f64::INFINITY;
        let contact =
            Contact { breadth: s.breadth, length: c.reach, beyond: [0.0, c.span], gap, support: Support::Discrete };
        bearing(d, s.depth, &contact, c.force, w)
    }),
    ("at an angle", true, |d, s, c, w| bearing_at_angle(d, Angle::deg(c.angle), s.breadth * c.reach, c.force, w)),
    ("sagging", true, sagging),
];

fn of<'a>(class: usize, duration: usize, shared: bool) -> Design<'a> {
    let wood = &uk().classes.woods[class];
    Design { wood, timber: uk(), service: ServiceClass::Two, duration: Duration::ALL[duration], shared }
}

fn cases() -> impl Strategy<Value = Case> {
    (10.0..50_000.0, 1e3..1e7, 1e2..1e6, 1000.0..6000.0, 1.0..40.0, 10.0..100.0, 0.0..90.0).prop_map(
        |(force, moment_y, moment_z, span, cut, reach, angle)| Case {
            force,
            moment_y,
            moment_z,
            span,
            cut,
            reach,
            angle,
        },
    )
}

fn sections() -> impl Strategy<Value = Section> {
    (22.0..150.0, 70.0..350.0).prop_map(|(breadth, depth)| Section::new(breadth, depth))
}

/// Any number at all: from a file.
fn anything() -> impl Strategy<Value = f64> {
    prop_oneof![
        prop::num::f64::ANY,
        Just(0.0),
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(f64::MIN_POSITIVE),
        Just(f64::MAX),
        1.0..1e4
    ]
}

/// Rounding of a ratio.
const ROUNDING: f64 = 1.0 + 1e-12;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    /// By a millimetre or more; within the steps of the code's own curve for twisting, less would not do.
    #[test]
    fn thicker_or_deeper_is_never_worse(
        class in 0..20_usize, duration in 0..5_usize, case in cases(), section in sections(), by in 1.0..80.0,
    ) {
        let design = of(class, duration, false);
        let Section { breadth, depth } = section;
        for (name, _, check) in CHECKS {
            let used = check(&design, section, &case, &mut Working::off()).ratio;
            for more in [Section::new(breadth + by, depth), Section::new(breadth, depth + by)] {
                let then = check(&design, more, &case, &mut Working::off()).ratio;
                prop_assert!(then <= used * ROUNDING, "{name}: {section:?} {used}, {more:?} {then}");
            }
        }
    }

    #[test]
    fn longer_is_never_better_and_sharing_never_worse(
        class in 0..20_usize, case in cases(), section in sections(),
    ) {
        for (name, _, check) in CHECKS {
            for shared in [false, true] {
                let used = |d: usize| check(&of(class, d, shared), section, &case, &mut Working::off()).ratio;
                for d in 1..5 {
                    prop_assert!(used(d) <= used(d - 1), "{name}");
                }
            }
            let used = |shared| check(&of(class, 0, shared), section, &case, &mut Working::off()).ratio;
            prop_assert!(used(true) <= used(false), "{name}");
        }
    }

    /// Within one clause: a stronger class can be the more slender one (C30 after C27, whose modulus grows less than its
    /// strength), and at the bound between stocky and slender columns the code leaps from a square to a straight sum.
    #[test]
    fn a_higher_softwood_class_is_never_used_further(
        class in 1..12_usize, case in cases(), section in sections(),
    ) {
        for (name, _, check) in CHECKS {
            let used = |class| check(&of(class, 3, false), section, &case, &mut Working::off());
            let (lower, higher) = (used(class - 1), used(class));
            if lower.clause == higher.clause {
                prop_assert!(higher.ratio <= lower.ratio * ROUNDING, "{name}");
            }
        }
    }

    #[test]
    fn more_load_is_used_further_and_in_step(
        class in 0..20_usize, case in cases(), section in sections(), times in 1.0..20.0,
    ) {
        let design = of(class, 3, true);
        let more = Case {
            force: case.force * times,
            moment_y: case.moment_y * times,
            moment_z: case.moment_z * times,
            ..case
        };
        for (name, in_step, check) in CHECKS {
            let used = check(&design, section, &case, &mut Working::off()).ratio;
            let then = check(&design, section, &more, &mut Working::off()).ratio;
            prop_assert!(then >= used, "{name}");
            if in_step {
                let off: f64 = then / (used * times) - 1.0;
                prop_assert!(off.abs() < 1e-9, "{name}: {used} × {times} is not {then}");
            }
        }
    }

    #[test]
    fn nothing_is_no_number(
        numbers in prop::array::uniform9(anything()), class in 0..20_usize, duration in 0..5_usize, kept: bool,
    ) {
        let [breadth, depth, force, moment_y, moment_z, span, cut, reach, angle] = numbers;
        let case = Case { force, moment_y, moment_z, span, cut, reach, angle };
        for (name, _, check) in CHECKS {
            let mut working = if kept { Working::on() } else { Working::off() };
            let used = check(&of(class, duration, false), Section::new(breadth, depth), &case, &mut working);
            prop_assert!(used.ratio >= 0.0, "{name}: {case:?} {used:?}");
        }
    }

    /// What cannot be worked out does not pass: one figure that matters to all is no number.
    #[test]
    fn no_number_never_passes(class in 0..20_usize, case in cases(), section in sections()) {
        let none = Case { force: f64::NAN, moment_y: f64::NAN, moment_z: f64::NAN, ..case };
        let thin = [Section::new(f64::NAN, section.depth), Section::new(0.0, section.depth)];
        for (name, _, check) in CHECKS {
            let design = of(class, 3, false);
            prop_assert!(!check(&design, section, &none, &mut Working::off()).passes(), "{name}");
            for section in thin {
                prop_assert!(!check(&design, section, &case, &mut Working::off()).passes(), "{name} {section:?}");
            }
        }
    }

    /// The working ends in the ratio, is the same check, and says where each figure is from.
    #[test]
    fn the_working_is_the_check(class in 0..20_usize, case in cases(), section in sections()) {
        let design = of(class, 3, true);
        for (name, _, check) in CHECKS {
            let mut kept = Working::on();
            let used = check(&design, section, &case, &mut kept);
            prop_assert_eq!(used, check(&design, section, &case, &mut Working::off()));
            let lines = kept.lines();
            prop_assert_eq!(lines.last().map(|l| l.value), Some(used.ratio), "{}: {:?}", name, lines);
            for line in lines {
                let said = format!("{} {} {}", line.what, line.how, line.from).to_lowercase();
                prop_assert!(!line.what.is_empty() && !line.from.is_empty() && !said.contains("safe"), "{said}");
            }
        }
    }
}
