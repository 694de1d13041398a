//! Cases that no row has, worked by hand from the formulas: they would share a formula remembered wrong.

use super::reading::{design, line, uk, working};
use geometry::Angle;
use strength::annex::timber::{Duration, ServiceClass};
use strength::eurocode::members::{
    Design, Edge, Forces, Notch, NotchFace, Section, SpanLoad, SpanLoadAt, angle_strength, at_section,
    lateral_stability, notch_factor, sag_of_point,
};
use strength::working::Working;

/// `k_mod / γ_M` of a short load, indoors or under cover.
const SHORT: f64 = 0.9 / 1.3;

fn c24() -> Design<'static> {
    design("C24", ServiceClass::Two, Duration::Short)
}

fn near(got: f64, by_hand: f64) {
    assert!((got / by_hand - 1.0).abs() < 1e-9, "{got} is not {by_hand}");
}

/// The greater side gives `k_h` of tension, whichever way the timber lies: (150/100)^0.2 = 1.08447.
#[test]
fn tension_gains_by_the_greater_side() {
    let kh = libm::pow(1.5, 0.2);
    for section in [Section::new(50.0, 100.0), Section::new(100.0, 50.0)] {
        let pull = Forces { axial: 10_000.0, ..Forces::default() };
        let used = at_section(&c24(), section, pull, &mut Working::off());
        near(used.ratio, 10_000.0 / 5000.0 / (14.5 * SHORT * kh));
        assert_eq!((used.name, used.clause), ("tension", "EN 1995-1-1 6.1.2 (6.1)"));
    }
}

/// (6.17): tension and bending add up, each by its own strength.
#[test]
fn a_tie_that_bends() {
    let forces = Forces { axial: 10_000.0, moment_y: 1e6, moment_z: 0.0 };
    let used = at_section(&c24(), Section::new(50.0, 200.0), forces, &mut Working::off());
    let bending = 1e6 / (50.0 * 200.0 * 200.0 / 6.0) / (24.0 * SHORT);
    near(used.ratio, 1.0 / (14.5 * SHORT) + bending);
    assert_eq!(used.name, "bending with tension");
}

/// (6.12): sideways bending in full governs when it is the greater.
#[test]
fn a_purlin_laid_over_bends_both_ways() {
    let (y, z) = (2e6 / 1.5e6, 1e6 / 0.75e6);
    let section = Section::new(150.0, 300.0);
    assert_eq!((section.w_y(), section.w_z()), (2.25e6, 1.125e6));
    let strength = 24.0 * SHORT;
    let used = |moment_y, moment_z| {
        let forces = Forces { axial: 0.0, moment_y, moment_z };
        at_section(&c24(), section, forces, &mut Working::off()).ratio
    };
    near(used(2.25e6 * y, 1.125e6 * z * 2.0), (0.7 * y + 2.0 * z) / strength);
    near(used(2.25e6 * y * 2.0, 1.125e6 * z), (2.0 * y + 0.7 * z) / strength);
}

/// A short deep beam with its load hung from it has nothing to twist over.
#[test]
fn no_length_to_twist_over() {
    let edge = Edge::Free { span: 200.0, load: SpanLoad::Udl, at: SpanLoadAt::TensionEdge };
    let found = lateral_stability(&c24(), Section::new(50.0, 400.0), edge, &mut Working::off());
    assert_eq!((found.length, found.factor), (0.0, 1.0));
}

/// (6.62) with a taper of 1 in 2 in 225 mm that leave 175: `k_v` of EC5-P07 times 1 + 1.1 × 2^1.5 / 15.
#[test]
fn a_notch_that_ends_gently() {
    let kv = |taper| {
        let notch = Notch { left: 175.0, reach: 50.0, taper, face: NotchFace::Support };
        notch_factor(uk(), 225.0, &notch, &mut Working::off())
    };
    near(kv(2.0), kv(0.0) * (1.0 + 1.1 * 8.0_f64.sqrt() / 15.0));
}

/// `1.2 F l / (4 G A)`.
#[test]
fn shear_under_a_load_in_the_middle() {
    let sag = sag_of_point(c24().wood, Section::new(75.0, 200.0), 4500.0, 900.0);
    near(sag.shear, 1.2 * 900.0 * 4500.0 / (4.0 * 690.0 * 15_000.0));
    near(sag.total(), sag.bending + sag.shear);
}

/// Seats take their own load: nothing is shared there; in bending it is.
#[test]
fn seats_share_nothing() {
    let shared = Design { shared: true, ..c24() };
    let strength = |d: &Design<'_>| angle_strength(d, Angle::deg(30.0), &mut Working::off());
    assert_eq!(strength(&shared), strength(&c24()));
    let bent = Forces { moment_y: 1e6, ..Forces::default() };
    let (_, lines) = working(|w| at_section(&shared, Section::new(50.0, 200.0), bent, w));
    near(line(&lines, "f_m,y,d"), 24.0 * SHORT * 1.1);
}

/// Wood denser than 700 kg/m³ gains nothing for being shallow; the most that other wood gains is 1.3, at 40.4 mm.
#[test]
fn shallow_timber() {
    let mut dense = c24().wood.clone();
    dense.rho_k = 701.0;
    assert_eq!(Design { wood: &dense, ..c24() }.kh(100.0), 1.0);
    assert_eq!([c24().kh(150.0), c24().kh(40.0), c24().kh(20.0)], [1.0, 1.3, 1.3]);
    near(c24().kh(100.0), libm::pow(1.5, 0.2));
}
